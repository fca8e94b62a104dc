/** The line from above, with what one looks for on the ground: where ends may stand, where least is left. */
import { useMemo } from 'preact/hooks';
import type { Clear } from '../../../desk/clear.ts';
import { planMarks } from '../../../desk/plan-marks.ts';
import { lookAtTracksOf } from '../../../desk/siding.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { markedPlan } from '../../../views/plan/svg.ts';
import type { Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { StripInks } from '../../parts/inks.tsx';

interface Props {
  readonly outing: Outing;
  readonly clear: Clear;
  readonly voice: Voice;
  /** px */
  readonly width: number;
}

export function FitPlan({ outing, clear, voice, width }: Props) {
  const scene = useMemo(() => {
    const marks = planMarks(outing, clear, lookAtTracksOf(outing));
    return marks.length === 0 ? undefined : markedPlan(outing, marks, voice, Math.min(760, width));
  }, [outing, clear, voice, width]);
  if (!scene) return null;
  return (
    <>
      <h2>On the plan</h2>
      <StripInks />
      <figure class="plot drawn from-above">
        <Drawing scene={scene} />
      </figure>
    </>
  );
}
