/** The ways in which cars are counted and what sets each count, as the terminal, the screen and the card show them. */
import type { CarCount, CountLimit, CountWay as EngineWay, HaulWay } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';
import { keptSpeed } from '../engine/questions/speed/slowest.ts';
import { gearStates } from '../engine/things/brake/system.ts';
import { printQuantity } from '../units/index.ts';
import { chainage, distance, say, trade, type Voice } from '../words/voice.ts';

export type CountWay = EngineWay | 'host';

const words: Readonly<Record<CountWay, string>> = {
  pulled: 'starts anywhere',
  pulledBooked: 'starts where booked',
  keepsSpeed: 'keeps',
  stopped: 'stopped',
  heldByDriver: 'held by driver',
  held: 'with guard',
  heldByAll: 'held by all',
  host: 'host',
};

/** Of whom a count is asked before there is any: the figure comes with it. */
type Asking = Pick<Voice, 'system'> & Partial<Pick<Voice, 'outing'>>;

/** "3 mph", "4.8 km/h". */
const kept = ({ system, outing }: Asking): string =>
  outing === undefined
    ? '…'
    : printQuantity(keptSpeed(outing), 'speed', { system, digits: system === 'imperial' ? 0 : 1 });

/** Ways and their names. Where no guard's brake helps, the driver alone decides what is held. */
export function countWays(cars: readonly CarCount[], voice: Asking): (readonly [CountWay, string])[] {
  const guarded = cars.some((c) => c.held !== c.heldByDriver);
  const held: readonly CountWay[] = guarded ? ['heldByDriver', 'held', 'heldByAll'] : ['held', 'heldByAll'];
  return (['pulled', 'pulledBooked', 'keepsSpeed', 'stopped', ...held, 'host'] as const).map((way) => [
    way,
    way === 'held' && !guarded
      ? words.heldByDriver
      : way === 'keepsSpeed'
        ? `${words.keepsSpeed} ${kept(voice)}`
        : words[way],
  ]);
}

const CANNOT_TELL = 'cannot tell';

/** "starts anywhere 7", "keeps 3 mph with 7", "keeps 3 mph: cannot tell". */
export const counted = (way: CountWay, name: string, n: string): string =>
  n === CANNOT_TELL ? `${name}: ${n}` : way === 'keepsSpeed' ? `${name} with ${n}` : `${name} ${n}`;

/** What the figures mean. */
export const heldNote =
  'Each count is what goes without a limit of its kind: one start in twenty may fail, wherever it stops, or where it is booked to (stops, signals, crossings, the start of the run); keeping a walking pace up the worst climb; stopped from running speed within what is seen, or slower; held by brakes that do not leak off. The least is what nothing forbids: slower, on the brake, not stopping on the worst grade.';

/** "7", "3 to 8" where fewer do not, "6 slower" where none is stopped from running speed, "none" where no car goes with it, "40 or more" where the search ended before it failed. */
export function countWords(count: CarCount, way: CountWay, more: (n: number) => string): string {
  const n = count[way];
  if (way === 'host') return n === null ? 'no rule' : `${n}`;
  if (n === null) return CANNOT_TELL;
  if (count.none.includes(way) || n === 0)
    return way === 'stopped' && count.stoppedSlower !== null ? `${count.stoppedSlower} slower` : NO_CAR;
  const most = count.unlimited.includes(way) ? more(n) : `${n}`;
  const from = count.from[way];
  return from === undefined || from === n ? most : `${from} to ${most}`;
}

/** No car, whether the engine alone would do or not: in every table and sentence. */
export const NO_CAR = 'none';

/** The most that may leave: "6", "none" where no car may go along, "cannot tell". */
export const leastWords = ({ least, by }: CarCount): string =>
  least === null && by === null ? CANNOT_TELL : least === null || least === 0 ? NO_CAR : `${least}`;

/** "at most 6", "no car, the engine alone", "no number may leave", "how many cannot be told". */
export const mostWords = (count: CarCount): string =>
  count.least === 0
    ? 'no car, the engine alone'
    : count.least !== null
      ? `at most ${count.least}`
      : count.by === null
        ? 'how many may leave cannot be told'
        : 'no number may leave';

/**
 * "starts anywhere 3 (1 start in 50 fails): the 4th car would need 14 lbf more pull: at 348 ft it needs 283 lbf to start,
 * and the engine pulls 269 lbf; 1 start in 9 fails".
 */
