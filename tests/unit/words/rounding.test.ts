/** What a finding tells is never rounded to look better than it is. */
import { describe, expect, it } from 'vitest';
import { amount } from '../../../engine/base/quantity.ts';
import { makeFinding } from '../../../engine/questions/make.ts';
import { tellFinding } from '../../../words/finding.ts';
import { say } from '../../../words/voice.ts';
import { randomOuting } from '../../support/random-outings.ts';

const voice = { system: 'metric', wording: 'us', outing: randomOuting(1) } as const;
const told = (found: number, required: number, margin?: number): string[] => {
  const finding = makeFinding('slow-on-grade', 'limits', 'hauling', {
    found: amount(found, 'force'),
    required: amount(required, 'force'),
    ...(margin === undefined ? {} : { margin }),
    source: 'a test',
  });
  const { found: f, required: r, margin: m } = tellFinding(finding, voice);
  return [f, r, m];
};

it('a gradient is 1 in so many where they say so, rounded as safely', () => {
  const at = (wording: 'us' | 'uk', toward: 'up' | 'down'): string =>
    say({ system: 'imperial', wording }, amount(1 / 70.4, 'grade'), toward);
  // Up is steeper.
  expect([at('uk', 'up'), at('uk', 'down')]).toEqual(['1 in 70', '1 in 71']);
  expect(at('us', 'up')).toBe('1.43 %');
});

describe('figures of a finding', () => {
  it('too little of what is wanted: found down, required up', () => {
    expect(told(99.6, 100.2, 99.6 / 100.2 - 1)).toEqual(['99 N', '101 N', '-1 %']);
  });
  it('enough of it: the same way', () => {
    expect(told(100.6, 99.2, 100.6 / 99.2 - 1)).toEqual(['100 N', '100 N', '1 %']);
  });
  it('more than is allowed: found up, allowed down', () => {
    expect(told(100.2, 99.6, 1 - 100.2 / 99.6)).toEqual(['101 N', '99 N', '-1 %']);
  });
  it('less than is allowed: the same way', () => {
    expect(told(99.2, 100.6, 1 - 99.2 / 100.6)).toEqual(['100 N', '100 N', '1 %']);
  });
  it('without a margin there is no side to be safe on', () => {
    expect(told(99.6, 100.2)).toEqual(['100 N', '100 N', '']);
  });
});
