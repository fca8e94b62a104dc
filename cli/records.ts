/** The store of records on this machine: one SQLite file, and beside it the key of whoever writes into it here. */
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import type { Command as Program } from 'commander';
import { hex, newKeys } from '../records/hash.ts';
import { type Clock, look, type Put, put } from '../records/ledger.ts';
import { type Author, type Entry, type Said, UNSIGNED } from '../records/record.ts';
import { NoStore, openSqlite, type SqliteStore } from '../records/stores/sqlite.ts';
import { localTime } from '../records/time.ts';
import type { Verified } from '../records/verify.ts';
import { UsageFault } from './command.ts';
import { contentOf } from './file.ts';
import { program } from './versions.ts';

export interface StoreOptions {
  readonly records: string;
}

/** Where records are looked for, unless another file is named. */
export const STORE = 'heedway.records';

export const storeOption = (command: Program): Program =>
  command.option('--records <file>', 'the store of records', STORE);

export const clock: Clock = { now: () => localTime(new Date()), program };

const keyPath = (store: string): string => `${store}.key`;

/** What stands in the file of a key. */
interface KeyFile {
  readonly author: string;
  readonly device: string;
  /** PKCS #8 in base64; absent: unsigned. */
  readonly key?: string;
}

/** Bytes: ten times what one takes. */
const MOST_KEY = 4096;

const noStore = (path: string, fault: unknown): UsageFault =>
  new UsageFault(
    `${path}: found ${(fault as Error).message}; expected a store of records (heedway records begin makes one)`,
  );

/** Opens the store, and shuts it whatever comes. */
export async function inStore<T>(
  { records }: StoreOptions,
  use: (store: SqliteStore) => Promise<T>,
): Promise<T> {
  let store: SqliteStore;
  try {
    store = await openSqlite(records);
  } catch (fault) {
    throw noStore(records, fault);
  }
  try {
    return await use(store);
  } catch (fault) {
    throw fault instanceof NoStore ? new UsageFault(`${records}: ${fault.message}`) : fault;
  } finally {
    store.close();
  }
}

/** A new store where there is none; a key of this machine's own in either. */
export async function beginStore({ records }: StoreOptions): Promise<Author> {
  if (existsSync(keyPath(records)))
    throw new UsageFault(`${keyPath(records)}: found a key; expected none: somebody writes here already`);
  const keys = await newKeys(true);
  const device = hex(crypto.getRandomValues(new Uint8Array(4)));
  const name = keys?.name ?? `${UNSIGNED}${hex(crypto.getRandomValues(new Uint8Array(16)))}`;
  const key = keys && Buffer.from(await crypto.subtle.exportKey('pkcs8', keys.sign)).toString('base64');
  const file: KeyFile = { author: name, device, ...(key === undefined ? {} : { key }) };
  try {
    if (!existsSync(records)) (await openSqlite(records, true)).close();
    // For its owner's eyes alone, and never over another.
    await writeFile(keyPath(records), `${JSON.stringify(file)}\n`, { mode: 0o600, flag: 'wx' });
  } catch (fault) {
    throw new UsageFault(`${records}: found ${(fault as Error).message}; expected a file that can be made`);
  }
  return { name, device, ...(keys ? { keys } : {}) };
}

/** Who writes into the store on this machine. */
export async function authorHere({ records }: StoreOptions): Promise<Author> {
  const path = keyPath(records);
  try {
    const content = await contentOf(path, MOST_KEY);
    if (!('bytes' in content)) throw new Error(content.unread);
    const { author, device, key } = JSON.parse(new TextDecoder().decode(content.bytes)) as KeyFile;
    if (key === undefined) return { name: author, device };
    const sign = await crypto.subtle.importKey(
      'pkcs8',
      Buffer.from(key, 'base64'),
      { name: 'Ed25519' },
      false,
      ['sign'],
    );
    return { name: author, device, keys: { name: author, sign } };
  } catch {
    throw new UsageFault(
      `${path}: found no key that can be read; expected that of whoever writes here (heedway records begin makes one)`,
    );
  }
}

export async function record(
  store: SqliteStore,
  said: Omit<Said, 'said'> & { said?: string },
  options: StoreOptions,
): Promise<Entry> {
  const author = await authorHere(options);
  const done: Put = await put(store, { ...said, said: said.said ?? clock.now() }, author, clock);
  if (done.ok) return done.entry;
  throw new UsageFault(
    done.troubles
      .map(({ path, found, expected }) => `${path.join('.')}: found ${found}; expected ${expected}`)
      .join('\n'),
    done.troubles,
  );
}

/** Records that can be trusted; the others are for `verify` to tell. */
export const lookAt = (store: SqliteStore): Promise<Verified> => look(store, 'chain', program);

/** The record that the first letters of a hash name. */
export function entryNamed(entries: readonly Entry[], letters: string): Entry {
  const found = /^[0-9a-f]{4,64}$/.test(letters)
    ? entries.filter(({ row }) => row.hash.startsWith(letters))
    : [];
  if (found.length === 1) return found[0];
  throw new UsageFault(
    `found ${found.length === 0 ? 'no record' : `${found.length} records`} ${letters}; expected the first letters of one's hash (heedway records list)`,
  );
}

/** When it was, as it is typed; now, if nothing is said. */
export function timeSaid(said: string | undefined): string {
  if (said === undefined) return clock.now();
  const at = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?([+-]\d\d:\d\d)?$/.test(said) ? new Date(said) : undefined;
  if (!at || Number.isNaN(at.getTime()))
    throw new UsageFault(`--said: found ${said}; expected a time such as 2026-05-31T10:05`);
  // With an offset it is as it stands; without, this machine's.
  return /[+-]\d\d:\d\d$/.test(said) && said.length > 16
    ? `${said.slice(0, 16)}${/T\d\d:\d\d:\d\d/.test(said) ? said.slice(16, 19) : ':00'}${said.slice(-6)}`
    : localTime(at);
}
