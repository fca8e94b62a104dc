/**
 * The plan: the line from above, the same on the screen, in print and as a file. Curves with radius and hand as the
 * train runs, places, the train and its reach; a scale, and what the survey leaves open. Nothing is written over
 * another thing. Pure: data in, scene out.
 */

import type { Outing } from '../../engine/outing/types.ts';
import type { Ink } from '../strip/ink.ts';
import { openSheet, type Sheet, type Spot, wrapped } from '../strip/letters.ts';
import type { StripModel, StripMoment } from '../strip/model.ts';
import {
  drawing,
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
} from '../strip/scene.ts';
import { bendsOf } from '../strip/track.ts';
import { type Fitted, fitPlan } from './fit.ts';
import { type Laid, layLine } from './lay.ts';
import { drawMarks, type MarkOnPlan } from './marks.ts';
import { type DrawnTrack, drawnTracks } from './tracks.ts';
import type { PlanWords } from './words.ts';

export interface PlanView {
  /** px */
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
}

/** A line laid and fitted into its frame: made once, read at every move of the train. */
export interface Plan {
  readonly laid: Laid;
  readonly fitted: Fitted;
  readonly view: PlanView;
  readonly notes: readonly string[];
  /** Places that count for what fits. */
  readonly marks: readonly MarkOnPlan[];
}

const MARGIN = 12;
const ROW = 1.4;
/** Room around the track for what is written beside it, in sizes of the lettering. */
const ASIDE = 2.6;

/** By a layout of our own, since nobody said where they lie: drawn from above it would be another line than theirs. */
const laidOut = ({ assumptions }: Outing): boolean =>
  assumptions.some(({ key }) => key.startsWith('written/line.curves.'));

/** undefined: no curve is written, or not where, and so no plan. */
export function openPlan(
  outing: Outing,
  model: StripModel,
  view: PlanView,
  words: PlanWords,
  marks: readonly MarkOnPlan[] = [],
): Plan | undefined {
  const laid = laidOut(outing) ? undefined : layLine(model.line);
  if (!laid) return undefined;
  const { width, height, textSize: size } = view;
  const said = [
    ...(laid.misses ? [words.misses(laid.misses, laid.open)] : []),
    words.north,
    ...words.marks(marks),
  ];
  const notes = said.flatMap((text) => wrapped(text, size, width - 2 * MARGIN));
  const foot = height - size * ROW * (notes.length + 1.2);
  const aside = Math.min(size * ASIDE, width / 8);
  const frame = { x0: MARGIN + aside, y0: aside, x1: width - MARGIN - aside, y1: foot - aside };
  return { laid, fitted: fitPlan(laid, frame), view, notes, marks };
}

export function drawPlan(model: StripModel, plan: Plan, words: PlanWords, moment?: StripMoment): Scene {
  const { view, notes, fitted } = plan;
  const { width, height, textSize: size } = view;
  const sheet = openSheet(width, height);
  const foot = height - size * ROW * (notes.length + 1.2);
  sheet.keep({ x0: 0, y0: foot, x1: width, y1: height });
  const { length } = model.line;
  const track = stretch(plan, 0, length);
  for (const [x, y] of track) sheet.keep({ x0: x - 5, y0: y - 5, x1: x + 5, y1: y + 5 });
  const bends = bendsOf(model.line);
  const tracks = drawnTracks(model.line, fitted);
  for (const { points } of tracks)
    for (const [x, y] of points) sheet.keep({ x0: x - 4, y0: y - 4, x1: x + 4, y1: y + 4 });
  return drawing(width, height, planSentences(model, plan, words), [
    rectShape('paper', 0, 0, width, height),
    ...bends.map((b) => pathShape(b.sharp ? 'bendsharp' : 'bend', polyline(stretch(plan, b.from, b.to)))),
    ...(model.rails ?? []).map((p) => pathShape('slick', polyline(stretch(plan, p.from, p.to)))),
    pathShape('rail', polyline(track)),
    ...tracks.map(({ points }) => pathShape('rail', polyline(points))),
    ...(plan.laid.open ? [seam(fitted, length)] : []),
    ...drawMarks(plan, tracks, words, sheet),
    ...bendNames(model, plan, words, sheet, true),
    places(model, plan, words, sheet),
    ...bendNames(model, plan, words, sheet, false),
    ...tracks.flatMap((t) => trackName(t, plan, sheet)),
    ...way(model, plan, sheet),
    ...scaleBar(plan, words, foot),
    ...notes.map((text, i) => textShape('small', MARGIN, foot + size * (ROW * (i + 2) - 0.1), text, size)),
    ...(moment ? [drawPlanMoment(model, plan, moment)] : []),
  ]);
}

