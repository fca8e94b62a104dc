/**
 * What happens if the train parts? For every gap whose chain does not hold, the worst that becomes of the
 * tail at any place at running speed; where all chains hold, that they do and by how much.
 */

import { amount } from '../../base/quantity.ts';
import type { Careful } from '../../motion/caution.ts';
import type { OutingContext } from '../../outing/open.ts';
import { isElectric } from '../../things/brake/kinds/index.ts';
import { unsaidAt } from '../../things/train/chains.ts';
import { tareCentre } from '../balance/body.ts';
import type { ChainRow } from '../chains/row.ts';
import { heaviestLoad } from '../chains/say.ts';
import type { failureFindings } from '../failures/findings.ts';
import type { Failure } from '../failures/left.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type Bodies, basisOf } from './basis.ts';
import { driverRides } from './brakes-left.ts';
import type { partFindings } from './findings.ts';
import { type GapMap, halvesAt, mapGap, startNodes, trafficOf } from './map.ts';
import type { Basis } from './part.ts';
import { emptyRoll, roll } from './roll.ts';
import { runawaySum } from './runaway.ts';
import { type Outcome, outcomes, type Roll } from './types.ts';
import { hoseOff, wholeMaps } from './whole.ts';

export interface GapParting {
  readonly gap: number;
  readonly chain: ChainRow['verdict'];
  /** What becomes of the tail. Absent where the chain holds. */
  readonly map?: GapMap;
  /** Where the chain holds: what becomes of the whole train with the brakes left to it. */
  readonly held?: GapMap;
}

export interface PartingQuestion {
  readonly context: OutingContext;
  readonly chains: readonly ChainRow[];
  /** How unlucky: each part as one in a hundred of its own. */
  readonly careful: Careful;
  /** Running speed by node of the speed map's grid, m/s. */
  readonly speeds: Float64Array;
  readonly bodies: Bodies;
  /** Where it is at hand already. */
  readonly basis?: Basis;
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
  // Where nothing is lost, the train runs on with the brakes that it had.
  const held = data.flatMap(({ held }) => (held && losesBrakes(held) ? [held] : []));
  const loose = data.flatMap(({ map, chain }) => (map && !chainHolds(chain) ? [map] : []));
  return {
    findings: [
      ...heldFindings(question),
      ...worstFindings(question.context, loose, tailCodes),
      ...worstFindings(question.context, held, heldCodes),
      ...unmannedHead(question.context, loose),
    ],
    data,
  };
}

const losesBrakes = ({ halves: { tailLeft } }: GapMap): boolean =>
  tailLeft.lost.length > 0 || tailLeft.unknown.length > 0;

function partings({
  context,
  chains,
  speeds,
  bodies,
  spacing,
  all,
  careful,
  basis: known,
}: PartingQuestion): GapParting[] {
  if (chains.length === 0) return [];
  const basis = known ?? basisOf(context, speeds.length - 1, bodies);
  const nodes = startNodes(basis, spacing ?? (all ? 1 : HASTE));
  const whole = wholeMaps(basis, careful, nodes, speeds);
  return chains.map(({ gap, verdict }): GapParting => {
    const holds = chainHolds(verdict);
    const loose = all || !holds;
    return {
      gap,
      chain: verdict,
      ...(loose ? { map: mapGap(basis, halvesAt(basis, gap, careful), nodes, speeds, all) } : {}),
      ...(holds ? { held: hoseOff(basis, whole, gap, false) } : {}),
    };
  });
}

/** All gaps are chained and every chain holds what would part. */
function heldFindings({ context, chains }: PartingQuestion): Finding[] {
  if (chains.length === 0 || !chains.every((row) => chainHolds(row.verdict))) return [];
  const loads = chains.flatMap((row) => {
    const load = heaviestLoad(row);
    return load ? [{ ...load, gap: row.gap }] : [];
  });
  if (loads.length === 0) return [];
  const { gap, way, found, spare, sum } = loads.reduce((a, b) => (b.spare < a.spare ? b : a));
  return [
    makeFinding('parting-held-by-chains', 'notes', 'parting', {
      where: { gap, vehicle: context.outing.train.vehicles[gap].id },
      found: amount(found, 'force'),
      margin: spare,
      facts: { gaps: chains.length, way },
      ...(sum ? { sum } : {}),
      sure: 'assumed',
      source: 'engine',
    }),
  ];
}

