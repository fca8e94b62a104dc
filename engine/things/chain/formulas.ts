/**
 * Chains: working load by grade and size, the weakest part, and the snatch when slack is taken up.
 *
 * Working loads are a table in the regulation, so they are data here, not a formula.
 */

import { GRAVITY, INCH, POUND_FORCE } from '../../base/constants.ts';

export type ChainGrade = 30 | 43 | 70 | 80;
export const chainGrades: readonly ChainGrade[] = [30, 43, 70, 80];

/** A chain with no mark of its grade counts as this one (49 CFR 393.108). */
export const UNMARKED_CHAIN_GRADE: ChainGrade = 30;

/** Size in inches → working load in lbf. 1/8 and 3/16 in: a supplier's chart citing NACM; the rest: 49 CFR 393.108. */
const poundsByGrade: Readonly<Record<ChainGrade, readonly (readonly [number, number])[]>> = {
  30: [
    [1 / 8, 400],
    [3 / 16, 800],
    [1 / 4, 1300],
    [5 / 16, 1900],
    [3 / 8, 2650],
    [7 / 16, 3700],
    [1 / 2, 4500],
    [5 / 8, 6900],
  ],
  43: [
    [1 / 4, 2600],
    [5 / 16, 3900],
    [3 / 8, 5400],
    [7 / 16, 7200],
    [1 / 2, 9200],
    [5 / 8, 13000],
  ],
  70: [
    [1 / 4, 3150],
    [5 / 16, 4700],
    [3 / 8, 6600],
    [7 / 16, 8750],
    [1 / 2, 11300],
    [5 / 8, 15800],
  ],
  80: [
    [1 / 4, 3500],
    [5 / 16, 4500],
    [3 / 8, 7100],
    [1 / 2, 12000],
    [5 / 8, 18100],
  ],
};

export interface ChainRow {
  readonly grade: ChainGrade;
  /** Nominal diameter of the link wire, m. */
  readonly size: number;
  /** Working load limit, N. */
  readonly workingLoad: number;
}

/** Every row of the catalogue, by grade and then by size. */
export const chainCatalogue: readonly ChainRow[] = chainGrades.flatMap((grade) =>
  poundsByGrade[grade].map(([inches, pounds]) => ({
    grade,
    size: inches * INCH,
    workingLoad: pounds * POUND_FORCE,
  })),
);

const KILOGRAM_FORCE = GRAVITY;

/** Size in mm → kg. Grades 30 to 70: 49 CFR 393.108; 80, 100: the lesser of it and EN 818-4 grade 8, or its grade 10 kin. */
const kilogramsByGrade: readonly (readonly [number, readonly (readonly [number, number])[]])[] = [
  [
    30,
    [
      [7, 580],
      [8, 860],
      [10, 1200],
      [11, 1680],
      [13, 2030],
      [16, 3130],
    ],
  ],
  [
    43,
    [
      [7, 1180],
      [8, 1770],
      [10, 2450],
      [11, 3270],
      [13, 4170],
      [16, 5910],
    ],
  ],
  [
    70,
    [
      [7, 1430],
      [8, 2130],
      [10, 2990],
      [11, 3970],
      [13, 5130],
      [16, 7170],
    ],
  ],
  [
    80,
    [
      [6, 1120],
      [7, 1500],
      [8, 2000],
      [10, 3150],
      [13, 5300],
      [16, 8000],
    ],
  ],
  [
    100,
    [
      [6, 1400],
      [7, 1900],
      [8, 2500],
      [10, 4000],
      [13, 6700],
      [16, 10000],
    ],
  ],
];

/** Inch sizes that are hung but not proposed. 49 CFR 393.108; 7/32 and 9/32 in: a supplier's chart. */
const furtherPounds: readonly (readonly [number, readonly (readonly [number, number])[]])[] = [
  [
    80,
    [
      [7 / 32, 2100],
      [9 / 32, 3500],
    ],
  ],
  [
    100,
    [
      [7 / 32, 2700],
      [1 / 4, 4300],
      [9 / 32, 4300],
      [5 / 16, 5700],
      [3 / 8, 8800],
      [1 / 2, 15000],
      [5 / 8, 22600],
    ],
  ],
];

const furtherRows = [
  ...furtherPounds.flatMap(([grade, rows]) =>
    rows.map(([inches, load]) => ({ grade, size: inches * INCH, workingLoad: load * POUND_FORCE })),
  ),
  ...kilogramsByGrade.flatMap(([grade, rows]) =>
    rows.map(([mm, load]) => ({ grade, size: mm / 1000, workingLoad: load * KILOGRAM_FORCE })),
  ),
];

/**
 * Working load limit of a chain, N; undefined where the table has no such grade, or none so small.
 *
 * A size matches within 1 % (a caliper reading of 6.4 mm is a ¼-in chain), the nearest of several; one between two
 * rows bears at least what the next smaller of its grade does, and counts as that: nothing is interpolated.
 *
 * grade 30, 43, 70, 80, 100 · size m, from 1/8 in (grade 30) or 6 mm. Source: 49 CFR 393.108; EN 818-4 (metric, grade
 * 80); 1/8, 3/16, 7/32 and 9/32 in: suppliers' charts; metric grade 100: from memory.
 */
