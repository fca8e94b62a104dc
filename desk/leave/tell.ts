/** Leaving, arriving, looking again and what comes out of it, in words. */
import type { Check } from '../../papers/record/fields.ts';
import type { Carried, Service, Trip } from '../../records/service.ts';
import { shownTime } from '../../records/time.ts';
import { printQuantity } from '../../units/index.ts';
import { checkWords, hindranceWords } from '../../words/records/leaving.ts';
import { shortHash } from '../../words/records/record.ts';
import type { Voice } from '../../words/voice.ts';
import type { Hindrance, Replayed } from './depart.ts';

type Shown = Pick<Voice, 'system'>;

/** One line for each thing that is in the way. */
export const tellHindrances = (all: readonly Hindrance[]): string[] =>
  all.flatMap((one) => {
    switch (one.what) {
      case 'word':
        return hindranceWords.word[one.word];
      case 'checks':
        return one.checks.map(hindranceWords.check);
      case 'day':
        return hindranceWords.day(one.of, one.today);
      case 'driver':
        return hindranceWords.driver;
      case 'sky':
        return one.of.map(hindranceWords.sky);
      case 'records':
        return hindranceWords.records;
      case 'rejected':
        return hindranceWords.rejected(one.list, one.of);
      case 'out':
        return hindranceWords.out(shortHash(one.departure));
      case 'amiss':
        return hindranceWords.amiss(one.faults);
    }
  });

export const tellAsked = (asked: readonly Check[]): string[] =>
  asked.map((check) => `${check}: ${checkWords[check]}`);

export const tellTrip = ({ departure, left, arrival }: Trip): string =>
  `${left.outing} (${left.train}), ${shownTime(departure.first.body.said)}${arrival ? `, arrived ${shownTime(arrival.first.body.said)}` : ', not arrived'}`;

/** "12 days, 3 runs …": distance never without what nobody said. */
export function tellService(
  { vehicle, days, runs, distance: ran, unsaid }: Service,
  voice: Shown,
): readonly string[] {
  const far = printQuantity(ran, 'length', {
    system: voice.system,
    unit: { imperial: 'mile', metric: 'km' }[voice.system],
    digits: 1,
  });
  return [
    vehicle,
    `${days.length}`,
    `${runs}`,
    unsaid === 0 ? far : `${ran === 0 ? '' : `${far} and `}${unsaid} not said`,
    days.at(-1) ?? '',
  ];
}

export const serviceHead = ['vehicle', 'service days', 'runs', 'distance', 'last'] as const;

export const tellCarried = ({ riders, unsaid }: Carried): string =>
  `${riders} riders carried${unsaid === 0 ? '' : `, and of ${unsaid} ${unsaid === 1 ? 'run' : 'runs'} nobody said`}.`;

export function tellReplay({ inputs, same, versions, gone, come }: Replayed): string[] {
  const { left, today } = versions;
  const by = left === today ? `Heedway ${today}, as then` : `Heedway ${today}; it left by ${left}`;
  return [
    ...(inputs ? [] : ['The paper in the record is not the one whose hash was recorded.']),
    same
      ? `The same answer, byte for byte, by ${by}.`
      : `Another answer by ${by}${gone.length + come.length === 0 ? ': what was told is the same, figures behind it differ.' : ' (- as it was told then, + as it is told today):'}`,
    ...gone.map((line) => `- ${line}`),
    ...come.map((line) => `+ ${line}`),
  ];
}
