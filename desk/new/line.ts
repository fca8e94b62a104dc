/**
 * The line from what a host says of it at the gate. Where grade and curves lie is then not known, and so they are laid
 * where they weigh most: the worst grade once up and once down, and the sharpest curve nearly everywhere.
 */
import { LEAST_LINE } from '../../data/shapes.ts';
import { checkFile } from '../../papers/check.ts';
import { compileLine } from '../../papers/compile/line.ts';
import { newNotes } from '../../papers/compile/notes.ts';
import { VERSION } from '../../papers/index.ts';
import type { FieldKey } from './field.ts';
import type { Fault, Figure, Read } from './reading.ts';
import { assumedAs, type Chain, chainIn, type Json } from './written.ts';

const LAID = 'where it lies is not known: laid out for the worst';

export type MadeLine =
  | { readonly ok: true; readonly line: Json }
  | { readonly ok: false; readonly fault: Fault };

const fault = (key: FieldKey, found: string, expected: string): MadeLine => ({
  ok: false,
  fault: { key, found, expected },
});

/** Steps of the layout: level, up, level, down, level. */
interface Layout {
  readonly level: number;
  readonly top: number;
  readonly slope: number;
}

export function toldLine(read: Read, gauge: Figure): MadeLine {
  const grade = Math.abs(read.figure('line.grade')?.si ?? 0);
  const chain = chainIn(read.system);
  const layout = layoutOf(read, grade, chain);
  if (!layout)
    return fault(
      'line.gradeLength',
      `"${read.text('line.gradeLength')}"`,
      'at most half of the length of the line: what rises must fall again',
    );
  const loop = !read.says('line.shape', 'point-to-point');
  return {
    ok: true,
    line: {
      heedway: 'line',
      version: VERSION,
      name: read.text('line.name') ?? lineName(read, grade),
      note: `As told: its worst grade, sharpest curve and shortest sight; ${LAID}.`,
      gauge: gauge.text,
      shape: loop ? 'loop' : 'point-to-point',
      survey: 'stated',
      profile: profileOf(layout, grade, chain),
      ...curvesOf(read.figure('line.curve'), layout, chain),
      ...sightOf(read, chain.text(lengthOf(layout)), chain),
    },
  };
}

const lengthOf = ({ level, top, slope }: Layout): number => 2 * level + top + 2 * slope;

/** Undefined: the grade takes more than half of the line. */
function layoutOf(read: Read, grade: number, chain: Chain): Layout | undefined {
  const told = read.figure('line.length');
  const long = read.figure('line.gradeLength');
  const through = read.says('line.shape', 'point-to-point');
  const length = chain.steps(told?.si ?? Math.max(LEAST_LINE, 4 * (long?.si ?? 0)));
  if (grade === 0) return { level: 0, top: length, slope: 0 };
  const slope = chain.steps(long?.si ?? Number.NaN) || Math.floor(length / 2);
  // A line that only rises is run down again on the way back.
  const all = through ? Math.max(length, 2 * slope) : length;
  if (2 * slope > all) return undefined;
  const level = Math.floor((all - 2 * slope) / 3);
  return { level, top: all - 2 * slope - 2 * level, slope };
}

const lineName = (read: Read, grade: number): string =>
  grade === 0 ? 'Level line, as told' : `Line with ${read.figure('line.grade')?.text}, as told`;

function profileOf({ level, top, slope }: Layout, grade: number, chain: Chain): Json[] {
  const percent = `${Number((grade * 100).toFixed(4))} %`;
  const stretches: [number, string][] = [
    [level, '0 %'],
    [slope, percent],
    [top, '0 %'],
    [slope, `-${percent}`],
    [level, '0 %'],
  ];
  return [
    { at: chain.text(0), height: chain.text(0) },
    ...stretches
      .filter(([steps]) => steps > 0)
      .map(([steps, slopes]) => ({ length: assumedAs(chain.text(steps), LAID), grade: slopes })),
  ];
}

/**
 * Everywhere but on the upper half of the grade, up and down: there the track is straight, so that what a curve takes
 * off a train's speed helps nowhere to stop it.
 */
function curvesOf(radius: Figure | undefined, { level, top, slope }: Layout, chain: Chain): Json {
  if (!radius) return { curves: [] };
  const half = Math.floor(slope / 2);
  const end = 2 * level + top + 2 * slope;
  const spans: [number, number][] =
    slope === 0
      ? [[0, end]]
      : [
          [0, level + half],
          [level + slope, level + slope + top],
          [end - level - half, end],
        ];
  return {
    curves: spans
      .filter(([from, to]) => to > from)
      .map(([from, to]) => ({
        from: assumedAs(chain.text(from), LAID),
        to: assumedAs(chain.text(to), LAID),
        radius: radius.text,
        hand: 'left',
      })),
  };
}

const sightOf = (read: Read, end: string, chain: Chain): Json => {
  const sight = read.figure('line.sight');
  return sight ? { sights: [{ from: chain.text(0), to: end, distance: sight.text }] } : {};
};

/** A line of the person's own with what it does not say itself: the sharpest curve, and the sight. */
export function givenLine(line: Json, read: Read): Json {
  const length = surveyedLength(line);
  if (length === undefined) return line;
  const chain = chainIn(read.system);
  const end = chain.text(Math.floor(chain.steps(length)) - 1);
  const radius = read.figure('line.curve');
  return {
    ...line,
    ...(lacksCurves(line) && radius
      ? {
          curves: [{ from: chain.text(0), to: assumedAs(end, LAID), radius: radius.text, hand: 'left' }],
        }
      : {}),
    ...(lacksSights(line) ? sightOf(read, end, chain) : {}),
  };
}

/** Nobody has said that it is straight: a survey by satellite, or of heights alone. */
export const lacksCurves = (line: Json): boolean => line['curves'] === undefined;
export const lacksSights = (line: Json): boolean => line['sights'] === undefined;

/** m; undefined where the paper cannot be read, which whoever opens it says. */
function surveyedLength(line: Json): number | undefined {
  const checked = checkFile('line', line);
  if (!checked.ok) return undefined;
  const notes = newNotes();
  const { length } = compileLine(checked.value, notes);
  return notes.troubles.length === 0 ? length : undefined;
}
