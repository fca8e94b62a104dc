/**
 * The rail under each wheel of a parted half, place by place: what its brakes do where the rail is not the day's.
 *
 *   F(s, v) = Σ_alone Σ_k c_gk(s)·f_gk(v) + F_eased(s, v)
 *
 * c_gk share of a braked group's wheels on rail k, f_gk what the group does there (N). What came on by itself does what the
 * rail under it holds; wheels that a rail locked at the speed that they had stay locked on better rail while friction there is less than the brake
 * asks, until the half stands: nobody lets go of them. What somebody works is eased by the law of `motion/rails.ts`, as much
 * later as the person notices at that speed.
 *
 * Kept by node of the grid, each wheel's coverage as the mean over a cell: a spot shorter than a cell counts for its length.
 */

import { brakeForce, type StopModel } from '../../motion/model.ts';
import { covered, easedBy } from '../../motion/rails.ts';
import { beforeEasing, harderBy, lockedAt, onceEased } from '../../motion/scenario-forces.ts';
import { RAMP_STEPS, SPEED_NODES, SPEED_STEP, type StopInputs } from '../../motion/stop-inputs.ts';

/** The half on one rail, and where the whole train's head is as it lies there, m: apart, growing; of the day's own none. */
export interface RailUnder {
  readonly inputs: StopInputs;
  readonly model: StopModel;
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/** By group and speed, N: until the driver eases, from then on, and with wheels locked where they may lock at all. */
interface Does extends RailUnder {
  readonly before: Float64Array;
  readonly once: Float64Array;
  readonly kept: Float64Array;
  /** Of all that is eased, by speed, N: what it asks of the rail, does before and after somebody eases it. */
  readonly asks: Float64Array;
  readonly allBefore: Float64Array;
  readonly allOnce: Float64Array;
}

/** A rail against the one that holds most, by speed: what each eased group loses there, what some do more, N. */
interface Loss {
  readonly rail: number;
  readonly of: Float64Array;
  readonly all: Float64Array;
  readonly more: Float64Array;
}

export interface Placed {
  /** The day's own first. */
  readonly rails: readonly Does[];
  /** Of the rails the one that holds most, and what is lost on the others, the worst first. */
  readonly best: number;
  readonly losses: readonly Loss[];
  readonly groups: number;
  readonly alone: Uint8Array;
  /** Groups that nobody eases and some rail locks. */
  readonly locks: Uint8Array;
  /** By rail and group: the fastest at which the rail locks it, m/s, −1: never; and how soon it is braked so hard, s. */
  readonly locksBelow: readonly Float64Array[];
  readonly locksFrom: readonly Float64Array[];
  /** Where the groups' wheels are behind the whole train's head, with half a cell to each side, m. */
  readonly front: Float64Array;
  readonly rear: Float64Array;
  readonly first: number;
  readonly last: number;
  readonly step: number;
  /** How far from another rail a driver still notices it, m; 0: nobody eases. */
  readonly noticed: number;
  /** Share of what can slide that a driver feels as all of it. */
  readonly felt: number;
  /** By node: a rail that is not the day's matters there; a braked wheel is on it. */
  readonly near: Uint8Array;
  readonly under: Uint8Array;
  /** By node where such a rail matters: the fastest at which a wheel there locks, m/s, −1: none does; how soon, s. */
  readonly touched: Float64Array;
  readonly touchedFrom: Float64Array;
  /** By whether wheels were locked on the way and by node, forward and backward: all brakes by speed, N. */
  readonly rows: readonly [ByNode, ByNode, ByNode, ByNode];
  /** The same by rail, with all of the half on it. */
  readonly whole: readonly [ByNode, ByNode];
  /** Where no other rail is near: as the day has it, and with wheels that stay locked. */
  readonly plain: Float64Array;
  readonly allKept: Float64Array;
}

type ByNode = (Float64Array | undefined)[];

/** A wheel that passed worse rail so long ago is not asked any more, m: no half rolls locked so far on one spot. */
export const REACH = 100;
/** Faster than this nobody is thought to notice later in metres, m/s. */
const NOTICED_AT_MOST = 10;

/** @param scenario position of the brake's spread, and the end that is asked whether it locks */
export function placedOn(
  rails: readonly RailUnder[],
  front: number,
  grid: { readonly step: number; readonly cells: number },
  scenario: Spread,
): Placed {
  const [{ inputs, model }] = rails;
  const { groups } = inputs;
  const { step, cells } = grid;
  const grip = (k: number): number => rails[k].inputs.adhesion.value;
  const order = rails.map((_, k) => k).sort((a, b) => grip(a) - grip(b));
  const alone = Uint8Array.from(inputs.handle, (h) => (h < 0 ? 1 : 0));
  const locksBelow = rails.map((r) =>
    Float64Array.from(alone, (by, g) => (by ? fastestLocked(r, g, scenario) : -1)),
  );
  const locksFrom = rails.map((r) => Float64Array.from(alone, (_, g) => soonestLocked(r, g, scenario)));
  const locks = Uint8Array.from(alone, (_, g) => (locksBelow.some((below) => below[g] >= 0) ? 1 : 0));
  const does = rails.map((r) => doesOn(r, alone, locks, scenario));
  const placed: Placed = {
    first: Math.min(...inputs.front) + front - step / 2,
    last: Math.max(...inputs.rear) + front + step / 2,
    rails: does,
    best: order[order.length - 1],
    losses: order.slice(0, -1).map((r) => lossOn(does, order[order.length - 1], r, alone)),
    groups,
    alone,
    locks,
    locksBelow,
    locksFrom,
    front: inputs.front.map((x) => x + front - step / 2),
    rear: inputs.rear.map((x) => x + front + step / 2),
    step,
    near: new Uint8Array(cells + 1),
    under: new Uint8Array(cells + 1),
    touched: new Float64Array(cells + 1).fill(-1),
    touchedFrom: new Float64Array(cells + 1).fill(Infinity),
    rows: [[], [], [], []],
    whole: [[], []],
    felt: inputs.easing.felt.value,
    noticed: alone.includes(0) ? NOTICED_AT_MOST * Math.max(...rails.map((r) => r.model.notice)) : 0,
    plain: model.force,
    allKept: sumOf(groups, does[0], alone),
  };
  if (groups > 0) markNodes(placed, cells);
  return placed;
}

interface Spread {
  readonly brake: number;
  readonly strong: number;
}

/** What a group asks of a rail when it is asked whether it locks, by speed, N. */
function askedOf({ inputs, model }: RailUnder, g: number, { brake, strong }: Spread): Float64Array {
  const push = model.scratch.drawn[g] * harderBy(model, inputs, g, brake, strong);
  const friction = inputs.material[g] * SPEED_NODES;
  return model.factor.slice(friction, friction + SPEED_NODES).map((share) => push * share);
}

/** The fastest at which a rail locks a group that nobody eases, m/s; −1: at no speed. */
function fastestLocked(rail: RailUnder, g: number, spread: Spread): number {
  const limit = rail.model.scratch.limit[g];
  const node = askedOf(rail, g, spread).findLastIndex((asks) => asks > limit);
  return node < 0 ? -1 : (node + 1) * SPEED_STEP;
}

/** Begin of the step of the build-up in which it is first braked so hard, s. */
function soonestLocked(rail: RailUnder, g: number, spread: Spread): number {
  const { inputs, model } = rail;
  const share = model.scratch.limit[g] / Math.max(...askedOf(rail, g, spread));
  const on = (k: number): number => (k < RAMP_STEPS ? inputs.rampNode[g * RAMP_STEPS + k] : 1);
  let k = 0;
  while (k < RAMP_STEPS && on(k + 1) < share) k++;
  return k * model.dt;
}

function doesOn(rail: RailUnder, alone: Uint8Array, locks: Uint8Array, { brake, strong }: Spread): Does {
  const { inputs, model } = rail;
  const by = (of: (g: number, k: number) => number): Float64Array =>
    Float64Array.from({ length: inputs.groups * SPEED_NODES }, (_, i) =>
      of(Math.floor(i / SPEED_NODES), i % SPEED_NODES),
    );
  const ofEased = (of: (g: number, k: number) => number): Float64Array =>
    Float64Array.from({ length: SPEED_NODES }, (_, k) =>
      alone.reduce((sum, by, g) => (by ? sum : sum + of(g, k)), 0),
    );
  const full = (g: number, k: number): number =>
    model.scratch.drawn[g] * model.factor[inputs.material[g] * SPEED_NODES + k];
  const harder = Array.from(alone, (_, g) => harderBy(model, inputs, g, brake, strong));
  const byItself = (g: number, k: number): number =>
    full(g, k) * harder[g] > model.scratch.limit[g] ? lockedAt(model, inputs, g, k) : full(g, k);
  const before = by((g, k) => (alone[g] ? byItself(g, k) : beforeEasing(model, inputs, g, k)));
  return {
    ...rail,
    before,
    once: by((g, k) => (alone[g] ? before[g * SPEED_NODES + k] : onceEased(model, inputs, g, k))),
    kept: by((g, k) => (locks[g] ? lockedAt(model, inputs, g, k) : before[g * SPEED_NODES + k])),
    asks: ofEased(full),
    allBefore: ofEased((g, k) => before[g * SPEED_NODES + k]),
    allOnce: ofEased((g, k) => onceEased(model, inputs, g, k)),
  };
}

function lossOn(does: readonly Does[], best: number, rail: number, alone: Uint8Array): Loss {
  const of = does[best].before.map((force, i) => {
    const lost = force - does[rail].before[i];
    return alone[Math.floor(i / SPEED_NODES)] ? 0 : lost;
  });
  const sum = (sign: 1 | -1): Float64Array =>
    Float64Array.from({ length: SPEED_NODES }, (_, k) =>
      alone.reduce((total, _by, g) => total + Math.max(0, sign * of[g * SPEED_NODES + k]), 0),
    );
  return { rail, of, all: sum(1), more: sum(-1) };
}

function sumOf(groups: number, { kept, once }: Does, alone: Uint8Array): Float64Array {
  const sum = new Float64Array(SPEED_NODES);
  for (let g = 0; g < groups; g++) {
    const of = alone[g] ? kept : once;
    for (let k = 0; k < SPEED_NODES; k++) sum[k] += of[g * SPEED_NODES + k];
  }
  return sum;
}

function markNodes(placed: Placed, cells: number): void {
  const { rails, near, under, touched, touchedFrom, first, last, step, locksBelow, locksFrom, noticed } =
    placed;
  const mark = (nodes: Uint8Array, from: number, to: number): void => {
    const end = Math.min(cells, Math.ceil(to / step));
    for (let j = Math.max(0, Math.floor(from / step)); j <= end; j++) nodes[j] = 1;
  };
  for (const { from, to } of rails) {
    for (let i = 0; i < from.length; i++) {
      mark(near, from[i] + first - step - noticed, to[i] + last + step + noticed);
      mark(under, from[i] + first - step, to[i] + last + step);
    }
  }
  locksBelow.forEach((below, r) => {
    below.forEach((speed, g) => {
      if (speed < 0) return;
      for (let j = 0; j <= cells; j++) {
        if (!near[j] || shareUnder(placed, g, r, j * step) === 0) continue;
        touched[j] = Math.max(touched[j], speed);
        touchedFrom[j] = Math.min(touchedFrom[j], locksFrom[r][g]);
      }
    });
  });
}

/** Whether a wheel at a node is locked by the rail under it. @param time s since the brakes came on */
export const locksAt = ({ touched, touchedFrom }: Placed, node: number, time: number, v: number): boolean =>
  v <= touched[node] && time >= touchedFrom[node];

/** All brakes by speed from when they are settled, at a node. @param kept wheels were locked on worse rail on this way */
export function rowAt(placed: Placed, node: number, way: 1 | -1, kept: boolean): Float64Array {
  if (!placed.near[node]) return kept ? placed.allKept : placed.plain;
  const rows = placed.rows[(way > 0 ? 0 : 2) + (kept ? 1 : 0)];
  rows[node] ??= rowMade(placed, node * placed.step, way, kept);
  return rows[node];
}

/** All of the half on one rail, and nobody yet to notice another: one row for all such places. */
function rowMade(placed: Placed, s: number, way: 1 | -1, kept: boolean): Float64Array {
  const rail = wholeOn(placed, s);
  if (rail < 0) return rowOf(placed, s, way, kept);
  const rows = placed.whole[kept ? 1 : 0];
  rows[rail] ??= rowOf(placed, s, way, kept);
  return rows[rail];
}

function wholeOn({ rails, noticed, first, last }: Placed, s: number): number {
  const [from, to] = [s - last - noticed, s - first + noticed];
  return rails.findIndex((r) => r.from.some((begins, i) => begins <= from && r.to[i] >= to));
}

function rowOf(placed: Placed, s: number, way: 1 | -1, kept: boolean): Float64Array {
  const { rails, groups, alone, locks } = placed;
  const row = new Float64Array(SPEED_NODES);
  for (let g = 0; g < groups; g++) {
    if (!alone[g]) continue;
    const locked = kept && locks[g] === 1 && passed(placed, g, s, way);
    rails.forEach((rail, r) => {
      const share = shareUnder(placed, g, r, s);
      if (share === 0) return;
      const of = locked ? rail.kept : rail.before;
      for (let k = 0; k < SPEED_NODES; k++) row[k] += share * of[g * SPEED_NODES + k];
    });
  }
  if (alone.includes(0)) addEased(placed, row, s, way);
  return row;
}

/** Whether wheels have been on rail that locks them not long ago, or are. */
function passed(placed: Placed, g: number, s: number, way: 1 | -1): boolean {
  const { rails, front, rear, locksBelow } = placed;
  const [from, to] = [s - rear[g] - (way > 0 ? REACH : 0), s - front[g] + (way > 0 ? 0 : REACH)];
  const others = rails.slice(1);
  return locksBelow.some((below, r) => {
    if (below[g] < 0) return false;
    if (r > 0) return covered(rails[r], from, to) > 0;
    return others.reduce((left, other) => left - covered(other, from, to), 1) > 0;
  });
}

/** Share of a group's wheels on a rail, with the whole train's head at s. */
function shareUnder(placed: Placed, g: number, rail: number, s: number): number {
  const { rails, front, rear } = placed;
  if (rail > 0) return covered(rails[rail], s - rear[g], s - front[g]);
  let left = 1;
  for (let r = 1; r < rails.length; r++) left -= covered(rails[r], s - rear[g], s - front[g]);
  return Math.max(0, left);
}

/** What one handle does, by the law of `motion/rails.ts`. */
function addEased(placed: Placed, row: Float64Array, s: number, way: 1 | -1): void {
  const { rails, best, losses } = placed;
  const most = rails[best];
  for (let k = 0; k < SPEED_NODES; k++) {
    let [own, eased, left] = [most.allOnce[k], 0, 1];
    for (const loss of losses) {
      if (loss.all[k] === 0) continue;
      const rail = rails[loss.rail];
      const share = lostShare(placed, loss, k, s);
      const late = way * Math.min(k * SPEED_STEP, NOTICED_AT_MOST) * rail.model.notice;
      const p = Math.min(
        left,
        easedBy(late === 0 ? share : lostShare(placed, loss, k, s - late), placed.felt),
      );
      own -= share * (Math.max(most.allOnce[k], most.allBefore[k]) - rail.allBefore[k] + loss.more[k]);
      if (p === 0) continue;
      const drier = rail.asks[k] > 0 ? most.asks[k] / rail.asks[k] : 1;
      eased += p * rail.allOnce[k] * (1 + (1 - share) * (drier - 1));
      left -= p;
    }
    row[k] += left * own + eased;
  }
}

function lostShare(placed: Placed, { of, all, rail }: Loss, k: number, s: number): number {
  let here = 0;
  for (let g = 0; g < placed.groups; g++) {
    const lost = of[g * SPEED_NODES + k];
    if (lost > 0) here += lost * shareUnder(placed, g, rail, s);
  }
  return here / all[k];
}

/** While the brakes come on and until anybody has eased: what each wheel's own rail holds, N. @param s head of the train, m */
export function comingOn(placed: Placed, time: number, s: number, v: number): number {
  const { rails, groups } = placed;
  const { model, inputs } = rails[0];
  const r = model.dt > 0 ? Math.floor(time / model.dt) : RAMP_STEPS;
  let sum = 0;
  for (let g = 0; g < groups; g++) {
    const on = r < RAMP_STEPS ? inputs.rampMean[g * RAMP_STEPS + r] : 1;
    if (on === 0) continue;
    for (let k = 0; k < rails.length; k++) {
      const share = shareUnder(placed, g, k, s);
      if (share > 0) sum += on * share * ofGroup(rails[k].before, g, v);
    }
  }
  return sum;
}

/** What the rails under all braked wheels hold, N. @param s head of the train, m */
export function gripUnder(placed: Placed, s: number): number {
  let sum = 0;
  placed.rails.forEach(({ model }, r) => {
    for (let g = 0; g < placed.groups; g++) sum += model.scratch.limit[g] * shareUnder(placed, g, r, s);
  });
  return sum;
}

function ofGroup(of: Float64Array, g: number, v: number): number {
  const r = Math.min(v / SPEED_STEP, SPEED_NODES - 1.001);
  const i = g * SPEED_NODES + (r | 0);
  return of[i] + (r - (r | 0)) * (of[i + 1] - of[i]);
}

/** Settled brakes between two nodes, N. @param share of the way from the first to the second */
export const settledAt = (
  placed: Placed,
  node: number,
  next: number,
  share: number,
  v: number,
  way: 1 | -1,
  kept: boolean,
): number => {
  const here = brakeForce(rowAt(placed, node, way, kept), v);
  return share === 0 ? here : here + share * (brakeForce(rowAt(placed, next, way, kept), v) - here);
};
