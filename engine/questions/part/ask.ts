/**
 * What happens if the train parts? For every gap whose chain does not hold, the worst that becomes of the
 * tail at any place at running speed; where all chains hold, that they do and by how much.
 */

import { amount } from '../../base/quantity.ts';
import type { Scenario } from '../../motion/scenario.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type ChainRow, loadSum } from '../chains/ask.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type Bodies, basisOf } from './basis.ts';
import { driverRides } from './brakes-left.ts';
import { type GapMap, halvesAt, mapGap, startNodes } from './map.ts';
import { runawaySum } from './runaway.ts';
import { type Outcome, outcomes } from './types.ts';

export interface GapParting {
  readonly gap: number;
  readonly chain: ChainRow['verdict'];
  /** Absent where the chain holds. */
  readonly map?: GapMap;
}

export interface PartingQuestion {
  readonly context: OutingContext;
  readonly chains: readonly ChainRow[];
  /** How unlucky: 0 likely, 1 everything at its unsafe bound; the share of a cautious stop. */
  readonly caution: Scenario;
  /** Running speed by node of the speed map's grid, m/s. */
  readonly speeds: Float64Array;
  readonly bodies: Bodies;
  /** m between the places looked at; absent: 1 for all gaps, else coarse enough for the answer's haste. */
  readonly spacing?: number;
  /** Look also at gaps whose chain holds, and at the heads. */
  readonly all?: boolean;
}

/** m between the places that the answer looks at; the map of the parting itself looks at every metre. */
const HASTE = 3;

export const chainHolds = (verdict: ChainRow['verdict']): boolean =>
  verdict === 'holds' || verdict === 'holds, then replace';

export function askParting(question: PartingQuestion): Findings<GapParting[]> {
  const data = partings(question);
  const loose = data.flatMap(({ map, chain }) => (map && !chainHolds(chain) ? [map] : []));
  return {
    findings: [...heldFindings(question), ...looseFindings(question.context, loose)],
    data,
  };
}

function partings({
  context,
  chains,
  speeds,
  bodies,
  spacing,
  all,
  caution: scenario,
}: PartingQuestion): GapParting[] {
  if (!all && chains.every((row) => chainHolds(row.verdict))) {
    return chains.map(({ gap, verdict }) => ({ gap, chain: verdict }));
  }
  const basis = basisOf(context, speeds.length - 1, bodies);
  const nodes = startNodes(basis, spacing ?? (all ? 1 : HASTE));
  return chains.map(({ gap, verdict }): GapParting => {
    if (!all && chainHolds(verdict)) return { gap, chain: verdict };
    return { gap, chain: verdict, map: mapGap(basis, halvesAt(basis, gap, scenario), nodes, speeds, all) };
  });
}

/** All gaps are chained and every chain holds what would part. */
function heldFindings({ context, chains }: PartingQuestion): Finding[] {
  if (chains.length === 0 || !chains.every((row) => chainHolds(row.verdict))) return [];
  const spare = chains.map(spareOf);
  const least = spare.indexOf(Math.min(...spare));
  const row = chains[least];
  return [
    makeFinding('parting-held-by-chains', 'notes', 'parting', {
      where: { gap: row.gap, vehicle: context.outing.train.vehicles[row.gap].id },
      found: amount(Math.max(row.steadyOnOne, row.snatch ?? 0), 'force'),
      margin: spare[least],
      facts: { gaps: chains.length },
      ...loadSum(context, row),
      sure: 'assumed',
      source: 'engine',
    }),
  ];
}

/** Share of its strength that a chain has left: of the working load when steady, of the breaking load in the snatch. */
function spareOf({ chain, steadyOnOne: steady, snatch }: ChainRow): number {
  const work = chain?.workingLoad?.value;
  const breaks = chain?.bearsOnce;
  if (!work || !breaks) return -1;
  return 1 - Math.max(steady / work, (snatch ?? 0) / breaks);
}

