/**
 * A vehicle and its people as they may be: many bodies drawn from what was stated, and the odds of their figures.
 * What can hurt is told by one draw in a hundred; bounds are never stacked.
 *
 * Drawn for each vehicle: its tare and how high that lies, how its people sit, the stiffness of its springs, the mass of
 * each load, and of each rider mass and (of children) height; every one from the triangle between its bounds
 * (engine/base/spread). Each input's draws are spread evenly over its odds and shuffled (Latin hypercube; McKay, Beckman
 * and Conover 1979, from memory), so that some hundreds tell a percentile well. Same outing, same draws.
 */
import { GRAVITY } from '../../base/constants.ts';
import { FitDraws } from '../../base/fit-draws.ts';
import type { Quantity, SharedFit } from '../../base/quantity.ts';
import { hash, pick, seeded, triangular } from '../../base/spread.ts';
import { groupLoads, type LoadedVehicle } from '../../things/train/loaded.ts';
import { tareAlong } from '../../things/vehicle/tare.ts';
import { amplificationOf, type Body, riderCentre, tareCentre } from './body.ts';
import type { Tip } from './tipping.ts';

export const DRAWS = 500;
const SEED = 20_260_404;
/** Draws that may be worse than what is told: three of them, six in a thousand, for they tell a percentile only so well. */
const BEYOND = 3;

/** Positions of each input by its name, one for each draw. */
const tables = new Map<string, Float64Array>();

/** @param input its name: what the train shares has one for all, what a vehicle has for itself one for each */
export function positionsOf(input: string): Float64Array {
  const known = tables.get(input);
  if (known) return known;
  const made = shuffled(seeded(SEED + hash(input)));
  tables.set(input, made);
  return made;
}

function shuffled(draw: () => number): Float64Array {
  const positions = Float64Array.from({ length: DRAWS }, (_, i) => triangular((i + 0.5) / DRAWS));
  for (let i = DRAWS - 1; i > 0; i--) {
    const j = Math.floor(draw() * (i + 1));
    [positions[i], positions[j]] = [positions[j], positions[i]];
  }
  return positions;
}

/** What was measured together is drawn together; each by itself as evenly as the others (ranks: Iman and Conover 1982, from memory). */
function fittedPositions(fit: SharedFit): Float64Array {
  const name = `fit ${fit.id} ${fit.factors}`;
  const known = tables.get(name);
  if (known) return known;
  const draws = new FitDraws(SEED);
  const drawn = Float64Array.from({ length: DRAWS }, () => {
    draws.next();
    return draws.position(fit);
  });
  const made = new Float64Array(DRAWS);
  Array.from(drawn.keys())
    .sort((a, b) => drawn[a] - drawn[b])
    .forEach((i, rank) => {
      made[i] = triangular((rank + 0.5) / DRAWS);
    });
  tables.set(name, made);
  return made;
}

/** The draw whose figure is passed by no more than that. */
export function drawBeyond(figures: Float64Array): number {
  const worst: number[] = [];
  let least = -Infinity;
  for (let i = 0; i < figures.length; i++) {
    const figure = figures[i];
    if (figure <= least && worst.length > BEYOND) continue;
    let k = Math.min(worst.length, BEYOND);
    while (k > 0 && figures[worst[k - 1]] < figure) {
      worst[k] = worst[k - 1];
      k--;
    }
    worst[k] = i;
    if (worst.length > BEYOND) least = figures[worst[BEYOND]];
  }
  return worst[Math.min(BEYOND, worst.length - 1)];
}

/** What is told of a figure whose greater values are the worse. */
export const careful = (figures: Float64Array): number => figures[drawBeyond(figures)];

