/**
 * The section that must be left clear for a train, on straight track, in each curve and anywhere on the line: every vehicle's reach to the inside and the
 * outside between the heights that it takes, one outline for all. Throw, play of the wheels and lean in cant are in it; people seated.
 */
import type { Corner, Polygon } from '../engine/base/numerics/polygon.ts';
import type { KeptBody } from '../engine/questions/clearance/kept-clear.ts';
import { besideCurve, type Clear } from './clear.ts';

export interface Template {
  /** Anywhere: what the whole line must be left clear, as a board that is carried along it. */
  readonly where: 'straight' | 'anywhere' | { readonly from: number; readonly to: number };
  /** m, and the hand as the train runs; none of the straight. */
  readonly radius?: number;
  readonly hand?: 'left' | 'right';
  /** Corners round; x to the left of the middle of the track, y above the rail, m. */
  readonly outline: Polygon;
}

/** None: nothing is measured. */
export function keepClear({ kept, curves }: Clear): Template[] {
  if (!kept) return [];
  const beside = besideCurve(kept);
  const within = (from: number, to: number): number[] =>
    kept.at.flatMap((at, i) => (at >= from - beside && at <= to + beside ? [i] : []));
  const straight = kept.at.reduce(
    (least, _, i) => (kept.left[i] + kept.right[i] < kept.left[least] + kept.right[least] ? i : least),
    0,
  );
  return [
    { where: 'straight', outline: outlineOf(kept.bodies, [straight]) },
    ...curves.map(
      ({ from, to, radius, hand }): Template => ({
        where: { from, to },
        radius,
        hand,
        outline: outlineOf(kept.bodies, within(from, to)),
      }),
    ),
    ...(curves.length > 1
      ? [{ where: 'anywhere' as const, outline: outlineOf(kept.bodies, within(-Infinity, Infinity)) }]
      : []),
  ];
}

/** All boxes together: how far the widest of those at a height reaches, height by height. */
function outlineOf(bodies: readonly KeptBody[], places: readonly number[]): Polygon {
  const boxes = bodies.map((b) => ({
    low: b.underside,
    high: b.top,
    left: Math.max(...places.map((i) => b.left[i])),
    right: Math.max(...places.map((i) => b.right[i])),
  }));
  const levels = [...new Set(boxes.flatMap((b) => [b.low, b.high]))].sort((a, b) => a - b);
  const steps = levels.slice(1).map((high, i) => {
    const at = boxes.filter((b) => b.low < high && b.high > levels[i]);
    const reach = (side: 'left' | 'right'): number => Math.max(0, ...at.map((b) => b[side]));
    return { low: levels[i], high, left: reach('left'), right: reach('right') };
  });
  const up = steps.flatMap((s): Corner[] => [
    { x: s.left, y: s.low },
    { x: s.left, y: s.high },
  ]);
  const down = [...steps].reverse().flatMap((s): Corner[] => [
    { x: -s.right, y: s.high },
    { x: -s.right, y: s.low },
  ]);
  return withoutRepeats([...up, ...down]);
}

/** Corners on a straight between their neighbours say nothing. */
const withoutRepeats = (of: Polygon): Polygon =>
  of.filter((p, i) => {
    const [before, after] = [of[(i + of.length - 1) % of.length], of[(i + 1) % of.length]];
    return !(p.x === before.x && p.x === after.x) && !(p.x === after.x && p.y === after.y);
  });
