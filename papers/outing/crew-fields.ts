/** Who works the train, in the outing's paper: each field once. */
import { powers } from '../../engine/things/duty.ts';
import { choice, group, may, must, rows, text, yes } from '../describe.ts';
import { age } from '../schema/age.ts';
import { figure, quantity } from '../schema/quantity.ts';

const HOUR = 3600;
const ASKED = { asked: 'by the sheet on which people sign on, or ask' };
const hours = (most: number, label: string, help: string) =>
  may(figure('time', 0, most * HOUR), label, help, ASKED);

const worked = group({
  onDuty: hours(48, 'on duty', 'In this turn, when this outing is over.'),
  driving: hours(48, 'driving', 'At the handles in this turn, when this outing is over.'),
  sinceBreak: hours(48, 'since a break', 'Work on end, when this outing is over.'),
  rest: hours(2000, 'rest before', 'Off duty before this turn, work elsewhere counted as duty.'),
  turnBefore: hours(48, 'turn before', 'How long the turn before this one was.'),
  inDay: hours(24, 'in 24 hours', 'On duty in the 24 hours that end with this outing.'),
  inWeek: hours(168, 'in seven days', 'On duty in the seven days that end with this outing.'),
  days: may(
    figure('count', 1, 366),
    'days in a row',
    'On which he or she was on duty, that of this outing among them.',
    ASKED,
  ),
  record: may(text(200), 'record', 'The records that say so; what is written by hand has none.'),
});

export const crewMember = group({
  name: must(text(), 'name', 'Of a rider as it stands there, or of somebody who stands by.'),
  looksOutAt: may(text(), 'looks out at', 'Where, as the host calls it: a crossing, the front car.'),
  age: may(age(), 'age', 'Of whoever does not ride; of a rider it stands with the rider.', {
    asked: 'ask how old',
  }),
  weight: may(
    quantity('mass', 20, 300),
    'weight',
    'Of whoever stands by: what is reckoned with if he or she takes over. A typical grown person, if nothing is said.',
    { assumed: 'mass/adult' },
  ),
  hours: may(worked, 'hours', 'Of duty and rest, as they will be when this outing is over.'),
  sober: may(yes(), 'nothing drunk or taken', 'Says that nothing was drunk or taken that dulls.', {
    asked: 'ask, and write yes or no',
  }),
  fit: may(yes(), 'fit to work', 'Says so. Yes or no is all that is written, and never why.', {
    asked: 'ask, and write yes or no',
  }),
});

/** What a sign-off is limited to. */
export const signedFor = () =>
  may(
    group({
      powers: may(
        rows(choice(...powers), 1, 3),
        'kinds of engine',
        'Steam; battery or wire; petrol or diesel.',
      ),
      engines: may(rows(text(), 1, 100), 'engines', 'These alone, by their names.'),
      gauge: may(figure('length', 0.05, 1), 'gauge', 'On this gauge alone.'),
      heaviest: may(figure('mass', 1, 30_000), 'heaviest engine', 'Empty, in working order.'),
      line: may(text(), 'line', 'On this line alone, by its name.'),
    }),
    'signed off for',
    'Of a person’s competence: what it is limited to. What is not said is not limited.',
  );
