/**
 * Readings of a test from CSV, a row each: headings are the fields of its record, with their units, as `force (lbf)`,
 * `time_s`, `way`. Of coasts several runs stand below each other: `run` numbers them, the first row of each is where it
 * was let go, `rest` marks where it came to rest. Of a video `frame` may stand for its times: the number of the frame.
 */
import { type FieldForm, fileForm, type GroupForm, type NamedField } from '../fields.ts';
import { type FileProblem, fileProblem, show } from '../problem.ts';
import { decodeText } from '../text.ts';
import { rowsOf, tooMuch } from './csv-rows.ts';

type Json = Record<string, unknown>;

export interface ReadReadings {
  /** `{kind, …}`; absent where a problem stands. */
  readonly test?: Json;
  readonly problems: readonly FileProblem[];
}

interface Column {
  readonly key: string;
  readonly unit: string;
  readonly at: number;
}

const MOST_TOLD = 5;

/** "Shown (mph)" → `shown`, `mph`; `time_s` → `time`, `s`. */
export function headed(cell: string): { readonly name: string; readonly unit: string } {
  const [, name, unit] = /^(.*?)\s*[([]\s*([^)\]]+?)\s*[)\]]\s*$/.exec(cell) ??
    /^(.*?)_([^_\s]+)$/.exec(cell) ?? ['', cell, ''];
  return { name: name.toLowerCase().replace(/[\s_-]/g, ''), unit };
}

/** The list of a test that has a row for each reading. */
export function listOf(kind: string): NamedField | undefined {
  const field = fileForm('test').fields.find(({ key }) => key === 'test');
  const group = field?.is.form === 'oneOf' ? field.is.groups.find(({ tag }) => tag === kind)?.is : undefined;
  if (group?.form !== 'group') return undefined;
  return group.fields.find((f) => f.is.form === 'list' && !f.optional && f.is.entry.form !== 'choice');
}

const entryOf = (field: NamedField): FieldForm => (field.is as Extract<FieldForm, { form: 'list' }>).entry;
const isCoast = (entry: FieldForm): boolean =>
  entry.form === 'group' && entry.fields.some((f) => f.key === 'passes');

/** What may stand in the heading; of a list of plain figures its own name. */
function keysOf(field: NamedField): readonly string[] {
  const entry = entryOf(field);
  if (isCoast(entry)) return ['run', 'way', 'at', 'time', 'speed', 'rest'];
  if (entry.form !== 'group') return [field.key];
  return (entry as GroupForm).fields.filter((f) => f.is.form !== 'list').map((f) => f.key);
}

/** @param rate frames of a video in each second */
export function importReadings(
  content: Uint8Array | string,
  file: string,
  kind: string,
  rate?: number,
): ReadReadings {
  const fail = (found: string, expected: string, row = 1, column = 1): ReadReadings => ({
    problems: [fileProblem(file, { path: ['readings'], found, expected }, { row, column })],
  });
  const decoded = decodeText(content);
  if (!decoded.ok) return { problems: [fileProblem(file, decoded.trouble)] };
  const field = listOf(kind);
  if (!field) return fail(show(kind), 'a test whose readings stand in rows');
  const much = tooMuch(decoded.text);
  if (much) return fail(much.found, much.expected, much.row);
  const { rows, semicolons } = rowsOf(decoded.text);
  const [head, ...body] = rows;
  if (!head || body.length === 0) return fail('no readings', 'a heading and a row for each reading');
  const keys = keysOf(field);
  const columns: Column[] = [];
  const problems: FileProblem[] = [];
  head.cells.forEach((cell, at) => {
    if (cell.trim() === '') return;
    const { name, unit } = headed(cell.trim());
    const key =
      rate !== undefined && name === FRAME && keys.includes('time')
        ? FRAME
        : keys.find((k) => k.toLowerCase() === name);
    if (key && !columns.some((c) => c.key === key)) columns.push({ key, unit, at });
    else if (problems.length < MOST_TOLD)
      problems.push(
        fileProblem(
          file,
          { path: ['heading'], found: show(cell.trim()), expected: `each once of ${keys.join(', ')}` },
          { row: head.row, column: at + 1 },
        ),
      );
  });
  if (problems.length > 0) return { problems };
  // As of a decimal comma where commas part the cells: half a figure would be read.
  const over = body.find(({ cells }) => cells.slice(head.cells.length).some((c) => c.trim() !== ''));
  if (over) return fail(`${over.cells.length} cells`, `${head.cells.length}, as in the heading`, over.row);
  const read = framesTimed(
    body.map(({ cells }) => rowOf(cells, columns, semicolons)),
    rate,
  );
  if ('bad' in read) return fail(show(read.bad), 'the number of a frame', body[read.row].row);
  const entry = entryOf(field);
  if (isCoast(entry)) return { test: { kind, [field.key]: runsOf(read) }, problems };
  const list = entry.form === 'group' ? read.map(typed) : read.map((row) => row[field.key] ?? '');
  return { test: { kind, [field.key]: list }, problems };
}

