/**
 * An outing as one line of text, for a QR code or a paste: `HEEDWAY:1:` and the deflated bundle in Base45
 * (RFC 9285), whose letters a QR code packs tightest.
 */
export const CODE_PREFIX = 'HEEDWAY:1:';

/** Letters that the largest QR code holds at the lowest correction. */
export const MOST_QR_LETTERS = 4296;

/** Letters of a code that somebody may paste: several times what a QR code holds. */
const MOST_LETTERS = 20_000;
/** Bytes of an outing in a code: more is no outing, however small it was packed. */
const MOST_BYTES = 1024 * 1024;

const letters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

export function toCode(deflated: Uint8Array): string {
  let text = CODE_PREFIX;
  for (let i = 0; i < deflated.length; i += 2) {
    const pair = i + 1 < deflated.length;
    const n = pair ? deflated[i] * 256 + deflated[i + 1] : deflated[i];
    text += letters[n % 45] + letters[Math.floor(n / 45) % 45] + (pair ? letters[Math.floor(n / 2025)] : '');
  }
  return text;
}

/** The deflated bytes of a code; undefined where the text is no code of ours. */
export function fromCode(text: string): Uint8Array | undefined {
  if (text.length > MOST_LETTERS) return undefined;
  const clean = text.replace(/[\r\n]+$/, '').replace(/^\s+/, '');
  if (!clean.startsWith(CODE_PREFIX)) return undefined;
  const digits = Array.from(clean.slice(CODE_PREFIX.length), (c) => letters.indexOf(c));
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

/** The bytes of the outing in a code, or why there are none. */
export async function outingIn(code: string): Promise<Uint8Array | { readonly fault: string }> {
  if (code.length > MOST_LETTERS)
    return {
      fault: `This is too long for a code: found ${code.length} letters; expected at most ${MOST_LETTERS}.`,
    };
  const packed = fromCode(code);
  if (!packed)
    return { fault: 'This is no code of an outing: it begins with HEEDWAY:1: and is copied whole.' };
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
    return { fault: 'The code is broken: some of it is missing. Copy it again, whole.' };
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
