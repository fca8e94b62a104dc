/** An invented club's records, for tests: a clock that goes by itself, authors with keys, notes in a store. */

import type { Kind } from '../../papers/record/fields.ts';
import { newKeys } from '../../records/hash.ts';
import { type Clock, put } from '../../records/ledger.ts';
import { type Author, type Entry, type Json, UNSIGNED } from '../../records/record.ts';
import type { Store } from '../../records/store.ts';

/** A minute later each time it is looked at. */
export function clockFrom(start = '2026-05-01T08:00:00Z'): Clock {
  let at = Date.parse(start);
  return {
    now: () => {
      at += 60_000;
      return `${new Date(at).toISOString().slice(0, 19)}+00:00`;
    },
    program: '0.0.0',
  };
}

export async function author(device = 'shed'): Promise<Author> {
  const keys = await newKeys(true);
  if (!keys) throw new Error('no Ed25519 here');
  return { name: keys.name, device, keys };
}

export const unsignedAuthor = (letters = '00ff'): Author => ({
  name: `${UNSIGNED}${letters}`,
  device: 'shed',
});

export async function said(
  store: Store,
  who: Author,
  clock: Clock,
  kind: Kind,
  content: Json,
  amends?: string,
): Promise<Entry> {
  const done = await put(
    store,
    { kind, content, said: clock.now(), ...(amends === undefined ? {} : { amends }) },
    who,
    clock,
  );
  if (!done.ok) throw new Error(JSON.stringify(done.troubles));
  return done.entry;
}

export const noted = (store: Store, who: Author, clock: Clock, text: string): Promise<Entry> =>
  said(store, who, clock, 'note', { text });
