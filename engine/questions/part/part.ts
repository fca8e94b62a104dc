/**
 * One half of a parted train made ready to roll: what grade and curves, resistance and the brakes left do
 * to it, per kg of its inertia.
 */

import { exact } from '../../base/quantity.ts';
import { type Careful, cautionOfPart } from '../../motion/caution.ts';
import { modelOf, type StopModel, settledAfter } from '../../motion/model.ts';
import { gradeSpread } from '../../motion/prepare.ts';
import type { Scenario } from '../../motion/scenario.ts';
import { buildInputs, type StopInputs } from '../../motion/stop-inputs.ts';
import type { OutingContext } from '../../outing/open.ts';
import { railsMet, railsMetBy } from '../../outing/rails.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import type { Potential } from '../../things/line/potential.ts';
import { brakedOnSand, type RailState, unsanded, wetter } from '../../things/rail.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { type Grid, type Ground, groundOf } from './ground.ts';
import { type Placed, placedOn, REACH } from './placed.ts';

export interface Part {
  /** Its vehicles, and its ends behind the whole train's head, m. */
  readonly first: number;
  readonly last: number;
  readonly front: number;
  readonly rear: number;
  readonly step: number;
  readonly cells: number;
  readonly loop: boolean;
  /** First and last node at which all of it stands on a point-to-point line. */
  readonly leastNode: number;
  readonly mostNode: number;
  /** J/kg by cell and m/s² by node, of the half's inertia. */
  readonly ground: Ground;
  /**
   * Resistance a + b·v + c·v², m/s². Whichever way it rolls, `a` is less by what the survey may have missed of the fall
   * that way.
   */
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly braked: boolean;
  readonly model: StopModel;
  /** s from the parting until its brakes are full on. */
  readonly fullAt: number;
  /** v²/2 at which a vehicle of it goes over, by node; empty: nothing known of it. */
  readonly tip: Float64Array;
  /** The same of the vehicles alone whose centre of gravity was measured; absent: all were. */
  readonly sureTip?: Float64Array;
  /** By node: place under its rear end, −1 none. */
  readonly placeAtRear: Int16Array;
  /** Where the rail is not the day's; absent: nowhere, or nothing is braked. */
  readonly placed?: Placed;
}

/** One scenario for all parts, or one draw in a hundred of each by itself. */
export type Luck = Scenario | Careful;

/** What all parts of one outing share. */
export interface Basis {
  readonly context: OutingContext;
  readonly grid: Grid;
  readonly vehicles: readonly Ground[];
  /** v²/2 at which each vehicle goes over, by node of the grid. */
  readonly tips: readonly (Float64Array | undefined)[];
  /** Vehicles whose centre of gravity is only bounded. */
  readonly unmeasured: ReadonlySet<number>;
  /** By cell of the line: index of the place where people are or cross, −1 none. */
  readonly places: Int16Array;
}

export function partOf(
  basis: Basis,
  first: number,
  last: number,
  groups: readonly BrakedGroup[],
  luck: Luck,
  wary = true,
): Part {
  const { context, grid } = basis;
  const train = slice(context.loaded, first, last);
  const front = train.vehicles[0].behind;
  const brakes = brakesOf(basis, front, train, groups, luck, wary);
  const { model } = brakes;
  const { inertia } = model;
  const rear = front + train.length;
  return {
    first,
    last,
    front,
    rear,
    step: grid.step,
    cells: grid.cells,
    loop: grid.loop,
    leastNode: grid.loop ? -Infinity : Math.ceil(rear / grid.step - 1e-9),
    mostNode: grid.loop ? Infinity : grid.lineCells + Math.floor(front / grid.step + 1e-9),
    ground: perKilogram(groundOf(basis.vehicles, first, last), model.massFactor / inertia),
    a: model.a / inertia,
    b: model.b / inertia,
    c: model.c / inertia,
    ...brakes,
    ...tipsOf(basis, first, last),
    placeAtRear: shifted(basis, rear),
  };
}

