/** A club's year of records said again, year by year, by one author: as many as make a pack of hundreds of pages. */
import { readFileSync } from 'node:fs';
import { readStoreFile } from '../../records/file.ts';
import { look, put } from '../../records/ledger.ts';
import type { Json } from '../../records/record.ts';
import { memoryStore } from '../../records/stores/memory.ts';
import type { Verified } from '../../records/verify.ts';
import { author, clockFrom } from './club-records.ts';

const year = new URL('../../examples/club/year.jsonl', import.meta.url);

/** @param bytes of the year's file, where this runs from another folder */
export async function clubYears(count: number, bytes: Uint8Array = readFileSync(year)): Promise<Verified> {
  const { verified } = await readStoreFile(bytes);
  const [store, clock, who] = [memoryStore(), clockFrom(), await author()];
  for (let n = 0; n < count; n++) {
    // What a record names is what was said again of it.
    const anew = new Map<string, string>();
    const renamed = (text: string): string => text.replace(/[0-9a-f]{64}/g, (hash) => anew.get(hash) ?? hash);
    for (const { body, row } of verified.entries) {
      if (body.kind === 'author' && n > 0) continue;
      const content = JSON.parse(renamed(JSON.stringify(body.content))) as Json;
      const amends = body.amends === undefined ? {} : { amends: renamed(body.amends) };
      const done = await put(store, { kind: body.kind, content, said: body.said, ...amends }, who, clock);
      if (!done.ok) throw new Error(JSON.stringify(done.troubles));
      anew.set(row.hash, done.entry.row.hash);
    }
  }
  const looked = await look(store, 'chain');
  if (looked.faults.some(({ what }) => what !== 'photo-missing')) throw new Error('years that do not verify');
  return looked;
}
