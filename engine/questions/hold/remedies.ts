/** What keeps a train standing: less of it, or a brake that parks. */
import type { Change } from '../../outing/change.ts';
import type { Outing } from '../../outing/types.ts';
import { driverPlaces, placesOf } from '../../things/train/crew.ts';
import { fewerCars, fewerRiders } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

const standing = (outing: Outing, finding: Finding): Family[] => [
  fewerRiders(outing, 3),
  fewerCars(outing, 6),
  ...parking(outing, finding),
];

export const holdRemedies: Remedies = {
  'does-not-hold': standing,
  'holds-only-while-brake-is-tight': standing,
  'no-parking-brake': parking,
};

/** A parking brake where the driver rides, or else the guard, as strong as is needed: nobody relies on riders. */
function parking(outing: Outing, { found, required }: Finding): Family[] {
  const missing = required && found ? required.si - found.si : 100;
  return [...driverPlaces(outing).slice(0, 1), ...placesOf(outing, 'guard').slice(0, 1)].map((at, i) => ({
    size: 9 + i,
    changes: [1.1, 1.5, 2, 3].map(
      (factor): Change => ({
        kind: 'parking-brake',
        vehicle: outing.train.vehicles[at].id,
        force: Math.ceil(missing * factor),
      }),
    ),
  }));
}
