/** Places as the trade draws them, on the track, and their names in rows below. */
import { heightAt } from '../../engine/things/line/geometry.ts';
import type { Place } from '../../engine/things/line/types.ts';
import { type Ground, type Layout, label, ROW } from './layout.ts';
import type { Sheet, Spot } from './letters.ts';
import type { StripModel, StripWords } from './model.ts';
import {
  group,
  lineShape,
  type Point,
  pathShape,
  polyline,
  px,
  rectShape,
  type Shape,
  shape,
} from './scene.ts';
import { along } from './track.ts';

/** Whose name is written first where there is not room for all. */
const order: readonly Place['kind'][] = [
  'station',
  'stop',
  'crossing',
  'signal',
  'tunnel',
  'switch',
  'buffers',
  'bridge',
  'siding',
  'yard',
  'summit',
  'board',
];

export function places(
  model: StripModel,
  layout: Layout,
  words: StripWords,
  ground: Ground,
  sheet: Sheet,
): Shape {
  const { view } = layout;
  const seen = model.line.places.filter((p) => (p.to ?? p.at) >= view.from && p.at <= view.to);
  const ranked = [...seen].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));
  const names = ranked.flatMap((p) => name(p, model, layout, words, ground, sheet));
  return group({ class: 'places' }, [
    ...names,
    ...seen.map((p) => group({}, [shape('title', {}, [p.name]), ...symbol(p, model, layout, ground)])),
  ]);
}

function name(
  place: Place,
  { line }: StripModel,
  layout: Layout,
  words: StripWords,
  ground: Ground,
  sheet: Sheet,
): Shape[] {
  const { size, names, view } = layout;
  const middle =
    place.to === undefined ? place.at : (Math.max(place.at, view.from) + Math.min(place.to, view.to)) / 2;
  const x = layout.x(middle);
  const foot = ground.y(heightAt(line, middle));
  const main = place.kind === 'station' || place.kind === 'stop';
  const spots = Array.from({ length: names.rows }, (_, row) => {
    const y = names.top + size * (0.95 + row * ROW);
    const stem = { x0: x - 1, y0: layout.profile.bottom, x1: x + 1, y1: y - size * 0.95 };
    return (['middle', 'start', 'end'] as const).map((anchor): Spot => {
      const off = { middle: 0, start: -size * 0.3, end: size * 0.3 }[anchor];
      return { x: x + off, y, anchor, ...(row > 0 ? { with: stem } : {}) };
    });
  }).flat();
  const placed = sheet.put(main ? 'strong' : 'word', label(words.place(place), layout), size, spots);
  if (!placed) return [];
  return [lineShape('stem', x, foot, x, placed.spot.y - size * 0.9), placed.shape];
}

/** A raised platform, a post with its lamp, a diverging track, gates, portals, abutments, a board, a stop block. */
function symbol(place: Place, model: StripModel, layout: Layout, ground: Ground): Shape[] {
  const { line, facing } = model;
  const u = layout.size * 0.5;
  const x = layout.x(place.at);
  const y = ground.y(heightAt(line, place.at));
  const end = place.to ?? place.at;
  const raised = (by: number): Point[] =>
    along(model, layout, ground, place.at, end).map(([a, b]) => [a, b - by]);
  switch (place.kind) {
    case 'station':
    case 'stop': {
      const edge = raised(u * 0.55);
      const deck =
        edge.length > 1 && edge[edge.length - 1][0] - edge[0][0] > 2 * u
          ? edge
          : ([
              [x - u, y - u * 0.55],
              [x + u, y - u * 0.55],
            ] as Point[]);
      const [a, b] = [deck[0], deck[deck.length - 1]];
      const shelter = `M${px(a[0] + u * 0.4)},${px(a[1])}v${px(-1.5 * u)}l${px(0.9 * u)},${px(-0.7 * u)}l${px(0.9 * u)},${px(0.7 * u)}v${px(1.5 * u)}z`;
      return [
        pathShape('platform', polyline(deck)),
        pathShape('solid', shelter),
        lineShape('ink', b[0], b[1], b[0], b[1] + u * 0.5),
      ];
    }
    case 'signal': {
      const top = y - 3.4 * u;
      return [
        lineShape('ink', x - 0.6 * u, y, x + 0.6 * u, y),
        lineShape('ink', x, y, x, top),
        rectShape('limits', facing > 0 ? x - 1.7 * u : x, top - 0.1 * u, 1.7 * u, 0.65 * u),
        shape('circle', { class: 'open', cx: px(x), cy: px(top + 0.2 * u), r: px(0.45 * u) }),
      ];
    }
    case 'switch':
      return [
        pathShape('ink', `M${px(x - u * facing)},${px(y)}L${px(x + 1.6 * u * facing)},${px(y - 1.1 * u)}`),
      ];
    case 'siding':
    case 'yard': {
      const side = raised(1.1 * u);
      const more = place.kind === 'yard' ? [pathShape('ink', polyline(raised(2.2 * u)))] : [];
      return [pathShape('ink', polyline(side)), ...more];
    }
    case 'crossing':
      return [
        lineShape('bold', x - 0.8 * u, y - 2.6 * u, x + 0.8 * u, y - 1.4 * u),
        lineShape('bold', x - 0.8 * u, y - 1.4 * u, x + 0.8 * u, y - 2.6 * u),
        lineShape('ink', x, y - 1.4 * u, x, y),
        lineShape('road', x, y + 0.2 * u, x, y + 1.2 * u),
      ];
    case 'tunnel': {
      const wide = Math.max(layout.x(end) - x, 1.6 * u);
      return [
        pathShape(
          'portal',
          `M${px(x)},${px(y)}v${px(-2 * u)}q${px(wide / 2)},${px(-1.8 * u)} ${px(wide)},0v${px(2 * u)}z`,
        ),
      ];
    }
    case 'bridge':
      return [
        pathShape(
          'ink',
          `M${px(x - u)},${px(y + 1.6 * u)}v${px(-1.2 * u)}h${px(2 * u + Math.max(0, layout.x(end) - x))}v${px(1.2 * u)}`,
        ),
      ];
    case 'summit':
      return [];
    case 'buffers':
      return [
        lineShape('bold', x, y + 0.2 * u, x, y - 1.6 * u),
        lineShape('bold', x - 0.7 * u, y - 1.4 * u, x + 0.7 * u, y - 1.4 * u),
      ];
    default:
      return [
        lineShape('ink', x, y, x, y - 2.4 * u),
        rectShape('open', x - 0.7 * u, y - 3.4 * u, 1.4 * u, 1.2 * u),
      ];
  }
}
