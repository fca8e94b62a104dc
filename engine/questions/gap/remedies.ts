/** What shortens the gap that a train needs behind the one ahead. */
import { brakeCars, fewerCars, order, slowerEverywhere } from '../changes.ts';
import type { Remedies } from '../family.ts';

export const gapRemedies: Remedies = {
  'gap-needed': (outing) => [
    slowerEverywhere(outing),
    order(outing),
    fewerCars(outing, 8),
    ...brakeCars(outing, 12),
  ],
};
