/**
 * The safety chain at a gap: what it bears, and what it must bear when it catches a parted tail.
 *
 * The weakest of chain, hook, link and weld counts. Chains side by side count as one: they share only
 * where their slack is equal, and nothing here says that it is. Where both vehicles carry a chain for the
 * same gap, the weaker one counts, for either may be the one that was hung.
 */
import type { How, Quantity } from '../quantity.ts';
import {
  chainDesignFactor,
  chainWorkingLoad,
  slackSpeed,
  snatchForce,
  UNMARKED_CHAIN_GRADE,
} from '../sums/formulas/chains.ts';
import type { SafetyChain, Vehicle } from '../vehicle/types.ts';

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
  /**
   * Least breaking load, N, of the weakest: its working load times the chain's design factor (for hooks and
   * links that is common practice, no source); null: cannot tell.
   */
  readonly breakingLoad: number | null;
  /** Hook, link or eye were rated; else only the chain itself is known. */
  readonly partsKnown: boolean;
  /** m */
  readonly slack: number;
  /** N/m */
  readonly stiffness: Quantity;
  /** Chains hung; they count as one. */
  readonly count: number;
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
  const grade = chain.grade ?? UNMARKED_CHAIN_GRADE;
  const own = ownLoad(chain, grade);
  const workingLoad = own && weakest(chain, own);
  return {
    workingLoad,
    breakingLoad: workingLoad && workingLoad.value * chainDesignFactor(grade),
    partsKnown: chain.weakestPart !== undefined,
    slack: chain.slack,
    stiffness: chain.stiffness ?? assumedStiffness,
    count: chain.count,
  };
}

/** The chain alone: its stated working load, else by grade and size. */
function ownLoad(chain: SafetyChain, grade: number): WorkingLoad | null {
  if (chain.workingLoad) return { value: chain.workingLoad.low, by: 'chain', how: chain.workingLoad.how };
  if (chain.size === undefined) return null;
  const value = chainWorkingLoad(grade, chain.size);
  return value === undefined ? null : { value, by: 'chain', how: 'stated', size: chain.size, grade };
}

function weakest(chain: SafetyChain, own: WorkingLoad): WorkingLoad {
  const part = chain.weakestPart;
  if (!part || part.low >= own.value) return own;
  return { value: part.low, by: chain.weakestPartName ?? 'weakest part', how: part.how };
}

/**
 * Peak force when the chain catches, N, with the stiffest it may be.
 *
 *   v = √(v₀² + 2·F·slack/µ)      P = F + √(F² + k·µ·v²)
 *
 * @param mass reduced mass µ of what is ahead and what is behind, kg
 * @param speed v₀ at which both draw apart when the coupler opens, m/s, ≥ 0
 * @param pull F that draws them apart, N, ≥ 0; it goes on while the chain stretches
 */
export function catchPeak(gear: ChainGear, mass: number, speed: number, pull: number): number {
  const caught = slackSpeed(speed, pull, gear.slack, mass);
  return snatchForce(caught, gear.stiffness.high, mass, pull);
}
