/** The line from above beside the strip: the train stands at the same place on both, and is dragged on either. */
import { useComputed, useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { fileName } from '../../../desk/file-name.ts';
import { chainageNear, drawPlan, drawPlanMoment, openPlan } from '../../../views/plan/draw.ts';
import { NO_PLAN, planWords } from '../../../views/plan/words.ts';
import { sceneToSvg } from '../../../views/strip/scene.ts';
import { stripModel } from '../../../views/strip/svg.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { StripInks } from '../../parts/inks.tsx';
import { save } from '../../parts/save.ts';
import { useWidth } from '../../parts/use-width.ts';
import { asked, speech, told } from '../../state/session.ts';
import { pressed } from './pressed.ts';
import { headNow, moveTo, reachNow, speedNow } from './strip-state.ts';

const NARROW = 600;
/** Lines around it, px. */
const FRAME = 3;

export function PlanView() {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 0);
  const shown = useComputed(() => {
    const outing = told.value?.asked.outing ?? asked.value?.outing;
    if (!outing || width.value === 0) return null;
    const voice = { ...speech.value, outing };
    const model = stripModel(outing, told.value?.answer ?? null, voice);
    const words = planWords(voice);
    const wide = width.value - FRAME;
    const narrow = wide < NARROW;
    const view = {
      width: wide,
      height: narrow ? wide * 1.05 : Math.min(520, wide * 0.6),
      textSize: narrow ? 12 : 14,
    };
    const plan = openPlan(outing, model, view, words);
    return { outing, model, plan, ground: plan && drawPlan(model, plan, words) };
  });
  const moment = useComputed(() => {
    const at = shown.value;
    if (!at?.plan) return null;
    const now = { head: headNow.value, speed: speedNow.value, ...reachNow.value };
    return drawPlanMoment(at.model, at.plan, now);
  });
  const dragging = useSignal(false);
  const follow = (event: PointerEvent): void => {
    const plan = shown.value?.plan;
    if (!plan) return;
    const rect = (event.currentTarget as Element).getBoundingClientRect();
    const scale = plan.view.width / rect.width;
    moveTo(chainageNear(plan, (event.clientX - rect.left) * scale, (event.clientY - rect.top) * scale));
  };
  const at = shown.value;
  const keep = (): void => {
    if (!at?.ground || !moment.value) return;
    const scene = { ...at.ground, children: [...(at.ground.children ?? []), moment.value] };
    const file = new Blob([sceneToSvg(scene)], { type: 'image/svg+xml' });
    save(file, fileName(at.outing.name, at.outing.date, 'plan.svg'));
  };
  return (
    <div class="plan" ref={box}>
      {at && !at.plan && <p>{NO_PLAN}</p>}
      {at?.plan && at.ground && (
        <>
          <StripInks />
          <div class="strip from-above" {...pressed(dragging, follow)}>
            <Drawing scene={at.ground} />
            {moment.value && (
              <svg
                class="over"
                viewBox={`0 0 ${at.plan.view.width} ${at.plan.view.height}`}
                aria-hidden="true"
              >
                <Drawing scene={moment.value} />
              </svg>
            )}
          </div>
          <p class="row no-print">
            <button type="button" onClick={keep}>
              Save plan
            </button>
          </p>
        </>
      )}
    </div>
  );
}
