/** How couplers bend along a whole line: laid once for each pair of ends, and asked for its worst. */
import { highest } from '../../base/numerics/highest.ts';
import { type Even, evenStretches } from '../line/even.ts';
import { type Plan, planCurvature } from '../line/plan.ts';
import type { Line } from '../line/types.ts';
import { type Bend, bendAt, type PairShape, type Placing, placing } from './bend.ts';

/** Between the places that are looked at, m; between them the worst is sought by golden section. */
const STEP = 0.25;

/** Sines of both couplers' angles (bend.ts) where the pair meets at from + j·step. */
export interface Bends {
  readonly from: number;
  readonly step: number;
  readonly ahead: Float64Array;
  readonly behind: Float64Array;
  /** Length of a loop; else nothing bends beyond the ends. */
  readonly loop?: number;
}

/** How far a pair reaches from where it meets. */
const ahead = ({ ahead: a }: PairShape): number => a.overhang + a.guides * 1.2 + 0.1;
const behind = ({ ahead: a, behind: b }: PairShape): number =>
  (a.overhang + b.overhang) * 1.2 + b.guides * 1.2 + a.shank + b.shank + 0.1;

/** Chainages that a plan must cover for a pair. */
export const reachOf = (pair: PairShape): number => Math.max(ahead(pair), behind(pair));

/** Where a pair can meet: all round a loop, and where both vehicles stand on a line with ends. */
function meetings(line: Line, { ahead: a, behind: b }: PairShape): [number, number] {
  if (line.loop) return [0, line.length];
  return [b.overhang + b.guides, Math.max(b.overhang + b.guides, line.length - a.overhang - a.guides)];
}

export function layBends(line: Line, plan: Plan, pair: PairShape): Bends {
  const [from, to] = meetings(line, pair);
  const count = Math.ceil((to - from) / STEP) + 1;
  const bends = {
    from,
    step: STEP,
    ahead: new Float64Array(count),
    behind: new Float64Array(count),
    ...(line.loop ? { loop: line.length } : {}),
  };
  if (line.curves.length === 0) return bends;
  const evens = evenStretches(line);
  const place = placing(pair);
  const bend: Bend = { ahead: 0, behind: 0 };
  let known: Even | undefined;
  let e = 0;
  for (let j = 0; j < count; j++) {
    const at = from + j * STEP;
    const [tail, head] = [at - behind(pair), at + ahead(pair)];
    while (e < evens.length && evens[e].to < head) e++;
    const even = e < evens.length && evens[e].from <= tail ? evens[e] : undefined;
    // Wholly in one curve, as at the place before.
    if (even === undefined || even !== known) bendAt(plan, pair, at, place, bend);
    known = even;
    bends.ahead[j] = bend.ahead;
    bends.behind[j] = bend.behind;
  }
  return bends;
}

/** Linear between the places; nothing where the pair stands beyond the ends of the line. */
export function readBend({ from, step, loop }: Bends, values: Float64Array, at: number): number {
  const s = loop === undefined ? at : at - Math.floor(at / loop) * loop;
  const r = (s - from) / step;
  if (r < 0 || r > values.length - 1) return 0;
  const i = Math.min(r | 0, values.length - 2);
  return i < 0 ? values[0] : values[i] + (r - i) * (values[i + 1] - values[i]);
}

export interface Worst {
  /** rad, 0 … π/2, the latter for a quarter turn or more. */
  readonly angle: number;
  /** Chainage where the two meet, m. */
  readonly at: number;
}

type End = keyof Bend;

/** Peaks lower than this share of the highest place looked at cannot rise above it between places. */
const NEARLY = 0.8;
/** Golden cuts of two steps: to 1 µm. */
const CUTS = 28;

/** The greatest angle of one of the two couplers anywhere on the line. */
export function worstBend(plan: Plan, pair: PairShape, bends: Bends, end: End): Worst {
  const values = bends[end];
  const top = values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const place = placing(pair);
  let worst = { sine: 0, at: bends.from };
  for (let j = 0; top > 0 && j < values.length; j++) {
    const here = Math.abs(values[j]);
    const [before, after] = [Math.abs(values[j - 1] ?? 0), Math.abs(values[j + 1] ?? 0)];
    if (here < NEARLY * top || here < before || here < after) continue;
    const at = bends.from + j * bends.step;
    // Level all round: the middle of a long curve.
    const found =
      here === before && here === after
        ? { sine: here, at }
        : highestNear(plan, pair, end, place, at, bends.step);
    if (found.sine > worst.sine) worst = found;
  }
  return { angle: Math.asin(Math.min(1, worst.sine)), at: worst.at };
}

/** About a place that is higher than its neighbours. */
function highestNear(plan: Plan, pair: PairShape, end: End, place: Placing, middle: number, step: number) {
  const bend: Bend = { ahead: 0, behind: 0 };
  const sineAt = (s: number): number => {
    bendAt(plan, pair, s, place, bend);
    return Math.abs(bend[end]);
  };
  const { at, value } = highest(sineAt, middle - step, middle + step, CUTS);
  const own = sineAt(middle);
  return own > value ? { sine: own, at: middle } : { sine: value, at };
}

/** Both in one curve, one of them where a curve begins or ends, in curves of opposite hand, or on straight track. */
export type Lie = 'curve' | 'ends' | 'reverse' | 'straight';

/** Flatter than this counts as straight, 1/m. */
const STRAIGHT = 1e-5;

const spot = { x: 0, y: 0, cos: 1, sin: 0 };

/**
 * How the track lies under the two where they meet, and the sharpest curvature under their guides, 1/m, ≥ 0: in a curve
 * it is the same under all four.
 */
export function lieAt(
  plan: Plan,
  { ahead: a, behind: b }: PairShape,
  at: number,
): { lie: Lie; curvature: number } {
  const near = 1e-6;
  const [front, rear] = [at + a.overhang, at - b.overhang];
  const under = [front + a.guides + near, front - near, rear + near, rear - b.guides - near].map((s) =>
    planCurvature(plan, s, spot),
  );
  const [least, most] = [Math.min(...under), Math.max(...under)];
  const curvature = Math.max(most, -least);
  if (curvature < STRAIGHT) return { lie: 'straight', curvature: 0 };
  if (least < -STRAIGHT && most > STRAIGHT) return { lie: 'reverse', curvature };
  return { lie: most - least < 1e-9 ? 'curve' : 'ends', curvature };
}
