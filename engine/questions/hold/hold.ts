/**
 * Does it stand still? The pull of the grade on a standing train against brakes that do not leak off,
 * and against all brakes while they are tight. By joint draws: what can hurt is told by one draw in a hundred.
 *
 *   pull = Σ m·(|w′(s)| + g·ε) − Σ m·g·r        hold = Σ min(max(Σ_stops φ₀·ω·B, Σ_parks φ₀·ω·B), µ·N)
 *
 * w′ pull of the grade alone (m/s²), ε true − surveyed grade, r rolling resistance, B block force, φ₀ its friction at
 * rest and ω what a wet rail leaves of it, µ adhesion, N load on the braked wheels. Drawn once for the train: adhesion,
 * friction, wetness and ε; for each vehicle its mass, resistance and brake. Wheels locked at rest hold up to
 * adhesion: they do not slide until it is passed. Where a brake that parks works on the same wheels as one that stops, the harder
 * of the two counts: on shared blocks a screw wound against a piston takes over what it does, and adds nothing (common practice, no source).
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { once } from '../../base/remember.ts';
import { percentile, pick, seeded, triangular } from '../../base/spread.ts';
import type { SumRef } from '../../base/sum.ts';
import { gradeSpread } from '../../motion/prepare.ts';
import { between3 } from '../../motion/stop-inputs.ts';
import type { OutingContext } from '../../outing/open.ts';
import { railsMet, worstUnder } from '../../outing/rails.ts';
import { frictionAt, type GearAt, gearForce, spreadOverGroups } from '../../things/brake/force.ts';
import { gearStates } from '../../things/brake/system.ts';
import { blockWetness } from '../../things/brake/wet.ts';
import type { Potential } from '../../things/line/potential.ts';
import { brakedOnSand, type RailState, unsanded, wetter } from '../../things/rail.ts';
import { holderOf } from '../../things/train/crew.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { resistanceTerms } from '../../things/train/resistance.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';

/** Which gears are put on. */
export type Puts = (gear: BrakeGear, vehicle: number) => boolean;

export interface StandPull {
  /** Carefully, N, > 0 where the train would roll. */
  readonly pull: number;
  /** N, of the grade alone, before the least rolling resistance is taken off. */
  readonly ofGrade: number;
  readonly at: number;
  /** Downhill is forward (true) or backward. */
  readonly forward: boolean;
}

/** One train where it is hardest to stand on one rail. */
export interface Stand extends StandPull {
  readonly rail: RailState;
  /**
   * What the gears that are put on hold against that pull, N: where it is less, more than one draw in a hundred rolls.
   *
   * @param train the same vehicles, with brakes as they are by then
   */
  readonly hold: (puts: Puts, train?: LoadedTrain) => number;
  /** They hold with everything at its worst bound at once: no draw need be looked at. */
  readonly surely: (puts: Puts) => boolean;
  /** What they hold whatever pulls, N: less in one draw of a hundred. */
  readonly leastHold: (puts: Puts) => number;
  /** Those that are put on whose force nobody knows: they hold nothing in the figures. */
  readonly unmeasured: (puts: Puts) => readonly GearAt[];
}

/** The sum of the pull of the grade on a standing train. */
export const gradeSum = ({ mass }: LoadedTrain, { ofGrade }: StandPull): SumRef => ({
  id: 'grade-force',
  inputs: { mass, grade: ofGrade / (mass * GRAVITY) },
  differs: 'rolling',
});

/** Hardest node to stand at among those that count, from a potential of gravity alone; −1: none counts. */
function hardestNode(gravity: Potential, length: number, counts: (head: number) => boolean): number {
  const count = Math.min(gravity.count, Math.floor((length - gravity.from) / gravity.step) + 1);
  let worst = -1;
  for (let j = 0; j < count; j++) {
    if (worst >= 0 && Math.abs(gravity.slope[j]) <= Math.abs(gravity.slope[worst])) continue;
    if (counts(gravity.from + j * gravity.step)) worst = j;
  }
  return worst;
}

const DRAWS = 1000;
const SEED = 20_260_403;
/** What can hurt, of a thousand draws that tell a percentile only so well: aimed at a little beyond one in a hundred. */
const ODDS = 0.007;

/**
 * The hardest place on each rail that the train may stand on with any of its wheels; of two rails the worse.
 *
 * @param gravity potential of the grade alone
 * @param state of the rest of the line
 */
export function standsOn(
  context: OutingContext,
  gravity: Potential,
  state: RailState,
  draws: number = DRAWS,
): Stand[] {
  const { line, loaded } = context;
  const under = worstUnder(context, state, [{ front: 0, rear: loaded.length }], line.length);
  return railsMet(context, state).flatMap((rail) => {
    const node = hardestNode(gravity, line.length, (head) => under(head) === rail);
    if (node < 0) return [];
    const at = gravity.from + node * gravity.step;
    return [standAt(context, at, gravity.slope[node], state, rail, draws)];
  });
}

