/**
 * The alignment of a track that leaves another: in its turnout the curve of that track and the turnout's own together, as a turnout
 * is bent to the curve that it lies in; then its own curves. At points at its far end the same, seen from there.
 */
import { curvatureWithin, reverseLine } from './geometry.ts';
import { pieceOf } from './pieces.ts';
import { layPlan, type Spot, spotAt } from './plan.ts';
import { toFrog, turnoutCurves } from './turnout.ts';
import type { CurveElement, Joint, Line, Track } from './types.ts';

/** Curves from the tips to abreast of the frog; none where the turnout is not measured. */
export function curvesInTurnout(parent: Line, { at, facing, hand, turnout }: Joint): CurveElement[] {
  if (!turnout) return [];
  const through = facing ? parent : reverseLine(parent);
  const from = facing ? at : parent.length - at;
  const long = toFrog(turnout);
  const end = through.loop ? from + long : Math.min(through.length, from + long);
  return added(pieceOf(through, from, end).curves, turnoutCurves(turnout, hand));
}

/** The same track from its other end. */
export const fromOtherEnd = (curves: readonly CurveElement[], length: number): CurveElement[] =>
  curves
    .map((c) => ({
      ...c,
      from: length - c.to,
      to: length - c.from,
      startCurvature: -c.endCurvature,
      endCurvature: -c.startCurvature,
    }))
    .reverse();

/** Curvature by place added up. */
export function added(a: readonly CurveElement[], b: readonly CurveElement[]): CurveElement[] {
  const ends = [...new Set([...a, ...b].flatMap(({ from, to }) => [from, to]))].sort((x, y) => x - y);
  return ends.slice(1).flatMap((to, i) => {
    const from = ends[i];
    const here = [a, b].flatMap((list) => list.filter((c) => c.from < to && c.to > from));
    if (here.length === 0 || to - from < 1e-9) return [];
    const sum = (of: (c: CurveElement) => number): number => here.reduce((all, c) => all + of(c), 0);
    return [
      {
        from,
        to,
        startCurvature: sum((c) => curvatureWithin(c, from)),
        endCurvature: sum((c) => curvatureWithin(c, to)),
        gaugeWidening: Math.max(...here.map((c) => c.gaugeWidening)),
      },
    ];
  });
}

/**
 * How far from the tips of its last points a track ends as it is laid, m, and how much askew, rad; undefined: its points do
 * not lie on one track, facing each other.
 */
export function missedBy(
  parent: Line,
  { start, end, line }: Pick<Track, 'start' | 'end' | 'line'>,
): { readonly away: number; readonly askew: number } | undefined {
  const between = end && lengthBeside(parent, start, end);
  if (between === undefined) return undefined;
  const through = start.facing ? parent : reverseLine(parent);
  const from = start.facing ? start.at : parent.length - start.at;
  const [here, there] = [pieceOf(through, from, from + between), line].map(endOf);
  return {
    away: Math.hypot(here.x - there.x, here.y - there.y),
    askew: Math.abs(
      Math.atan2(here.sin * there.cos - here.cos * there.sin, here.cos * there.cos + here.sin * there.sin),
    ),
  };
}

function endOf(line: Line): Spot {
  const spot: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
  spotAt(layPlan(line, 0, line.length), line.length, spot);
  return spot;
}

/** From tips to tips along the track that both points lie on; undefined: they do not face each other on one track. */
export function lengthBeside(parent: Line, start: Joint, end: Joint): number | undefined {
  if (start.track !== end.track || start.facing === end.facing) return undefined;
  const between = start.facing ? end.at - start.at : start.at - end.at;
  if (between > 0) return between;
  return parent.loop ? between + parent.length : undefined;
}
