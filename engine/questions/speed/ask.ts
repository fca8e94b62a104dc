/** What stopping has to say: brakes that answer or not, wheels that slide, speeds limited, gaps needed. */

import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import { evenStop } from '../../motion/even.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { slopeAt } from '../../things/line/potential.ts';
import { isCar } from '../../things/train/cars.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { SpeedMap } from './types.ts';

/** Findings about the brakes themselves. */
export function askBrakeGear(ready: Prepared): Finding[] {
  return [...faults(ready), ...vacuum(ready), ...unbraked(ready)];
}

function faults({ context, brakes }: Prepared): Finding[] {
  const vehicles = context.outing.train.vehicles;
  // A parking brake is not expected to answer the driver on the move.
  const odd = brakes.faults.filter((f) => !(f.why === 'worked-by-another' && f.gear.parking));
  return odd.map(({ vehicle, gear, why }) => {
    const where = { vehicle: vehicles[vehicle].id };
    const facts = { gear: gear.name, kind: gear.kind, why };
    if (why === 'force-unknown') {
      const measure = `vehicle.brakes.${gear.id}.force`;
      return makeFinding('brake-force-unknown', 'unknown', 'brakes', {
        where,
        facts,
        measure,
        source: 'vehicle',
      });
    }
    if (why === 'worked-by-another' || why === 'nothing-to-push-it') {
      return makeFinding('brake-not-worked-by-driver', 'notes', 'brakes', {
        where,
        facts,
        source: 'vehicle',
      });
    }
    const code = why === 'kinds-differ' ? 'brake-kinds-do-not-work-together' : 'brake-pipe-broken';
    return makeFinding(code, 'limits', 'brakes', { where, facts, source: 'common practice, no source' });
  });
}

function vacuum({ context, air }: Prepared): Finding[] {
  const { altitude, airPressure } = context.outing.conditions;
  return context.outing.train.vehicles.flatMap((vehicle) =>
    vehicle.brakes.flatMap((gear) => {
      const working = gear.rigging?.workingPressure;
      const isVacuum = gear.kind === 'simple-vacuum' || gear.kind === 'automatic-vacuum';
      if (!isVacuum || !working || gear.force) return [];
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

/** Speeds: where the train may not run as fast as its driver means to, and why. */
export function askSpeeds(ready: Prepared, map: SpeedMap, wanted: Float64Array): Finding[] {
  const { at, limit, reason, reasons } = map;
  const runs = runsWhere(
    at.length,
    (j) => limit[j] < wanted[j] - 1e-3,
    (i, j) => reason[i] === reason[j],
  );
  return runs.flatMap(({ first, last }) => {
    let worst = first;
    for (let j = first; j <= last; j++) if (limit[j] < limit[worst]) worst = j;
    const why = reasons[reason[worst]];
    const where = { from: at[first], to: at[last] };
    // Balance says for itself which car sets the speed; only where it allows none is it said here as well.
    const ofBalance = why.kind === 'balance' || why.kind === 'flange';
    if (ofBalance && limit[worst] > 0) return [];
    const atEnd = why.kind === 'stopping-end';
    if (limit[worst] <= 0 && !atEnd) {
      return makeFinding(why.kind === 'cannot-stop' ? 'runs-away' : 'cannot-stop', 'forbids', 'stopping', {
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
      ...(least ? { required: amount(least.value, 'length'), margin: 1 - needed / least.value } : {}),
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

/** Places that may ask for a stop but whose sight distance is not known. */
export function askSight({ context }: Prepared): Finding[] {
  return context.line.places
    .filter((p) => (p.kind === 'signal' || p.kind === 'crossing') && p.sight === undefined)
    .map((p) =>
      makeFinding('sight-unknown', 'notes', 'line', {
        where: { place: p.name, from: p.at, to: p.at },
        measure: `line.places.${p.id}.sight`,
        source: 'line',
      }),
    );
}
