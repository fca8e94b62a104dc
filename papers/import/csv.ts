/**
 * A surveyed line from CSV: chainage or segment length with height, rise or grade; radius, hand, cant and
 * place names where there are columns for them. Units stand in the header: `Height (ft)`, `radius_m`.
 */
import Papa from 'papaparse';
import type { Kind } from '../../engine/base/quantity.ts';
import { parseQuantity } from '../../units/index.ts';
import { type FileProblem, fileProblem, show } from '../problem.ts';
import { decodeText } from '../text.ts';
import type { Imported, ImportOptions } from './types.ts';

type Column = 'at' | 'length' | 'height' | 'rise' | 'grade' | 'radius' | 'hand' | 'cant' | 'place' | 'kind';

/** Words of a header that name a column. */
const headings: readonly [Column, RegExp, Kind | 'text'][] = [
  ['at', /chainage|station(ing)?|distance|^at$|^dist$|pegs?\b|position/, 'length'],
  ['length', /segment|length|^run$|step/, 'length'],
  ['height', /height|elevation|elev|level|altitude|^z$/, 'length'],
  ['rise', /rise|climb/, 'length'],
  ['grade', /grade|gradient|slope/, 'grade'],
  ['radius', /radius|^r$/, 'length'],
  ['hand', /hand|direction|side|turn/, 'text'],
  ['cant', /cant|superelevation|crosslevel/, 'length'],
  ['kind', /kind|type/, 'text'],
  ['place', /place|name|feature|remark|note/, 'text'],
];

interface Heading {
  readonly column: Column;
  readonly kind: Kind | 'text';
  readonly unit: string;
  readonly index: number;
}

/** Radii at or beyond this count as straight, m. */
const STRAIGHT = 5000;

export function importCsv(content: Uint8Array | string, file: string, options: ImportOptions): Imported {
  const decoded = decodeText(content);
  if (!decoded.ok) return { notes: [], problems: [fileProblem(file, decoded.trouble)] };
  const parsed = Papa.parse<string[]>(decoded.text, { skipEmptyLines: 'greedy', comments: '#' });
  const rows = parsed.data;
  const problems: FileProblem[] = [];
  const report = (row: number, column: number, path: string, found: string, expected: string): void => {
    problems.push(fileProblem(file, { path: [path], found, expected }, { row, column }));
  };
  if (rows.length === 0) {
    report(
      1,
      1,
      'header',
      'an empty file',
      'a header row such as: Chainage (ft), Height (ft), Radius (ft), Hand, Place',
    );
    return { notes: [], problems };
  }
  const headers = readHeader(rows[0], report);
  if (problems.length > 0) return { notes: [], problems };
  const semicolons = parsed.meta.delimiter === ';';
  const cells = rows.slice(1).map((row, i) => readRow(row, i + 2, headers, semicolons, report));
  const notes: string[] = [`Read ${cells.length} rows with ${headers.map((h) => h.column).join(', ')}.`];
  const profile = profileOf(cells, headers, report, notes);
  if (problems.length > 0) return { notes, problems };
  return { line: lineOf(profile, cells, options, notes), notes, problems };
}

type Report = (row: number, column: number, path: string, found: string, expected: string) => void;

function readHeader(row: readonly string[], report: Report): Heading[] {
  const headers: Heading[] = [];
  row.forEach((cell, index) => {
    const text = cell.trim().toLowerCase();
    if (text === '') return;
    const [, name, unit] = /^(.*?)[\s_]*[([]\s*([^)\]]+)\s*[)\]]?\s*$/.exec(text) ??
      /^(.*?)_([a-z%"'°]+)$/.exec(text) ?? ['', text, ''];
    const heading = headings.find(
      ([column, pattern]) => pattern.test(name.trim()) && !headers.some((h) => h.column === column),
    );
    if (!heading)
      return report(
        1,
        index + 1,
        cell.trim(),
        show(cell.trim()),
        'a column such as chainage, length, height, rise, grade, radius, hand, cant, place',
      );
    const [column, , kind] = heading;
    if (kind !== 'text' && unit === '') {
      report(
        1,
        index + 1,
        cell.trim(),
        `${show(cell.trim())} without a unit`,
        `its unit in the header, such as "${cell.trim()} (${kind === 'grade' ? '%' : 'ft'})"`,
      );
    } else if (kind !== 'text' && !parseQuantity(`1 ${unit}`, kind).ok) {
      report(
        1,
        index + 1,
        cell.trim(),
        `the unit ${show(unit)}`,
        kind === 'grade' ? '% or ‰' : 'a unit of length such as ft, m, in',
      );
    }
    headers.push({ column, kind, unit, index });
  });
  const has = (column: Column): boolean => headers.some((h) => h.column === column);
  if (!has('at') && !has('length'))
    report(1, 1, 'header', 'neither chainage nor length', 'a column of chainage or of segment length');
  if (!has('height') && !has('rise') && !has('grade'))
    report(1, 1, 'header', 'neither height, rise nor grade', 'a column of height, rise or grade');
  return headers;
}

interface Cells {
  readonly row: number;
  readonly values: Partial<Record<Column, number>>;
  readonly texts: Partial<Record<Column, string>>;
}

