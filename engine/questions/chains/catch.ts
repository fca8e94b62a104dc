/**
 * How hard a chain catches what has parted, as odds: pull, stiffness, length, share of riders that is sprung and the
 * chain's toughness are drawn together, and what one catch in a hundred asks is told.
 *
 * A chain breaks when it has taken up more work than it can, and it takes up most of it while it stretches for good. A
 * hook, link or eye does not stretch so: what breaks it is the first peak of force.
 */
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { AssumedValues } from '../../things/assumed.ts';
import { type ChainGear, catchPeak } from '../../things/chain/chain.ts';
import { leastBreakingLoad } from '../../things/chain/energy.ts';
import { reducedMass } from '../../things/chain/formulas.ts';
import { DRAWS, drawBeyond, positionsOf } from '../balance/draws.ts';
import type { PartedDraws } from '../couplers/loads.ts';

/** One catch: its peak on the shortest chain and what it was reckoned from. */
export interface CatchPeak {
  /** N */
  readonly force: number;
  /** Ahead of the gap and behind it, kg, with the inertia of their wheels. */
  readonly head: number;
  readonly tail: number;
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

/** Mostly that of steady running; at most the engine pulls all it can, or the tail's brakes are full on at once. */
export function pullApart({ running, parting }: Pick<PartedDraws, 'running' | 'parting'>): Float64Array {
  const harder = positionsOf('drawn apart');
  return running.map((least, i) => least + Math.max(0, harder[i]) * (parting[i] - least));
}

/** The draw that makes a catch which no more than one in a hundred exceeds. */
function hard(size: (draw: number) => number): number {
  const sizes = new Float64Array(DRAWS);
  for (let i = 0; i < DRAWS; i++) sizes[i] = size(i);
  return drawBeyond(sizes);
}

type Hung = Pick<ChainGear, 'slack' | 'count' | 'difference'>;

/** First peak on the shortest chain, with its hooks and headstocks in line: one catch in a hundred is harder. */
export function hardPeak(
  gear: Hung & Pick<ChainGear, 'stiffness'>,
  parted: PartedDraws,
  riders: AssumedValues['sprungRider'],
): CatchPeak {
  const [stiff, sprung] = [positionsOf('chain stiffness'), positionsOf('riders sprung')];
  const pulls = pullApart(parted);
  const caught = (i: number): Omit<CatchPeak, 'force'> => {
    const share = pick(riders.share, sprung[i]);
    return {
      head: parted.head[i],
      tail: parted.tail[i],
      pull: pulls[i],
      stiffness: pick(gear.stiffness, stiff[i]),
      headSprung: share * parted.headRiders[i],
      tailSprung: share * parted.tailRiders[i],
    };
  };
  const peakOf = ({
    head,
    tail,
    pull,
    stiffness,
    headSprung,
    tailSprung,
  }: Omit<CatchPeak, 'force'>): number =>
    catchPeak(gear, {
      mass: reducedMass(head, tail),
      first: reducedMass(head - headSprung, tail - tailSprung),
      speed: 0,
      pull,
      stiffness,
    });
  const told = caught(hard((i) => peakOf(caught(i))));
  return { force: peakOf(told), ...told };
}

/**
 * Breaking load that takes up the work of the catch: one catch in a hundred asks for more.
 *
 * @param pulls that draw apart, of each draw, N
 * @param elongation stretch at which the chain breaks, share of its length
 */
export function hardWork(
  gear: Hung & Pick<ChainGear, 'length'>,
  pulls: Float64Array,
  elongation: number,
  fullness: Quantity,
): CatchWork {
  const [long, full] = [positionsOf('chain length'), positionsOf('chain fullness')];
  const breaksAt = (i: number): number => {
    const length = pick(gear.length, long[i]);
    const alone = leastBreakingLoad({
      pull: pulls[i],
      slack: gear.slack,
      length,
      elongation,
      fullness: pick(fullness, full[i]),
    });
    return alone / chainsThatWork(gear, elongation * length);
  };
  const at = hard(breaksAt);
  return {
    breaks: breaksAt(at),
    pull: pulls[at],
    length: pick(gear.length, long[at]),
    fullness: pick(fullness, full[at]),
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
