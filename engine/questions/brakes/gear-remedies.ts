/** What makes more brakes answer the driver, or fewer wheels slide. */
import { GRAVITY } from '../../base/constants.ts';
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import { driverReach } from '../../things/train/crew.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import { betterRail, fewerCars, order } from '../changes.ts';
import { type Family, none, type Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

export const brakeGearRemedies: Remedies = {
  'no-brake-answers': atTheDriver,
  'wheels-slide': (outing) => [betterRail(outing)],
  'brake-pipe-broken': (outing) => [order(outing), fewerCars(outing, 5)],
  'brake-kinds-do-not-work-together': (outing, finding) => [order(outing), leaveOfKind(outing, finding, 5)],
};

/**
 * A lever beside the driver: as strong as a train's one brake is usually made, so that the word after it says what it is
 * good for. One twice as weak is as much work to fit. On the engine, but where the car that the driver sits on is the
 * heavier of the two with the driver on it: in the small gauges its wheels hold more than the engine's.
 */
function atTheDriver(outing: Outing): Family[] {
  const { vehicles } = outing.train;
  const near = [...driverReach(outing)].map((i) => vehicles[i]);
  const [at] = near.sort((a, b) => presses(outing, b) - presses(outing, a));
  if (at === undefined) return [];
  const force = outing.assumed.practice['arm-brake'].value * presses(outing, at) * GRAVITY;
  return [{ size: 10, changes: [{ kind: 'driver-brake', vehicle: at.id, force }] }];
}

/** What stands on its wheels whenever it runs, kg: no rider, who may stay behind. */
const presses = ({ riders }: Outing, { id, role, tare }: Vehicle): number =>
  role === 'engine'
    ? tare.value
    : riders
        .filter((r) => r.vehicle === id && r.duty === 'driver')
        .reduce((sum, { mass }) => sum + mass.value, tare.value);

/** All cars with a brake of the kind that does not work with the engine's. */
function leaveOfKind(outing: Outing, { facts }: Finding, size: number): Family {
  const leave = outing.train.vehicles
    .filter((v) => isCar(v) && v.brakes.some((b) => 'kind' in facts && b.kind === facts.kind))
    .map((v) => v.id);
  return leave.length === 0 ? none : { size, changes: [{ kind: 'fewer-cars', leave }] };
}
