/**
 * An outing as text that another phone takes: as a code, `HEEDWAY:2:` and its bytes in Base45 (RFC 9285), whose letters
 * a square code packs tightest; what one does not hold is split, `HEEDWAY:2.1/3:` …, to be read in any order; or as a
 * link, with the same bytes in its fragment, which no server sees.
 *
 * Codes of before, `HEEDWAY:1:` with a deflated outing, are read as ever.
 */
import { packed, unpacked } from './code/pack.ts';

const FIRST_PREFIX = 'HEEDWAY:1:';
const CODE_PREFIX = 'HEEDWAY:2:';
const PART = /^HEEDWAY:2\.([1-9])\/([2-9]):/;

/** Letters in one square: version 20 at the lowest correction, which a phone still reads from a card of A5. */
export const MOST_QR_LETTERS = 1249;
/** Squares, at the most, that a card has room for. */
const MOST_CODES = 4;

/** Letters of a code that somebody may paste: several times what squares hold. */
const MOST_LETTERS = 20_000;
/** Bytes of an outing in a code: more is no outing, however small it was packed. */
const MOST_BYTES = 1024 * 1024;

const letters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

function base45(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length;
    const n = pair ? bytes[i] * 256 + bytes[i + 1] : bytes[i];
    text += letters[n % 45] + letters[Math.floor(n / 45) % 45] + (pair ? letters[Math.floor(n / 2025)] : '');
  }
  return text;
}

function fromBase45(text: string): Uint8Array | undefined {
  const digits = Array.from(text, (c) => letters.indexOf(c));
  if (digits.includes(-1) || digits.length % 3 === 1) return undefined;
  const bytes: number[] = [];
  for (let i = 0; i < digits.length; i += 3) {
    const n = digits[i] + digits[i + 1] * 45 + (digits[i + 2] ?? 0) * 2025;
    if (i + 2 < digits.length) {
      if (n > 65_535) return undefined;
      bytes.push(n >> 8, n & 255);
    } else if (n > 255) return undefined;
    else bytes.push(n);
  }
  return Uint8Array.from(bytes);
}

/** No code ends with a space, which goes lost on the way: a nought behind the end says nothing. */
function written(bytes: Uint8Array): string {
  const text = base45(bytes);
  return text.endsWith(' ') ? written(Uint8Array.from([...bytes, 0])) : text;
}

/** An outing that can be handed over. */
export interface Handed {
  /** One text for each square code; none where they would be too many. */
  readonly codes: readonly string[];
  /** What follows the address of the page in a link. */
  readonly fragment: string;
}

/** @param paper an outing, or one with what is tried on it, with all its parts in it; undefined: too large for it */
export function handed(paper: unknown): Handed | undefined {
  const bytes = packed(paper);
  // What does not come back the same is handed to nobody.
  if (!bytes || JSON.stringify(unpacked(bytes)) !== JSON.stringify(paper)) return undefined;
  return { codes: codesOf(bytes), fragment: `${FRAGMENT}${base64url(bytes)}` };
}

/** What stands beside the codes. */
export function handedWords(handed: Handed | undefined): string {
  const count = handed?.codes.length ?? 0;
  if (count === 0) return 'This outing is too large for a code: pass on its file.';
  return count === 1
    ? 'The code carries this outing for another phone.'
    : `The ${count} codes together carry this outing for another phone, in any order.`;
}

function codesOf(bytes: Uint8Array): readonly string[] {
  const room = MOST_QR_LETTERS - CODE_PREFIX.length - 6;
  const most = Math.floor(room / 3) * 2;
  const count = Math.ceil(bytes.length / most);
  if (count === 1) return [CODE_PREFIX + written(bytes)];
  if (count > MOST_CODES) return [];
  // Even, so that three letters stand for two bytes to the end of all but the last.
  const each = 2 * Math.ceil(bytes.length / count / 2);
  return Array.from({ length: count }, (_, i) => {
    const part = bytes.subarray(i * each, (i + 1) * each);
    return `HEEDWAY:2.${i + 1}/${count}:${i + 1 < count ? base45(part) : written(part)}`;
  });
}