export function chainWorkingLoad(grade: number, size: number): number | undefined {
  const off = (row: { readonly size: number }): number => Math.abs(row.size - size) / row.size;
  const rows = [...chainCatalogue, ...furtherRows].filter((row) => row.grade === grade);
  const near = rows.filter((row) => off(row) <= 0.01).sort((a, b) => off(a) - off(b));
  const smaller = rows.filter((row) => row.size < size).sort((a, b) => b.size - a.size);
  return (near[0] ?? smaller[0])?.workingLoad;
}

/**
 * Least breaking load ÷ working load limit: 3 for grade 43, 4 for the other grades.
 * Source: supplier's chart citing NACM.
 */
export function chainDesignFactor(grade: number): number {
  return grade === 43 ? 3 : 4;
}

/** Mass that two bodies show each other, kg: m₁m₂/(m₁+m₂). An unmovable second body is Infinity. */
export function reducedMass(one: number, other: number): number {
  if (one === Infinity) return other;
  if (other === Infinity) return one;
  return (one * other) / (one + other);
}

/**
 * Speed at which slack runs out, m/s: v = √(v₀² + 2·F·slack/µ).
 *
 * startSpeed m/s relative, ≥ 0 · pull N, the steady force that parts the two bodies (F ≥ 0 or the
 * slack may never run out) · slack m ≥ 0 · mass kg, reduced mass µ > 0. Source: energy balance.
 */
export function slackSpeed(startSpeed: number, pull: number, slack: number, mass: number): number {
  return Math.sqrt(Math.max(0, startSpeed * startSpeed + (2 * pull * slack) / mass));
}

/**
 * Peak force of a chain or bar that catches a body, N: F + √(F² + k·µ·v²).
 *
 * speed v m/s relative at the end of the slack · stiffness k N/m > 0 · mass kg, reduced mass µ ·
 * pull F N, steady force that goes on pulling while it stretches. Linear spring without damping, so it
 * is an upper bound for one catch. Source: energy balance ½µv² + F·x = ½k·x².
 */
export function snatchForce(speed: number, stiffness: number, mass: number, pull = 0): number {
  return pull + Math.sqrt(pull * pull + stiffness * mass * speed * speed);
}

/** Forces on the shortest of chains side by side and on each of the others, N. */
export interface SharedForce {
  readonly shortest: number;
  readonly others: number;
}

/**
 * How chains side by side, alike but for their slack, share a steady force S: the shortest alone up to k·d, then
 * all of them.
 *
 *   S ≤ k·d: S on the shortest     else (S + (n − 1)·k·d)/n on the shortest, k·d less on each other
 *
 * count n ≥ 1 · difference d m ≥ 0, how much more slack the others have · stiffness k N/m > 0 of each · force
 * S N ≥ 0. Source: statics of springs side by side.
 */
export function sharedForce(
  count: number,
  difference: number,
  stiffness: number,
  force: number,
): SharedForce {
  const alone = stiffness * difference;
  if (force <= alone) return { shortest: force, others: 0 };
  const shortest = (force + (count - 1) * alone) / count;
  return { shortest, others: shortest - alone };
}

/**
 * How they share a catch: the shortest begins, the others join when it has stretched by d.
 *
 *   ½µv² + F·x = ½k·x² + ½(n − 1)·k·max(0, x − d)²     k·x on the shortest
 *
 * Equal slack: (F + √(F² + n·k·µ·v²))/n on each. Great difference: the snatch of one chain, on the shortest.
 * speed v m/s at the end of the shortest's slack · mass µ kg · pull F N. Source: energy balance, no damping.
 */
export function sharedSnatch(
  count: number,
  difference: number,
  speed: number,
  stiffness: number,
  mass: number,
  pull = 0,
): SharedForce {
  const alone = snatchForce(speed, stiffness, mass, pull);
  const joins = stiffness * difference;
  if (alone <= joins || count === 1) return { shortest: alone, others: 0 };
  // With y = k·x: n·y²/2 − (F + (n − 1)·k·d)·y + (n − 1)·(k·d)²/2 − k·µ·v²/2 = 0.
  const half = pull + (count - 1) * joins;
  const rest = (count - 1) * joins * joins - stiffness * mass * speed * speed;
  const shortest = (half + Math.sqrt(half * half - count * rest)) / count;
  return { shortest, others: shortest - joins };
}

/**
 * Stiffness of a plain bar in pull, N/m: k = E·A/L.
 *
 * modulus Pa > 0 · area m² > 0 · length m > 0. Source: Hooke's law.
 */
export function barStiffness(modulus: number, area: number, length: number): number {
  return (modulus * area) / length;
}
