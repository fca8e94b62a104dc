/**
 * How many cars: started, kept at speed, stopped, held, allowed by the host. Counted from the train as it is, up and down, by
 * really changing the number of cars and asking the engine again: where few cars fail (a bare engine has little to
 * brake with) and more stop better, a count has a least number as well.
 */

import { once, remembered } from '../base/remember.ts';
import { type Prepared, prepare } from '../motion/prepare.ts';
import { atLatest, type BrakeTimes, brakeTimes, openTimed, timeOuting, timesFound } from '../outing/open.ts';
import type { Outing } from '../outing/types.ts';
import { balance } from '../questions/balance/question.ts';
import type { Ceiling, Inquiry } from '../questions/question.ts';
import { hostCeilings } from '../questions/speed/ceilings.ts';
import { gridOf } from '../questions/speed/map.ts';
import { type RailState, toldRails } from '../things/rail.ts';
import { isCar } from '../things/train/cars.ts';
import { type CountCheck, checkCount, type DecidingWay } from './count-check.ts';
import type { Fails } from './looked.ts';
import type { CarCount, CountLimit, CountWay, HaulWay } from './types.ts';
import { withCars } from './with-cars.ts';

/** The search ends here, or at the train's own cars where they are more. */
export const MOST_CARS = 40;
/** Grid of the counts of trains that are not the outing's own, m. */
const STEP = 2;

const deciding: readonly DecidingWay[] = ['pulled', 'stopped', 'held'];
const hauling: readonly HaulWay[] = ['pulled', 'pulledBooked', 'keepsSpeed'];
const ways: readonly CountWay[] = [...hauling, 'stopped', 'held', 'heldByDriver', 'heldByAll'];

/** Numbers of cars that do, side by side, and what the next above them fails by. */
interface Reach {
  readonly from: number;
  readonly to: number;
  readonly next: CountLimit | undefined;
  /** What the next below them fails by. */
  readonly before: CountLimit | undefined;
}

/** No number does; by what the train as it is fails. */
interface Never {
  readonly never: CountLimit;
}

type Reached = Reach | Never | null;

/** A train so long that its grades even out stands without a brake, and is held by none. */
const heldByNothing = (fails: Fails): boolean =>
  typeof fails === 'object' && fails.what === 'hold' && fails.has?.si === 0;

/**
 * Of the numbers that do, those beside the train as it is: with it, else fewer, else more.
 *
 * @param tryTo no more are tried where neither the train nor fewer do
 * @returns null where nobody can tell for the train as it is
 */
export function reachFrom(
  fails: (n: number) => Fails,
  here: number,
  least: number,
  most: number,
  tryTo: number = most,
): Reached {
  const now = fails(here);
  if (now === 'unknown') return null;
  const goes = (n: number): boolean => n >= least && n <= most && fails(n) === undefined;
  let some = here;
  while (some >= least && !goes(some)) some--;
  if (some < least) {
    const upTo = heldByNothing(now) ? here : tryTo;
    some = here + 1;
    while (some <= upTo && !goes(some)) some++;
    if (some > upTo) return { never: now as CountLimit };
  }
  let [from, to] = [some, some];
  while (goes(to + 1)) to++;
  while (goes(from - 1)) from--;
  const limitAt = (n: number): CountLimit | undefined => {
    const found = n >= least && n <= most ? fails(n) : undefined;
    return typeof found === 'object' ? found : undefined;
  };
  return { from, to, next: limitAt(to + 1), before: limitAt(from - 1) };
}

/**
 * Car counts, for all rail states unless some are named.
 *
 * @param onCounted called as numbers of cars are looked at, with how many were so far
 */
export function countCars(
  inquiry: Inquiry,
  states: readonly RailState[] = toldRails(inquiry.context.written.conditions.railState),
  onCounted: (looks: number) => void = () => undefined,
): CarCount[] {
  const { written } = inquiry.context;
  const here = written.train.vehicles.filter(isCar).length;
  const host = written.host.mostCars?.value ?? null;
  if (here === 0) return states.map((state) => nothingToCount(state, host));
  const least = here < written.train.vehicles.length ? 0 : 1;
  const most = Math.max(MOST_CARS, here);
  // More cars than the host allows help nobody to stop better.
  const useful = Math.max(here, host ?? most);
  const known = checks(inquiry, here, most);
  let looks = 0;
  const checkOf = (n: number): CountCheck => {
    onCounted(++looks);
    return known(n);
  };
  return states.map((state) => {
    const reach = (way: CountWay): Reached =>
      reachFrom((n) => checkOf(n).limits(way, state), here, least, most, useful);
    const reaches = new Map(ways.map((way) => [way, reach(way)]));
    const forbidden = reachedAll(
      (way, n) => checkOf(n).forbids(way, state),
      here,
      least,
      Math.min(most, host ?? most),
    );
    const counts = told(reaches, most);
    return {
      railState: state,
      ...counts,
      stoppedSlower: slowerThan(counts, forbidden.stopped),
      odds: oddsOf(reaches, (way, n) => checkOf(n).odds(way, state)),
      host,
      ...leastOf(forbidden, host, least, most),
    };
  });
}

