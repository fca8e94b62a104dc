/**
 * Fields of a file: quantities as people write them, read into SI. The text forms and their examples come
 * from `units/`; ranges are checked on the SI value. Every fault becomes one issue with `found` and
 * `expected`, which `read.ts` turns into a file problem.
 */
import * as z from 'zod/mini';
import type { Kind, Quantity } from '../../engine/base/quantity.ts';
import { accepted, parseQuantity, printQuantity } from '../../units/index.ts';
import { show } from '../problem.ts';

export interface Range {
  /** SI, inclusive. */
  readonly least?: number;
  readonly most?: number;
  /** SI, exclusive. */
  readonly above?: number;
}

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

/** JSON Schema descriptions by schema id, filled as fields are declared; `schemas.ts` publishes them. */
export const fieldShapes = new Map<string, Record<string, unknown>>();

function inRange(si: number, kind: Kind, range: Range): string | undefined {
  const tell = (x: number): string => printQuantity(x, kind, { system: 'metric', digits: 3 });
  if (range.least !== undefined && si < range.least) return `at least ${tell(range.least)}`;
  if (range.above !== undefined && si <= range.above) return `more than ${tell(range.above)}`;
  if (range.most !== undefined && si > range.most) return `at most ${tell(range.most)}`;
  return undefined;
}

const bare: ReadonlySet<Kind> = new Set(['ratio', 'count']);

/** One written figure to SI, or a fault. A bare number stands only for ratios, counts, or beside a unit. */
function readFigure(input: unknown, kind: Kind, unit: string | undefined): number | Fault {
  if (typeof input === 'number' && Number.isFinite(input)) {
    if (unit !== undefined) return readText(`${input} ${unit}`, kind);
    if (bare.has(kind)) return kind === 'count' ? readText(String(input), kind) : input;
    return { found: `${show(input)} without a unit`, expected: `${accepted(kind)}, as text in quotes` };
  }
  if (typeof input === 'string') return readText(input, kind);
  return { found: show(input), expected: accepted(kind) };
}

function readText(text: string, kind: Kind): number | Fault {
  const read = parseQuantity(text, kind);
  return read.ok ? read.si : { found: show(text), expected: read.problem.expected };
}

const known: ReadonlySet<string> = new Set(['value', 'unit', 'low', 'high', 'how', 'source', 'date']);
const hows: ReadonlySet<unknown> = new Set(['measured', 'stated', 'assumed']);

/** The long form {value, unit, low, high, how, source, date}. */
function readLong(input: Record<string, unknown>, kind: Kind): Quantity | Fault {
  const odd = Object.keys(input).find((k) => !known.has(k));
  if (odd) return { found: `the field ${show(odd)}`, expected: [...known].join(', '), path: [odd] };
  const unit = input['unit'];
  if (unit !== undefined && typeof unit !== 'string')
    return { found: show(unit), expected: 'a unit as text', path: ['unit'] };
  const figures: Record<string, number> = {};
  for (const key of ['value', 'low', 'high'] as const) {
    if (input[key] === undefined && key !== 'value') continue;
    const figure = readFigure(input[key], kind, typeof input[key] === 'number' ? unit : undefined);
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
  if (date !== undefined && !(typeof date === 'string' && /^\d{4}-\d\d-\d\d$/.test(date))) {
    return { found: show(date), expected: 'a day such as 2026-05-31', path: ['date'] };
  }
  return {
    value,
    low,
    high,
    how: (how as Quantity['how'] | undefined) ?? 'stated',
    ...(typeof source === 'string' ? { source } : {}),
    ...(typeof date === 'string' ? { date } : {}),
  };
}

/** A field that holds a quantity with what is known of its spread. */
export function quantity(kind: Kind, range: Range = {}) {
  const schema = z.pipe(
    shaped(kind),
    z.transform((input: unknown, ctx): Quantity => {
      const read = isGroup(input) ? readLong(input, kind) : simple(input, kind);
      if ('found' in read) {
        raise(ctx, input, read);
        return z.NEVER;
      }
      const fault = inRange(read.low, kind, range) ?? inRange(read.high, kind, range);
      if (fault) {
        raise(ctx, input, { found: show(input), expected: fault });
        return z.NEVER;
      }
      return read;
    }),
  );
  return schema;
}

/** A field that holds one figure, its spread of no account. */
export function figure(kind: Kind, range: Range = {}) {
  return z.pipe(
    quantity(kind, range),
    z.transform((q: Quantity) => q.value),
  );
}

const isGroup = (input: unknown): input is Record<string, unknown> =>
  typeof input === 'object' && input !== null && !Array.isArray(input);

function simple(input: unknown, kind: Kind): Quantity | Fault {
  const si = readFigure(input, kind, undefined);
  return typeof si === 'number' ? { value: si, low: si, high: si, how: 'stated' } : si;
}

/** Unknown input that carries the published shape of a written quantity. */
function shaped(kind: Kind) {
  const id = `written-${kind}`;
  const written = bare.has(kind) ? ['string', 'number'] : ['string'];
  fieldShapes.set(id, {
    description: accepted(kind),
    anyOf: [
      ...written.map((type) => ({ type })),
      {
        type: 'object',
        required: ['value'],
        additionalProperties: false,
        properties: {
          value: { type: ['number', 'string'] },
          unit: { type: 'string' },
          low: { type: ['number', 'string'] },
          high: { type: ['number', 'string'] },
          how: { enum: ['measured', 'stated', 'assumed'] },
          source: { type: 'string' },
          date: { type: 'string', pattern: '^\\d{4}-\\d\\d-\\d\\d$' },
        },
      },
    ],
  });
  return z.unknown().check(z.meta({ title: id }));
}
