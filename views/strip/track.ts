/** The track itself: its profile, curves drawn on it, grades with the ruling ones large, rail unlike the rest. */
import { heightAt } from '../../engine/things/line/geometry.ts';
import type { CurveElement, Line } from '../../engine/things/line/types.ts';
import { type Ground, type Layout, label, samples } from './layout.ts';
import type { Sheet, Spot } from './letters.ts';
import type { StripModel, StripWords } from './model.ts';
import { filledTo, group, type Point, pathShape, polyline, type Shape } from './scene.ts';

/** Points of the drawn track between two chainages, as far as they are seen. */
export function along({ line }: StripModel, layout: Layout, ground: Ground, a: number, b: number): Point[] {
  const { view } = layout;
  const [from, to] = [Math.max(a, view.from), Math.min(b, view.to)];
  if (to < from) return [];
  const n = Math.max(1, Math.ceil(Math.abs(layout.x(to) - layout.x(from)) / 3));
  return Array.from({ length: n + 1 }, (_, i) => {
    const s = from + ((to - from) * i) / n;
    return [layout.x(s), ground.y(heightAt(line, s))];
  });
}

/** Nothing is written over the track. */
export function keepTrack(model: StripModel, layout: Layout, ground: Ground, sheet: Sheet): void {
  const { view } = layout;
  const points = along(model, layout, ground, view.from, view.to);
  points.slice(1).forEach(([x, y], i) => {
    const [x0, y0] = points[i];
    sheet.keep({ x0, y0: Math.min(y0, y) - 4, x1: x, y1: Math.max(y0, y) + 4 });
  });
  const u = layout.size * 0.5;
  for (const { at } of model.line.places) {
    const [x, y] = [layout.x(at), ground.y(heightAt(model.line, at))];
    sheet.keep({ x0: x - 2 * u, y0: y - 4 * u, x1: x + 2 * u, y1: y });
  }
}

export function track(
  model: StripModel,
  layout: Layout,
  words: StripWords,
  ground: Ground,
  sheet: Sheet,
): Shape {
  const points = samples(layout).map((s): Point => [layout.x(s), ground.y(heightAt(model.line, s))]);
  const bends = bendsOf(model.line);
  return group({ class: 'profile' }, [
    pathShape('earth', filledTo(layout.profile.bottom, points)),
    ...bends.map((b) =>
      pathShape(b.sharp ? 'bendsharp' : 'bend', polyline(along(model, layout, ground, b.from, b.to))),
    ),
    ...(model.rails ?? []).map((p) =>
      pathShape('slick', polyline(along(model, layout, ground, p.from, p.to))),
    ),
    pathShape('rail', polyline(points)),
    ...closing(model, layout, ground),
    ...railWords(model, layout, words, ground, sheet),
    ...grades(model, layout, words, ground, sheet, true),
    ...bendWords(bends, layout, words, ground, model, sheet),
    ...grades(model, layout, words, ground, sheet, false),
  ]);
}

interface Bend {
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  /** Toward growing chainage; positive: left. */
  readonly hand: number;
  /** The sharpest of the line, or nearly. */
  readonly sharp: boolean;
}

const sharpness = (c: CurveElement): number => Math.max(Math.abs(c.startCurvature), Math.abs(c.endCurvature));

/** Arcs with their transitions. */
export function bendsOf({ curves }: Line): Bend[] {
  const sharpest = Math.max(0, ...curves.map(sharpness));
  const out: { from: number; to: number; k: number; hand: number }[] = [];
  for (const c of curves) {
    const last = out[out.length - 1];
    const hand = Math.sign(c.startCurvature + c.endCurvature);
    if (last && last.to >= c.from - 0.01 && last.hand === hand) {
      last.to = c.to;
      last.k = Math.max(last.k, sharpness(c));
    } else if (sharpness(c) > 0) out.push({ from: c.from, to: c.to, k: sharpness(c), hand });
  }
  return out.map(({ from, to, k, hand }) => ({ from, to, hand, radius: 1 / k, sharp: k > sharpest * 0.9 }));
}

function bendWords(
  bends: readonly Bend[],
  layout: Layout,
  words: StripWords,
  ground: Ground,
  { line }: StripModel,
  sheet: Sheet,
): Shape[] {
  const { size, view } = layout;
  return [...bends]
    .sort((a, b) => a.radius - b.radius)
    .flatMap(({ from, to, radius, sharp }) => {
      const middle = (Math.max(from, view.from) + Math.min(to, view.to)) / 2;
      if (to < view.from || from > view.to) return [];
      const [x, y] = [layout.x(middle), ground.y(heightAt(line, middle))];
      const below = [1.4, 2.2].map((n): Spot => ({ x, y: y + n * size, anchor: 'middle' }));
      const beside = [1.4, 2.2].flatMap((n): Spot[] => [
        { x: x - size, y: y + n * size, anchor: 'end' },
        { x: x + size, y: y + n * size },
      ]);
      const placed = sheet.put(sharp ? 'bendword' : 'small', words.radius(radius), size, [
        ...below,
        ...beside,
      ]);
      return placed ? [placed.shape] : [];
    });
}

