/** One measurer for the tests of sums against outside figures and for the accuracy page. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { answerSum } from '../../desk/sums.ts';
import { findSum } from '../../engine/sums/register.ts';
import { parseQuantity } from '../../units/index.ts';

export interface TruthCase {
  readonly sum: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly result: string;
  readonly expected: number;
  readonly unit: string;
  /** In the unit of the expected figure; or a share of it; or decimals after rounding to which it must agree exactly. */
  readonly tolerance?: number;
  readonly relative?: number;
  readonly roundsTo?: number;
}

export interface TruthSource {
  readonly folder: string;
  readonly topic: string;
  readonly source: string;
  readonly grade: string;
  readonly cases: readonly TruthCase[];
}

const root = new URL('../../tests/truth/sums/', import.meta.url).pathname;

export function truthSources(): TruthSource[] {
  return readdirSync(root)
    .filter((folder) => existsSync(join(root, folder, 'cases.json')))
    .sort()
    .map((folder) => ({ folder, ...JSON.parse(readFileSync(join(root, folder, 'cases.json'), 'utf8')) }));
}

export const hasSourcePage = (folder: string): boolean => existsSync(join(root, folder, 'SOURCE.md'));

export interface Measured {
  readonly computed: number;
  /** |computed − expected| in the printed unit. */
  readonly error: number;
  /** Error ÷ what the source's print allows: at most 1 is good. */
  readonly used: number;
}

/** Evaluate one case through the same door that people use, and measure its error in the printed unit. */
export function measure(truth: TruthCase): Measured {
  const reply = answerSum(truth.sum, truth.inputs, 'metric');
  if (!reply.ok) throw new Error(`${truth.sum}: ${JSON.stringify(reply.faults)}`);
  const si = reply.answer.results.find((r) => r.symbol === truth.result)?.si;
  if (si === undefined) throw new Error(`${truth.sum} has no result ${truth.result}`);
  const computed = si / unitOf(truth);
  const error = Math.abs(computed - truth.expected);
  if (truth.roundsTo !== undefined) {
    const scale = 10 ** truth.roundsTo;
    return { computed, error, used: Math.round(computed * scale) / scale === truth.expected ? 0 : 2 };
  }
  const allowed = truth.tolerance ?? (truth.relative ?? 0) * Math.abs(truth.expected);
  return {
    computed,
    error,
    used: allowed > 0 ? error / allowed : error === 0 ? 0 : Number.POSITIVE_INFINITY,
  };
}

function unitOf({ sum, result, unit }: TruthCase): number {
  const kind = findSum(sum)?.results.find((r) => r.symbol === result)?.kind;
  if (unit === '' || kind === undefined) return 1;
  const one = parseQuantity(`1 ${unit}`, kind);
  if (!one.ok) throw new Error(one.problem.message);
  return one.si;
}
