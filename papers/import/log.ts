/**
 * What a phone wrote down while a train ran: a track of satellites (GPX), or a CSV of time with speed, with distance, or with what
 * the phone felt (x, y, z). Times since the beginning of the log; nothing is made of it here.
 */
import { parseQuantity } from '../../units/index.ts';
import { type FileProblem, fileProblem, show } from '../problem.ts';
import { decodeText, isGpx, LARGEST_SURVEY } from '../text.ts';
import { rowsOf, tooMuch } from './csv-rows.ts';
import { metresBetween } from './gpx.ts';
import { gpxPoints } from './gpx-points.ts';
import { headed } from './readings.ts';

export interface LogRow {
  /** s since the first row */
  readonly time: number;
  /** m along the track since its beginning, or as the CSV has it. */
  readonly way?: number;
  /** m/s */
  readonly speed?: number;
  /** m/s², in the phone's own axes; at rest it feels its weight. */
  readonly felt?: readonly [number, number, number];
}

export type LogOf = 'satellites' | 'distance' | 'speed' | 'felt';

export interface Log {
  readonly of: LogOf;
  readonly rows: readonly LogRow[];
}

export type ReadLog = { readonly log: Log } | { readonly problems: readonly FileProblem[] };

/** Fixes of satellites follow each other so far apart, s and m: nearer ones tell how they wander, not how the train ran. */
const APART = 2;
const MOVED = 1.5;

export function importLog(content: Uint8Array | string, file: string): ReadLog {
  const decoded = decodeText(content, LARGEST_SURVEY);
  if (!decoded.ok) return { problems: [fileProblem(file, decoded.trouble)] };
  return isGpx(file) ? ofTrack(decoded.text, file) : ofTable(decoded.text, file);
}

function ofTrack(text: string, file: string): ReadLog {
  const problems: FileProblem[] = [];
  const { fixes } = gpxPoints(
    text,
    (row, column, path, found, expected) => {
      problems.push(fileProblem(file, { path: path === '' ? [] : [path], found, expected }, { row, column }));
      return problems.length < 5;
    },
    () => {},
  );
  if (problems.length > 0) return { problems };
  const timed = fixes.filter((f) => f.time !== undefined);
  const fail = (found: string, expected: string): ReadLog => ({
    problems: [fileProblem(file, { path: ['trkpt'], found, expected })],
  });
  if (timed.length < 3)
    return fail(`${timed.length} points with a time`, 'a track with <time> at its points');
  const rows: LogRow[] = [];
  let [last, way] = [timed[0], 0];
  const start = timed[0].time as number;
  for (const [i, fix] of timed.entries()) {
    const time = (fix.time as number) - start;
    if (i > 0 && !(time > rows[rows.length - 1].time)) {
      if (time < rows[rows.length - 1].time)
        return fail(`a time that runs back, at point ${i + 1}`, 'times that go on');
      continue;
    }
    const moved = metresBetween(last, fix);
    const on = i === 0 || (time - ((last.time as number) - start) >= APART && moved >= MOVED);
    if (on) {
      way += moved;
      last = fix;
    }
    rows.push({ time, way });
  }
  return { log: { of: 'satellites', rows } };
}

type Column = 'time' | 'speed' | 'way' | 'x' | 'y' | 'z';

const names: readonly (readonly [Column, RegExp, Logged])[] = [
  ['time', /^(time|seconds?|elapsed|t)$/, 'time'],
  ['speed', /^(speed|velocity|v)$/, 'speed'],
  ['way', /^(distance|way|at|chainage|place)$/, 'length'],
  ['x', /^(acc(eleration)?)?x$/, 'acceleration'],
  ['y', /^(acc(eleration)?)?y$/, 'acceleration'],
  ['z', /^(acc(eleration)?)?z$/, 'acceleration'],
];

