/** The speed map gathered into stretches that a person can read. */

import type { SpeedMap } from '../engine/questions/speed/types.ts';
export interface SpeedStretch {
  readonly from: number;
  readonly to: number;
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
      to: map.at[Math.min(j, map.at.length - 1)],
      speed: Math.min(...range(map.limit)),
      reason: why.kind,
      what: why.what,
      cautiousStop: Math.max(...range(map.cautiousStop)),
      gap: Math.max(...range(map.gap)),
    });
    first = j;
  }
  return out;
}
