/** The host's rules that need counting rather than physics. Each finding quotes the rule it comes from. */

import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Rule } from '../../outing/types.ts';
import { gearStates } from '../../things/brake/system.ts';
import { isCar } from '../../things/train/cars.ts';
import { hungChains, unsaidAt } from '../../things/train/chains.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import { askGuard } from './guard.ts';
import { askWeather } from './weather.ts';

export function askHost(context: OutingContext): Finding[] {
  return [
    ...gauge(context),
    ...numbers(context),
    ...people(context),
    ...braked(context),
    ...equipment(context),
    ...perVehicle(context),
    ...askWeather(context.outing),
  ];
}

const tooMany = (
  code: 'too-many-cars' | 'too-many-riders' | 'too-many-riders-on-car' | 'too-many-riders-per-axle',
  found: number,
  rule: Rule<number>,
  vehicle?: string,
): Finding =>
  makeFinding(code, 'forbids', 'host', {
    where: vehicle === undefined ? {} : { vehicle },
    found: amount(found, 'count'),
    required: amount(rule.value, 'count'),
    margin: rule.value > 0 ? (rule.value - found) / rule.value : -1,
    source: rule.source,
  });

/** Gauge of every vehicle against the line's (and the host's sheet): within a millimetre. */
function gauge({ outing, line }: OutingContext): Finding[] {
  const required = outing.host.gauge ?? { value: line.gauge, source: line.name };
  return outing.train.vehicles
    .filter((v) => Math.abs(v.gauge - required.value) > 0.001 || Math.abs(v.gauge - line.gauge) > 0.001)
    .map((v) =>
      makeFinding('gauge-differs', 'forbids', 'host', {
        where: { vehicle: v.id },
        found: amount(v.gauge, 'length'),
        required: amount(required.value, 'length'),
        margin: -Math.abs(v.gauge - required.value) / required.value,
        source: required.source,
      }),
    );
}

const ridersOf = ({ outing }: OutingContext) => outing.riders.filter((r) => r.duty === 'rider');

function numbers(context: OutingContext): Finding[] {
  const { host, train } = context.outing;
  const cars = train.vehicles.filter(isCar).length;
  const riders = ridersOf(context).length;
  const out: Finding[] = [];
  if (host.mostCars && cars > host.mostCars.value) out.push(tooMany('too-many-cars', cars, host.mostCars));
  if (host.mostRiders && riders > host.mostRiders.value)
    out.push(tooMany('too-many-riders', riders, host.mostRiders));
  return out;
}

function people(context: OutingContext): Finding[] {
  const { host } = context.outing;
  const out = askGuard(context.outing);
  for (const rider of ridersOf(context)) {
    const { youngestRider } = host;
    if (!youngestRider || rider.age === undefined || rider.age >= youngestRider.value) continue;
    out.push(
      makeFinding('rider-too-young', 'forbids', 'host', {
        where: rider.vehicle === undefined ? {} : { vehicle: rider.vehicle },
        found: amount(Math.floor(rider.age), 'count'),
        required: amount(youngestRider.value, 'count'),
        facts: { rider: rider.name, age: rider.age },
        source: youngestRider.source,
      }),
    );
  }
  return out;
}

/** Share of cars whose brakes answer the driver. */
function braked({ outing }: OutingContext): Finding[] {
  const rule = outing.host.brakedShare;
  const vehicles = outing.train.vehicles;
  const cars = vehicles.flatMap((v, i) => (isCar(v) ? [i] : []));
  if (!rule || cars.length === 0) return [];
  const answering = new Set(
    gearStates(outing)
      .filter((s) => s.answers)
      .map((s) => s.vehicle),
  );
  const share = cars.filter((i) => answering.has(i)).length / cars.length;
  if (share >= rule.value - 1e-9) return [];
  return [
    makeFinding('too-few-cars-braked', 'forbids', 'host', {
      found: amount(share, 'ratio'),
      required: amount(rule.value, 'ratio'),
      margin: (share - rule.value) / rule.value,
      facts: { braked: cars.filter((i) => answering.has(i)).length, cars: cars.length },
      source: rule.source,
    }),
  ];
}

function equipment({ outing }: OutingContext): Finding[] {
  const { host, train, conditions } = outing;
  const out: Finding[] = [];
  const chains = hungChains(train);
  const without = chains.indexOf(undefined);
  if (host.chainsRequired?.value && chains.length > 0 && (!train.chainsFastened || without >= 0)) {
    // Hung at every gap, but nobody said that they are fastened: go and look.
    const unsaid = without < 0 && unsaidAt(train, 0);
    out.push(
      makeFinding('chains-missing', unsaid ? 'unknown' : 'forbids', 'host', {
        ...(unsaid ? { measure: 'train.chainsFastened' } : {}),
        where: without >= 0 ? { gap: without, vehicle: train.vehicles[without].id } : {},
        source: host.chainsRequired.source,
      }),
    );
  }
  if (host.lightsAtNight?.value && conditions.night) {
    const front = train.vehicles[0];
    const rear = train.vehicles[train.vehicles.length - 1];
    if (!front.headlight) out.push(lights(front.id, 'headlight', host.lightsAtNight.source));
    if (!rear.taillight) out.push(lights(rear.id, 'taillight', host.lightsAtNight.source));
  }
  return out;
}

const lights = (vehicle: string, light: 'headlight' | 'taillight', source: string): Finding =>
  makeFinding('lights-missing', 'forbids', 'host', { where: { vehicle }, facts: { light }, source });

function perVehicle({ outing, loaded }: OutingContext): Finding[] {
  const { host } = outing;
  const out: Finding[] = [];
  for (const { vehicle, riders } of loaded.vehicles) {
    const people = riders.filter((r) => r.rider.duty === 'rider').length;
    const adults = riders.filter((r) => r.rider.duty === 'rider' && r.rider.ageGroup === 'adult').length;
    const axles = vehicle.groups.reduce((sum, g) => sum + g.axles, 0);
    if (host.mostRidersPerCar && people > host.mostRidersPerCar.value) {
      out.push(tooMany('too-many-riders-on-car', people, host.mostRidersPerCar, vehicle.id));
    }
    if (host.ridersPerAxle && adults > host.ridersPerAxle.value * axles) {
      const rule = { value: host.ridersPerAxle.value * axles, source: host.ridersPerAxle.source };
      out.push(tooMany('too-many-riders-per-axle', adults, rule, vehicle.id));
    }
    const seat = vehicle.seats.find((s) => host.seatHeight && s.height > host.seatHeight.value + 1e-6);
    if (seat && host.seatHeight) {
      out.push(
        makeFinding('seat-too-high', 'forbids', 'host', {
          where: { vehicle: vehicle.id },
          found: amount(seat.height, 'length'),
          required: amount(host.seatHeight.value, 'length'),
          margin: (host.seatHeight.value - seat.height) / host.seatHeight.value,
          source: host.seatHeight.source,
        }),
      );
    }
  }
  return out;
}