/** How bad an end is: all that it meets on the way is a runaway. */
export type Ending = 'stands' | 'rolls' | 'runs-away';

export const endingOf = (outcome: Outcome): Ending =>
  outcome === 'stands' || outcome === 'rolls' ? outcome : 'runs-away';

const severityOf: Readonly<Record<Ending, Severity>> = {
  stands: 'notes',
  rolls: 'limits',
  'runs-away': 'forbids',
};

type PartedCode = Exclude<keyof typeof partFindings, 'head-unmanned' | 'parting-held-by-chains'>;
type FailedCode = Exclude<keyof typeof failureFindings, 'failure-stops-late'>;

/** What is told of something that rolls: beside where it ends, of how many gaps, or what failed. */
type Told =
  | { readonly code: PartedCode; readonly facts: { readonly gaps: number } }
  | { readonly code: FailedCode; readonly facts: { readonly failure: Failure; readonly lost: string } };

/** Codes by ending; an ending without one is said by another finding. */
type Codes = Readonly<Partial<Record<Ending, PartedCode>>>;

const tailCodes: Codes = { stands: 'tail-stands', rolls: 'tail-rolls-back', 'runs-away': 'tail-runs-away' };
const heldCodes: Codes = { rolls: 'held-train-rolls-back', 'runs-away': 'held-train-runs-away' };

/** The worst gap of each ending. */
function worstFindings(context: OutingContext, maps: readonly GapMap[], codes: Codes): Finding[] {
  // A train that stands nowhere whole on its line is longer than the line: that is said, and it parts nowhere.
  const worst = maps.filter(({ at }) => at.length > 0).map((map) => ({ map, at: worstPlace(map) }));
  const byEnding = new Map<Ending, { map: GapMap; at: number }[]>();
  for (const w of worst) {
    const ending = endingOf(outcomes[w.map.outcome[w.at]]);
    byEnding.set(ending, [...(byEnding.get(ending) ?? []), w]);
  }
  return [...byEnding].flatMap(([ending, of]) => {
    const code = codes[ending];
    if (code === undefined) return [];
    // What surely ends so is told before what does so by an assumed centre of gravity.
    const sure = of.filter(({ map }) => !onlyIfHigh(context, map));
    const first = (sure.length > 0 ? sure : of).reduce((a, b) => (worse(b.map, b.at, a.map, a.at) ? b : a));
    const farthest = Math.max(...of.map(({ map }) => longest(map)));
    return [rollFinding(context, first.map, first.at, { code, facts: { gaps: of.length } }, farthest)];
  });
}

export function worstPlace(map: GapMap): number {
  let worst = 0;
  for (let i = 1; i < map.at.length; i++) if (worse(map, i, map, worst)) worst = i;
  return worst;
}

export const worse = (a: GapMap, i: number, b: GapMap, j: number): boolean =>
  a.outcome[i] === b.outcome[j] ? fastestAt(a, i) > fastestAt(b, j) : a.outcome[i] > b.outcome[j];

const fastestAt = ({ outcome, topSpeed, rollsOff }: GapMap, i: number): number =>
  fastest({ outcome: outcomes[outcome[i]], topSpeed: topSpeed[i], rollsOff: rollsOff[i] });

/** How it rolled and how it ended. */
export type Rolled = Pick<Roll, 'outcome' | 'topSpeed' | 'rollsOff'>;

/** How fast it gets, m/s: of what stood first and rolled off again, from there on. */
const fastest = ({ outcome, topSpeed, rollsOff }: Rolled): number =>
  outcome === 'rolls' ? rollsOff : topSpeed;

