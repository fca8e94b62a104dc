/** Loops and sidings of the line on the strip: each beside it from the tips of its points, as long as it is. */
import { heightAt } from '../../engine/things/line/geometry.ts';
import { toFrog } from '../../engine/things/line/turnout.ts';
import { type Joint, MAIN, type Track } from '../../engine/things/line/types.ts';
import { type Ground, type Layout, label } from './layout.ts';
import type { Sheet, Spot } from './letters.ts';
import type { StripModel } from './model.ts';
import { group, lineShape, type Point, pathShape, polyline, type Shape, shape } from './scene.ts';
import { along } from './track.ts';

/** How far above the line it is drawn, in half sizes of the lettering. */
const ABOVE = 1.6;
/** Of points that are not measured: as far as that from tips to frog, m. */
const UNTOLD = 2;

/** From the tips of its first points to its end, by the line's own distances; a loop over the origin of a line runs on beyond it. */
export interface Drawn {
  readonly from: number;
  readonly to: number;
  /** From tips to frog at each end; the second: it ends at buffers. */
  readonly leads: readonly [number, number | undefined];
}

const leadOf = ({ turnout }: Joint): number => (turnout ? toFrog(turnout) : UNTOLD);

export function drawnOf({ start, end, line }: Track, whole: StripModel['line']): Drawn | undefined {
  if (start.track !== MAIN) return undefined;
  const comesIn = end?.track === MAIN && end.facing !== start.facing;
  const lap = comesIn && (end.at - start.at) * (start.facing ? 1 : -1) < 0 && whole.loop ? whole.length : 0;
  const far = comesIn
    ? (end.at - start.at) * (start.facing ? 1 : -1) + lap
    : Math.min(line.length, start.facing || whole.loop ? Infinity : start.at);
  const [a, b] = start.facing ? [start.at, start.at + far] : [start.at - far, start.at];
  const last = comesIn ? leadOf(end) : undefined;
  return start.facing
    ? { from: a, to: b, leads: [leadOf(start), last] }
    : { from: a, to: b, leads: [last ?? -1, leadOf(start)] };
}

/** Of those that leave the line itself; what leaves a loop stands on the plan. */
export function roads(model: StripModel, layout: Layout, ground: Ground, sheet: Sheet): Shape {
  const { tracks = [] } = model.line;
  return group(
    { class: 'roads' },
    tracks.flatMap((track) => {
      const drawn = drawnOf(track, model.line);
      return drawn ? road(track.name, drawn, model, layout, ground, sheet) : [];
    }),
  );
}

function road(
  name: string,
  { from, to, leads: [first, last] }: Drawn,
  model: StripModel,
  layout: Layout,
  ground: Ground,
  sheet: Sheet,
): Shape[] {
  const { view, size } = layout;
  if (to < view.from || from > view.to) return [];
  const up = size * 0.5 * ABOVE;
  const at = (s: number, by: number): Point => [layout.x(s), ground.y(heightAt(model.line, s)) - by];
  const runs = (lead: number | undefined): boolean => lead !== undefined && lead >= 0;
  // Never so short that one does not see that it leaves.
  const out = (lead: number | undefined): number =>
    runs(lead)
      ? Math.min((to - from) / 3, Math.max(lead as number, (size / (layout.x(1) - layout.x(0))) * 0.8))
      : 0;
  const [a, b] = [from + out(first), to - out(last)];
  const middle = along(model, layout, ground, a, b).map(([x, y]): Point => [x, y - up]);
  const points = [...(runs(first) ? [at(from, 0)] : []), ...middle, ...(runs(last) ? [at(to, 0)] : [])];
  for (const [x, y] of middle) sheet.keep({ x0: x - 2, y0: y - 2, x1: x + 2, y1: y + 2 });
  const buffers = [...(runs(first) ? [] : [at(from, up)]), ...(runs(last) ? [] : [at(to, up)])].map(
    ([x, y]) => lineShape('bold', x, y - size * 0.4, x, y + size * 0.4),
  );
  const [x, y] = at((Math.max(from, view.from) + Math.min(to, view.to)) / 2, up);
  const spots = [0.5, 1, 1.6, 2.7].map((n): Spot => ({ x, y: y - n * size, anchor: 'middle' }));
  const named = sheet.put('small', label(name, layout, 0.3), size, spots);
  return [
    group({}, [shape('title', {}, [name]), pathShape('ink', polyline(points)), ...buffers]),
    ...(named ? [named.shape] : []),
  ];
}
