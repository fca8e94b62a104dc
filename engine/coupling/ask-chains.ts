/**
 * Does the chain at each gap bear what a parted tail puts on it, and which chain would?
 *
 * Steady load: never more than the working load. Snatch, once, with the stiffest chain it may be: never
 * more than the least breaking load; above the working load it is said, for the chain is then spent.
 */
import type { BrakedGroup } from '../brake/force.ts';
import { GRAVITY } from '../constants.ts';
import { makeFinding } from '../finding/make.ts';
import type { Finding, SumRef } from '../finding/types.ts';
import type { OutingContext } from '../outing/context.ts';
import type { Findings } from '../outing/question.ts';
import { amount } from '../quantity.ts';
import {
  type ChainRow as CatalogueRow,
  chainCatalogue,
  chainDesignFactor,
  chainGrades,
} from '../sums/formulas/chains.ts';
import { isCar } from '../train/cars.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import { type ChainGear, catchPeak, chainOf } from './chain.ts';
import { brakesAlone, type GapLoad, gapLoads } from './loads.ts';

export interface ChainRow extends GapLoad {
  readonly gap: number;
  /** null: no chain, or none fastened. */
  readonly chain: ChainGear | null;
  /** Peak as the chain catches, N; null without a chain. */
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
  // With nothing hung, a chain of the usual 2 in of slack is reckoned with.
  const would = snatch ?? catchPeak(usual(outing.assumed.chainStiffness), load.mass, 0, load.parting);
  return {
    ...load,
    gap,
    chain,
    snatch,
    tailBrakes,
    smallest: smallestOf(load.steady, would, least),
    verdict: judge(chain, load.steady, snatch),
  };
}

const usual = (stiffness: ChainGear['stiffness']): ChainGear => ({
  workingLoad: null,
  breakingLoad: null,
  partsKnown: false,
  slack: 0.05,
  stiffness,
  count: 1,
});

function judge(chain: ChainGear | null, steady: number, snatch: number | null): ChainRow['verdict'] {
  if (!chain || snatch === null) return 'no chain';
  const { workingLoad, breakingLoad } = chain;
  if (!workingLoad || breakingLoad === null) return 'cannot tell';
  if (steady > workingLoad.value || snatch > breakingLoad) return 'too weak';
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
export const loadSum = ({ loaded }: OutingContext, row: ChainRow): SumRef =>
  row.chain && row.snatch !== null && row.snatch > row.steady
    ? snatchSum(row, row.chain)
    : steadySum(loaded, row);

function byLoad({ outing, loaded }: OutingContext, row: ChainRow): Finding[] {
  const { gap, chain, snatch, verdict } = row;
  const where = { gap, vehicle: outing.train.vehicles[gap].id };
  if (!chain || snatch === null || verdict === 'holds') return [];
  const load = chain.workingLoad;
  if (!load || chain.breakingLoad === null) {
    return [
      makeFinding('chain-strength-unknown', row.tailBrakes ? 'notes' : 'unknown', 'parting', {
        where,
        required: amount(row.steady, 'force'),
        sum: steadySum(loaded, row),
        source: '49 CFR 393.108',
        measure: 'coupling.chain.size',
      }),
    ];
  }
  const steady = row.steady > load.value;
  const [found, required] = steady ? [row.steady, load.value] : [snatch, chain.breakingLoad];
  const spent = verdict === 'holds, then replace';
  return [
    makeFinding('chain-too-weak', spent || row.tailBrakes ? 'notes' : 'forbids', 'parting', {
      where,
      found: amount(found, 'force'),
      required: amount(spent ? load.value : required, 'force'),
      margin: 1 - found / (spent ? load.value : required),
      sum: steady ? steadySum(loaded, row) : snatchSum(row, chain),
      facts: {
        by: load.by,
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