/** Worse by what becomes of it; else by how fast it gets. */
export const worseRoll = (a: Rolled, b: Rolled): boolean =>
  a.outcome === b.outcome
    ? fastest(a) > fastest(b)
    : outcomes.indexOf(a.outcome) > outcomes.indexOf(b.outcome);

/**
 * Whether nothing of this gap runs away but by going over where a vehicle does so whose centre of gravity nobody measured:
 * taken as high as its shape allows, it may ask, and not forbid.
 */
export function onlyIfHigh(context: OutingContext, map: GapMap): boolean {
  const { tail } = map.halves;
  if (tail.sureTip === undefined || map.outcome.every((o) => outcomes[o] !== 'overturns')) return false;
  const measured = { ...tail, tip: tail.sureTip };
  const out = emptyRoll();
  return map.at.every((at, i) => {
    roll(measured, Math.round(at / tail.step), map.speed[i], trafficOf({ context }), out);
    return endingOf(out.outcome) !== 'runs-away';
  });
}

const unmeasuredIn = ({ loaded }: OutingContext, { halves: { tail } }: GapMap): string =>
  loaded.vehicles
    .slice(tail.first, tail.last + 1)
    .filter(({ vehicle }) => tareCentre(vehicle)?.known === false)
    .map(({ vehicle }) => vehicle.name)
    .join(' or ');

/** The longest way of a tail to where it ends, wherever it parted, m. */
const longest = ({ at, end }: GapMap): number =>
  end.reduce((most, s, i) => Math.max(most, Math.abs(s - at[i])), 0);

/**
 * What becomes of a tail, or of a whole train, from one place of its map.
 *
 * @param farthest the longest way of any of this kind, m
 */
export function rollFinding(
  context: OutingContext,
  map: GapMap,
  at: number,
  { code, facts }: Told,
  farthest: number,
  severity?: Severity,
): Finding {
  const { line, outing } = context;
  const outcome = outcomes[map.outcome[at]];
  const sum = runawaySum(context, map.halves.tail, map.at[at], map.speed[at]);
  const ending = endingOf(outcome);
  // Counted as lost, and worth asking for where that decides.
  const silent = ending === 'stands' ? undefined : map.halves.tailLeft.unknown[0]?.gear;
  const place = map.place[at] >= 0 ? line.places[map.place[at]].name : undefined;
  const share =
    map.outcome.reduce((n, o) => (endingOf(outcomes[o]) === ending ? n + 1 : n), 0) / map.at.length;
  // A chain that hangs there may hold it, if it is fastened.
  const weighs = severity ?? severityOf[ending];
  const chain = severity === undefined && weighs === 'forbids' && unsaidAt(outing.train, map.gap);
  const high = weighs === 'forbids' && !chain && onlyIfHigh(context, map);
  return makeFinding(code, chain || high ? 'unknown' : weighs, 'parting', {
    ...(chain ? { measure: 'train.chainsFastened' } : high ? { measure: 'vehicle.centreHeight' } : {}),
    where: {
      gap: map.gap,
      vehicle: outing.train.vehicles[map.gap].id,
      from: map.at[at],
      to: map.at[at],
    },
    found: amount(fastestAt(map, at), 'speed'),
    ...(ending === 'stands' ? {} : { margin: -share }),
    facts: {
      outcome,
      speed: amount(map.speed[at], 'speed'),
      met: amount(map.metAt[at], 'speed'),
      time: amount(map.time[at], 'time'),
      way: amount(ending === 'stands' ? farthest : Math.abs(map.end[at] - map.at[at]), 'length'),
      side: map.end[at] < map.at[at] ? 'back' : 'on',
      ...facts,
      share: amount(share, 'ratio'),
      leaks: map.halves.tailLeft.leaking.length > 0,
      ...(high ? { unmeasured: unmeasuredIn(context, map) } : {}),
      ...(place === undefined ? {} : { place }),
    },
    ...(sum ? { sum } : {}),
    ...(silent && isElectric(silent.kind) ? { measure: `vehicle.brakes.${silent.id}.onSupplyLoss` } : {}),
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
