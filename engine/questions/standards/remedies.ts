/** Changes worth trying where a vehicle does not meet the host's sheet: its wheels pressed, its coupler shimmed, riders or cars left behind. */
import type { Change } from '../../outing/change.ts';
import type { Outing } from '../../outing/types.ts';
import { fewerCars, fewerRidersOn, leaveOne, stepsFrom } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

/** As fine as a fitter sets it, m, and as far as is worth it. */
const STEP = 0.0001;
const MOST_STEPS = 60;

export const standardRemedies: Remedies = {
  'standard-refused': (outing, f) => [...setRight(outing, f), leaveOne(outing, f, 5)],
  'coupler-kind-refused': (outing, f) => [leaveOne(outing, f, 5)],
  'outside-profile': (outing, f) => [leaveOne(outing, f, 5)],
  'standard-slow': (outing, f) => [...setRight(outing, f), leaveOne(outing, f, 5)],
};

function setRight(outing: Outing, finding: Finding): Family[] {
  const { facts, found, required, where } = finding;
  if ('of' in facts && facts.of === 'trainLength') return [fewerCars(outing, 4)];
  if ('of' in facts && facts.of === 'axleLoad') return [fewerRidersOn(outing, where.vehicle, 4)];
  const vehicle = outing.train.vehicles.find((v) => v.id === where.vehicle);
  if (!vehicle || !('of' in facts) || !('end' in facts)) return [];
  const way = Math.sign((required?.si ?? 0) - (found?.si ?? 0));
  const steps = (change: (by: number) => Change): Family => ({
    size: 3,
    changes: stepsFrom(finding, STEP, MOST_STEPS).map((by) => change(way * by)),
  });
  const { end, wheelset } = facts;
  if (facts.of === 'couplerHeight' && end !== '')
    return [steps((by) => ({ kind: 'coupler-raised', vehicle: vehicle.id, end, by }))];
  const axle = vehicle.wheelsets?.find((w) => w.name === wheelset);
  if ((facts.of === 'backToBack' || facts.of === 'wheelCheck') && axle)
    return [steps((by) => ({ kind: 'wheel-gauge', vehicle: vehicle.id, wheelset: axle.id, by }))];
  return [];
}
