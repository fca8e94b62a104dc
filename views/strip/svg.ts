/** The strip of an answered outing as a stand-alone SVG, and the model that any way in draws from. */

import { drivenOf } from '../../desk/driven.ts';
import { senseOf } from '../../engine/answer/chainage.ts';
import type { Answer } from '../../engine/answer/types.ts';
import { railsToday } from '../../engine/outing/rails.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { loadTrain } from '../../engine/things/train/loaded.ts';
import { tellFinding } from '../../words/finding.ts';
import { notToRun } from '../../words/verdict.ts';
import type { Voice } from '../../words/voice.ts';
import { drawStrip } from './draw.ts';
import type { StripMark, StripModel } from './model.ts';
import { sceneToSvg } from './scene.ts';
import { stillHead } from './still.ts';
import { stripWords } from './words.ts';

/** @param answer null: the line and the train alone, as long as nothing is told of them */
export function stripModel(outing: Outing, answer: Answer | null, voice: Voice): StripModel {
  return {
    line: outing.line,
    facing: senseOf(outing),
    speeds: answer?.speeds ?? null,
    wheels: answer?.wheels ?? null,
    driven: answer ? drivenOf(answer, voice) : null,
    rails: railsToday(outing),
    train: loadTrain(outing.train, outing.riders),
    marks: answer ? marksOf(answer, voice) : [],
    notToRun: answer ? notToRun(answer.verdict) : '',
    ...(outing.plannedSpeed === undefined ? {} : { plannedSpeed: outing.plannedSpeed }),
  };
}

/** Findings with a place, numbered as in the list of findings. */
function marksOf(answer: Answer, voice: Voice): StripMark[] {
  return answer.findings.flatMap((finding, i) => {
    const { from, to } = finding.where;
    if (from === undefined || finding.severity === 'assumed') return [];
    const title = tellFinding(finding, voice).what;
    return [{ number: i + 1, severity: finding.severity, from, title, ...(to === undefined ? {} : { to }) }];
  });
}

export function stripSvg(outing: Outing, answer: Answer, voice: Voice, width = 1400, height = 480): string {
  const model = stripModel(outing, answer, voice);
  const view = { width, height, from: 0, to: outing.line.length, textSize: 13 };
  const head = stillHead(outing, model.train?.length ?? 0);
  return sceneToSvg(drawStrip(model, view, stripWords(voice), { head, speed: 0 }));
}
