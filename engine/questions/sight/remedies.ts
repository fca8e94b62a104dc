/** What clears a train with cars ahead of its driver: another order, driver or guard farther forward. */
import type { Change } from '../../outing/change.ts';
import type { Outing } from '../../outing/types.ts';
import { driverPlaces } from '../../things/train/crew.ts';
import type { Rider } from '../../things/train/types.ts';
import type { Seat, Vehicle } from '../../things/vehicle/types.ts';
import { order, slowerEverywhere } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';

export const sightRemedies: Remedies = {
  'propelled-without-lookout': (outing) => [
    order(outing),
    ...driverForward(outing),
    ...lookoutForward(outing),
  ],
  // Short of looking and measuring: so slow that the train stops within what is assumed. Nobody leaves riders behind
  // for a sight that a walk along the line would tell.
  'sight-unknown': (outing) => [slowerEverywhere(outing)],
  'night-sight-unknown': (outing) => [slowerEverywhere(outing)],
};

const free = ({ riders }: Outing, v: Vehicle, s: Seat): boolean =>
  !riders.some((r) => r.vehicle === v.id && r.seat === s.id);

/** The driver to a free driver's seat farther forward. */
function driverForward(outing: Outing): Family[] {
  const [at] = driverPlaces(outing);
  const driver = outing.riders.find((r) => r.duty === 'driver');
  if (!driver) return [];
  const moves = outing.train.vehicles
    .slice(0, at)
    .flatMap((v) => v.seats.flatMap((s) => (s.driver && free(outing, v, s) ? [seatMove(driver, v, s)] : [])));
  return moves.map((change) => ({ size: 1, changes: [change] }));
}

/** A guard who is aboard to a free seat on the leading car. */
function lookoutForward(outing: Outing): Family[] {
  const guard = outing.riders.find((r) => r.duty === 'guard');
  const [first] = outing.train.vehicles;
  const seat = first.seats.find((s) => !s.driver && free(outing, first, s));
  return guard && seat ? [{ size: 1, changes: [seatMove(guard, first, seat)] }] : [];
}

const seatMove = (rider: Rider, vehicle: Vehicle, seat: Seat): Change => ({
  kind: 'seat',
  moves: [{ rider: rider.id, vehicle: vehicle.id, seat: seat.id }],
});
