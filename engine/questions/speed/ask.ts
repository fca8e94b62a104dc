/** What limits the speed: where the train may not run as fast as its driver means to, and why. */
import { GRAVITY, MPH } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import { leastBrake } from '../../motion/held.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { type OutingContext, stopMargin } from '../../outing/open.ts';
import { slopeAt } from '../../things/line/potential.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Ceiling } from '../question.ts';
import { fastestAllowed, hardestPull, overcomes } from './holds.ts';
import { slowestDriven } from './slowest.ts';
import { stopSum } from './stop-sum.ts';
import { runsWhere, type Stretch } from './stretch.ts';
import type { SpeedMap, SpeedReasonKind } from './types.ts';

/** A limit below this, m/s, is printed as no speed at all (0.1 mph). */
const NO_SPEED = 0.1 * MPH;

/** A low limit that somebody has set is theirs to set. */
const ruled: ReadonlySet<SpeedReasonKind> = new Set([
  'host-line',
  'host-place',
  'vehicle',
  'agreed',
  'temporary',
  'looked-no-higher',
  'stopping-end',
]);

/**
 * Coming to a stand at the end of a line is what every train does there. It is not, where it may go no farther more
 * than a metre before what must be kept to the end, or before it has left the place that it starts from.
 */
function endsThere(context: OutingContext, stands: number): boolean {
  const { line, loaded } = context;
  return stands >= line.length - stopMargin(context) - 1 && stands > loaded.length;
}

/** Speeds: where the train may not run as fast as its driver means to, and why. */
export function askSpeeds(
  ready: Prepared,
  map: SpeedMap,
  wanted: Float64Array,
  ceilings: readonly Ceiling[],
): Finding[] {
  const { at, limit, reason, reasons } = map;
  const slowest = slowestDriven(ready.context.outing);
  const least = (j: number): number => (ruled.has(reasons[reason[j]].kind) ? NO_SPEED : slowest);
  const runs = runsWhere(
    at.length,
    (j) => limit[j] < wanted[j] - 1e-3 || limit[j] < least(j),
    (i, j) => reason[i] === reason[j],
  );
  const found = runs.flatMap(({ first, last }): Finding | Finding[] => {
    let worst = first;
    for (let j = first; j <= last; j++) if (limit[j] < limit[worst]) worst = j;
    const why = reasons[reason[worst]];
    // The limit begins somewhere between its first point and the one before.
    const where = { from: at[Math.max(0, first - 1)], to: at[Math.min(at.length - 1, last + 1)] };
    // What only an assumed sight sets is asked for, not ruled.
    if (why.kind === 'stopping-assumed-sight') return [];
    if (why.kind === 'cannot-stop') {
      const lets = doesNotHold(ready, map, first, last, fastestAllowed(ceilings, at.length));
      if (lets) return { ...lets, where };
    }
    // That the line is shut there is told by itself.
    if (why.kind === 'temporary' && limit[worst] === 0) return [];
    // Balance says for itself which car sets the speed; only where nobody drives so slowly is it said here as well.
    if (why.kind === 'balance' && limit[worst] >= slowest) return [];
    const still = limit.subarray(first, last + 1).findIndex((v) => v < NO_SPEED);
    const atEnd = why.kind === 'stopping-end' && (still < 0 || endsThere(ready.context, at[first + still]));
    if (limit[worst] < NO_SPEED && !atEnd) {
      return makeFinding('cannot-stop', 'forbids', 'stopping', {
        where,
        found: amount(0, 'speed'),
        required: amount(wanted[worst], 'speed'),
        margin: -1,
        facts: { reason: why.kind, what: why.what },
        ...(ofStopping(why.kind)
          ? stopSum(ready, map, worst, wanted[worst], 'even', steepestFall(ready, at[first], at[last]))
          : {}),
        source: why.source,
      });
    }
    if (limit[worst] < least(worst) && !atEnd) return tooSlow(ready, map, { first, last }, worst);
    // Coming to a stand at the end of the line is what every train does there.
    return makeFinding('speed-limited', atEnd ? 'notes' : 'limits', 'stopping', {
      where,
      found: amount(limit[worst], 'speed'),
      required: amount(wanted[worst], 'speed'),
      margin: limit[worst] / wanted[worst] - 1,
      facts: { reason: why.kind, what: why.what, at: amount(at[worst], 'length') },
      ...(ofStopping(why.kind) && limit[worst] > 0 ? stopSum(ready, map, worst, limit[worst]) : {}),
      source: why.source,
      sure: 'assumed',
    });
  });
  return found.reduce<Finding[]>((told, next) => eachFallOnce(told, next, ready.context.loaded.length), []);
}

