/**
 * The strip: one long drawing of the line. From the top: permitted speed with its reasons; the profile with
 * grades, places and the train standing on it; the plan of curvature; chainage. Pure: data in, scene out.
 */
import { scaleLinear } from 'd3-scale';
import { area, line as lineOf } from 'd3-shape';
import { curvatureAt, heightAt } from '../../engine/line/geometry.ts';
import type { Place } from '../../engine/line/types.ts';
import type { StripModel, StripMoment, StripView, StripWords } from './model.ts';
import {
  group,
  lineShape,
  pathShape,
  px,
  rectShape,
  type Scene,
  type Shape,
  shape,
  textShape,
} from './scene.ts';

/** Where the bands lie, px, and how chainage maps to x. */
interface Layout {
  readonly view: StripView;
  readonly x: (s: number) => number;
  readonly left: number;
  readonly right: number;
  readonly speed: Band;
  readonly profile: Band;
  readonly curve: Band;
  readonly axis: number;
  readonly size: number;
}

interface Band {
  readonly top: number;
  readonly bottom: number;
}

const MARGIN = 12;

function layOut(view: StripView): Layout {
  const size = view.textSize;
  const left = MARGIN + size * 2.4;
  const right = view.width - MARGIN;
  const axis = view.height - size * 1.6;
  const inner = axis - size;
  const at = (share: number): number => size * 0.8 + share * (inner - size * 0.8);
  return {
    view,
    x: scaleLinear([view.from, view.to], [left, right]),
    left,
    right,
    speed: { top: at(0.04), bottom: at(0.3) },
    profile: { top: at(0.42), bottom: at(0.76) },
    curve: { top: at(0.82), bottom: at(1) },
    axis,
    size,
  };
}

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
    curveBand(model, layout, words),
    axis(layout, words),
    ...(moment ? [reach(model, layout, words, moment)] : []),
    marks(model, layout),
  ];
  return shape(
    'svg',
    {
      viewBox: `0 0 ${view.width} ${view.height}`,
      width: view.width,
      height: view.height,
      role: 'img',
      'aria-label': `Strip of ${model.line.name}`,
    },
    parts,
  );
}

