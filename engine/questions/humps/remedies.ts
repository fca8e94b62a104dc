/** Changes worth trying where something grounds: the part lifted, the car left behind. Speed has no part in it. */
import type { Outing } from '../../outing/types.ts';
import { fewerRidersOn, leaveOne, stepsFrom } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

/** By whole millimetres, and as far as is worth it. */
const STEP = 0.001;
const MOST_STEPS = 60;

export const humpRemedies: Remedies = {
  'part-strikes-track': (outing, f) => [
    lifted(outing, f),
    // Their weight sinks it on its springs.
    ...('sink' in f.facts && (f.facts.sink?.si ?? 0) > 0 ? [fewerRidersOn(outing, f.where.vehicle, 4)] : []),
    leaveOne(outing, f, 5),
  ],
  'wheel-lifts-on-hump': (outing, f) => [leaveOne(outing, f, 5)],
};

function lifted(_: Outing, finding: Finding): Family {
  const { vehicle } = finding.where;
  if (vehicle === undefined || !('part' in finding.facts)) return { size: 3, changes: [] };
  const { part } = finding.facts;
  return {
    size: 3,
    changes: stepsFrom(finding, STEP, MOST_STEPS).map((by) => ({
      kind: 'part-lifted' as const,
      vehicle,
      part,
      by,
    })),
  };
}
