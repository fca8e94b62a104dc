/**
 * Measured readings made into values that know how sure they are: least squares, with what was assumed before as
 * further readings.
 *
 *   min Σ ((y_i − f_i(x))/σ_i)² + Σ ((x_j − p_j)/s_j)²,   covariance (JᵀJ)⁻¹ by QR
 *
 * A spread [low, high] is what the engine's draws make of it: a triangle, whose standard deviation is half its width ÷ √6.
 * So is it taken before the fit, and so is it given back after: bounds √6 deviations to each side.
 *
 * What an instrument does to every reading alike (the scale of a balance, a tape, the grade of the survey) is a parameter of
 * its own, marked systematic: more readings never shrink it below what they can tell of it.
 *
 * Sources: JCGM 100:2008 (GUM), H.3; priors as readings: Bayes' rule for normal errors.
 */
import { minimise } from '../base/numerics/minimise.ts';
import { leastSquares } from '../base/numerics/qr.ts';
import type { Kind, Quantity } from '../base/quantity.ts';
import { type BadReading, badReading, type Judged } from './bad-reading.ts';
import { type Refusal, refuse } from './refusal.ts';

/** Half the width of a triangle ÷ its standard deviation. */
export const WIDTH: number = Math.sqrt(6);

export interface Parameter {
  readonly key: string;
  /** What was assumed before; absent: nothing. */
  readonly prior?: Quantity;
  /** Where the search begins where nothing was assumed. */
  readonly start?: number;
  /** `log`: never negative, and judged by ratios. */
  readonly law: 'log' | 'plain';
  /** Of the instruments or of what is not looked for: no more readings of the kind make it go away. */
  readonly systematic?: true;
}

export interface Reading {
  readonly value: number;
  /** Standard deviation of its own error. */
  readonly error: number;
  readonly kind?: Kind;
}

/** A figure as it was read and as it should be. */
export interface Compared {
  readonly found: number;
  readonly expected: number;
  readonly kind: Kind;
}

export type Values = Readonly<Record<string, number>>;

export interface Fitting {
  readonly parameters: readonly Parameter[];
  readonly readings: readonly Reading[];
  /** Of its readings, but where one says otherwise. */
  readonly kind: Kind;
  /** What each reading should be; NaN where the model gives none. */
  readonly model: (values: Values) => ArrayLike<number>;
  /** What was written down for a reading, where the model tells it as something else. */
  readonly written?: (index: number, values: Values) => Compared | undefined;
}

export interface Fit {
  readonly ok: true;
  readonly parameters: readonly Parameter[];
  /** As searched: logarithms of those of law `log`. */
  readonly found: Float64Array;
  /** Of `found`, n × n; with what is systematic taken for known. */
  readonly covariance: Float64Array;
  readonly byChance: Float64Array;
  /** A reading that the others say is wrong: it was left out. */
  readonly bad?: BadReading;
  /** How many times their stated errors the readings scatter; 1: no more than stated. */
  readonly scatter: number;
  readonly readings: number;
}

/** Beyond this many times their stated errors no one thing explains the readings. */
const MOST_SCATTER = 4;

/** Far less than anybody reads. */
const STILL = 1e-7;

export const spreadOf = (q: Quantity): number => normalOf(q, 'plain').deviation;

export function fitReadings(fitting: Fitting): Fit | Refusal {
  const search = new Search(fitting);
  const all = search.find([]);
  if ('code' in all) return all;
  const bad = badReading(all, fitting, (without) => search.find([without]));
  if (bad && 'code' in bad) return bad;
  const best = bad ? bad.without : all;
  const scatter = scatterOf(best);
  if (scatter > MOST_SCATTER) return refuse('does-not-fit', { times: scatter });
  const final = scatter > 1 ? search.find(bad ? [bad.reading.index] : [], scatter) : best;
  if ('code' in final) return final;
  return {
    ok: true,
    parameters: search.parameters,
    found: final.x,
    ...search.covariances(final),
    ...(bad ? { bad: bad.reading } : {}),
    scatter,
    readings: fitting.readings.length,
  };
}

/** The values of a place, by key. */
export function valuesAt(parameters: readonly Parameter[], x: ArrayLike<number>): Record<string, number> {
  const values: Record<string, number> = {};
  parameters.forEach(({ key, law }, j) => {
    values[key] = law === 'log' ? Math.exp(x[j]) : x[j];
  });
  return values;
}

/**
 * How far beyond their errors the readings scatter: only where chance alone would scatter them so once in twenty times.
 * Wilson and Hilferty's cube root gives the bound of χ²/freedom.
 */
function scatterOf({ sum, freedom }: Judged): number {
  if (!(freedom >= 1)) return 1;
  const part = 2 / (9 * freedom);
  const bound = (1 - part + 1.6449 * Math.sqrt(part)) ** 3;
  return sum / freedom > bound ? Math.sqrt(sum / freedom) : 1;
}

