/**
 * Every figure of every paper has a physical range. What lies outside is refused, told with field, what was
 * found and what is expected in the file's own unit; what the words say is accepted is accepted.
 */
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { checkAs } from '../../../papers/check.ts';
import { fileForm } from '../../../papers/fields.ts';
import { type FileKind, schemas } from '../../../papers/schema/index.ts';
import { figure, quantity, rangeWords, type Written } from '../../../papers/schema/quantity.ts';
import { parseQuantity, printQuantity, unitsOf } from '../../../units/index.ts';
import { describedAt, tellMeasure } from '../../../words/field.ts';
import { assumedRows, fieldsIn } from '../../support/field-pages.ts';
import { measurePaths } from '../../support/measure-paths.ts';

const papers = Object.keys(schemas) as FileKind[];
const fields = papers.flatMap((kind) =>
  fieldsIn(fileForm(kind)).map(({ path, field }) => ({ kind, path, field, called: `${kind}.${path}` })),
);
const figures = fields.flatMap(({ called, kind, path, field }) =>
  field.is.form === 'figure' ? [{ called, kind, path, is: field.is }] : [],
);

/** A figure beyond one end of its range, written in a unit of its kind; none for counts below nought. */
function beyond(
  { kind, from, to }: Written,
  end: 'below' | 'above',
  unit: string | undefined,
): string | undefined {
  const step = kind === 'count' ? 1 : (to - from) * 0.01;
  const si = end === 'below' ? from - step : to + step;
  if (kind === 'count') return si < 0 ? undefined : String(si);
  return printQuantity(si, kind, { system: 'metric', digits: 9, ...(unit === undefined ? {} : { unit }) });
}

function refusal(is: Written, written: unknown): { found: string; expected: string } | undefined {
  const schema = is.spread ? quantity(is.kind, is.from, is.to) : figure(is.kind, is.from, is.to);
  const read = z.safeParse(schema, written);
  const issue = read.error?.issues[0] as unknown as
    | { params: { found: string; expected: string } }
    | undefined;
  return issue?.params;
}

/** A paper with nothing in it but one field, at its path. */
function paperWith(kind: FileKind, path: string, value: unknown): unknown {
  const keys = path.split('.');
  const built = keys.reduceRight<unknown>((inside, key) => {
    const [, name, tag, list] = /^([\w-]+)(?:\(([\w-]+)\))?(\[\])?$/.exec(key) ?? [];
    const own = tag === undefined ? inside : { kind: tag, ...(inside as object) };
    return { [name]: list === undefined ? own : [own] };
  }, value);
  return { heedway: kind, version: 1, name: 'x', ...(built as object) };
}

describe.each(figures)('$called', ({ kind, path, is }) => {
  const units = [undefined, ...unitsOf(is.kind)];
  it('is refused outside its range, in the unit of the file', () => {
    expect(is.from).toBeLessThan(is.to);
    for (const unit of units)
      for (const end of ['below', 'above'] as const) {
        const text = beyond(is, end, unit);
        if (text === undefined) continue;
        const fault = refusal(is, text);
        expect(fault?.found, text).toBe(JSON.stringify(text));
        const own = parseQuantity(text, is.kind);
        // A length below nothing is no length at all: the reader says so before any range.
        if (own.ok) expect(fault?.expected, text).toBe(rangeWords(is, own.unit));
      }
  });

  it('accepts the ends as they are told', () => {
    for (const unit of unitsOf(is.kind)) {
      const [, low, high] = /^from (.*) to (.*)$/.exec(rangeWords(is, unit)) ?? [];
      expect(refusal(is, low), low).toBeUndefined();
      expect(refusal(is, high), high).toBeUndefined();
    }
  });

  it('is refused as no number, beyond all numbers, and in its bounds', () => {
    for (const odd of ['NaN', 'Infinity', '1e308 km', '9e999', Number.NaN, Number.POSITIVE_INFINITY])
      expect(refusal(is, odd), String(odd)).toBeDefined();
    const above = beyond(is, 'above', unitsOf(is.kind)[0]);
    const [, inside] = /^from .* to (.*)$/.exec(rangeWords(is, unitsOf(is.kind)[0] ?? 'metric')) ?? [];
    expect(refusal(is, { value: inside, high: above })?.found).toBe(JSON.stringify(above));
  });

  it('is told at its place in the paper', () => {
    const checked = checkAs(
      kind,
      schemas[kind],
      paperWith(kind, path, beyond(is, 'above', unitsOf(is.kind)[0])),
    );
    const at = path.replace(/\([\w-]+\)/g, '').replace(/\[\]/g, '.0');
    const told = checked.ok ? [] : checked.troubles.filter((t) => t.path.join('.') === at);
    expect(told.map((t) => t.expected)).toEqual([rangeWords(is, unitsOf(is.kind)[0] ?? 'metric')]);
  });
});

describe('every field', () => {
  it('is described: label, help, and a range, choices or what it is made of', () => {
    expect(fields.length).toBeGreaterThan(150);
    const bare = fields.filter(({ field }) => field.about.help.length < 5 || field.about.label.length < 1);
    expect(bare.map((f) => f.called)).toEqual([]);
    const odd = fields.filter(
      ({ field: { is } }) =>
        (is.form === 'choice' && is.values.length < 2) || (is.form === 'list' && is.most === undefined),
    );
    expect(odd.map((f) => f.called)).toEqual([]);
  });

  it('names trade words that both shores have', () => {
    const odd = fields.filter(({ field: { about } }) =>
      [about.label, about.help, about.asked ?? ''].some((t) =>
        [...t.matchAll(/\{(\w+)\}/g)].some(([, w]) => !['grade', 'truck', 'switch', 'coupler'].includes(w)),
      ),
    );
    expect(odd.map((f) => f.called)).toEqual([]);
  });

  it('that is assumed where it is missing has rows that say what', () => {
    const keys = fields.flatMap(({ field }) => field.about.assumed ?? []);
    expect(keys.length).toBeGreaterThan(10);
    expect(keys.filter((key) => assumedRows(key).length === 0)).toEqual([]);
  });
});

describe('what a finding asks to be measured', () => {
  it.each(measurePaths())('%s is a field with words for it', (path) => {
    expect(describedAt(path)?.asked, path).toBeDefined();
    expect(tellMeasure(path, 'uk')).not.toMatch(/[{}]/);
  });

  it('is told in words', () => {
    expect(tellMeasure('vehicle.suspension.twistFreedom', 'us')).toBe(
      'how far one corner can be lifted before the opposite wheel lifts (twist freedom)',
    );
    expect(tellMeasure('coupling.strength', 'uk')).toContain('the coupling in pull');
    expect(describedAt('vehicle.nothing')).toBeUndefined();
    expect(describedAt('nothing.tare')).toBeUndefined();
  });
});
