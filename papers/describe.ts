/**
 * Describing a paper: each field once, in `papers/<kind>/fields.ts`. What it holds and between which figures
 * stands in its schema; here, what it is called, what it is and how one comes by it. Reading, the published
 * JSON Schema, the forms, the tables in the book and the words of "measure this" are all made from it.
 *
 * Words that differ across the Atlantic stand in braces, by their US form: {grade}, {truck}, {coupler}.
 */
import * as z from 'zod/mini';
import { PLAIN } from '../engine/base/letters.ts';
import { dayNumber } from './due/day.ts';
import { figure } from './schema/quantity.ts';

export interface About {
  readonly label: string;
  readonly help: string;
  /** What stands in where the paper says nothing: a key of data/defaults.json. */
  readonly assumed?: string;
  /** What to measure where it is asked for, as it stands behind "Measure:". */
  readonly asked?: string;
}

const described = new WeakMap<object, About>();

export const aboutOf = (schema: object): About | undefined => described.get(schema);

/** A field that must stand in the paper. */
export function must<T extends z.ZodMiniType>(
  schema: T,
  label: string,
  help: string,
  more: Omit<About, 'label' | 'help'> = {},
): T {
  if (described.has(schema)) throw new RangeError(`${label}: its schema describes another field`);
  described.set(schema, { label, help, ...more });
  return schema;
}

/** A field that may be left out. */
export const may = <T extends z.ZodMiniType>(
  schema: T,
  label: string,
  help: string,
  more: Omit<About, 'label' | 'help'> = {},
): z.ZodMiniExactOptional<T> => must(z.exactOptional(schema), label, help, more);

// ---- what several papers hold

const NO_ORDERS = 'one line of text without control letters';

/** A track and its curves: to 100 km. */
export const FARTHEST = 100_000;

/** A name: on one line, and no letter in it that a screen obeys. */
export const text = (most = 200) =>
  z.string().check(z.minLength(1), z.maxLength(most), z.regex(new RegExp(PLAIN, 'u'), NO_ORDERS));
export const remark = () => z.string().check(z.maxLength(10_000));
export const yes = () => z.boolean();
export const choice = <const T extends readonly string[]>(...of: T) => z.enum(of);
const isDay = (text: string): boolean => dayNumber(text) !== undefined;
const DAY_WORDS = 'a day such as 2026-05-31';
/** One that the calendar has: what is due is counted from it. */
export const day = () =>
  z
    .string()
    .check(z.regex(/^\d{4}-\d\d-\d\d$/, { error: DAY_WORDS, abort: true }), z.refine(isDay, DAY_WORDS));
const MOMENT_WORDS = 'a day and time such as 2026-05-31T16:30';
/** Local, without an offset: of the place where the train runs. */
export const moment = () =>
  z.string().check(
    z.regex(/^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\d$/, { error: MOMENT_WORDS, abort: true }),
    z.refine((text) => isDay(text.slice(0, 10)), MOMENT_WORDS),
  );
export const rows = <T extends z.ZodMiniType>(row: T, least: number, most: number) =>
  z.array(row).check(z.minLength(least), z.maxLength(most));
export const group = z.strictObject;

export const chainage = () => figure('length', 0, FARTHEST);
export const speed = () => figure('speed', 0.1, 20);
export const gauge = () => figure('length', 0.05, 1);

/** What every paper begins with. */
export const head = <K extends string>(kind: K) => ({
  heedway: must(z.literal(kind), 'kind of paper', 'Which of the six papers this is.'),
  version: must(z.int(), 'version', 'Version of the format, written by the program.'),
  name: must(text(), 'name', 'What it is called, on the card and in every finding.'),
  invented: may(
    yes(),
    'invented',
    'An example: nobody measured what stands in it. It is marked so wherever it is shown.',
  ),
  note: may(remark(), 'note', 'Anything worth keeping with it; nothing is reckoned from it.'),
});

/** Corners of an outline seen from the front, in order round, or of one side from the middle to the middle. */
export const outline = () =>
  rows(
    group({
      across: must(
        figure('length', -5, 5),
        'across',
        'From the middle of the track, to the left positive. Without any below nothing it is one side, the other alike.',
      ),
      height: must(figure('length', -1, 10), 'height', 'Above the top of the rail.'),
    }),
    3,
    400,
  );

/** Tests of a vehicle or an outing that were applied to it, each a paper that is checked by itself. */
export const keptTests = () =>
  may(
    rows(z.unknown(), 0, 200),
    'tests',
    'Measured tests whose figures stand in this paper, as they were recorded, oldest first. Nothing is reckoned from them.',
  );
