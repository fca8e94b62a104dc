/**
 * How high may the seats of one vehicle be? The highest at which it still keeps, with the people of the outing, on
 * this line and at its speed, all that the question of balance asks of it: every wheel's share of its load in
 * curves, standing on cant, the people leaning as asked, and the host's own rule. Each is found by itself, upward
 * from a seat at the rail to the first height that does not keep it, and then by halving; the lowest of them is the
 * answer, proved by asking the whole question once more with the seats at that height.
 *
 * All seats rise alike. What carries them is taken to weigh no more and to lie no higher than before, unless nobody
 * measured how high it lies: then it rises with the seats.
 */

import { type OutingContext, openOuting } from '../../outing/open.ts';
import type { Outing } from '../../outing/types.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import type { FindingCode } from '../findings.ts';
import { hostCeilings, runningSpeed } from '../speed/ceilings.ts';
import { gridOf } from '../speed/map.ts';
import { askBalance } from './ask.ts';
import { carefulLeans, leastTogether } from './lean.ts';
import { LEAST_WHEEL_SHARE, MOST_UNLOADING } from './limits.ts';
import { rollingIn } from './look.ts';
import { type Ground, groundUnder, marginsAlong, type Rolling, speedsLeaving } from './margins.ts';
import { layTrack, type Track } from './track.ts';

export interface SeatAsk {
  /** Id of the vehicle. */
  readonly vehicle: string;
  /** How far a rider's centre of gravity shifts sideways, m. */
  readonly lean: number;
  /** Who leans so: all of the car together must not tip it, or one alone must lift no wheel. */
  readonly who: 'all' | 'one';
}

export type SeatReason = 'curve' | 'standing' | 'all' | 'one' | 'host' | 'other';

export interface SeatLimit {
  readonly reason: SeatReason;
  /** Highest seat above the rail that keeps it, m; null: none does. Infinity: none up to `HIGHEST` breaks it. */
  readonly height: number | null;
  /** Chainage of the train's head where it breaks first, m, and the speed there. */
  readonly at?: number;
  readonly speed?: number;
  /** Of `other`: what would be found. */
  readonly finding?: Finding;
}

export interface SeatHeight {
  /** Highest seat as it is, m above the rail. */
  readonly now: number;
  /** The answer, m; null: no height keeps all; Infinity: none up to `HIGHEST` breaks anything. */
  readonly height: number | null;
  readonly setBy: SeatLimit | null;
  /** Every reason with its own height; the one who leans, when all are asked about, is told and does not count. */
  readonly limits: readonly SeatLimit[];
  /** Highest seats by how far people lean, m: all of the car together, and one alone. */
  readonly byLean: readonly { readonly lean: number; readonly all: SeatLimit; readonly one: SeatLimit }[];
  readonly centreKnown: boolean;
  /** The outing with the seats at that height; undefined where there is none. */
  readonly outing?: Outing;
}

/** No seat is looked for above, m. */
export const HIGHEST = 1.5;
const STEP = 0.05;
const FINE = 0.0005;

/**
 * @param leans for `byLean`, m
 * Undefined: it has no seats, nobody sits on them, or nothing bounds its centre of gravity.
 */
export function seatHeight(
  written: Outing,
  ask: SeatAsk,
  leans: readonly number[] = [],
): SeatHeight | undefined {
  const vehicle = written.train.vehicles.find((v) => v.id === ask.vehicle);
  if (!vehicle || vehicle.seats.length === 0) return undefined;
  const now = Math.max(...vehicle.seats.map((s) => s.height));
  const at = (height: number): Outing => withSeats(written, ask.vehicle, height - now);
  const look = looker(at, ask.vehicle);
  const first = look(now);
  if (!first || first.rolling.drawn.riders.length === 0) return undefined;
  const limit = (reason: Reason | 'host', lean = ask.lean): SeatLimit =>
    reason === 'host'
      ? hostLimit(written)
      : limitOf(reason, (h) => {
          const there = look(h);
          return there && broken[reason](there, lean);
        });
  const limits = reasons.map((reason) => limit(reason));
  const counted = limits.filter((l) => l.reason !== (ask.who === 'all' ? 'one' : 'all'));
  const setBy = counted.reduce((a, b) => (height(b) < height(a) ? b : a));
  const found = proved(setBy, at, ask.vehicle);
  const byLean = leans.map((lean) => ({ lean, all: limit('all', lean), one: limit('one', lean) }));
  const centreKnown = vehicle.centreHeight !== undefined;
  const whole = { now, limits, byLean, centreKnown };
  if (found.height === null) return { ...whole, height: null, setBy: found };
  const told = found === setBy ? limits : [...limits, found];
  return {
    ...whole,
    limits: told,
    height: found.height,
    setBy: found.height === Infinity ? null : found,
    outing: at(Math.min(HIGHEST, found.height)),
  };
}

const height = (l: SeatLimit): number => l.height ?? -Infinity;

/** The outing with all seats of a vehicle higher by so much, m. */
function withSeats(outing: Outing, id: string, by: number): Outing {
  const raised = (v: Vehicle): Vehicle => ({
    ...v,
    seats: v.seats.map((s) => ({ ...s, height: s.height + by })),
  });
  const vehicles = outing.train.vehicles.map((v) => (v.id === id ? raised(v) : v));
  return { ...outing, train: { ...outing.train, vehicles } };
}

/** Where something breaks, and at which speed. */
interface Broken {
  readonly at?: number;
  readonly speed?: number;
}

/** One vehicle alone with its seats so high: nothing else of the train changes with them. */
interface Look extends Stays {
  readonly context: OutingContext;
  readonly rolling: Rolling;
  readonly under: Ground;
}

