/** What is said back of a written quantity: the exact factors of the inch, the pound and the standard gravity. */
import { describe, expect, it } from 'vitest';
import { understoodAs } from '../../../desk/understood.ts';
import type { Kind } from '../../../engine/base/quantity.ts';

const said = (text: string, kind: Kind): string => {
  const echo = understoodAs(text, kind);
  return echo.ok ? echo.text : `found ${echo.found}`;
};

describe('an echo', () => {
  it.each([
    // 1 in = 25.4 mm, 1 ft = 304.8 mm, 1 lb = 0.45359237 kg exactly (international yard and pound, 1959).
    ['4-7/16 in', 'length', '= 4.4375 in · 112.7 mm'],
    ['12 ft 6 in', 'length', '= 12.5 ft · 3.81 m'],
    ['1 in 80', 'grade', '= 1.25 % · 1 in 80'],
    ['-2.6 %', 'grade', '= -2.6 % · -1 in 38.5'],
    ['level', 'grade', '= level'],
    ['260 lb', 'mass', '= 260 lb · 117.93 kg'],
    ['25 %', 'ratio', '= 0.25 · 25 %'],
    ['90 s', 'time', '= 90 s'],
    ['100 ft', 'length', '= 100 ft · 30.48 m'],
    ['70°', 'angle', '= 70°'],
  ] as const)('of %s as %s is %s', (text, kind, echo) => expect(said(text, kind)).toBe(echo));

  it('of what cannot be read tells what was found', () =>
    expect(said('7 psi', 'speed')).toBe('found "7 psi"'));
});