const FRAGMENT = 'code=';

function base64url(bytes: Uint8Array): string {
  const plain = btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join(''));
  return plain.replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

function fromBase64url(text: string): Uint8Array | undefined {
  try {
    const plain = atob(text.replace(/-/g, '+').replace(/_/g, '/'));
    return Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
  } catch {
    return undefined;
  }
}

type Found = Uint8Array | { readonly fault: string };

const NONE = 'This is no code of an outing: it begins with HEEDWAY: and is copied whole.';
const BROKEN = 'The code is broken: some of it is missing. Copy it again, whole.';

/** Whether a text looks like a code or a link with one. */
export const looksLikeCode = (text: string): boolean =>
  /^\s*HEEDWAY:\d/.test(text) || (/#code=[\w-]+\s*$/.test(text) && text.length < MOST_LETTERS);

/** The bytes of the outing in a code, in its parts in any order, or in a link; or why there are none. */
export async function outingIn(text: string): Promise<Found> {
  if (text.length > MOST_LETTERS)
    return {
      fault: `This is too long for a code: found ${text.length} letters; expected at most ${MOST_LETTERS}.`,
    };
  const link = /#code=([\w-]+)\s*$/.exec(text);
  if (link) return told(fromBase64url(link[1]));
  const codes = text
    .replace(/^\s+/, '')
    .split(/(?=HEEDWAY:\d)/)
    .map((code) => code.replace(/[\r\n]+$/, ''));
  const [first] = codes;
  if (PART.test(first)) return joined(codes);
  if (first.startsWith(FIRST_PREFIX)) return inflated(fromBase45(first.slice(FIRST_PREFIX.length)));
  if (!first.startsWith(CODE_PREFIX)) return { fault: NONE };
  return told(fromBase45(first.slice(CODE_PREFIX.length).trimEnd()));
}

function told(bytes: Uint8Array | undefined): Found {
  const paper = bytes && unpacked(bytes);
  return paper === undefined ? { fault: BROKEN } : new TextEncoder().encode(JSON.stringify(paper));
}

/** Which part of how many a code is; undefined where it is whole. */
export function partOf(code: string): { readonly part: number; readonly of: number } | undefined {
  const found = PART.exec(code.trimStart());
  return found ? { part: Number(found[1]), of: Number(found[2]) } : undefined;
}

function joined(codes: readonly string[]): Found {
  const of = partOf(codes[0])?.of ?? 0;
  const parts: (Uint8Array | undefined)[] = Array.from({ length: of });
  for (const code of codes) {
    const which = partOf(code);
    if (which?.of !== of || which.part > of) return { fault: 'These codes are of different outings.' };
    const text = code.replace(PART, '').trimEnd();
    // Spaces at its end may have gone lost on the way; no three letters are all spaces.
    const whole = which.part < of ? text.padEnd(3 * Math.ceil(text.length / 3)) : text;
    parts[which.part - 1] = fromBase45(whole);
    if (!parts[which.part - 1]) return { fault: BROKEN };
  }
  const lacking = parts.flatMap((part, i) => (part ? [] : [`${i + 1}`]));
  if (lacking.length > 0)
    return {
      fault: `This outing has ${of} codes, in any order: read ${lacking.join(' and ')} of ${of} as well.`,
    };
  return told(Uint8Array.from(parts.flatMap((part) => [...(part ?? [])])));
}

async function inflated(packed: Uint8Array | undefined): Promise<Found> {
  if (!packed) return { fault: BROKEN };
  const parts: Uint8Array[] = [];
  let size = 0;
  try {
    const bytes = new Blob([packed as BlobPart]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
    const reader = bytes.getReader();
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      size += next.value.length;
      if (size > MOST_BYTES) {
        await reader.cancel();
        return { fault: 'This code holds more than an outing: found over 1 MB in it; expected less.' };
      }
      parts.push(next.value);
    }
  } catch {
    return { fault: BROKEN };
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
