/** What a host must keep clear for a train: how far it reaches to either side, all along the line and in each curve. */
import type { OutingContext } from '../../outing/open.ts';
import type { Side } from '../../things/clearance/swept.ts';
import { bodiesOf, fullWidthTo, leanToward, reachedAlong, wayFor } from './bodies.ts';

/** By place: m from the middle of the track, play and lean at their most. */
export interface KeptClear {
  readonly at: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** Names of the vehicles that were not measured, and so are not in it. */
  readonly without: readonly string[];
}

/** undefined: nothing was measured, or a frame cannot stand somewhere. */
export function keptClear(context: OutingContext): KeptClear | undefined {
  const { line, loaded } = context;
  const bodies = bodiesOf(context);
  const without = loaded.vehicles.filter((v) => !v.vehicle.envelope).map((v) => v.vehicle.name);
  if (bodies.length === 0) return undefined;
  const way = wayFor(line, bodies);
  const along = (side: Side) => {
    const each = bodies.map((body) => {
      const reached = reachedAlong(way, body, 0, line.length, side, body.play.high);
      return typeof reached === 'number'
        ? undefined
        : reached.map(({ at, reach }) => ({
            at,
            reach: reach + leanToward(line, side, at, { low: body.underside, high: fullWidthTo(body) }),
          }));
    });
    return each.some((e) => e === undefined) ? undefined : each.flatMap((e) => (e ? [e] : []));
  };
  const [left, right] = [along('left'), along('right')];
  if (!left || !right) return undefined;
  const most = (of: typeof left): number[] =>
    of[0].map((_, i) => of.reduce((widest, reached) => Math.max(widest, reached[i].reach), 0));
  return {
    at: left[0].map(({ at }) => at),
    left: most(left),
    right: most(right),
    without: [...new Set(without)],
  };
}