export function limitLines(
  count: CarCount,
  cars: readonly CarCount[],
  voice: Voice,
  order: 'as listed' | 'tightest first' = 'as listed',
): string[] {
  const ways = countWays(cars, voice);
  // What the driver alone can hold, or all together, is told beside what the crew can: it decides nothing.
  const shown =
    order === 'as listed'
      ? ways
      : ways
          .filter(([way]) => way !== 'heldByDriver' && way !== 'heldByAll')
          .sort(([a], [b]) => reaches(count, a) - reaches(count, b));
  return shown.flatMap(([way, name]) => {
    const limit = way === 'host' ? undefined : count.sets[way];
    if (way === 'host' || !limit) return [];
    const n = countWords(count, way, (most) => `${most} or more`);
    const odds = way in count.odds ? ` (${oddsWords(limit.what, count.odds[way as HaulWay] ?? 0)})` : '';
    const asIt = count.none.includes(way)
      ? 'the train as it is'
      : `the ${ordinal((count[way] ?? 0) + 1)} car`;
    const more = moreWords(limit, voice);
    const needs = more === '' ? `${asIt}: ` : `${asIt} would need ${more}: `;
    return [`${counted(way, name, n)}${slowerWords(count, way)}${odds}: ${needs}${limitWords(limit, voice)}`];
  });
}

/** Beside a count from running speed, where more are stopped slower. */
function slowerWords({ none, stopped, stoppedSlower }: CarCount, way: CountWay): string {
  if (way !== 'stopped' || stoppedSlower === null) return '';
  return none.includes('stopped') || stopped === 0
    ? ', none from running speed'
    : `, ${stoppedSlower} slower`;
}

/** " (6 slower)" behind a count from running speed, so that what it says does not seem to contradict the least. */
export const slowerBeside = ({ none, stopped, stoppedSlower }: CarCount, way: CountWay): string =>
  way === 'stopped' && stopped && !none.includes(way) && stoppedSlower !== null
    ? ` (${stoppedSlower} slower)`
    : '';

/** 1st, 2nd, 3rd, 4th … */
function ordinal(n: number): string {
  const teen = n % 100 > 10 && n % 100 < 14;
  return `${n}${teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')}`;
}

/** Fewer than this cannot be told from so many draws. */
const LEAST_ODDS = 0.01;

/** "1 start in 9 fails", "most starts fail". */
function oddsWords(what: string, share: number): string {
  const [one, many] = what === 'keep' ? ['climb', 'climbs'] : ['start', 'starts'];
  if (share >= 1) return `every ${one} fails`;
  if (share > 0.5) return `most ${many} fail`;
  return share < LEAST_ODDS
    ? `fewer than 1 ${one} in 100 fails`
    : `1 ${one} in ${Math.floor(1 / share)} fails`;
}

/** What the next car would need: "14 lbf more pull", "20 ft more sight of the signal"; empty: not told. */
function moreWords({ what, named = '', need, has, grip }: CountLimit, voice: Voice): string {
  if (!need || !has) return '';
  if (need.kind === 'speed') return '';
  const lacks = { ...need, si: need.si - has.si };
  if (lacks.kind === 'length') {
    const of = what === 'stopping-end' ? 'line' : named === '' || seen[what] ? 'sight' : `sight of ${named}`;
    return `${distance(voice, lacks.si, 'up')} more ${of}`;
  }
  const force = say(voice, lacks, 'up');
  if (what === 'start' || what === 'keep') return `${force} more ${grip ? 'grip' : 'pull'}`;
  return `${force} more ${what === 'hold' ? 'parking brake' : 'brake'}`;
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
export function limitWords(
  { what, named = '', at, need, has, grip, fails }: CountLimit,
  voice: Voice,
): string {
  const hauled = what === 'start' || what === 'keep';
  const name = hauled && named !== '' ? ` (${named})` : '';
  const where = at === undefined ? '' : `at ${chainage(voice, at)}${name} `;
  if (what === 'no-brake') return 'no brake answers the driver';
  if (!need || !has) return `${where}the brakes do not stop it`;
  if (need.kind === 'speed')
    return `${where}it stops in time from ${say(voice, has, 'down')} at most, slower than anybody drives`;
  const long = need.kind === 'length';
  const needs = long ? distance(voice, need.si, 'up') : say(voice, need, 'up');
  const there = long ? distance(voice, has.si, 'down') : say(voice, has, 'down');
  const grade = trade(voice.wording, 'grade');
  if (hauled) {
    const to = what === 'start' ? 'to start' : `at ${kept(voice)}`;
    const odds = fails === undefined ? '' : `; ${oddsWords(what, fails)}`;
    return `${where}it needs ${needs} ${to}, and ${grip ? 'its driving wheels grip' : 'the engine pulls'} ${there}${odds}`;
  }
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
