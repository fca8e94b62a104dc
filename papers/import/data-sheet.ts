/**
 * Data sheets of measured tests as clubs publish them: one CSV, a fact a row, SI, no names, no places, the month alone. Its columns
 * once, for whoever writes one and whoever reads it.
 */
import Papa from 'papaparse';
import { kinds } from '../../engine/base/quantity.ts';
import { brakeKinds } from '../../engine/things/brake/kinds/index.ts';
import { railStates } from '../../engine/things/rail.ts';
import { type FileProblem, fileProblem, show } from '../problem.ts';
import { decodeText } from '../text.ts';
import { rowsOf, tooMuch } from './csv-rows.ts';

/** One measured figure, or one stop beside what had been said of it. */
export interface SheetRow {
  /** Numbered within the sheet: figures of one test go together. */
  readonly test: number;
  /** Which test it was. */
  readonly kind: string;
  /** 2026-05 */
  readonly month: string;
  /** m */
  readonly gauge?: number;
  readonly rail?: string;
  /** What it is in a train: `engine`, `car` … */
  readonly vehicle?: string;
  readonly bearing?: string;
  /** Diameter, m. */
  readonly wheel?: number;
  /** Empty, kg, to two figures. */
  readonly weight?: number;
  readonly brake?: string;
  /** The field of the paper; `stop`: how long a stop was. */
  readonly what: string;
  readonly value: number;
  /** Ends of what answers draw from: √6 standard deviations. */
  readonly low?: number;
  readonly high?: number;
  readonly unit: string;
  /** Of a stop: m/s at the mark; and what the papers had said of it, m. */
  readonly speed?: number;
  readonly likely?: number;
  readonly careful?: number;
  /** An example, measured by nobody. */
  readonly invented?: true;
}

type Key = keyof SheetRow;

/** Headings in their order. */
const columns: readonly (readonly [Key, string])[] = [
  ['test', 'test'],
  ['kind', 'kind'],
  ['month', 'month'],
  ['gauge', 'gauge (m)'],
  ['rail', 'rail'],
  ['vehicle', 'vehicle'],
  ['bearing', 'bearing'],
  ['wheel', 'wheel (m)'],
  ['weight', 'weight (kg)'],
  ['brake', 'brake'],
  ['what', 'what'],
  ['value', 'value'],
  ['low', 'low'],
  ['high', 'high'],
  ['unit', 'unit'],
  ['speed', 'speed (m/s)'],
  ['likely', 'likely (m)'],
  ['careful', 'careful (m)'],
  ['invented', 'invented'],
];

const figures: ReadonlySet<Key> = new Set([
  'test',
  'gauge',
  'wheel',
  'weight',
  'value',
  'low',
  'high',
  'speed',
  'likely',
  'careful',
]);

const FIRST = '# Heedway data sheet 1';

const ABOUT = [
  `${FIRST}: measured tests of ridable miniature railways. SI units; no names, no places, the month alone.`,
  '# value: most likely. low, high: ends of the triangle that answers draw from, 2.45 standard deviations to each side.',
  '# what: the field of the paper that it belongs to; stop: from the mark to rest, with what the papers had said before (likely; careful: no more than one in a hundred is longer; empty: never).',
];

export const sheetText = (rows: readonly SheetRow[]): string =>
  `${[
    ...ABOUT,
    Papa.unparse(
      [
        columns.map(([, heading]) => heading),
        ...rows.map((row) =>
          columns.map(([key]) => (key === 'invented' ? (row.invented ? 'yes' : '') : (row[key] ?? ''))),
        ),
      ],
      { newline: '\n' },
    ),
  ].join('\n')}\n`;

/** A CSV that says so in its first line. */
export const isSheet = (text: string): boolean => text.replace(/^\uFEFF/, '').startsWith(FIRST);

export interface ReadSheet {
  readonly rows: readonly SheetRow[];
  readonly problems: readonly FileProblem[];
}

const MOST_TOLD = 5;

/** Units of a sheet: SI. */
export const sheetUnits: readonly string[] = [...new Set(Object.values(kinds))];

const fixed: Readonly<Partial<Record<Key, readonly string[]>>> = {
  rail: railStates,
  brake: brakeKinds,
  unit: sheetUnits,
};

export function readSheet(content: Uint8Array | string, file: string): ReadSheet {
  const problems: FileProblem[] = [];
  const report = (row: number, column: number, path: string, found: string, expected: string): void => {
    if (problems.length < MOST_TOLD)
      problems.push(fileProblem(file, { path: [path], found, expected }, { row, column }));
  };
  const decoded = decodeText(content);
  if (!decoded.ok) return { rows: [], problems: [fileProblem(file, decoded.trouble)] };
  const much = tooMuch(decoded.text);
  if (much) report(much.row, 1, 'rows', much.found, much.expected);
  else if (!isSheet(decoded.text)) report(1, 1, 'sheet', 'no data sheet', `a CSV that begins "${FIRST}"`);
  if (problems.length > 0) return { rows: [], problems };
  const [head, ...body] = rowsOf(decoded.text).rows;
  const at = new Map(head?.cells.map((cell, i) => [cell.trim(), i]));
  for (const [, heading] of columns)
    if (!at.has(heading)) report(head?.row ?? 1, 1, 'heading', 'no such column', show(heading));
  if (problems.length > 0) return { rows: [], problems };
  const rows = body.map(({ row, cells }) =>
    Object.fromEntries(
      columns.flatMap(([key, heading]): [Key, unknown][] => {
        const column = at.get(heading) as number;
        const cell = (cells[column] ?? '').trim();
        const wrong = wrongIn(key, cell);
        if (wrong !== undefined)
          report(row, column + 1, heading, cell === '' ? 'nothing' : show(cell), wrong);
        if (cell === '') return [];
        if (key === 'invented') return cell === 'yes' ? [[key, true]] : [];
        return [[key, figures.has(key) ? Number(cell) : cell]];
      }),
    ),
  );
  return problems.length > 0
    ? { rows: [], problems }
    : { rows: rows as unknown as readonly SheetRow[], problems };
}

const must: ReadonlySet<Key> = new Set(['test', 'kind', 'month', 'what', 'value', 'unit']);

/** What is expected instead; undefined: it is right. */
function wrongIn(key: Key, cell: string): string | undefined {
  if (cell === '') return must.has(key) ? 'a figure or a word: this column is never empty' : undefined;
  if (figures.has(key))
    return Number.isFinite(Number(cell)) ? undefined : 'a figure, SI, with a decimal point';
  if (key === 'month') return /^\d{4}-(0[1-9]|1[0-2])$/.test(cell) ? undefined : 'a month such as 2026-05';
  const of = fixed[key];
  return of && cell.split(' ').some((word) => !of.includes(word)) ? of.join(', ') : undefined;
}
