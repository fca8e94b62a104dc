/** What a fit says of the things looked for: values with bounds, how sure, what they go together with. */
import type { Kind, Quantity } from '../base/quantity.ts';
import { hash } from '../base/spread.ts';
import { type Fit, normalOf, quadratic, type Values, valuesAt, WIDTH } from './fit.ts';
import { type Further, type Refusal, refuse } from './refusal.ts';

/** Where in which paper a result belongs. */
export interface Belongs {
  readonly paper: 'vehicle' | 'outing' | 'line';
  /** Path of the field; a vehicle's within the vehicle. */
  readonly field: string;
  /** Of which vehicle of the train, by id; absent: of the one that was tested. */
  readonly vehicle?: string;
  /** Of which brake of it, by id. */
  readonly gear?: string;
  /** Of what on the line. */
  readonly seen?: Seen;
}

/** What was looked at, and running which way. */
export interface Seen {
  readonly at: number;
  readonly place?: string;
  readonly way: 'forward' | 'reverse';
}

/** Something that a test tells, as a function of what was fitted. */
export interface Looked {
  readonly key: string;
  readonly kind: Kind;
  readonly of: (values: Values) => number;
  readonly law: 'log' | 'plain';
  /** What was assumed of it before; absent: nothing. */
  readonly before?: Quantity;
  readonly belongs?: readonly Belongs[];
  /** Its paper keeps one figure without bounds: then this end, which is the careful one; absent: the likely one. */
  readonly careful?: 'low' | 'high';
}

/** What would make it surer: the systematic part that does most, or more of the same. */
export type Surer = { readonly by: 'readings' } | { readonly by: 'systematic'; readonly key: string };

export interface Result {
  readonly key: string;
  readonly kind: Kind;
  /** As it goes into a paper: its bounds are those of the engine's draws. */
  readonly quantity: Quantity;
  /** Within which the truth lies 95 times in a hundred. */
  readonly interval: readonly [number, number];
  /** Share of its variance that more readings of the same kind leave. */
  readonly systematic: number;
  /** Standard deviation now ÷ as assumed before; absent: nothing was assumed. */
  readonly narrowed?: number;
  readonly surer: Surer;
  readonly belongs: readonly Belongs[];
  readonly careful?: 'low' | 'high';
}

export interface Measured {
  readonly ok: true;
  readonly results: readonly Result[];
  /** Between results, in their order; n × n. */
  readonly correlations: readonly (readonly number[])[];
  /** Looked for, and hardly better known than before: nothing is changed by it. */
  readonly untold: readonly { readonly key: string; readonly belongs: readonly Belongs[] }[];
  readonly bad?: Fit['bad'];
  readonly scatter: number;
  readonly readings: number;
}

export type Outcome = Measured | Refusal;

export interface Written {
  readonly source: string;
  readonly date?: string;
}

/** Known no better than so many times as before: not told. */
const HARDLY = 0.8;
const NORMAL_95 = 1.959964;
const NUDGE = 1e-5;

/**
 * @param further what would tell, where nothing is told
 */
export function resultsOf(
  made: Fit,
  looked: readonly Looked[],
  written: Written,
  further?: Further,
): Outcome {
  const told = looked.map((l) => ({ looked: l, ...toldOf(made, l) }));
  const sure = told.filter(
    ({ looked: { before }, deviation, law }) => !before || narrowing(before, deviation, law) <= HARDLY,
  );
  if (sure.length === 0)
    return refuse('not-told-apart', { keys: looked.map((l) => l.key), ...(further ? { further } : {}) });
  const n = made.found.length;
  const shared = (a: Told, b: Told): number =>
    covarianceOf(made.covariance, a.gradient, b.gradient, n) / (a.deviation * b.deviation);
  const results = sure.map((t) => resultOf(made, t.looked, t, written));
  const correlations = sure.map((a) => sure.map((b) => shared(a, b)));
  return {
    ok: true,
    results: goingTogether(results, correlations),
    correlations,
    untold: told
      .filter((t) => !sure.includes(t))
      .map(({ looked: { key, belongs = [] } }) => ({ key, belongs })),
    ...(made.bad ? { bad: made.bad } : {}),
    scatter: made.scatter,
    readings: made.readings,
  };
}

/** Several results, or one of several things: draws take them together. */
function goingTogether(
  results: readonly Result[],
  correlations: readonly (readonly number[])[],
): readonly Result[] {
  const id = fitId(results);
  const rows = choleskyRows(correlations);
  return results.map((r, i) =>
    results.length > 1 || r.belongs.length > 1
      ? { ...r, quantity: { ...r.quantity, fit: { id, factors: rows[i] } } }
      : r,
  );
}

