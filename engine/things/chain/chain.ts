/**
 * The safety chain at a gap: what it bears, and what it must bear when it catches a parted tail.
 *
 * The weakest of chain, hook, link and weld counts. Chains side by side share as their measured difference of
 * slack lets them; where it was not measured the shortest takes all. Where both vehicles carry a chain for the
 * same gap, the weaker one counts, for either may be the one that was hung.
 */
import { between, exact, type How, type Quantity } from '../../base/quantity.ts';
import type { AssumedValues } from '../assumed.ts';
import type { SafetyChain, Vehicle } from '../vehicle/types.ts';
import { chainStiffness, leastElongation, stiffnessInLine } from './energy.ts';
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

/** What is hung in line with a chain. */
export interface WeakPart {
  readonly name: string;
  /** Load that it bears once, N: its least breaking load where that is stated, else its working load. */
  readonly bears: number;
  readonly stated: boolean;
}

export interface ChainGear {
  /** null: cannot tell; measure the chain's size and mark. */
  readonly workingLoad: WorkingLoad | null;
  /** Least breaking load of the chain itself, N. */
  readonly breaks: number | null;
  /** Share of its length that it stretches before it breaks, at the least. */
  readonly elongation: number | null;
  /** Hook, link, weld or eye; null: nothing in line with the chain is weaker than it. */
  readonly part: WeakPart | null;
  /** m, of the shortest */
  readonly slack: number;
  /** m, of what is pulled straight between the vehicles. */
  readonly length: Quantity;
  /** N/m, of one with the hooks and headstocks that it hangs on. */
  readonly stiffness: Quantity;
  /** Chains hung side by side, and how much longer the others are, m; null: not measured, the shortest takes all. */
  readonly count: number;
  readonly difference: number | null;
}

type AssumedCatch = AssumedValues['chainCatch'];

/** The chain between two vehicles, or null where there is none. Whether it is fastened, the train says. */
export function chainOf(front: Vehicle, rear: Vehicle, assumed: AssumedCatch): ChainGear | null {
  const gears = [front.rear.chain, rear.front.chain].flatMap((chain) =>
    chain ? [gearOf(chain, assumed)] : [],
  );
  if (gears.length === 0) return null;
  return gears.reduce((a, b) => (loadOf(b) < loadOf(a) ? b : a));
}

/** An unknown chain is the weaker of two. */
const loadOf = ({ workingLoad }: ChainGear): number => workingLoad?.value ?? 0;

function gearOf(chain: SafetyChain, assumed: AssumedCatch): ChainGear {
  const own = ownLoad(chain);
  const length = chain.length === undefined ? assumed.length : exact(chain.length);
  return {
    workingLoad: own && weakest(chain, own),
    breaks: own && own.value * leastFactor(chain),
    elongation: leastElongation(chain.grade) ?? null,
    part: partOf(chain),
    slack: chain.slack,
    length,
    stiffness: chain.stiffness ?? stiffnessAsHung(chain.size, length.value, assumed),
    count: chain.count,
    difference: chain.slackDifference ?? null,
  };
}

function partOf({ weakestPart, weakestPartName, weakestPartBreaks }: SafetyChain): WeakPart | null {
  const bears = weakestPartBreaks?.low ?? weakestPart?.low;
  if (bears === undefined) return null;
  return { name: weakestPartName ?? 'weakest part', bears, stated: weakestPartBreaks !== undefined };
}

/** The chain, a hook and a headstock at each end of it; a chain of no known size counts as rigid. */
export function stiffnessAsHung(
  size: number | undefined,
  length: number,
  { hook, headstock }: AssumedCatch,
): Quantity {
  const chain = size === undefined ? [] : [chainStiffness(size, length)];
  const at = (bound: 'low' | 'value' | 'high'): number =>
    stiffnessInLine([...chain, hook[bound], hook[bound], headstock[bound], headstock[bound]]);
  return between(at('low'), at('value'), at('high'), 'assumed');
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

/** One catch. */
export interface Catch {
  /** Reduced mass µ of what is ahead and behind, kg, and µ₁ of what of it is struck at once. */
  readonly mass: number;
  readonly first: number;
  /** v₀ at which both draw apart when the coupler opens, m/s, ≥ 0 */
  readonly speed: number;
  /** F that draws them apart, N, ≥ 0; it goes on while the chain stretches */
  readonly pull: number;
  /** k of the chain as it hangs, N/m */
  readonly stiffness: number;
}

/**
 * Peak force on the shortest chain when it catches, N.
 *
 *   v = √(v₀² + 2·F·slack/µ)      one chain: P = F + √(F² + k·µ₁·v²)
 */
export function catchPeak(
  { slack, count, difference }: Pick<ChainGear, 'slack' | 'count' | 'difference'>,
  { mass, first, speed, pull, stiffness }: Catch,
): number {
  const caught = slackSpeed(speed, pull, slack, mass);
  // Where it was not measured the shortest takes all.
  const shared = difference === null ? 1 : count;
  return sharedSnatch(shared, difference ?? 0, caught, stiffness, first, pull).shortest;
}
