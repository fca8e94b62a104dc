/**
 * Changes worth trying where wheels and track do not suit: the wheels pressed otherwise, a guard rail moved, the vehicle
 * left behind. A step that clears one thing may close another: the answer tries each on the whole outing.
 */
import type { Change } from '../../outing/change.ts';
import type { Outing } from '../../outing/types.ts';
import { leaveOne, stepsFrom } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

/** As fine as a fitter sets it, m; and as far as wheels are moved on their seats. */
const STEP = 0.0001;
const MOST_STEPS = 40;

export const wheelRemedies: Remedies = {
  'wheel-strikes-frog': (outing, f) => [
    ...pressedBy(outing, f, -1),
    ...guardBy(outing, f, 1),
    leaveOne(outing, f, 5),
  ],
  'wheelset-binds-at-guard': (outing, f) => [
    ...pressedBy(outing, f, 1),
    ...guardBy(outing, f, -1),
    leaveOne(outing, f, 5),
  ],
  'wheelset-binds-in-gauge': (outing, f) => [...pressedBy(outing, f, -1), leaveOne(outing, f, 5)],
  'wheel-drops-in': (outing, f) => [...pressedBy(outing, f, 1), leaveOne(outing, f, 5)],
  'flange-strikes-floor': left,
  'back-to-back-varies': left,
  'wheel-diameters-differ': left,
  'wheel-worn': left,
  'wheel-wears-out': left,
  'frame-binds-in-curve': left,
  'wheels-aslant-bind': left,
};

/** Turned or changed in the workshop, not today: it stays behind. */
function left(outing: Outing, finding: Finding): Family[] {
  return [leaveOne(outing, finding, 5)];
}

/** From what is lacking upward, as far as wheels are moved. */
const steps = (finding: Finding, change: (by: number) => Change): Change[] =>
  stepsFrom(finding, STEP, MOST_STEPS)
    .filter((by) => by < (MOST_STEPS + 0.5) * STEP)
    .map(change);

function pressedBy({ train }: Outing, finding: Finding, way: 1 | -1): Family[] {
  const vehicle = train.vehicles.find((v) => v.id === finding.where.vehicle);
  const name = 'wheelset' in finding.facts ? finding.facts.wheelset : undefined;
  const wheelset = vehicle?.wheelsets?.find((w) => w.name === name);
  if (!vehicle || !wheelset) return [];
  const changes = steps(finding, (by) => ({
    kind: 'wheel-gauge',
    vehicle: vehicle.id,
    wheelset: wheelset.id,
    by: way * by,
  }));
  return [{ size: 3, changes }];
}

function guardBy({ line }: Outing, finding: Finding, way: 1 | -1): Family[] {
  const name = 'place' in finding.facts ? finding.facts.place : undefined;
  const flangeway = line.flangeways?.find((f) => f.name === name);
  if (!flangeway) return [];
  const changes = steps(finding, (by) => ({
    kind: 'guard-rail',
    flangeway: flangeway.id,
    by: way * by,
  }));
  return [{ size: 4, changes }];
}
