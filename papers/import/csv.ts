/**
 * A surveyed line from CSV: chainage or segment length with height, rise or grade; radius, hand, cant and
 * place names where there are columns for them. Units stand in the header: `Height (ft)`, `radius_m`.
 */
import { MOST_TOLD, TOO_MANY } from '../json.ts';
import { type FileProblem, fileProblem, show } from '../problem.ts';
import { decodeText } from '../text.ts';
import {
  type Cells,
  type Column,
  type Heading,
  MOST_ROWS,
  type Report,
  readHeader,
  readRow,
  rowsOf,
  tooMuch,
} from './csv-rows.ts';
import type { Advice, Imported, ImportOptions } from './types.ts';

/** Radii at or beyond this count as straight, m. */
const STRAIGHT = 5000;

export function importCsv(content: Uint8Array | string, file: string, options: ImportOptions): Imported {
  const decoded = decodeText(content);
  if (!decoded.ok) return refused([fileProblem(file, decoded.trouble)]);
  const problems: FileProblem[] = [];
  const report: Report = (row, column, path, found, expected) => {
    if (problems.length > MOST_TOLD) return;
    const told = problems.length < MOST_TOLD ? { path: [path], found, expected } : { path: [], ...TOO_MANY };
    problems.push(fileProblem(file, told, { row, column }));
  };
  const much = tooMuch(decoded.text);
  if (much) {
    report(much.row, 1, 'rows', much.found, much.expected);
    return refused(problems);
  }
  const { rows, semicolons } = rowsOf(decoded.text);
  if (rows.length === 0) {
    report(
      1,
      1,
      'header',
      'an empty file',
      'a header row such as: Chainage (ft), Height (ft), Radius (ft), Hand, Place',
    );
    return refused(problems);
  }
  if (rows.length > MOST_ROWS + 1) {
    report(
      rows[MOST_ROWS + 1].row,
      1,
      'rows',
      `more than ${MOST_ROWS}`,
      `at most ${MOST_ROWS}: leave some out`,
    );
    return refused(problems);
  }
  const headers = readHeader(rows[0], report, options.lengths);
  if (problems.length > 0) return refused(problems);
  const cells = rows.slice(1).map((row) => readRow(row, headers, semicolons, report));
  const notes: string[] = [`Read ${cells.length} rows with ${headers.map((h) => h.column).join(', ')}.`];
  const profile = profileOf(cells, headers, report, notes);
  const bends = options.bends ?? 'left';
  const curves = curvesOf(profile, cells, headers, report, bends);
  const places = placesOf(profile, cells, headers, report);
  if (problems.length > 0) return refused(problems, notes);
  const loop = options.shape === 'loop';
  const handless = curves.length > 0 && !headers.some(({ column }) => column === 'hand');
  if (handless)
    notes.push(
      `No column tells the hand: a radius is taken to the ${bends}, a negative one to the ${other[bends]}.`,
    );
  const advice: Advice[] = [
    loop ? 'end to end' : 'loop',
    ...(handless ? [`to the ${other[bends]}` as const] : []),
    ...(curves.length > 0 ? (['transitions'] as const) : []),
  ];
  return { line: lineOf(profile, curves, places, options, notes), notes, advice, problems };
}

