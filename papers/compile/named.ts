/**
 * Which thing a name means that somebody wrote down elsewhere: letters and digits count, not how they are cased or
 * spaced. Of several alike that were counted, a name without a number means each: nobody said which.
 */
import { slug } from './line.ts';

/** An accent written as one letter or as two is the same. */
export const nameKey = (name: string): string => slug(name.normalize('NFC'));

export const sameName = (a: string, b: string): boolean => a === b || nameKey(a) === nameKey(b);

/** Of these names those that are meant; none: it is of something else. */
export function meant(name: string, among: readonly string[]): readonly string[] {
  const same = among.filter((one) => sameName(one, name));
  if (same.length > 0) return same;
  const base = `${nameKey(name)}-`;
  return among.filter(
    (one) => nameKey(one).startsWith(base) && /^\d+$/.test(nameKey(one).slice(base.length)),
  );
}

/** What is written of a vehicle that is left behind stays behind with it. @param before names in the train, and after */
export const ofThoseLeft = <T extends { readonly of?: unknown }>(
  written: readonly T[],
  before: readonly string[],
  after: readonly string[],
): T[] =>
  written.filter(({ of }) => meant(String(of), after).length > 0 || meant(String(of), before).length === 0);
