/**
 * The load of every wheel of a stiff vehicle in a given motion. The wheel loads add up to the weight across
 * the rails; a negative load says that the wheel has lifted and by how much the sum was overdrawn.
 */
import type { Body } from './body.ts';

/** Accelerations felt in the vehicle, m/s². */
export interface Felt {
  /** Toward the left, along the plane of the rails. */
  readonly side: number;
  /** Pressing onto the rails. */
  readonly normal: number;
  /** Toward the rear: acceleration plus g·grade; braking makes it negative. */
  readonly rear: number;
}

/** Outside forces on the vehicle, N, at a height; to the left and to the rear positive. */
export interface Push {
  readonly at: number;
  readonly height: number;
  readonly left: number;
  readonly rear: number;
}

export interface AxleLoad {
  readonly group: number;
  /** From the vehicle's front end, m. */
  readonly at: number;
  /** N */
  readonly left: number;
  readonly right: number;
}

export function wheelLoads(body: Body, felt: Felt, pushes: readonly Push[] = []): AxleLoad[] {
  const roll = rollMoment(body, felt, pushes);
  const pitch = pushes.reduce((sum, p) => sum + p.rear * p.height, felt.rear * body.Z);
  const { groups } = body.vehicle;
  return groups.flatMap((group, i) => {
    const load = body.groupMass[i] * felt.normal + groupPitch(body, i, pitch);
    const lean = (body.rollShare[i] * roll) / body.base;
    return axlePlaces(group.at, group.axles, group.wheelBase).map((at, _, all): AxleLoad => {
      const axle = load / group.axles + (groups.length === 1 ? axlePitch(at, all, pitch) : 0);
      return { group: i, at, left: axle / 2 + lean / group.axles, right: axle / 2 - lean / group.axles };
    });
  });
}

/** Moment toward the left about the middle of the track, N·m, with the roll on the springs. */
export function rollMoment(body: Body, felt: Felt, pushes: readonly Push[] = []): number {
  const rigid = pushes.reduce((sum, p) => sum + p.left * p.height, body.Z * felt.side + body.Y * felt.normal);
  return rigid === 0 ? 0 : rigid * body.amplification;
}

/** What a pitching moment (pressing the rear) adds to a group, N: a couple on the outer groups. */
function groupPitch({ vehicle: { groups } }: Body, i: number, pitch: number): number {
  const last = groups.length - 1;
  if (last === 0 || (i !== 0 && i !== last)) return 0;
  const couple = pitch / (groups[last].at - groups[0].at);
  return i === 0 ? -couple : couple;
}

/** With a single group its own axles take the moment, in proportion to their distance from its middle. */
function axlePitch(at: number, places: readonly number[], pitch: number): number {
  const middle = places.reduce((sum, x) => sum + x, 0) / places.length;
  const spread = places.reduce((sum, x) => sum + (x - middle) ** 2, 0);
  return spread === 0 ? 0 : (pitch * (at - middle)) / spread;
}

/** Axles of a group, evenly over its wheel base, front first. */
export const axlePlaces = (centre: number, axles: number, wheelBase: number): number[] =>
  Array.from({ length: axles }, (_, k) =>
    axles === 1 ? centre : centre - wheelBase / 2 + (wheelBase * k) / (axles - 1),
  );

export const totalLoad = (loads: readonly AxleLoad[]): number =>
  loads.reduce((sum, a) => sum + a.left + a.right, 0);
