/**
 * One number of cars looked at: what limits it and what forbids it, by way and rail. The rules are the verdict's:
 * room is the clear track ahead, and the gap to the train ahead grows to what the stop needs.
 */

import { amount } from '../base/quantity.ts';
import { type MapModels, modelOf, type StopModel } from '../motion/model.ts';
import { type Prepared, potentialOf } from '../motion/prepare.ts';
import { likely, type Scenario } from '../motion/scenario.ts';
import { stopDistance } from '../motion/stop.ts';
import { type OutingContext, stopMargin } from '../outing/open.ts';
import type { Finding } from '../questions/finding.ts';
import { carefulStart, pullsAlong } from '../questions/haul/start.ts';
import { crewGears, hardestOf, type Puts, parking, type Stand, standsOn } from '../questions/hold/hold.ts';
import type { Ceiling } from '../questions/question.ts';
import { askSpeeds } from '../questions/speed/ask.ts';
import { availableAlong } from '../questions/speed/available.ts';
import { expectedSpeed, runningSpeed } from '../questions/speed/ceilings.ts';
import { fastestAllowed, hardestPull, holdsFall, leastBrake, overcomes } from '../questions/speed/holds.ts';
import { speedMap } from '../questions/speed/map.ts';
import type { RailState } from '../things/rail.ts';
import { driverBehind } from '../things/train/crew.ts';
import type { CountLimit, CountWay } from './types.ts';

/** What fails first; undefined: nothing does. */
export type Fails = CountLimit | 'unknown' | undefined;

/** Ways by which the verdict is decided. */
export type DecidingWay = 'pulled' | 'stopped' | 'held';

export interface CountCheck {
  /** What keeps the train from going without a limit. */
  readonly limits: (way: CountWay, state: RailState) => Fails;
  /** What forbids that it goes at all. */
  readonly forbids: (way: DecidingWay, state: RailState) => Fails;
}

/** A train of some number of cars, ready to be asked. */
export interface Looked {
  /** Before its brakes are timed, which long pipes make dear: enough for starting and parking. */
  readonly plain: OutingContext;
  readonly ready: () => Prepared;
  readonly grid: Float64Array;
  /** Of host, places, vehicles and balance. */
  readonly ceilings: readonly Ceiling[];
  readonly cautionOf: (state: RailState) => Scenario;
  /** The outing's own train: looked at as closely as the verdict does. */
  readonly own: boolean;
}

export function checkCount(looked: Looked): CountCheck {
  // Each is laid only while a count still asks for it: most trains can be held long after they cannot be pulled.
  const starts = startsOf(looked);
  const stands = once(() => standsOf(looked));
  const stops = remembered((state: RailState) => stopsOf(looked, state));
  return {
    limits: (way, state) =>
      way === 'pulled'
        ? starts(state).limits
        : way === 'stopped'
          ? stops(state).limits()
          : stands()(state, holders[way]),
    forbids: (way, state) => {
      if (way === 'stopped') return stops(state).forbids();
      if (way === 'held') return stands()(state, 'tight');
      // A bad day limits; where the likely figures fail as well nobody need try.
      return starts(state).forbids;
    },
  };
}

/** Drawn for a train that is not the outing's own. */
const STARTS_OF_OTHERS = 100;
const STANDS_OF_OTHERS = 300;

/** Whether it starts wherever it may have to stop, but for one start in twenty; and whether it likely gets round. */
function startsOf({ plain: context, grid, own }: Looked): (state: RailState) => {
  readonly limits: Fails;
  readonly forbids: Fails;
} {
  const pulls = once(() => pullsAlong(context, own ? 0.5 : grid[1] - grid[0]));
  return remembered((state) => {
    const start = own
      ? carefulStart(context, pulls(), state)
      : carefulStart(context, pulls(), state, STARTS_OF_OTHERS);
    const { at, pull, need, likelyPull, crawlNeed, stalls } = start;
    if (pull === undefined) return { limits: 'unknown', forbids: 'unknown' };
    const fails = (has: number, needed: number): Fails =>
      has >= needed
        ? undefined
        : { what: 'start', at, need: amount(needed, 'force'), has: amount(has, 'force') };
    return { limits: fails(pull, need), forbids: stalls ? fails(likelyPull, crawlNeed) : undefined };
  });
}

type Holders = 'driver' | 'crew' | 'everybody' | 'tight';
const holders = { held: 'crew', heldByDriver: 'driver', heldByAll: 'everybody' } as const;

function standsOf({ plain, ready, grid, own }: Looked): (state: RailState, by: Holders) => Fails {
  const { line, loaded } = plain;
  const gravity = potentialOf(line, loaded, 0, own ? 0.5 : grid[1] - grid[0], 0);
  const stands = (context: OutingContext, state: RailState): Stand[] =>
    own ? standsOn(context, gravity, state) : standsOn(context, gravity, state, STANDS_OF_OTHERS);
  const parked = remembered((state: RailState) => stands(plain, state));
  const tight = remembered((state: RailState) => stands(ready().context, state));
  const puts: Readonly<Record<Holders, Puts>> = { ...parking(loaded), tight: crewGears(loaded) };
  return (state, by) => {
    const rails = (by === 'tight' ? tight(state) : parked(state)).map((stand) => ({
      ...stand,
      has: stand.hold(puts[by]),
    }));
    const { at, pull, has, unmeasured } = hardestOf(rails, (s) => s.has - s.pull);
    if (has >= pull) return undefined;
    if (unmeasured(puts[by]).length > 0) return 'unknown';
    return { what: 'hold', at, need: amount(pull, 'force'), has: amount(has, 'force') };
  };
}

