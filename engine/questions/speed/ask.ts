/** What stopping has to say: brakes that answer or not, wheels that slide, speeds limited, gaps needed. */

import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import { evenStop } from '../../motion/even.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { stopDistance } from '../../motion/stop.ts';
import { type OutingContext, stopMargin } from '../../outing/open.ts';
import type { BrakeFault } from '../../things/brake/force.ts';
import { isVacuumKind } from '../../things/brake/kinds/index.ts';
import { slopeAt } from '../../things/line/potential.ts';
import { isCar } from '../../things/train/cars.ts';
import { driverBehind } from '../../things/train/crew.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { Ceiling } from '../question.ts';
import { placesOfAssumedSight, sightIsStated } from './available.ts';
import { fastestAllowed, hardestPull, leastBrake, overcomes } from './holds.ts';
import type { SpeedMap } from './types.ts';

/** Findings about the brakes themselves. */
export function askBrakeGear(ready: Prepared): Finding[] {
  return [...faults(ready), ...vacuum(ready), ...unbraked(ready), ...noBrake(ready)];
}

/** A train without any brake that answers its driver may roll to a stand here and there: it is never stopped. */
function noBrake({ context, brakes }: Prepared): Finding[] {
  if (brakes.groups.length > 0 || brakes.faults.some((f) => f.why === 'force-unknown')) return [];
  const fitted = context.outing.train.vehicles.some((v) => v.brakes.length > 0);
  return [
    makeFinding('no-brake-answers', 'forbids', 'brakes', {
      facts: { fitted },
      source: 'common practice, no source',
    }),
  ];
}

function faults({ context, brakes }: Prepared): Finding[] {
  const vehicles = context.outing.train.vehicles;
  return [
    ...byHand(vehicles, brakes.faults),
    ...brakes.faults.filter((f) => f.why === 'force-unknown').map((f) => forceUnknown(vehicles, f)),
    ...(['kinds-differ', 'pipe-broken'] as const).flatMap((why) => notJoined(vehicles, brakes.faults, why)),
  ];
}

/** Why a brake that is in order does not answer the driver. */
const notDrivers: ReadonlySet<BrakeFault['why']> = new Set([
  'worked-by-another',
  'only-parks',
  'out-of-reach',
  'nothing-to-push-it',
]);

/** Brakes that others work or that only park: one line for all of a name. */
function byHand(vehicles: readonly Vehicle[], faults: readonly BrakeFault[]): Finding[] {
  const alike = new Map<string, BrakeFault[]>();
  for (const f of faults) {
    if (!notDrivers.has(f.why)) continue;
    const key = `${f.gear.name} ${f.why}`;
    alike.set(key, [...(alike.get(key) ?? []), f]);
  }
  return [...alike.values()].map((of) => {
    const { vehicle, gear, why } = of[0];
    return makeFinding('brake-not-worked-by-driver', 'notes', 'brakes', {
      where: { vehicle: vehicles[vehicle].id },
      facts: {
        gear: gear.name,
        kind: gear.kind,
        why,
        vehicles: of.map((f) => vehicles[f.vehicle].name).join(', '),
      },
      source: 'vehicle',
    });
  });
}

function forceUnknown(vehicles: readonly Vehicle[], { vehicle, gear, why }: BrakeFault): Finding {
  return makeFinding('brake-force-unknown', 'unknown', 'brakes', {
    where: { vehicle: vehicles[vehicle].id },
    facts: { gear: gear.name, kind: gear.kind, why },
    measure: `vehicle.brakes.${gear.id}.force`,
    source: 'vehicle',
  });
}

