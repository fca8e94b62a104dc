/** The greatest margin at which everybody can be seated, proven by a mixed-integer solver. */
import { type PatternTable, unitCounts } from './patterns.ts';
import { choose, kindColumns, type Rows } from './program.ts';
import type { Solve } from './types.ts';

/** Margin within which seatings of rounded masses count as equal. */
export const ROUNDED_AWAY = 0.01;

/**
 * How far below the bound to ask, in turn. The best lies close below it as a rule, and the fewer patterns
 * reach a margin the sooner the solver is done with them.
 */
const DROPS = [0.0025, 0.005, 0.01, 0.02, 0.04, 0.08, 0.16, Infinity];

/** Rounded masses may beat the bound by what rounding adds. */
const OVER = 0.02;

/** Asks the solver for a seating with margins from this index up; index of the worst margin that it chose. */
type Fits = (from: number) => number | undefined | 'failed';

/**
 * Halves the margins there are between one that fits and one that the solver has shown not to; with rounded
 * masses only as finely as rounding tells margins apart.
 *
 * @param bound what no seating can beat; it says where to ask first, and a wrong one costs only time
 * @returns undefined: not everybody can be seated; 'failed': the solver gave up
 */
export function bestThreshold(
  table: PatternTable,
  bound: number,
  solve: Solve,
): number | undefined | 'failed' {
  const margins = [...new Set(table.carKinds.flatMap((k) => k.patterns.map((p) => p.margin)))].sort(
    (a, b) => a - b,
  );
  const rows: Rows = { cars: table.carKinds.map((k) => k.cars.length), units: unitCounts(table) };
  const fits: Fits = (from) => {
    const found = choose(kindColumns(table, margins[from]), rows, solve);
    return found === undefined || found === 'failed' ? found : worstOf(table, found, margins);
  };
  const bracket = askBelow(bound, margins, fits);
  if (bracket === undefined || bracket === 'failed') return bracket;
  let { low, high } = bracket;
  const hardly = indexFrom(margins, bound + OVER);
  for (;;) {
    // Above the bound nothing is hoped for: asked only when all below fits.
    const top = low < hardly ? Math.min(hardly, high) : high;
    const alike = table.grain > 0 && (margins[top] ?? Infinity) - margins[low] <= ROUNDED_AWAY / 8;
    if (alike || high - low <= 1) return margins[low];
    const from = top - low > 1 ? (low + top) >> 1 : top;
    const found = fits(from);
    if (found === 'failed') return 'failed';
    if (found === undefined) high = from;
    else low = found;
  }
}

/** Ever further below the bound until everybody can be seated. */
function askBelow(
  bound: number,
  margins: readonly number[],
  fits: Fits,
): { low: number; high: number } | undefined | 'failed' {
  let high = margins.length;
  for (const drop of DROPS) {
    const from = indexFrom(margins, bound - drop);
    if (from >= high) continue;
    const low = fits(from);
    if (low === 'failed') return 'failed';
    if (low !== undefined) return { low, high };
    high = from;
  }
  return undefined;
}

/** First index of growing margins that reaches one. */
function indexFrom(margins: readonly number[], least: number): number {
  const found = margins.findIndex((m) => m >= least);
  return found < 0 ? margins.length : found;
}

/** Index of the least margin among chosen columns: often far above the threshold asked for. */
function worstOf(
  table: PatternTable,
  chosen: ReadonlyMap<string, number>,
  margins: readonly number[],
): number {
  let least = Infinity;
  table.carKinds.forEach(({ patterns }, i) => {
    patterns.forEach((p, k) => {
      if (chosen.has(`x${i}_${k}`)) least = Math.min(least, p.margin);
    });
  });
  return margins.indexOf(least);
}
