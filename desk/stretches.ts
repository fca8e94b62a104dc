/**
 * The speed map gathered into stretches that a person can read. Of two neighbours the slower takes the step of
 * the map between them: a slow stretch begins early and ends late, and so it is rounded.
 */
import type { SpeedMap } from '../engine/questions/speed/types.ts';
import type { Toward } from '../units/index.ts';
import { chainage, type Voice } from '../words/voice.ts';

export interface SpeedStretch {
  readonly from: number;
  readonly to: number;
  /** Which way each end is rounded. */
  readonly ends: readonly [from: Toward, to: Toward];
  readonly speed: number;
  readonly reason: string;
  readonly what: string;
  readonly cautiousStop: number;
  readonly gap: number;
}

/** Runs of the map with one reason and nearly one speed (a quarter mile per hour), each at its least speed. */
export function stretches(map: SpeedMap): SpeedStretch[] {
  const out: SpeedStretch[] = [];
  const grain = (v: number): number => Math.floor(v / (0.25 * 0.44704) + 1e-9);
  let first = 0;
  for (let j = 1; j <= map.at.length; j++) {
    const same =
      j < map.at.length &&
      map.reason[j] === map.reason[first] &&
      grain(map.limit[j]) === grain(map.limit[first]);
    if (same) continue;
    const range = (values: Float64Array): number[] => Array.from(values.subarray(first, j));
    const why = map.reasons[map.reason[first]];
    out.push({
      from: map.at[first],
      to: map.at[j - 1],
      ends: ['nearest', 'nearest'],
      speed: Math.min(...range(map.limit)),
      reason: why.kind,
      what: why.what,
      cautiousStop: Math.max(...range(map.cautiousStop)),
      gap: Math.max(...range(map.gap)),
    });
    first = j;
  }
  return meeting(out);
}

/** Neighbours made to meet: at the faster one's end point. */
function meeting(list: readonly SpeedStretch[]): SpeedStretch[] {
  const slower = (i: number, than: number): boolean => list[i].speed < list[than].speed;
  return list.map((s, i) => {
    const before = i === 0 ? undefined : slower(i, i - 1);
    const after = i === list.length - 1 ? undefined : slower(i + 1, i);
    return {
      ...s,
      from: before === true ? list[i - 1].to : s.from,
      to: after === false ? list[i + 1].from : s.to,
      ends: [
        before === undefined ? 'nearest' : before ? 'down' : 'up',
        after === undefined ? 'nearest' : after ? 'down' : 'up',
      ],
    };
  });
}

/** Where a stretch begins and ends, in words. A fast one shorter than the rounding is told as a point. */
export function endsOf(voice: Pick<Voice, 'system'>, { from, to, ends }: SpeedStretch): [string, string] {
  const [begin, end] = [chainage(voice, from, ends[0]), chainage(voice, to, ends[1])];
  return Number.parseFloat(end) < Number.parseFloat(begin) ? [begin, begin] : [begin, end];
}
