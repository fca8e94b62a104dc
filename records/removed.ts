/**
 * What was taken out of a store because its time had ended: named, with its place in its author's chain, by a signed record of
 * its own. So a gap is either told on purpose, by whom, when and under which rule, or it is missing.
 */
import { dueAfter, readInterval } from '../papers/due/interval.ts';
import { checkContent } from '../papers/record/check.ts';
import type { Content } from '../papers/record/fields.ts';
import type { RemovableKind } from '../papers/record/kept-fields.ts';
import type { Entry } from './record.ts';

export type Gone = Content<'removal'>['removed'][number];

/** What closes a record goes with it, under the rule of its kind. */
export const openerOf: Readonly<Record<string, RemovableKind>> = {
  departure: 'departure',
  arrival: 'departure',
  certificate: 'certificate',
  inspection: 'inspection',
  mended: 'inspection',
  incident: 'incident',
  measure: 'incident',
  measured: 'incident',
  restriction: 'restriction',
  lifted: 'restriction',
  turn: 'turn',
  note: 'note',
};

/** Last day on which a record of that day is kept under a rule as it is written; undefined: it is no rule. */
export function keptTo(keep: string, day: string): string | undefined {
  const rule = readInterval(keep);
  return rule && dueAfter(rule, day, day, {}).last;
}

const rulesIn = (entries: readonly Entry[]): ReadonlyMap<string, Content<'retention'>> =>
  new Map(
    entries.flatMap(({ body, row }) => {
      const read = body.kind === 'retention' ? checkContent('retention', body.content) : undefined;
      return read?.ok ? [[row.hash, read.value] as const] : [];
    }),
  );

/** A rule for its kind was recorded, and had ended when it was taken out. */
function onTime(
  { kind, day, under }: Gone,
  rules: ReadonlyMap<string, Content<'retention'>>,
  on: string,
): boolean {
  const rule = rules.get(under);
  const last = rule && rule.kind === openerOf[kind] ? keptTo(rule.keep, day) : undefined;
  return last !== undefined && last < on;
}

export interface Removals {
  /** By hash. */
  readonly gone: ReadonlyMap<string, Gone>;
  /** Which record says so. */
  readonly by: ReadonlyMap<string, Entry>;
  /** Records of removals that say what cannot be: too early, under no rule, or of a kind that is never removed. */
  readonly wrong: readonly Entry[];
}

/** By the day on which the removal was put by, which its author does not say but the program. */
export function removalsIn(entries: readonly Entry[]): Removals {
  const removals = entries.filter(({ body }) => body.kind === 'removal');
  const gone = new Map<string, Gone>();
  const by = new Map<string, Entry>();
  const wrong: Entry[] = [];
  const rules = removals.length === 0 ? new Map() : rulesIn(entries);
  for (const entry of removals) {
    const read = checkContent('removal', entry.body.content);
    const all = read.ok ? read.value.removed : [];
    const right = all.filter((one) => onTime(one, rules, entry.body.stored.slice(0, 10)));
    for (const one of right) {
      gone.set(one.hash, one);
      by.set(one.hash, entry);
    }
    if (right.length < all.length || !read.ok) wrong.push(entry);
  }
  return { gone, by, wrong };
}

/** Of an entry: as much as is left of it, under which rule. @param day of its unit, the last of which anything in it speaks */
export const goneOf = ({ body, row }: Entry, day: string, under: string): Gone => ({
  hash: row.hash,
  author: body.author,
  number: body.number,
  ...(body.previous === undefined ? {} : { previous: body.previous }),
  kind: body.kind,
  day,
  under,
});
