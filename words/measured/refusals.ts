/** Why nothing was made of a test, in a sentence, and what to do. */
import type { UnitSlip } from '../../engine/calibrate/bad-reading.ts';
import type { Further, Refusal, RefusalCode, RefusalFacts } from '../../engine/calibrate/refusal.ts';
import { printQuantity } from '../../units/index.ts';
import { inWording, say, type Voice } from '../voice.ts';
import { resultName } from './tests.ts';

type Shown = Pick<Voice, 'system' | 'wording'>;

const slips: Readonly<Record<UnitSlip, string>> = {
  tenfold: 'a decimal point in the wrong place',
  'ft-m': 'feet for metres',
  'mph-m/s': 'miles per hour for metres per second',
  'km/h-m/s': 'kilometres per hour for metres per second',
  'mph-km/h': 'miles for kilometres per hour',
  'min-s': 'minutes for seconds',
  'lb-kg': 'pounds for kilograms',
  'lb-N': 'pounds for newtons',
  'kg-N': 'kilograms for newtons',
  'psi-bar': 'pounds per square inch for bar',
};

const furthers: Readonly<Record<Further, string>> = {
  'other-way': 'run the same ground the other way as well',
  'more-speeds': 'stop from a speed half as high again as well',
  longer: 'go on for longer, or from a higher speed',
  'curve-and-straight': 'coast over straight line and curve in one run, both ways',
  'other-load': 'repeat it with another load',
  'one-brake': 'stop with one kind of brake at a time',
  'more-readings': 'take more readings',
};

const needed: Readonly<Record<string, string>> = {
  outing: 'the train on its line',
  vehicle: 'the vehicle that was tested',
  'brakes.force': 'a train with a brake that was put on',
  drivenMass: 'the weight on the driven wheels',
  traction: 'a vehicle whose paper says what drives it',
  groups: 'the axles of the vehicle',
};

/** `tilts.0.angle` → "Reading 1 of tilts"; `to` → "The figure “to”". */
const placeWords = (field: string): string => {
  const [list, row] = field.split('.');
  return row === undefined ? `The figure “${list}”` : `Reading ${Number(row) + 1} of ${list}`;
};

type Teller = { readonly [C in RefusalCode]: (facts: RefusalFacts[C], shown: Shown) => string };

const tellers: Teller = {
  'too-few-readings': ({ found, needed }) =>
    `${found === 1 ? 'One reading is' : `${found} readings are`} too few: take at least ${needed}.`,
  'runs-backwards': ({ reading }) =>
    `Reading ${reading} does not follow the one before: look whether two were exchanged, or a mark or time misread.`,
  'coast-speeds-up': ({ reading }) =>
    `By reading ${reading} it ran faster than before, and the line does not fall enough for that: look at its place, its time and its units, and whether power was off.`,
  'readings-disagree': ({ reading, found, expected, kind, slip }, shown) =>
    `Reading ${reading} says ${say(shown, { si: found, kind })}; the others, about ${say(shown, { si: expected, kind })}${slip ? ` (${slips[slip]}?)` : ''}. There are too few to tell which is wrong: nothing was made of them.`,
  'does-not-fit': ({ times }) =>
    `The readings scatter ${printQuantity(times, 'ratio', { system: 'metric', digits: 1 })} times as much as such instruments do: something else was going on. Nothing was made of them.`,
  'no-fit': () =>
    'No values fit these readings. Look at the units and at the train and line that they were made with.',
  'not-told-apart': ({ keys, further }) =>
    `These readings do not tell ${keys.map((k) => resultName(k)).join(', ')} better than it is assumed now${further ? `: ${furthers[further]}` : ''}.`,
  'out-of-range': ({ field }) => `${placeWords(field)} cannot be: look at the figure, its sign and its unit.`,
  'not-stated': ({ field }) => `The test needs ${needed[field] ?? field}, and nobody has said it.`,
  'no-such-brake': ({ found, has }) =>
    has.length === 0
      ? 'The vehicle has no brake in its paper: write it there first.'
      : `The vehicle has no brake “${found}”; it has ${has.map((name) => `“${name}”`).join(', ')}.`,
  'upside-down': () =>
    'The phone was held upside down, or zero was never set: lay it level, set zero, and measure again.',
  'stop-too-high': ({ found, most }, shown) =>
    `The stop is ${say(shown, { si: found, kind: 'length' })} high and holds the vehicle up: no more than ${say(shown, { si: most, kind: 'length' }, 'down')}.`,
};

/** Sentences for people. */
export const tellRefusal = ({ code, facts }: Refusal, shown: Shown): string =>
  inWording((tellers[code] as (facts: unknown, shown: Shown) => string)(facts, shown), shown.wording);

/** A reading that was left out. */
export const tellBad = (
  {
    index,
    found,
    expected,
    kind,
    slip,
  }: { readonly index: number; readonly slip?: UnitSlip } & Pick<
    RefusalFacts['readings-disagree'],
    'found' | 'expected' | 'kind'
  >,
  shown: Shown,
): string =>
  `Reading ${index + 1} was left out: ${say(shown, { si: found, kind })}, where the others say about ${say(shown, { si: expected, kind })}${slip ? ` (${slips[slip]}?)` : ''}.`;
