/** A finding that would count as nothing cannot be made, and a fault is never a "go". */
import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../engine/answer/verdict.ts';
import { amount } from '../../../engine/base/quantity.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { makeFinding, marginOf } from '../../../engine/questions/make.ts';

const source = 'test';
const make = (details: object, code = 'tail-stands', severity = 'notes'): Finding =>
  makeFinding(code as 'too-many-cars', severity as never, 'parting', { source, ...details });

describe('a finding', () => {
  it('of whole figures is made', () => {
    expect(
      make({ found: amount(1, 'speed'), margin: -1, facts: { time: amount(Infinity, 'time') } }),
    ).toMatchObject({ code: 'tail-stands', severity: 'notes', margin: -1 });
  });

  it.each([
    ['no code', undefined],
    ['a code that there is not', 'tail-stays'],
    ['a code that every object has', 'toString'],
  ])('with %s is refused', (_, code) => {
    expect(() => makeFinding(code as 'too-many-cars', 'notes', 'parting', { source })).toThrow(RangeError);
  });

  it.each([undefined, 'fatal', 'toString'])('of severity %s is refused', (severity) => {
    expect(() => makeFinding('too-many-cars', severity as never, 'parting', { source })).toThrow(RangeError);
  });

  const odd = [Number.NaN, Infinity, -Infinity];
  it.each(odd)('with a figure of %f is refused', (x) => {
    expect(() => make({ found: amount(x, 'speed') })).toThrow(/figure/);
    expect(() => make({ required: amount(x, 'speed') })).toThrow(/figure/);
    expect(() => make({ margin: x })).toThrow(/figure/);
    expect(() => make({ where: { from: x, to: x } })).toThrow(/figure/);
  });

  it('with a fact or a number in its sum that is not one is refused', () => {
    expect(() => make({ facts: { way: amount(Number.NaN, 'length') } })).toThrow(/fact/);
    expect(() => make({ facts: { cars: Number.NaN } })).toThrow(/fact/);
    expect(() => make({ sum: { id: 'x', inputs: { mass: Number.NaN } } })).toThrow(/fact/);
  });
});

describe('a verdict', () => {
  it('over a finding of no known severity is "cannot tell"', () => {
    const broken = { ...make({}), severity: undefined } as unknown as Finding;
    expect(verdictOf([broken])).toBe('unknown');
    expect(verdictOf([make({}), broken, make({}, 'tail-stands', 'limits')])).toBe('unknown');
    expect(verdictOf([make({})])).toBe('go');
  });
});

describe('a margin', () => {
  it('is the share of the allowance that is left, and −1 over an allowance of nothing', () => {
    expect(marginOf(50, 200)).toBe(0.75);
    expect(marginOf(300, 200)).toBe(-0.5);
    expect(marginOf(1, 0)).toBe(-1);
    expect(marginOf(0, 0)).toBe(0);
    expect(marginOf(0.25, 0.5)).toBe(0.5);
  });
});