function ofTable(text: string, file: string): ReadLog {
  const fail = (found: string, expected: string, row = 1, column = 1, path = 'log'): ReadLog => ({
    problems: [fileProblem(file, { path: [path], found, expected }, { row, column })],
  });
  const much = tooMuch(text);
  if (much) return fail(much.found, much.expected, much.row);
  const { rows, semicolons } = rowsOf(text);
  const [head, ...body] = rows;
  if (!head || body.length < 3) return fail('no log', 'a heading and a row for each moment');
  const columns = head.cells.flatMap((cell, at) => {
    const { name, unit } = headed(cell.trim());
    const named = names.find(([, pattern]) => pattern.test(name));
    return named ? [{ key: named[0], kind: named[2], unit: unit.replace('^2', '²'), at }] : [];
  });
  const has = (...keys: Column[]): boolean => keys.every((k) => columns.some((c) => c.key === k));
  const of: LogOf | undefined = has('speed')
    ? 'speed'
    : has('way')
      ? 'distance'
      : has('x', 'y', 'z')
        ? 'felt'
        : undefined;
  if (!has('time') || of === undefined)
    return fail(
      `columns ${head.cells.map((c) => show(c.trim())).join(', ')}`,
      'time (s) with speed (mph), with distance (ft), or with x (m/s²), y (m/s²), z (m/s²)',
      head.row,
      1,
      'heading',
    );
  const bare = columns.find((c) => c.unit === '' || !parseQuantity(`1 ${c.unit}`, c.kind).ok);
  if (bare)
    return fail(
      bare.unit === '' ? `${bare.key} without a unit` : `the unit ${show(bare.unit)}`,
      `its unit in the heading, such as ${bare.key} (${{ time: 's', speed: 'mph', length: 'ft' }[bare.kind as string] ?? 'm/s²'})`,
      head.row,
      bare.at + 1,
      'heading',
    );
  const made: LogRow[] = [];
  let start: number | undefined;
  for (const { row, cells } of body) {
    const figures: Partial<Record<Column, number>> = {};
    for (const { key, kind, unit, at } of columns) {
      const cell = (cells[at] ?? '').trim();
      const text = semicolons ? cell.replace(/^(-?\d+),(\d+)$/, '$1.$2') : cell;
      if (text === '') continue;
      const read = parseQuantity(/^[-+\d.e]+$/i.test(text) ? `${text} ${unit}` : text, kind);
      if (!read.ok) return fail(show(cell), read.problem.expected, row, at + 1, key);
      if (!(Math.abs(read.si) <= most[kind]))
        return fail(show(cell), `a ${words[kind]} that a train on such a line has`, row, at + 1, key);
      figures[key] = read.si;
    }
    const { time, speed, way, x, y, z } = figures;
    // A row that says no more than its time is left out: some phones write each sense by itself.
    if (
      time === undefined ||
      (of === 'speed'
        ? speed
        : of === 'distance'
          ? way
          : x !== undefined && y !== undefined
            ? z
            : undefined) === undefined
    )
      continue;
    start ??= time;
    const since = time - start;
    if (made.length > 0 && !(since > made[made.length - 1].time))
      return fail(`the time ${cellsOf(cells)}`, 'times that go on from row to row', row, 1, 'time');
    made.push({
      time: since,
      ...(of === 'speed' ? { speed: speed as number } : {}),
      ...(of === 'distance' ? { way: way as number } : {}),
      ...(of === 'felt' ? { felt: [x ?? 0, y ?? 0, z ?? 0] as const } : {}),
    });
  }
  return made.length < 3
    ? fail(`${made.length} rows with figures`, 'at least 3')
    : { log: { of, rows: made } };
}

type Logged = 'time' | 'speed' | 'length' | 'acceleration';

/** Beyond these it is no log of a train: a clock since 1970, 40 m/s, 100 km, twenty times its weight. */
const most: Readonly<Record<Logged, number>> = { time: 1e11, speed: 40, length: 100_000, acceleration: 200 };
const words: Readonly<Record<Logged, string>> = {
  time: 'time',
  speed: 'speed',
  length: 'distance',
  acceleration: 'pull',
};

const cellsOf = (cells: readonly string[]): string => show((cells[0] ?? '').trim());
