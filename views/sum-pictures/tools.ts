/** Pencils for the pictures beside the sums: arrows, measures, wheels, vehicles, on one sheet size. */
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
} from '../strip/scene.ts';

/** What a symbol is called and, where it is known, how much it is. */
export type Say = (symbol: string) => string;

export type Picture = (say: Say) => readonly Shape[];

export const WIDE = 480;
export const HIGH = 210;
const LETTER = 14;

export const sheet = (title: string, parts: readonly Shape[]): Scene => drawing(WIDE, HIGH, title, parts);

type Anchor = 'start' | 'middle' | 'end';

export const word = (x: number, y: number, text: string, anchor: Anchor = 'middle'): Shape =>
  textShape('word', x, y, text, LETTER, anchor);

/** A force or motion: its head at the second point. */
export function arrow(x1: number, y1: number, x2: number, y2: number, label = '', dx = 0, dy = -8): Shape {
  const along = Math.atan2(y2 - y1, x2 - x1);
  const wing = (turn: number): string =>
    `${px(x2 - 11 * Math.cos(along + turn))},${px(y2 - 11 * Math.sin(along + turn))}`;
  return group({}, [
    shape('line', { class: 'pencil', x1: px(x1), y1: px(y1), x2: px(x2), y2: px(y2) }),
    pathShape('pencilsolid', `M${px(x2)},${px(y2)}L${wing(0.4)}L${wing(-0.4)}Z`),
    textShape('pencilword', (x1 + x2) / 2 + dx, (y1 + y2) / 2 + dy, label, LETTER, 'middle'),
  ]);
}

/** A measured length along a line, with ticks at its ends. */
export function measure(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  label: string,
  dx = 0,
  dy = 16,
): Shape {
  const along = Math.atan2(y2 - y1, x2 - x1) + Math.PI / 2;
  const tick = (x: number, y: number): Shape =>
    lineShape(
      'fine',
      x - 5 * Math.cos(along),
      y - 5 * Math.sin(along),
      x + 5 * Math.cos(along),
      y + 5 * Math.sin(along),
    );
  return group({}, [
    lineShape('fine', x1, y1, x2, y2),
    tick(x1, y1),
    tick(x2, y2),
    word((x1 + x2) / 2 + dx, (y1 + y2) / 2 + dy, label),
  ]);
}

export const disc = (x: number, y: number, r: number, ink = 'wheel'): Shape =>
  shape('circle', { class: ink, cx: px(x), cy: px(y), r: px(r) });

export const rail = (y: number, from = 20, to = WIDE - 20): Shape => lineShape('rail', from, y, to, y);

/** A car standing on a rail at y, its left end at x. */
export function car(x: number, y: number, wide: number, high = 22, ink: 'body' | 'engine' = 'body'): Shape {
  const r = 7;
  return group({}, [
    rectShape(ink, x, y - 2 * r - high, wide, high),
    ...[0.18, 0.32, 0.68, 0.82].map((share) => disc(x + wide * share, y - r, r)),
  ]);
}

/** A vessel with its name inside. */
export function vessel(x: number, y: number, wide: number, high: number, label: string): Shape {
  const round = Math.min(high / 2, 22);
  return group({}, [
    shape('rect', { class: 'body', x, y, width: wide, height: high, rx: round }),
    word(x + wide / 2, y + high / 2 + 5, label),
  ]);
}

/** An arc about a centre, angles in degrees, 0 to the right, growing upward. */
export function arc(
  cx: number,
  cy: number,
  r: number,
  from: number,
  to: number,
  ink: 'rail' | 'fine' | 'pencil' = 'fine',
): Shape {
  const at = (degrees: number): string =>
    `${px(cx + r * Math.cos((degrees * Math.PI) / 180))},${px(cy - r * Math.sin((degrees * Math.PI) / 180))}`;
  const sweep = to > from ? 0 : 1;
  return pathShape(ink, `M${at(from)}A${r},${r} 0 0 ${sweep} ${at(to)}`);
}

/** A spring between two points on a level line. */
export function spring(x1: number, x2: number, y: number, turns = 5): Shape {
  const step = (x2 - x1) / (turns * 2);
  const points = Array.from({ length: turns * 2 + 1 }, (_, i) => {
    const off = i === 0 || i === turns * 2 ? 0 : i % 2 === 0 ? 7 : -7;
    return `${px(x1 + i * step)},${px(y + off)}`;
  });
  return pathShape('ink', `M${points.join('L')}`);
}
