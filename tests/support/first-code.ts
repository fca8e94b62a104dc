/** A code as it was first made, `HEEDWAY:1:`: it lies on paper and is still read. */
import { deflateRawSync } from 'node:zlib';

const letters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

export function firstCode(json: string): string {
  const bytes = deflateRawSync(json, { level: 9 });
  let text = 'HEEDWAY:1:';
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length;
    const n = pair ? bytes[i] * 256 + bytes[i + 1] : bytes[i];
    text += letters[n % 45] + letters[Math.floor(n / 45) % 45] + (pair ? letters[Math.floor(n / 2025)] : '');
  }
  return text;
}
