/** On the last day that the text allows it stands; on the next it does not. */
import { describe, expect, it } from 'vitest';
import { dayNumber, daysBetween, endOfMonth, plusDays, plusMonths } from '../../../../papers/due/day.ts';
import { type Interval, lastCounted, readInterval, stateOn } from '../../../../papers/due/interval.ts';
import { printedIn } from '../../../support/measured.ts';

const printed = printedIn(import.meta.url, 'A');
const exact = printedIn(import.meta.url, 'D');

const rule = (text: string): Interval => {
  const read = readInterval(text);
  if (!read) throw new Error(text);
  return read;
};

/** Last day on which it stands, in days after it was done. */
function standsFor(text: string, on: string): number {
  let days = 0;
  while (['stands', 'due'].includes(stateOn(rule(text), on, plusDays(on, days + 1), {}))) days++;
  return days;
}

describe('by the calendar', () => {
  it.each([
    ['736 days', '2024-01-15', 736],
    ['366 days', '2025-03-01', 366],
    // To 31 March 2026, and where February ends the fourteenth month, to its end.
    ['annually, not to exceed 14 months', '2025-01-31', daysBetween('2025-01-31', '2026-03-31')],
    ['annually, not to exceed 14 months', '2024-12-31', daysBetween('2024-12-31', '2026-02-28')],
    ['every 3 years', '2024-02-29', daysBetween('2024-02-29', '2027-02-28')],
  ])('%s from %s', (text, on, days) => {
    const ours = standsFor(text, on);
    expect(ours).toBe(days);
    printed.figure(`${text}, from ${on}`, ours, days, 0, 'days');
  });

  it('annually, not to exceed 14 months: due after twelve, out after fourteen', () => {
    const annual = rule('annually, not to exceed 14 months');
    const on = (day: string): string => stateOn(annual, '2025-01-31', day, {});
    expect([on('2026-01-31'), on('2026-02-01'), on('2026-03-31'), on('2026-04-01')]).toEqual([
      'stands',
      'due',
      'due',
      'out',
    ]);
  });
});

describe('as it is read', () => {
  const days = (count: number) => ({ every: { count, of: 'days' } });
  const months = (count: number) => ({ every: { count, of: 'months' } });
  it.each([
    ['daily', days(1)],
    ['weekly', days(7)],
    ['Every  2 weeks', days(14)],
    ['monthly', months(1)],
    ['6 months', months(6)],
    ['quarterly', months(3)],
    ['yearly', months(12)],
    ['annually', months(12)],
    ['3 years', months(36)],
    ['40,000 days', days(40_000)],
    ['31 service days', { serviceDays: 31 }],
    ['40,000 service days', { serviceDays: 40_000 }],
    ['1 year, not more than 400 days', { ...months(12), most: { count: 400, of: 'days' } }],
    ['weekly, or before use if used less than monthly', { ...days(7), beforeUse: 31 }],
    ['weekly, before use if used less than weekly', { ...days(7), beforeUse: 7 }],
    ['weekly, or before use', { ...days(7), beforeUse: 7 }],
  ])('%s', (text, read) => expect(readInterval(text)).toEqual(read));
});

describe('by service days', () => {
  const ran = (count: number): string[] => Array.from({ length: count }, (_, i) => plusDays('2026-05-01', i));

  it.each([31, 92, 1472])('%d of them, and not one more', (count) => {
    const text = count === 1472 ? '1,472 service days' : `${count} service days`;
    const may = (gone: number): boolean =>
      stateOn(rule(text), '2026-05-01', plusDays('2026-05-01', gone), { days: ran(gone) }) === 'stands';
    const most = Array.from({ length: count + 2 }, (_, n) => n).filter(may).length;
    // So many days of service, that of the day itself the last.
    expect(most).toBe(count);
    printed.figure(text, most, count, 0, 'days');
  });

  it('two runs on a day are one, days before it was done are none, and unkept days are unknown', () => {
    const two = rule('2 service days');
    const on = (days: readonly string[]): string => stateOn(two, '2026-05-10', '2026-05-20', { days });
    expect(on(['2026-05-01', '2026-05-02', '2026-05-11', '2026-05-11'])).toBe('stands');
    expect(on(['2026-05-10', '2026-05-11'])).toBe('out');
    // One more run on the day itself makes it no other day.
    expect(on(['2026-05-11', '2026-05-20'])).toBe('stands');
    expect(stateOn(two, '2026-05-10', '2026-05-20', {})).toBe('unknown');
  });
});

