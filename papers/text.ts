/**
 * Bytes of a file to text: UTF-8 with or without byte order mark, UTF-16 with one. Anything else, and
 * anything too large to be one of our files, is a problem in words.
 */
import type { Trouble } from './problem.ts';

/** A line of 10,000 surveyed points takes about 0.6 MB; a larger file is not one of ours. */
export const LARGEST_FILE = 8 * 1024 * 1024;

/** A receiver writes some sixty letters for a point: 200,000 of them take 13 MB. */
export const LARGEST_SURVEY = 32 * 1024 * 1024;

export const isGpx = (file: string): boolean => /\.gpx$/i.test(file);

/** Bytes that a survey of this name may have. */
export const mostBytes = (file: string): number => (isGpx(file) ? LARGEST_SURVEY : LARGEST_FILE);

export type Decoded =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly trouble: Trouble };

const trouble = (found: string, expected: string): Decoded => ({
  ok: false,
  trouble: { path: [], found, expected },
});

/** @param most bytes that a file of the kind has */
export function decodeText(content: Uint8Array | string, most = LARGEST_FILE): Decoded {
  const size = typeof content === 'string' ? content.length : content.byteLength;
  if (size > most) {
    const megabytes = (size / 1024 / 1024).toFixed(1);
    return trouble(`a file of ${megabytes} MB`, `at most ${most / 1024 / 1024} MB`);
  }
  if (typeof content === 'string') return { ok: true, text: content.replace(/^\uFEFF/, '') };
  try {
    return { ok: true, text: new TextDecoder(encodingOf(content), { fatal: true }).decode(content) };
  } catch {
    return trouble('bytes that are not text', 'a text file in UTF-8 (save it as "UTF-8")');
  }
}

/** By byte order mark; without one, by the zero byte that UTF-16 puts beside every plain letter. */
function encodingOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first !== 0 && second === 0) return 'utf-16le';
  if (first === 0 && second !== 0 && second !== undefined) return 'utf-16be';
  return 'utf-8';
}
