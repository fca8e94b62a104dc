/**
 * Likenesses of vehicles and people, for every drawing of them: what stands in where a figure was not given,
 * and the build of a seated person. No figure of any answer is taken from here.
 */
import type { Rider } from '../engine/things/train/types.ts';
import type { AxleGroup, Vehicle } from '../engine/things/vehicle/types.ts';

/** Heights of a grown person above the seat, and the radius of the head, m. */
export const SHOULDER = 0.6;
export const CROWN = 0.86;
export const HEAD = 0.115;

const builds: Readonly<Record<Rider['ageGroup'], number>> = { adult: 1, youth: 0.9, child: 0.7 };

/** Size beside a grown person. */
export const buildOf = ({ ageGroup }: Rider): number => builds[ageGroup];

export const wheelOf = ({ wheelRadius }: AxleGroup): number => wheelRadius ?? 0.06;

/** Top of the frame over the wheels, below every seat, m above the rail. */
export const floorOf = (v: Vehicle): number =>
  Math.min(
    Math.max(...v.groups.map((g) => (g.driven ? wheelOf(g) * 1.4 : wheelOf(g) * 2))) + 0.03,
    Math.min(...v.seats.map((s) => s.height), Infinity) - 0.02,
  );

/** Top of what is built on the frame, m above the rail. */
export const bodyTop = (v: Vehicle): number =>
  v.envelope?.height ?? Math.max(0.42, (v.centreHeight?.value ?? 0.26) * 1.75);

/** Width of the body, m. */
export const bodyWidth = (v: Vehicle): number => v.envelope?.width ?? v.gauge * 1.8;
