/** The train to scale on the strip, its stopping reach ahead and the gap it needs behind. */
import { heightAt } from '../../engine/things/line/geometry.ts';
import { type Ground, groundOf, type Layout } from './layout.ts';
import type { StripModel, StripMoment, StripWords } from './model.ts';
import { group, lineShape, px, rectShape, type Shape, shape, textShape } from './scene.ts';

/** Segments of [a, b] on the line, cut where a loop's origin is crossed. */
function onWindow(model: StripModel, a: number, b: number): [number, number][] {
  const { line } = model;
  if (!line.loop) return [[a, b]];
  const laps = [-line.length, 0, line.length];
  return laps.map((lap): [number, number] => [a + lap, b + lap]);
}

export function reach(model: StripModel, layout: Layout, words: StripWords, moment: StripMoment): Shape {
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
export function trainShapes(model: StripModel, layout: Layout, ground: Ground, moment: StripMoment): Shape[] {
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
