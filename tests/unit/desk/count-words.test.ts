/** One word for no car, whether the engine alone would do or not. */
import { expect, it } from 'vitest';
import { countWords, slowerBeside } from '../../../desk/count-ways.ts';
import type { CarCount } from '../../../engine/answer/types.ts';

const count = (keepsSpeed: number | null, none: readonly string[] = []): CarCount =>
  ({ keepsSpeed, none, unlimited: [], from: {} }) as unknown as CarCount;
const said = (of: CarCount): string => countWords(of, 'keepsSpeed', (n) => `${n}+`);

it('none from running speed and some slower is said as what it is', () => {
  const stops = (stopped: number, stoppedSlower: number | null): string =>
    countWords({ ...count(null), stopped, stoppedSlower }, 'stopped', (n) => `${n}+`);
  expect(stops(0, 6)).toBe('6 slower');
  expect(stops(0, null)).toBe('none');
  expect(stops(5, 6)).toBe('5');
});

it('beside a count from running speed stands how many are stopped slower, and beside no other', () => {
  const of = { ...count(7), stopped: 5, stoppedSlower: 6 };
  expect(slowerBeside(of, 'stopped')).toBe(' (6 slower)');
  expect(slowerBeside(of, 'keepsSpeed')).toBe('');
  expect(slowerBeside({ ...of, stopped: 0 }, 'stopped')).toBe('');
  expect(slowerBeside({ ...of, stoppedSlower: null }, 'stopped')).toBe('');
});

it('no car is none, and what is not known is not none', () => {
  expect(said(count(0))).toBe('none');
  expect(said(count(0, ['keepsSpeed']))).toBe('none');
  expect(said(count(null))).toBe('cannot tell');
  expect(said(count(5))).toBe('5');
});
