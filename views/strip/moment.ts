/** The train on the strip with its real outline, its stopping reach ahead and the gap it needs behind. */
import { heightAt } from '../../engine/things/line/geometry.ts';
import type { LoadedVehicle } from '../../engine/things/train/loaded.ts';
import { silhouette } from '../car-views.ts';
import { type Ground, groundOf, type Layout } from './layout.ts';
import { openSheet, type Spot } from './letters.ts';
import type { StripModel, StripMoment, StripWords } from './model.ts';
import { group, lineShape, type Point, pathShape, polyline, px, type Shape, shape } from './scene.ts';
import { along } from './track.ts';

/** A whole train is drawn at least so long, as a share of the drawing's width and in px. */
const LEAST_SHARE = 0.13;
const LEAST_LONG = 78;

/** Stretches of [a, b] on the line, cut where a loop's origin is crossed. */
function onWindow(model: StripModel, a: number, b: number): [number, number][] {
  const { line } = model;
  if (!line.loop) return [[a, b]];
  const laps = [-line.length, 0, line.length];
  return laps.map((lap): [number, number] => [a + lap, b + lap]);
}

export function reach(model: StripModel, layout: Layout, words: StripWords, moment: StripMoment): Shape {
  const ground = groundOf(model, layout);
  const { facing, line } = model;
  const band = (
    from: number,
    to: number,
    ink: 'beam' | 'beamlikely' | 'gap' | 'bold',
    below: number,
  ): Shape[] =>
    onWindow(model, Math.min(from, to), Math.max(from, to)).flatMap(([a, b]) => {
      const points = along(model, layout, ground, a, b).map(([x, y]): Point => [x, y + below]);
      return points.length > 1 ? [pathShape(ink, polyline(points))] : [];
    });
  const far = (metres: number | undefined): number =>
    moment.head + facing * Math.min(metres ?? 0, line.length * 0.999);
  const length = model.train?.length ?? 0;
  const tail = moment.head - facing * length;
  const end = tail - facing * Math.min(moment.gap ?? 0, line.length * 0.999);
  return group({ class: 'moment' }, [
    ...(moment.gap === undefined ? [] : band(tail, end, 'gap', 7)),
    ...(moment.cautious === undefined ? [] : band(moment.head, far(moment.cautious), 'beam', 0)),
    ...(moment.likely === undefined ? [] : band(moment.head, far(moment.likely), 'beamlikely', 0)),
    ...(length > 0 ? band(tail, moment.head, 'bold', 7) : []),
    ...trainShapes(model, layout, ground, moment, longEnough(layout, length)),
    ...reachWords(layout, words, moment, model, ground),
  ]);
}

/** How many times its true length the train is drawn, so that one can see what it is. */
export function longEnough(layout: Layout, length: number): number {
  if (length <= 0) return 1;
  const wide = layout.right - layout.left;
  const long = (length * wide) / (layout.view.to - layout.view.from);
  return Math.max(1, Math.max(LEAST_LONG, LEAST_SHARE * wide) / long);
}

/** In a lane of its own, over the head: nothing else is written there. */
function reachWords(
  layout: Layout,
  words: StripWords,
  moment: StripMoment,
  { line, facing }: StripModel,
  ground: Ground,
): Shape[] {
  if (moment.cautious === undefined) return [];
  const { size, reach: lane, left, right } = layout;
  const sheet = openSheet(layout.view.width, layout.view.height);
  const x = Math.min(right, Math.max(left, layout.x(moment.head)));
  const y = lane.bottom - size * 0.45;
  const text = moment.cautious === Infinity ? words.never : words.toStop(moment.cautious);
  const ends = (at: number): Spot[] => [
    { x: at, y, anchor: 'middle' },
    { x: left, y },
    { x: right, y, anchor: 'end' },
  ];
  const stop = sheet.put('pencilword', text, size, ends(x));
  if (!stop) return [];
  const gap =
    moment.gap === undefined || moment.gap === Infinity
      ? undefined
      : sheet.put(
          'small',
          words.gapOf(moment.gap),
          size,
          facing > 0
            ? [
                { x: stop.box.x0 - size, y, anchor: 'end' },
                { x: stop.box.x1 + size, y },
              ]
            : [
                { x: stop.box.x1 + size, y },
                { x: stop.box.x0 - size, y, anchor: 'end' },
              ],
        );
  const foot = ground.y(heightAt(line, moment.head));
  return [lineShape('lead', x, lane.bottom, x, foot), stop.shape, ...(gap ? [gap.shape] : [])];
}

/**
 * Vehicles along the drawn track, heights at the scale of their lengths.
 *
 * @param times how many times longer than at the line's scale, from the head back
 */
export function trainShapes(
  model: StripModel,
  layout: Layout,
  ground: Ground,
  moment: StripMoment,
  times = 1,
): Shape[] {
  const { train, facing, line } = model;
  if (!train) return [];
  const scale = ((layout.right - layout.left) / (layout.view.to - layout.view.from)) * times;
  const y = (s: number): number => ground.y(heightAt(line, s));
  return train.vehicles.flatMap((loaded) => {
    const [front, rear] = [loaded.behind, loaded.behind + loaded.vehicle.length].map(
      (m) => moment.head - facing * m * times,
    );
    return onWindow(model, Math.min(front, rear), Math.max(front, rear)).flatMap(([from, to]) => {
      if (to < layout.view.from || from > layout.view.to) return [];
      const [x0, x1] = [layout.x(from), layout.x(to)];
      const tilt = (Math.atan2(y(to) - y(from), Math.max(0.1, x1 - x0)) * 180) / Math.PI;
      const long = loaded.vehicle.length * scale;
      const place = `translate(${px((x0 + x1) / 2)} ${px((y(from) + y(to)) / 2 - 1)}) rotate(${px(tilt)})`;
      const mirror = facing > 0 ? ' scale(-1 1)' : '';
      return [
        shape(
          'g',
          { transform: `${place}${mirror} translate(${px(-long / 2)} 0)`, class: 'vehicle' },
          outline(loaded, scale),
        ),
      ];
    });
  });
}

const outlines = new WeakMap<LoadedVehicle, { readonly scale: number; readonly shapes: readonly Shape[] }>();

/** Drawn once while the scale is the same: a train that is dragged only moves. */
function outline(loaded: LoadedVehicle, scale: number): readonly Shape[] {
  const known = outlines.get(loaded);
  if (known?.scale === scale) return known.shapes;
  const shapes = silhouette(loaded, scale);
  outlines.set(loaded, { scale, shapes });
  return shapes;
}
