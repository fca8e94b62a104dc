/**
 * The strip: one long drawing of the line. From the top: permitted speed with its reasons; the profile with
 * grades, places and the train standing on it; how light its wheels run; the plan of curvature; chainage.
 * Pure: data in, scene out.
 */
import { curvatureAt, heightAt } from '../../engine/things/line/geometry.ts';
import type { Place } from '../../engine/things/line/types.ts';
import { type Ground, groundOf, type Layout, label, layOut, samples } from './layout.ts';
import type { StripModel, StripMoment, StripView, StripWords } from './model.ts';
import { reach } from './moment.ts';
import { scaleLinear } from './scale.ts';
import {
  drawing,
  filledTo,
  group,
  lineShape,
  type Point,
  pathShape,
  polyline,
  px,
  rectShape,
  type Scene,
  type Shape,
  shape,
  textShape,
} from './scene.ts';
import { wheelBand } from './wheels.ts';

/** The train at a moment with its reach, to be laid over a strip of the same view: cheap enough for a drag. */
export function drawMoment(
  model: StripModel,
  view: StripView,
  words: StripWords,
  moment: StripMoment,
): Scene {
  return reach(model, layOut(view), words, moment);
}

/** Chainage under a horizontal position of the drawing, m. */
export function chainageAt(view: StripView, x: number): number {
  const { left, right } = layOut(view);
  return view.from + ((x - left) / (right - left)) * (view.to - view.from);
}

export function drawStrip(
  model: StripModel,
  view: StripView,
  words: StripWords,
  moment?: StripMoment,
): Scene {
  const layout = layOut(view);
  const parts: Shape[] = [
    rectShape('paper', 0, 0, view.width, view.height),
    speedBand(model, layout, words),
    profileBand(model, layout, words),
    railBand(model, layout, words),
    wheelBand(model, layout, words),
    curveBand(model, layout, words),
    axis(layout, words),
    ...(moment ? [reach(model, layout, words, moment)] : []),
    marks(model, layout),
  ];
  return drawing(view.width, view.height, `Strip of ${model.line.name}`, parts);
}

// ---- permitted speed

function speedBand(model: StripModel, layout: Layout, words: StripWords): Shape {
  const { speeds } = model;
  const { speed: band, left, right, size } = layout;
  if (!speeds) return group({}, []);
  const top = speeds.limit.reduce((most, v) => Math.max(most, v), 0) || 1;
  const y = scaleLinear([0, top * 1.12], [band.bottom, band.top]);
  const ticks = words
    .speedTicks(top)
    .map((v) =>
      group({}, [
        lineShape('dotted', left, y(v), right, y(v)),
        textShape('small', left - 4, y(v) + size * 0.3, words.speedTick(v), size * 0.85, 'end'),
      ]),
    );
  const points = samples(layout).map((s): Point => [layout.x(s), y(valueAt(speeds.at, speeds.limit, s))]);
  return group({ class: 'speeds' }, [
    ...ticks,
    textShape('small', left, band.top - size * 0.2, words.speedUnit, size * 0.85),
    pathShape('allowed', filledTo(band.bottom, points)),
    pathShape('limit', polyline(points)),
    lineShape('fine', left, band.bottom, right, band.bottom),
    ...planned(model, layout, y),
    ...reasonLabels(model, layout, words, y),
  ]);
}

function planned({ plannedSpeed }: StripModel, { left, right }: Layout, y: (v: number) => number): Shape[] {
  return plannedSpeed === undefined
    ? []
    : [lineShape('planned', left, y(plannedSpeed), right, y(plannedSpeed))];
}

function valueAt(at: Float64Array, values: Float64Array, s: number): number {
  const step = at[1] - at[0];
  const i = Math.min(values.length - 1, Math.max(0, Math.round((s - at[0]) / step)));
  return values[i];
}

/** The reason, written once along each run that has room for it. */
function reasonLabels(
  model: StripModel,
  layout: Layout,
  words: StripWords,
  y: (v: number) => number,
): Shape[] {
  const speeds = model.speeds;
  if (!speeds) return [];
  const out: Shape[] = [];
  let first = 0;
  let free = -Infinity;
  for (let j = 1; j <= speeds.at.length; j++) {
    if (j < speeds.at.length && speeds.reason[j] === speeds.reason[first]) continue;
    const [from, to] = [
      Math.max(speeds.at[first], layout.view.from),
      Math.min(speeds.at[j - 1], layout.view.to),
    ];
    const middle = (layout.x(from) + layout.x(to)) / 2;
    const text = label(words.reason(speeds.reasons[speeds.reason[first]]), layout);
    const wide = text.length * layout.size * 0.42;
    const start = Math.min(Math.max(middle - wide / 2, layout.left), layout.right - wide);
    if (to > from && start > free) {
      const at = valueAt(speeds.at, speeds.limit, (from + to) / 2);
      out.push(textShape('reason', start, y(at) - layout.size * 0.4, text, layout.size * 0.85));
      free = start + wide + layout.size;
    }
    first = j;
  }
  return out;
}

