/**
 * Sideways margins of 20 cars at every half metre of about 2 km, track laid included, against the same sums
 * written out plainly for each car, truck and place.
 */

import { openOuting } from '../engine/outing/open.ts';
import { rollingIn } from '../engine/questions/balance/look.ts';
import { groundUnder, marginsAlong, type Rolling } from '../engine/questions/balance/margins.ts';
import { shareAt } from '../engine/questions/balance/tipping.ts';
import { layTrack } from '../engine/questions/balance/track.ts';
import { cantAngle } from '../engine/things/line/curves.ts';
import { cantAt, curvatureAt } from '../engine/things/line/geometry.ts';
import type { Line } from '../engine/things/line/types.ts';
import { drawer, randomLine, randomOuting } from '../tests/support/random-outings.ts';
import { type BenchRow, ms, quickest } from './row.ts';

/** The share left on the lightest wheel of every vehicle at every place, one after the other. */
function plainly(line: Line, train: readonly Rolling[], grid: Float64Array, speed: number): number[] {
  const out: number[] = [];
  for (const { lift, offsets, weights, wind } of train) {
    for (const s of grid) {
      let curvature = 0;
      let cant = 0;
      offsets.forEach((offset, i) => {
        curvature += weights[i] * curvatureAt(line, s - offset);
        cant += weights[i] * cantAngle(cantAt(line, s - offset), line.contactWidth);
      });
      out.push(shareAt(lift, { curvature, cant }, speed, wind));
    }
  }
  return out;
}

export function run(): BenchRow[] {
  const line = { ...randomLine(drawer(11), 0.02, true, 2000), cants: [{ at: 0, cant: 0.004 }] };
  const context = openOuting({ ...randomOuting(20, 20), line });
  const cells = Math.ceil(line.length / 0.5);
  const grid = Float64Array.from({ length: cells }, (_, j) => (j * line.length) / cells);
  const speeds = new Float64Array(cells).fill(2);
  const train = rollingIn(context);
  const work = (): Float64Array[] => {
    const track = layTrack(line, -context.loaded.length, line.length);
    return train.map((r) => marginsAlong(r, groundUnder(track, r, grid), speeds).share);
  };
  const time = quickest(() => {
    work();
  });
  const theirs = quickest(() => {
    plainly(line, train, grid, 2);
  }, 2);
  const truth = plainly(line, train, grid, 2);
  const errors = work()
    .flatMap((share) => [...share])
    .map((share, i) => Math.abs(share - truth[i]))
    .sort((a, b) => a - b);
  const at = (q: number): string => errors[Math.floor(q * (errors.length - 1))].toExponential(1);
  return [
    {
      work: `sideways margins: ${train.length} vehicles × every 0.5 m of ${(line.length / 1000).toFixed(1)} km, track included`,
      ours: ms(time),
      against: 'the same sums written out for each place',
      theirs: ms(theirs),
      ratio: theirs / time,
      ourError: `share of wheel load off by ${at(0.5)} in the median, ${at(1)} where a curve begins`,
      theirError: 'exact',
    },
  ];
}
