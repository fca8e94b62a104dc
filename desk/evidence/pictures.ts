/**
 * The photos of a pack as pictures: each with what it is of, and by which record. Every one of them is in the file inside as well, so
 * that no more are printed than a reader turns over.
 */
import { contentOf, standing } from '../../records/amended.ts';
import { sha256Of } from '../../records/hash.ts';
import { type Photo, toBase64 } from '../../records/photos.ts';
import type { Entry } from '../../records/record.ts';
import { shownTime } from '../../records/time.ts';
import { packWords } from '../../words/records/evidence.ts';
import { resultWords, shortHash } from '../../words/records/record.ts';
import { type Picture, type Section, text } from './blocks.ts';

/** So many are printed, the newest: a pack stays one that can be sent. */
export const MOST_PICTURES = 40;

/** Why it is not printed; undefined: it is. */
async function against({ hash, bytes }: Photo): Promise<string | undefined> {
  if ((await sha256Of(bytes)) !== hash) return packWords.photoAltered;
  return canPrint(bytes) ? undefined : packWords.photoUnread;
}

/** A JPEG (ITU-T T.81, annex B) of one or three colours of 8 bits with a size: what a PDF takes as it is, and PDF/A lets be. */
export function canPrint(bytes: Uint8Array): boolean {
  for (let at = 2; at + 10 <= bytes.length && bytes[at] === 0xff; ) {
    const marker = bytes[at + 1];
    if (marker === 0xc0 || marker === 0xc1 || marker === 0xc2) {
      const [high, low, wide, narrow] = bytes.subarray(at + 5, at + 9);
      return bytes[at + 4] === 8 && high + low > 0 && wide + narrow > 0 && [1, 3].includes(bytes[at + 9]);
    }
    if (marker === 0xda) return false;
    at += 2 + 256 * bytes[at + 2] + bytes[at + 3];
  }
  return false;
}

interface Shown {
  readonly hash: string;
  readonly words: string;
}

/** What an inspection says of each of its photos; what was said anew says its own. */
function shownIn(rows: readonly Entry[]): Shown[] {
  return standing(rows, 'inspection').flatMap((one) => {
    const said = contentOf(one, 'inspection');
    return (said?.looked ?? []).flatMap(({ photo, item, ask, note, result }) =>
      photo === undefined
        ? []
        : [
            {
              hash: photo,
              words: `${said?.of}, ${shownTime(one.first.body.said)}: ${resultWords[result]}: ${item}, ${note ?? ask} (record ${shortHash(one.first.row.hash)}, photo ${shortHash(photo)})`,
            },
          ],
    );
  });
}

/** @param rows of the pack, oldest first */
export async function pictures(photos: readonly Photo[], rows: readonly Entry[]): Promise<Section[]> {
  const named = shownIn(rows);
  if (named.length === 0) return [];
  const byHash = new Map(photos.map((photo) => [photo.hash, photo]));
  const shown: Picture[] = [];
  const not: string[] = [];
  for (const { hash, words } of named.slice(-MOST_PICTURES)) {
    const photo = byHash.get(hash);
    const why = photo ? await against(photo) : packWords.photoMissing;
    if (photo && why === undefined) shown.push({ jpeg: toBase64(photo.bytes), words });
    else not.push(`${words}: ${why}`);
  }
  const more = named.length - MOST_PICTURES;
  return [
    {
      title: packWords.photos,
      blocks: [
        ...(more > 0 ? [text(packWords.morePhotos(more))] : []),
        ...(shown.length === 0 ? [] : [{ is: 'pictures', pictures: shown } as const]),
        ...not.map((words) => text(words)),
      ],
    },
  ];
}
