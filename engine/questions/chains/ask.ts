/**
 * Does the chain at each gap bear what a parted tail puts on it, and which chain would?
 *
 * Steady load: never more than the working load. Snatch, once, with the stiffest chain it may be: never more
 * than the least breaking load; above the working load it is said, for the chain is then spent. A hook or link
 * whose breaking load is not stated bears its working load for sure; whether it bears more cannot be told.
 */

import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { type ChainGear, catchPeak, chainOf, steadyOnOne } from '../../things/chain/chain.ts';
import {
  type ChainRow as CatalogueRow,
  chainCatalogue,
  chainDesignFactor,
  chainGrades,
} from '../../things/chain/formulas.ts';
import { isCar } from '../../things/train/cars.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { brakesAlone, type GapLoad, gapLoads } from '../couplers/loads.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { Findings } from '../question.ts';

export interface ChainRow extends GapLoad {
  readonly gap: number;
  /** null: no chain, or none fastened. */
  readonly chain: ChainGear | null;
  /** Steady load of the shortest chain, N: all of it, unless chains side by side are known to share. */
  readonly steadyOnOne: number;
  /** Peak as the shortest chain catches, N; null without a chain. */
  readonly snatch: number | null;
  /** Every car behind the gap brakes by itself when the train parts. */
  readonly tailBrakes: boolean;
  /** What its working load must be at the least, N, by grade, and the smallest size that has it, m. */
  readonly smallest: readonly CatalogueRow[];
  readonly verdict: 'holds' | 'holds, then replace' | 'too weak' | 'cannot tell' | 'no chain';
}

export function askChains(context: OutingContext, brakes: readonly BrakedGroup[]): Findings<ChainRow[]> {
  const { outing, line, loaded } = context;
  const adhesion = outing.assumed.adhesion[outing.conditions.railState];
  const rows = gapLoads(line, loaded, brakes, adhesion).map((load, gap) => rowOf(context, load, gap));
  return { findings: rows.flatMap((row) => findingsOf(context, row)), data: rows };
}

function rowOf({ outing }: OutingContext, load: GapLoad, gap: number): ChainRow {
  const { vehicles, chainsFastened } = outing.train;
  const chain = chainsFastened
    ? chainOf(vehicles[gap], vehicles[gap + 1], outing.assumed.chainStiffness)
    : null;
  const snatch = chain && catchPeak(chain, load.mass, 0, load.parting);
  const tailBrakes = vehicles
    .slice(gap + 1)
    .every((v) => !isCar(v) || v.brakes.some((gear) => brakesAlone({ gear })));
  const least = outing.host.chainLoad?.value ?? 0;
  // New chains: how they hang beside each other is not known; with nothing hung, the usual slack.
  const slack = chain?.slack ?? outing.assumed.chainSlack.value;
  const stiffness = chain?.stiffness ?? outing.assumed.chainStiffness;
  const would = catchPeak({ slack, stiffness, count: 1, difference: null }, load.mass, 0, load.parting);
  const steady = chain ? steadyOnOne(chain, load.steady) : load.steady;
  return {
    ...load,
    gap,
    chain,
    steadyOnOne: steady,
    snatch,
    tailBrakes,
    smallest: smallestOf(load.steady, would, least),
    verdict: judge(chain, steady, snatch),
  };
}

function judge(chain: ChainGear | null, steady: number, snatch: number | null): ChainRow['verdict'] {
  if (!chain || snatch === null) return 'no chain';
  const { workingLoad, bearsOnce, breakingLoad } = chain;
  if (!workingLoad || bearsOnce === null || breakingLoad === null) return 'cannot tell';
  if (steady > workingLoad.value || snatch > breakingLoad) return 'too weak';
  if (snatch > bearsOnce) return 'cannot tell';
  return snatch > workingLoad.value ? 'holds, then replace' : 'holds';
}

/** Per grade the smallest size whose working and breaking loads do; grades without one are left out. */
export function smallestOf(steady: number, snatch: number, least: number): CatalogueRow[] {
  return chainGrades.flatMap((grade) => {
    const need = Math.max(steady, least, snatch / chainDesignFactor(grade));
    const row = chainCatalogue.find((r) => r.grade === grade && r.workingLoad >= need);
    return row ? [row] : [];
  });
}

function findingsOf(context: OutingContext, row: ChainRow): Finding[] {
  return [...byRule(context, row), ...byLoad(context, row)];
}