// ---- profile

function profileBand(model: StripModel, layout: Layout, words: StripWords): Shape {
  const ground = groundOf(model, layout);
  const points = samples(layout).map((s): Point => [layout.x(s), ground.y(heightAt(model.line, s))]);
  const { size, right } = layout;
  return group({ class: 'profile' }, [
    pathShape('earth', filledTo(layout.profile.bottom, points)),
    pathShape('rail', polyline(points)),
    ...gradeLabels(model, layout, words),
    ...places(model, layout, words, ground),
    textShape(
      'small',
      right,
      layout.wheels.bottom + size * 0.6,
      `${words.heightsTimes} ${Math.round(ground.times)}`,
      size * 0.8,
      'end',
    ),
  ]);
}

function gradeLabels(model: StripModel, layout: Layout, words: StripWords): Shape[] {
  const knots = model.line.heights;
  return knots.slice(1).flatMap((k, i) => {
    const [from, to] = [Math.max(knots[i].at, layout.view.from), Math.min(k.at, layout.view.to)];
    const wide = layout.x(to) - layout.x(from);
    const rise = (k.height - knots[i].height) / (k.at - knots[i].at);
    const text = Math.abs(rise) < 5e-4 ? words.level : words.grade(rise);
    if (to <= from || wide < text.length * layout.size * 0.5) return [];
    const middle = (from + to) / 2;
    return [
      textShape(
        'word',
        layout.x(middle),
        layout.profile.bottom - layout.size * 0.25,
        text,
        layout.size * 0.85,
        'middle',
      ),
    ];
  });
}

function places(model: StripModel, layout: Layout, words: StripWords, ground: Ground): Shape[] {
  const { size, profile } = layout;
  const free = [-Infinity, -Infinity, -Infinity];
  const shown = [...model.line.places]
    .filter((p) => p.at >= layout.view.from && p.at <= layout.view.to)
    .sort((a, b) => a.at - b.at);
  return shown.flatMap((place) => {
    const x = layout.x(place.at);
    const text = label(words.place(place), layout);
    const wide = text.length * size * 0.46;
    const row = free.findIndex((f) => x > f);
    const y = ground.y(heightAt(model.line, place.at));
    const symbol = placeSymbol(place, layout, x, y);
    if (row < 0) return symbol;
    free[row] = x + wide + size * 0.6;
    const top = profile.top + row * size * 1.15 - size * 0.5;
    const start = Math.min(x + 3, layout.right - wide);
    return [
      ...symbol,
      lineShape('stem', x, top - size * 0.2, x, y),
      textShape('word', start, top, text, size * 0.85),
    ];
  });
}

/** Own plain symbols: a platform bar, a signal mast, a crossing's posts, a tunnel's arch, points as a fork. */
function placeSymbol(place: Place, layout: Layout, x: number, y: number): Shape[] {
  const u = layout.size * 0.5;
  const end = place.to === undefined ? x + 2 * u : layout.x(Math.min(place.to, layout.view.to));
  switch (place.kind) {
    case 'station':
    case 'stop':
      return [rectShape('solid', x, y - u * 0.9, Math.max(end - x, u), u * 0.5)];
    case 'signal':
      return [
        lineShape('ink', x, y, x, y - 3 * u),
        shape('circle', { class: 'open', cx: px(x), cy: px(y - 3 * u), r: px(u * 0.6) }),
      ];
    case 'crossing':
      return [lineShape('bold', x - u, y + u, x + u, y - u), lineShape('bold', x - u, y - u, x + u, y + u)];
    case 'tunnel':
      return [
        pathShape(
          'fine',
          `M${px(x)},${px(y)}v${px(-2 * u)}q${px((end - x) / 2)},${px(-2 * u)} ${px(end - x)},0V${px(y)}`,
        ),
      ];
    case 'siding':
      return [lineShape('fine', x, y - u * 0.6, end, y - u * 0.6)];
    default:
      return [lineShape('ink', x, y - u, x, y + u)];
  }
}

// ---- rail that is not like the rest

