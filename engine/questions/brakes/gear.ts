/** Which brakes answer the driver, and why the others do not. */
import { amount } from '../../base/quantity.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { type BrakeFault, workableVacuum } from '../../things/brake/force.ts';
import { isPushed, isVacuumKind } from '../../things/brake/kinds/index.ts';
import { isCar } from '../../things/train/cars.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

/** Findings about the brakes themselves. */
export function askBrakeGear(ready: Prepared): Finding[] {
  return [...faults(ready), ...vacuum(ready), ...unbraked(ready), ...noBrake(ready)];
}

/** A train without any brake that answers its driver may roll to a stand here and there: it is never stopped. */
function noBrake({ context, brakes }: Prepared): Finding[] {
  if (brakes.groups.length > 0 || brakes.faults.some((f) => f.why === 'force-unknown')) return [];
  const fitted = context.outing.train.vehicles.some((v) => v.brakes.length > 0);
  const [first, ...others] = brakes.faults.filter(({ why }) => notDrivers.has(why));
  // One reason for all of them is told with it: "no brake" of a train that has one is not believed.
  const alike = first && others.every(({ why }) => why === first.why);
  const gears = [first, ...others].map((f) => f?.gear.name);
  return [
    makeFinding('no-brake-answers', 'forbids', 'brakes', {
      facts: { fitted, ...(alike ? { why: first.why, gears: [...new Set(gears)].join(', ') } : {}) },
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
    measure: isPushed(gear.kind)
      ? `vehicle.brakes.${gear.id}.surge.leverRatio`
      : `vehicle.brakes.${gear.id}.force`,
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
      const workable = workableVacuum(working, air.pressure, air.seaLevel).value;
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