/** Brakes that the driver's handle does not reach, by kind: one line for the train, at no vehicle of its own. */
function notJoined(
  vehicles: readonly Vehicle[],
  faults: readonly BrakeFault[],
  why: 'kinds-differ' | 'pipe-broken',
): Finding[] {
  const of = faults.filter((f) => f.why === why);
  const code = why === 'kinds-differ' ? 'brake-kinds-do-not-work-together' : 'brake-pipe-broken';
  return [...new Set(of.map((f) => f.gear.kind))].map((kind) => {
    const names = of.filter((f) => f.gear.kind === kind).map((f) => vehicles[f.vehicle].name);
    return makeFinding(code, 'limits', 'brakes', {
      facts: { kind, why, vehicles: [...new Set(names)].join(', ') },
      source: 'common practice, no source',
    });
  });
}
function vacuum({ context, air }: Prepared): Finding[] {
  const { altitude, airPressure } = context.outing.conditions;
  return context.outing.train.vehicles.flatMap((vehicle) =>
    vehicle.brakes.flatMap((gear) => {
      const working = gear.rigging?.workingPressure;
      if (!isVacuumKind(gear.kind) || !working || gear.force) return [];
      const share = working.how === 'measured' ? 1 : Math.min(1, air.pressure / air.seaLevel);
      const workable = Math.min(working.value * share, air.pressure);
      if (workable > working.value * 0.98) return [];
      return [
        makeFinding('vacuum-limited-by-air', 'notes', 'brakes', {
          where: { vehicle: vehicle.id },
          found: amount(workable, 'vacuum'),
          required: amount(working.value, 'vacuum'),
          margin: workable / working.value - 1,
          facts: { air: amount(air.pressure, 'pressure') },
          ...(altitude === undefined || airPressure !== undefined
            ? {}
            : { sum: { id: 'standard-atmosphere', inputs: { altitude }, differs: 'part' as const } }),
          source: 'US Standard Atmosphere 1976',
        }),
      ];
    }),
  );
}

function unbraked({ context, brakes }: Prepared): Finding[] {
  const braked = new Set(brakes.groups.map((g) => g.vehicle));
  const cars = context.loaded.vehicles.filter((v) => isCar(v.vehicle));
  const without = cars.filter((v) => !braked.has(v.index));
  if (without.length === 0) return [];
  return [
    makeFinding('not-braked', 'notes', 'brakes', {
      where: { vehicle: without[0].vehicle.id },
      found: amount(cars.length - without.length, 'count'),
      required: amount(cars.length, 'count'),
      facts: { cars: without.map((v) => v.vehicle.name).join(', ') },
      source: 'train',
    }),
  ];
}

/** A run of grid points with the same reason. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
}

/** Longest runs over which a test holds. */
export function runsWhere(
  count: number,
  test: (j: number) => boolean,
  same: (i: number, j: number) => boolean,
): Stretch[] {
  const runs: Stretch[] = [];
  let first = -1;
  for (let j = 0; j <= count; j++) {
    const on = j < count && test(j);
    if (first >= 0 && (!on || !same(first, j))) {
      runs.push({ first, last: j - 1 });
      first = -1;
    }
    if (on && first < 0) first = j;
  }
  return runs;
}

