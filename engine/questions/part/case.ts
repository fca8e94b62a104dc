/** One parting, followed in time: both halves from the moment they part to where each ends. */
import { type BrakesLeft, wholeLeft } from './brakes-left.ts';
import { halvesAt, trafficOf } from './map.ts';
import { type Basis, type Luck, type Part, partOf } from './part.ts';
import { emptyRoll, noTraffic, roll } from './roll.ts';
import type { Path, Roll, Traffic } from './types.ts';

export interface HalfMotion {
  readonly first: number;
  readonly last: number;
  /** Its ends behind the whole train's head, m. */
  readonly front: number;
  readonly rear: number;
  readonly end: Roll;
  /** Samples: s, m (place of the whole train's head, unwrapped), m/s (negative: backward). */
  readonly time: Float64Array;
  readonly at: Float64Array;
  readonly speed: Float64Array;
  readonly brakes: BrakesLeft;
}

export interface PartingCase {
  readonly gap: number;
  readonly at: number;
  readonly speed: number;
  /** The chain held: both halves go on as one train with the brakes left to each. */
  readonly chained: boolean;
  readonly head: HalfMotion;
  readonly tail: HalfMotion;
}

/**
 * @param at place of the train's head, m; taken to the nearest node of the grid
 * @param speed m/s, ≥ 0
 * @param chained whether a chain holds
 */
export function followParting(
  basis: Basis,
  gap: number,
  at: number,
  speed: number,
  chained: boolean,
  luck: Luck,
): PartingCase {
  const node = Math.round(at / basis.grid.step);
  const start = node * basis.grid.step;
  if (chained) {
    const motion = wholeMotion(basis, gap, node, speed, luck);
    return { gap, at: start, speed, chained, head: motion, tail: motion };
  }
  const { head, tail, headLeft, tailLeft } = halvesAt(basis, gap, luck, isUnlucky(luck));
  const ahead = follow(head, headLeft, node, speed, noTraffic);
  const traffic = trafficOf(basis);
  return { gap, at: start, speed, chained, head: ahead, tail: follow(tail, tailLeft, node, speed, traffic) };
}

const isUnlucky = (luck: Luck): boolean => 'draws' in luck || luck.brake < 0;

/** Held by its chain the train stays whole, with what each half's brakes do once hose and cable are torn. */
function wholeMotion(basis: Basis, gap: number, node: number, speed: number, luck: Luck): HalfMotion {
  const { context } = basis;
  const last = context.loaded.vehicles.length - 1;
  const left = wholeLeft(context, gap, false);
  const part = partOf(basis, 0, last, left.groups, luck, isUnlucky(luck));
  return follow(part, left, node, speed, trafficOf(basis));
}

function follow(part: Part, brakes: BrakesLeft, node: number, speed: number, traffic: Traffic): HalfMotion {
  const end = emptyRoll();
  const path: Path = [];
  roll(part, node, speed, traffic, end, path);
  const count = path.length / 3;
  const column = (k: number): Float64Array => Float64Array.from({ length: count }, (_, i) => path[3 * i + k]);
  const { first, last, front, rear } = part;
  return { first, last, front, rear, end, time: column(0), at: column(1), speed: column(2), brakes };
}
