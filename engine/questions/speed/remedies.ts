/** What helps a train that does not stop, or stops too late for the speed that is wanted. */
import {
  betterRail,
  brakeCars,
  fewerCars,
  fewerRiders,
  order,
  slowerEverywhere,
  slowerHere,
} from '../changes.ts';
import type { Remedies } from '../family.ts';

export const speedRemedies: Remedies = {
  'cannot-stop': (outing) => [
    betterRail(outing),
    order(outing),
    slowerEverywhere(outing),
    fewerRiders(outing, 4),
    fewerCars(outing, 6),
    ...brakeCars(outing, 12),
  ],
  'too-slow-to-drive': (outing) => [
    betterRail(outing),
    order(outing),
    fewerRiders(outing, 4),
    fewerCars(outing, 6),
    ...brakeCars(outing, 12),
  ],
  'brake-does-not-hold-fall': (outing) => [
    betterRail(outing),
    order(outing),
    fewerRiders(outing, 4),
    fewerCars(outing, 6),
    ...brakeCars(outing, 12),
  ],
  'speed-limited': (outing, finding) => [
    slowerHere(outing, finding),
    order(outing),
    fewerCars(outing, 8),
    ...brakeCars(outing, 12),
  ],
};
