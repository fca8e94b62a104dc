/**
 * What if one thing fails? Each single failure by itself, at its worst place, from running speed: does the whole
 * train stop, how far on, and what does it meet if not.
 *
 * A train brake lost where the brakes left do not hold the fall forbids. A driver who falls ill is a note: hardly
 * any railway of this kind has a dead man's handle. A cock left shut is found by the running brake test: it limits
 * where the train would run away.
 */

import { amount } from '../../base/quantity.ts';
import type { Careful } from '../../motion/caution.ts';
import type { OutingContext } from '../../outing/open.ts';
import { frictionAt } from '../../things/brake/force.ts';
import { taken } from '../assumptions/taken.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding } from '../make.ts';
import { endingOf, onlyIfHigh, rollFinding, worse, worseRoll } from '../part/ask.ts';
import { type Bodies, basisOf } from '../part/basis.ts';
import { type GapMap, startNodes } from '../part/map.ts';
import type { Basis } from '../part/part.ts';
import { type Outcome, outcomes } from '../part/types.ts';
import { wholeMaps } from '../part/whole.ts';
import type { Findings } from '../question.ts';
import { type Case, casesOf, type Failure, failures } from './left.ts';

export interface FailureRow extends Case {
  readonly outcome: Outcome;
  /** Where the train's head is as it fails, m, and its speed, m/s: the worst place. */
  readonly at: number;
  readonly speed: number;
  /** m that it goes on, to rest or to what it meets; negative: it ends behind. */
  readonly way: number;
  /** Where its head ends, m, unwrapped. */
  readonly end: number;
  readonly time: number;
  readonly topSpeed: number;
  /** Greatest speed once it has stood and rolled off again, m/s. */
  readonly rollsOff: number;
  /** Speed at what it meets, m/s. */
  readonly metAt: number;
  /** Index of the line's place rolled through. */
  readonly place?: number;
  /** m that it would go on from there with nothing failed. */
  readonly usual: number;
  readonly map: GapMap;
  readonly index: number;
}

export interface FailureQuestion {
  readonly context: OutingContext;
  /** How unlucky: as one in a hundred, with the brakes that are left. */
  readonly careful: Careful;
  /** Running speed by node of the speed map's grid, m/s. */
  readonly speeds: Float64Array;
  readonly bodies: Bodies;
  readonly basis?: Basis;
  /** m between the places looked at; absent: as the answer looks. */
  readonly spacing?: number;
  /** Follow every cock in turn; else the one that leaves the least brake. */
  readonly each?: boolean;
}

/** m between the places that the answer looks at. */
const HASTE = 3;

/** The worst case of each failure, in the order of `failures`. */
export function askFailures(question: FailureQuestion): Findings<FailureRow[]> {
  const { context, careful, speeds, bodies, spacing, each } = question;
  const basis = question.basis ?? basisOf(context, speeds.length - 1, bodies);
  const nodes = startNodes(basis, spacing ?? HASTE);
  if (nodes.length === 0) return { findings: [], data: [] };
  const maps = wholeMaps(basis, careful, nodes, speeds);
  const all = casesOf(context);
  const cases = (each ? all : strongestCocks(all)).map((c) => ({
    ...c,
    map: maps.of(c.left, c.vehicle ?? 0),
  }));
  const usual = cases[0].map;
  const rows = cases.map((c) => rowOf(c, usual));
  const data = failures.flatMap((failure) => {
    const of = rows.filter((r) => r.failure === failure);
    // What surely ends so is told before what does so by an assumed centre of gravity.
    const sure = of.filter(({ map }) => !onlyIfHigh(context, map));
    const rated = sure.some((r) => endingOf(r.outcome) === 'runs-away') ? sure : of;
    return of.length > 0 ? [rated.reduce((a, b) => (worseRow(b, a) ? b : a))] : [];
  });
  // A train that does not stop with everything in order is told of elsewhere.
  const sound = endingOf(data[0].outcome) === 'stands';
  if (!sound) return { findings: [], data };
  const found = worstOfCocks(data.flatMap((row) => findingsOf(context, row)));
  return { findings: [...found, ...noticeTaken(context, all)], data };
}

/** Whose guard must see that nobody drives. */
function noticeTaken({ outing }: OutingContext, cases: readonly Case[]): Finding[] {
  const groups = cases.flatMap(({ failure, left }) => (failure === 'driver' ? left.groups : []));
  const names = groups.map((g) => outing.train.vehicles[g.vehicle].name);
  return taken(
    'guard-notice',
    'time until a guard sees that nobody drives',
    outing.assumed.guardNotice,
    names,
  );
}

