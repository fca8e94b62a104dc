/** What happens if an outing's train parts: the map of every gap, and one parting followed in time. */

import { inLineOrder, senseOf, type Turn, turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import type { Careful } from '../engine/motion/caution.ts';
import { likely } from '../engine/motion/scenario.ts';
import type { OutingContext } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { balance } from '../engine/questions/balance/question.ts';
import { chains } from '../engine/questions/chains/question.ts';
import type { ChainRow } from '../engine/questions/chains/row.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { askParting, chainHolds, type Rolled, worseRoll, worstPlace } from '../engine/questions/part/ask.ts';
import { type Bodies, basisOf } from '../engine/questions/part/basis.ts';
import { followParting, type HalfMotion, type PartingCase } from '../engine/questions/part/case.ts';
import type { GapMap } from '../engine/questions/part/map.ts';
import type { Basis } from '../engine/questions/part/part.ts';
import { type Outcome, outcomes } from '../engine/questions/part/types.ts';
import { longerThanLine } from '../engine/questions/ratings/ask.ts';
import { speed as speedQuestion } from '../engine/questions/speed/question.ts';
import { brakeKindWords } from '../words/findings/brakes.ts';

/** One place on the map of a gap, in the line's own chainage. */
export interface PartingPlace {
  /** Train's head at the parting, m, and its speed, m/s. */
  readonly at: number;
  readonly speed: number;
  readonly outcome: Outcome;
  /** Tail's front and rear where it ends, m. On a loop they may lie beyond its length: laps are counted on. */
  readonly endFront: number;
  readonly endRear: number;
  readonly time: number;
  readonly topSpeed: number;
  /** Greatest speed once it has stood and rolled off again, m/s; 0: it stays where it first stands. */
  readonly rollsOff: number;
  /** Speed at what it meets or where it goes over, m/s. */
  readonly metAt: number;
  /** Name of the place rolled through. */
  readonly place?: string;
  /** m that the head goes on; Infinity: it does not stop, or does not stay. */
  readonly headStop: number;
  /** A small error of survey or resistance may change where it ends. */
  readonly nearBalance: boolean;
}

export interface PartingGap {
  readonly gap: number;
  readonly chain: ChainRow['verdict'];
  readonly chainHolds: boolean;
  /** Where the chain holds: the worst that becomes of the whole train with the brakes left to it. */
  readonly held?: Rolled & { readonly at: number };
  /** If no chain held: by place, in the order of the line's chainage. */
  readonly places: readonly PartingPlace[];
  readonly worst: PartingPlace;
  /** Share of places by outcome. */
  readonly shares: Readonly<Record<Outcome, number>>;
}

export interface PartingLook {
  /** None where the train stands nowhere whole on its line: a finding says so. */
  readonly gaps: readonly PartingGap[];
  readonly findings: readonly Finding[];
}

export interface PartingAsk {
  /** Speed at the parting everywhere, m/s; absent: the running speed of each place. 0: parted standing. */
  readonly speed?: number;
  /** m between the places looked at; absent: 1. */
  readonly spacing?: number;
}

interface Opened {
  readonly context: OutingContext;
  /** Running speed on the map's grid, m/s. */
  readonly running: Float64Array;
  readonly bodies: Bodies;
  readonly chains: readonly ChainRow[];
  readonly turn: Turn;
  readonly careful: Careful;
}

function open(outing: Outing): Opened {
  const { context, ready, of } = inquire(outing);
  return {
    context,
    running: of(speedQuestion).data.running,
    bodies: of(balance).data.data,
    chains: of(chains).data,
    turn: turnOf(outing),
    careful: ready.careful,
  };
}

/** An outing held open: maps and single partings without preparing it again. */
export interface Partings {
  readonly look: (ask?: PartingAsk) => PartingLook;
  readonly play: (ask: PlayAsk) => PartingPlay;
}

export function openPartings(outing: Outing): Partings {
  const opened = open(outing);
  const basis = basisOf(opened.context, opened.running.length - 1, opened.bodies);
  return {
    look: (ask = {}) => lookInto(opened, outing, ask),
    play: (ask) => playFrom(opened, basis, outing, ask),
  };
}

function lookInto(opened: Opened, outing: Outing, { speed, spacing }: PartingAsk): PartingLook {
  const { context, running, bodies, chains, careful } = opened;
  const speeds = speed === undefined ? running : new Float64Array(running.length).fill(speed);
  const { data, findings } = askParting({
    context,
    chains,
    speeds,
    bodies,
    careful,
    all: true,
    ...(spacing === undefined ? {} : { spacing }),
  });
  return {
    gaps: data.flatMap(({ gap, chain, map, held }) =>
      map && map.at.length > 0 ? [gapOf(opened, gap, chain, map, held)] : [],
    ),
    findings: ranked(turnFindings(outing, [...longerThanLine(context), ...findings])),
  };
}

function gapOf(
  { context, turn }: Opened,
  gap: number,
  chain: ChainRow['verdict'],
  map: GapMap,
  held: GapMap | undefined,
): PartingGap {
  const { line, outing } = context;
  const { tail } = map.halves;
  const places = Array.from(map.at, (at, i): PartingPlace => {
    const place = map.place[i] >= 0 ? line.places[map.place[i]].name : undefined;
    return {
      at: turn(at),
      speed: map.speed[i],
      outcome: outcomes[map.outcome[i]],
      endFront: turn(map.end[i] - tail.front),
      endRear: turn(map.end[i] - tail.rear),
      time: map.time[i],
      topSpeed: map.topSpeed[i],
      rollsOff: map.rollsOff[i],
      metAt: map.metAt[i],
      ...(place === undefined ? {} : { place }),
      headStop: map.headStop[i],
      nearBalance: map.nearBalance[i] === 1,
    };
  });
  const worst = places[worstPlace(map)];
  const shares = Object.fromEntries(
    outcomes.map((o) => [o, places.filter((p) => p.outcome === o).length / places.length]),
  ) as Record<Outcome, number>;
  return {
    gap,
    chain,
    chainHolds: chainHolds(chain),
    ...(held ? { held: heldOf(held, turn) } : {}),
    places: inLineOrder(outing, places),
    worst,
    shares,
  };
}

function heldOf(map: GapMap, turn: Turn): NonNullable<PartingGap['held']> {
  const i = worstPlace(map);
  const [topSpeed, rollsOff] = [map.topSpeed[i], map.rollsOff[i]];
  return { outcome: outcomes[map.outcome[i]], at: turn(map.at[i]), topSpeed, rollsOff };
}

/** The gap at which what becomes of the tail is worst. */
export const worstGap = (gaps: readonly PartingGap[]): PartingGap =>
  gaps.reduce((a, b) => (worseRoll(b.worst, a.worst) ? b : a));

/** Neighbouring places with the same outcome, as one stretch. */
export interface PartingStretch {
  readonly from: number;
  readonly to: number;
  readonly outcome: Outcome;
}

export function stretchesOf({ places }: PartingGap): PartingStretch[] {
  const stretches: { from: number; to: number; outcome: Outcome }[] = [];
  for (const { at, outcome } of places) {
    const last = stretches[stretches.length - 1];
    if (last && last.outcome === outcome) last.to = at;
    else stretches.push({ from: last ? last.to : at, to: at, outcome });
  }
  return stretches;
}

export interface PlayAsk {
  readonly gap: number;
  /** Train's head at the parting, the line's own chainage, m. */
  readonly at: number;
  /** Absent: the running speed there. */
  readonly speed?: number;
  /** Absent: as the chain of the gap holds or not. */
  readonly chained?: boolean;
  /** Likely instead of cautious. */
  readonly likely?: boolean;
}

/** One half followed in time, in the line's own chainage. */
export interface HalfPlay {
  /** Index of its first and last vehicle. */
  readonly first: number;
  readonly last: number;
  readonly length: number;
  readonly time: Float64Array;
  /** Its front end, m; laps of a loop are counted on. */
  readonly front: Float64Array;
  /** m/s, negative against the running direction. */
  readonly speed: Float64Array;
  readonly outcome: Outcome;
  readonly topSpeed: number;
  readonly nearBalance: boolean;
  /** Names of the brakes that are left, that were lost, and that nobody can tell of. */
  readonly brakes: {
    readonly left: readonly string[];
    readonly lost: readonly string[];
    readonly unknown: readonly string[];
  };
  readonly leaks: boolean;
}

export interface PartingPlay {
  readonly gap: number;
  readonly at: number;
  readonly speed: number;
  readonly chained: boolean;
  /** +1: chainage grows in the running direction. */
  readonly sense: 1 | -1;
  readonly head: HalfPlay;
  readonly tail: HalfPlay;
  /** The braked head holds back the tail from the first: they go on as one, the tail pushing. */
  readonly together: boolean;
  /** Where the tail, once apart, runs into the head; the motion is not followed further. */
  readonly contact?: { readonly time: number; readonly speed: number };
  readonly place?: string;
  /** s until both have ended, or until they touch. */
  readonly duration: number;
}

function playFrom(opened: Opened, basis: Basis, outing: Outing, ask: PlayAsk): PartingPlay {
  const { context, running, chains, turn, careful } = opened;
  const here = turn(ask.at);
  const node = Math.min(running.length - 1, Math.max(0, Math.round(here / basis.grid.step)));
  const speed = ask.speed ?? running[node];
  const chained = ask.chained ?? chainHolds(chains[ask.gap].verdict);
  const luck = ask.likely ? likely : careful;
  const start = node * basis.grid.step;
  const apart = followParting(basis, ask.gap, start, speed, chained, luck);
  const meeting = chained ? undefined : touching(apart);
  // Unlucky, each half is so by itself, as in the map: then nobody counts on the head to hold the tail back.
  const together = ask.likely === true && meeting !== undefined && meeting.apart < AS_ONE;
  const { head, tail } = together ? followParting(basis, ask.gap, start, speed, true, luck) : apart;
  const place = tail.end.place >= 0 ? context.line.places[tail.end.place].name : undefined;
  return {
    gap: ask.gap,
    at: turn(node * basis.grid.step),
    speed,
    chained,
    sense: senseOf(outing),
    head: playOf(basis, head, turn),
    tail: playOf(basis, tail, turn),
    together,
    ...(meeting && !together ? { contact: { time: meeting.time, speed: meeting.speed } } : {}),
    ...(place === undefined ? {} : { place }),
    duration: together || !meeting ? Math.max(head.end.time, tail.end.time) : meeting.time,
  };
}

/** Halves that were never further apart than this stay one train, m: no more than slack. */
const AS_ONE = 0.1;

/** Where the tail reaches the head again: s, closing speed m/s, and how far apart they had been, m. */
function touching({ head, tail }: PartingCase): { time: number; speed: number; apart: number } | undefined {
  let apart = 0;
  for (let i = 1; i < tail.time.length; i++) {
    const gap = placeAt(head, tail.time[i]) - tail.at[i];
    if (gap < -1e-3) {
      const speed = Math.max(0, tail.speed[i] - speedAt(head, tail.time[i]));
      return { time: tail.time[i], speed, apart };
    }
    apart = Math.max(apart, gap);
  }
  return undefined;
}

const placeAt = (half: HalfMotion, t: number): number => sampledAt(half.time, half.at, t);
const speedAt = (half: HalfMotion, t: number): number => sampledAt(half.time, half.speed, t);

/** Linear between samples, the last one after its time. */
function sampledAt(time: Float64Array, values: Float64Array, t: number): number {
  const last = time.length - 1;
  if (t >= time[last]) return values[last];
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle] <= t) low = middle;
    else high = middle;
  }
  const share = time[high] > time[low] ? (t - time[low]) / (time[high] - time[low]) : 0;
  return values[low] + share * (values[high] - values[low]);
}

function playOf(basis: Basis, half: HalfMotion, turn: (s: number) => number): HalfPlay {
  const { vehicles } = basis.context.outing.train;
  const names = (gears: HalfMotion['brakes']['lost']): string[] =>
    gears.map(({ vehicle, gear }) => `${brakeKindWords(gear.name)} of ${vehicles[vehicle].name}`);
  const { groups, lost, unknown, leaking } = half.brakes;
  const left = groups.map(({ vehicle, gear }) => ({ vehicle, gear }));
  return {
    first: half.first,
    last: half.last,
    length: half.rear - half.front,
    time: half.time,
    front: half.at.map((s) => turn(s - half.front)),
    speed: half.speed,
    outcome: half.end.outcome,
    topSpeed: half.end.topSpeed,
    nearBalance: half.end.nearBalance,
    brakes: { left: [...new Set(names(left))], lost: names(lost), unknown: names(unknown) },
    leaks: leaking.length > 0,
  };
}

/** Where the front of a half is at a time, m. */
export const frontAt = ({ time, front }: HalfPlay, t: number): number => sampledAt(time, front, t);
/** Its speed then, m/s, negative backward. */
export const halfSpeedAt = ({ time, speed }: HalfPlay, t: number): number => sampledAt(time, speed, t);
