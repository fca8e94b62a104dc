/**
 * Fields of a file: quantities as people write them, read into SI. The text forms and their examples come
 * from `units/`. Every figure has a physical range, checked in SI and told in the unit that it was written
 * in. Every fault becomes one issue with `found` and `expected`, which `read.ts` turns into a file problem.
 */

import * as z from 'zod/mini';
import type { Kind, Quantity, SharedFit } from '../../engine/base/quantity.ts';
import {
  accepted,
  parseQuantity,
  printQuantity,
  type System,
  type Toward,
  unitsOf,
} from '../../units/index.ts';
import { dayNumber } from '../due/day.ts';
import { show } from '../problem.ts';

/** What a field holds that is written as a figure: told by the schema that reads it. */
export interface Written {
  readonly kind: Kind;
  /** Physical range, SI, both ends within it. */
  readonly from: number;
  readonly to: number;
  /** Bounds, how it is known and its source count too; else the value alone is taken. */
  readonly spread: boolean;
}

const written = new WeakMap<object, Written>();

export const writtenOf = (schema: object): Written | undefined => written.get(schema);

/** What `found` and `expected` travel in. */
interface Fault {
  readonly found: string;
  readonly expected: string;
  readonly path?: readonly (string | number)[];
}

interface Sink {
  readonly issues: { push(issue: unknown): unknown };
}

export function raise(ctx: Sink, input: unknown, fault: Fault): void {
  ctx.issues.push({
    code: 'custom',
    input,
    message: fault.expected,
    params: { found: fault.found, expected: fault.expected },
    ...(fault.path ? { path: [...fault.path] } : {}),
  });
}

/** Below this a length is told in inches or millimetres where the file's own unit is not known, m. */
const SMALL = 0.6;

function unitFor(si: number, kind: Kind, system: System): string | undefined {
  if (kind !== 'length') return undefined;
  const small = si !== 0 && Math.abs(si) < SMALL;
  return system === 'metric' ? (small ? 'mm' : 'm') : small ? 'in' : 'ft';
}

/** One end of a range to three figures, rounded into the range: what is told is accepted. */
function tellEnd(si: number, kind: Kind, unit: string | undefined, system: System, toward: Toward): string {
  const options = { system, toward, ...(unit === undefined ? {} : { unit }) };
  const size = Math.abs(Number.parseFloat(printQuantity(si, kind, { ...options, digits: 9 })));
  const digits = size > 0 ? Math.min(9, Math.max(0, 2 - Math.floor(Math.log10(size) + 1e-9))) : 0;
  const told = printQuantity(si, kind, { ...options, digits });
  return told.replace(/(\.\d*?)0+(?=\D|$)/, '$1').replace(/\.(?=\D|$)/, '');
}

/** "from 2 kg to 30000 kg", in the unit that the file writes the figure in, else in those of a system. */
export function rangeWords({ kind, from, to }: Omit<Written, 'spread'>, units: System | string): string {
  const own = unitsOf(kind).includes(units) ? units : undefined;
  const system = units === 'imperial' ? 'imperial' : 'metric';
  const end = (si: number, toward: Toward): string =>
    tellEnd(si, kind, own ?? unitFor(si, kind, system), system, toward);
  return `from ${end(from, 'up')} to ${end(to, 'down')}`;
}

const bare: ReadonlySet<Kind> = new Set(['ratio', 'count']);

interface Figure {
  readonly si: number;
  /** The unit as it was written; the kind itself where there was none. */
  readonly unit: string;
}

/** One written figure to SI, or a fault. A bare number stands only for ratios, counts, or beside a unit. */
function readFigure(input: unknown, kind: Kind, unit?: string): Figure | Fault {
  if (typeof input === 'number' && Number.isFinite(input)) {
    if (unit !== undefined) return readText(`${input} ${unit}`, kind);
    if (bare.has(kind)) return kind === 'count' ? readText(String(input), kind) : { si: input, unit: kind };
    return { found: `${show(input)} without a unit`, expected: `${accepted(kind)}, as text in quotes` };
  }
  if (typeof input === 'string') return readText(input, kind);
  return { found: show(input), expected: accepted(kind) };
}

/** Letters of the longest figure with its unit that anybody writes. */
const LONGEST = 100;

function readText(text: string, kind: Kind): Figure | Fault {
  if (text.length > LONGEST) return { found: show(text), expected: accepted(kind) };
  const read = parseQuantity(text, kind);
  return read.ok ? read : { found: show(text), expected: read.problem.expected };
}

/** An end that is told may miss the figure itself by what printing takes for the same. */
const hair = (end: number): number => 2e-9 * Math.abs(end);

