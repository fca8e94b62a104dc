/** The strip on a running card. */

import type { Told } from '../desk/asked.ts';
import { heeded } from '../desk/card.ts';
import type { Voice } from '../words/voice.ts';
import { drawStrip } from './strip/draw.ts';
import type { Scene } from './strip/scene.ts';
import { stillHead } from './strip/still.ts';
import { stripModel } from './strip/svg.ts';
import { stripWords } from './strip/words.ts';

/** Drawn so large that its words can be read on paper, and marked with what stands on the card. */
export function cardStrip(told: Told, speech: Omit<Voice, 'outing'>): Scene {
  const { outing } = told.asked;
  const voice = { ...speech, outing };
  const model = stripModel(outing, told.answer, voice);
  const marks = model.marks.filter((m) => heeded(m.severity));
  const view = { width: 520, height: 300, from: 0, to: outing.line.length, textSize: 13 };
  const head = stillHead(outing, model.train?.length ?? 0);
  return drawStrip({ ...model, marks }, view, stripWords(voice), { head, speed: 0 });
}