class Search {
  readonly parameters: readonly Parameter[];
  readonly #fitting: Fitting;
  readonly #fixed: Values;
  readonly #before: readonly (Normal | undefined)[];

  constructor(fitting: Fitting) {
    const exact = ({ prior }: Parameter): boolean => prior !== undefined && !(prior.high > prior.low);
    this.#fitting = fitting;
    this.parameters = fitting.parameters.filter((p) => !exact(p));
    this.#fixed = Object.fromEntries(
      fitting.parameters.filter(exact).map((p) => [p.key, (p.prior as Quantity).value]),
    );
    this.#before = this.parameters.map((p) => p.prior && normalOf(p.prior, p.law));
  }

  find(without: readonly number[], scatter = 1): Judged | Refusal {
    const { readings, model } = this.#fitting;
    const taken = readings.map((_, i) => i).filter((i) => !without.includes(i));
    const residuals = (x: Float64Array): number[] => {
      const told = model({ ...this.#fixed, ...valuesAt(this.parameters, x) });
      return [
        ...taken.map((i) => (told[i] - readings[i].value) / (readings[i].error * scatter)),
        ...this.#before.flatMap((b, j) => (b ? [(x[j] - b.mean) / b.deviation] : [])),
      ];
    };
    const start = this.parameters.map((p, j) => this.#before[j]?.mean ?? startOf(p));
    if (taken.length + this.#before.filter((b) => b).length < start.length)
      return refuse('too-few-readings', { found: taken.length, needed: start.length });
    const found = minimise(residuals, start, this.#sizes(start), STILL);
    if (!found.ended || !Number.isFinite(found.sum)) return refuse('no-fit', {});
    const n = start.length;
    const spread = leastSquares(found.jacobian, new Float64Array(found.residuals.length), n);
    if (spread.rank < n) return refuse('not-told-apart', { keys: this.parameters.map((p) => p.key) });
    const values = { ...this.#fixed, ...valuesAt(this.parameters, found.x) };
    const leverage = taken.map((_, i) => quadratic(spread.inverse, found.jacobian, i * n, n));
    const sum = taken.reduce((total, _, i) => total + found.residuals[i] ** 2, 0);
    return {
      x: found.x,
      jacobian: found.jacobian,
      residuals: found.residuals,
      values,
      told: Float64Array.from(model(values)),
      taken,
      leverage,
      sum,
      freedom: taken.length - leverage.reduce((total, h) => total + h, 0),
    };
  }

  #sizes(start: readonly number[]): number[] {
    return this.parameters.map((p, j) =>
      p.law === 'log' ? 1 : (this.#before[j]?.deviation ?? Math.max(Math.abs(start[j]), 1e-9)),
    );
  }

  covariances({ x, jacobian, residuals }: Judged): Pick<Fit, 'covariance' | 'byChance'> {
    const n = x.length;
    const zeros = new Float64Array(residuals.length);
    const known = Float64Array.from(jacobian, (v, k) => (this.parameters[k % n].systematic ? 0 : v));
    const rows = [...known];
    const b = [...zeros];
    // What is taken for known is a reading without error.
    this.parameters.forEach((p, j) => {
      if (!p.systematic) return;
      rows.push(...Array.from({ length: n }, (_, k) => (k === j ? 1 : 0)));
      b.push(0);
    });
    const byChance = leastSquares(rows, b, n).inverse;
    this.parameters.forEach((p, j) => {
      if (p.systematic && byChance.length > 0) byChance[j * n + j] = 0;
    });
    return { covariance: leastSquares(jacobian, zeros, n).inverse, byChance };
  }
}

/** A spread as a normal one: in the parameter's law, with the mean and deviation of the draws that the engine makes of it. */
interface Normal {
  readonly mean: number;
  readonly deviation: number;
}

/**
 * Half of the draws lie on each side of the likely value, in a triangle each: of widths l and h its mean is (h − l)/6 from
 * the likely value, its variance (l² + h²)/12 − ((h − l)/6)²; w²/6 where both are w.
 */
export function normalOf({ low, value, high }: Quantity, law: Parameter['law']): Normal {
  const [l, v, h] = law === 'log' ? [Math.log(low), Math.log(value), Math.log(high)] : [low, value, high];
  const aside = (h - v - (v - l)) / 6;
  return { mean: v + aside, deviation: Math.sqrt(((v - l) ** 2 + (h - v) ** 2) / 12 - aside * aside) };
}

function startOf({ key, start, law }: Parameter): number {
  if (start === undefined) throw new RangeError(`${key}: neither assumed nor a place to begin`);
  return law === 'log' ? Math.log(start) : start;
}

/** Row · C · row. */
export function quadratic(c: Float64Array, rows: ArrayLike<number>, from: number, n: number): number {
  let sum = 0;
  for (let a = 0; a < n; a++)
    for (let b = 0; b < n; b++) sum += rows[from + a] * c[a * n + b] * rows[from + b];
  return sum;
}
