/**
 * One half of a parted train made ready to roll: what grade and curves, resistance and the brakes left do
 * to it, per kg of its inertia.
 */

import { exact } from '../../base/quantity.ts';
import { buildKit } from '../../motion/kit.ts';
import { modelOf, type StopModel, settledAfter } from '../../motion/model.ts';
import { gradeSpread } from '../../motion/prepare.ts';
import type { Scenario } from '../../motion/scenario.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type RailPiece, railsAlong, railsMet } from '../../outing/rails.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import type { Potential } from '../../things/line/potential.ts';
import { type RailState, unsanded, wetter } from '../../things/rail.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { type Grid, type Ground, groundOf } from './ground.ts';

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
  /** The same on each rail that is worse than the day's, the worst last, and where that rail is. */
  readonly worse: readonly PartElsewhere[];
}

export interface PartElsewhere {
  readonly part: Part;
  readonly pieces: readonly RailPiece[];
}

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
  scenario: Scenario,
  wary = true,
): Part {
  const { context, grid } = basis;
  const train = slice(context.loaded, first, last);
  const modelOn = (state: RailState): StopModel => modelFor(context, train, groups, scenario, wary, state);
  const model = modelOn(context.outing.conditions.railState);
  const { inertia } = model;
  const front = train.vehicles[0].behind;
  const rear = front + train.length;
  const part: Part = {
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
    ...brakesOf(model),
    model,
    fullAt: settledAfter(model),
    ...tipsOf(basis, first, last),
    placeAtRear: shifted(basis, rear),
    worse: [],
  };
  return { ...part, worse: onWorseRails(context, part, modelOn) };
}

/** The same vehicles with other brakes left to them, in the same scenario. */
export function rebraked(
  { context }: Basis,
  part: Part,
  groups: readonly BrakedGroup[],
  scenario: Scenario,
  wary = true,
): Part {
  const train = slice(context.loaded, part.first, part.last);
  const modelOn = (state: RailState): StopModel => modelFor(context, train, groups, scenario, wary, state);
  const model = modelOn(context.outing.conditions.railState);
  const own = { ...part, ...brakesOf(model), model };
  return { ...own, worse: onWorseRails(context, own, modelOn) };
}

/** A half whose way meets worse rail with any of its wheels is rolled as if all its way were of that rail: the safe side. */
function onWorseRails(
  context: OutingContext,
  part: Part,
  modelOn: (state: RailState) => StopModel,
): PartElsewhere[] {
  const { conditions, assumed } = context.outing;
  const grip = (state: RailState): number => assumed.adhesion[state].value;
  const pieces = railsAlong(context, conditions.railState);
  return railsMet(context, conditions.railState)
    .filter((state) => grip(state) < grip(conditions.railState))
    .sort((a, b) => grip(b) - grip(a))
    .map((state) => {
      const model = modelOn(state);
      return {
        part: { ...part, ...brakesOf(model), model },
        pieces: pieces.filter((p) => p.state === state),
      };
    });
}

const brakesOf = (model: StopModel): Pick<Part, 'braked' | 'fullAt'> => ({
  braked: model.force.some((f) => f > 0) || model.block.some((f) => f > 0),
  fullAt: settledAfter(model),
});

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

function modelFor(
  context: OutingContext,
  train: LoadedTrain,
  groups: readonly BrakedGroup[],
  scenario: Scenario,
  wary: boolean,
  state: RailState,
): StopModel {
  const { outing } = context;
  const adhesion = outing.assumed.adhesion[state];
  // The reaction of whoever must act is in the dead time of that brake: others come on by themselves.
  const bare = unsanded(outing.assumed, state);
  const kit = buildKit(train, groups, noPotential, adhesion, exact(0), outing.assumed, {
    state,
    bare,
    grade: gradeSpread(context),
    blocksOn: wetter(outing.conditions.railState, state),
  });
  return modelOf(kit, scenario, wary);
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
