/** How sharp a crest or a sag each vehicle takes, and how sharp the line's are under this train. */

import { guidesOf } from '../../things/coupler/bend.ts';
import type { Line } from '../../things/line/types.ts';
import { type VerticalCurve, verticalCurves } from '../../things/line/vertical.ts';
import { leastForRise } from '../../things/vehicle/hump.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { HumpFit } from './look.ts';

export interface Need {
  readonly vehicle: string;
  /** A low part, or an axle group. */
  readonly what: string;
  readonly lie: 'crest' | 'sag' | 'both';
  /** m; infinite: it lies too low, or has no travel, for any. */
  readonly radius: number;
}

/** @param room that is left under a low part, m */
export function needsOf(vehicles: readonly Vehicle[], fits: readonly HumpFit[], room: number): Need[] {
  return fits.flatMap((fit, i) => {
    const vehicle = vehicles[i];
    const [front, rear] = guidesOf(vehicle);
    const parts = fit.parts.map((p): Need => {
      const { along: at } = p;
      return {
        vehicle: fit.name,
        what: p.part,
        lie: at >= front && at <= rear ? 'crest' : 'sag',
        radius: leastForRise(rear - front, at - front, p.height - p.sink - room),
      };
    });
    const groups = fit.groups.flatMap((g): Need[] => {
      const { wheelBase: base } = g;
      if (g.travel === undefined || g.travel === Infinity) return [];
      return [
        {
          vehicle: fit.name,
          what: g.group,
          lie: 'both',
          radius: leastForRise(base, base / 2, g.travel),
        },
      ];
    });
    return [...parts, ...groups];
  });
}

const MOST_CURVES = 6;

/** The line's sharpest crests and sags under an edge as long as the longest frame of the train. */
export function sharpestOf(
  line: Line,
  vehicles: readonly Vehicle[],
): { readonly chord: number; readonly curves: readonly VerticalCurve[] } {
  const chord = Math.max(
    0,
    ...vehicles.map((v) => {
      const [front, rear] = guidesOf(v);
      return rear - front;
    }),
  );
  return { chord, curves: chord > 0 ? verticalCurves(line, chord, MOST_CURVES) : [] };
}
