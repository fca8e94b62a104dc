/** What shortens the gap that a train needs behind the one ahead. */
import { brakeCars, fewerCars, order, slowerEverywhere } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';

/** Others wait off the line, or at its ends, while this one is on it. */
const alone = (): Family[] => [{ size: 1, changes: [{ kind: 'alone' }] }];

export const gapRemedies: Remedies = {
  'others-not-said': alone,
  'kept-apart-not-said': alone,
  'kept-apart-by-sight': alone,
  'one-train-only': alone,
  'gap-needed': (outing) => [
    slowerEverywhere(outing),
    order(outing),
    fewerCars(outing, 8),
    ...brakeCars(outing, 12),
  ],
};