/** Each height is looked at once. */
function looker(at: (height: number) => Outing, id: string): (height: number) => Look | undefined {
  const known = new Map<number, Look | undefined>();
  let stays: Stays | undefined;
  const look = (seat: number): Look | undefined => {
    const context = openOuting(at(seat));
    stays ??= groundOf(context);
    const rolling = rollingIn(context, id)[0];
    return rolling && { ...stays, context, rolling, under: groundUnder(stays.track, rolling, stays.grid) };
  };
  return (seat) => {
    if (!known.has(seat)) known.set(seat, look(seat));
    return known.get(seat);
  };
}

/** Line and speeds do not change with a seat. */
interface Stays {
  readonly grid: Float64Array;
  readonly wanted: Float64Array;
  readonly track: Track;
}

function groundOf(context: OutingContext): Stays {
  const grid = gridOf(context.line.length);
  return {
    grid,
    wanted: runningSpeed(context, grid, hostCeilings(context, grid)),
    track: layTrack(context.line, grid[0] - context.loaded.length, grid[grid.length - 1]),
  };
}

type Reason = Exclude<SeatReason, 'other' | 'host'>;
const reasons: readonly (Reason | 'host')[] = ['curve', 'standing', 'all', 'one', 'host'];

/** Where each is broken first; undefined: it is kept. */
const broken: Readonly<Record<Reason, (look: Look, lean: number) => Broken | undefined>> = {
  curve: ({ context, rolling, under, grid, wanted }) => {
    const rule = context.outing.host.leastWheelShare;
    const share = (rule ?? LEAST_WHEEL_SHARE).value;
    const { speed } = speedsLeaving([rolling], [under], grid.length, share, rule !== undefined);
    const j = grid.findIndex((_, i) => speed[i] < wanted[i] - 1e-9);
    return j < 0 ? undefined : { at: grid[j], speed: wanted[j] };
  },
  standing: ({ rolling, under, grid }) => {
    const { share } = marginsAlong(rolling, under, new Float64Array(grid.length));
    const j = leastAt(share);
    return share[j] < 1 - MOST_UNLOADING.value ? { at: grid[j], speed: 0 } : undefined;
  },
  all: ({ rolling, under, grid, wanted }, lean) => {
    const together = leastTogether(rolling.drawn, rolling, under, grid, wanted);
    return together && together.lean < lean ? { at: together.at, speed: together.speed } : undefined;
  },
  one: ({ rolling, under, grid, wanted }, lean) => {
    const at = (speed: Float64Array): { readonly j: number; readonly speed: number } => {
      const j = leastAt(marginsAlong(rolling, under, speed).share);
      return { j, speed: speed[j] };
    };
    const lifts = [at(new Float64Array(grid.length)), at(wanted)].find(({ j, speed }) => {
      const there = { curvature: under.curvature[j], cant: under.cant[j] };
      return (carefulLeans(rolling.drawn, there, speed).one ?? Infinity) < lean;
    });
    return lifts && { at: grid[lifts.j], speed: lifts.speed };
  },
};

function leastAt(values: Float64Array): number {
  let j = 0;
  for (let i = 1; i < values.length; i++) if (values[i] < values[j]) j = i;
  return j;
}

const hostLimit = ({ host }: Outing): SeatLimit => ({
  reason: 'host',
  height: host.seatHeight?.value ?? Infinity,
});

function limitOf(reason: SeatReason, breaks: (h: number) => Broken | undefined): SeatLimit {
  const atRail = breaks(0);
  if (atRail) return { reason, height: null, ...atRail };
  const steps = Math.round(HIGHEST / STEP);
  for (let n = 1; n <= steps; n++)
    if (breaks(n * STEP)) {
      const { low, high } = halved((n - 1) * STEP, n * STEP, (h) => !breaks(h));
      return { reason, height: low, ...breaks(high) };
    }
  return { reason, height: Infinity };
}

/** @param keeps at `low`, not at `high` */
function halved(low: number, high: number, keeps: (h: number) => boolean): { low: number; high: number } {
  let [a, b] = [low, high];
  while (b - a > FINE) {
    const middle = (a + b) / 2;
    if (keeps(middle)) a = middle;
    else b = middle;
  }
  return { low: a, high: b };
}

/** What is looked at here reason by reason, by another measure than the one asked for, or asked of nobody's seats. */
const lookedAt: ReadonlySet<FindingCode> = new Set([
  'curve-speed-limited-by-balance',
  'tips-at-rest',
  'stands-light-on-one-side',
  'all-lean-goes-over',
  'lean-small',
  'centre-of-gravity-unknown',
]);

/** The whole question asked once more: a further finding that forbids or limits sets the height. */
function proved(limit: SeatLimit, at: (h: number) => Outing, id: string): SeatLimit {
  if (limit.height === null) return limit;
  const found = (h: number): Finding[] => {
    const context = openOuting(at(h));
    return askBalance(context, gridOf(context.line.length)).findings.filter(
      (f) =>
        (f.severity === 'forbids' || f.severity === 'limits') &&
        f.where.vehicle === id &&
        !lookedAt.has(f.code),
    );
  };
  const top = Math.min(HIGHEST, limit.height);
  const here = found(top);
  if (here.length === 0) return limit;
  // What is found with the seat at the rail as well does not hang on the seat.
  const anyhow = new Set(found(0).map((f) => f.code));
  const fresh = (h: number): Finding | undefined => found(h).find((f) => !anyhow.has(f.code));
  if (!fresh(top)) return limit;
  const { low, high } = halved(0, top, (h) => !fresh(h));
  const why = fresh(high);
  return {
    reason: 'other',
    height: low,
    ...(why ? { finding: why } : {}),
    ...(why?.where.from === undefined ? {} : { at: why.where.from }),
  };
}