/** Of no other fit, even of the same record made anew. */
function fitId(results: readonly Result[]): string {
  const { source, date } = results[0].quantity;
  const figures = results.map(({ key, quantity: { low, value, high } }) => `${key} ${low} ${value} ${high}`);
  return [source, ...(date === undefined ? [] : [date]), (hash(figures.join()) >>> 0).toString(36)].join(' ');
}

/** Rows of L in C = L·Lᵀ, each to its diagonal. A row that the ones before it tell wholly adds nothing. */
export function choleskyRows(c: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const rows: number[][] = [];
  c.forEach((of, i) => {
    const row: number[] = [];
    const left = (j: number, other: readonly number[]): number =>
      row.reduce((sum, f, k) => sum - f * other[k], of[j]);
    for (let j = 0; j < i; j++) row.push(rows[j][j] > NOTHING ? left(j, rows[j]) / rows[j][j] : 0);
    row.push(Math.sqrt(Math.max(0, left(i, row))));
    rows.push(row);
  });
  return rows;
}

/** Of a variance of 1 that rounding leaves. */
const NOTHING = 1e-6;

interface Told {
  /** As its law has it: its logarithm, or itself. */
  readonly at: number;
  readonly gradient: Float64Array;
  readonly deviation: number;
  readonly law: Looked['law'];
}

const inLaw = (law: Looked['law'], v: number): number => (law === 'log' ? Math.log(v) : v);
const outOfLaw = (law: Looked['law'], v: number): number => (law === 'log' ? Math.exp(v) : v);

function toldOf({ parameters, found, covariance }: Fit, { of, law }: Looked): Told {
  const at = (x: Float64Array): number => inLaw(law, of(valuesAt(parameters, x)));
  const n = found.length;
  const gradient = Float64Array.from(found, (v, j) => {
    // A small share of what it is uncertain by, so that what is curved is taken where it lies.
    const h = NUDGE * Math.max(Math.sqrt(covariance[j * (n + 1)]), 1e-6 * Math.abs(v), 1e-15);
    const [up, down] = [Float64Array.from(found), Float64Array.from(found)];
    up[j] += h;
    down[j] -= h;
    return (at(up) - at(down)) / (up[j] - down[j]);
  });
  return { at: at(found), gradient, deviation: Math.sqrt(quadratic(covariance, gradient, 0, n)), law };
}

function covarianceOf(c: Float64Array, a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum += a[i] * c[i * n + j] * b[j];
  return sum;
}

function narrowing(before: Quantity, deviation: number, law: Looked['law']): number {
  const was = normalOf(before, law).deviation;
  return was > 0 ? deviation / was : 0;
}

function resultOf(
  made: Fit,
  { key, kind, law, before, belongs, careful }: Looked,
  t: Told,
  written: Written,
): Result {
  const n = made.found.length;
  const byChance = quadratic(made.byChance, t.gradient, 0, n);
  const systematic = t.deviation > 0 ? Math.max(0, 1 - byChance / t.deviation ** 2) : 0;
  const beside = (deviations: number): number => outOfLaw(law, t.at + deviations * t.deviation);
  return {
    key,
    kind,
    quantity: {
      value: beside(0),
      low: beside(-WIDTH),
      high: beside(WIDTH),
      how: 'measured',
      source: written.source,
      ...(written.date === undefined ? {} : { date: written.date }),
    },
    interval: [beside(-NORMAL_95), beside(NORMAL_95)],
    systematic,
    ...(before && before.high > before.low ? { narrowed: narrowing(before, t.deviation, law) } : {}),
    surer: systematic > 0.5 ? { by: 'systematic', key: worstSystematic(made, t) } : { by: 'readings' },
    belongs: belongs ?? [],
    ...(careful ? { careful } : {}),
  };
}

/** Of the systematic parameters the one with the greatest part in it. */
function worstSystematic({ parameters, covariance }: Fit, { gradient }: Told): string {
  const n = parameters.length;
  let [worst, most] = ['', -1];
  parameters.forEach((p, j) => {
    if (!p.systematic) return;
    // Its share by the covariance of the result with it: what knowing it would take away.
    let c = 0;
    for (let k = 0; k < n; k++) c += covariance[j * n + k] * gradient[k];
    const share = (c * c) / covariance[j * (n + 1)];
    if (share > most) [worst, most] = [p.key, share];
  });
  return worst;
}
