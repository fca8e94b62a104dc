/**
 * What a stop needs of an outing, compiled once: the potential, the braked groups as plain arrays, the
 * shape of their build-up. A scenario is then laid over it in a fraction of a microsecond per group.
 */

import { GRAVITY, MPH } from '../base/constants.ts';
import { exact, type Quantity } from '../base/quantity.ts';
import type { AssumedValues } from '../things/assumed.ts';
import { type BrakedGroup, type FrictionPoint, forceAtRest, frictionAt } from '../things/brake/force.ts';
import { type Block, blockWetness } from '../things/brake/wet.ts';
import type { Potential } from '../things/line/potential.ts';
import type { RailState } from '../things/rail.ts';
import type { LoadedTrain } from '../things/train/loaded.ts';
import { type ResistanceTerms, resistanceTerms } from '../things/train/resistance.ts';
import { fitsOf, type InputFits } from './fits.ts';
import { type PushedGroup, pushedGroups } from './push.ts';

/** Speeds at which block friction is tabulated: 0 … 45 mph by 1 mph, on which the knots of the published tests lie. */
export const SPEED_STEP: number = MPH;
export const SPEED_NODES = 46;
/** Steps over the build-up. */
export const RAMP_STEPS = 10;

/** Block friction by speed at the low, likely and high position; `wet` is what today's rail leaves of it. */
interface FrictionTable {
  readonly low: Float64Array;
  readonly value: Float64Array;
  readonly high: Float64Array;
  readonly wet: Quantity;
}

/** What today adds to a train and a line. */
export interface Today {
  readonly state?: RailState;
  /** True − surveyed grade, rise over run; absent: none. */
  readonly grade?: Quantity;
  /** Adhesion of wheels that no sand reaches; absent: that of all. */
  readonly bare?: Quantity;
  /** Rail that wets the blocks; absent: that under the wheels. */
  readonly blocksOn?: RailState;
  /** Where the rail is in another state. */
  readonly elsewhere?: readonly InputsElsewhere[];
}

/** The same train on a rail in another state, and where the train's head meets it: apart, growing, m. */
export interface InputsElsewhere {
  readonly inputs: StopInputs;
  readonly from: Float64Array;
  readonly to: Float64Array;
}

export interface StopInputs {
  readonly potential: Potential;
  /** m over couplers. */
  readonly length: number;
  /** kg, likely, and its weight, N. */
  readonly mass: number;
  readonly weight: number;
  readonly effectiveMass: number;
  /** Mass at its bounds ÷ likely mass. */
  readonly massSpread: Quantity;
  readonly resistance: {
    readonly low: ResistanceTerms;
    readonly value: ResistanceTerms;
    readonly high: ResistanceTerms;
  };
  readonly adhesion: Quantity;
  readonly bare: Quantity;
  readonly skid: AssumedValues['skid'];
  readonly easing: AssumedValues['easing'];
  /** A spot that nobody knew of: chance of one in a stop today, adhesion there ÷ beside it, length m. */
  readonly badSpot: { readonly chance: Quantity; readonly factor: Quantity; readonly length: Quantity };
  /** True − surveyed grade, rise over run. */
  readonly grade: Quantity;
  readonly reaction: Quantity;
  /** Duration of the whole build-up at its likely figure, s, and its bounds ÷ likely. */
  readonly rampTime: number;
  readonly rampSpread: Quantity;
  readonly groups: number;
  readonly blockLow: Float64Array;
  readonly blockValue: Float64Array;
  readonly blockHigh: Float64Array;
  readonly load: Float64Array;
  /** Whether no sand reaches the group's wheels. */
  readonly unsanded: Uint8Array;
  /** How far the group's wheels reach behind the train's head, m. */
  readonly front: Float64Array;
  readonly rear: Float64Array;
  readonly elsewhere: readonly InputsElsewhere[];
  /** Handle that eases the group with all others on it, −1: it came on by itself. */
  readonly handle: Int16Array;
  readonly handles: number;
  /** Index into `friction`; the first is that of forces that do not change with speed. */
  readonly material: Int8Array;
  readonly friction: readonly FrictionTable[];
  /** Surge brakes, whose force that of the others makes. */
  readonly pushed: readonly PushedGroup[];
  readonly isPushed: Uint8Array;
  /** Per vehicle: mass, its bounds, kg, and rolling resistance at its bounds, N; per group its vehicle. */
  readonly vehicleMass: Float64Array;
  readonly vehicleMassLow: Float64Array;
  readonly vehicleMassHigh: Float64Array;
  readonly rollingLow: Float64Array;
  readonly rollingValue: Float64Array;
  readonly rollingHigh: Float64Array;
  readonly vehicle: Int16Array;
  /** What was measured together; undefined: nothing. */
  readonly fits: InputFits | undefined;
  /** Per group and step: mean of its ramp over the step, and its weight on the distance run. */
  readonly rampMean: Float64Array;
  readonly rampLead: Float64Array;
  /** Ramp at the step's start, per group and node. */
  readonly rampNode: Float64Array;
}

