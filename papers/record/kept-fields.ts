/** How long records are kept, and what was removed when that had ended. */
import * as z from 'zod/mini';
import { choice, day, group, may, must, rows, text } from '../describe.ts';
import { readInterval } from '../due/interval.ts';
import { hash } from './reference.ts';

/**
 * What can be given an end. What closes one of them goes with what it closes: an arrival with its departure, what was mended
 * with its inspection, measures with their incident, what was lifted with its restriction.
 */
export const removableKinds = [
  'departure',
  'certificate',
  'inspection',
  'incident',
  'restriction',
  'turn',
  'note',
] as const;
export type RemovableKind = (typeof removableKinds)[number];

/** By the calendar alone: "3 years", "30 days". */
const span = () =>
  z.string().check(
    z.maxLength(60),
    z.refine((words) => {
      const rule = readInterval(words);
      return rule?.every !== undefined && Object.keys(rule).length === 1;
    }, 'a span such as "30 days" or "3 years"'),
  );

export const retention = group({
  kind: must(choice(...removableKinds), 'kind', 'Which records.'),
  keep: must(span(), 'keep', 'How long, from the day of which they speak.'),
  source: must(text(), 'source', 'The rule or law that says so.'),
});

const gone = group({
  hash: must(hash(), 'hash', 'Of the record that was removed.'),
  author: must(text(), 'author', 'Whose it was.'),
  number: must(z.int().check(z.gte(1)), 'number', 'Its author’s how-manieth.'),
  previous: may(hash(), 'previous', 'Hash of the author’s record before it.'),
  kind: must(text(60), 'kind', 'What kind of record it was.'),
  day: must(day(), 'day', 'The day of which it spoke, or on which it was said anew or closed.'),
  under: must(hash(), 'under', 'The record that says how long it was kept.'),
});

export const removal = group({
  removed: must(rows(gone, 1, 100_000), 'removed', 'What was taken out of the store, its hash left behind.'),
});
