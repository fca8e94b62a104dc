/** Outside figures of sums, as the folders under tests/truth/sums hold them, and what the sums give for each. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { answerSum } from '../../desk/sums.ts';
import { findSum } from '../../engine/sums/register.ts';
import type { Grade } from '../../scripts/pages/accuracy.ts';
import { parseQuantity } from '../../units/index.ts';

export interface TruthCase {
  readonly sum: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly result: string;
  readonly expected: number;
  readonly unit: string;
  /** In the unit of the expected figure; or a share of it; or the decimals that are printed. */
  readonly tolerance?: number;
  readonly relative?: number;
  readonly roundsTo?: number;
}

export interface TruthSource {
  readonly folder: string;
  readonly topic: string;
  readonly source: string;
  readonly grade: Grade;
  readonly cases: readonly TruthCase[];
}

const root = new URL('../truth/sums/', import.meta.url).pathname;

export function truthSources(): TruthSource[] {
  return readdirSync(root)
    .filter((folder) => existsSync(join(root, folder, 'cases.json')))
    .sort()
    .map((folder) => ({ folder, ...JSON.parse(readFileSync(join(root, folder, 'cases.json'), 'utf8')) }));
}

/** What the sum gives through the same door that people use, in the printed unit. */
export function computed(truth: TruthCase): number {
  const reply = answerSum(truth.sum, truth.inputs, 'metric');
  if (!reply.ok) throw new Error(`${truth.sum}: ${JSON.stringify(reply.faults)}`);
  const si = reply.answer.results.find((r) => r.symbol === truth.result)?.si;
  if (si === undefined) throw new Error(`${truth.sum} has no result ${truth.result}`);
  return si / unitOf(truth);
}

/** What the source's print allows, in its unit. */
export const allowed = ({ tolerance, relative, roundsTo, expected }: TruthCase): number =>
  roundsTo === undefined ? (tolerance ?? (relative ?? 0) * Math.abs(expected)) : 0.5 * 10 ** -roundsTo;

function unitOf({ sum, result, unit }: TruthCase): number {
  const kind = findSum(sum)?.results.find((r) => r.symbol === result)?.kind;
  if (unit === '' || kind === undefined) return 1;
  const one = parseQuantity(`1 ${unit}`, kind);
  if (!one.ok) throw new Error(one.problem.message);
  return one.si;
}