interface Grade {
  readonly from: number;
  readonly to: number;
  /** In the running direction, rise over run. */
  readonly rise: number;
}

/** Neighbours that differ by less are one grade. */
const ALIKE = 0.002;
const LEVEL = 5e-4;

function gradesOf({ line, facing }: StripModel): Grade[] {
  const out: { from: number; to: number; rise: number }[] = [];
  line.heights.slice(1).forEach((k, i) => {
    const knot = line.heights[i];
    const rise = (facing * (k.height - knot.height)) / (k.at - knot.at);
    const last = out[out.length - 1];
    if (last && Math.abs(last.rise - rise) < ALIKE && last.rise * rise > 0) {
      const far = last.to - last.from;
      last.rise = (last.rise * far + rise * (k.at - knot.at)) / (far + k.at - knot.at);
      last.to = k.at;
    } else out.push({ from: knot.at, to: k.at, rise });
  });
  return out;
}

/** @param large the steepest up and down alone: they rule what is pulled and what is stopped */
function grades(
  model: StripModel,
  layout: Layout,
  words: StripWords,
  ground: Ground,
  sheet: Sheet,
  large: boolean,
): Shape[] {
  const { view, size } = layout;
  const all = gradesOf(model);
  const seen = all.filter((g) => g.to > view.from && g.from < view.to);
  const steepest = (sign: 1 | -1): Grade | undefined =>
    all.reduce<Grade | undefined>(
      (a, g) => (g.rise * sign > LEVEL && (!a || g.rise * sign > a.rise * sign) ? g : a),
      undefined,
    );
  const ruling = [steepest(1), steepest(-1)].filter((g) => g !== undefined);
  const rest = seen.filter((g) => !ruling.includes(g)).sort((a, b) => Math.abs(b.rise) - Math.abs(a.rise));
  return (large ? ruling.filter((g) => seen.includes(g)) : rest).flatMap((g) => {
    const rules = large;
    const letter = rules ? size * 1.25 : size;
    const middle = (Math.max(g.from, view.from) + Math.min(g.to, view.to)) / 2;
    const x = layout.x(middle);
    const wide = layout.x(Math.min(g.to, view.to)) - layout.x(Math.max(g.from, view.from));
    if (!rules && wide < size * 3) return [];
    const text = Math.abs(g.rise) < LEVEL ? words.level : words.grade(g.rise);
    const deep = layout.profile.bottom - size * 0.4;
    const y = Math.min(deep, ground.y(heightAt(model.line, middle)) + letter * 1.35 + size * 0.3);
    const rows = [y, (y + deep) / 2, deep];
    const spots = [0, -3, 3, -6, 6, -9, 9].flatMap((off) =>
      rows.map((row): Spot => ({ x: x + off * size, y: row, anchor: 'middle' })),
    );
    const placed = sheet.put(rules ? 'strong' : 'small', text, letter, spots);
    return placed ? [placed.shape] : [];
  });
}

/** First of all: it is what a driver may not overlook. */
function railWords(
  model: StripModel,
  layout: Layout,
  words: StripWords,
  ground: Ground,
  sheet: Sheet,
): Shape[] {
  const { view, size } = layout;
  return (model.rails ?? [])
    .filter((p) => p.to > view.from && p.from < view.to)
    .flatMap((p) => {
      const middle = (Math.max(p.from, view.from) + Math.min(p.to, view.to)) / 2;
      const [x, y] = [layout.x(middle), ground.y(heightAt(model.line, middle))];
      const spots = [1.6, 2.4, 3.4, 4.6].flatMap((n): Spot[] => [
        { x, y: y + n * size, anchor: 'middle' },
        { x, y: y + n * size },
        { x, y: y + n * size, anchor: 'end' },
      ]);
      const placed = sheet.put('pencilword', label(words.rail(p.state), layout), size, spots);
      return placed ? [placed.shape] : [];
    });
}

/** A loop closes: at either edge the track bends away to the other. */
function closing({ line }: StripModel, layout: Layout, ground: Ground): Shape[] {
  const { view, left, right } = layout;
  if (!line.loop || view.from > 0 || view.to < line.length) return [];
  const y = ground.y(heightAt(line, 0));
  const turn = (x: number, out: 1 | -1): string =>
    `M${x},${y}c${6 * out},0 ${9 * out},4 ${9 * out},10m${-3.5 * out},-3.5l${3.5 * out},4.5l${4 * out},-4`;
  return [pathShape('loopend', turn(right, 1)), pathShape('loopend', turn(left, -1))];
}