function byRule({ outing }: OutingContext, { gap, chain }: ChainRow): Finding[] {
  const rule = outing.host.chainLoad;
  const load = chain?.workingLoad;
  if (!rule || !load || load.value >= rule.value) return [];
  return [
    makeFinding('chain-too-weak', 'forbids', 'host', {
      where: { gap, vehicle: outing.train.vehicles[gap].id },
      found: amount(load.value, 'force'),
      required: amount(rule.value, 'force'),
      margin: load.value / rule.value - 1,
      facts: { by: load.by, way: 'rule' },
      ...(load.size === undefined || load.grade === undefined
        ? {}
        : { sum: { id: 'chain-working-load', inputs: { size: load.size, 'grade-mark': load.grade } } }),
      source: rule.source,
    }),
  ];
}

type OneSum = { readonly sum?: SumRef };

/** The sums are of one chain that takes all; chains side by side that share a load have none. */
const ofOne = ({ chain }: ChainRow, sum: SumRef): OneSum =>
  chain && chain.count > 1 && chain.difference !== null ? {} : { sum };

/** What the chain holds on the steepest grade: the tail with heavy riders. */
function steadySum({ vehicles }: LoadedTrain, { gap, steady }: ChainRow): SumRef {
  const mass = vehicles.slice(gap + 1).reduce((sum, v) => sum + v.massHigh, 0);
  return { id: 'grade-force', inputs: { mass, grade: steady / (mass * GRAVITY) } };
}

const snatchSum = ({ head, tail, parting }: ChainRow, { slack, stiffness }: ChainGear): SumRef => ({
  id: 'chain-snatch',
  inputs: { mass: head, 'other-mass': tail, slack, pull: parting, stiffness: stiffness.high },
});

/** The greatest load on the chain at a gap. */
export const loadSum = ({ loaded }: OutingContext, row: ChainRow): OneSum =>
  ofOne(
    row,
    row.chain && row.snatch !== null && row.snatch > row.steady
      ? snatchSum(row, row.chain)
      : steadySum(loaded, row),
  );

function byLoad({ outing, loaded }: OutingContext, row: ChainRow): Finding[] {
  const { gap, chain, snatch, verdict } = row;
  const where = { gap, vehicle: outing.train.vehicles[gap].id };
  if (!chain || snatch === null || verdict === 'holds') return [];
  const load = chain.workingLoad;
  if (!load || chain.breakingLoad === null) return [unknownFinding(loaded, row, where, 'size')];
  if (verdict === 'cannot tell') return [unknownFinding(loaded, row, where, 'part')];
  const steady = row.steadyOnOne > load.value;
  const [found, required] = steady ? [row.steadyOnOne, load.value] : [snatch, chain.breakingLoad];
  const spent = verdict === 'holds, then replace';
  return [
    makeFinding('chain-too-weak', spent || row.tailBrakes ? 'notes' : 'forbids', 'parting', {
      where,
      found: amount(found, 'force'),
      required: amount(spent ? load.value : required, 'force'),
      margin: marginOf(found, spent ? load.value : required),
      ...ofOne(row, steady ? steadySum(loaded, row) : snatchSum(row, chain)),
      facts: {
        by: spent || steady ? load.by : chain.breaksBy,
        shares: chain.count === 1 ? 'one' : chain.difference === null ? 'not known' : 'known',
        way: spent ? 'spent' : steady ? 'steady' : 'snatch',
        slack: amount(chain.slack, 'length'),
        parting: amount(row.parting, 'force'),
        tail: row.tailBrakes ? 'braked' : 'runs',
      },
      sure: 'assumed',
      source: '49 CFR 393.108; breaking load by supplier’s chart citing NACM',
    }),
  ];
}

/** Neither size nor marked load of the chain is known, or not what breaks a part in line with it. */
function unknownFinding(
  loaded: LoadedTrain,
  row: ChainRow,
  where: Finding['where'],
  way: 'size' | 'part',
): Finding {
  const { chain, snatch } = row;
  return makeFinding('chain-strength-unknown', row.tailBrakes ? 'notes' : 'unknown', 'parting', {
    where,
    required: amount(way === 'size' ? row.steadyOnOne : (snatch ?? 0), 'force'),
    facts: {
      way,
      ...(way === 'part' && chain?.unstated
        ? { part: chain.unstated, bears: amount(chain.bearsOnce ?? 0, 'force') }
        : {}),
    },
    ...(chain ? ofOne(row, way === 'size' ? steadySum(loaded, row) : snatchSum(row, chain)) : {}),
    source: '49 CFR 393.108',
    measure: way === 'size' ? 'coupling.chain.size' : 'coupling.chain.weakestPartBreaks',
  });
}
