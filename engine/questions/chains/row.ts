/**
 * Does the chain at each gap bear what a parted tail puts on it, and which chain would?
 *
 * Steady load: never more than the working load. The catch, once: the chain must be able to take up its work, and a
 * hook or link in line with it must bear the first peak, in all but one catch in a hundred; a peak above the
 * working load is said, for the chain is then spent. A hook or link whose breaking load is not stated bears its
 * working load for sure; whether it bears more cannot be told.
 */

import type { OutingContext } from '../../outing/open.ts';
import { type ChainGear, chainOf, steadyOnOne } from '../../things/chain/chain.ts';
import { leastElongation } from '../../things/chain/energy.ts';
import {
  type ChainRow as CatalogueRow,
  type ChainGrade,
  chainCatalogue,
  chainDesignFactor,
  chainGrades,
} from '../../things/chain/formulas.ts';
import { isCar } from '../../things/train/cars.ts';
import { brakesAlone, type GapLoad, type PartedDraws } from '../couplers/loads.ts';
import { type CatchPeak, type CatchWork, hardPeak, hardWork, pullApart } from './catch.ts';

export interface ChainRow extends GapLoad {
  readonly gap: number;
  /** null: no chain, or none fastened. */
  readonly chain: ChainGear | null;
  /** Steady load of the shortest chain, N: all of it, unless chains side by side are known to share. */
  readonly steadyOnOne: number;
  /** A hard catch, one in a hundred: first peak, and the breaking load that its work asks for; null without a chain. */
  readonly snatch: CatchPeak | null;
  readonly work: CatchWork | null;
  /** Slack of the chain, m; without one, the usual. */
  readonly slack: number;
  /** Every car behind the gap brakes by itself when the train parts. */
  readonly tailBrakes: boolean;
  /** Breaking load, N, that a new chain must have, by grade, hung with the slack of now. */
  readonly mustBreakAt: Readonly<Record<ChainGrade, number>>;
  /** The smallest catalogue size of each grade that does. */
  readonly smallest: readonly CatalogueRow[];
  readonly verdict: 'holds' | 'holds, then replace' | 'too weak' | 'cannot tell' | 'no chain';
}

export function chainRow(
  { outing }: OutingContext,
  load: GapLoad,
  drawn: PartedDraws,
  gap: number,
): ChainRow {
  const { vehicles, chainsFastened } = outing.train;
  const { chainCatch, chainSlack, sprungRider } = outing.assumed;
  const chain = chainsFastened ? chainOf(vehicles[gap], vehicles[gap + 1], chainCatch) : null;
  const pull = pullApart(drawn);
  const snatch = chain && hardPeak(chain, drawn, sprungRider);
  const work =
    chain && chain.elongation !== null ? hardWork(chain, pull, chain.elongation, chainCatch.fullness) : null;
  const tailBrakes = vehicles
    .slice(gap + 1)
    .every((v) => !isCar(v) || v.brakes.some((gear) => brakesAlone({ gear })));
  const steady = chain ? steadyOnOne(chain, load.steady) : load.steady;
  // New chains: how they hang beside each other is not known; with nothing hung, the usual slack.
  const slack = chain?.slack ?? chainSlack.value;
  const fresh = { slack, length: chain?.length ?? chainCatch.length, count: 1, difference: null };
  const mustBreakAt = mustBreak(
    (elongation) => hardWork(fresh, pull, elongation, chainCatch.fullness).breaks,
  );
  return {
    ...load,
    gap,
    chain,
    steadyOnOne: steady,
    snatch,
    work,
    slack,
    tailBrakes,
    mustBreakAt,
    smallest: smallestOf(load.steady, mustBreakAt, outing.host.chainLoad?.value ?? 0),
    verdict: judge(chain, steady, snatch, work),
  };
}

/** By grade; grades that stretch alike are reckoned once. */
function mustBreak(at: (elongation: number) => number): ChainRow['mustBreakAt'] {
  const known = new Map<number, number>();
  const of = (grade: ChainGrade): number => {
    const elongation = leastElongation(grade) ?? 0;
    const force = known.get(elongation) ?? at(elongation);
    known.set(elongation, force);
    return force;
  };
  return { 30: of(30), 43: of(43), 70: of(70), 80: of(80) };
}

function judge(
  chain: ChainGear | null,
  steady: number,
  snatch: CatchPeak | null,
  work: CatchWork | null,
): ChainRow['verdict'] {
  if (!chain || !snatch) return 'no chain';
  const { workingLoad, breaks, part } = chain;
  if (!workingLoad || breaks === null || !work) return 'cannot tell';
  if (steady > workingLoad.value || work.breaks > breaks) return 'too weak';
  if (part && snatch.force > part.bears) return part.stated ? 'too weak' : 'cannot tell';
  return snatch.force > workingLoad.value ? 'holds, then replace' : 'holds';
}

/** Per grade the smallest size whose working and breaking loads do; grades without one are left out. */
function smallestOf(steady: number, mustBreakAt: ChainRow['mustBreakAt'], least: number): CatalogueRow[] {
  return chainGrades.flatMap((grade) => {
    const need = Math.max(steady, least, mustBreakAt[grade] / chainDesignFactor(grade));
    const row = chainCatalogue.find((r) => r.grade === grade && r.workingLoad >= need);
    return row ? [row] : [];
  });
}