/** The stand of which something is least. */
export const hardestOf = <S extends Stand>(stands: readonly S[], spare: (stand: S) => number): S =>
  stands.reduce((a, b) => (spare(b) < spare(a) ? b : a));

function standAt(
  context: OutingContext,
  at: number,
  slope: number,
  state: RailState,
  rail: RailState,
  draws: number,
): Stand {
  const { loaded } = context;
  const drawn = once(() => drawnFor(draws, loaded.vehicles.length));
  const pulls = once(() => pullsOf(context, drawn(), Math.abs(slope)));
  const pull = once(() => Math.max(0, percentile(pulls().slice().sort(), 1 - ODDS)));
  // Blocks stay as wet as the day is.
  const blocksOn = wetter(state, rail);
  const holds = (puts: Puts, train: LoadedTrain, by: Drawn): Float64Array =>
    holdsOf(context, heldGroups(context, train, puts, blocksOn), by, rail);
  return {
    get pull() {
      return pull();
    },
    get ofGrade() {
      return pull() > 0 ? pull() + resistanceTerms(loaded.vehicles, -1).a : Math.abs(slope);
    },
    at,
    forward: slope < 0,
    rail,
    hold: (puts, train = loaded) => {
      const spare = holds(puts, train, drawn()).map((hold, i) => hold - Math.max(0, pulls()[i]));
      return Math.max(0, pull() + percentile(spare.sort(), ODDS));
    },
    surely: (puts) =>
      holds(puts, loaded, worstOf(loaded.vehicles.length))[0] >= mostPull(context, Math.abs(slope)),
    leastHold: (puts) => percentile(holds(puts, loaded, drawn()).sort(), ODDS),
    unmeasured: (puts) => unmeasuredOf(context, puts),
  };
}

/** Everything that holds at its low bound, as if it were a draw. */
const worstOf = (vehicles: number): Drawn => ({
  draws: 1,
  vehicles,
  shared: new Float64Array(SHARED).fill(-1),
  own: new Float64Array(vehicles * OWN).fill(-1),
});

/** More than any draw pulls, N. */
function mostPull(context: OutingContext, slope: number): number {
  const { vehicles, mass: likely } = context.loaded;
  const steepest = slope / likely + GRAVITY * gradeSpread(context).high;
  const pull = vehicles.reduce((sum, { vehicle, massLow, massHigh }) => {
    const each = steepest - GRAVITY * vehicle.resistance.rolling.low;
    return sum + each * (each > 0 ? massHigh : massLow);
  }, 0);
  return Math.max(0, pull);
}

function unmeasuredOf({ loaded, outing: { assumed }, air }: OutingContext, puts: Puts): GearAt[] {
  return loaded.vehicles.flatMap(({ vehicle: { brakes } }, vehicle) =>
    brakes
      .filter((gear) => puts(gear, vehicle) && !gearForce(gear, assumed, air.pressure, air.seaLevel))
      .map((gear) => ({ vehicle, gear })),
  );
}

/** Positions of all draws: of what the train shares, and of what each vehicle has for itself, so many of each a draw. */
interface Drawn {
  readonly draws: number;
  readonly vehicles: number;
  readonly shared: Float64Array;
  readonly own: Float64Array;
}
const SHARED = 4;
const OWN = 3;

/** The last of each number of draws: counts ask of many trains, each draw's vehicles the same from the front. */
const known = new Map<number, Drawn>();
/** Drawn for so many vehicles more than are asked for: the next train has one more. */
const AHEAD = 16;

function drawnFor(draws: number, atLeast: number): Drawn {
  const before = known.get(draws);
  if (before && before.vehicles >= atLeast) return before;
  const vehicles = before ? atLeast + AHEAD : atLeast;
  const shared = new Float64Array(draws * SHARED);
  const own = new Float64Array(draws * vehicles * OWN);
  for (let i = 0; i < draws; i++) {
    const draw = seeded(SEED + 1_000_003 * i);
    for (let k = 0; k < SHARED; k++) shared[i * SHARED + k] = triangular(draw());
    const from = i * vehicles * OWN;
    for (let k = 0; k < vehicles * OWN; k++) own[from + k] = triangular(draw());
  }
  const made = { draws, vehicles, shared, own };
  known.set(draws, made);
  return made;
}

/** kg. @param p position between the bounds */
const massAt = ({ mass, massLow, massHigh }: LoadedTrain['vehicles'][number], p: number): number =>
  between3(massLow, mass, massHigh, p);

function pullsOf(context: OutingContext, drawn: Drawn, slope: number): Float64Array {
  const { vehicles, mass: likely } = context.loaded;
  const grade = gradeSpread(context);
  const pulls = new Float64Array(drawn.draws);
  for (let i = 0; i < drawn.draws; i++) {
    let mass = 0;
    let resists = 0;
    for (let j = 0; j < vehicles.length; j++) {
      const from = (i * drawn.vehicles + j) * OWN;
      const one = massAt(vehicles[j], drawn.own[from + 2]);
      mass += one;
      resists += one * pick(vehicles[j].vehicle.resistance.rolling, drawn.own[from + 1]);
    }
    const steeper = pick(grade, drawn.shared[i * SHARED + 3]);
    pulls[i] = (mass / likely) * slope + GRAVITY * (mass * steeper - resists);
  }
  return pulls;
}

