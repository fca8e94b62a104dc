/**
 * How hard a chain catches what has parted, as odds: pull, stiffness, length, share of riders that is sprung and the
 * chain's toughness are drawn together, and what one catch in a hundred asks is told.
 *
 * A chain breaks when it has taken up more work than it can, and it takes up most of it while it stretches for good. A
 * hook, link or eye does not stretch so: what breaks it is the first peak of force.
 */
import type { Quantity } from '../../base/quantity.ts';
import { pick, seeded, triangular, upperRank } from '../../base/spread.ts';
import type { AssumedValues } from '../assumed.ts';
import { type ChainGear, catchPeak } from './chain.ts';
import { leastBreakingLoad } from './energy.ts';
import { reducedMass } from './formulas.ts';

/** What parts and catches. */
export interface Parting {
  /** All of both halves, kg, and of it people on seats. */
  readonly head: number;
  readonly tail: number;
  readonly headRiders: number;
  readonly tailRiders: number;
  /** Draws the halves apart while the slack runs out and the chain stretches, N. */
  readonly pull: Quantity;
}

/** One catch: its peak on the shortest chain and what it was reckoned from. */
export interface CatchPeak {
  /** N */
  readonly force: number;
  readonly pull: number;
  /** N/m, chain with hooks and headstocks. */
  readonly stiffness: number;
  /** People who come after the first peak, kg. */
  readonly headSprung: number;
  readonly tailSprung: number;
}

/** One catch: the breaking load that a chain of this slack and length must have to take it up. */
export interface CatchWork {
  /** N */
  readonly breaks: number;
  readonly pull: number;
  readonly length: number;
  readonly fullness: number;
}

/** What can hurt one catch in a hundred counts. */
const ODDS = 0.99;
const DRAWS = 1000;
/** Of the draws by size, the one that is told: with 95 % confidence no more than one in a hundred is harder. */
const RANK = upperRank(DRAWS, ODDS);

interface Drawn {
  readonly pull: number;
  readonly stiffness: number;
  readonly length: number;
  readonly fullness: number;
  readonly sprung: number;
}

/** The same draws for every chain, so that two chains differ by what they are and not by luck. */
const drawn: readonly Drawn[] = drawAll();

function drawAll(): Drawn[] {
  const draw = seeded(20_261_126);
  const one = (): number => triangular(draw());
  return Array.from({ length: DRAWS }, () => ({
    pull: one(),
    stiffness: one(),
    length: one(),
    fullness: one(),
    sprung: one(),
  }));
}

/** The draw that makes a catch which no more than one in a hundred exceeds. */
function hard(size: (draw: Drawn) => number): Drawn {
  const sizes = new Float64Array(DRAWS);
  for (let i = 0; i < DRAWS; i++) sizes[i] = size(drawn[i]);
  const told = sizes.slice().sort()[RANK - 1];
  return drawn[sizes.indexOf(told)];
}

type Hung = Pick<ChainGear, 'slack' | 'count' | 'difference'>;

/** First peak on the shortest chain, with its hooks and headstocks in line: one catch in a hundred is harder. */
export function hardPeak(
  gear: Hung & Pick<ChainGear, 'stiffness'>,
  { head, tail, headRiders, tailRiders, pull }: Parting,
  riders: AssumedValues['sprungRider'],
): CatchPeak {
  const mass = reducedMass(head, tail);
  const peakOf = (at: Drawn): number => {
    const share = pick(riders.share, at.sprung);
    return catchPeak(gear, {
      mass,
      first: reducedMass(head - share * headRiders, tail - share * tailRiders),
      speed: 0,
      pull: pick(pull, at.pull),
      stiffness: pick(gear.stiffness, at.stiffness),
    });
  };
  const at = hard(peakOf);
  const share = pick(riders.share, at.sprung);
  return {
    force: peakOf(at),
    pull: pick(pull, at.pull),
    stiffness: pick(gear.stiffness, at.stiffness),
    headSprung: share * headRiders,
    tailSprung: share * tailRiders,
  };
}

/**
 * Breaking load that takes up the work of the catch: one catch in a hundred asks for more.
 *
 * @param elongation stretch at which the chain breaks, share of its length
 */
export function hardWork(
  gear: Hung & Pick<ChainGear, 'length'>,
  pull: Quantity,
  elongation: number,
  fullness: Quantity,
): CatchWork {
  const breaksAt = (at: Drawn): number => {
    const length = pick(gear.length, at.length);
    const alone = leastBreakingLoad({
      pull: pick(pull, at.pull),
      slack: gear.slack,
      length,
      elongation,
      fullness: pick(fullness, at.fullness),
    });
    return alone / chainsThatWork(gear, elongation * length);
  };
  const at = hard(breaksAt);
  return {
    breaks: breaksAt(at),
    pull: pick(pull, at.pull),
    length: pick(gear.length, at.length),
    fullness: pick(fullness, at.fullness),
  };
}

/**
 * Work of all chains side by side ÷ that of the shortest, when it breaks.
 *
 *   1 + (n − 1)·(1 − d/x)²     x stretch of the shortest, d how much longer the others hang
 *
 * Force grows ever less steeply with stretch, so that the others have done at least this much. Not measured: 1.
 */
function chainsThatWork({ count, difference }: Hung, stretch: number): number {
  if (difference === null) return 1;
  const share = Math.max(0, 1 - difference / stretch);
  return 1 + (count - 1) * share * share;
}
