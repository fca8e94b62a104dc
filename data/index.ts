/** The assumed values as typed quantities. The rows themselves, with sources, are in defaults.json. */

import type { Quantity } from '../engine/base/quantity.ts';
import type { Instruments } from '../engine/calibrate/instruments.ts';
import { type AssumedValues, practiceKeys } from '../engine/things/assumed.ts';
import { brakeKinds } from '../engine/things/brake/kinds/index.ts';
import type { SurveyQuality } from '../engine/things/line/types.ts';
import { railStates } from '../engine/things/rail.ts';
import { type BearingKind, type BlockMaterial, blockMaterials } from '../engine/things/vehicle/types.ts';
import defaults from './defaults.json' with { type: 'json' };

export interface DefaultRow {
  readonly key: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly source: string;
  readonly note?: string;
}

export const defaultRows: readonly DefaultRow[] = defaults.rows;

const byKey = new Map(defaultRows.map((row) => [row.key, row]));

/** A row by key. A missing key is a mistake in the program, not in a user's file. */
export function defaultRow(key: string): DefaultRow {
  const row = byKey.get(key);
  if (!row) throw new RangeError(`no assumed value ${key}`);
  return row;
}

export function assumed(key: string): Quantity {
  const { value, low, high, source } = defaultRow(key);
  return { value, low, high, how: 'assumed', source };
}

const MPH = 0.44704;
const bearingKinds: readonly BearingKind[] = ['ball', 'roller', 'plain'];
const surveyQualities: readonly SurveyQuality[] = ['levelled', 'taped', 'gps', 'stated', 'assumed'];

const mapped = <K extends string, V>(keys: readonly K[], of: (key: K) => V): Record<K, V> =>
  Object.fromEntries(keys.map((key) => [key, of(key)])) as Record<K, V>;

function frictionOf(material: BlockMaterial): AssumedValues['blockFriction'][BlockMaterial] {
  const prefix = `block-friction/${material}/`;
  return defaultRows
    .filter((row) => row.key.startsWith(prefix))
    .map((row) => ({
      speed: Number.parseFloat(row.key.slice(prefix.length)) * MPH,
      friction: assumed(row.key),
    }));
}

/** Everything that the engine takes where an outing's files give nothing. */
export const assumedValues: AssumedValues = {
  adhesion: mapped(railStates, (state) => assumed(`adhesion/${state}`)),
  curveConstant: assumed('curve-constant'),
  blockFriction: mapped(blockMaterials, frictionOf),
  deadTime: mapped(brakeKinds, (kind) => assumed(`dead-time/${kind}`)),
  buildUp: mapped(brakeKinds, (kind) => assumed(`build-up/${kind}`)),
  startingFactor: assumed('starting-factor'),
  riderCentre: assumed('rider-centre'),
  couplerSlack: assumed('coupler-slack'),
  couplerStiffness: assumed('coupler-stiffness'),
  chainSlack: assumed('chain-slack'),
  skid: { floor: assumed('skid/floor'), fallSpeed: assumed('skid/fall-speed') },
  easing: {
    utilisation: assumed('easing/utilisation'),
    notice: assumed('easing/notice'),
    felt: assumed('easing/felt'),
  },
  drivenAdhesion: assumed('driven-adhesion/dry'),
  engineHeight: { centre: assumed('engine-height/centre'), coupler: assumed('engine-height/coupler') },
  throttle: assumed('throttle'),
  guardNotice: assumed('guard-notice'),
  anotherDriver: assumed('another-driver'),
  standingRise: assumed('standing-rise'),
  wind: {
    drag: assumed('wind/drag'),
    personArea: assumed('wind/person-area'),
    personMiddle: assumed('wind/person-middle'),
  },
  person: {
    head: assumed('person/head'),
    shoulder: assumed('person/shoulder'),
    arm: assumed('person/arm'),
  },
  brakeParts: {
    mechanical: assumed('brake-parts/mechanical'),
    electricDead: assumed('brake-parts/electric-dead'),
    byRule: assumed('brake-parts/by-rule'),
    ejectorReach: defaultRow('brake-parts/ejector-reach').value,
    tripleBegins: defaultRow('brake-parts/triple-begins').value,
    tripleOpens: defaultRow('brake-parts/triple-opens').value,
    lapsOver: defaultRow('brake-parts/laps-over').value,
  },
  practice: mapped(practiceKeys, (key) => defaultRow(`practice/${key}`)),
  badSpot: {
    chance: mapped(railStates, (state) => assumed(`bad-spot/chance/${state}`)),
    factor: assumed('bad-spot/factor'),
    length: assumed('bad-spot/length'),
  },
  startingByBearing: mapped(bearingKinds, (kind) => assumed(`starting-factor/${kind}`)),
  blockWet: mapped(blockMaterials, (material) => assumed(`block-wet/${material}`)),
  gradeSpread: mapped(surveyQualities, (quality) => assumed(`grade-spread/${quality}`)),
  chainCatch: {
    length: assumed('chain-catch/length'),
    fullness: assumed('chain-catch/fullness'),
    hook: assumed('chain-catch/hook'),
    headstock: assumed('chain-catch/headstock'),
  },
  sprungRider: {
    share: assumed('sprung-rider/share'),
    frequency: assumed('sprung-rider/frequency'),
    damping: assumed('sprung-rider/damping'),
  },
  coupler: {
    swing: assumed('coupler/swing'),
    pitch: assumed('coupler/pitch'),
    shank: assumed('coupler/shank'),
    play: assumed('coupler/play'),
    heightDifference: assumed('coupler/height-difference'),
    damping: assumed('coupler/damping'),
  },
  pipe: { vehicles: defaultRow('brake-times/vehicles').value, growth: assumed('brake-times/growth') },
  stopMargin: defaultRow('stop-margin').value,
  sight: defaultRow('sight').value,
  nightSight: defaultRow('sight/night').value,
  unstatedSpeed: defaultRow('speed/unstated').value,
};

/** How well a club's instruments read, where a test's record says nothing better. */
export const instruments: Instruments = {
  stopwatch: assumed('measuring/stopwatch'),
  tape: assumed('measuring/tape'),
  mark: assumed('measuring/mark'),
  place: assumed('measuring/place'),
  balance: assumed('measuring/balance'),
  pull: assumed('measuring/pull'),
  speedometer: assumed('measuring/speedometer'),
  speed: assumed('measuring/speed'),
  scales: assumed('measuring/scales'),
  weight: assumed('measuring/weight'),
  gauge: assumed('measuring/gauge'),
  pressure: assumed('measuring/pressure'),
  tilt: assumed('measuring/tilt'),
  rule: assumed('measuring/rule'),
  eyes: assumed('measuring/eyes'),
  aside: assumed('measuring/aside'),
  floor: assumed('measuring/floor'),
  perSpeed: assumed('measuring/per-speed'),
};
