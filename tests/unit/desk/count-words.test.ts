/** One word for no car, whether the engine alone would do or not. */
import { expect, it } from 'vitest';
import { counted, countWords, leastWords, slowerBeside } from '../../../desk/count-ways.ts';
import { sentence } from '../../../desk/sentence.ts';
import type { Answer, CarCount } from '../../../engine/answer/types.ts';
import { randomOuting } from '../../support/random-outings.ts';

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

it('no car is none in the table, the figure and the sentence alike', () => {
  const alone = { least: 0, by: 'pulled' } as unknown as CarCount;
  const not = { least: null, by: 'held' } as unknown as CarCount;
  expect([alone, not].map(leastWords)).toEqual(['none', 'none']);
  expect(leastWords({ least: null, by: null } as unknown as CarCount)).toBe('cannot tell');
  const outing = randomOuting(4);
  const today = {
    ...count(null),
    ...{ railState: outing.conditions.railState, least: 3, by: 'host', host: 3, stopped: 3, leastSets: null },
  };
  const said = (pulled: number, none: readonly string[] = []): string =>
    sentence(
      {
        verdict: 'limits',
        findings: [],
        cars: [{ ...today, pulled, none }],
        speeds: null,
      } as unknown as Answer,
      { system: 'imperial', wording: 'us', outing },
    );
  expect(said(2)).toContain('At most 3 cars (the host allows 3), and 2 at most if it must start anywhere');
  for (const none of [[], ['pulled']])
    expect(said(0, none)).toContain(', and none if it must start anywhere');
});

it('a count that nobody can tell follows a colon, and a kept speed is kept with so many', () => {
  expect(counted('keepsSpeed', 'keeps 3 mph', 'cannot tell')).toBe('keeps 3 mph: cannot tell');
  expect(counted('keepsSpeed', 'keeps 3 mph', '7')).toBe('keeps 3 mph with 7');
  expect(counted('pulled', 'starts anywhere', 'cannot tell')).toBe('starts anywhere: cannot tell');
  expect(counted('pulled', 'starts anywhere', '7')).toBe('starts anywhere 7');
});

it('no car is none, and what is not known is not none', () => {
  expect(said(count(0))).toBe('none');
  expect(said(count(0, ['keepsSpeed']))).toBe('none');
  expect(said(count(null))).toBe('cannot tell');
  expect(said(count(5))).toBe('5');
});