interface Stops {
  readonly limits: () => Fails;
  readonly forbids: () => Fails;
}

function stopsOf(looked: Looked, state: RailState): Stops {
  const { own } = looked;
  const ready = looked.ready();
  const { brakes } = ready;
  if (brakes.faults.some((f) => f.why === 'force-unknown')) return always('unknown');
  if (brakes.groups.length === 0) return always({ what: 'no-brake' });
  const models = own
    ? ready.models(state)
    : {
        likely: modelOf(ready.kit(state), likely, false),
        cautious: modelOf(ready.kit(state), looked.cautionOf(state)),
      };
  const quick = once(() => quickLook(looked, models.cautious));
  const close = once(() => closeLook(looked, models, state));
  const forbids = (): Fails => (own || !quick().surely ? close() : undefined);
  return { limits: () => quick().fails ?? forbids(), forbids };
}

const always = (fails: Fails): Stops => ({ limits: () => fails, forbids: () => fails });

/**
 * First place where the brake does not hold or the cautious stop from running speed does not fit. Surely: nor does
 * a stop from anything faster that is permitted fail.
 */
function quickLook(
  { ready, grid, ceilings }: Looked,
  model: StopModel,
): { readonly fails: Fails; readonly surely: boolean } {
  const { context } = ready();
  const { line, outing } = context;
  const margin = stopMargin(context);
  const eyes = driverBehind(outing, context.loaded);
  // The end of the line slows every train; it is not what limits the count.
  const { distance, reason, reasons } = availableAlong(line, grid, margin, outing.assumed.sight, eyes, false);
  const speed = runningSpeed(context, grid, ceilings);
  const most = runningSpeed({ ...context, outing: { ...outing, plannedSpeed: Infinity } }, grid, ceilings);
  const brake = leastBrake(model, fastestAllowed(ceilings, grid.length));
  let surely = true;
  for (let j = 0; j < grid.length; j++) {
    const d = stopDistance(model, grid[j], speed[j]);
    if (d === Infinity || !holdsFall(model, brake, grid[j]))
      return { fails: fallAt(context, model, brake, grid[j]), surely: false };
    if (d > distance[j]) {
      const { kind, what } = reasons[reason[j]];
      const named = kind === 'stopping-sight' && what === 'sight' ? '' : what;
      const need = amount(d + margin, 'length');
      const has = amount(distance[j] + margin, 'length');
      return { fails: { what: kind, named, at: grid[j], need, has }, surely: false };
    }
    if (most[j] <= speed[j] || model.holdsEverywhere) continue;
    if (stopDistance(model, grid[j], most[j]) === Infinity || !holdsFall(model, brake, grid[j]))
      surely = false;
  }
  return { fails: undefined, surely };
}

/** The fall that the brake does not hold, on the way of a stop from a place. */
function fallAt({ line }: OutingContext, model: StopModel, brake: number, from: number): CountLimit {
  const hardest = hardestPull(model, from, Infinity);
  if (!overcomes(hardest, brake)) return { what: 'cannot-stop', at: from };
  const { at, pull, lost } = hardest;
  return {
    what: 'cannot-stop',
    at: line.loop ? at % line.length : Math.min(at, line.length),
    need: amount(pull, 'force'),
    has: amount(brake - lost, 'force'),
  };
}

/** What the verdict itself would say forbids. */
function closeLook(looked: Looked, models: MapModels, state: RailState): Fails {
  const { grid, ceilings } = looked;
  const ready = looked.ready();
  const { context } = ready;
  // Where the fall under the train alone is too much no speed need be looked for.
  const brake = leastBrake(models.cautious, fastestAllowed(ceilings, grid.length));
  const end = grid[grid.length - 1];
  const steepest = hardestPull(models.cautious, 0, end);
  if (overcomes(steepest, brake)) return fallAt(context, models.cautious, brake, steepest.at);
  const map = speedMap(context, state, models, grid, ceilings);
  const wanted = expectedSpeed(context, grid, ceilings);
  const finding = askSpeeds({ ...ready, models: () => models }, map, wanted, ceilings).find(forbidsStopping);
  if (!finding) return undefined;
  const { where, found, required } = finding;
  if (finding.code === 'cannot-stop') return { what: finding.facts.reason, at: where.from ?? 0 };
  const at = finding.code === 'brake-does-not-hold-fall' ? finding.facts.at.si : (where.from ?? 0);
  return { what: 'cannot-stop', at, ...(required && found ? { need: required, has: found } : {}) };
}

/** What forbids for want of brake; that no speed is permitted, or none is safe in a curve, is another matter. */
export const forbidsStopping = (finding: Finding): boolean =>
  finding.severity === 'forbids' &&
  (finding.code === 'brake-does-not-hold-fall' ||
    finding.code === 'no-brake-answers' ||
    (finding.code === 'cannot-stop' && finding.facts.reason.startsWith('stopping')));

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function remembered<K, T>(make: (key: K) => T): (key: K) => T {
  const known = new Map<K, T>();
  return (key) => {
    const value = known.get(key) ?? make(key);
    known.set(key, value);
    return value;
  };
}
