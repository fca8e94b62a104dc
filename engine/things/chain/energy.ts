/** Work that a welded chain takes up before it breaks, and how stiff it is while it only stretches. */
import { chainDesignFactor, chainWorkingLoad, UNMARKED_CHAIN_GRADE } from './formulas.ts';

/** EA ÷ d² of studless round-link chain, N/m². Source: 0.854·10⁸ kN/m² in two open mooring programs. */
const STUDLESS = 8.54e10;

/**
 * Least stretch at which a new chain may break, share of its length; undefined for a grade without a figure.
 * 0.15 grades 30, 43 and 70 · 0.20 grades 80 and 100 · 0.10 without a mark (coil and machine chain).
 * Source: chain maker's page; ASTM A413 and EN 818-2 ask the same (from memory).
 */
export function leastElongation(grade?: number): number | undefined {
  if (grade === undefined) return 0.1;
  if (grade === 80 || grade === 100) return 0.2;
  return grade === 30 || grade === 43 || grade === 70 ? 0.15 : undefined;
}

/**
 * Work of breaking a chain, N·m: W = c·F·ε·L. Undefined where the table has no such chain.
 *
 * size, diameter of the link m, 1/8 to 5/8 in · grade, absent where it bears no mark (strength as grade 30) ·
 * length L m of the chain that is pulled straight · fullness c, mean force until it breaks ÷ breaking force F; from a
 * chain that yields at half of F and hardens no more (0.47) to one that hardens evenly up to F (0.70). ε least
 * elongation. New chain; worn, bent or side-loaded links take less. Hooks and quick links break first unless they
 * are as strong. Source: work = mean force × stretch; least breaking force by the table of working loads.
 */
export function chainEnergyToBreak(
  size: number,
  grade: number | undefined,
  length: number,
  fullness: number,
): number | undefined {
  const strength = grade ?? UNMARKED_CHAIN_GRADE;
  const load = chainWorkingLoad(strength, size);
  const elongation = leastElongation(grade);
  if (load === undefined || elongation === undefined) return undefined;
  return fullness * load * chainDesignFactor(strength) * elongation * length;
}

/** One catch by a chain. */
export interface Work {
  /** F that goes on drawing the two apart, N. */
  readonly pull: number;
  /** m, before the chain is straight */
  readonly slack: number;
  /** L of the chain that is pulled straight, m. */
  readonly length: number;
  /** ε stretch at which it breaks, share of L. */
  readonly elongation: number;
  /** c mean force until it breaks ÷ breaking force. */
  readonly fullness: number;
  /** ½·µ·v₀² of both drawing apart already as the coupler opens, J. */
  readonly moving?: number;
}

/** Work that a chain has to take up until it breaks, J: W = F·(slack + ε·L) + ½·µ·v₀². Source: energy balance. */
export const workOfCatch = ({ pull, slack, length, elongation, moving = 0 }: Work): number =>
  pull * (slack + elongation * length) + moving;

/**
 * Breaking load that just takes up the work of a catch, N: B = (F·(slack + ε·L) + ½·µ·v₀²)/(c·ε·L).
 *
 * All but the slack and the pull above 0. Source: as `chainEnergyToBreak`, the other way round.
 */
export const leastBreakingLoad = (work: Work): number =>
  workOfCatch(work) / (work.fullness * work.elongation * work.length);

/**
 * Stiffness of round-link chain before it yields, N/m: k = 8.54·10¹⁰·d²/L.
 *
 * size d m > 0 · length L m > 0. Measured on mooring chain far larger than ours; ± 30 %. Source: see `STUDLESS`.
 */
export function chainStiffness(size: number, length: number): number {
  return (STUDLESS * size * size) / length;
}

/** Stiffness of parts in line, N/m: 1/Σ(1/k), each above 0. Source: statics of springs in series. */
export function stiffnessInLine(parts: readonly number[]): number {
  return 1 / parts.reduce((sum, k) => sum + 1 / k, 0);
}