const FRAME = 'frame';

/** Of a run the frames count from its first row's, as times do from where it was let go. */
function framesTimed(
  rows: readonly Cells[],
  rate: number | undefined,
): Cells[] | { readonly bad: string; readonly row: number } {
  if (rate === undefined) return [...rows];
  let [run, first] = ['', 0];
  const timed: Cells[] = [];
  for (const [i, { frame, ...row }] of rows.entries()) {
    if (frame === undefined) {
      timed.push(row);
      continue;
    }
    if (!/^\d+$/.test(frame)) return { bad: frame, row: i };
    const own = row['run'] ?? (i === 0 ? '1' : run);
    if (own !== run) [run, first] = [own, 'at' in row ? Number(frame) : 0];
    timed.push({ ...row, time: `${((Number(frame) - first) / rate).toFixed(4)} s` });
  }
  return timed;
}

type Cells = Readonly<Record<string, string>>;

/** A figure without a unit of its own has that of its heading; an empty cell is nothing. */
function rowOf(cells: readonly string[], columns: readonly Column[], semicolons: boolean): Cells {
  return Object.fromEntries(
    columns.flatMap(({ key, unit, at }) => {
      const cell = (cells[at] ?? '').trim();
      if (cell === '') return [];
      // Where cells are parted by semicolons, a comma is a decimal point.
      const text = semicolons && /^[-+]?\d*,\d+$/.test(cell) ? cell.replace(',', '.') : cell;
      return [[key, unit !== '' && /^[-+]?[\d.,]+$/.test(text) ? `${text} ${unit}` : text]];
    }),
  );
}

const words: Readonly<Record<string, unknown>> = { yes: true, true: true, no: false, false: false };
const typed = (row: Cells): Json =>
  Object.fromEntries(Object.entries(row).map(([key, text]) => [key, words[text.toLowerCase()] ?? text]));

function runsOf(rows: readonly Cells[]): Json[] {
  const runs: { from: Cells; passes: Json[]; rest?: Json; run: string }[] = [];
  for (const row of rows) {
    const last = runs[runs.length - 1];
    const run = row['run'] ?? last?.run ?? '1';
    const { at = '', time, speed } = row;
    if (!last || last.run !== run) runs.push({ run, from: row, passes: [] });
    else if (/^(yes|true|x|1)$/i.test(row['rest'] ?? ''))
      last.rest = { at, ...(time === undefined ? {} : { time }) };
    else
      last.passes.push({
        at,
        ...(time === undefined ? {} : { time }),
        ...(speed === undefined ? {} : { speed }),
      });
  }
  return runs.map(({ from, passes, rest }) => ({
    ...(from['way'] === undefined ? {} : { way: from['way'] }),
    from: from['at'] ?? '',
    ...(from['speed'] === undefined ? {} : { speed: from['speed'] }),
    passes,
    ...(rest ? { rest } : {}),
  }));
}
