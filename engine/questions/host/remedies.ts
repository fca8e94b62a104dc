/** What helps where the host's rules are not kept. */
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import { brakeCars, fewerCars, fewerRiders, fewerRidersOn, leaveOne } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

const fewerOrBraked = (outing: Outing): Family[] => [
  fewerCars(outing, 4),
  leaveUnbraked(outing),
  ...brakeCars(outing, 10),
];

const guarded = (outing: Outing): Family[] => [
  { size: 1, changes: [{ kind: 'guard' }] },
  fewerRiders(outing, 2),
  fewerCars(outing, 6),
];

/** The heaviest to a seat elsewhere, or fewer on the vehicle, or the vehicle left behind. */
export const fewerOnBoard = (outing: Outing, finding: Finding): Family[] => [
  ...swaps(outing, finding),
  fewerRidersOn(outing, finding.where.vehicle, 3),
  leaveOne(outing, finding, 6),
];

export const hostRemedies: Remedies = {
  'too-many-cars': fewerOrBraked,
  'too-few-cars-braked': fewerOrBraked,
  'too-many-riders': guarded,
  'guard-missing': guarded,
  'no-guard-at-night': () => [{ size: 1, changes: [{ kind: 'guard' }] }],
  'too-many-riders-on-car': fewerOnBoard,
  'too-many-riders-per-axle': fewerOnBoard,
  'chains-missing': () => [{ size: 1, changes: [{ kind: 'chains' }] }],
  'gauge-differs': (outing, finding) => [leaveOne(outing, finding, 4)],
  'seat-too-high': (outing, finding) => [leaveOne(outing, finding, 4)],
  'rider-too-young': (outing, { where }) => [fewerRidersOn(outing, where.vehicle, 2)],
};

function leaveUnbraked(outing: Outing): Family {
  const ids = outing.train.vehicles.filter((v) => isCar(v) && v.brakes.length === 0).map((v) => v.id);
  return { size: 5, changes: ids.map((_, i) => ({ kind: 'fewer-cars', leave: ids.slice(0, i + 1) })) };
}

/** Move the heaviest rider of an overloaded car to a free seat elsewhere. */
function swaps(outing: Outing, { where }: Finding): Family[] {
  const heaviest = outing.riders
    .filter((r) => r.vehicle === where.vehicle && r.duty === 'rider')
    .sort((a, b) => b.mass.value - a.mass.value)[0];
  if (!heaviest) return [];
  const free = outing.train.vehicles.flatMap((v) =>
    v.id === where.vehicle || !isCar(v)
      ? []
      : v.seats
          .filter((s) => !s.driver && !outing.riders.some((r) => r.vehicle === v.id && r.seat === s.id))
          .map((s) => ({ rider: heaviest.id, vehicle: v.id, seat: s.id })),
  );
  return free.slice(0, 6).map((move) => ({ size: 1, changes: [{ kind: 'seat', moves: [move] }] }));
}
