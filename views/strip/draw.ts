/**
 * The strip: one long drawing of the line, the same on the screen, in print and on the card. From the top: the zones
 * that are driven and where to brake; the train's reach; the track with its grades, curves and places; how light the
 * wheels run; chainage. Lettering is never smaller than the size asked for, and nothing is written over another thing.
 * Pure: data in, scene out.
 */
import { groundOf, type Lanes, type Layout, layOut } from './layout.ts';
import { openSheet, type Sheet } from './letters.ts';
import type { StripModel, StripMoment, StripView, StripWords } from './model.ts';
import { longEnough, reach } from './moment.ts';
import { places } from './places.ts';
import { roads } from './roads.ts';
import {
  drawing,
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
import { stripSentences } from './sentences.ts';
import { speedLane } from './speeds.ts';
import { keepTrack, track } from './track.ts';
import { runsLight, wheelBand } from './wheels.ts';

/** The train at a moment with its reach, to be laid over a strip of the same view: cheap enough for a drag. */
export function drawMoment(
  model: StripModel,
  view: StripView,
  words: StripWords,
  moment: StripMoment,
): Scene {
  return reach(model, layOut(view, lanesOf(model)), words, moment);
}

/** Chainage under a horizontal position of the drawing, m. */
export function chainageAt(view: StripView, x: number): number {
  const { left, right } = layOut(view, { headed: false, wheels: true });
  return view.from + ((x - left) / (right - left)) * (view.to - view.from);
}

const lanesOf = (model: StripModel): Lanes => ({
  headed: (model.notToRun ?? '') !== '',
  wheels: runsLight(model),
});

export function drawStrip(
  model: StripModel,
  view: StripView,
  words: StripWords,
  moment?: StripMoment,
): Scene {
  const layout = layOut(view, lanesOf(model));
  const ground = groundOf(model, layout);
  const sheet = openSheet(view.width, view.height);
  const { reach: lane } = layout;
  sheet.keep({ x0: 0, y0: lane.top, x1: view.width, y1: lane.bottom });
  keepTrack(model, layout, ground, sheet);
  const speeds = speedLane(model, layout, words, sheet);
  const found = marks(model, layout, sheet);
  const rail = track(model, layout, words, ground, sheet);
  const besides = roads(model, layout, ground, sheet);
  const named = places(model, layout, words, ground, sheet);
  const wheels = wheelBand(model, layout, words, sheet);
  return drawing(view.width, view.height, stripSentences(model, words), [
    rectShape('paper', 0, 0, view.width, view.height),
    ...heading(model, layout),
    speeds,
    rail,
    besides,
    named,
    wheels,
    axis(layout, words, sheet, scaleWords(model, layout, words, ground.times)),
    ...(moment ? [reach(model, layout, words, moment)] : []),
    found,
  ]);
}

/** In a line of its own, over all that it covers. */
const heading = ({ notToRun = '' }: StripModel, { left, size }: Layout): Shape[] =>
  notToRun === '' ? [] : [textShape('strong', left, size * 1.1, notToRun, size)];

/** How much taller the heights, and how much longer the train, are drawn than the line. */
function scaleWords(model: StripModel, layout: Layout, words: StripWords, times: number): string {
  const train = longEnough(layout, model.train?.length ?? 0);
  const heights = `${words.heightsTimes} ${Math.round(times)}`;
  return train > 1.05 ? `${heights}, train × ${train < 3 ? train.toFixed(1) : Math.round(train)}` : heights;
}

function axis(layout: Layout, words: StripWords, sheet: Sheet, scales: string): Shape {
  const { view, size, axis: y } = layout;
  const count = Math.max(2, Math.floor((layout.right - layout.left) / (size * 7)));
  const ticks = words.chainageTicks(view.from, view.to, count).flatMap((s) => {
    const x = layout.x(s);
    const tick = lineShape('ink', x, y - size * 0.5, x, y - size * 0.1);
    const placed = sheet.put('small', words.chainage(s), size, [
      { x, y: y + size * 0.95, anchor: 'middle' },
      { x: layout.left, y: y + size * 0.95 },
      { x: layout.right, y: y + size * 0.95, anchor: 'end' },
    ]);
    return placed ? [tick, placed.shape] : [tick];
  });
  const note = sheet.put('small', scales, size, [
    { x: layout.right, y: layout.wheels.top - size * 0.3, anchor: 'end' },
    { x: layout.right, y: layout.profile.top + size, anchor: 'end' },
  ]);
  return group({ class: 'chainage' }, [
    lineShape('ink', layout.left, y - size * 0.5, layout.right, y - size * 0.5),
    ...ticks,
    ...(note ? [note.shape] : []),
  ]);
}

// ---- findings at their places

/** Numbered marks: shape tells the severity (square holds, diamond cannot tell, triangle limits, circle notes). */
function marks(model: StripModel, layout: Layout, sheet: Sheet): Shape {
  const { size, marks: lane, view } = layout;
  const u = size * 0.75;
  return group(
    { class: 'marks' },
    model.marks
      .filter((m) => m.from >= view.from && m.from <= view.to)
      .flatMap((m) => {
        const y = lane.bottom - u * 1.1;
        const text = `${m.number}`;
        const near = Math.min(layout.right - u, Math.max(layout.left + u, layout.x(m.from)));
        const spots = [0, 1, -1, 2, -2, 3, -3, 4, -4].map((n) => {
          const x = near + n * u * 1.4;
          const box = { x0: x - u * 1.1, y0: y - 1.3 * u, x1: x + u * 1.1, y1: y - 1.2 * u };
          return { x, y: y + size * 0.35, anchor: 'middle' as const, with: box };
        });
        const placed = sheet.put('onmark', text, size, spots);
        if (!placed) return [];
        const { x } = placed.spot;
        const circle = `M${px(x - u)},${px(y)}a${px(u)},${px(u)} 0 1 0 ${px(2 * u)},0a${px(u)},${px(u)} 0 1 0 ${px(-2 * u)},0z`;
        const outline = {
          forbids: `M${px(x - u)},${px(y - u)}h${px(2 * u)}v${px(2 * u)}h${px(-2 * u)}z`,
          unknown: `M${px(x)},${px(y - 1.3 * u)}l${px(1.3 * u)},${px(1.3 * u)}l${px(-1.3 * u)},${px(1.3 * u)}l${px(-1.3 * u)},${px(-1.3 * u)}z`,
          limits: `M${px(x)},${px(y - 1.3 * u)}l${px(1.3 * u)},${px(2.2 * u)}h${px(-2.6 * u)}z`,
          notes: circle,
          assumed: circle,
        }[m.severity];
        return [
          shape('g', { 'data-mark': m.number }, [
            shape('title', {}, [m.title]),
            pathShape(m.severity === 'assumed' ? 'notes' : m.severity, outline),
            textShape('onmark', x, placed.spot.y, text, size, 'middle'),
          ]),
        ];
      }),
  );
}
