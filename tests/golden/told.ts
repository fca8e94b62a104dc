/**
 * One line for each answer: its word, a hash of all that is told (as JSON), and what was found. A change of any
 * figure changes the hash; what was found says where to look. Runs in a bundle (tests/support/bundled.ts).
 */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { firstAnswer, told } from '../../engine/answer/answer.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import { countCars } from '../../engine/answer/counts.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import { readOuting } from '../../papers/index.ts';
import { dressed } from '../support/dressed-outings.ts';

/** Figures are told to six digits: sine and root may differ in the last bit between machines. */
const DIGITS = 6;

const plain = (_key: string, value: unknown): unknown => {
  if (typeof value === 'number')
    return Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : `${value}`;
  return ArrayBuffer.isView(value) ? Array.from(value as Float64Array, (v) => plain('', v)) : value;
};

/** The zones follow from the speed map, which is hashed, by laws of their own (tests/laws/zones.test.ts). */
export const hashOf = ({ driven: _, ...answer }: Answer): string =>
  createHash('sha256').update(JSON.stringify(answer, plain)).digest('hex').slice(0, 16);

const letter = { forbids: 'F', unknown: 'U', limits: 'L', notes: 'n', assumed: 'a' } as const;

function found({ findings }: Answer): string {
  const counts = new Map<string, number>();
  for (const { severity, code } of findings) {
    const key = `${letter[severity]}:${code}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts].map(([key, n]) => (n === 1 ? key : `${key}×${n}`)).join(' ');
}

const line = (name: string, answer: Answer): string =>
  `${name.padEnd(20)} ${answer.verdict.padEnd(7)} ${hashOf(answer)} ${found(answer)}`;

/** An example's answer as the command line gives it. @param path of its file */
export async function exampleLine(name: string, path: string): Promise<string> {
  const load = (other: string): Promise<Uint8Array> => readFile(other);
  const read = await readOuting({ path: resolve(path), content: await readFile(path) }, load);
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.problems)}`);
  return line(name, answerOuting(read.value, { remedies: false }));
}

/** A random outing's answer with few samples and a coarse grid: it is to show changes, not to be exact. */
export function randomLine(seed: number): string {
  const inquiry = inquire(dressed(seed), { step: 1, samples: 40, couplerRuns: 3 });
  // Counts are dear, and shared code besides: of every tenth.
  const cars = seed % 10 === 0 ? countCars(inquiry) : [];
  return line(`random ${seed}`, told(inquiry, { ...firstAnswer(inquiry), cars }));
}
