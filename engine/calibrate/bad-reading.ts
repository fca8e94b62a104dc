/**
 * One bad reading, found and said.
 *
 * The rule: where some reading lies more than four of its errors from the fit, each of the farthest six is left out in turn. The one without
 * which the rest agree best is bad if it lies more than four errors from what the others say (errors as stated, or as the
 * others scatter if that is more), if the others then agree, and if at least two of them are more than the fit uses up. More
 * than one, or too few others to tell: nothing is fitted.
 */
import type { Kind } from '../base/quantity.ts';
import type { Compared, Fitting, Values } from './fit.ts';
import { type Refusal, refuse } from './refusal.ts';

/** A found minimum and what the readings say to it. */
export interface Judged {
  readonly x: Float64Array;
  readonly values: Values;
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

export interface BadReading extends Compared {
  /** From 0. */
  readonly index: number;
  readonly slip?: UnitSlip;
}

const TOO_FAR = 4;
const OTHERS = 2;
const SUSPECTS = 6;
/** Leverages are sums of rounded figures. */
const HAIR = 1e-6;

const ratios: readonly (readonly [UnitSlip, number, Kind?])[] = [
  ['tenfold', 10],
  ['ft-m', 3.28084, 'length'],
  ['mph-m/s', 2.23694, 'speed'],
  ['km/h-m/s', 3.6, 'speed'],
  ['mph-km/h', 1.609344, 'speed'],
  ['min-s', 60, 'time'],
  ['lb-kg', 2.20462, 'mass'],
  ['lb-N', 4.44822, 'force'],
  ['kg-N', 9.80665, 'force'],
  ['psi-bar', 14.5038, 'gaugePressure'],
];
/** So near one of them, a share of it, a reading looks like a slip. */
const LIKE = 0.12;

/** The unit that may have been read for another; the nearest counts. */
export function slipOf({ found, expected, kind }: Compared): UnitSlip | undefined {
  if (!(found > 0 && expected > 0)) return undefined;
  const off = Math.abs(Math.log(found / expected));
  const near = ratios
    .filter(([, , of]) => of === undefined || of === kind)
    .map(([slip, ratio]) => ({ slip, miss: Math.abs(off - Math.log(ratio)) }))
    .sort((a, b) => a.miss - b.miss)[0];
  return near.miss < LIKE ? near.slip : undefined;
}

export function badReading(
  all: Judged,
  fitting: Fitting,
  leavingOut: (index: number) => Judged | Refusal,
): { readonly reading: BadReading; readonly without: Judged } | Refusal | undefined {
  const far = misses(all);
  if (far[0].miss <= TOO_FAR) return undefined;
  const tried = far
    .slice(0, SUSPECTS)
    .map(({ index }) => ({ index, without: leavingOut(index) }))
    .filter((t): t is { index: number; without: Judged } => !('code' in t.without))
    .sort((a, b) => a.without.sum - b.without.sum);
  const best = tried[0];
  if (!best) return refuse('no-fit', {});
  const said = sayOf(best.index, fitting, best.without);
  const reading = fitting.readings[best.index];
  const scatter = Math.sqrt(Math.max(1, best.without.sum / Math.max(best.without.freedom, 1e-9)));
  const off = Math.abs(reading.value - best.without.told[best.index]) / reading.error;
  const enough = best.without.freedom >= OTHERS - HAIR;
  const alone = misses(best.without)[0].miss <= TOO_FAR;
  // No one reading stands out: they scatter, and are judged by how much.
  if (off <= TOO_FAR * scatter) return undefined;
  if (enough && alone) return { reading: said, without: best.without };
  const { index, ...compared } = said;
  return refuse('readings-disagree', { reading: index + 1, ...compared });
}

/** How far each lies from the fit, in what is left of its error; the farthest first. */
const misses = ({ residuals, leverage, taken }: Judged): { index: number; miss: number }[] =>
  leverage
    .map((h, i) => ({ index: taken[i], miss: Math.abs(residuals[i]) / Math.sqrt(Math.max(1 - h, 1e-6)) }))
    .sort((a, b) => b.miss - a.miss);

function sayOf(index: number, { readings, kind, written }: Fitting, { told, values }: Judged): BadReading {
  const { value, kind: own } = readings[index];
  const compared = written?.(index, values) ?? { found: value, expected: told[index], kind: own ?? kind };
  const slip = slipOf(compared);
  return { index, ...compared, ...(slip ? { slip } : {}) };
}