/** The train with its reach and gap, to be laid over the plan. */
export function drawPlanMoment({ line, facing, train }: StripModel, plan: Plan, moment: StripMoment): Shape {
  const far = (metres: number | undefined): number => Math.min(metres ?? 0, line.length * 0.999);
  const length = train?.length ?? 0;
  const tail = moment.head - facing * length;
  const band = (ink: Ink, a: number, b: number): Shape[] =>
    onLine(line.loop, line.length, Math.min(a, b), Math.max(a, b)).map(([from, to]) =>
      pathShape(ink, polyline(stretch(plan, from, to))),
    );
  const { x, y, left } = plan.fitted.at(moment.head);
  const size = plan.view.textSize;
  // Half as long again as broad: it shows the way even where the train is a speck.
  const ahead: Point = [-left[1] * facing, left[0] * facing];
  const tip = (along: number, across: number): Point => [
    x + (ahead[0] * along + left[0] * across) * size,
    y + (ahead[1] * along + left[1] * across) * size,
  ];
  return group({ class: 'moment' }, [
    ...(moment.gap === undefined ? [] : band('gap', tail, tail - facing * far(moment.gap))),
    ...(moment.cautious === undefined
      ? []
      : band('beam', moment.head, moment.head + facing * far(moment.cautious))),
    ...(moment.likely === undefined
      ? []
      : band('beamlikely', moment.head, moment.head + facing * far(moment.likely))),
    ...(length > 0 ? band('planTrain', tail, moment.head) : []),
    pathShape('engine', `${polyline([tip(0.8, 0), tip(-0.4, 0.55), tip(-0.4, -0.55)])}Z`),
  ]);
}

/** Chainage of the track that is nearest to a point of the drawing, m. */
export function chainageNear({ fitted, laid }: Plan, x: number, y: number): number {
  const count = laid.x.length;
  let [best, least] = [0, Infinity];
  for (let i = 0; i < count; i++) {
    const s = (laid.length * i) / (count - 1);
    const at = fitted.at(s);
    const far = (at.x - x) ** 2 + (at.y - y) ** 2;
    if (far < least) [best, least] = [s, far];
  }
  return best;
}

/** The same for those who do not see it. */
export function planSentences({ line }: StripModel, { notes }: Plan, words: PlanWords): string {
  return [`${words.plan}: ${line.name}.`, ...notes].join(' ');
}

/** Pieces of [a, b] that lie on the line; on a loop those over its seam too. */
function onLine(loop: boolean, length: number, a: number, b: number): [number, number][] {
  const laps = loop ? [-length, 0, length] : [0];
  return laps
    .map((lap): [number, number] => [Math.max(0, a + lap), Math.min(length, b + lap)])
    .filter(([from, to]) => to > from);
}

function stretch({ fitted, laid }: Plan, from: number, to: number): Point[] {
  const pieces = Math.max(1, Math.ceil(((to - from) / laid.length) * 450));
  return Array.from({ length: pieces + 1 }, (_, i) => {
    const { x, y } = fitted.at(from + ((to - from) * i) / pieces);
    return [x, y];
  });
}

/** From the end of a loop that could not be closed to its start. */
function seam(fitted: Fitted, length: number): Shape {
  const [a, b] = [fitted.at(length), fitted.at(0)];
  return lineShape('dotted', a.x, a.y, b.x, b.y);
}

/** Spots beside the track, outside the curve first, further and further off. */
function beside({ fitted, view }: Plan, s: number, size: number): Spot[] {
  const { x, y, left } = fitted.at(s);
  const outward = (x - fitted.middle[0]) * left[0] + (y - fitted.middle[1]) * left[1] >= 0 ? 1 : -1;
  return [1.1, 1.7, 2.6, 3.6, 5].flatMap((off) =>
    [outward, -outward].flatMap((side): Spot[] => {
      const [dx, dy] = [left[0] * side, left[1] * side];
      const spot = { x: x + dx * off * size, y: y + dy * off * size + size * 0.35 };
      const anchor = dx > 0.35 ? 'start' : dx < -0.35 ? 'end' : 'middle';
      return [
        { ...spot, anchor },
        { ...spot, anchor: spot.x < view.width / 2 ? 'start' : 'end' },
      ];
    }),
  );
}

