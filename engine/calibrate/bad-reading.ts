/**
 * One bad reading, found and said.
 *
 * The rule: where some reading lies more than four of its errors from the fit, each is left out in turn. The one without
 * which the rest agree best is bad if it lies more than four errors from what the others say (errors as stated, or as the
 * others scatter if that is more), if the others then agree, and if at least two of them are more than the fit uses up. More
 * than one, or too few others to tell: nothing is fitted.
 */
import type { Reading } from './fit.ts';
import { type Refusal, refuse } from './refusal.ts';

/** A found minimum and what the readings say to it. */
export interface Judged {
  readonly x: Float64Array;
  readonly jacobian: Float64Array;
  readonly residuals: Float64Array;
  /** What each reading should be, those left out too. */
  readonly told: Float64Array;
  readonly taken: readonly number[];
  readonly leverage: readonly number[];
  /** Σ of squares of the readings taken, in their errors. */
  readonly sum: number;
  /** Readings less what they were used up for. */
  readonly freedom: number;
}

/** What looks like one unit read for another. */
export type UnitSlip =
  | 'tenfold'
  | 'ft-m'
  | 'mph-m/s'
  | 'km/h-m/s'
  | 'mph-km/h'
  | 'min-s'
  | 'lb-kg'
  | 'lb-N'
  | 'kg-N'
  | 'psi-bar';

export interface BadReading {
  /** From 0. */
  readonly index: number;
  readonly found: number;
  readonly expected: number;
  readonly slip?: UnitSlip;
}

const TOO_FAR = 4;
const OTHERS = 2;
/** Leverages are sums of rounded figures. */
const HAIR = 1e-6;

const ratios: readonly (readonly [UnitSlip, number])[] = [
  ['tenfold', 10],
  ['ft-m', 3.28084],
  ['mph-m/s', 2.23694],
  ['km/h-m/s', 3.6],
  ['mph-km/h', 1.609344],
  ['min-s', 60],
  ['lb-kg', 2.20462],
  ['lb-N', 4.44822],
  ['kg-N', 9.80665],
  ['psi-bar', 14.5038],
];

/** Within 4 %; tenfold and kilograms read for newtons lie so near each other that the nearer counts. */
export function slipOf(found: number, expected: number): UnitSlip | undefined {
  if (!(found > 0 && expected > 0)) return undefined;
  const off = Math.abs(Math.log(found / expected));
  const near = ratios
    .map(([slip, ratio]) => ({ slip, miss: Math.abs(off - Math.log(ratio)) }))
    .sort((a, b) => a.miss - b.miss)[0];
  return near.miss < 0.04 ? near.slip : undefined;
}

export function badReading(
  all: Judged,
  readings: readonly Reading[],
  leavingOut: (index: number) => Judged | Refusal,
): { readonly reading: BadReading; readonly without: Judged } | Refusal | undefined {
  if (farthest(all).miss <= TOO_FAR) return undefined;
  const tried = all.taken
    .map((index) => ({ index, without: leavingOut(index) }))
    .filter((t): t is { index: number; without: Judged } => !('code' in t.without))
    .sort((a, b) => a.without.sum - b.without.sum);
  const best = tried[0];
  if (!best) return refuse('no-fit', {});
  const said = sayOf(best.index, readings[best.index], best.without.told[best.index]);
  const scatter = Math.sqrt(Math.max(1, best.without.sum / Math.max(best.without.freedom, 1e-9)));
  const off = Math.abs(said.found - said.expected) / readings[best.index].error;
  const enough = best.without.freedom >= OTHERS - HAIR;
  const alone = farthest(best.without).miss <= TOO_FAR;
  // No one reading stands out: they scatter, and are judged by how much.
  if (off <= TOO_FAR * scatter) return undefined;
  if (enough && alone) return { reading: said, without: best.without };
  const { index, found, expected, slip } = said;
  return refuse('readings-disagree', { reading: index + 1, found, expected, ...(slip ? { slip } : {}) });
}

function farthest({ residuals, leverage }: Judged): { at: number; miss: number } {
  let [at, miss] = [0, 0];
  leverage.forEach((h, i) => {
    const own = Math.abs(residuals[i]) / Math.sqrt(Math.max(1 - h, 1e-6));
    if (own > miss) [at, miss] = [i, own];
  });
  return { at, miss };
}

function sayOf(index: number, { value }: Reading, expected: number): BadReading {
  const slip = slipOf(value, expected);
  return { index, found: value, expected, ...(slip ? { slip } : {}) };
}
