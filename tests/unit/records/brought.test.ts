/** Records of another device: whoever's key nothing here vouches for lifts nothing before somebody has accepted it. */
import { describe, expect, it } from 'vitest';
import { bringIn, keyLetters } from '../../../records/bring.ts';
import { readStoreFile, type StoreFile, storeFile } from '../../../records/file.ts';
import { look, take } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import type { Author } from '../../../records/record.ts';
import { openRestrictions } from '../../../records/restrictions.ts';
import type { Store } from '../../../records/store.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { tellAuthors, tellBrought } from '../../../words/records/brought.ts';
import { author, clockFrom, noted, said, unsignedAuthor } from '../../support/club-records.ts';

const clock = clockFrom();
const none: ReadonlySet<string> = new Set();
const shutting = { line: 'Larkfield', from: '10 m', to: '20 m', why: 'soft bank' };

const fileOf = async (store: Store): Promise<StoreFile> =>
  readStoreFile(new TextEncoder().encode(await storeFile(await look(store), await store.names())));
const entriesOf = async (store: Store) => (await look(store)).entries;
const key = ({ name }: Author): string => keyLetters(name);

async function writes(store: Store, who: Author, name: string): Promise<void> {
  const { person } = await personNamed(store, name);
  await said(store, who, clock, 'author', { person });
}

/** The line is shut here; another device has the closure too, and writes there that it is lifted. */
async function closedHere(lifter: Author) {
  const [here, there, ada] = [memoryStore(), memoryStore(), await author()];
  await writes(here, ada, 'Ada');
  const shut = await said(here, ada, clock, 'restriction', shutting);
  await take(there, await here.rows());
  await writes(there, lifter, 'Bert');
  await said(there, lifter, clock, 'lifted', { restriction: shut.row.hash, why: 'mended' });
  const isShut = async (): Promise<boolean> => openRestrictions(await entriesOf(here)).length > 0;
  return { here, there, isShut, ada };
}

describe('a closure', () => {
  it('is lifted by nobody whose key is not known here, until that very key is accepted', async () => {
    const bert = await author('phone');
    const { here, there, isShut, ada } = await closedHere(bert);
    const file = await fileOf(there);
    const asked = await bringIn(here, file, new Set([key(ada), keyLetters(`${bert.name}`).slice(0, 8)]));
    expect(asked.how).toBe('unknown');
    expect([await isShut(), (await here.rows()).length]).toEqual([true, 2]);
    const letters = key(bert).match(/..../g)?.join(' ');
    expect(tellBrought(asked, file, { entries: await entriesOf(here), names: [] })).toEqual([
      expect.stringMatching(/^Nothing was taken yet/),
      `Bert, key ${letters}: 2 records (limit lifted 1).`,
    ]);
    const taken = await bringIn(here, file, new Set([key(bert)]));
    expect(taken).toMatchObject({ how: 'taken', taken: { added: 2, there: 2 } });
    expect(await isShut()).toBe(false);
    expect(tellBrought(taken, file, { entries: [], names: [] })[1]).toContain(`Bert, key ${letters}`);
  });

  it('is lifted at once by whoever has written here before', async () => {
    const bert = await author('phone');
    const { here, there, isShut } = await closedHere(bert);
    const first = memoryStore();
    await take(
      first,
      (await there.rows()).filter(({ text }) => text.includes('"kind":"author"')),
    );
    await bringIn(here, await fileOf(first), new Set([key(bert)]));
    expect(await isShut()).toBe(true);
    expect((await bringIn(here, await fileOf(there), none)).how).toBe('taken');
    expect(await isShut()).toBe(false);
  });

  it('is never lifted unasked by one who has no key: anybody can write on in that name', async () => {
    const nobody = unsignedAuthor();
    const { here, there, isShut } = await closedHere(nobody);
    const first = memoryStore();
    await take(
      first,
      (await there.rows()).filter(({ text }) => text.includes('"kind":"author"')),
    );
    expect((await bringIn(here, await fileOf(first), new Set([key(nobody)]))).how).toBe('taken');
    expect((await bringIn(here, await fileOf(there), none)).how).toBe('unknown');
    expect(await isShut()).toBe(true);
  });

  it('nor by anybody where no signature can be checked', async () => {
    const { here, there, isShut, ada } = await closedHere(await author('phone'));
    await take(
      here,
      (await there.rows()).filter(({ text }) => text.includes('"kind":"author"')),
    );
    const file = await fileOf(there);
    const unchecked = { ...file, verified: { ...file.verified, unchecked: 1 } };
    expect((await bringIn(here, unchecked, new Set([key(ada)]))).how).toBe('unknown');
    expect(await isShut()).toBe(true);
  });
});

it('who takes a name that has another key here is told with both keys', async () => {
  const [here, there, ada, other] = [memoryStore(), memoryStore(), await author(), await author()];
  await writes(here, ada, 'Ada');
  await writes(there, other, 'Ada');
  await noted(there, other, clock, 'x');
  const file = await fileOf(there);
  const known = { entries: await entriesOf(here), names: await here.names() };
  const words = tellBrought(await bringIn(here, file, none), file, known);
  expect(words[1].replaceAll(' ', '')).toContain(`Adahasanotherkeyhere:key${key(ada)}`);
  expect(tellAuthors(known, ada.name)).toEqual([
    expect.stringMatching(/^Ada, key .*: 1 record \(this device\)$/),
  ]);
});

it('what was altered brings nothing, whoever is accepted', async () => {
  const { here, there } = await closedHere(await author());
  const text = (await storeFile(await look(there))).replace('soft bank', 'hard bank');
  const file = await readStoreFile(new TextEncoder().encode(text));
  expect((await bringIn(here, file, none)).how).toBe('altered');
  expect((await here.rows()).length).toBe(2);
});