/** The brakes on the day's rail, and where another rail lies. @param front of the half behind the train's head, m */
function brakesOf(
  { context, grid }: Basis,
  front: number,
  train: LoadedTrain,
  groups: readonly BrakedGroup[],
  luck: Luck,
  wary: boolean,
): Pick<Part, 'braked' | 'fullAt' | 'model' | 'placed'> {
  const day = context.outing.conditions.railState;
  const others = railsMet(context, day).filter((state) => state !== day);
  const inputsOn = (state: RailState): StopInputs => inputsOf(context, train, groups, state);
  const scenario = 'draws' in luck ? carefully(inputsOn, day, others, luck) : luck;
  const laid = (state: RailState): Laid => laidOn(inputsOn(state), scenario, wary);
  const own = laid(day);
  const { model } = own;
  const braked = model.force.some((f) => f > 0) || model.block.some((f) => f > 0);
  const fullAt = settledAfter(model);
  if (!braked || others.length === 0) return { braked, fullAt, model };
  const pieces = railsMetBy(context, day, context.loaded.length + REACH, grid.cells * grid.step + REACH);
  const rails = others.map((state) => {
    const of = pieces.filter((p) => p.state === state);
    const array = (end: 'from' | 'to'): Float64Array => Float64Array.from(of, (p) => p[end]);
    return { ...laid(state), from: array('from'), to: array('to') };
  });
  const none = new Float64Array(0);
  return {
    braked,
    // Whoever eases on the worse rail has noticed later.
    fullAt: Math.max(fullAt, ...rails.map((r) => settledAfter(r.model))),
    model,
    placed: placedOn([{ ...own, from: none, to: none }, ...rails], front, grid, {
      brake: scenario.brake,
      strong: wary ? Math.abs(scenario.brake) : scenario.brake,
    }),
  };
}

function slice(loaded: LoadedTrain, first: number, last: number): LoadedTrain {
  const vehicles = loaded.vehicles.slice(first, last + 1);
  const sum = (of: (v: (typeof vehicles)[number]) => number): number =>
    vehicles.reduce((total, v) => total + of(v), 0);
  return {
    train: loaded.train,
    riders: loaded.riders,
    vehicles,
    length: sum((v) => v.vehicle.length),
    mass: sum((v) => v.mass),
    effectiveMass: sum((v) => v.effectiveMass),
  };
}

/** Not read: grade and curves enter by the cells of the ground. */
const noPotential: Potential = {
  from: 0,
  step: 1,
  count: 2,
  W: new Float64Array(2),
  slope: new Float64Array(2),
  leastSlope: 0,
  mostSlope: 0,
};

interface Laid {
  readonly inputs: StopInputs;
  readonly model: StopModel;
}

const laidOn = (inputs: StopInputs, scenario: Scenario, wary: boolean): Laid => ({
  inputs,
  model: modelOf(inputs, scenario, wary),
});

function inputsOf(
  context: OutingContext,
  train: LoadedTrain,
  groups: readonly BrakedGroup[],
  state: RailState,
): StopInputs {
  const { outing } = context;
  const adhesion = brakedOnSand(outing.assumed, state);
  // The reaction of whoever must act is in the dead time of that brake: others come on by themselves.
  const bare = unsanded(outing.assumed, state);
  return buildInputs(train, groups, noPotential, adhesion, exact(0), outing.assumed, {
    state,
    bare,
    grade: gradeSpread(context),
    blocksOn: wetter(outing.conditions.railState, state),
  });
}

/** Caution of the part itself, on whatever rail it meets. */
function carefully(
  inputsOn: (state: RailState) => StopInputs,
  day: RailState,
  others: readonly RailState[],
  careful: Careful,
): Scenario {
  const nowhere = { from: new Float64Array(0), to: new Float64Array(0) };
  const elsewhere = others.map((state) => ({ inputs: inputsOn(state), ...nowhere }));
  return cautionOfPart({ ...inputsOn(day), elsewhere }, careful);
}

function perKilogram(ground: Ground, factor: number): Ground {
  const scaled = (values: Float64Array): Float64Array => values.map((v) => v * factor);
  return {
    climb: scaled(ground.climb),
    back: scaled(ground.back),
    slopeForward: scaled(ground.slopeForward),
    slopeBack: scaled(ground.slopeBack),
  };
}

function tipsOf(basis: Basis, first: number, last: number): Pick<Part, 'tip' | 'sureTip'> {
  const all = basis.tips.slice(first, last + 1);
  const sure = all.map((t, i) => (basis.unmeasured.has(first + i) ? undefined : t));
  const tip = leastTip(basis, all);
  return sure.some((t, i) => t !== all[i]) ? { tip, sureTip: leastTip(basis, sure) } : { tip };
}

function leastTip({ grid }: Basis, tips: Basis['tips']): Float64Array {
  const known = tips.filter((t) => t !== undefined);
  if (known.length === 0) return new Float64Array(0);
  const least = new Float64Array(grid.cells + 1).fill(Infinity);
  for (const tip of known) {
    for (let j = 0; j < tip.length; j++) if (tip[j] < least[j]) least[j] = tip[j];
  }
  return least;
}

function shifted({ places, grid }: Basis, rear: number): Int16Array {
  const back = Math.floor(rear / grid.step + 1e-9);
  return Int16Array.from({ length: grid.cells + 1 }, (_, j) => {
    const cell = grid.loop ? (((j - back) % grid.cells) + grid.cells) % grid.cells : j - back;
    return cell >= 0 && cell < places.length ? places[cell] : -1;
  });
}