describe('weekly, at least 3 days between, or before use if used less than weekly', () => {
  const weekly = rule('weekly, at least 3 days between, or before use if used less than weekly');
  const on = (day: string, days?: readonly string[]): string =>
    stateOn(weekly, '2026-05-01', day, days ? { days } : {});

  it('stands for seven days', () =>
    expect([on('2026-05-08', []), on('2026-05-09', ['2026-05-08'])]).toEqual(['stands', 'out']));
  it('waits until before use where it rested for more than a week, and only there', () => {
    expect(on('2026-05-20', ['2026-05-03', '2026-05-12'])).toBe('before-use');
    expect(on('2026-05-20', ['2026-05-13'])).toBe('out');
    expect(on('2026-05-20', ['2026-05-02', '2026-05-19'])).toBe('out');
    expect(on('2026-05-20', ['2026-05-02', '2026-05-20'])).toBe('before-use');
    // Whether it was in use nobody says: it is to be inspected before it is, whichever of the two was so.
    expect(on('2026-05-20')).toBe('before-use');
  });
  it('one too soon after another counts for nothing', () => {
    expect(lastCounted(weekly, ['2026-05-01', '2026-05-04'])).toBe('2026-05-01');
    expect(lastCounted(weekly, ['2026-05-05', '2026-05-01'])).toBe('2026-05-05');
    expect(lastCounted(weekly, [])).toBeUndefined();
  });
});

describe('ends of months and grace', () => {
  it('to the end of the month', () => {
    const on = (day: string): string => stateOn(rule('1 year, end of month'), '2025-02-10', day, {});
    expect([on('2026-02-28'), on('2026-03-01')]).toEqual(['stands', 'out']);
  });
  it('grace is told, and ends', () => {
    const on = (day: string): string => stateOn(rule('1 year, 30 days of grace'), '2025-05-01', day, {});
    expect([on('2026-05-01'), on('2026-05-02'), on('2026-05-31'), on('2026-06-01')]).toEqual([
      'stands',
      'grace',
      'grace',
      'out',
    ]);
  });
  it('grace lengthens no service', () => {
    const both = rule('1 year, 1 service day, 30 days of grace');
    const on = (days: readonly string[]): string => stateOn(both, '2025-05-01', '2026-05-10', { days });
    expect([on([]), on(['2025-06-01'])]).toEqual(['grace', 'out']);
  });
  it('nothing stands before it was done', () =>
    expect(stateOn(rule('1 year'), '2026-05-02', '2026-05-01', {})).toBe('not-yet'));
});

describe('the calendar', () => {
  it('moves by months as printed', () => {
    const moves = [
      ['2026-01-31', 1, '2026-02-28'],
      ['2024-02-29', 12, '2025-02-28'],
      ['2024-01-31', 1, '2024-02-29'],
      ['2026-12-15', 1, '2027-01-15'],
      ['2026-05-31', -3, '2026-02-28'],
    ] as const;
    const wrong = moves.filter(([from, months, to]) => plusMonths(from, months) !== to);
    expect(wrong).toEqual([]);
    exact.figure('months that differ', wrong.length, 0, 0, 'days');
    expect(endOfMonth('2026-02-10')).toBe('2026-02-28');
  });
  it('knows which days there are', () =>
    expect(['2026-02-29', '2026-13-01', '2026-5-1', 'x', '2024-02-30'].map(dayNumber)).toEqual(
      Array.from({ length: 5 }, () => undefined),
    ));
});

it.each([
  '',
  'sometimes',
  '0 days',
  '3 years, 2 years',
  'not to exceed 14 months',
  'end of month, 31 service days',
  '40,001 days',
  '40,001 service days',
  '0 service days',
  '1.5 days',
  '5 days of grace',
  'weekly, 0 days of grace',
  'or before use if used less than weekly, 31 service days',
  '31 service days, 5 days of grace, 5 days of grace',
])('"%s" is no interval', (text) => expect(readInterval(text)).toBeUndefined());
