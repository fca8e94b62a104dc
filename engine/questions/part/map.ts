/**
 * Every gap at every metre: what becomes of tail and head if the train parts there without a chain, as
 * unlucky as a cautious stop is.
 *
 * Head and tail are each as unlucky as one in a hundred of their own. The head is braked by whatever is left
 * on it. The tail's way is told as if the head kept clear of it: pushing on a braked head it goes less far.
 */

import { once } from '../../base/remember.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { type BrakesLeft, brakesLeft } from './brakes-left.ts';
import { type Basis, type Luck, type Part, partOf } from './part.ts';
import { emptyRoll, noTraffic, roll } from './roll.ts';
import { outcomes, type Traffic } from './types.ts';

/** Both halves of the train parted behind vehicle `gap`. */
export interface Halves {
  readonly gap: number;
  readonly head: Part;
  readonly tail: Part;
  readonly headLeft: BrakesLeft;
  readonly tailLeft: BrakesLeft;
}

/** Results by place of the train's head at the parting; chainages unwrapped, of the whole train's head. */
export interface GapMap {
  readonly gap: number;
  readonly halves: Halves;
  /** Chainage of the train's head, m, and speed, m/s, at the parting. */
  readonly at: Float64Array;
  readonly speed: Float64Array;
  /** Index into `outcomes`, of the tail. */
  readonly outcome: Uint8Array;
  /** Tail: where it ends (m), s until then, greatest speed, and speed where it meets or runs through something. */
  readonly end: Float64Array;
  readonly time: Float64Array;
  readonly topSpeed: Float64Array;
  /** Tail: greatest speed once it has stood and rolled off again. */
  readonly rollsOff: Float64Array;
  readonly metAt: Float64Array;
  /** Index of the line's place run through; −1 none. */
  readonly place: Int16Array;
  readonly nearBalance: Uint8Array;
  /** m that the head goes on; Infinity: it does not come to a stand, or does not stay. Empty where not asked. */
  readonly headStop: Float64Array;
}

/** @param wary see `writeScenario`: off for a drawn or the likely scenario */
export function halvesAt(basis: Basis, gap: number, luck: Luck, wary = true): Halves {
  const { context } = basis;
  const last = context.loaded.vehicles.length - 1;
  const headLeft = brakesLeft(context, 0, gap, 'head');
  const tailLeft = brakesLeft(context, gap + 1, last, 'tail');
  const part = (first: number, to: number, groups: readonly BrakedGroup[]): Part =>
    partOf(basis, first, to, groups, luck, wary);
  // Mostly only the tail is followed.
  const head = once(() => part(0, gap, headLeft.groups));
  return {
    gap,
    get head() {
      return head();
    },
    tail: part(gap + 1, last, tailLeft.groups),
    headLeft,
    tailLeft,
  };
}

/** Nodes at which the whole train stands on the line, every metre or so. */
export function startNodes({ grid, context }: Basis, spacing = 1): Int32Array {
  const every = Math.max(1, Math.round(spacing / grid.step));
  const first = grid.loop ? 0 : Math.ceil(context.loaded.length / grid.step);
  const last = grid.loop ? grid.lineCells - 1 : grid.lineCells;
  return Int32Array.from(
    { length: Math.max(0, Math.floor((last - first) / every) + 1) },
    (_, i) => first + i * every,
  );
}

/**
 * @param nodes where the train's head is at the parting
 * @param speeds at the parting by node of the speed map's grid, m/s
 * @param heads follow the heads too
 */
export function mapGap(
  basis: Basis,
  halves: Halves,
  nodes: Int32Array,
  speeds: Float64Array,
  heads = true,
): GapMap {
  const n = nodes.length;
  const map: GapMap = {
    gap: halves.gap,
    halves,
    at: new Float64Array(n),
    speed: new Float64Array(n),
    outcome: new Uint8Array(n),
    end: new Float64Array(n),
    time: new Float64Array(n),
    topSpeed: new Float64Array(n),
    rollsOff: new Float64Array(n),
    metAt: new Float64Array(n),
    place: new Int16Array(n),
    nearBalance: new Uint8Array(n),
    headStop: new Float64Array(heads ? n : 0),
  };
  const traffic = trafficOf(basis);
  const out = emptyRoll();
  for (let i = 0; i < n; i++) {
    const node = nodes[i];
    const speed = speeds[node];
    const start = node * basis.grid.step;
    if (heads) {
      roll(halves.head, node, speed, noTraffic, out);
      map.headStop[i] = out.outcome === 'stands' ? out.at - start : Infinity;
    }
    roll(halves.tail, node, speed, traffic, out);
    map.at[i] = start;
    map.speed[i] = speed;
    map.outcome[i] = outcomes.indexOf(out.outcome);
    map.end[i] = out.at;
    map.time[i] = out.time;
    map.topSpeed[i] = out.topSpeed;
    map.rollsOff[i] = out.rollsOff;
    map.metAt[i] = out.outcome === 'rolls-through-place' ? out.placeSpeed : out.endSpeed;
    map.place[i] = out.place;
    map.nearBalance[i] = out.nearBalance ? 1 : 0;
  }
  return map;
}

export function trafficOf({ context }: Pick<Basis, 'context'>): Traffic {
  const { following } = context.outing;
  return { followsAfter: following?.after ?? 0, followsAt: following?.speed ?? 0 };
}
