/** SHA-256 and Ed25519 by the platform's own WebCrypto, which Node and every browser on https or loopback have. */
import { bytesOf } from './canonical.ts';

/** Without it nothing can be kept: a page of plain http from another machine has none. */
export const canHash = (): boolean => globalThis.crypto?.subtle !== undefined;

const hexes = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

export function hex(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += hexes[byte];
  return text;
}

/** Of hexadecimal text; undefined: it is none, or of another length. */
export function fromHex(text: string, length: number): Uint8Array<ArrayBuffer> | undefined {
  if (text.length !== 2 * length || !/^[0-9a-f]*$/.test(text)) return undefined;
  const bytes = new Uint8Array(length);
  for (let i = 0; i < length; i++) bytes[i] = 16 * digitAt(text, 2 * i) + digitAt(text, 2 * i + 1);
  return bytes;
}

/** Digits come before letters. */
const digitAt = (text: string, i: number): number => {
  const code = text.charCodeAt(i);
  return code < 97 ? code - 48 : code - 87;
};

/** SHA-256 (FIPS 180-4) of bytes, in hexadecimal. */
export const sha256Of = async (bytes: Uint8Array<ArrayBuffer>): Promise<string> =>
  hex(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)));

/** Of a text in UTF-8. */
export const sha256 = (text: string): Promise<string> => sha256Of(bytesOf(text));

const ED25519 = { name: 'Ed25519' };

export interface Keys {
  /** The public key, 32 bytes in hexadecimal. */
  readonly name: string;
  readonly sign: CryptoKey;
}

/** A new pair; undefined where the platform has no Ed25519. @param kept whether it can be written out again */
export async function newKeys(kept: boolean): Promise<Keys | undefined> {
  try {
    const pair = (await crypto.subtle.generateKey(ED25519, kept, ['sign', 'verify'])) as CryptoKeyPair;
    const raw = await crypto.subtle.exportKey('raw', pair.publicKey);
    return { name: hex(new Uint8Array(raw)), sign: pair.privateKey };
  } catch {
    return undefined;
  }
}

/** Signature (RFC 8032) of a text, 64 bytes in hexadecimal. */
export const signed = async (text: string, key: CryptoKey): Promise<string> =>
  hex(new Uint8Array(await crypto.subtle.sign(ED25519, key, bytesOf(text))));

/** Public keys once read, by name: a store has few authors. */
const read = new Map<string, Promise<CryptoKey | undefined>>();

/** `unable`: this platform has no Ed25519, and cannot tell. */
export type Signature = 'right' | 'wrong' | 'unable';

export async function checkSignature(
  text: Uint8Array<ArrayBuffer>,
  signature: string,
  author: string,
): Promise<Signature> {
  const raw = fromHex(author, 32);
  const bytes = fromHex(signature, 64);
  if (!raw || !bytes) return 'wrong';
  let key = read.get(author);
  if (!key) {
    key = crypto.subtle.importKey('raw', raw, ED25519, false, ['verify']).catch(() => undefined);
    read.set(author, key);
  }
  const known = await key;
  if (!known) return 'unable';
  return (await crypto.subtle.verify(ED25519, known, bytes, text)) ? 'right' : 'wrong';
}
