/** How far behind a stopped train a flag must stand, by place, in the line's own chainage. */

import { inLineOrder, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import type { Outing } from '../engine/outing/types.ts';
import { rearsAlong } from '../engine/questions/flag/ask.ts';
import { type FlagPlace, flagPlaces } from '../engine/questions/flag/flag.ts';
import { speed } from '../engine/questions/speed/question.ts';
import { onLine } from '../engine/things/line/geometry.ts';
import type { WordTable } from '../words/table.ts';
import { chainage, distance, say, type Voice } from '../words/voice.ts';

/** @param rear of the stopped train, the line's own chainage, m; absent: all along the line */
export function lookAtFlag(outing: Outing, rear?: number, spacing = 10): FlagPlace[] {
  const { context, of } = inquire(outing);
  const { map, models, running } = of(speed).data;
  const question = { context, model: models.cautious, speeds: running, step: map.step };
  const turn = turnOf(outing);
  const rears = rear === undefined ? rearsAlong(question, spacing) : Float64Array.of(turn(rear));
  const places = flagPlaces(question, rears).map((p) => ({
    ...p,
    rear: turn(p.rear),
    seenAt: turn(onLine(context.line, p.seenAt)),
  }));
  return inLineOrder(outing, places);
}

export function flagTable(places: readonly FlagPlace[], voice: Voice): WordTable {
  const { following, host } = voice.outing;
  const rule = host.flagDistance;
  return {
    title: 'A flag behind the stopped train',
    head: [
      'rear at',
      'flag behind it',
      'seen from',
      'follower runs',
      'stops in',
      'walk',
      ...(following ? ['follower is there in'] : []),
    ],
    rows: places.map((p) => [
      chainage(voice, p.rear),
      p.distance === null
        ? 'nowhere far enough'
        : p.distance === 0
          ? 'sees the train itself'
          : distance(voice, p.distance, 'up'),
      p.distance === 0 ? '' : chainage(voice, p.seenAt),
      say(voice, { si: p.speed, kind: 'speed' }, 'up'),
      distance(voice, p.stop, 'up'),
      p.distance !== 0 && Number.isFinite(p.walk) ? say(voice, { si: p.walk, kind: 'time' }, 'up') : '',
      ...(following
        ? [p.arrives === null || p.distance === 0 ? '' : say(voice, { si: p.arrives, kind: 'time' }, 'down')]
        : []),
    ]),
    note: `The following train is taken to be like this one, walking at 3 mph (common practice, no source).${rule ? ` The host's rule: ${distance(voice, rule.value, 'down')} (${rule.source}).` : ''}`,
  };
}