function readRow(
  row: readonly string[],
  number: number,
  headers: readonly Heading[],
  semicolons: boolean,
  report: Report,
): Cells {
  const values: Partial<Record<Column, number>> = {};
  const texts: Partial<Record<Column, string>> = {};
  for (const { column, kind, unit, index } of headers) {
    const cell = (row[index] ?? '').trim();
    if (cell === '') continue;
    if (kind === 'text') texts[column] = cell;
    else if (column === 'radius' && /^(straight|tangent|-|inf)$/i.test(cell)) continue;
    else {
      // A decimal comma is plain only where semicolons part the cells.
      const figure = semicolons ? cell.replace(/^(-?\d+),(\d+)$/, '$1.$2') : cell;
      const bare = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(figure);
      const read = parseQuantity(bare ? `${figure} ${unit}` : figure, kind);
      if (read.ok) values[column] = read.si;
      else report(number, index + 1, column, show(cell), read.problem.expected);
    }
  }
  return { row: number, values, texts };
}

interface Point {
  readonly at: number;
  readonly height: number;
}

function profileOf(
  cells: readonly Cells[],
  headers: readonly Heading[],
  report: Report,
  notes: string[],
): Point[] {
  const points: Point[] = [];
  const column = (name: Column): number => (headers.find((h) => h.column === name)?.index ?? 0) + 1;
  const first = cells[0]?.values.at ?? 0;
  for (const { row, values } of cells) {
    const last = points[points.length - 1];
    const at =
      values.at !== undefined
        ? values.at - first
        : last && values.length !== undefined
          ? last.at + values.length
          : last
            ? undefined
            : 0;
    if (at === undefined) {
      report(row, column('at'), 'chainage', 'an empty cell', 'a chainage or segment length');
      continue;
    }
    if (last && at <= last.at + 1e-9) {
      report(
        row,
        column('at'),
        'chainage',
        `${at.toFixed(3)} m after ${last.at.toFixed(3)} m`,
        'a chainage beyond the row before',
      );
      continue;
    }
    const height = heightOf(values, last, at);
    if (height === undefined) {
      report(row, column('height'), 'height', 'an empty cell', 'a height, rise or grade');
      continue;
    }
    if (last && Math.abs(height - last.height) >= 0.4 * (at - last.at)) {
      const grade = (((height - last.height) / (at - last.at)) * 100).toFixed(0);
      report(
        row,
        column('height'),
        'height',
        `a grade of ${grade} %`,
        'less than 40 %: check heights and units',
      );
    }
    points.push({ at, height });
  }
  if (points.length < 2)
    report(1, 1, 'rows', `${points.length === 1 ? 'one point' : 'no point'}`, 'at least two points');
  if (first !== 0) notes.push(`Chainage moved to begin at 0 (was ${first.toFixed(2)} m).`);
  return points;
}

function heightOf(values: Cells['values'], last: Point | undefined, at: number): number | undefined {
  if (values.height !== undefined) return values.height;
  if (!last) return 0;
  if (values.rise !== undefined) return last.height + values.rise;
  return values.grade === undefined ? undefined : last.height + values.grade * (at - last.at);
}

const metres = (m: number): string => `${Number(m.toFixed(4))} m`;

/** A row's radius holds from the row to the next; touching rows of one radius and hand are one curve. */
function lineOf(
  points: readonly Point[],
  cells: readonly Cells[],
  options: ImportOptions,
  notes: string[],
): Record<string, unknown> {
  const curves: { from: number; to: number; radius: number; hand: string; cant?: number }[] = [];
  cells.forEach(({ values, texts }, i) => {
    const { radius, cant } = values;
    if (radius === undefined || radius === 0 || Math.abs(radius) >= STRAIGHT || i === points.length - 1)
      return;
    const hand = /^r/i.test(texts.hand ?? '') || (texts.hand === undefined && radius < 0) ? 'right' : 'left';
    const last = curves[curves.length - 1];
    const size = Math.abs(radius);
    if (last && last.to === points[i].at && last.radius === size && last.hand === hand)
      last.to = points[i + 1].at;
    else
      curves.push({
        from: points[i].at,
        to: points[i + 1].at,
        radius: size,
        hand,
        ...(cant ? { cant } : {}),
      });
  });
  const closes = Math.abs(points[points.length - 1].height - points[0].height) < 1e-6;
  notes.push(
    `Taken as point-to-point${closes ? '; the last height equals the first: change "shape" to "loop" if it is one' : ''}.`,
  );
  if (curves.length > 0)
    notes.push(
      `${curves.length} curves without transitions: add transitionIn and transitionOut where they were laid.`,
    );
  return {
    heedway: 'line',
    version: 1,
    name: options.name,
    gauge: options.gauge,
    shape: 'point-to-point',
    survey: 'taped',
    profile: points.map((p) => ({ at: metres(p.at), height: metres(p.height) })),
    curves: curves.map((c) => ({
      from: metres(c.from),
      to: metres(c.to),
      radius: metres(c.radius),
      hand: c.hand,
      ...(c.cant === undefined ? {} : { cant: metres(c.cant) }),
    })),
    places: cells.flatMap(({ texts }, i) =>
      texts.place === undefined
        ? []
        : [{ name: texts.place, kind: placeKind(texts.kind ?? texts.place), at: metres(points[i].at) }],
    ),
  };
}

const kindWords: readonly [string, RegExp][] = [
  ['station', /station|platform|halt/i],
  ['signal', /signal/i],
  ['crossing', /crossing/i],
  ['tunnel', /tunnel/i],
  ['bridge', /bridge|viaduct/i],
  ['switch', /switch|points|turnout/i],
  ['summit', /summit/i],
  ['siding', /siding|loop/i],
  ['buffers', /buffer|end/i],
];

const placeKind = (text: string): string =>
  kindWords.find(([, pattern]) => pattern.test(text))?.[0] ?? 'board';