/** Of the cocks of a kind the one that leaves the least brake: nearly always the worst, at a tenth of the work. */
function strongestCocks(cases: readonly Case[]): Case[] {
  const brake = ({ left }: Case): number =>
    left.groups.reduce((sum, g) => sum + g.block.value * (g.friction ? frictionAt(g.friction, 0, 0) : 1), 0);
  const least = (failure: Failure): Case[] => {
    const of = cases.filter((c) => c.failure === failure);
    return of.length > 0 ? [of.reduce((a, b) => (brake(b) < brake(a) ? b : a))] : [];
  };
  const others = cases.filter((c) => c.failure !== 'cock' && c.failure !== 'pipe');
  return [...others, ...least('cock'), ...least('pipe')];
}

const wayAt = (map: GapMap, i: number): number => map.end[i] - map.at[i];

function rowOf(c: Case & { readonly map: GapMap }, usual: GapMap): FailureRow {
  const { map } = c;
  let index = 0;
  for (let i = 1; i < map.at.length; i++) if (worseAt(map, i, index)) index = i;
  return {
    ...c,
    index,
    outcome: outcomes[map.outcome[index]],
    at: map.at[index],
    speed: map.speed[index],
    way: wayAt(map, index),
    end: map.end[index],
    time: map.time[index],
    topSpeed: map.topSpeed[index],
    rollsOff: map.rollsOff[index],
    metAt: map.metAt[index],
    ...(map.place[index] >= 0 ? { place: map.place[index] } : {}),
    usual: wayAt(usual, index),
  };
}

/** Worse: by what becomes of it; among stops the longer, else the faster. */
function worseAt(map: GapMap, i: number, j: number): boolean {
  const stands = (at: number): boolean => outcomes[map.outcome[at]] === 'stands';
  return stands(i) && stands(j) ? wayAt(map, i) > wayAt(map, j) : worse(map, i, map, j);
}

function worseRow(a: FailureRow, b: FailureRow): boolean {
  return a.outcome === 'stands' && b.outcome === 'stands' ? a.way > b.way : worseRoll(a, b);
}

/** How much a failure that leaves the train running weighs. */
const severityOf: Readonly<Record<Exclude<Failure, 'nothing'>, Severity>> = {
  hose: 'forbids',
  supply: 'forbids',
  driver: 'notes',
  cock: 'limits',
  pipe: 'limits',
};

function findingsOf(context: OutingContext, row: FailureRow): Finding[] {
  const { failure } = row;
  if (failure === 'nothing') return [];
  const ending = endingOf(row.outcome);
  if (ending === 'stands') return late(context, row);
  const severity = severityOf[failure];
  const runs = ending === 'runs-away';
  const finding = rollFinding(
    context,
    row.map,
    row.index,
    { code: runs ? 'failure-runs-away' : 'failure-rolls-back', facts: { failure, lost: lostKinds(row) } },
    Math.abs(row.way),
    !runs && severity === 'forbids' ? 'limits' : severity,
  );
  return [{ ...finding, where: { ...whereOf(context, row), from: row.at, to: row.at } }];
}

const lostKinds = ({ left }: FailureRow): string =>
  [...new Set([...left.lost, ...left.unknown].map(({ gear }) => gear.kind))].join(', ');

function whereOf({ outing }: OutingContext, { vehicle, failure }: FailureRow): Finding['where'] {
  if (vehicle === undefined) return {};
  const id = outing.train.vehicles[vehicle].id;
  return failure === 'cock' ? { vehicle: id } : { vehicle: id, gap: vehicle };
}

const failureOf = ({ facts }: Finding): Failure | undefined =>
  'failure' in facts ? facts.failure : undefined;

/** A cock shut in the pipe or on one vehicle: one answer finds both, so the worse is said. */
function worstOfCocks(findings: readonly Finding[]): Finding[] {
  const ofCocks = findings.filter((f) => failureOf(f) === 'cock' || failureOf(f) === 'pipe');
  const runs = (f: Finding): number => (f.code === 'failure-stops-late' ? 0 : 1);
  const worst = [...ofCocks].sort((a, b) => runs(b) - runs(a) || (b.found?.si ?? 0) - (a.found?.si ?? 0))[0];
  return findings.filter((f) => !ofCocks.includes(f) || f === worst);
}

/** It stops, but later: what the running brake test is for. The loss of the whole train brake is told elsewhere. */
function late(context: OutingContext, row: FailureRow): Finding[] {
  const { failure, way, usual } = row;
  const worth = context.outing.assumed.practice.late.value;
  if ((failure !== 'cock' && failure !== 'pipe') || way < worth * usual) return [];
  return [
    makeFinding('failure-stops-late', 'notes', 'parting', {
      where: { ...whereOf(context, row), from: row.at, to: row.at },
      found: amount(way, 'length'),
      required: amount(usual, 'length'),
      facts: { failure, speed: amount(row.speed, 'speed') },
      sure: 'assumed',
      source: 'engine',
    }),
  ];
}
