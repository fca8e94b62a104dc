/**
 * The safety chain at a gap: what it bears, and what it must bear when it catches a parted tail.
 *
 * The weakest of chain, hook, link and weld counts. Chains side by side share as their measured difference of
 * slack lets them; where it was not measured the shortest takes all. Where both vehicles carry a chain for the
 * same gap, the weaker one counts, for either may be the one that was hung.
 */
import type { How, Quantity } from '../../base/quantity.ts';
import type { SafetyChain, Vehicle } from '../vehicle/types.ts';
import {
  chainDesignFactor,
  chainGrades,
  chainWorkingLoad,
  sharedForce,
  sharedSnatch,
  slackSpeed,
  UNMARKED_CHAIN_GRADE,
} from './formulas.ts';

export interface WorkingLoad {
  /** N, of one chain with everything in line with it. */
  readonly value: number;
  /** What is weakest: "chain" or the named part. */
  readonly by: string;
  readonly how: How;
  /** Size, m, and grade, where the table gives the value. */
  readonly size?: number;
  readonly grade?: number;
}

export interface ChainGear {
  /** null: cannot tell; measure the chain's size and mark. */
  readonly workingLoad: WorkingLoad | null;
  /** Load that all of it bears once, N; a part whose breaking load is not stated bears its working load. */
  readonly bearsOnce: number | null;
  /** Least breaking load, N, of the parts of which it is known: beyond it the chain may break. */
  readonly breakingLoad: number | null;
  /** What has that breaking load, and the part of which none is stated. */
  readonly breaksBy: string;
  readonly unstated: string | null;
  /** m, of the shortest */
  readonly slack: number;
  /** N/m, of one */
  readonly stiffness: Quantity;
  /** Chains hung side by side, and how much longer the others are, m; null: not measured, the shortest takes all. */
  readonly count: number;
  readonly difference: number | null;
}

/**
 * The chain between two vehicles, or null where there is none. Whether it is fastened, the train says.
 * @param assumedStiffness N/m, where the chain's own was not measured
 */
export function chainOf(front: Vehicle, rear: Vehicle, assumedStiffness: Quantity): ChainGear | null {
  const gears = [front.rear.chain, rear.front.chain].flatMap((chain) =>
    chain ? [gearOf(chain, assumedStiffness)] : [],
  );
  if (gears.length === 0) return null;
  return gears.reduce((a, b) => (loadOf(b) < loadOf(a) ? b : a));
}

/** An unknown chain is the weaker of two. */
const loadOf = ({ workingLoad }: ChainGear): number => workingLoad?.value ?? 0;

function gearOf(chain: SafetyChain, assumedStiffness: Quantity): ChainGear {
  const own = ownLoad(chain);
  const part = chain.weakestPart;
  const partName = chain.weakestPartName ?? 'weakest part';
  const breaks = own && own.value * leastFactor(chain);
  const partBreaks = chain.weakestPartBreaks?.low;
  const partFirst = breaks !== null && partBreaks !== undefined && partBreaks < breaks;
  return {
    workingLoad: own && weakest(chain, own),
    bearsOnce: breaks && Math.min(breaks, partBreaks ?? part?.low ?? Infinity),
    breakingLoad: partFirst ? partBreaks : breaks,
    breaksBy: partFirst ? partName : 'chain',
    unstated: part && partBreaks === undefined ? partName : null,
    slack: chain.slack,
    stiffness: chain.stiffness ?? assumedStiffness,
    count: chain.count,
    difference: chain.slackDifference ?? null,
  };
}

/**
 * Breaking ÷ working load, at the least: by its mark; by size it counts as grade 30; a working load stated
 * without a mark may be of any grade.
 */
function leastFactor({ grade, workingLoad }: SafetyChain): number {
  if (grade !== undefined) return chainDesignFactor(grade);
  return workingLoad
    ? Math.min(...chainGrades.map(chainDesignFactor))
    : chainDesignFactor(UNMARKED_CHAIN_GRADE);
}

/** The chain alone: its stated working load, else by grade and size. */
function ownLoad(chain: SafetyChain): WorkingLoad | null {
  if (chain.workingLoad) return { value: chain.workingLoad.low, by: 'chain', how: chain.workingLoad.how };
  if (chain.size === undefined) return null;
  const grade = chain.grade ?? UNMARKED_CHAIN_GRADE;
  const value = chainWorkingLoad(grade, chain.size);
  return value === undefined ? null : { value, by: 'chain', how: 'stated', size: chain.size, grade };
}

function weakest(chain: SafetyChain, own: WorkingLoad): WorkingLoad {
  const part = chain.weakestPart;
  if (!part || part.low >= own.value) return own;
  return { value: part.low, by: chain.weakestPartName ?? 'weakest part', how: part.how };
}

/** Steady load on the shortest chain, N, of a load on all: with the stiffest they may be, which share least. */
export const steadyOnOne = ({ count, difference, stiffness }: ChainGear, load: number): number =>
  difference === null ? load : sharedForce(count, difference, stiffness.high, load).shortest;

/**
 * Peak force on the shortest chain when it catches, N, with the stiffest it may be.
 *
 *   v = √(v₀² + 2·F·slack/µ)      one chain: P = F + √(F² + k·µ·v²)
 *
 * @param mass reduced mass µ of what is ahead and what is behind, kg
 * @param speed v₀ at which both draw apart when the coupler opens, m/s, ≥ 0
 * @param pull F that draws them apart, N, ≥ 0; it goes on while the chain stretches
 */
export function catchPeak(
  gear: Pick<ChainGear, 'slack' | 'stiffness' | 'count' | 'difference'>,
  mass: number,
  speed: number,
  pull: number,
): number {
  const caught = slackSpeed(speed, pull, gear.slack, mass);
  const { count, difference, stiffness } = gear;
  // Where it was not measured the shortest takes all.
  const shared = difference === null ? 1 : count;
  return sharedSnatch(shared, difference ?? 0, caught, stiffness.high, mass, pull).shortest;
}