/** ∫ and ∫∫ of a ramp that rises linearly from 0 at `dead` to 1 at `dead + build`. */
const ramp = (t: number, dead: number, build: number): number =>
  t <= dead ? 0 : t >= dead + build ? 1 : (t - dead) / build;
const rampOnce = (t: number, dead: number, build: number): number => {
  if (t <= dead) return 0;
  const x = t - dead;
  return x >= build ? x - build / 2 : (x * x) / (2 * build);
};
const rampTwice = (t: number, dead: number, build: number): number => {
  if (t <= dead) return 0;
  const x = t - dead;
  if (x < build) return (x * x * x) / (6 * build);
  const past = x - build;
  return (build * build) / 6 + (build / 2) * past + (past * past) / 2;
};

/**
 * N by group. Two gears on the same wheels share their load by what each does there today: wet, blocks of one kind lose
 * more than those of another.
 */
function sharedToday(groups: readonly BrakedGroup[], atRest: readonly number[]): Float64Array {
  return Float64Array.from(groups, (g, i) => {
    let [load, force, gears] = [0, 0, 0];
    groups.forEach((o, j) => {
      if (o.vehicle !== g.vehicle || o.group !== g.group) return;
      load += o.load;
      force += atRest[j];
      gears++;
    });
    return gears === 1 || force === 0 ? g.load : (load * atRest[i]) / force;
  });
}

export function buildInputs(
  loaded: LoadedTrain,
  groups: readonly BrakedGroup[],
  potential: Potential,
  adhesion: Quantity,
  reaction: Quantity,
  assumed: AssumedValues,
  today: Today = {},
): StopInputs {
  const count = groups.length;
  const state = today.state ?? 'dry';
  const end = (g: BrakedGroup): number => g.deadTime.value + g.buildUp.value;
  const rampTime = groups.reduce((longest, g) => Math.max(longest, end(g)), 0);
  const blocks = blocksOf(groups);
  const material = Int8Array.from(groups, (g) => 1 + blocks.findIndex((b) => sameBlocks(b, g)));
  const friction = [
    steady,
    ...blocks.map(({ points, block }) => ({
      low: tabulate((v) => frictionAt(points, v, -1)),
      value: tabulate((v) => frictionAt(points, v, 0)),
      high: tabulate((v) => frictionAt(points, v, 1)),
      wet: blockWetness(block, today.blocksOn ?? state, assumed),
    })),
  ];
  const atRest = groups.map(
    (g, i) => g.block.value * friction[material[i]].value[0] * friction[material[i]].wet.value,
  );
  const handles = [...new Set(groups.flatMap((g) => (g.handle === undefined ? [] : [g.handle])))];
  const first = loaded.vehicles[0]?.index ?? 0;
  const array = (of: (g: BrakedGroup) => number): Float64Array => Float64Array.from(groups, of);
  const lowMass = loaded.vehicles.reduce((sum, v) => sum + v.massLow, 0);
  const highMass = loaded.vehicles.reduce((sum, v) => sum + v.massHigh, 0);
  return {
    potential,
    length: loaded.length,
    mass: loaded.mass,
    weight: loaded.mass * GRAVITY,
    effectiveMass: loaded.effectiveMass,
    massSpread: { value: 1, low: lowMass / loaded.mass, high: highMass / loaded.mass, how: 'stated' },
    resistance: {
      low: resistanceTerms(loaded.vehicles, -1),
      value: resistanceTerms(loaded.vehicles, 0),
      high: resistanceTerms(loaded.vehicles, 1),
    },
    adhesion,
    bare: today.bare ?? adhesion,
    skid: assumed.skid,
    easing: assumed.easing,
    badSpot: { ...assumed.badSpot, chance: assumed.badSpot.chance[state] },
    grade: today.grade ?? exact(0),
    reaction,
    rampTime,
    rampSpread: timingSpread(groups),
    groups: count,
    blockLow: array((g) => g.block.low),
    blockValue: array((g) => g.block.value),
    blockHigh: array((g) => g.block.high),
    load: sharedToday(groups, atRest),
    unsanded: Uint8Array.from(groups, (g) => (g.sanded ? 0 : 1)),
    front: array((g) => middleOf(loaded, g, first) - halfBase(loaded, g, first)),
    rear: array((g) => middleOf(loaded, g, first) + halfBase(loaded, g, first)),
    elsewhere: today.elsewhere ?? [],
    handle: Int16Array.from(groups, (g) => (g.handle === undefined ? -1 : handles.indexOf(g.handle))),
    handles: handles.length,
    material,
    friction,
    pushed: pushedGroups(groups, first),
    isPushed: Uint8Array.from(groups, (g) => (g.gear.pushed ? 1 : 0)),
    vehicleMass: Float64Array.from(loaded.vehicles, (v) => v.mass),
    vehicleMassLow: Float64Array.from(loaded.vehicles, (v) => v.massLow),
    vehicleMassHigh: Float64Array.from(loaded.vehicles, (v) => v.massHigh),
    rollingLow: Float64Array.from(loaded.vehicles, (v) => resistanceTerms([v], -1).a),
    rollingValue: Float64Array.from(loaded.vehicles, (v) => resistanceTerms([v], 0).a),
    rollingHigh: Float64Array.from(loaded.vehicles, (v) => resistanceTerms([v], 1).a),
    vehicle: Int16Array.from(groups, (g) => g.vehicle - first),
    fits: fitsOf(loaded, groups, reaction),
    ...rampTables(groups, rampTime),
  };
}

