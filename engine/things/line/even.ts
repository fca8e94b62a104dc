/** Where a line does not change its curvature: what stands there stands as a metre before. */
import type { Line } from './types.ts';

/** Straight or one curvature all along from … to, in chainages that may run over a loop's seam. */
export interface Even {
  readonly from: number;
  readonly to: number;
}

/** In order, a lap before and after a loop's too. */
export function evenStretches(line: Line): Even[] {
  const laps = line.loop ? [-1, 0, 1] : [0];
  const stretches: Even[] = [];
  let at = -Infinity;
  for (const lap of laps) {
    for (const { from, to, startCurvature, endCurvature } of line.curves) {
      const off = lap * line.length;
      if (from + off > at) stretches.push({ from: at, to: from + off });
      if (startCurvature === endCurvature) stretches.push({ from: from + off, to: to + off });
      at = to + off;
    }
  }
  return [...stretches, { from: at, to: Infinity }];
}
