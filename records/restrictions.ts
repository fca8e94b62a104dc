/** Temporary limits and closures: each counts until a record lifts it. */
import { checkContent } from '../papers/record/check.ts';
import type { Content } from '../papers/record/fields.ts';
import { type Standing, standing } from './amended.ts';
import { dayOf, type Entry } from './record.ts';

export interface OpenRestriction {
  readonly from: Standing;
  readonly said: Content<'restriction'>;
  /** Day from which it counts. */
  readonly since: string;
}

/** Only a record that names it lifts it: neither a day that has gone by nor what was mended. */
export function openRestrictions(entries: readonly Entry[]): OpenRestriction[] {
  const lifted = new Set(
    standing(entries, 'lifted').flatMap(({ content }) => {
      const read = checkContent('lifted', content);
      return read.ok ? [read.value.restriction] : [];
    }),
  );
  return standing(entries, 'restriction').flatMap((from) => {
    const read = checkContent('restriction', from.content);
    const { hash } = from.first.row;
    return read.ok && !lifted.has(hash) ? [{ from, said: read.value, since: dayOf(from.first.body) }] : [];
  });
}
