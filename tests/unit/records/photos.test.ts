/** Photos beside the records: bare, small, carried along, found when altered or missing, and gone with what named them. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client/sqlite3';
import { describe, expect, it } from 'vitest';
import { about, withPhotos } from '../../../records/about.ts';
import { readStoreFile, storeFile } from '../../../records/file.ts';
import { look, photosFor, take, takePhotos } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import { bareJpeg, MOST_BYTES, type Photo, photoOf, toBase64 } from '../../../records/photos.ts';
import { remove } from '../../../records/remove.ts';
import type { Store } from '../../../records/store.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { openSqlite } from '../../../records/stores/sqlite.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { jpeg, PLACE } from '../../support/jpeg.ts';

const photo = async (letter = 1): Promise<Photo> => {
  const made = await photoOf(jpeg({ letter }));
  if (typeof made === 'string') throw new Error(made);
  return made;
};
const codes = async (store: Store): Promise<readonly string[]> =>
  (await look(store)).faults.map(({ what }) => what);

const ada = await author();
const looked = { item: 'wheels', ask: 'Wheels whole', result: 'reject', note: 'cracked' };
async function shed(store: Store = memoryStore(), clock = clockFrom()) {
  const of = await photo();
  await store.keepPhoto(of);
  const inspected = (hash = of.hash) =>
    said(store, ada, clock, 'inspection', {
      list: 'L',
      listHash: 'a'.repeat(64),
      when: 'periodic',
      of: 'Car 1',
      looked: [{ ...looked, photo: hash }],
    });
  return { store, of, clock, inspected, entry: await inspected() };
}

describe('a photo', () => {
  it('is kept without what the camera wrote of place and time, and as a picture nothing else', async () => {
    const told = jpeg({ place: true });
    expect(Buffer.from(told).includes(PLACE)).toBe(true);
    const bare = bareJpeg(told);
    expect(bare).toEqual(jpeg({}));
    expect(bareJpeg(bare ?? new Uint8Array())).toEqual(bare);
    // The same picture has the same name, whatever was written into it.
    expect(await photoOf(told)).toEqual(await photo());
  });
  it('that is none, is cut off or too large is not kept', async () => {
    const whole = jpeg({});
    for (const cut of [0, 3, 8, 20]) expect(bareJpeg(whole.subarray(0, cut))).toBeUndefined();
    expect(await photoOf(new TextEncoder().encode('%PDF-1.7 and more of it'))).toContain('no JPEG');
    expect(await photoOf(jpeg({ length: MOST_BYTES + 1 }))).toContain('at most 256 kB');
  });
});

describe('beside the records', () => {
  const folder = mkdtempSync(join(tmpdir(), 'photos-'));
  it.each(['memory', 'SQLite'])('in %s: found when it is altered or missing', async (kind) => {
    const store = kind === 'memory' ? memoryStore() : await openSqlite(join(folder, 'new'), true);
    const { of } = await shed(store);
    expect(await store.photo(of.hash)).toEqual(of.bytes);
    expect(await codes(store)).toEqual([]);
    const other = new Uint8Array(of.bytes);
    other[other.length - 3] ^= 1;
    await store.keepPhoto({ hash: of.hash, bytes: other });
    expect(await codes(store)).toEqual(['photo-altered']);
    await store.dropPhotos([of.hash]);
    expect(await codes(store)).toEqual(['photo-missing']);
  });

  it('a store of before photos takes them too', async () => {
    const path = join(folder, 'old');
    (await openSqlite(path, true)).close();
    const client = createClient({ url: pathToFileURL(path).href });
    await client.batch(['DROP TABLE photos', 'PRAGMA user_version = 1'], 'write');
    client.close();
    const store = await openSqlite(path);
    await shed(store);
    expect(await codes(store)).toEqual([]);
    store.close();
  });

  it('goes into the file, and out of it to another device; one byte otherwise is found there', async () => {
    const { store } = await shed();
    const looked = await look(store);
    const photos = await photosFor(store, looked.entries);
    const text = await storeFile(looked, [], photos);
    expect(await storeFile(looked, [], [...photos].reverse())).toBe(text);
    const read = await readStoreFile(new TextEncoder().encode(text));
    expect(read.faults).toEqual([]);
    const there = memoryStore();
    await take(
      there,
      read.verified.entries.map(({ row }) => row),
    );
    await takePhotos(there, [...read.photos, await photo(2)]);
    expect(await codes(there)).toEqual([]);
    // No record names the other one.
    expect(await there.photo((await photo(2)).hash)).toBeUndefined();

    const at = text.indexOf('"jpeg":"') + 40;
    const letter = text[at] === 'A' ? 'B' : 'A';
    const altered = `${text.slice(0, at)}${letter}${text.slice(at + 1)}`;
    const what = (await readStoreFile(new TextEncoder().encode(altered))).faults.map((fault) => fault.what);
    expect(what).toEqual(['photo', 'photo-missing']);
    // Without its photos a file still has all records, and says which photo is not in it.
    const bare = await readStoreFile(new TextEncoder().encode(await storeFile(looked)));
    expect(bare.faults.map((fault) => fault.what)).toEqual(['photo-missing']);
  });

  it('goes for good with the last record that names it', async () => {
    const { store, of, entry } = await shed(memoryStore(), clockFrom('2020-05-01T08:00:00Z'));
    const now = clockFrom('2026-05-01T08:00:00Z');
    await said(store, ada, now, 'mended', { inspection: entry.row.hash, item: 'wheels', what: 'new' });
    await said(store, ada, now, 'retention', { kind: 'inspection', keep: '1 year', source: 'rule 9' });
    expect(await remove(store, ada, now)).toMatchObject({ ok: true, gone: [] });
    const later = clockFrom('2027-06-01T08:00:00Z');
    expect(await remove(store, ada, later)).toMatchObject({ ok: true, gone: [{}, {}] });
    expect(await store.photo(of.hash)).toBeUndefined();
    expect(await codes(store)).toEqual([]);
  });

  it('stays while another record names it', async () => {
    const { store, of, entry, inspected } = await shed(memoryStore(), clockFrom('2020-05-01T08:00:00Z'));
    const then = clockFrom('2020-05-02T08:00:00Z');
    await said(store, ada, then, 'mended', { inspection: entry.row.hash, item: 'wheels', what: 'new' });
    await inspected();
    await said(store, ada, then, 'retention', { kind: 'inspection', keep: '1 year', source: 'rule 9' });
    await remove(store, ada, clockFrom('2026-05-01T08:00:00Z'));
    expect(await store.photo(of.hash)).toEqual(of.bytes);
    expect(await codes(store)).toEqual([]);
  });
});

it('all about one person has the photos of what he or she wrote, and of nobody else’s', async () => {
  const { store, of, entry } = await shed();
  const bo = await author('other');
  const theirs = await photo(2);
  await store.keepPhoto(theirs);
  await said(store, bo, clockFrom(), 'inspection', {
    ...entry.body.content,
    looked: [{ ...looked, photo: theirs.hash }],
  });
  const named = await personNamed(store, 'A. Keeper');
  await said(store, ada, clockFrom(), 'author', { person: named.person });
  const { entries } = await look(store);
  const all = withPhotos(about([named], entries), entries, await photosFor(store, entries));
  expect(all.photos).toEqual([{ photo: of.hash, records: [entry.row.hash], jpeg: toBase64(of.bytes) }]);
});
