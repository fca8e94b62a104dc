/** The platform's SHA-256 and Ed25519, through our own doors, give the published octets. */
import { expect, it } from 'vitest';
import { bytesOf } from '../../../../records/canonical.ts';
import { checkSignature as check, fromHex, sha256, signed } from '../../../../records/hash.ts';
import { printedIn } from '../../../support/measured.ts';

const printed = printedIn(import.meta.url, 'B');
const checkSignature = (text: string, signature: string, key: string) => check(bytesOf(text), signature, key);
const wrong = (ours: string, expected: string): number => (ours === expected ? 0 : 1);

it('SHA-256 of abc', async () => {
  const ours = await sha256('abc');
  const expected = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
  expect(ours).toBe(expected);
  printed.figure('SHA-256 that differ', wrong(ours, expected), 0, 0, 'hashes');
});

const vectors = [
  {
    secret: '9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60',
    key: 'd75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a',
    text: '',
    signature:
      'e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b',
  },
  {
    secret: '4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb',
    key: '3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c',
    text: '\u0072',
    signature:
      '92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00',
  },
] as const;

/** A secret key as PKCS #8 (RFC 8410): the same sixteen octets before each. */
const pkcs8 = (secret: string): BufferSource =>
  fromHex(`302e020100300506032b657004220420${secret}`, 48) as BufferSource;

it.each(vectors)('Ed25519 of "$text"', async ({ secret, key, text, signature }) => {
  const sign = await crypto.subtle.importKey('pkcs8', pkcs8(secret), { name: 'Ed25519' }, false, ['sign']);
  const ours = await signed(text, sign);
  expect(ours).toBe(signature);
  printed.figure(`signature of "${text}" that differs`, wrong(ours, signature), 0, 0, 'signatures');
  expect(await checkSignature(text, signature, key)).toBe('right');
});

it('another text, another signature, another key: wrong', async () => {
  const [one, two] = vectors;
  expect(await checkSignature('x', one.signature, one.key)).toBe('wrong');
  expect(await checkSignature('', two.signature, one.key)).toBe('wrong');
  expect(await checkSignature('', one.signature, two.key)).toBe('wrong');
  expect(await checkSignature('', 'no signature', one.key)).toBe('wrong');
});