/** What one gear does to the wheels of one group. */
interface HeldGroup {
  readonly vehicle: number;
  /** The first of several gears on the same wheels, which together hold no more than adhesion there. */
  readonly sameWheels: boolean;
  readonly block: Quantity;
  readonly friction: readonly [number, number, number];
  readonly wet: Quantity;
  /** N, with the vehicle as heavy as likely. */
  readonly load: number;
  readonly sanded: boolean;
  /** A brake to park with. */
  readonly parks: boolean;
}

function heldGroups(
  { outing: { assumed }, air }: OutingContext,
  train: LoadedTrain,
  puts: Puts,
  state: RailState,
): HeldGroup[] {
  return train.vehicles.flatMap(({ vehicle: { brakes } }, vehicle) => {
    const groups = brakes
      .filter((gear) => puts(gear, vehicle))
      .flatMap((gear) => {
        const force = gearForce(gear, assumed, air.pressure, air.seaLevel);
        return force ? spreadOverGroups(train, { vehicle, gear }, force, assumed) : [];
      })
      .sort((a, b) => a.group - b.group);
    return groups.map(({ group, gear, block, friction, material, load, sanded }, i) => ({
      vehicle,
      sameWheels: i > 0 && groups[i - 1].group === group,
      block,
      friction: friction ? atRest(friction) : ([1, 1, 1] as const),
      wet: blockWetness(material ?? 'unknown', friction ? state : 'dry', assumed),
      load,
      sanded,
      parks: gear.parking,
    }));
  });
}

const atRest = (friction: Parameters<typeof frictionAt>[0]): readonly [number, number, number] => [
  frictionAt(friction, 0, -1),
  frictionAt(friction, 0, 0),
  frictionAt(friction, 0, 1),
];

/** Holding force at rest by draw, N. */
function holdsOf(
  { loaded, outing: { assumed } }: OutingContext,
  held: readonly HeldGroup[],
  drawn: Drawn,
  rail: RailState,
): Float64Array {
  const adhesion = brakedOnSand(assumed, rail);
  const bare = unsanded(assumed, rail);
  const holds = new Float64Array(drawn.draws);
  for (let i = 0; i < drawn.draws; i++) {
    const from = i * SHARED;
    const sanded = pick(adhesion, drawn.shared[from]);
    const unsandedToday = pick(bare, drawn.shared[from]);
    let total = 0;
    let stops = 0;
    let parks = 0;
    let limit = 0;
    for (let j = 0; j < held.length; j++) {
      const g = held[j];
      const own = (i * drawn.vehicles + g.vehicle) * OWN;
      if (!g.sameWheels) {
        total += Math.min(Math.max(stops, parks), limit);
        stops = parks = 0;
        const body = loaded.vehicles[g.vehicle];
        const share = massAt(body, drawn.own[own + 2]) / body.mass;
        limit = (g.sanded ? sanded : unsandedToday) * g.load * share;
      }
      const friction = between3(g.friction[0], g.friction[1], g.friction[2], drawn.shared[from + 1]);
      const force = pick(g.block, drawn.own[own]) * friction * pick(g.wet, drawn.shared[from + 2]);
      if (g.parks) parks += force;
      else stops += force;
    }
    holds[i] = total + Math.min(Math.max(stops, parks), limit);
  }
  return holds;
}

/** Holds of the brakes that do not leak off, N, by who puts them on. */
export interface ParkedHold {
  /** What the driver alone can put on. */
  readonly driver: number;
  /** With the brake of a guard on the guard's own vehicle: what may be relied on. */
  readonly crew: number;
  /** With a rider at every other one. */
  readonly everybody: number;
}

/** What parks, by who puts it on. */
export function parking(loaded: LoadedTrain): Readonly<Record<keyof ParkedHold, Puts>> {
  const holder = holderOf(loaded);
  return {
    driver: (g, v) => g.parking && holder(g, v) === 'driver',
    crew: (g, v) => g.parking && holder(g, v) !== 'riders',
    everybody: (g) => g.parking,
  };
}

/** @param hold of the gears that a test admits, N */
export function parkedHold(loaded: LoadedTrain, hold: (puts: Puts) => number): ParkedHold {
  const { driver, crew, everybody } = parking(loaded);
  return { driver: hold(driver), crew: hold(crew), everybody: hold(everybody) };
}

/**
 * Gears that the crew put on a standing train: what parks within reach of driver or guard, and what answers the
 * driver while it is tight.
 */
export function crewGears(loaded: LoadedTrain): Puts {
  const holder = holderOf(loaded);
  const answers = gearStates(loaded).filter((s) => s.answers);
  const at = new Set(answers.map((s) => `${s.vehicle} ${s.gear.id}`));
  return (gear, vehicle) =>
    (gear.parking && holder(gear, vehicle) !== 'riders') || at.has(`${vehicle} ${gear.id}`);
}
