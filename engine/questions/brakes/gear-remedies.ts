/** What makes more brakes answer the driver, or fewer wheels slide. */
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import { betterRail, fewerCars, order } from '../changes.ts';
import { type Family, none, type Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

export const brakeGearRemedies: Remedies = {
  'wheels-slide': (outing) => [betterRail(outing)],
  'brake-pipe-broken': (outing) => [order(outing), fewerCars(outing, 5)],
  'brake-kinds-do-not-work-together': (outing, finding) => [order(outing), leaveOfKind(outing, finding, 5)],
};

/** All cars with a brake of the kind that does not work with the engine's. */
function leaveOfKind(outing: Outing, { facts }: Finding, size: number): Family {
  const leave = outing.train.vehicles
    .filter((v) => isCar(v) && v.brakes.some((b) => 'kind' in facts && b.kind === facts.kind))
    .map((v) => v.id);
  return leave.length === 0 ? none : { size, changes: [{ kind: 'fewer-cars', leave }] };
}
