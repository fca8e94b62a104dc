/**
 * A drawing exchange file (DXF, release 12, ASCII) of closed outlines, lines and letters, each on a layer. Millimetres. Pairs of a group
 * code and a value, a line each. Source: DXF reference, release 12: HEADER, TABLES, ENTITIES; POLYLINE with VERTEX and SEQEND.
 */
import type { Polygon } from '../../engine/base/numerics/polygon.ts';

export interface DxfSheet {
  readonly layer: string;
  /** Where its origin lies on the sheet, m. */
  readonly x: number;
  readonly outline: Polygon;
  readonly lines: readonly (readonly [number, number, number, number])[];
  readonly letters: readonly {
    readonly x: number;
    readonly y: number;
    readonly high: number;
    readonly text: string;
  }[];
}

type Pair = readonly [code: number, value: string];

const millimetres = (m: number): string => (m * 1000).toFixed(3);
/** Layer names of that release: capitals, figures, - and _. */
export const layerName = (text: string): string =>
  text
    .toUpperCase()
    .replace(/[^A-Z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 31) || 'SHEET';
/** One line, letters that every reader has. */
const plainText = (text: string): string => text.replace(/[^\x20-\x7e]/g, (c) => (c === '’' ? "'" : '-'));

const point = (x: number, y: number, codes: readonly [number, number] = [10, 20]): Pair[] => [
  [codes[0], millimetres(x)],
  [codes[1], millimetres(y)],
];

export function dxf(sheets: readonly DxfSheet[]): string {
  const layers = sheets.map((s, i) => `${layerName(s.layer).slice(0, 27)}-${i + 1}`);
  const pairs: Pair[] = [
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
    ]),
    ...section('TABLES', [
      [0, 'TABLE'],
      [2, 'LAYER'],
      [70, `${layers.length}`],
      ...layers.flatMap((name, i): Pair[] => [
        [0, 'LAYER'],
        [2, name],
        [70, '0'],
        [62, `${(i % 6) + 1}`],
        [6, 'CONTINUOUS'],
      ]),
      [0, 'ENDTAB'],
    ]),
    ...section(
      'ENTITIES',
      sheets.flatMap((s, i) => entities(s, layers[i])),
    ),
    [0, 'EOF'],
  ];
  return pairs.map(([code, value]) => `${code}\n${value}\n`).join('');
}

const section = (name: string, of: readonly Pair[]): Pair[] => [
  [0, 'SECTION'],
  [2, name],
  ...of,
  [0, 'ENDSEC'],
];

function entities({ x: from, outline, lines, letters }: DxfSheet, layer: string): Pair[] {
  return [
    [0, 'POLYLINE'],
    [8, layer],
    [66, '1'],
    [70, '1'],
    ...outline.flatMap(({ x, y }): Pair[] => [[0, 'VERTEX'], [8, layer], ...point(from - x, y)]),
    [0, 'SEQEND'],
    [8, layer],
    ...lines.flatMap(([x1, y1, x2, y2]): Pair[] => [
      [0, 'LINE'],
      [8, layer],
      ...point(from - x1, y1),
      ...point(from - x2, y2, [11, 21]),
    ]),
    ...letters.flatMap(({ x, y, high, text }): Pair[] => [
      [0, 'TEXT'],
      [8, layer],
      ...point(from - x, y),
      [40, millimetres(high)],
      [1, plainText(text)],
    ]),
  ];
}