function places({ line }: StripModel, plan: Plan, words: PlanWords, sheet: Sheet): Shape {
  const { fitted, view } = plan;
  const size = view.textSize;
  const main = (kind: string): boolean => kind === 'station' || kind === 'stop';
  const ranked = [...line.places].sort((a, b) => Number(main(b.kind)) - Number(main(a.kind)));
  return group(
    { class: 'places' },
    ranked.flatMap((place) => {
      const middle = place.to === undefined ? place.at : (place.at + place.to) / 2;
      const { x, y, left } = fitted.at(middle);
      const half = size * 0.45;
      const mark =
        place.to !== undefined && place.to > place.at
          ? pathShape(main(place.kind) ? 'platform' : 'road', polyline(stretch(plan, place.at, place.to)))
          : lineShape('bold', x - left[0] * half, y - left[1] * half, x + left[0] * half, y + left[1] * half);
      const name = sheet.put(
        main(place.kind) ? 'strong' : 'word',
        words.place(place),
        size,
        beside(plan, middle, size),
      );
      return [
        group({}, [shape('title', {}, [place.name]), mark]),
        ...(name ? [...lead([x, y], name.box), name.shape] : []),
      ];
    }),
  );
}

/** The sharpest are written before all places, the others where they leave room. */
function bendNames(
  model: StripModel,
  plan: Plan,
  words: PlanWords,
  sheet: Sheet,
  sharpest: boolean,
): Shape[] {
  const size = plan.view.textSize;
  return bendsOf(model.line)
    .filter((b) => b.sharp === sharpest)
    .sort((a, b) => a.radius - b.radius)
    .flatMap((b) => {
      const hand = b.hand * model.facing > 0 ? words.left : words.right;
      const middle = (b.from + b.to) / 2;
      const ink = b.sharp ? 'bendword' : 'small';
      const name = sheet.put(ink, `${words.radius(b.radius)} ${hand}`, size, beside(plan, middle, size));
      return name ? [name.shape] : [];
    });
}

/** Where it leaves room, about the middle of the track. */
function trackName({ name, points }: DrawnTrack, { view }: Plan, sheet: Sheet): Shape[] {
  const size = view.textSize;
  const [x, y] = points[points.length >> 1];
  const spots = [1.1, 1.9, 2.8, 3.8].flatMap((off) =>
    [
      [0, off],
      [0, -off],
      [off, 0],
      [-off, 0],
    ].map(
      ([dx, dy]): Spot => ({
        x: x + dx * size,
        y: y + dy * size + size * 0.35,
        anchor: dx > 0 ? 'start' : dx < 0 ? 'end' : 'middle',
      }),
    ),
  );
  const put = sheet.put('small', name, size, spots);
  return put ? [...lead([x, y], put.box), put.shape] : [];
}

/** From a place to its name where that had to go far off. */
function lead([x, y]: Point, box: { x0: number; y0: number; x1: number; y1: number }): Shape[] {
  const [tx, ty] = [Math.min(box.x1, Math.max(box.x0, x)), Math.min(box.y1, Math.max(box.y0, y))];
  return Math.hypot(tx - x, ty - y) < 16 ? [] : [lineShape('stem', x, y, tx, ty)];
}

/** Arrows along the track: the way that the train runs. */
function way({ line, facing }: StripModel, { fitted, view }: Plan, sheet: Sheet): Shape[] {
  const size = view.textSize;
  return [0.12, 0.45, 0.78].flatMap((share) => {
    const { x, y, left } = fitted.at(share * line.length);
    const ahead: Point = [-left[1] * facing, left[0] * facing];
    const at = (along: number, across: number): Point => [
      x + (ahead[0] * along + left[0] * across) * size,
      y + (ahead[1] * along + left[1] * across) * size,
    ];
    sheet.keep({ x0: x - size / 2, y0: y - size / 2, x1: x + size / 2, y1: y + size / 2 });
    return [pathShape('rail', polyline([at(-0.35, 0.45), at(0.25, 0), at(-0.35, -0.45)]))];
  });
}

/** A round length of about a fifth of the width. */
function scaleBar({ fitted, view }: Plan, words: PlanWords, foot: number): Shape[] {
  const size = view.textSize;
  const long = words.scaleLength((view.width * 0.2) / fitted.scale);
  const wide = long * fitted.scale;
  const y = foot + size * 0.6;
  return [
    shape('path', {
      class: 'ink',
      d: `M${px(MARGIN)},${px(y - 4)}v4h${px(wide)}v-4`,
    }),
    textShape('small', MARGIN + wide + size * 0.5, y + size * 0.1, words.length(long), size),
  ];
}
