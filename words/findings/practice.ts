/** Words for what the trade always asks. */
import { age, type Teller, type Tools } from './teller.ts';

const PRACTICE = 'common practice';

const youngest = (t: Tools): string => {
  const years = t.fact('age');
  return years === '' ? '' : ` (${age(Number(years))})`;
};

const several = (t: Tools): boolean => t.fact('riders').includes(', ');

export const practiceWords = {
  'child-alone': (f, t) => ({
    what: `${t.fact('riders')}${youngest(t)} ${several(t) ? 'ride' : 'rides'} on ${t.vehicle} without an adult.`,
    why: !f.source.startsWith(PRACTICE)
      ? 'It is the rule quoted as the source.'
      : f.severity === 'forbids'
        ? 'Under seven a child leans out, stands up or lets go when something catches its eye. Put an adult behind it on the same car.'
        : `${t.fact('company') === 'youth' ? 'Only a youth is with them. ' : ''}${t.fact('age') === '' ? 'No age is given; under seven it does not ride so. ' : ''}Put an adult on the same car, or tell them before leaving: seated, feet on the boards, hands in.`,
  }),
  'infant-aboard': (_f, t) => ({
    what: `${t.fact('riders')}${youngest(t)} ${several(t) ? 'ride' : 'rides'} on ${t.vehicle}: too young to hold on.`,
    why: 'Many groups take nobody so young; others only on a low seat between the arms of an adult who needs no hand for anything else. The host has not said: ask.',
  }),
  'more-people-than-seats': (_f, t) => ({
    what: `${t.found()} people on ${t.vehicle}, which has ${t.required()} ${t.required() === '1' ? 'seat' : 'seats'}.`,
    why: 'Whoever has no seat stands, sits on the edge or on someone else, and falls first.',
  }),
  'seat-shared': (_f, t) => ({
    what:
      t.fact('lap') === ''
        ? `${t.fact('riders')} share seat ${t.fact('seat')} of ${t.vehicle}.`
        : `${t.fact('riders')} ${several(t) ? 'sit' : 'sits'} on the lap of ${t.fact('lap')} on ${t.vehicle}.`,
    why:
      t.fact('lap') === ''
        ? 'One person sits on each seat.'
        : 'On a lap a child sits higher than is reckoned here, and the arms that hold it hold nothing else. It belongs on a seat of its own in front of its adult.',
  }),
  'coupler-heights-differ': (_f, t) => ({
    what: `The couplers of ${t.vehicle} (${t.fact('front')}) and ${t.fact('other')} (${t.fact('rear')}) differ by ${t.found('up')} in height; ${t.required('down')} is allowed.`,
    why:
      t.fact('overrides') === 'yes'
        ? 'Less than half of a knuckle holds the other. On the next dip one rides over, the train parts or a car is lifted off its truck.'
        : 'In dips and on summits little of them may stay in hold. Shim or bend one, or put a car between that suits both. Measure loaded.',
  }),
  'coupler-height-unknown': (_f, t) => ({
    what: `How high the coupler of ${t.fact('vehicles')} stands is not stated; its neighbour's is.`,
    why: 'Couplers at different heights ride over each other. Hold a rule to it, with people on.',
  }),
  'no-chain-on-grade': (_f, t) => ({
    what: `No safety chain is fastened at ${t.fact('gaps')} ${t.fact('gaps') === '1' ? 'coupling' : 'couplings'}, on a line with a ${t.word('grade')} of ${t.found('up')} (${t.fact('at')}).`,
    why: 'Cars that part on it roll away unless something holds them. Above 1 % the trade chains every coupling.',
  }),
  'dark-at-night': (_f, t) => ({
    what:
      t.fact('light') === 'headlight'
        ? t.fact('known') === 'yes'
          ? `${t.vehicle} leads by night without a headlight.`
          : `Nobody has said whether ${t.vehicle}, which leads by night, has a headlight.`
        : `${t.vehicle} is last by night ${t.fact('known') === 'yes' ? 'without a red light to the rear' : 'and no red light to the rear is stated'}.`,
    why:
      t.fact('light') === 'headlight'
        ? 'What the driver does not see the train does not stop for.'
        : 'A train that follows sees nothing to stop for. Hang a red lamp on it, or run with no other train on the line.',
  }),
  'brake-not-tried': (f, t) => ({
    what:
      f.severity === 'limits'
        ? 'The driver has not tried the brake of this engine.'
        : 'Nobody has said whether the driver has tried the brake of this engine.',
    why: `A borrowed engine brakes otherwise than one's own. Try a stop ${t.fact('said') === 'yes' ? 'with the empty train, on the level, ' : ''}before anybody gets on.`,
  }),
} satisfies Record<string, Teller>;
