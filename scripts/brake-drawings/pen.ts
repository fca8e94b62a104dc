/** The pen of the brake drawings: sheet, colours, and plain figures as SVG. */

export const INK = '#22303a';
export const PAPER = '#fbf9f3';
export const SOFT = '#8a949b';
export const AIR = '#2c6e8f';
export const WIDTH = 760;
export const HEIGHT = 320;
export const RAIL = 284;

export const text = (x: number, y: number, words: string, anchor = 'middle', size = 13): string =>
  `<text x="${x}" y="${y}" text-anchor="${anchor}" font-size="${size}">${words}</text>`;
type Point = readonly [number, number];

const line = (points: readonly Point[], stroke: string, width: number, dash = ''): string =>
  `<polyline points="${points.map((p) => p.join(',')).join(' ')}" fill="none" stroke="${stroke}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`;
const solid = (stroke: string, width: number, ...points: Point[]): string => line(points, stroke, width);

/** Straight from end to end. */
export const bar = (x1: number, y1: number, x2: number, y2: number, width: number): string =>
  solid(INK, width, [x1, y1], [x2, y2]);
export const pipe = (...points: Point[]): string => line(points, AIR, 4);
export const wire = (...points: Point[]): string => line(points, INK, 2, '6 3');
/** A coil as a zigzag of four strokes. */
export const spring = (x: number, y: number, stroke: number, width: number): string => {
  const points = [-10, 10, -10, 10, -10].map((up, i): Point => [x + i * stroke, y + up]);
  return line(points, SOFT, width);
};
export const box = (x: number, y: number, w: number, h: number, r = 0, fill = PAPER): string =>
  `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${r}" fill="${fill}" stroke="${INK}" stroke-width="2"/>`;
export const disc = (x: number, y: number, r: number, fill = PAPER): string =>
  `<circle cx="${x}" cy="${y}" r="${r}" fill="${fill}" stroke="${INK}" stroke-width="2"/>`;
export const arrow = (x: number, y: number, dx: number, dy: number): string => {
  const [ex, ey] = [x + dx, y + dy];
  const size = 6 / Math.hypot(dx, dy);
  const [ux, uy] = [dx * size, dy * size];
  const head = `M${ex},${ey} L${ex - ux - uy},${ey - uy + ux} L${ex - ux + uy},${ey - uy - ux} Z`;
  return `${bar(x, y, ex, ey, 1.5)}<path d="${head}" fill="${INK}"/>`;
};
/** Two triangles point to point. */
export const valve = (x: number, y: number): string =>
  `<path d="M${x - 12},${y - 9} L${x + 12},${y + 9} L${x + 12},${y - 9} L${x - 12},${y + 9} Z" fill="${PAPER}" stroke="${INK}" stroke-width="2"/>`;
