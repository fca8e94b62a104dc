/** The plan of an answered outing as a stand-alone SVG; undefined: its line has no curve written. */
import type { Answer } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Voice } from '../../words/voice.ts';
import { type Scene, sceneToSvg } from '../strip/scene.ts';
import { stillHead } from '../strip/still.ts';
import { stripModel } from '../strip/svg.ts';
import { drawPlan, openPlan } from './draw.ts';
import type { MarkOnPlan } from './marks.ts';
import { planWords } from './words.ts';

export function planSvg(
  outing: Outing,
  answer: Answer | null,
  voice: Voice,
  view = { width: 900, height: 620, textSize: 13 },
): string | undefined {
  const model = stripModel(outing, answer, voice);
  const words = planWords(voice);
  const plan = openPlan(outing, model, view, words);
  if (!plan) return undefined;
  const head = stillHead(outing, model.train?.length ?? 0);
  return sceneToSvg(drawPlan(model, plan, words, { head, speed: 0 }));
}

const NARROW = 600;

/** With what of the fit one looks for on the ground; nothing where no curve is written. */
export function markedPlan(
  outing: Outing,
  marks: readonly MarkOnPlan[],
  voice: Voice,
  wide = 900,
): Scene | undefined {
  const model = stripModel(outing, null, voice);
  const words = planWords(voice);
  const narrow = wide < NARROW;
  const view = { width: wide, height: wide * (narrow ? 1.05 : 0.7), textSize: narrow ? 12 : 13 };
  const plan = openPlan(outing, model, view, words, marks);
  return plan && drawPlan(model, plan, words);
}
