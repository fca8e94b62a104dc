/** The ways in which cars are counted and what sets each count, as the terminal, the screen and the card show them. */
import type { CarCount, CountLimit, CountWay as EngineWay } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';
import { gearStates } from '../engine/things/brake/system.ts';
import { chainage, distance, say, trade, type Voice } from '../words/voice.ts';

export type CountWay = EngineWay | 'host';

const words: Readonly<Record<CountWay, string>> = {
  pulled: 'started anywhere',
  stopped: 'stopped',
  heldByDriver: 'held by driver',
  held: 'with guard',
  heldByAll: 'held by all',
  host: 'host',
};

/** Ways and their names. Where no guard's brake helps, the driver alone decides what is held. */
export function countWays(cars: readonly CarCount[]): (readonly [CountWay, string])[] {
  const guarded = cars.some((c) => c.held !== c.heldByDriver);
  const held: readonly CountWay[] = guarded ? ['heldByDriver', 'held', 'heldByAll'] : ['held', 'heldByAll'];
  return (['pulled', 'stopped', ...held, 'host'] as const).map((way) => [
    way,
    way === 'held' && !guarded ? words.heldByDriver : words[way],
  ]);
}

/** What the figures mean. */
export const heldNote =
  'Each count is what goes without a limit of its kind: started anywhere; stopped from running speed within what is seen; held by brakes that do not leak off. The least is what nothing forbids: slower, on the brake, not stopping on the worst grade.';

/** "7", "3 to 8" where fewer do not, "none", "40 or more" where the search ended before it failed. */
export function countWords(count: CarCount, way: CountWay, more: (n: number) => string): string {
  const n = count[way];
  if (way === 'host') return n === null ? 'no rule' : `${n}`;
  if (n === null) return 'cannot tell';
  if (count.none.includes(way)) return 'none';
  const most = count.unlimited.includes(way) ? more(n) : `${n}`;
  const from = count.from[way];
  return from === undefined || from === n ? most : `${from} to ${most}`;
}

/** The most that may leave: "6", "none" where no number of cars may, "cannot tell". */
export const leastWords = ({ least, by }: CarCount): string =>
  least === null ? (by === null ? 'cannot tell' : 'none') : `${least}`;

/** "at most 6", "no number may leave", "how many cannot be told". */
export const mostWords = (count: CarCount): string =>
  count.least !== null
    ? `at most ${count.least}`
    : count.by === null
      ? 'how many may leave cannot be told'
      : 'no number may leave';

/** "started anywhere 3: with 4, at 348 ft it needs 283 lbf to start and the engine pulls 269 lbf". */
export function limitLines(
  count: CarCount,
  cars: readonly CarCount[],
  voice: Voice,
  order: 'as listed' | 'tightest first' = 'as listed',
): string[] {
  const ways = countWays(cars);
  if (order === 'tightest first') ways.sort(([a], [b]) => reaches(count, a) - reaches(count, b));
  return ways.flatMap(([way, name]) => {
    if (way !== 'pulled' && way !== 'stopped' && way !== 'held') return [];
    const limit = count.sets[way];
    if (!limit) return [];
    const n = countWords(count, way, (most) => `${most} or more`);
    const never = count.none.includes(way);
    return [`${name} ${n}: ${never ? '' : `with ${(count[way] ?? 0) + 1}, `}${limitWords(limit, voice)}`];
  });
}

const reaches = (count: CarCount, way: CountWay): number =>
  count.none.includes(way as EngineWay) ? -1 : (count[way] ?? Infinity);

/** What sets the most that may leave, in one clause; empty: nobody can tell, or the search ended first. */
export function leastReason({ by, host, leastSets, least }: CarCount, voice: Voice): string {
  if (by === 'host') return `the host allows ${host}`;
  if (!leastSets) return '';
  return `${least === null ? '' : `with ${least + 1}, `}${limitWords(leastSets, voice)}`;
}

const seen: Readonly<Record<string, string>> = {
  'stopping-assumed-sight': 'assumed to be seen',
  'stopping-end': 'left to the end of the line',
};

/** What it needs and what there is, and where. */
export function limitWords({ what, named = '', at, need, has }: CountLimit, voice: Voice): string {
  const where = at === undefined ? '' : `at ${chainage(voice, at)} `;
  if (what === 'no-brake') return 'the driver has no brake at all';
  if (!need || !has) return `${where}the brakes do not stop it`;
  const long = need.kind === 'length';
  const needs = long ? distance(voice, need.si, 'up') : say(voice, need, 'up');
  const there = long ? distance(voice, has.si, 'down') : say(voice, has, 'down');
  const grade = trade(voice.wording, 'grade');
  if (what === 'start') return `${where}it needs ${needs} to start, and the engine pulls ${there}`;
  if (what === 'hold') return `${where}the ${grade} pulls ${needs}, and the brakes hold ${there}`;
  if (what === 'cannot-stop') return `${where}the fall pulls ${needs}, and full brake holds back ${there}`;
  const ahead = named === '' ? 'seen' : `in sight of ${named}`;
  return `${where}the stop takes ${needs}, and ${there} is ${seen[what] ?? ahead}`;
}

/** Said with every count where it holds: what brakes the train is not the engine. */
export function engineBrakeNote(outing: Outing): string {
  const { vehicles } = outing.train;
  const engines = vehicles.flatMap((v, i) => (v.role === 'engine' ? [i] : []));
  if (engines.length === 0) return '';
  if (engines.every((i) => vehicles[i].brakes.length === 0)) return 'The engine has no brake of its own.';
  const answering = new Set(
    gearStates(outing)
      .filter((s) => s.answers)
      .map((s) => s.vehicle),
  );
  return engines.some((i) => answering.has(i))
    ? ''
    : "No brake of the engine's own answers its driver in a stop.";
}
