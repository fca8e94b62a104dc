/** Every kind of store keeps the same promises; two of them put together are one set, whatever the order. */
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { standing } from '../../../records/amended.ts';
import { storeFile } from '../../../records/file.ts';
import { headOf, look, take } from '../../../records/ledger.ts';
import { nameIn, personNamed } from '../../../records/names.ts';
import type { Store } from '../../../records/store.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { NoStore, openSqlite } from '../../../records/stores/sqlite.ts';
import { author, clockFrom, noted, said } from '../../support/club-records.ts';
import { runs } from '../../support/tier.ts';

const folder = mkdtempSync(join(tmpdir(), 'records #?% '));
let made = 0;
const path = (): string => join(folder, `club ${made++}.records`);

const stores: readonly (readonly [string, () => Promise<Store>])[] = [
  ['memory', async () => memoryStore()],
  ['SQLite', async () => openSqlite(path(), true)],
];

describe.each(stores)('a store in %s', (_, fresh) => {
  it('keeps what was said, in a chain', async () => {
    const [store, ada, clock] = [await fresh(), await author(), clockFrom()];
    const one = await noted(store, ada, clock, 'one');
    const two = await noted(store, ada, clock, 'two');
    expect(two.body).toMatchObject({ number: 2, previous: one.row.hash });
    const { entries, faults, forks } = await look(store);
    expect(entries.map((e) => e.body.content)).toEqual([{ text: 'one' }, { text: 'two' }]);
    expect([faults, forks]).toEqual([[], []]);
  });

  it('two windows that write at once make one chain and no fork', async () => {
    const [store, ada, clock] = [await fresh(), await author(), clockFrom()];
    await Promise.all(Array.from({ length: 8 }, (_unused, i) => noted(store, ada, clock, `${i}`)));
    const { entries, faults, forks } = await look(store);
    expect(entries).toHaveLength(8);
    expect([faults, forks]).toEqual([[], []]);
  });

  it('refuses what is none of its kind, and keeps nothing of it', async () => {
    const [store, ada, clock] = [await fresh(), await author(), clockFrom()];
    await expect(said(store, ada, clock, 'note', { words: 'no' })).rejects.toThrow(/words/);
    expect(await store.rows()).toEqual([]);
  });

  it('an amendment stands, and what was said first stays', async () => {
    const [store, ada, clock] = [await fresh(), await author(), clockFrom()];
    const first = await noted(store, ada, clock, 'chain of 3/8 in');
    const second = await said(store, ada, clock, 'note', { text: 'chain of 5/16 in' }, first.row.hash);
    await said(store, ada, clock, 'note', { text: 'chain of 1/4 in' }, second.row.hash);
    const { entries } = await look(store);
    expect(entries).toHaveLength(3);
    const [only, ...others] = standing(entries);
    expect(others).toEqual([]);
    expect(only.content).toEqual({ text: 'chain of 1/4 in' });
    expect(only.first.body.content).toEqual({ text: 'chain of 3/8 in' });
    expect(only.amendments).toHaveLength(2);
  });

  it('is put together with another as a set, in any order, and says the same', async () => {
    const clock = clockFrom();
    const [shed, gate, one, other] = [memoryStore(), memoryStore(), await fresh(), await fresh()];
    const [ada, ben] = [await author('shed'), await author('gate')];
    for (let i = 0; i < 5; i++) {
      await noted(shed, ada, clock, `a${i}`);
      await noted(gate, ben, clock, `b${i}`);
    }
    const [a, b] = [await shed.rows(), await gate.rows()];
    expect(await take(one, a)).toMatchObject({ added: 5, there: 0 });
    expect(await take(one, [...b, ...a, ...b])).toMatchObject({ added: 5, there: 5 });
    for (const row of [...b].reverse()) await take(other, [row]);
    await take(other, a);
    const [first, second] = [await look(one), await look(other)];
    expect([first.faults, first.forks, second.faults, second.forks]).toEqual([[], [], [], []]);
    expect(await storeFile(second)).toBe(await storeFile(first));
    // And each author goes on where they were.
    const next = await noted(other, ada, clock, 'a5');
    expect(next.body.number).toBe(6);
  });

  it('records of one moment have one order, whoever wrote them', async () => {
    const [one, other] = [await fresh(), memoryStore()];
    const authors = await Promise.all([author('a'), author('b'), author('c')]);
    // A clock that stands: each says all in the same minute.
    for (const who of authors)
      for (const text of ['first', 'second']) await noted(one, who, clockFrom(), text);
    for (const row of [...(await one.rows())].reverse()) await take(other, [row]);
    expect(await storeFile(await look(other))).toBe(await storeFile(await look(one)));
    const told = (await look(other)).entries.map(({ body }) => [body.author, body.number]);
    expect(told).toEqual(
      [...authors.map(({ name }) => name)].sort().flatMap((name) => [
        [name, 1],
        [name, 2],
      ]),
    );
  });

  it('what was lost here is not forgotten by a merge', async () => {
    const [store, ada, ben, clock] = [memoryStore(), await author(), await author('gate'), clockFrom()];
    await noted(store, ada, clock, 'one');
    const lost = await noted(store, ada, clock, 'lost');
    const here = await fresh();
    const rows = (await store.rows()).filter(({ hash }) => hash !== lost.row.hash);
    await here.take(rows, await store.newest(), 0);
    const gate = memoryStore();
    await noted(gate, ben, clock, 'elsewhere');
    await take(here, await gate.rows());
    expect((await look(here)).faults).toMatchObject([{ what: 'missing', hash: lost.row.hash }]);
    // Where the other store has it, it is back.
    await take(here, await store.rows());
    expect((await look(here)).faults).toEqual([]);
  });

  it('what another window writes while they are looked at is not missed', async () => {
    const [here, ada, clock] = [await fresh(), await author(), clockFrom()];
    await noted(here, ada, clock, 'one');
    const between =
      <T>(read: () => Promise<T>) =>
      async (): Promise<T> => {
        const is = await read();
        await noted(here, ada, clock, 'meanwhile');
        return is;
      };
    const busy = { ...here, rows: between(here.rows), newest: between(here.newest) };
    expect((await look(busy)).faults).toEqual([]);
    expect((await look(busy, 'chain')).faults).toEqual([]);
  });

  it('a copy that was written into apart shows as a fork, and one branch goes on', async () => {
    const [store, copy, ada, clock] = [await fresh(), memoryStore(), await author(), clockFrom()];
    await noted(store, ada, clock, 'one');
    await take(copy, await store.rows());
    await noted(store, ada, clock, 'here');
    await noted(copy, ada, clock, 'there');
    await take(store, await copy.rows());
    const { faults, forks, entries } = await look(store);
    expect(faults).toEqual([]);
    expect(forks).toMatchObject([{ author: ada.name, after: entries[0].row.hash }]);
    expect(forks[0].hashes).toHaveLength(2);
    expect(headOf(await store.newest(), ada.name)?.number).toBe(2);
    await noted(store, ada, clock, 'on');
    expect((await look(store)).forks).toHaveLength(1);
  });

  it('names stand apart: struck out, the records stay and verify', async () => {
    const store = await fresh();
    const one = await personNamed(store, 'An Invented Person');
    expect(await personNamed(store, 'An Invented Person')).toEqual(one);
    const other = await personNamed(store, 'Another One');
    expect(other.person).not.toBe(one.person);
    expect(nameIn(await store.names(), one.person)).toBe('An Invented Person');
    await store.strike(one.person);
    expect(nameIn(await store.names(), one.person)).toBe(`person ${one.person.slice(0, 8)}`);
    await store.name(one);
    expect(await store.names()).toEqual([other]);
    // Who comes again is named anew.
    expect((await personNamed(store, 'An Invented Person')).person).not.toBe(one.person);
  });
});

