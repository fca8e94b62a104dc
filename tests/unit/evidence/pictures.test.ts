/** Photos of a pack: printed with what they are of, and said where they are not. */
import { describe, expect, it } from 'vitest';
import { cardPdf } from '../../../cli/card-pdf.ts';
import { evidencePack } from '../../../desk/evidence/pack.ts';
import { canPrint, MOST_PICTURES } from '../../../desk/evidence/pictures.ts';
import { look, photosFor } from '../../../records/ledger.ts';
import { type Photo, photoOf } from '../../../records/photos.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { packDocument } from '../../../views/evidence/document.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { jpeg, picture } from '../../support/jpeg.ts';

const speech = { system: 'imperial', wording: 'us' } as const;
const made = { at: '2026-05-31T12:00:00+00:00', program: '0.0.0' };
const kept = async (bytes: Uint8Array): Promise<Photo> => {
  const photo = await photoOf(bytes);
  if (typeof photo === 'string') throw new Error(photo);
  return photo;
};
const printable = await kept(picture());
const unprintable = await kept(jpeg({}));
const [ada, store, clock] = [await author(), memoryStore(), clockFrom()];

/** A pack of cars, each cracked and with such a photo. @param there those whose bytes are at hand */
async function packOf(hashes: readonly string[], there: readonly Photo[]) {
  for (const photo of there) await store.keepPhoto(photo);
  const before = (await look(store, 'chain')).entries.length;
  for (const [i, photo] of hashes.entries())
    await said(store, ada, clock, 'inspection', {
      list: 'Cars',
      listHash: 'a'.repeat(64),
      when: 'periodic',
      of: `Car ${i + 1}`,
      looked: [{ item: 'wheels', ask: 'Wheels whole', result: 'reject', note: 'cracked', photo }],
    });
  const looked = await look(store, 'chain');
  const entries = looked.entries.slice(before);
  const photos = await photosFor(store, entries);
  return evidencePack({ looked: { ...looked, entries }, names: [], photos, wanted: {}, speech, made });
}

const photosIn = ({ sections }: Awaited<ReturnType<typeof packOf>>): string =>
  JSON.stringify(sections.find(({ title }) => title === 'Photos')?.blocks ?? 'no section');

describe('photos in a pack', () => {
  it('are printed with what they are of and the record that names them', async () => {
    const pack = await packOf([printable.hash], [printable]);
    const words = photosIn(pack);
    for (const part of ['Car 1', 'wheels, cracked', `photo ${printable.hash.slice(0, 8)}`])
      expect(words).toContain(part);
    const pdf = (await cardPdf((has) => packDocument(pack, 'a4', has))).toString('latin1');
    expect(pdf.match(/\/DCTDecode/g)).toHaveLength(1);
  });

  it('that cannot be printed, or are not there, are said', async () => {
    expect([canPrint(picture()), canPrint(jpeg({})), canPrint(new Uint8Array())]).toEqual([
      true,
      false,
      false,
    ]);
    const words = photosIn(await packOf([unprintable.hash, 'f'.repeat(64)], [unprintable]));
    expect(words).toContain('cannot be printed; it is in the file inside');
    expect(words).toContain('the photo is not there');
    expect(words).not.toContain('"jpeg"');
  });

  it('that were altered are not shown as what they were', async () => {
    const other = { ...printable, hash: 'e'.repeat(64) };
    const words = photosIn(await packOf([other.hash], [other]));
    expect([words.includes('was altered'), words.includes('"jpeg"')]).toEqual([true, false]);
  });

  it('are no more than a reader turns over: the newest', async () => {
    const words = photosIn(await packOf(Array(MOST_PICTURES + 2).fill(printable.hash), [printable]));
    expect(words.match(/"jpeg"/g)).toHaveLength(MOST_PICTURES);
    expect(words).toContain('2 older photos are not printed');
    expect([words.includes('Car 2,'), words.includes('Car 3,')]).toEqual([false, true]);
  });

  it('of which there are none take no page', async () => {
    expect(photosIn(await packOf([], []))).toBe('"no section"');
  });
});