/** Even samples of the window, at most one for each pixel. */
function samples({ view, left, right }: Layout): number[] {
  const n = Math.max(2, Math.min(Math.round(right - left), 1600));
  return Array.from({ length: n + 1 }, (_, i) => view.from + ((view.to - view.from) * i) / n);
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
  const points = samples(layout).map((s): [number, number] => [
    layout.x(s),
    y(valueAt(speeds.at, speeds.limit, s)),
  ]);
  const curve = lineOf()(points) ?? '';
  const under = area<[number, number]>()
    .x((p) => p[0])
    .y0(band.bottom)
    .y1((p) => p[1])(points);
  return group({ class: 'speeds' }, [
    ...ticks,
    textShape('small', left, band.top - size * 0.2, words.speedUnit, size * 0.85),
    pathShape('allowed', under ?? ''),
    pathShape('limit', curve),
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
    const text = words.reason(speeds.reasons[speeds.reason[first]]);
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

interface Ground {
  readonly y: (height: number) => number;
  readonly times: number;
}

/** Heights are drawn enlarged so that the profile fills its band, never less than true. */
function groundOf(model: StripModel, layout: Layout): Ground {
  const heights = samples(layout).map((s) => heightAt(model.line, s));
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const { top, bottom } = layout.profile;
  const perMetre = (layout.right - layout.left) / (layout.view.to - layout.view.from);
  const room = bottom - top - layout.size * 3.4;
  const times = Math.max(1, Math.min(20, high > low ? room / ((high - low) * perMetre) : 1));
  return { y: (h) => bottom - layout.size * 0.6 - (h - low) * perMetre * times, times };
}

function profileBand(model: StripModel, layout: Layout, words: StripWords): Shape {
  const ground = groundOf(model, layout);
  const points = samples(layout).map((s): [number, number] => [
    layout.x(s),
    ground.y(heightAt(model.line, s)),
  ]);
  const earth = area<[number, number]>()
    .x((p) => p[0])
    .y0(layout.profile.bottom)
    .y1((p) => p[1])(points);
  const { size, left } = layout;
  return group({ class: 'profile' }, [
    pathShape('earth', earth ?? ''),
    pathShape('rail', lineOf()(points) ?? ''),
    ...gradeLabels(model, layout, words),
    ...places(model, layout, words, ground),
    textShape(
      'small',
      left,
      layout.profile.bottom + size * 0.95,
      `${words.heightsTimes} ${Math.round(ground.times)}`,
      size * 0.75,
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
    const text = words.place(place);
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

// ---- plan of curvature

function curveBand(model: StripModel, layout: Layout, words: StripWords): Shape {
  const { curve: band, size } = layout;
  const middle = (band.top + band.bottom) / 2;
  const sharpest = model.line.curves.reduce(
    (k, c) => Math.max(k, Math.abs(c.startCurvature), Math.abs(c.endCurvature)),
    0,
  );
  const scale = sharpest > 0 ? ((band.bottom - band.top) / 2 - size * 0.2) / sharpest : 0;
  const points = samples(layout).map((s): [number, number] => [
    layout.x(s),
    middle - curvatureAt(model.line, s) * scale,
  ]);
  const shapeOf = area<[number, number]>()
    .x((p) => p[0])
    .y0(middle)
    .y1((p) => p[1])(points);
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
    pathShape('curve', shapeOf ?? ''),
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

// ---- the train and its reach

/** Segments of [a, b] on the line, cut where a loop's origin is crossed. */
function onWindow(model: StripModel, a: number, b: number): [number, number][] {
  const { line } = model;
  if (!line.loop) return [[a, b]];
  const laps = [-line.length, 0, line.length];
  return laps.map((lap): [number, number] => [a + lap, b + lap]);
}

function reach(model: StripModel, layout: Layout, words: StripWords, moment: StripMoment): Shape {
  const ground = groundOf(model, layout);
  const bar = (from: number, to: number, ink: 'likely' | 'cautious' | 'gap', row: number): Shape[] =>
    onWindow(model, Math.min(from, to), Math.max(from, to)).flatMap(([a, b]) => {
      const [x0, x1] = [layout.x(Math.max(a, layout.view.from)), layout.x(Math.min(b, layout.view.to))];
      if (x1 <= x0) return [];
      const y = layout.profile.bottom + layout.size * (0.15 + 0.5 * row);
      return ink === 'gap'
        ? [lineShape('gap', x0, y + 3, x1, y + 3)]
        : [rectShape(ink, x0, y, x1 - x0, layout.size * 0.42)];
    });
  const { head, facing } = { head: moment.head, facing: model.facing };
  const far = (metres: number | undefined): number =>
    metres === undefined ? head : head + facing * Math.min(metres, model.line.length);
  const tail = head - facing * (model.train?.length ?? 0);
  return group({ class: 'moment' }, [
    ...(moment.cautious === undefined ? [] : bar(head, far(moment.cautious), 'cautious', 0)),
    ...(moment.likely === undefined ? [] : bar(head, far(moment.likely), 'likely', 0)),
    ...(moment.gap === undefined
      ? []
      : bar(tail, tail - facing * Math.min(moment.gap, model.line.length), 'gap', 0)),
    ...trainShapes(model, layout, ground, moment),
    ...reachLabel(layout, words, moment),
  ]);
}

function reachLabel(layout: Layout, words: StripWords, moment: StripMoment): Shape[] {
  if (moment.cautious === undefined) return [];
  const text =
    moment.cautious === Infinity
      ? words.never
      : `${words.cautious} ${words.length(moment.cautious)} · ${words.speed(moment.speed)}`;
  const x = Math.min(
    Math.max(layout.x(moment.head), layout.left),
    layout.right - text.length * layout.size * 0.45,
  );
  return [textShape('pencilword', x, layout.profile.bottom + layout.size * 1.5, text, layout.size * 0.9)];
}

/** Vehicles to scale along the line; their height is drawn at the scale of length, never smaller than legible. */
function trainShapes(model: StripModel, layout: Layout, ground: Ground, moment: StripMoment): Shape[] {
  const train = model.train;
  if (!train) return [];
  const perMetre = (layout.right - layout.left) / (layout.view.to - layout.view.from);
  const tall = Math.max(0.55 * perMetre, layout.size * 0.7);
  return train.vehicles.flatMap(({ vehicle, behind, riders }) =>
    onWindow(
      model,
      moment.head - model.facing * behind,
      moment.head - model.facing * (behind + vehicle.length),
    ).flatMap(([a, b]) => {
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      if (to < layout.view.from || from > layout.view.to) return [];
      const [x0, x1] = [layout.x(from), layout.x(to)];
      const y = ground.y(heightAt(model.line, (from + to) / 2));
      const tilt =
        (Math.atan2(
          ground.y(heightAt(model.line, to)) - ground.y(heightAt(model.line, from)),
          Math.max(1, x1 - x0),
        ) *
          180) /
        Math.PI;
      const engine = vehicle.role === 'engine';
      const wide = Math.max(1.5, x1 - x0 - 1);
      const body = rectShape(
        engine ? 'engine' : 'body',
        x0,
        y - (engine ? 1.5 : 0.55) * tall,
        wide,
        (engine ? 1.25 : 0.3) * tall,
      );
      const wheels = vehicle.groups.map((g) =>
        shape('circle', {
          class: 'wheel',
          cx: px(x0 + (wide * (model.facing > 0 ? vehicle.length - g.at : g.at)) / vehicle.length),
          cy: px(y - 0.14 * tall),
          r: px(Math.max(1, 0.14 * tall)),
        }),
      );
      const people = riders.map(({ rider, seat }) =>
        shape('circle', {
          class: rider.duty === 'driver' ? 'driver' : 'rider',
          cx: px(x0 + (wide * (model.facing > 0 ? vehicle.length - seat.at : seat.at)) / vehicle.length),
          cy: px(y - (engine ? 1.75 : 0.95) * tall),
          r: px(Math.max(1.2, 0.2 * tall)),
        }),
      );
      return [
        shape('g', { transform: `rotate(${px(tilt)} ${px((x0 + x1) / 2)} ${px(y)})` }, [
          body,
          ...wheels,
          ...people,
        ]),
      ];
    }),
  );
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