/** All draws of one vehicle. */
export interface BodyDraws {
  readonly loaded: LoadedVehicle;
  readonly base: number;
  readonly rollShare: readonly number[];
  /** Moment of the wind ÷ g, kg·m: the same in every draw. */
  readonly gale: number;
  readonly mass: Float64Array;
  readonly Z: Float64Array;
  readonly Y: Float64Array;
  readonly amplification: Float64Array;
  /** By group. */
  readonly groupMass: readonly Float64Array[];
  /** By rider, kg. */
  readonly riders: readonly Float64Array[];
  /** The heaviest, the two heaviest and all of them, kg. */
  readonly people: { readonly one: Float64Array; readonly two: Float64Array; readonly all: Float64Array };
}

/** Draws of a vehicle whose centre of gravity is known or bounded. @param gale moment of the wind, N·m */
export function drawBodies(
  loaded: LoadedVehicle,
  base: number,
  adultCentre: Quantity,
  gale = 0,
): BodyDraws | undefined {
  const { vehicle } = loaded;
  const centre = tareCentre(vehicle);
  if (!centre) return undefined;
  const { groups } = vehicle;
  const axles = groups.reduce((sum, g) => sum + g.axles, 0);
  const empty = (): Float64Array => new Float64Array(DRAWS);
  const drawn = {
    loaded,
    base,
    rollShare: groups.map((g) => g.axles / axles),
    gale: gale / GRAVITY,
    mass: empty(),
    Z: empty(),
    Y: empty(),
    amplification: empty(),
    groupMass: groups.map(empty),
    riders: loaded.riders.map(empty),
    people: { one: empty(), two: empty(), all: empty() },
  };
  const add = (mass: Float64Array, across: number, height: Float64Array, shares: readonly number[]): void => {
    for (let i = 0; i < DRAWS; i++) {
      const m = mass[i];
      drawn.mass[i] += m;
      drawn.Y[i] += m * across;
      drawn.Z[i] += m * height[i];
    }
    shares.forEach((share, g) => {
      const on = drawn.groupMass[g];
      for (let i = 0; i < DRAWS; i++) on[i] += share * mass[i];
    });
  };
  const carried = (at: number): number[] => groupLoads(vehicle, 0, 0, [{ mass: 1 / GRAVITY, at }]);
  add(
    drawsOf(vehicle.tare, 'tare'),
    0,
    drawsOf(centre.height, 'height of tare'),
    groupLoads(vehicle, 1 / GRAVITY, tareAlong(vehicle), []),
  );
  const [height, sits] = [empty(), positionsOf('posture')];
  for (const [r, { rider, seat }] of loaded.riders.entries()) {
    const adult = seat.adultCentre ?? adultCentre;
    const [heavy, tall] = [positionsOf(`rider ${r}`), positionsOf(`stature ${r}`)];
    const stature = riderCentre(rider, { ...adult, low: 1, value: 1, high: 1 });
    for (let i = 0; i < DRAWS; i++) {
      drawn.riders[r][i] = pick(rider.mass, heavy[i]);
      height[i] = seat.height + pick(adult, sits[i]) * pick(stature, tall[i]);
    }
    add(drawn.riders[r], seat.across, height, carried(seat.at));
  }
  for (const [l, load] of vehicle.loads.entries())
    add(drawsOf(load.mass, `load ${l}`), load.across, height.fill(load.height), carried(load.at));
  spring(drawn);
  gather(drawn);
  return drawn;
}

export function drawsOf(quantity: Quantity, input: string): Float64Array {
  const positions = quantity.fit ? fittedPositions(quantity.fit) : positionsOf(input);
  const values = new Float64Array(DRAWS);
  for (let i = 0; i < DRAWS; i++) values[i] = pick(quantity, positions[i]);
  return values;
}

function spring({ loaded, Z, amplification }: BodyDraws): void {
  const stiffness = loaded.vehicle.suspension?.rollStiffness;
  const positions = positionsOf('springs');
  for (let i = 0; i < DRAWS; i++)
    amplification[i] = amplificationOf(stiffness && pick(stiffness, positions[i]), Z[i]);
}

/** One of the draws, with the wind's moment ÷ (g·Z) of it. */
export interface People {
  readonly body: Body;
  /** kg of each rider, as `body` carries them. */
  readonly masses: readonly number[];
  readonly wind: number;
}