/** One fall is one finding, though from a few places on the way to it a stop may end: fewer than the train is long. */
export function eachFallOnce(told: Finding[], next: Finding, length: number): Finding[] {
  const isFall = (f: Finding): boolean => f.code === 'brake-does-not-hold-fall';
  const before = isFall(next) ? told.findLastIndex(isFall) : -1;
  const [from, to] = [next.where?.from, told[before]?.where?.to];
  if (from === undefined || to === undefined || from - to > length) return [...told, next];
  const where = { ...told[before].where, to: next.where?.to };
  return told.map((f, i) =>
    i === before ? { ...((next.margin ?? 0) < (f.margin ?? 0) ? next : f), where } : f,
  ) as Finding[];
}

/** That nobody drives as slowly as is permitted, where it is so within a stretch. */
function tooSlow(ready: Prepared, map: SpeedMap, { first, last }: Stretch, worst: number): Finding {
  const { at, limit } = map;
  const { value: slowest, source } = ready.context.outing.assumed.practice['slowest-driven'];
  const creeps = (j: number): boolean => limit[j] < slowest;
  let [from, to] = [first, last];
  while (!creeps(from)) from++;
  while (!creeps(to)) to--;
  const { kind, what } = map.reasons[map.reason[worst]];
  return makeFinding('too-slow-to-drive', 'forbids', 'stopping', {
    where: { from: at[Math.max(0, from - 1)], to: at[Math.min(at.length - 1, to + 1)] },
    found: amount(limit[worst], 'speed'),
    required: amount(slowest, 'speed'),
    margin: limit[worst] / slowest - 1,
    facts: { reason: kind, what },
    ...(ofStopping(kind) ? stopSum(ready, map, worst, limit[worst]) : {}),
    source,
  });
}

/** The fall that the brake does not hold, on a stretch or on the way that a stop from there takes. */
function doesNotHold(
  ready: Prepared,
  map: SpeedMap,
  first: number,
  last: number,
  fastest: number,
): Finding | undefined {
  const { line, loaded } = ready.context;
  const { cautious } = ready.models(map.railState);
  const own = leastBrake(cautious, fastest);
  const here = hardestPull(cautious, map.at[first], map.at[last]);
  const hardest = overcomes(here, own) ? here : hardestPull(cautious, map.at[last], Infinity);
  if (!overcomes(hardest, own)) return undefined;
  const { at, pull } = hardest;
  const brake = own - hardest.lost;
  const weight = loaded.mass * cautious.massFactor * GRAVITY;
  // A brake of unknown force is left out, and might hold the train.
  const unknown = ready.brakes.faults.find((f) => f.why === 'force-unknown');
  return makeFinding('brake-does-not-hold-fall', unknown ? 'unknown' : 'forbids', 'stopping', {
    found: amount(brake, 'force'),
    required: amount(pull, 'force'),
    margin: brake / pull - 1,
    facts: {
      at: amount(line.loop ? at % line.length : Math.min(at, line.length), 'length'),
      ratio: amount(brake / weight, 'grade'),
      grade: amount(pull / weight, 'grade'),
    },
    sum: { id: 'brake-ratio', inputs: { force: brake, mass: weight / GRAVITY } },
    sure: 'assumed',
    source: 'full brake and rolling resistance against the pull of the fall under the train',
    ...(unknown ? { measure: `vehicle.brakes.${unknown.gear.id}.force` } : {}),
  });
}

const ofStopping = (kind: string): boolean => kind.startsWith('stopping') || kind === 'cannot-stop';

/** Steepest fall under the train between two places, as a grade (negative). */
function steepestFall({ context, potential }: Prepared, from: number, to: number): number {
  let least = 0;
  for (let s = from; s <= to; s += potential.step) least = Math.min(least, slopeAt(potential, s));
  return least / (context.loaded.mass * GRAVITY);
}