/** The same train with brakes that nobody eases. */
export const heldOn = (inputs: StopInputs): StopInputs => ({
  ...inputs,
  handle: inputs.handle.map(() => -1),
  elsewhere: inputs.elsewhere.map((e) => ({ ...e, inputs: heldOn(e.inputs) })),
});

/** Wheels bear on the rail over no less than this, m, to each side of their middle: a wheel's own length. */
const LEAST_REACH = 0.15;

const groupOf = ({ vehicles }: LoadedTrain, { vehicle, group }: BrakedGroup, first: number) =>
  vehicles[vehicle - first].vehicle.groups[group];

const middleOf = (loaded: LoadedTrain, g: BrakedGroup, first: number): number =>
  loaded.vehicles[g.vehicle - first].behind - loaded.vehicles[0].behind + groupOf(loaded, g, first).at;

const halfBase = (loaded: LoadedTrain, g: BrakedGroup, first: number): number =>
  Math.max(LEAST_REACH, groupOf(loaded, g, first).wheelBase / 2);

const tabulate = (of: (speed: number) => number): Float64Array =>
  Float64Array.from({ length: SPEED_NODES }, (_, i) => of(i * SPEED_STEP));

const ones = new Float64Array(SPEED_NODES).fill(1);
const steady: FrictionTable = { low: ones, value: ones, high: ones, wet: exact(1) };

interface Blocks {
  readonly points: readonly FrictionPoint[];
  readonly block: Block;
}

const sameBlocks = ({ points, block }: Blocks, g: BrakedGroup): boolean =>
  g.friction === points && (g.material ?? 'unknown') === block;

/** The kinds of block on the train: friction by speed, and of what. */
function blocksOf(groups: readonly BrakedGroup[]): Blocks[] {
  const found: Blocks[] = [];
  for (const g of groups) {
    if (!g.friction || found.some((b) => sameBlocks(b, g))) continue;
    found.push({ points: g.friction, block: g.material ?? 'unknown' });
  }
  return found;
}

function rampTables(
  groups: readonly BrakedGroup[],
  rampTime: number,
): { rampMean: Float64Array; rampLead: Float64Array; rampNode: Float64Array } {
  const rampMean = new Float64Array(groups.length * RAMP_STEPS);
  const rampLead = new Float64Array(groups.length * RAMP_STEPS);
  const rampNode = new Float64Array(groups.length * RAMP_STEPS);
  const dt = rampTime / RAMP_STEPS;
  groups.forEach((g, i) => {
    const [dead, build] = [g.deadTime.value, g.buildUp.value];
    for (let k = 0; k < RAMP_STEPS && dt > 0; k++) {
      const [t, next] = [k * dt, (k + 1) * dt];
      const once = rampOnce(next, dead, build) - rampOnce(t, dead, build);
      rampMean[i * RAMP_STEPS + k] = once / dt;
      rampLead[i * RAMP_STEPS + k] =
        (rampTwice(next, dead, build) - rampTwice(t, dead, build) - rampOnce(t, dead, build) * dt) /
        (dt * dt);
      rampNode[i * RAMP_STEPS + k] = ramp(t, dead, build);
    }
  });
  return { rampMean, rampLead, rampNode };
}

/** Bounds of the whole build-up's duration ÷ likely, weighted by force at the rail: all brakes are early or late together. */
function timingSpread(groups: readonly BrakedGroup[]): Quantity {
  const sum = (of: (g: BrakedGroup) => number): number =>
    groups.reduce((total, g) => total + forceAtRest(g) * of(g), 0);
  const middle = sum((g) => g.deadTime.value + g.buildUp.value / 2);
  if (middle === 0) return { value: 1, low: 1, high: 1, how: 'stated' };
  return {
    value: 1,
    low: sum((g) => g.deadTime.low + g.buildUp.low / 2) / middle,
    high: sum((g) => g.deadTime.high + g.buildUp.high / 2) / middle,
    how: 'stated',
  };
}

/** Value at a position from three parallel arrays. */
export const between3 = (low: number, value: number, high: number, p: number): number =>
  p < 0 ? value + p * (value - low) : value + p * (high - value);

/** Rolling resistance of one vehicle by itself, N. @param p position between its bounds */
export const rollingAt = (
  { rollingLow, rollingValue, rollingHigh }: StopInputs,
  j: number,
  p: number,
): number => between3(rollingLow[j], rollingValue[j], rollingHigh[j], p);