/** A written figure within its physical range. */
function readWithin(input: unknown, field: Omit<Written, 'spread'>, unit?: string): number | Fault {
  const read = readFigure(input, field.kind, unit);
  if ('found' in read) return read;
  const expected = outOf(field, read);
  if (expected === undefined) return read.si;
  const found = typeof input === 'number' && unit !== undefined ? show(`${input} ${unit}`) : show(input);
  return { found, expected };
}

/** The range in words, where a figure is out of it. */
export const outOf = (field: Omit<Written, 'spread'>, { si, unit }: Figure): string | undefined =>
  si >= field.from - hair(field.from) && si <= field.to + hair(field.to)
    ? undefined
    : rangeWords(field, unit);

const known: ReadonlySet<string> = new Set(['value', 'unit', 'low', 'high', 'how', 'source', 'date', 'fit']);
const hows: ReadonlySet<unknown> = new Set(['measured', 'stated', 'assumed']);

/** The long form {value, unit, low, high, how, source, date, fit}. */
function readLong(input: Record<string, unknown>, field: Omit<Written, 'spread'>): Quantity | Fault {
  const odd = Object.keys(input).find((k) => !known.has(k));
  if (odd) return { found: `the field ${show(odd)}`, expected: [...known].join(', '), path: [odd] };
  const unit = input['unit'];
  if (unit !== undefined && typeof unit !== 'string')
    return { found: show(unit), expected: 'a unit as text', path: ['unit'] };
  const figures: Record<string, number> = {};
  for (const key of ['value', 'low', 'high'] as const) {
    if (input[key] === undefined && key !== 'value') continue;
    const figure = readWithin(input[key], field, typeof input[key] === 'number' ? unit : undefined);
    if (typeof figure !== 'number') return { ...figure, path: [key] };
    figures[key] = figure;
  }
  const { value } = figures;
  const [low, high] = [figures['low'] ?? value, figures['high'] ?? value];
  if (low > value || high < value) {
    return {
      found: 'bounds on the wrong side',
      expected: 'low ≤ value ≤ high',
      path: [low > value ? 'low' : 'high'],
    };
  }
  const { how, source, date } = input;
  if (how !== undefined && !hows.has(how))
    return { found: show(how), expected: 'measured, stated or assumed', path: ['how'] };
  if (source !== undefined && typeof source !== 'string')
    return { found: show(source), expected: 'a text', path: ['source'] };
  if (date !== undefined && !(typeof date === 'string' && dayNumber(date) !== undefined)) {
    return { found: show(date), expected: 'a day such as 2026-05-31', path: ['date'] };
  }
  const fit = input['fit'] === undefined ? undefined : readFit(input['fit']);
  if (fit && 'found' in fit) return fit;
  return {
    value,
    low,
    high,
    how: (how as Quantity['how'] | undefined) ?? 'stated',
    ...(typeof source === 'string' ? { source } : {}),
    ...(typeof date === 'string' ? { date } : {}),
    ...(fit ? { fit } : {}),
  };
}

/** Of one test nobody finds more figures than this. */
const MOST_FACTORS = 100;
const FIT =
  'the fit that it was measured in: {"id": "a text", "factors": [numbers, from -1 to 1, not all 0]}';

function readFit(input: unknown): SharedFit | Fault {
  const { id, factors, ...rest } = isGroup(input) ? input : {};
  const sound =
    typeof id === 'string' &&
    Object.keys(rest).length === 0 &&
    Array.isArray(factors) &&
    factors.length <= MOST_FACTORS &&
    factors.every((f) => typeof f === 'number' && Math.abs(f) <= 1) &&
    factors.some((f) => f !== 0);
  return sound ? { id, factors } : { found: show(input), expected: FIT, path: ['fit'] };
}

/** A field that holds a quantity with what is known of its spread, between two SI figures. */
export function quantity(kind: Kind, from: number, to: number) {
  const field = { kind, from, to };
  const schema = z.pipe(
    z.unknown(),
    z.transform((input: unknown, ctx): Quantity => {
      const read = isGroup(input) ? readLong(input, field) : simple(input, field);
      if (!('found' in read)) return read;
      raise(ctx, input, read);
      return z.NEVER;
    }),
  );
  written.set(schema, { ...field, spread: true });
  return schema;
}

/** A field that holds one figure, its spread of no account. */
export function figure(kind: Kind, from: number, to: number) {
  const schema = z.pipe(
    quantity(kind, from, to),
    z.transform((q: Quantity) => q.value),
  );
  written.set(schema, { kind, from, to, spread: false });
  return schema;
}

const isGroup = (input: unknown): input is Record<string, unknown> =>
  typeof input === 'object' && input !== null && !Array.isArray(input);

function simple(input: unknown, field: Omit<Written, 'spread'>): Quantity | Fault {
  const si = readWithin(input, field);
  return typeof si === 'number' ? { value: si, low: si, high: si, how: 'stated' } : si;
}