/** The most that nothing forbids, sooner told than all counts; `null`: none, or nobody can tell. */
export function leastCars(inquiry: Inquiry, state: RailState): number | null {
  const { written } = inquiry.context;
  const here = written.train.vehicles.filter(isCar).length;
  const host = written.host.mostCars?.value ?? null;
  if (here === 0) return null;
  const least = here < written.train.vehicles.length ? 0 : 1;
  const most = Math.max(MOST_CARS, here);
  const checkOf = checks(inquiry, here, most);
  const forbidden = reachedAll(
    (way, n) => checkOf(n).forbids(way, state),
    here,
    least,
    Math.min(most, host ?? most),
  );
  return leastOf(forbidden, host, least, most).least;
}

/** Each no farther than what the others leave. */
function reachedAll(
  forbids: (way: DecidingWay, n: number) => Fails,
  here: number,
  least: number,
  most: number,
): Readonly<Record<DecidingWay, Reached>> {
  const allowed = (way: DecidingWay, upTo: number): Reached =>
    reachFrom((n) => forbids(way, n), here, least, Math.max(here, upTo));
  const pulled = allowed('pulled', most);
  const held = allowed('held', most);
  return {
    pulled,
    held,
    stopped: allowed('stopped', Math.min(most, topOf(pulled, most), topOf(held, most))),
  };
}

const does = (reached: Reached | undefined): reached is Reach => reached != null && 'to' in reached;
const bottomOf = (reached: Reached): number => (does(reached) ? reached.from : 0);
const topOf = (reached: Reached, most: number): number => (does(reached) ? reached.to : most);

/** How many times as long the next longer train is whose brakes are filled. */
const LONGER = 1.6;

/**
 * Each number of cars looked at once. The train as it is, as the verdict looks at it. Filling the brakes of a long train is
 * dear: what does with the brakes as late as those of a longer train does in its own time too, and few are filled.
 */
function checks(inquiry: Inquiry, here: number, most: number): (n: number) => CountCheck {
  const { ready, context } = inquiry;
  const { written } = context;
  const ofBalance = inquiry.of(balance).data.ceilings;
  const fine = gridOf(context.line.length);
  const every = Math.max(1, Math.round(STEP / (fine[1] - fine[0])));
  const coarse = fine.filter((_, j) => j % every === 0);
  // What balance allows the train as it is it allows another number of the same cars.
  const thinned: Ceiling[] = ofBalance.map((c) => ({
    ...c,
    speed: c.speed.filter((_, j) => j % every === 0),
  }));
  const cautionOf = ready.caution;
  const outingOf = remembered((n: number): Outing => withCars(written, n) ?? written);
  const timesOf = remembered((n: number) => (n === here ? timesFound(context) : brakeTimes(outingOf(n))));
  const look = (n: number): CountCheck => {
    if (n === here) {
      const ceilings = [...hostCeilings(context, fine), ...ofBalance];
      const own = { plain: context, ready: () => ready, late: () => undefined, grid: fine, ceilings };
      return checkCount({ ...own, cautionOf, own: true });
    }
    const other = outingOf(n);
    const plain = openTimed({ written: other, outing: other });
    const ceilings = [...hostCeilings(plain, coarse), ...thinned];
    const timedAs = (times: BrakeTimes): Prepared =>
      prepare(openTimed(timeOuting(other, times)), coarse[1] - coarse[0], 0);
    const longer = nextLonger(n, here, most);
    return checkCount({
      plain,
      ready: once(() => timedAs(timesOf(n))),
      late: once(() =>
        longer > n && allFilled(other, timesOf(longer)) ? timedAs(atLatest(timesOf(longer))) : undefined,
      ),
      grid: coarse,
      ceilings,
      cautionOf,
      own: false,
    });
  };
  return remembered(look);
}

/** Trains whose brakes are filled whatever comes: that of the outing, and each so many times as long as the one before. */
function nextLonger(n: number, here: number, most: number): number {
  let longer = here;
  while (longer < n) longer = Math.max(longer + 1, Math.ceil(longer * LONGER));
  return Math.min(longer, most);
}

