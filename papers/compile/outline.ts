/** An outline of a paper as a figure; one that crosses itself is no outline. */
import { crossesItself, type Polygon, wholeFigure } from '../../engine/base/numerics/polygon.ts';
import type { FieldPath } from '../problem.ts';
import { type Notes, trouble } from './notes.ts';

export function outlineOf(
  written: readonly { readonly across: number; readonly height: number }[],
  path: FieldPath,
  notes: Notes,
): Polygon {
  const points = written.map(({ across, height }) => ({ x: across, y: height }));
  const half = points.every((p) => p.x >= 0);
  const open = half && (points[0].x !== 0 || points[points.length - 1].x !== 0);
  if (open)
    trouble(
      notes,
      [...path, points[0].x === 0 ? points.length - 1 : 0, 'across'],
      'one side that does not begin and end in the middle',
      '0 at the first and at the last point, or points to the right of the middle too (below 0)',
    );
  const crossed = crossesItself(wholeFigure(points));
  if (crossed)
    trouble(
      notes,
      [...path, Math.min(crossed[1], points.length - 1)],
      `a line from point ${(crossed[0] % points.length) + 1} that crosses the line from point ${(crossed[1] % points.length) + 1}`,
      'points in order round the outline: it must not cross itself',
    );
  return points;
}
