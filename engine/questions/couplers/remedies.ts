/** What helps couplings that bear too much, and what their peaks do in curves. */
import { balanceFamilies } from '../balance/remedies.ts';
import { fewerCars, fewerRiders, fewerRidersOn } from '../changes.ts';
import type { Remedies } from '../family.ts';

export const couplersRemedies: Remedies = {
  'coupler-overloaded': (outing) => [fewerRiders(outing, 3), fewerCars(outing, 6)],
  'coupler-jerk-tips': (outing, finding) => [
    ...balanceFamilies(outing, finding),
    fewerRidersOn(outing, finding.where.vehicle, 4),
  ],
};