/** Whether every brake that has parts has its times of them: one that never comes on in the longer train has none. */
const allFilled = ({ train }: Outing, times: BrakeTimes): boolean => {
  const filled = new Set(times.map(({ vehicle, gear }) => `${vehicle} ${gear.id}`));
  const parts = train.vehicles.flatMap(({ id, brakes }) =>
    brakes.flatMap((b) => (b.rigging ? [`${id} ${b.id}`] : [])),
  );
  return parts.length > 0 && parts.every((part) => filled.has(part));
};

/** Share that fails with as many as a count says. */
function oddsOf(
  reaches: ReadonlyMap<CountWay, Reached>,
  odds: (way: HaulWay, n: number) => number | undefined,
): CarCount['odds'] {
  return Object.fromEntries(
    hauling.flatMap((way) => {
      const reached = reaches.get(way);
      return does(reached) ? [[way, odds(way, reached.to)]] : [];
    }),
  );
}

type Told = Omit<CarCount, 'railState' | 'stoppedSlower' | 'host' | 'least' | 'by' | 'leastSets' | 'odds'>;

function slowerThan({ stopped, none }: Told, forbidden: Reached): number | null {
  const fromRunning = none.includes('stopped') ? 0 : stopped;
  return fromRunning !== null && does(forbidden) && forbidden.to > fromRunning ? forbidden.to : null;
}

function told(reaches: ReadonlyMap<CountWay, Reached>, most: number): Told {
  const value = (way: CountWay): number | null => {
    const reached = reaches.get(way) ?? null;
    return reached === null ? null : topOf(reached, 0);
  };
  const of = <T>(pick: (reached: Reach | Never) => T | undefined) =>
    Object.fromEntries(
      ways.flatMap((way) => {
        const reached = reaches.get(way);
        const found = reached ? pick(reached) : undefined;
        return found === undefined ? [] : [[way, found]];
      }),
    );
  const next = (reached: Reach | Never): CountLimit | undefined =>
    does(reached) ? reached.next : reached.never;
  return {
    pulled: value('pulled'),
    pulledBooked: value('pulledBooked'),
    keepsSpeed: value('keepsSpeed'),
    stopped: value('stopped'),
    held: value('held'),
    heldByDriver: value('heldByDriver'),
    heldByAll: value('heldByAll'),
    from: of((reached) => (does(reached) && reached.from > 0 ? reached.from : undefined)),
    none: ways.filter((way) => reaches.get(way) != null && !does(reaches.get(way))),
    sets: of(next),
    unlimited: ways.filter(
      (way) => reaches.get(way) != null && topOf(reaches.get(way) as Reached, 0) === most,
    ),
  };
}

/** The most that nothing forbids. */
function leastOf(
  reaches: Readonly<Record<DecidingWay, Reached>>,
  host: number | null,
  fewest: number,
  most: number,
): Pick<CarCount, 'least' | 'by' | 'leastSets'> {
  if (deciding.some((way) => reaches[way] === null)) return { least: null, by: null };
  for (const way of deciding) {
    const reached = reaches[way];
    if (reached && !does(reached)) return { least: null, by: way, leastSets: reached.never };
  }
  let least = most;
  let from = fewest;
  let by: CarCount['by'] = null;
  let leastSets: CountLimit | undefined;
  for (const way of deciding) {
    const reach = reaches[way];
    if (!does(reach)) continue;
    from = Math.max(from, reach.from);
    // A search that ended where another count had ended says nothing of its own.
    if (reach.to >= least || (reach.next === undefined && reach.to < most)) continue;
    [least, by, leastSets] = [reach.to, way, reach.next];
  }
  if (host !== null && host < least) [least, by, leastSets] = [host, 'host', undefined];
  if (least >= from) return { least, by, ...(leastSets ? { leastSets } : {}) };
  // No number does all. Where a count ends it, that is the reason; where the host does, what so few fail by.
  if (by !== 'host') return { least: null, by, ...(leastSets ? { leastSets } : {}) };
  const low = deciding.find((way) => bottomOf(reaches[way]) > least);
  const reached = low === undefined ? null : reaches[low];
  return {
    least: null,
    by: low ?? by,
    ...(reached && does(reached) && reached.before ? { leastSets: reached.before } : {}),
  };
}

/** A train without a car has no car to count with. */
const nothingToCount = (railState: RailState, host: number | null): CarCount => ({
  railState,
  pulled: null,
  pulledBooked: null,
  keepsSpeed: null,
  stopped: null,
  stoppedSlower: null,
  held: null,
  heldByDriver: null,
  heldByAll: null,
  from: {},
  none: [],
  host,
  least: null,
  by: null,
  sets: {},
  odds: {},
  unlimited: [],
});