/** A bar under the profile with its state in a word, where there is room for it beside the one before. */
function railBand({ rails = [] }: StripModel, layout: Layout, words: StripWords): Shape {
  const { profile, size, view, left, right, x } = layout;
  const y = profile.bottom + size * 0.35;
  let free = left;
  const shown = rails.filter((p) => p.to > view.from && p.from < view.to);
  return group(
    { class: 'rails' },
    shown.flatMap((p) => {
      const [from, to] = [x(Math.max(p.from, view.from)), x(Math.min(p.to, view.to))];
      const text = words.rail(p.state);
      const half = text.length * size * 0.22;
      const middle = Math.min(right - half, Math.max(left + half, (from + to) / 2));
      const bar = lineShape('bold', from, y, to, y);
      if (middle - half < free) return [bar];
      free = middle + half + size * 0.4;
      return [bar, textShape('small', middle, y + size * 0.95, text, size * 0.8, 'middle')];
    }),
  );
}

// ---- plan of curvature

function curveBand(model: StripModel, layout: Layout, words: StripWords): Shape {
  const { curve: band, size } = layout;
  const middle = (band.top + band.bottom) / 2;
  const sharpest = model.line.curves.reduce(
    (k, c) => Math.max(k, Math.abs(c.startCurvature), Math.abs(c.endCurvature)),
    0,
  );
  const scale = sharpest > 0 ? ((band.bottom - band.top) / 2 - size * 0.2) / sharpest : 0;
  const points = samples(layout).map(
    (s): Point => [layout.x(s), middle - curvatureAt(model.line, s) * scale],
  );
  const labels = model.line.curves
    .filter((c) => c.startCurvature === c.endCurvature && c.to > layout.view.from && c.from < layout.view.to)
    .map((c) => {
      const up = c.startCurvature > 0;
      const text = `${up ? words.left : words.right} ${words.radius(1 / Math.abs(c.startCurvature))}`;
      return textShape(
        'small',
        layout.x((c.from + c.to) / 2),
        up ? middle + size : middle - size * 0.3,
        text,
        size * 0.8,
        'middle',
      );
    });
  return group({ class: 'curvature' }, [
    pathShape('curve', filledTo(middle, points)),
    lineShape('axis', layout.left, middle, layout.right, middle),
    ...labels,
  ]);
}

function axis(layout: Layout, words: StripWords): Shape {
  const { view, size } = layout;
  const count = Math.max(2, Math.floor((layout.right - layout.left) / (size * 6)));
  const ticks = words
    .chainageTicks(view.from, view.to, count)
    .map((s) =>
      group({}, [
        lineShape('ink', layout.x(s), layout.axis - size * 0.5, layout.x(s), layout.axis - size * 0.1),
        textShape('word', layout.x(s), layout.axis + size, words.chainage(s), size * 0.85, 'middle'),
      ]),
    );
  return group({ class: 'chainage' }, [
    lineShape('ink', layout.left, layout.axis - size * 0.5, layout.right, layout.axis - size * 0.5),
    ...ticks,
  ]);
}

// ---- findings at their places

/** Numbered marks: shape tells the severity (square holds, diamond cannot tell, triangle limits, circle notes). */
function marks(model: StripModel, layout: Layout): Shape {
  const u = layout.size * 0.75;
  return group(
    { class: 'marks' },
    model.marks
      .filter((m) => m.from >= layout.view.from && m.from <= layout.view.to)
      .map((m, i) => {
        const x = layout.x(m.from) + (i % 2) * u * 0.4;
        const y = layout.speed.bottom + layout.size * 1.1;
        const outline = {
          forbids: `M${px(x - u)},${px(y - u)}h${px(2 * u)}v${px(2 * u)}h${px(-2 * u)}z`,
          unknown: `M${px(x)},${px(y - 1.3 * u)}l${px(1.3 * u)},${px(1.3 * u)}l${px(-1.3 * u)},${px(1.3 * u)}l${px(-1.3 * u)},${px(-1.3 * u)}z`,
          limits: `M${px(x)},${px(y - 1.3 * u)}l${px(1.3 * u)},${px(2.2 * u)}h${px(-2.6 * u)}z`,
          notes: `M${px(x - u)},${px(y)}a${px(u)},${px(u)} 0 1 0 ${px(2 * u)},0a${px(u)},${px(u)} 0 1 0 ${px(-2 * u)},0z`,
          assumed: `M${px(x - u)},${px(y)}a${px(u)},${px(u)} 0 1 0 ${px(2 * u)},0a${px(u)},${px(u)} 0 1 0 ${px(-2 * u)},0z`,
        }[m.severity];
        return shape('g', { 'data-mark': m.number }, [
          shape('title', {}, [m.title]),
          pathShape(m.severity === 'assumed' ? 'notes' : m.severity, outline),
          textShape('onmark', x, y + layout.size * 0.3, `${m.number}`, layout.size * 0.8, 'middle'),
        ]);
      }),
  );
}
