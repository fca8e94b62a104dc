/**
 * A drawing as plain data: a tree of SVG elements. The screen renders it with its own view library,
 * the command line and the printer serialise it; neither draws anything itself.
 */
import { plain } from '../../engine/base/letters.ts';
import { type Ink, inkAttributes } from './ink.ts';

export interface Shape {
  readonly tag: string;
  readonly attrs: Readonly<Record<string, string | number | undefined>>;
  readonly children?: readonly (Shape | string)[];
}

export type Scene = Shape;

export type Attrs = Shape['attrs'];

export const shape = (tag: string, attrs: Attrs, children?: readonly (Shape | string)[]): Shape =>
  children === undefined ? { tag, attrs } : { tag, attrs, children };

export const group = (attrs: Attrs, children: readonly Shape[]): Shape => shape('g', attrs, children);

/** A whole drawing: its size, px, and what it shows in words. */
export const drawing = (width: number, height: number, label: string, parts: readonly Shape[]): Scene =>
  shape(
    'svg',
    {
      viewBox: `0 0 ${px(width)} ${px(height)}`,
      width: px(width),
      height: px(height),
      role: 'img',
      'aria-label': label,
    },
    parts,
  );

export const lineShape = (ink: Ink, x1: number, y1: number, x2: number, y2: number): Shape =>
  shape('line', { class: ink, x1: px(x1), y1: px(y1), x2: px(x2), y2: px(y2) });

export const pathShape = (ink: Ink, d: string): Shape => shape('path', { class: ink, d });

export const rectShape = (ink: Ink, x: number, y: number, width: number, height: number): Shape =>
  shape('rect', {
    class: ink,
    x: px(x),
    y: px(y),
    width: px(Math.max(0, width)),
    height: px(Math.max(0, height)),
  });

export const textShape = (
  ink: Ink,
  x: number,
  y: number,
  text: string,
  size: number,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Shape =>
  shape('text', { class: ink, x: px(x), y: px(y), 'font-size': px(size), 'text-anchor': anchor }, [text]);

/** Coordinates to a tenth of a pixel keep files small and drawings stable. */
export const px = (value: number): number => Math.round(value * 10) / 10;

export type Point = readonly [x: number, y: number];

/** Path through the points, px; empty without any. */
export const polyline = (points: readonly Point[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)},${px(y)}`).join('');

/** Path of what lies between the points and a level, px. */
export function filledTo(level: number, points: readonly Point[]): string {
  if (points.length === 0) return '';
  const [from, to] = [points[0][0], points[points.length - 1][0]];
  return `${polyline(points)}L${px(to)},${px(level)}L${px(from)},${px(level)}Z`;
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escapeText = (text: string): string => plain(text).replace(/[&<>"]/g, (c) => escapes[c]);

function serialise(item: Shape | string): string {
  if (typeof item === 'string') return escapeText(item);
  const { class: ink, ...rest } = item.attrs;
  const all = { ...(typeof ink === 'string' ? inkAttributes(ink) : {}), ...rest };
  const attrs = Object.entries(all)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${escapeText(String(value))}"`)
    .join('');
  const inner = (item.children ?? []).map(serialise).join('');
  return inner === '' ? `<${item.tag}${attrs}/>` : `<${item.tag}${attrs}>${inner}</${item.tag}>`;
}

/** A stand-alone SVG document, colours written into every element so that any reader shows it alike. */
export function sceneToSvg(scene: Scene): string {
  const root: Scene = { ...scene, attrs: { xmlns: 'http://www.w3.org/2000/svg', ...scene.attrs } };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${serialise(root)}\n`;
}
