/** SHA-256 and Ed25519 by Node itself: the same answers as WebCrypto's, with less about each. */
import { createPublicKey, hash, type KeyObject, verify } from 'node:crypto';
import { fromHex, type Signature } from '../hash.ts';
import type { SignatureCheck } from '../verify.ts';

export const sha256 = (text: string): string => hash('sha256', text, 'hex');

/** What stands before the 32 octets of an Ed25519 key (RFC 8410). */
const BEFORE = Buffer.from('302a300506032b6570032100', 'hex');

/** Public keys once read, by name; undefined: this machine has no Ed25519, or it is no key. */
const read = new Map<string, KeyObject | undefined>();

function keyOf(author: string, raw: Uint8Array): KeyObject | undefined {
  if (!read.has(author)) read.set(author, keyIn(raw));
  return read.get(author);
}

function keyIn(raw: Uint8Array): KeyObject | undefined {
  try {
    return createPublicKey({ key: Buffer.concat([BEFORE, raw]), format: 'der', type: 'spki' });
  } catch {
    return undefined;
  }
}

export const checkSignature: SignatureCheck = (text, signature, author) => {
  const raw = fromHex(author, 32);
  const bytes = fromHex(signature, 64);
  if (!raw || !bytes) return Promise.resolve('wrong');
  const key = keyOf(author, raw);
  if (!key) return Promise.resolve('unable');
  // On the machine's other processors, while the next are read.
  return new Promise<Signature>((done, failed) => {
    verify(null, Buffer.from(text), key, bytes, (fault, right) =>
      fault ? failed(fault) : done(right ? 'right' : 'wrong'),
    );
  });
};
