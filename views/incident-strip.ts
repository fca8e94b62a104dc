/** The line with what happened on it and where it is slow or shut, each marked and numbered as in the list. */
import type { Answer } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Incident } from '../records/incidents.ts';
import type { OpenRestriction } from '../records/restrictions.ts';
import { incidentWords, speedOrShut } from '../words/records/incident.ts';
import { say, type Voice } from '../words/voice.ts';
import { drawStrip } from './strip/draw.ts';
import type { StripMark } from './strip/model.ts';
import type { Scene } from './strip/scene.ts';
import { stillHead } from './strip/still.ts';
import { stripModel } from './strip/svg.ts';
import { stripWords } from './strip/words.ts';

/** Numbered from 1 in the order given; what has no place on this line keeps its number and is not drawn. */
export function incidentMarks(
  { line }: Outing,
  incidents: readonly Incident[],
  limits: readonly OpenRestriction[],
  voice: Voice,
): StripMark[] {
  const happened = incidents.flatMap(({ said, day }, i): StripMark[] =>
    said.line === line.name && said.at !== undefined && said.at <= line.length
      ? [{ number: i + 1, severity: 'notes', from: said.at, title: `${incidentWords[said.what]}, ${day}` }]
      : [],
  );
  const slow = limits.flatMap(({ said }, i): StripMark[] => {
    if (said.line !== line.name) return [];
    const speed =
      said.speed === undefined ? undefined : say(voice, { si: said.speed, kind: 'speed' }, 'down');
    return [
      {
        number: incidents.length + i + 1,
        severity: said.speed === undefined ? 'forbids' : 'limits',
        from: said.from,
        to: said.to,
        title: `${speedOrShut(speed)}: ${said.why}`,
      },
    ];
  });
  return [...happened, ...slow];
}

/** @param answer whose speeds are drawn along; null: the line alone */
export function incidentStrip(
  outing: Outing,
  answer: Answer | null,
  marks: readonly StripMark[],
  voice: Voice,
  size: { readonly width: number; readonly height: number; readonly textSize: number },
): Scene {
  const model = stripModel(outing, answer, voice);
  const view = { ...size, from: 0, to: outing.line.length };
  const head = stillHead(outing, model.train?.length ?? 0);
  return drawStrip({ ...model, marks }, view, stripWords(voice), { head, speed: 0 });
}