/** Nothing is made of it. */
const refused = (problems: readonly FileProblem[], notes: readonly string[] = []): Imported => ({
  notes,
  advice: [],
  problems,
});

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
  for (const { row, values, wrong } of cells) {
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
      if (!wrong) report(row, column('at'), 'chainage', 'an empty cell', 'a chainage or segment length');
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
    if (last)
      contradictions(values, last, at, (name, found, expected) =>
        report(row, column(name), name, found, expected),
      );
    const height = heightOf(values, last, at);
    if (height === undefined) {
      if (!wrong) report(row, column('height'), 'height', 'an empty cell', 'a height, rise or grade');
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
    report(
      cells[0]?.row ?? 1,
      1,
      'rows',
      `${points.length === 1 ? 'one point' : 'no point'}`,
      'at least two points',
    );
  if (first !== 0) notes.push(`Chainage moved to begin at 0 (was ${first.toFixed(2)} m).`);
  return points;
}

function heightOf(values: Cells['values'], last: Point | undefined, at: number): number | undefined {
  if (values.height !== undefined) return values.height;
  if (!last) return 0;
  if (values.rise !== undefined) return last.height + values.rise;
  return values.grade === undefined ? undefined : last.height + values.grade * (at - last.at);
}

/** Figures of one row that say the same must agree, but for what is lost in writing them down. */
function contradictions(
  values: Cells['values'],
  last: Point,
  at: number,
  report: (column: Column, found: string, expected: string) => void,
): void {
  const step = at - last.at;
  const differ = (a: number, b: number, slack: number): boolean => Math.abs(a - b) > slack;
  const { length, height, rise, grade } = values;
  const mend = 'columns that agree: correct one, or leave it out';
  if (values.at !== undefined && length !== undefined && differ(step, length, WRITTEN))
    report('length', `a length of ${metres(length)} where the chainage grows by ${metres(step)}`, mend);
  const climb = height === undefined ? undefined : height - last.height;
  if (climb !== undefined && rise !== undefined && differ(climb, rise, WRITTEN))
    report('rise', `a rise of ${metres(rise)} where the height grows by ${metres(climb)}`, mend);
  const known = climb ?? rise;
  if (
    known !== undefined &&
    grade !== undefined &&
    differ(known, grade * step, WRITTEN + WRITTEN_GRADE * step)
  )
    report(
      'grade',
      `a grade of ${percent(grade)} from the row before, where the heights give ${percent(known / step)}`,
      mend,
    );
}

const metres = (m: number): string => `${Number(m.toFixed(4))} m`;
const percent = (grade: number): string => `${(grade * 100).toFixed(2)} %`;

/** What rounding as it is written may take from a length or height, m, and from a grade. */
const WRITTEN = 0.02;
const WRITTEN_GRADE = 0.001;

interface Curve {
  readonly from: number;
  to: number;
  readonly radius: number;
  readonly hand: 'left' | 'right';
  readonly cant?: number;
}

const other = { left: 'right', right: 'left' } as const;

const hands: Readonly<Record<string, Curve['hand'] | 'none'>> = {
  left: 'left',
  l: 'left',
  right: 'right',
  r: 'right',
  straight: 'none',
  none: 'none',
  '-': 'none',
};

/** A row's radius holds from the row to the next; touching rows of one radius and hand are one curve. */
function curvesOf(
  points: readonly Point[],
  cells: readonly Cells[],
  headers: readonly Heading[],
  report: Report,
  bends: Curve['hand'],
): Curve[] {
  const curves: Curve[] = [];
  const handed = headers.find((h) => h.column === 'hand');
  cells.forEach(({ row, values, texts }, i) => {
    const { radius, cant } = values;
    const curved = radius !== undefined && radius !== 0 && Math.abs(radius) < STRAIGHT;
    const say = (found: string, expected: string): void =>
      report(row, (handed?.index ?? 0) + 1, 'hand', found, expected);
    const written = texts.hand;
    const given = written === undefined ? undefined : hands[written.toLowerCase()];
    if (written !== undefined && given === undefined)
      return say(show(written), 'left or right, seen in the direction of the chainage');
    const hand = given === 'none' ? undefined : given;
    if (!curved && hand) return say(`${hand} on a row without a radius`, 'a radius with it, or no hand');
    if (!curved || i >= points.length - 1) return;
    if (handed && !hand)
      return say(written === undefined ? 'an empty cell' : show(written), 'left or right beside the radius');
    const signed = radius < 0 ? other[bends] : bends;
    if (hand === 'left' && radius < 0)
      return say('left beside a negative radius, which is to the right', 'one of the two');
    const last = curves[curves.length - 1];
    const size = Math.abs(radius);
    const to = hand ?? signed;
    if (
      last &&
      last.to === points[i].at &&
      last.radius === size &&
      last.hand === to &&
      last.cant === (cant || undefined)
    )
      last.to = points[i + 1].at;
    else
      curves.push({
        from: points[i].at,
        to: points[i + 1].at,
        radius: size,
        hand: to,
        ...(cant ? { cant } : {}),
      });
  });
  return curves;
}

interface PlaceRow {
  readonly name: string;
  readonly kind: string;
  readonly at: string;
}

function placesOf(
  points: readonly Point[],
  cells: readonly Cells[],
  headers: readonly Heading[],
  report: Report,
): PlaceRow[] {
  const column = (headers.find((h) => h.column === 'kind')?.index ?? 0) + 1;
  const known = kindWords.map(([kind]) => kind).join(', ');
  return cells.flatMap(({ row, texts }, i) => {
    if (texts.kind !== undefined && placeKind(texts.kind) === undefined)
      report(row, column, 'kind', show(texts.kind), `one of ${known}`);
    if (texts.place === undefined || points[i] === undefined) return [];
    const kind = placeKind(texts.kind ?? texts.place) ?? 'board';
    return [{ name: texts.place, kind, at: metres(points[i].at) }];
  });
}

function lineOf(
  points: readonly Point[],
  curves: readonly Curve[],
  places: readonly PlaceRow[],
  options: ImportOptions,
  notes: string[],
): Record<string, unknown> {
  const [first, last] = [points[0], points[points.length - 1]];
  const misses = Math.abs(last.height - first.height);
  const loop = options.shape === 'loop';
  notes.push(
    loop
      ? `Taken as a loop, whose last row is its first place again; ${misses.toFixed(2)} m of height misclosure.`
      : `Taken as point-to-point${misses < 1e-6 ? ', though its last height is its first' : ''}.`,
  );
  if (curves.length > 0) notes.push(`${curves.length} curves, without transitions.`);
  return {
    heedway: 'line',
    version: 1,
    name: options.name,
    gauge: options.gauge,
    shape: options.shape ?? 'point-to-point',
    survey: 'taped',
    profile: points.map((p) => ({ at: metres(p.at), height: metres(p.height) })),
    curves: curves.map((c) => ({
      from: metres(c.from),
      to: metres(c.to),
      radius: metres(c.radius),
      hand: c.hand,
      ...(c.cant === undefined ? {} : { cant: metres(c.cant) }),
    })),
    places: loop ? roundTo(places, metres(last.at)) : places,
  };
}

/** On a loop the place at its end is the one at its start, where it stands already or goes. */
function roundTo(places: readonly PlaceRow[], end: string): PlaceRow[] {
  const start = metres(0);
  return places.flatMap((place) => {
    if (place.at !== end) return [place];
    const there = places.some(({ at, name }) => at === start && name === place.name);
    return there ? [] : [{ ...place, at: start }];
  });
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
  ['board', /board/i],
];

const placeKind = (text: string): string | undefined =>
  kindWords.find(([, pattern]) => pattern.test(text))?.[0];