/** A limit below this, m/s, is printed as no speed at all (0.1 mph). */
const NO_SPEED = 0.1 * 0.44704;

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
  const runs = runsWhere(
    at.length,
    (j) => limit[j] < wanted[j] - 1e-3 || limit[j] < NO_SPEED,
    (i, j) => reason[i] === reason[j],
  );
  return runs.flatMap(({ first, last }): Finding | Finding[] => {
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
    // Balance says for itself which car sets the speed; only where it allows none is it said here as well.
    if (why.kind === 'balance' && limit[worst] >= NO_SPEED) return [];
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

/** The cautious stop from a speed at a place of the map. */
function stopSum(
  ready: Prepared,
  map: SpeedMap,
  j: number,
  speed: number,
  differs: 'even' | 'margin' = 'even',
  fall?: number,
): { sum?: SumRef } {
  const { cautious } = ready.models(map.railState);
  const sum = evenStop(cautious, ready.context.loaded.mass, map.at[j], speed, fall);
  return sum ? { sum: { ...sum, differs } } : {};
}

/** Gap to the train ahead, where this train needs more than the host's least. */
export function askGap(ready: Prepared, map: SpeedMap): Finding[] {
  const { outing } = ready.context;
  const planned = outing.plannedSpeed ?? Infinity;
  const least = outing.host.leastGap;
  if (map.at.length === 0) return [];
  let worst = 0;
  for (let j = 0; j < map.at.length; j++) if (map.gap[j] > map.gap[worst]) worst = j;
  const needed = map.gap[worst];
  if (needed === Infinity) return [];
  const run = Math.min(map.limit[worst], planned);
  const more = least !== undefined && needed > least.value;
  const over = runsWhere(
    map.at.length,
    (j) => least !== undefined && map.gap[j] > least.value,
    () => true,
  );
  return [
    makeFinding('gap-needed', more ? 'limits' : 'notes', 'spacing', {
      where: more ? { from: map.at[over[0].first], to: map.at[over[over.length - 1].last] } : {},
      found: amount(needed, 'length'),
      ...(least ? { required: amount(least.value, 'length'), margin: marginOf(needed, least.value) } : {}),
      facts: {
        at: amount(map.at[worst], 'length'),
        speed: amount(run, 'speed'),
      },
      // Where the host's least gap is more than the stop asks for, the rule is the figure.
      ...(needed === least?.value || run <= 0 ? {} : stopSum(ready, map, worst, run, 'margin')),
      source: least?.source ?? 'cautious stopping distance and margin',
      sure: 'assumed',
    }),
  ];
}

/**
 * Sight that nobody has stated: of the whole line, or of places that may ask for a stop. Where the train does not
 * stop within what is assumed nobody can tell; where it does, the question is the lesser.
 */
export function askSight(ready: Prepared, map: SpeedMap, wanted: Float64Array): Finding[] {
  const { line } = ready.context;
  if (!sightIsStated(line)) return [sightFinding(ready, map, wanted, 'assumed sight', {}, 'line.sights')];
  return placesOfAssumedSight(line).map((p) =>
    sightFinding(
      ready,
      map,
      wanted,
      p.name,
      { place: p.name, from: p.at, to: p.at },
      `line.places.${p.id}.sight`,
    ),
  );
}

function sightFinding(
  ready: Prepared,
  map: SpeedMap,
  wanted: Float64Array,
  what: string,
  where: Finding['where'],
  measure: string,
): Finding {
  const { at, limit, reason, reasons } = map;
  const { outing } = ready.context;
  const short = (j: number): boolean =>
    limit[j] < wanted[j] - 1e-3 &&
    reasons[reason[j]].kind === 'stopping-assumed-sight' &&
    reasons[reason[j]].what === what;
  const runs = runsWhere(at.length, short, () => true);
  const facts = {
    sight: amount(outing.assumed.sight, 'length'),
    behind: amount(driverBehind(outing, ready.context.loaded), 'length'),
  };
  const asked = { measure, sure: 'assumed' as const, source: 'common practice, no source' };
  if (runs.length === 0) return makeFinding('sight-unknown', 'notes', 'line', { where, facts, ...asked });
  const { cautious } = ready.models(map.railState);
  let worst = runs[0].first;
  for (const { first, last } of runs) {
    for (let j = first; j <= last; j++) if (limit[j] < limit[worst]) worst = j;
  }
  return makeFinding('sight-unknown', 'unknown', 'line', {
    where:
      where.place === undefined ? { from: at[runs[0].first], to: at[runs[runs.length - 1].last] } : where,
    found: amount(limit[worst], 'speed'),
    required: amount(wanted[worst], 'speed'),
    margin: limit[worst] / wanted[worst] - 1,
    facts: {
      ...facts,
      at: amount(at[worst], 'length'),
      stop: amount(stopDistance(cautious, at[worst], wanted[worst]) + stopMargin(ready.context), 'length'),
    },
    ...asked,
  });
}
