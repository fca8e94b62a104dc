/**
 * One number of cars looked at: what limits it and what forbids it, by way and rail. The rules are the verdict's:
 * room is the clear track ahead, and the gap to the train ahead grows to what the stop needs.
 */

import { amount } from '../base/quantity.ts';
import { once, remembered } from '../base/remember.ts';
import { potentialOf } from '../motion/prepare.ts';
import type { OutingContext } from '../outing/open.ts';
import { DRAWS, NUISANCE, pullsAlong } from '../questions/haul/draws.ts';
import { carefulKeep } from '../questions/haul/keep.ts';
import { bookedStops, carefulStart, type HaulAt, haulAt, startsAt } from '../questions/haul/start.ts';
import { crewGears, hardestOf, type Puts, parking, type Stand, standsOn } from '../questions/hold/hold.ts';
import type { RailState } from '../things/rail.ts';
import { stopsOf } from './count-stops.ts';
import type { Fails, Looked } from './looked.ts';
import type { CountWay, HaulWay } from './types.ts';

/** Ways by which the verdict is decided. */
export type DecidingWay = 'pulled' | 'stopped' | 'held';

export interface CountCheck {
  /** What keeps the train from going without a limit. */
  readonly limits: (way: CountWay, state: RailState) => Fails;
  /** What forbids that it goes at all. */
  readonly forbids: (way: DecidingWay, state: RailState) => Fails;
  /** Share that fails at the worst place. */
  readonly odds: (way: HaulWay, state: RailState) => number | undefined;
}

const hauled: readonly CountWay[] = ['pulled', 'pulledBooked', 'keepsSpeed'] satisfies HaulWay[];
const isHauled = (way: CountWay): way is HaulWay => hauled.includes(way);

export function checkCount(looked: Looked): CountCheck {
  // Each is laid only while a count still asks for it: most trains can be held long after they cannot be pulled.
  const hauls = haulsOf(looked);
  const stands = once(() => standsOf(looked));
  const stops = remembered((state: RailState) => stopsOf(looked, state));
  return {
    limits: (way, state) =>
      isHauled(way)
        ? hauls(state)[way]().limits
        : way === 'stopped'
          ? stops(state).limits()
          : stands()(state, holders[way]),
    forbids: (way, state) => {
      if (way === 'stopped') return stops(state).forbids();
      if (way === 'held') return stands()(state, 'tight');
      // A bad day limits; where the likely figures fail as well nobody need try.
      return hauls(state).pulled().forbids;
    },
    odds: (way, state) => hauls(state)[way]().fails,
  };
}

/** Drawn for a train that is not the outing's own. */
const HAULS_OF_OTHERS = 100;
const STANDS_OF_OTHERS = 300;

interface Hauled {
  readonly limits: Fails;
  readonly forbids?: Fails;
  readonly fails?: number;
}

const nobodyKnows: Hauled = { limits: 'unknown', forbids: 'unknown' };

/**
 * Whether it starts wherever it may have to stop, where it is booked to, and keeps a speed, but for one draw in
 * twenty; and whether it likely gets round.
 */
function haulsOf({
  plain: context,
  grid,
  own,
}: Looked): (state: RailState) => Readonly<Record<HaulWay, () => Hauled>> {
  const pulls = once(() => pullsAlong(context, own ? 0.5 : grid[1] - grid[0]));
  const draws = own ? DRAWS : HAULS_OF_OTHERS;
  const limit = (what: string, { at, pull, need, fails, grip }: HaulAt, named?: string): Hauled => ({
    fails,
    limits:
      fails <= NUISANCE
        ? undefined
        : {
            what,
            ...(named === undefined ? {} : { named }),
            at,
            need: amount(need, 'force'),
            has: amount(pull, 'force'),
            fails,
            ...(grip ? { grip } : {}),
          },
  });
  return remembered((state) => {
    const start = once(() => carefulStart(context, pulls(), state, draws));
    return {
      pulled: once(() => {
        const found = start();
        if (!found) return nobodyKnows;
        const { at, likelyPull, crawlNeed, stalls } = found;
        const [need, has] = [amount(crawlNeed, 'force'), amount(likelyPull, 'force')];
        return { ...limit('start', found), forbids: stalls ? { what: 'start', at, need, has } : undefined };
      }),
      pulledBooked: once(() => {
        const found = start();
        if (!found) return nobodyKnows;
        const [first, ...rest] = startsAt(found, pulls(), bookedStops(context));
        const worst = rest.reduce((a, b) => (b.fails > a.fails ? b : a), first);
        return limit('start', haulAt(found.drawn, pulls(), worst.node), worst.name);
      }),
      keepsSpeed: once(() => {
        const found = carefulKeep(context, pulls(), state, draws);
        return found ? limit('keep', found) : nobodyKnows;
      }),
    };
  });
}

type Holders = 'driver' | 'crew' | 'everybody' | 'tight';
const holders = { held: 'crew', heldByDriver: 'driver', heldByAll: 'everybody' } as const;

function standsOf({ plain, ready, late, grid, own }: Looked): (state: RailState, by: Holders) => Fails {
  const { line, loaded } = plain;
  const gravity = potentialOf(line, loaded, 0, own ? 0.5 : grid[1] - grid[0], 0);
  const stands = (context: OutingContext) =>
    remembered((state: RailState): Stand[] =>
      own ? standsOn(context, gravity, state) : standsOn(context, gravity, state, STANDS_OF_OTHERS),
    );
  const parked = stands(plain);
  const tight = once(() => stands(ready().context));
  const weak = once(() => {
    const asLate = late();
    return asLate && stands(asLate.context);
  });
  const puts: Readonly<Record<Holders, Puts>> = { ...parking(loaded), tight: crewGears(loaded) };
  const fails = (on: readonly Stand[], by: Holders): Fails => {
    if (on.every((stand) => stand.surely(puts[by]))) return undefined;
    const rails = on.map((stand) => ({ ...stand, has: stand.hold(puts[by]) }));
    const { at, pull, has, unmeasured } = hardestOf(rails, (s) => s.has - s.pull);
    if (has >= pull) return undefined;
    if (unmeasured(puts[by]).length > 0) return 'unknown';
    return { what: 'hold', at, need: amount(pull, 'force'), has: amount(has, 'force') };
  };
  return (state, by) => {
    if (by !== 'tight') return fails(parked(state), by);
    const asLate = weak();
    return asLate && fails(asLate(state), by) === undefined ? undefined : fails(tight()(state), by);
  };
}
