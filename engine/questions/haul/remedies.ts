/** What helps a train that its engine does not start or keep moving. */

import type { Outing } from '../../outing/types.ts';
import { betterToPull, fewerCars, fewerRiders, order } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';

const lighter = (outing: Outing): Family[] => [
  ...betterToPull(outing),
  fewerRiders(outing, 3),
  fewerCars(outing, 6),
];

export const haulRemedies: Remedies = {
  'cannot-start': lighter,
  'slow-on-grade': lighter,
  'surge-pushed': (outing) => [order(outing)],
};