describe('a SQLite store', () => {
  it('is opened again with all that is in it, and is one file', async () => {
    const at = path();
    const [ada, clock] = [await author(), clockFrom()];
    const store = await openSqlite(at, true);
    await noted(store, ada, clock, 'one');
    store.close();
    expect([existsSync(`${at}-journal`), existsSync(`${at}-wal`)]).toEqual([false, false]);
    const again = await openSqlite(at);
    expect((await look(again)).entries).toHaveLength(1);
    again.close();
  });

  it('a name that is struck out is nowhere in the file', async () => {
    const { readFileSync } = await import('node:fs');
    const at = path();
    const store = await openSqlite(at, true);
    const { person } = await personNamed(store, 'Wilhelmina Inventedname');
    expect(readFileSync(at).includes('Inventedname')).toBe(true);
    await store.strike(person);
    store.close();
    expect(readFileSync(at).includes('Inventedname')).toBe(false);
  });

  it('has nothing left of what was removed, not in its free pages either, and the rest as it was', async () => {
    const { readFileSync } = await import('node:fs');
    const at = path();
    const [ada, clock] = [await author(), clockFrom()];
    const store = await openSqlite(at, true);
    const { row } = await noted(store, ada, clock, 'a remark of Inventedname');
    await noted(store, ada, clock, 'another');
    expect(readFileSync(at).includes('Inventedname')).toBe(true);
    await store.remove([row.hash]);
    expect((await store.rows()).map(({ text }) => text.includes('another'))).toEqual([true]);
    store.close();
    expect(readFileSync(at).includes('Inventedname')).toBe(false);
  });

  it('what is no store, or a newer one, is left alone and said', async () => {
    const { readFileSync, writeFileSync } = await import('node:fs');
    const at = path();
    await expect(openSqlite(at)).rejects.toThrow(NoStore);
    expect(existsSync(at)).toBe(false);
    writeFileSync(at, 'a shopping list, long enough that nobody takes it for a database '.repeat(20));
    await expect(openSqlite(at)).rejects.toThrow(/damaged, or no SQLite file/);
    await expect(openSqlite(at, true)).rejects.toThrow(/nothing is put over it/);
    const newer = path();
    (await openSqlite(newer, true)).close();
    const bytes = readFileSync(newer);
    // The user version, big-endian, at 60 in the header (SQLite file format, 1.3).
    bytes.writeUInt32BE(3, 60);
    writeFileSync(newer, bytes);
    await expect(openSqlite(newer)).rejects.toThrow(/a newer Heedway made it/);
  });

  it('any one byte of its file changed is found, or changes nothing of what is recorded', async () => {
    const { readFileSync, writeFileSync } = await import('node:fs');
    const at = path();
    const [ada, clock] = [await author(), clockFrom()];
    const store = await openSqlite(at, true);
    for (let i = 0; i < 12; i++) await noted(store, ada, clock, `note ${i} ${'x'.repeat(60 * i)}`);
    const whole = await storeFile(await look(store));
    store.close();
    const bytes = readFileSync(at);
    const unfound: number[] = [];
    for (let n = 0; n < runs(40, 2000); n++) {
      const where = (n * 7919) % bytes.length;
      const changed = Buffer.from(bytes);
      changed[where] = (bytes[where] + 1 + (n % 254)) % 256;
      writeFileSync(at, changed);
      if (!(await foundIn(at, whole))) unfound.push(where);
    }
    expect(unfound).toEqual([]);
  });
});

/** It cannot be opened or read, something is amiss with it, or it is as it was. */
async function foundIn(at: string, whole: string): Promise<boolean> {
  try {
    const store = await openSqlite(at);
    try {
      const looked = await look(store);
      return looked.faults.length > 0 || (await storeFile(looked)) === whole;
    } finally {
      store.close();
    }
  } catch (fault) {
    return fault instanceof NoStore;
  }
}
