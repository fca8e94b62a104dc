/** Changes worth trying where a train does not clear: what stands there moved, the vehicle left behind, its people left off. */
import type { Change } from '../../outing/change.ts';
import type { Outing } from '../../outing/types.ts';
import { fewerRidersOn, leaveOne, speedsBelow, stepsFrom } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

/** As fine as somebody moves a post, m, and as far as is worth it. */
const STEP = 0.005;
const MOST_STEPS = 60;

export const clearanceRemedies: Remedies = {
  'strikes-structure': (outing, f) => [
    ...slowerPast(outing, f),
    ...movedBy(outing, f),
    leaveOne(outing, f, 5),
  ],
  'rider-strikes-structure': (outing, f) => [
    ...movedBy(outing, f),
    fewerRidersOn(outing, f.where.vehicle, 4),
    leaveOne(outing, f, 5),
  ],
  'little-room-beside': (outing, f) => [
    ...slowerPast(outing, f),
    ...movedBy(outing, f),
    leaveOne(outing, f, 5),
  ],
  // One that stands too far off is moved nearer where nothing strikes it then: the whole outing is asked again.
  'platform-gap': (outing, f) => [...nearerBy(outing, f), leaveOne(outing, f, 5)],
  'platform-step': (outing, f) => [leaveOne(outing, f, 5)],
  'frame-too-long-for-curve': (outing, f) => [leaveOne(outing, f, 5)],
};

/** m before and behind a structure: the whole of what a body rolls by is that of the place. */
const BESIDE = 1;

/** On springs a slower train sways less outward, while it is beside. */
function slowerPast(outing: Outing, finding: Finding): Family[] {
  if (!('sway' in finding.facts) || finding.facts.sway === undefined || outing.moves) return [];
  const { structure: name } = finding.facts;
  const structure = outing.line.structures?.find((s) => s.name === name);
  if (!structure) return [];
  const { length } = outing.line;
  const stretch = {
    from: Math.max(0, structure.from - BESIDE),
    to: Math.min(length, structure.to + BESIDE),
  };
  const changes = speedsBelow(outing).map((speed): Change => ({ kind: 'slower', ...stretch, speed }));
  return [{ size: 1, changes }];
}

/** The platform set nearer to the track. */
function nearerBy({ line }: Outing, finding: Finding): Family[] {
  const structure = line.structures?.find((s) => s.platform && s.name === finding.where.place);
  if (!structure || finding.severity === 'notes') return [];
  const changes = stepsFrom(finding, STEP, MOST_STEPS).map(
    (by): Change => ({ kind: 'set-back', structure: structure.id, by: -by }),
  );
  return [{ size: 4, changes }];
}

function movedBy({ line }: Outing, finding: Finding): Family[] {
  if (!('structure' in finding.facts) || !('side' in finding.facts)) return [];
  const { structure: name, side } = finding.facts;
  const structure = line.structures?.find((s) => s.name === name);
  if (!structure) return [];
  const kind = side === 'over' ? 'raised' : 'set-back';
  const changes = stepsFrom(finding, STEP, MOST_STEPS).map(
    (by): Change => ({ kind, structure: structure.id, by }),
  );
  return [{ size: 4, changes }];
}