export function peopleIn(drawn: BodyDraws, i: number): People {
  const { loaded, base, rollShare, gale, Z, riders } = drawn;
  const { vehicle } = loaded;
  const body = { vehicle, base, mass: 0, Z: 0, Y: 0, groupMass: [], rollShare, amplification: 1 };
  bodyInto(drawn, i, body);
  return { body, masses: riders.map((m) => m[i]), wind: gale / Z[i] };
}

/** A body that is one draw after the other. */
export type ChangingBody = { -readonly [K in keyof Body]: Body[K] } & { readonly groupMass: number[] };

export function bodyInto(drawn: BodyDraws, i: number, into: ChangingBody): void {
  into.mass = drawn.mass[i];
  into.Z = drawn.Z[i];
  into.Y = drawn.Y[i];
  into.amplification = drawn.amplification[i];
  for (let g = 0; g < drawn.groupMass.length; g++) into.groupMass[g] = drawn.groupMass[g][i];
}

function gather({ riders, people: { one, two, all } }: BodyDraws): void {
  for (let i = 0; i < DRAWS; i++) {
    let [first, second] = [0, 0];
    for (let r = 0; r < riders.length; r++) {
      const m = riders[r][i];
      all[i] += m;
      if (m > first) {
        second = first;
        first = m;
      } else if (m > second) second = m;
    }
    one[i] = first;
    two[i] = first + second;
  }
}

/** A vehicle's losses of wheel load per g of side acceleration, as one draw in a hundred has them or worse. */
export interface Tips {
  readonly lift: Tip;
  readonly over: Tip;
  /** What the wind does, as a side acceleration, in g. */
  readonly wind: number;
  /** The draw that lifts its first wheel as told. */
  readonly at: number;
  readonly body: Body;
  /** Height of the centre of gravity, m. */
  readonly highest: number;
}

/** The wind is reckoned beside the side acceleration of a usual curve, g. */
const CURVE = 0.05;

export function tipsOf(drawn: BodyDraws): Tips {
  const [left, right] = [lossesOf(drawn, 1, false), lossesOf(drawn, -1, false)];
  const lift = { left: careful(left), right: careful(right) };
  const worse = lift.left >= lift.right ? left : right;
  const at = drawBeyond(worse);
  const height = drawn.Z.map((Z, i) => Z / drawn.mass[i]);
  return {
    lift,
    over: { left: careful(lossesOf(drawn, 1, true)), right: careful(lossesOf(drawn, -1, true)) },
    wind: windIn(drawn, worse, at),
    at,
    body: peopleIn(drawn, at).body,
    highest: careful(height),
  };
}

/** Wind and curve together are as bad as one draw in a hundred has them together. */
function windIn({ gale, Z }: BodyDraws, losses: Float64Array, at: number): number {
  if (gale === 0) return 0;
  if (losses[at] === Infinity) return gale / Z[at];
  return careful(losses.map((loss, i) => loss * (CURVE + gale / Z[i]))) / losses[at] - CURVE;
}

/**
 * β of each draw (tipping.ts) toward the left (1) or right (−1), of its first wheel or of the whole.
 *
 * @param lean by which the heaviest rider of each leans that way, m
 */
export function lossesOf(drawn: BodyDraws, sign: 1 | -1, whole: boolean, lean = 0): Float64Array {
  const { base, Z, Y, amplification, mass, groupMass, rollShare } = drawn;
  const losses = new Float64Array(DRAWS);
  const heaviest = drawn.people.one;
  const groups = whole ? [mass] : groupMass;
  groups.forEach((carried, g) => {
    const share = (whole ? 1 : rollShare[g]) / base;
    for (let i = 0; i < DRAWS; i++) {
      const roll = share * amplification[i];
      const aside = sign * Y[i] + lean * heaviest[i];
      const standing = carried[i] / 2 - roll * aside;
      const loss = standing > 0 && roll < Infinity ? (roll * Z[i]) / standing : Infinity;
      if (loss > losses[i]) losses[i] = loss;
    }
  });
  return losses;
}
