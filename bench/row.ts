/** A line of the benchmark table: a time always beside a reference of the same run and both errors. */
export interface BenchRow {
  readonly work: string;
  readonly ours: string;
  readonly against: string;
  readonly theirs: string;
  /** Theirs ÷ ours. */
  readonly ratio: number;
  readonly ourError: string;
  readonly theirError: string;
}

/** Milliseconds of the quickest of several runs, each long enough to be timed. */
export function quickest(work: () => void, runs = 5): number {
  work();
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

export const us = (ms: number, count: number): string => `${((ms * 1000) / count).toFixed(2)} µs`;
export const ms = (t: number): string => `${t.toFixed(1)} ms`;
