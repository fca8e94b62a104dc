/** An age as people write it, read into years: 7, "7 years", "8 months", "1.5", "1 year 4 months". */
import * as z from 'zod/mini';
import { show } from '../problem.ts';
import { raise } from './quantity.ts';

const MOST = 130;
const EXPECTED = `an age from 0 to ${MOST} years such as 7, "8 months" or 0.5`;
const NUMBER = String.raw`(\d+(?:\.\d+)?)\s*`;
const YEARS = `${NUMBER}(?:y|yrs?|years?)`;
const MONTHS = `${NUMBER}(?:m|mo|months?)`;
/** Years alone need no unit; beside months, and months always, they have one. */
const WRITTEN = new RegExp(`^(?:${YEARS}\\s*${MONTHS}|${MONTHS}|${YEARS}|${NUMBER})(?:\\s*old)?$`, 'i');

function yearsOf(input: unknown): number | undefined {
  if (typeof input === 'number') return input;
  const read = typeof input === 'string' ? WRITTEN.exec(input.trim()) : null;
  if (!read) return undefined;
  const [bothYears, bothMonths, months, years, bare] = read.slice(1).map((text) => Number(text ?? 0));
  return bothYears + years + bare + (bothMonths + months) / 12;
}

export function age() {
  return z.pipe(
    z.unknown(),
    z.transform((input: unknown, ctx): number => {
      const years = yearsOf(input);
      if (years !== undefined && years >= 0 && years <= MOST) return years;
      raise(ctx, input, { found: show(input), expected: EXPECTED });
      return z.NEVER;
    }),
  );
}
