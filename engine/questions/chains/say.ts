/** What is said of the chains: one line for the train, of the worst gap, and how many others there are. */

import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { ChainGear } from '../../things/chain/chain.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { ChainRow } from './row.ts';

/** Breaking ÷ steady load that the trade asks of a chain. */
const FACTOR = 4;

export function chainFindings(context: OutingContext, rows: readonly ChainRow[]): Finding[] {
  const loaded = rows.flatMap((row) => strainOf(row) ?? []);
  const silent = rows.flatMap((row) => silenceOf(row) ?? []);
  return [...byRule(context, rows), ...byLoad(context, loaded), ...byWay(context, silent)];
}

function byRule({ outing }: OutingContext, rows: readonly ChainRow[]): Finding[] {
  const rule = outing.host.chainLoad;
  if (!rule) return [];
  const short = rows.flatMap(({ gap, chain }) =>
    chain?.workingLoad && chain.workingLoad.value < rule.value ? [{ gap, load: chain.workingLoad }] : [],
  );
  if (short.length === 0) return [];
  const { gap, load } = short.reduce((a, b) => (b.load.value < a.load.value ? b : a));
  return [
    makeFinding('chain-too-weak', 'forbids', 'host', {
      where: { gap, vehicle: outing.train.vehicles[gap].id },
      found: amount(load.value, 'force'),
      required: amount(rule.value, 'force'),
      margin: load.value / rule.value - 1,
      facts: { by: load.by, way: 'rule', others: short.length - 1 },
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

/** What the chain holds on the steepest grade. */
const steadySum = ({ steady, steadyMass }: ChainRow): SumRef => ({
  id: 'grade-force',
  inputs: { mass: steadyMass, grade: steady / (steadyMass * GRAVITY) },
});

const snatchSum = (
  { slack }: ChainGear,
  { head, tail, pull, stiffness, headSprung, tailSprung }: NonNullable<ChainRow['snatch']>,
): SumRef => ({
  id: 'chain-snatch',
  inputs: {
    mass: head,
    'other-mass': tail,
    slack,
    pull,
    stiffness,
    sprung: headSprung,
    'other-sprung': tailSprung,
  },
});

const workSum = (
  { slack, elongation, breaks }: ChainGear,
  { pull, length, fullness }: NonNullable<ChainRow['work']>,
): SumRef => ({
  id: 'chain-energy',
  inputs: { pull, slack, length, elongation: elongation ?? 0, fullness, breaking: breaks ?? 0 },
});

type Way = 'steady' | 'stretch' | 'snatch';

/** One load on a chain and what bears it, N. */
interface Load extends OneSum {
  readonly way: Way;
  readonly found: number;
  readonly bears: number;
  readonly by: string;
}

/** What is asked of the chain at a gap against what is known to bear it; none where neither size nor load is known. */
function loadsOf(row: ChainRow): Load[] {
  const { chain, snatch, work } = row;
  if (!chain?.workingLoad || chain.breaks === null || !snatch || !work) return [];
  const { workingLoad, breaks, part } = chain;
  const steady = ofOne(row, steadySum(row));
  const loads: Load[] = [
    { way: 'steady', found: row.steadyOnOne, bears: workingLoad.value, by: workingLoad.by, ...steady },
    { way: 'stretch', found: work.breaks, bears: breaks, by: 'chain', ...ofOne(row, workSum(chain, work)) },
  ];
  if (!part) return loads;
  const peak = ofOne(row, snatchSum(chain, snatch));
  return [...loads, { way: 'snatch', found: snatch.force, bears: part.bears, by: part.name, ...peak }];
}

/** The load that takes most of what bears it at a gap. */
export const heaviestLoad = (row: ChainRow): (Load & { spare: number }) | undefined =>
  loadsOf(row)
    .map((load) => ({ ...load, spare: marginOf(load.found, load.bears) }))
    .reduce<(Load & { spare: number }) | undefined>(
      (a, b) => (a === undefined || b.spare < a.spare ? b : a),
      undefined,
    );

interface Strain {
  readonly row: ChainRow;
  readonly chain: ChainGear;
  readonly load: Load;
  readonly spent: boolean;
  readonly margin: number;
}

/** The load that is beyond a chain, or beyond its working load once; null where it holds, or cannot be told. */
function strainOf(row: ChainRow): Strain | null {
  const { chain, verdict, snatch } = row;
  if (!chain?.workingLoad || !snatch) return null;
  if (verdict === 'too weak') {
    const load = loadsOf(row).find(({ found, bears }) => found > bears);
    return load ? { row, chain, load, spent: false, margin: marginOf(load.found, load.bears) } : null;
  }
  if (verdict !== 'holds, then replace') return null;
  const { value, by } = chain.workingLoad;
  const peak = ofOne(row, snatchSum(chain, snatch));
  const load: Load = { way: 'snatch', found: snatch.force, bears: value, by, ...peak };
  return { row, chain, load, spent: true, margin: marginOf(load.found, value) };
}

const severityOf = ({ spent, row }: Strain): 'notes' | 'forbids' =>
  spent || row.tailBrakes ? 'notes' : 'forbids';

/** What forbids before what is noted, too weak before spent, then the thinner margin. */
function worseStrain(a: Strain, b: Strain): boolean {
  const weight = (s: Strain): number => (severityOf(s) === 'forbids' ? 2 : s.spent ? 0 : 1);
  return weight(a) === weight(b) ? a.margin < b.margin : weight(a) > weight(b);
}

function byLoad({ outing }: OutingContext, strains: readonly Strain[]): Finding[] {
  if (strains.length === 0) return [];
  const worst = strains.reduce((a, b) => (worseStrain(b, a) ? b : a));
  const close = outing.assumed.practice['chain-close'].value;
  const { row, chain, load, spent, margin } = worst;
  const enough = Math.max(
    FACTOR * row.steadyOnOne,
    row.work?.breaks ?? 0,
    chain.part ? (row.snatch?.force ?? 0) : 0,
  );
  return [
    makeFinding('chain-too-weak', severityOf(worst), 'parting', {
      where: { gap: row.gap, vehicle: outing.train.vehicles[row.gap].id },
      found: amount(load.found, 'force'),
      required: amount(load.bears, 'force'),
      // Spent is not broken: it holds, and no figure is short.
      ...(spent ? {} : { margin }),
      ...(load.sum ? { sum: load.sum } : {}),
      facts: {
        by: load.by,
        shares: chain.count === 1 ? 'one' : chain.difference === null ? 'not known' : 'known',
        way: spent ? 'spent' : load.way,
        slack: amount(chain.slack, 'length'),
        pull: amount((load.way === 'stretch' ? row.work?.pull : row.snatch?.pull) ?? 0, 'force'),
        tail: row.tailBrakes ? 'braked' : 'runs',
        others: strains.length - 1,
        ...(chain.slack > close ? { closer: amount(close, 'length') } : {}),
        ...(enough > Math.min(chain.breaks ?? 0, chain.part?.bears ?? Infinity)
          ? { breaks: amount(enough, 'force') }
          : {}),
      },
      sure: 'assumed',
      source:
        '49 CFR 393.108; breaking load by supplier’s chart citing NACM; stretch: ASTM A413 (from memory)',
    }),
  ];
}

interface Silence {
  readonly row: ChainRow;
  readonly chain: ChainGear;
  readonly way: 'size' | 'part';
}

/** Neither size nor marked load of the chain is known, or not what breaks a part in line with it. */
function silenceOf(row: ChainRow): Silence | null {
  const { chain, verdict } = row;
  return chain && verdict === 'cannot tell' ? { row, chain, way: chain.workingLoad ? 'part' : 'size' } : null;
}

/** One line for each thing to measure: of the gap that asks most. */
function byWay(context: OutingContext, silences: readonly Silence[]): Finding[] {
  return (['size', 'part'] as const).flatMap((way) => {
    const same = silences.filter((s) => s.way === way);
    if (same.length === 0) return [];
    const worst = same.reduce((a, b) => (asksMore(b, a) ? b : a));
    return [unknownFinding(context, worst, same.length - 1)];
  });
}

const askedOf = ({ way, row }: Silence): number =>
  way === 'size' ? row.steadyOnOne : (row.snatch?.force ?? 0);

/** Where the tail brakes by itself nothing hangs on it. */
const asksMore = (a: Silence, b: Silence): boolean =>
  a.row.tailBrakes === b.row.tailBrakes ? askedOf(a) > askedOf(b) : !a.row.tailBrakes;

function unknownFinding({ outing }: OutingContext, silence: Silence, others: number): Finding {
  const { row, chain, way } = silence;
  const sum = way === 'size' || !row.snatch ? steadySum(row) : snatchSum(chain, row.snatch);
  return makeFinding('chain-strength-unknown', row.tailBrakes ? 'notes' : 'unknown', 'parting', {
    where: { gap: row.gap, vehicle: outing.train.vehicles[row.gap].id },
    required: amount(askedOf(silence), 'force'),
    facts: {
      way,
      others,
      ...(way === 'part' && chain.part
        ? { part: chain.part.name, bears: amount(chain.part.bears, 'force') }
        : {}),
    },
    ...ofOne(row, sum),
    source: '49 CFR 393.108',
    measure: way === 'size' ? 'coupling.chain.size' : 'coupling.chain.weakestPartBreaks',
  });
}
