/** The line under the train on an even, fine grid: what balance looks up millions of times. */

import { cantAngle } from '../../things/line/curves.ts';
import { cantAt, curvatureAt, heightAt } from '../../things/line/geometry.ts';
import type { Line } from '../../things/line/types.ts';

export interface Track {
  readonly from: number;
  readonly step: number;
  readonly count: number;
  /** 1/m, left positive. */
  readonly curvature: Float64Array;
  /** rad, right rail high positive. */
  readonly cant: Float64Array;
  /** m above datum */
  readonly height: Float64Array;
}

/** Step of the grid, m: a quarter of the shortest car's truck spacing or so. */
const STEP = 0.25;

export function layTrack(line: Line, from: number, to: number): Track {
  const count = Math.ceil((to - from) / STEP) + 2;
  const curvature = new Float64Array(count);
  const cant = new Float64Array(count);
  const height = new Float64Array(count);
  for (let j = 0; j < count; j++) {
    const s = from + j * STEP;
    curvature[j] = curvatureAt(line, s);
    cant[j] = cantAngle(
      Math.max(-line.contactWidth, Math.min(line.contactWidth, cantAt(line, s))),
      line.contactWidth,
    );
    height[j] = heightAt(line, s);
  }
  return { from, step: STEP, count, curvature, cant, height };
}

/** Linear look-up; the end values beyond. */
export function read(track: Track, values: Float64Array, s: number): number {
  const r = (s - track.from) / track.step;
  if (r <= 0) return values[0];
  const i = r | 0;
  if (i >= track.count - 1) return values[track.count - 1];
  return values[i] + (r - i) * (values[i + 1] - values[i]);
}
