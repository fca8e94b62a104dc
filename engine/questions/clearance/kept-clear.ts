/** What a host must keep clear for a train: how far it reaches to either side, all along the line and in each curve. */
import type { OutingContext } from '../../outing/open.ts';
import type { Side } from '../../things/clearance/swept.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { type Body, bodiesOf, fullWidthTo, leanToward, reachedAlong, wayFor } from './bodies.ts';

/** By place: m from the middle of the track, play and lean at their most. */
export interface KeptClear {
  readonly at: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** Each vehicle by itself, with the heights between which it takes so much; heads of its people in it. */
  readonly bodies: readonly KeptBody[];
  /** Names of the vehicles that were not measured, and so are not in it. */
  readonly without: readonly string[];
  /** Of the longest that was measured, m: so far before a curve its ends may stand out already. */
  readonly longest: number;
}

export interface KeptBody {
  readonly name: string;
  readonly underside: number;
  readonly top: number;
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** Names of vehicles of which it cannot be told, and why. */
export interface NotTold {
  readonly unmeasured: readonly string[];
  readonly cannotStand: readonly string[];
}

export function notTold(context: OutingContext): NotTold {
  const { line, loaded } = context;
  const bodies = bodiesOf(context);
  const way = wayFor(line, bodies);
  const stands = (body: Body): boolean =>
    typeof reachedAlong(way, body, 0, line.length, 'left', body.play.high) !== 'number';
  return {
    unmeasured: namesOf(loaded.vehicles.filter((v) => !v.vehicle.envelope)),
    cannotStand: namesOf(bodies.filter((body) => !stands(body)).map(({ of }) => of)),
  };
}

const namesOf = (of: readonly LoadedVehicle[]): string[] => [
  ...new Set(of.map(({ vehicle }) => vehicle.name)),
];

/** undefined: nothing was measured, or a frame cannot stand somewhere: `notTold` says which. */
export function keptClear(context: OutingContext): KeptClear | undefined {
  const { line, loaded } = context;
  const bodies = bodiesOf(context);
  const without = namesOf(loaded.vehicles.filter((v) => !v.vehicle.envelope));
  if (bodies.length === 0) return undefined;
  const way = wayFor(line, bodies);
  const along = (body: Body, side: Side) => {
    const between = { low: body.underside, high: fullWidthTo(body) };
    const reached = reachedAlong(way, body, 0, line.length, side, body.play.high);
    return typeof reached === 'number'
      ? undefined
      : reached.map(({ at, reach }) => ({
          at,
          reach: reach + leanToward(line, side, at, between, body.sway?.(side, at, 'high')),
        }));
  };
  const each = bodies.flatMap((body) => {
    const [left, right] = [along(body, 'left'), along(body, 'right')];
    return left && right ? [{ body, left, right }] : [];
  });
  if (each.length < bodies.length) return undefined;
  const most = (side: Side): number[] =>
    each[0][side].map((_, i) => each.reduce((widest, e) => Math.max(widest, e[side][i].reach), 0));
  return {
    at: each[0].left.map(({ at }) => at),
    left: most('left'),
    right: most('right'),
    bodies: each.map(({ body, left, right }) => ({
      name: body.of.vehicle.name,
      underside: body.underside,
      top: Math.max(body.top, body.people?.heads.high ?? body.top),
      left: left.map((r) => r.reach),
      right: right.map((r) => r.reach),
    })),
    without,
    longest: Math.max(...bodies.map(({ shape: { box } }) => box.front - box.rear)),
  };
}
