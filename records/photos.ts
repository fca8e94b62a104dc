/**
 * Photos that records name by their SHA-256 and that stand beside them: small JPEGs without what a camera writes about place,
 * time and itself. A record is whole without its photo's bytes; an altered or a missing photo is found by the hash.
 */
import { contentOf, standing } from './amended.ts';
import { sha256Of } from './hash.ts';
import type { Entry } from './record.ts';

export interface Photo {
  /** SHA-256 of the bytes. */
  readonly hash: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** One is no larger, bytes: a hundred of them go into a file that a phone still sends. */
export const MOST_BYTES = 256 * 1024;

const [START, SCAN, COMMENT] = [0xd8, 0xda, 0xfe];
/** Segments that programs fill: the first (JFIF) and the fourteenth (how colours are kept) belong to the picture. */
const isTold = (marker: number): boolean =>
  marker === COMMENT || (marker > 0xe0 && marker <= 0xef && marker !== 0xee);

/** The picture alone, without places, times and remarks; undefined: it is no JPEG (ITU-T T.81, annex B). */
export function bareJpeg(bytes: Uint8Array): Uint8Array<ArrayBuffer> | undefined {
  if (bytes.length < 4 || bytes[0] !== 0xff || bytes[1] !== START) return undefined;
  const parts: Uint8Array[] = [bytes.subarray(0, 2)];
  for (let at = 2; at + 4 <= bytes.length; ) {
    const marker = bytes[at + 1];
    if (bytes[at] !== 0xff || marker === 0xff) return undefined;
    // From the scan on there is nothing but picture.
    if (marker === SCAN) return joined([...parts, bytes.subarray(at)]);
    const length = 2 + 256 * bytes[at + 2] + bytes[at + 3];
    if (at + length > bytes.length) return undefined;
    if (!isTold(marker)) parts.push(bytes.subarray(at, at + length));
    at += length;
  }
  return undefined;
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** Why it cannot be kept, in words; else the photo. */
export async function photoOf(bytes: Uint8Array): Promise<Photo | string> {
  const bare = bareJpeg(bytes);
  if (!bare) return 'found no JPEG; expected a photo as .jpg';
  if (bare.length > MOST_BYTES)
    return `found ${Math.ceil(bare.length / 1024)} kB; expected a photo of at most ${MOST_BYTES / 1024} kB: make it smaller first`;
  return { hash: await sha256Of(bare), bytes: bare };
}

/** What records name, each photo with the records that name it; what was said anew names its own. */
export function photosNamed(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  const named = new Map<string, Entry[]>();
  for (const { first, amendments } of standing(entries, 'inspection'))
    for (const entry of [first, ...amendments]) {
      // Most name none, and are not read for it.
      if (!entry.row.text.includes('"photo":')) continue;
      const said = contentOf({ first, amendments, content: entry.body.content }, 'inspection');
      for (const { photo } of said?.looked ?? [])
        if (photo !== undefined) named.set(photo, [...(named.get(photo) ?? []), entry]);
    }
  return named;
}

export type PhotoFault =
  /** Its bytes are not those whose hash a record names. */
  | { readonly what: 'photo-altered'; readonly hash: string; readonly namedBy: string }
  /** A record names it, and it is not there. */
  | { readonly what: 'photo-missing'; readonly hash: string; readonly namedBy: string };

/** @param read bytes of a photo; undefined: it is not there */
export async function photoFaults(
  entries: readonly Entry[],
  read: (hash: string) => Promise<Uint8Array<ArrayBuffer> | undefined>,
): Promise<PhotoFault[]> {
  const faults: PhotoFault[] = [];
  for (const [hash, [{ row }]] of photosNamed(entries)) {
    const bytes = await read(hash);
    const namedBy = row.hash;
    if (!bytes) faults.push({ what: 'photo-missing', hash, namedBy });
    else if ((await sha256Of(bytes)) !== hash) faults.push({ what: 'photo-altered', hash, namedBy });
  }
  return faults;
}

/** Base64 (RFC 4648), as a line of a file has it. */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x2000)
    text += String.fromCharCode(...bytes.subarray(at, at + 0x2000));
  return btoa(text);
}

/** Undefined: it is none, or not as it is written here. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    return toBase64(bytes) === text ? bytes : undefined;
  } catch {
    return undefined;
  }
}
