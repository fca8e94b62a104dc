/**
 * How many cars: pulled, stopped, held, allowed by the host. Counted from the train as it is, up and down, by
 * really changing the number of cars and asking the engine again: where few cars fail (a bare engine has little to
 * brake with) and more stop better, a count has a least number as well.
 */
import { type Prepared, prepare } from '../motion/prepare.ts';
import { openOuting, openTimed } from '../outing/open.ts';
import { balance } from '../questions/balance/question.ts';
import type { Ceiling, Inquiry } from '../questions/question.ts';
import { hostCeilings } from '../questions/speed/ceilings.ts';
import { gridOf } from '../questions/speed/map.ts';
import { type RailState, railStates } from '../things/rail.ts';
import { isCar } from '../things/train/cars.ts';
import { type CountCheck, checkCount, type DecidingWay, type Fails } from './count-check.ts';
import type { CarCount, CountLimit, CountWay } from './types.ts';
import { withCars } from './with-cars.ts';

/** The search ends here, or at the train's own cars where they are more. */
export const MOST_CARS = 40;
/** Grid of the counts of trains that are not the outing's own, m. */
const STEP = 2;

const deciding: readonly DecidingWay[] = ['pulled', 'stopped', 'held'];
const ways: readonly CountWay[] = [...deciding, 'heldByDriver', 'heldByAll'];

/** Numbers of cars that do, side by side, and what the next above them fails by. */
interface Reach {
  readonly from: number;
  readonly to: number;
  readonly next: CountLimit | undefined;
}

/** No number does; by what the train as it is fails. */
interface Never {
  readonly never: CountLimit;
}

type Reached = Reach | Never | null;

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
    some = here + 1;
    while (some <= tryTo && !goes(some)) some++;
    if (some > tryTo) return { never: now as CountLimit };
  }
  let [from, to] = [some, some];
  while (goes(to + 1)) to++;
  while (goes(from - 1)) from--;
  const next = to < most ? fails(to + 1) : undefined;
  return { from, to, next: typeof next === 'object' ? next : undefined };
}

/** Car counts, for all rail states unless some are named. */
export function countCars(inquiry: Inquiry, states: readonly RailState[] = railStates): CarCount[] {
  const { written } = inquiry.context;
  const here = written.train.vehicles.filter(isCar).length;
  const host = written.host.mostCars?.value ?? null;
  if (here === 0) return states.map((state) => nothingToCount(state, host));
  const least = here < written.train.vehicles.length ? 0 : 1;
  const most = Math.max(MOST_CARS, here);
  // More cars than the host allows help nobody to stop better.
  const useful = Math.max(here, host ?? most);
  const checkOf = checks(inquiry, here);
  return states.map((state) => {
    const reach = (way: CountWay): Reached =>
      reachFrom((n) => checkOf(n).limits(way, state), here, least, most, useful);
    /** No farther than what the others leave. */
    const allowed = (way: DecidingWay, upTo: number): Reached =>
      reachFrom((n) => checkOf(n).forbids(way, state), here, least, Math.max(here, upTo));
    const pulled = allowed('pulled', Math.min(most, host ?? most));
    const held = allowed('held', Math.min(most, host ?? most));
    const stopped = allowed('stopped', Math.min(most, host ?? most, topOf(pulled, most), topOf(held, most)));
    return {
      railState: state,
      ...told(new Map(ways.map((way) => [way, reach(way)])), most),
      host,
      ...leastOf({ pulled, stopped, held }, host, least, most),
    };
  });
}

const does = (reached: Reached | undefined): reached is Reach => reached != null && 'to' in reached;
const bottomOf = (reached: Reached): number => (does(reached) ? reached.from : 0);
const topOf = (reached: Reached, most: number): number => (does(reached) ? reached.to : most);

/** Each number of cars looked at once. The train as it is, as the verdict looks at it. */
function checks(inquiry: Inquiry, here: number): (n: number) => CountCheck {
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
  const known = new Map<number, CountCheck>();
  const look = (n: number): CountCheck => {
    if (n === here) {
      const ceilings = [...hostCeilings(context, fine), ...ofBalance];
      return checkCount({ plain: context, ready: () => ready, grid: fine, ceilings, cautionOf, own: true });
    }
    const other = withCars(written, n) ?? written;
    const plain = openTimed({ written: other, outing: other });
    const ceilings = [...hostCeilings(plain, coarse), ...thinned];
    let timed: Prepared | undefined;
    const inTime = (): Prepared => {
      timed ??= prepare(openOuting(other), coarse[1] - coarse[0], 0);
      return timed;
    };
    return checkCount({ plain, ready: inTime, grid: coarse, ceilings, cautionOf, own: false });
  };
  return (n) => {
    const check = known.get(n) ?? look(n);
    known.set(n, check);
    return check;
  };
}

type Told = Omit<CarCount, 'railState' | 'host' | 'least' | 'by' | 'leastSets'>;

function told(reaches: ReadonlyMap<CountWay, Reached>, most: number): Told {
  const value = (way: CountWay): number | null => {
    const reached = reaches.get(way) ?? null;
    return reached === null ? null : topOf(reached, 0);
  };
  const of = <T>(pick: (reached: Reach | Never) => T | undefined, among: readonly CountWay[] = ways) =>
    Object.fromEntries(
      among.flatMap((way) => {
        const reached = reaches.get(way);
        const found = reached ? pick(reached) : undefined;
        return found === undefined ? [] : [[way, found]];
      }),
    );
  const next = (reached: Reach | Never): CountLimit | undefined =>
    does(reached) ? reached.next : reached.never;
  return {
    pulled: value('pulled'),
    stopped: value('stopped'),
    held: value('held'),
    heldByDriver: value('heldByDriver'),
    heldByAll: value('heldByAll'),
    from: of((reached) => (does(reached) && reached.from > 0 ? reached.from : undefined)),
    none: ways.filter((way) => reaches.get(way) != null && !does(reaches.get(way))),
    sets: of(next, deciding),
    failsAt: of((reached) => next(reached)?.at, deciding),
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
  if (least < from) return { least: null, by: deciding.find((way) => bottomOf(reaches[way]) > least) ?? by };
  return { least, by, ...(leastSets ? { leastSets } : {}) };
}

/** A train without a car has no car to count with. */
const nothingToCount = (railState: RailState, host: number | null): CarCount => ({
  railState,
  pulled: null,
  stopped: null,
  held: null,
  heldByDriver: null,
  heldByAll: null,
  from: {},
  none: [],
  host,
  least: null,
  by: null,
  sets: {},
  failsAt: {},
  unlimited: [],
});
