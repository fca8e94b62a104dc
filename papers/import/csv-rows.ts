/** A surveyed table row by row: which column is what, in which unit, and every figure in SI. */
import Papa from 'papaparse';
import type { Kind } from '../../engine/base/quantity.ts';
import { parseQuantity } from '../../units/index.ts';
import { show } from '../problem.ts';
import type { Lengths } from './types.ts';

export type Column =
  | 'at'
  | 'length'
  | 'height'
  | 'rise'
  | 'grade'
  | 'radius'
  | 'hand'
  | 'cant'
  | 'place'
  | 'kind';

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

export interface Heading {
  readonly column: Column;
  readonly kind: Kind | 'text';
  readonly unit: string;
  readonly index: number;
}

/** Rows of a survey: as many as a line has heights. */
export const MOST_ROWS = 50_000;

export interface Row {
  /** As a text editor counts them, from 1. */
  readonly row: number;
  readonly cells: readonly string[];
}

/** Lines of the text, empty ones and remarks counted, and letters of one. */
const MOST_LINES = 200_000;
const MOST_LETTERS = 20_000;

/** The row at which there is more than any survey has. */
export function tooMuch(
  text: string,
): { readonly row: number; readonly found: string; readonly expected: string } | undefined {
  let from = 0;
  for (let row = 1; from < text.length; row++) {
    if (row > MOST_LINES) return { row, found: `more than ${MOST_LINES} lines`, expected: 'fewer' };
    const end = text.indexOf('\n', from);
    const next = end < 0 ? text.length : end + 1;
    if (next - from > MOST_LETTERS)
      return { row, found: `a line of ${next - from} letters`, expected: `at most ${MOST_LETTERS}` };
    from = next;
  }
  return undefined;
}

/** Rows that say something, each with where it stands in the file. */
export function rowsOf(text: string): { readonly rows: readonly Row[]; readonly semicolons: boolean } {
  // A remark on a line of its own becomes an empty line, which keeps the count.
  const bare = text.replace(/^#.*$/gm, '');
  const { delimiter } = Papa.parse(bare, { preview: 20, skipEmptyLines: 'greedy' }).meta;
  const rows: Row[] = [];
  let row = 1;
  Papa.parse<string[]>(bare, {
    delimiter,
    step: ({ data }, parser) => {
      if (data.some((cell) => cell.trim() !== '')) rows.push({ row, cells: data });
      // A cell in quotes may go over several lines.
      row += 1 + data.reduce((ends, cell) => ends + (cell.match(/\r\n?|\n/g)?.length ?? 0), 0);
      if (rows.length > MOST_ROWS + 1) parser.abort();
    },
  });
  return { rows, semicolons: delimiter === ';' };
}

export type Report = (row: number, column: number, path: string, found: string, expected: string) => void;

const MOST_COLUMNS = 100;

/** What is found in a heading that says no unit. */
export const UNITLESS = 'without a unit';

/** @param lengths unit of lengths whose heading says none */
export function readHeader({ row, cells }: Row, report: Report, lengths?: Lengths): Heading[] {
  const headers: Heading[] = [];
  cells.slice(0, MOST_COLUMNS).forEach((cell, index) => {
    const text = cell.trim().toLowerCase();
    if (text === '') return;
    const [, name, written] = /^(.*?)[\s_]*[([]\s*([^)\]]+)\s*[)\]]?\s*$/.exec(text) ??
      /^(.*?)_([a-z%"'°]+)$/.exec(text) ?? ['', text, ''];
    const heading = headings.find(
      ([column, pattern]) => pattern.test(name.trim()) && !headers.some((h) => h.column === column),
    );
    if (!heading)
      return report(
        row,
        index + 1,
        cell.trim(),
        show(cell.trim()),
        'a column such as chainage, length, height, rise, grade, radius, hand, cant, place',
      );
    const [column, , kind] = heading;
    const unit = written === '' && kind === 'length' && lengths ? lengths : written;
    if (kind !== 'text' && unit === '') {
      report(
        row,
        index + 1,
        cell.trim(),
        `${show(cell.trim())} ${UNITLESS}`,
        `its unit in the header, such as "${cell.trim()} (${kind === 'grade' ? '%' : 'ft'})"`,
      );
    } else if (kind !== 'text' && !parseQuantity(`1 ${unit}`, kind).ok) {
      report(
        row,
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
    report(row, 1, 'header', 'neither chainage nor length', 'a column of chainage or of segment length');
  if (!has('height') && !has('rise') && !has('grade'))
    report(row, 1, 'header', 'neither height, rise nor grade', 'a column of height, rise or grade');
  return headers;
}

export interface Cells {
  readonly row: number;
  readonly values: Partial<Record<Column, number>>;
  readonly texts: Partial<Record<Column, string>>;
  /** A cell of it could not be read, and that is said already. */
  readonly wrong: boolean;
}

export function readRow(
  { row: number, cells }: Row,
  headers: readonly Heading[],
  semicolons: boolean,
  report: Report,
): Cells {
  const values: Partial<Record<Column, number>> = {};
  const texts: Partial<Record<Column, string>> = {};
  let wrong = false;
  for (const { column, kind, unit, index } of headers) {
    const cell = (cells[index] ?? '').trim();
    if (cell === '') continue;
    if (kind === 'text') texts[column] = cell.replace(/\s+/g, ' ');
    else if (column === 'radius' && /^(straight|tangent|-|inf)$/i.test(cell)) continue;
    else {
      // A decimal comma is plain only where semicolons part the cells.
      const figure = semicolons ? cell.replace(/^(-?\d+),(\d+)$/, '$1.$2') : cell;
      const bare = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(figure);
      const read = parseQuantity(bare ? `${figure} ${unit}` : figure, kind);
      if (read.ok) values[column] = read.si;
      else {
        report(number, index + 1, column, show(cell), read.problem.expected);
        wrong = true;
      }
    }
  }
  return { row: number, values, texts, wrong };
}