const codeOf: Readonly<Record<Outcome, 'tail-stands' | 'tail-rolls-back' | 'tail-runs-away'>> = {
  stands: 'tail-stands',
  rolls: 'tail-rolls-back',
  'rolls-through-place': 'tail-runs-away',
  'meets-following': 'tail-runs-away',
  'runs-round': 'tail-runs-away',
  'leaves-line': 'tail-runs-away',
  overturns: 'tail-runs-away',
};

const severityOf: Readonly<Record<string, Severity>> = {
  'tail-stands': 'notes',
  'tail-rolls-back': 'limits',
  'tail-runs-away': 'forbids',
};

/** The worst gap of each kind, worst kind first; and what becomes of a head that nobody drives. */
function looseFindings(context: OutingContext, maps: readonly GapMap[]): Finding[] {
  const worst = maps.map((map) => ({ map, at: worstPlace(map) }));
  const byCode = new Map<string, { map: GapMap; at: number }[]>();
  for (const w of worst) {
    const code = codeOf[outcomes[w.map.outcome[w.at]]];
    byCode.set(code, [...(byCode.get(code) ?? []), w]);
  }
  const findings = [...byCode.values()].map((of) => {
    const first = of.reduce((a, b) => (worse(b.map, b.at, a.map, a.at) ? b : a));
    return tailFinding(
      context,
      first.map,
      first.at,
      of.length,
      Math.max(...of.map(({ map }) => longest(map))),
    );
  });
  return [...findings, ...unmannedHead(context, maps)];
}

export function worstPlace(map: GapMap): number {
  let worst = 0;
  for (let i = 1; i < map.at.length; i++) if (worse(map, i, map, worst)) worst = i;
  return worst;
}

function worse(a: GapMap, i: number, b: GapMap, j: number): boolean {
  if (a.outcome[i] !== b.outcome[j]) return a.outcome[i] > b.outcome[j];
  return a.topSpeed[i] > b.topSpeed[j];
}

/** The longest way of a tail to where it ends, wherever it parted, m. */
const longest = ({ at, end }: GapMap): number =>
  end.reduce((most, s, i) => Math.max(most, Math.abs(s - at[i])), 0);

/** @param farthest the longest way of any tail of this kind, m */
function tailFinding(
  context: OutingContext,
  map: GapMap,
  at: number,
  gaps: number,
  farthest: number,
): Finding {
  const { line, outing } = context;
  const outcome = outcomes[map.outcome[at]];
  const sum = runawaySum(context, map.halves.tail, map.at[at], map.speed[at]);
  const code = codeOf[outcome];
  const place = map.place[at] >= 0 ? line.places[map.place[at]].name : undefined;
  const share = map.outcome.reduce((n, o) => (codeOf[outcomes[o]] === code ? n + 1 : n), 0) / map.at.length;
  return makeFinding(code, severityOf[code], 'parting', {
    where: {
      gap: map.gap,
      vehicle: outing.train.vehicles[map.gap].id,
      from: map.at[at],
      to: map.at[at],
    },
    found: amount(map.topSpeed[at], 'speed'),
    ...(code === 'tail-stands' ? {} : { margin: -share }),
    facts: {
      outcome,
      speed: amount(map.speed[at], 'speed'),
      met: amount(map.metAt[at], 'speed'),
      time: amount(map.time[at], 'time'),
      way: amount(code === 'tail-stands' ? farthest : Math.abs(map.end[at] - map.at[at]), 'length'),
      side: map.end[at] < map.at[at] ? 'back' : 'on',
      gaps,
      share: amount(share, 'ratio'),
      leaks: map.halves.tailLeft.leaking.length > 0 ? 'yes' : 'no',
      ...(place === undefined ? {} : { place }),
    },
    ...(sum ? { sum } : {}),
    sure: 'assumed',
    source: 'engine',
  });
}

/** The driver rides behind the gap: the engine goes on by itself. */
function unmannedHead(context: OutingContext, maps: readonly GapMap[]): Finding[] {
  const gap = maps.find(({ gap }) => !driverRides(context, 0, gap))?.gap;
  if (gap === undefined) return [];
  return [
    makeFinding('head-unmanned', 'limits', 'parting', {
      where: { gap, vehicle: context.outing.train.vehicles[gap].id },
      source: 'common practice, no source',
    }),
  ];
}
