/** The zones that are driven, stepped, with their numbers; what is permitted behind them; a board where to brake. */
import type { DrivenZone } from '../../engine/questions/speed/types.ts';
import { type Layout, label } from './layout.ts';
import { type Sheet, type Spot, textWidth } from './letters.ts';
import type { StripModel, StripWords } from './model.ts';
import { scaleLinear } from './scale.ts';
import {
  filledTo,
  group,
  lineShape,
  type Point,
  pathShape,
  polyline,
  rectShape,
  type Shape,
  shape,
} from './scene.ts';

/** A zone, or its part on this side of a loop's origin, in line chainage. */
interface Piece {
  readonly zone: DrivenZone;
  readonly from: number;
  readonly to: number;
}

/** Zones cut at a loop's origin, by growing chainage. */
export function pieces({ driven, line, facing }: StripModel): Piece[] {
  return (driven?.zones ?? [])
    .flatMap((zone): Piece[] => {
      const [from, to] = facing > 0 ? [zone.from, zone.to] : [zone.to, zone.from];
      if (from < to) return [{ zone, from, to }];
      return [
        { zone, from, to: line.length },
        { zone, from: 0, to },
      ];
    })
    .filter((p) => p.to > p.from)
    .sort((a, b) => a.from - b.from);
}

export function speedLane(model: StripModel, layout: Layout, words: StripWords, sheet: Sheet): Shape {
  const { speeds, driven } = model;
  const { speed: lane, left, right, size, view } = layout;
  if (!speeds || !driven) return group({}, []);
  const seen = pieces(model).filter((p) => p.to > view.from && p.from < view.to);
  const top = driven.zones.reduce((most, z) => Math.max(most, z.speed), 0) || 1;
  const lowest = driven.zones.reduce((least, z) => Math.min(least, z.speed), top);
  // From below the slowest on, so that a step is seen.
  const y = scaleLinear([lowest * 0.4, top], [lane.bottom, lane.top + size * 1.7]);
  const x = (s: number): number => layout.x(Math.min(view.to, Math.max(view.from, s)));
  const inward = model.facing > 0;
  const line = seen.flatMap((p): Point[] =>
    p.zone.kind === 'arrive'
      ? [
          [x(p.from), y(inward ? p.zone.speed : lowest * 0.4)],
          [x(p.to), y(inward ? lowest * 0.4 : p.zone.speed)],
        ]
      : [
          [x(p.from), y(p.zone.speed)],
          [x(p.to), y(p.zone.speed)],
        ],
  );
  line.slice(1).forEach(([x1, y1], i) => {
    const [x0, y0] = line[i];
    sheet.keep({ x0, y0: Math.min(y0, y1) - 1, x1, y1: Math.max(y0, y1) + 1 });
  });
  const permitted = Array.from(speeds.at, (s, j): Point => [s, speeds.limit[j]])
    .filter(([s]) => s >= view.from && s <= view.to)
    .map(([s, v]): Point => [layout.x(s), y(Math.max(lowest * 0.4, Math.min(top, v)))]);
  const planned = model.plannedSpeed;
  return group({ class: 'speeds' }, [
    pathShape('allowed', filledTo(lane.bottom, permitted)),
    lineShape('hair', left, lane.bottom, right, lane.bottom),
    ...(planned === undefined || planned > top
      ? []
      : [lineShape('planned', left, y(planned), right, y(planned))]),
    pathShape('limit', polyline(line)),
    ...numbers(seen, x, y, layout, words, sheet),
    ...boards(model, layout, words, sheet),
  ]);
}

/** The speed over its zone, largest zones first, the first of them with its unit; then what makes it slower. */
function numbers(
  seen: readonly Piece[],
  x: (s: number) => number,
  y: (v: number) => number,
  layout: Layout,
  words: StripWords,
  sheet: Sheet,
): Shape[] {
  const { size, speed: lane } = layout;
  const large = size * 1.35;
  const driven = seen.filter((p) => p.zone.kind === 'run').sort((a, b) => b.to - b.from - (a.to - a.from));
  const told = driven.flatMap(({ zone, from, to }, i) => {
    const text = i === 0 ? words.speed(zone.speed) : words.speedTick(zone.speed);
    const [x0, x1] = [x(from), x(to)];
    const above = y(zone.speed) - size * 0.55;
    const spots: Spot[] = [
      { x: (x0 + x1) / 2, y: above, anchor: 'middle' },
      { x: x0 + size * 0.3, y: above },
      { x: x1 - size * 0.3, y: above, anchor: 'end' },
      { x: (x0 + x1) / 2, y: y(zone.speed) + large * 1.1, anchor: 'middle' },
    ];
    const placed = sheet.put('zone', text, large, spots);
    return placed ? [placed.shape] : [];
  });
  const why = driven.flatMap(({ zone, from, to }) => {
    if (zone.reason.kind === 'host-line' || zone.reason.kind === 'looked-no-higher') return [];
    const text = label(words.reason(zone.reason), layout);
    const half = textWidth(text, size) / 2;
    const at = Math.min(layout.right - half, Math.max(layout.left + half, (x(from) + x(to)) / 2));
    const under = Math.min(lane.bottom - size * 0.3, y(zone.speed) + size * 1.15);
    const spots = [
      { x: at, y: under, anchor: 'middle' },
      { x: x(from) - size * 0.4, y: under, anchor: 'end' },
      { x: x(to) + size * 0.4, y: under },
    ] as const;
    const placed = sheet.put('reason', text, size, spots);
    return placed ? [placed.shape] : [];
  });
  return [...told, ...why];
}

/** A square board where braking begins: the speed to come down to, or a bar for a stop. */
function boards({ driven }: StripModel, layout: Layout, words: StripWords, sheet: Sheet): Shape[] {
  const { marks, size, view, speed } = layout;
  const u = size * 0.72;
  return (driven?.acts ?? [])
    .filter((act) => act.at >= view.from && act.at <= view.to)
    .flatMap((act) => {
      const x = Math.min(layout.right - u, Math.max(layout.left + u, layout.x(act.at)));
      const y = marks.top + u * 1.25;
      const box = { x0: x - u, y0: y - u, x1: x + u, y1: y + u };
      const board = group({}, [
        shape('title', {}, [words.act(act)]),
        lineShape('limitedge', layout.x(act.at), speed.bottom, layout.x(act.at), y - u),
        rectShape('board', box.x0, box.y0, 2 * u, 2 * u),
      ]);
      if (act.kind === 'stop') {
        sheet.keep(box);
        return [board, rectShape('forbids', x - u * 0.6, y - u * 0.25, u * 1.2, u * 0.5)];
      }
      const text = words.speedTick(act.toSpeed);
      const placed = sheet.put('strong', text, size, [{ x, y: y + size * 0.35, anchor: 'middle' }]);
      sheet.keep(box);
      return placed ? [board, placed.shape] : [board];
    });
}
