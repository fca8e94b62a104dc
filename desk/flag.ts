/** How far behind a stopped train a flag must stand, by place, in the line's own chainage. */

import { prepare } from '../engine/motion/prepare.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { rearsAlong } from '../engine/questions/gap/ask.ts';
import { type FlagPlace, flagPlaces } from '../engine/questions/gap/flag.ts';
import { runningOf } from '../engine/questions/speed/running.ts';
import { onLine } from '../engine/things/line/geometry.ts';
import type { WordTable } from '../words/table.ts';
import { chainage, distance, say, type Voice } from '../words/voice.ts';
import { inLineOrder, turnOf } from './chainage.ts';
import { timedOuting } from './timed.ts';

/** @param rear of the stopped train, the line's own chainage, m; absent: all along the line */
export function lookAtFlag(outing: Outing, rear?: number, spacing = 10): FlagPlace[] {
  const ready = prepare(openOuting(timedOuting(outing)));
  const { map, models, running } = runningOf(ready);
  const question = { context: ready.context, model: models.cautious, speeds: running, step: map.step };
  const turn = turnOf(outing);
  const rears = rear === undefined ? rearsAlong(question, spacing) : Float64Array.of(turn(rear));
  const places = flagPlaces(question, rears).map((p) => ({
    ...p,
    rear: turn(p.rear),
    seenAt: turn(onLine(ready.context.line, p.seenAt)),
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
