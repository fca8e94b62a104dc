/**
 * 100,000 records: opened, verified, and what is due of them; against the bare SHA-256 and Ed25519 of the same bytes by the
 * same platform, of which a whole look can never be quicker. Measured is processor time, of all threads together: it says the same on a
 * busy machine, but for what others take of its caches. By the clock signatures go to all processors beside each other; the rest is one's.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dueOn } from '../records/due.ts';
import { checkSignature, sha256Of } from '../records/hash.ts';
import { look } from '../records/ledger.ts';
import { openSqlite } from '../records/stores/sqlite.ts';
import { type ManyRecords, manyRecords, PROGRAM } from './many-records.ts';
import { type BenchRow, ms } from './row.ts';

const COUNT = 100_000;
const BATCH = 256;

/** @returns ms of processor */
async function timed<T>(work: () => Promise<T> | T): Promise<{ readonly took: number; readonly made: T }> {
  const before = process.cpuUsage();
  const made = await work();
  const { user, system } = process.cpuUsage(before);
  return { took: (user + system) / 1000, made };
}

/** @returns how many were right */
async function bare({ rows }: ManyRecords): Promise<number> {
  const all = rows.map(({ text, hash, signature = '' }) => ({
    bytes: new TextEncoder().encode(text),
    author: /"author":"(\w+)"/.exec(text)?.[1] ?? '',
    hash,
    signature,
  }));
  let right = 0;
  for (let from = 0; from < all.length; from += BATCH) {
    const batch = all.slice(from, from + BATCH).map(async ({ bytes, author, hash, signature }) => {
      const [is, signed] = await Promise.all([sha256Of(bytes), checkSignature(bytes, signature, author)]);
      return is === hash && signed === 'right';
    });
    right += (await Promise.all(batch)).filter(Boolean).length;
  }
  return right;
}

export async function run(count = COUNT): Promise<BenchRow[]> {
  const many = await manyRecords(count);
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const at = join(folder, 'many.records');
  try {
    const fresh = await openSqlite(at, true);
    await fresh.take(many.rows, many.newest, 0);
    fresh.close();
    const reference = await timed(() => bare(many));
    const opened = await timed(async () => {
      const store = await openSqlite(at);
      return { store, looked: await look(store, 'chain', PROGRAM) };
    });
    const due = await timed(() => dueOn(opened.made.looked.entries, '2026-05-01'));
    const whole = await timed(() => look(opened.made.store));
    const each = await timed(() => look(opened.made.store, 'each'));
    opened.made.store.close();
    const row = (work: string, took: number, error: string): BenchRow => ({
      work: `${work}, ${count} records`,
      ours: ms(took),
      against: 'bare SHA-256 and Ed25519 of the same bytes; both are processor time of all threads',
      theirs: ms(reference.took),
      ratio: reference.took / took,
      ourError: error,
      theirError: `${count - reference.made} not right`,
    });
    const amiss = ({ faults }: { readonly faults: readonly unknown[] }): string => `${faults.length} amiss`;
    return [
      row('a store verified whole', whole.took, amiss(whole.made)),
      row('a store verified signature by signature', each.took, amiss(each.made)),
      row('a store opened, its chain looked through', opened.took, amiss(opened.made.looked)),
      row('what is due', due.took, `${due.made.length} things`),
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
