/**
 * The line as surveyed: alignment, cant, places, the host's limits and sight distances along it.
 *
 * Chainage `at`, `from`, `to` in m from the line's origin, growing in the running direction "forward".
 * On a loop, chainage runs 0 … length and `from > to` means the stretch crosses the origin.
 */

import type { Quantity } from '../../base/quantity.ts';
import type { RailState, UsualRail } from '../rail.ts';
import type { Turnout } from './turnout.ts';

export interface HeightKnot {
  readonly at: number;
  /** m above the line's datum. Between knots the grade is constant. */
  readonly height: number;
}

/** A stretch whose curvature varies linearly; arcs have equal ends, transitions differ. */
export interface CurveElement {
  readonly from: number;
  readonly to: number;
  /** 1/m; positive curves to the left in the forward direction. */
  readonly startCurvature: number;
  readonly endCurvature: number;
  /** Extra gauge in the curve, m. */
  readonly gaugeWidening: number;
}

export interface CantKnot {
  readonly at: number;
  /** m, height of the right rail above the left one; linear between knots. Helps left curves if positive. */
  readonly cant: number;
}

export type PlaceKind =
  | 'station'
  | 'stop'
  | 'signal'
  | 'switch'
  | 'crossing'
  | 'tunnel'
  | 'bridge'
  | 'summit'
  | 'board'
  | 'siding'
  | 'yard'
  | 'buffers';

export interface Place {
  readonly id: string;
  readonly name: string;
  readonly kind: PlaceKind;
  readonly at: number;
  /** End of an extended place (tunnel, platform), m. */
  readonly to?: number;
  /** Distance before it at which a driver first sees it, m (forward, reverse). */
  readonly sight?: number;
  readonly sightReverse?: number;
  /** The train is booked to stop here. */
  readonly stop: boolean;
}

export interface SpeedLimit {
  readonly from: number;
  readonly to: number;
  /** m/s */
  readonly speed: number;
  readonly why: string;
  readonly source: string;
}

/** Where the driver sees less than the whole way ahead. */
export interface Sight {
  readonly from: number;
  readonly to: number;
  /** m of clear track that the driver sees ahead. */
  readonly distance: number;
  readonly direction: 'forward' | 'reverse' | 'both';
}

/** Where the rail is not like the rest: a tunnel, shade, leaves, an oiled station. */
export interface RailStretch<State extends UsualRail = RailState> {
  readonly from: number;
  readonly to: number;
  readonly state: State;
  /** What makes it so. */
  readonly why?: string;
}

/** A frog with its guard rail, or a level crossing: where wheels go through gaps beside the rail. */
export interface Flangeway {
  readonly id: string;
  readonly name: string;
  readonly at: number;
  /** Gauge there, m; absent: the line's. */
  readonly gauge?: number;
  /** Gap between frog or rail and its wing, m, and between the opposite rail and its guard rail. */
  readonly frog?: number;
  readonly guard?: number;
  /** From the gauge face of the frog to the guarding face of its guard rail, m, where measured. */
  readonly guardCheck?: number;
  /** Between the guarding faces of guard rail and wing, m, where measured. */
  readonly guardFace?: number;
  /** From the top of the rail to the floor of the shallower gap, m. */
  readonly depth?: number;
}

/**
 * Something solid beside or over the track: a post, a wall, a platform, the mouth of a tunnel. Distances from the middle of
 * the track, heights above the rail, m; each as measured level and plumb.
 */
export interface Structure {
  readonly id: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** In the running direction. */
  readonly side: 'left' | 'right' | 'both';
  /** To its nearest face; absent: it hangs over the track alone. */
  readonly distance?: number;
  /** Between which heights that face stands; without a top it counts as higher than any train. */
  readonly bottom: number;
  readonly top?: number;
  /** Riders get on and off across it. */
  readonly platform?: boolean;
  /** Clear height over the track; absent: open to the sky. */
  readonly headroom?: number;
}

/** A track beside the line, joined to it by points at one end or both: how far its middle lies from the line's, as taped. */
export interface Siding {
  readonly id: string;
  readonly name: string;
  /** In the running direction. */
  readonly side: 'left' | 'right';
  /** Growing; linear between, m. Beyond the last ones nothing is known. */
  readonly spacings: readonly { readonly at: number; readonly spacing: number }[];
  /** Of its sharpest curve, the points' own included, m; absent: not measured. */
  readonly radius?: number;
}

/** Id of the line's own track among its tracks. */
export const MAIN = 'main';

/** Points where one track leaves another: their tips, how they lie, and how the diverging track runs to the frog. */
export interface Joint {
  /** Id of the track that goes on. */
  readonly track: string;
  /** Of the tips of the points, on that track. */
  readonly at: number;
  /** Seen from the tips toward the frog. */
  readonly hand: 'left' | 'right';
  /** The tips come before the frog where that track's chainage grows. */
  readonly facing: boolean;
  /** Absent: too little of it was measured. */
  readonly turnout?: Turnout;
  /** What of it is to be measured. */
  readonly lacks?: 'frogNumber' | 'lead';
  /** Radius as a versine has it, where frog and lead tell one too, m. */
  readonly held?: number;
}

/** A track beside the main one. Its chainage begins at the tips of its first points. */
export interface Track {
  readonly id: string;
  readonly name: string;
  /** Its own alignment, its turnouts in it, and what stands along it. */
  readonly line: Line;
  /** Somebody took its heights; without them nobody is told how it runs over it. */
  readonly levelled: boolean;
  readonly start: Joint;
  /** Absent: it ends at buffers. */
  readonly end?: Joint;
}

/** What runs along a line and its paper may leave out. */
export const alongside = ['places', 'sights', 'structures', 'flangeways', 'railStretches'] as const;

/** Of a stretch of track on which nobody said what the rest of the line says, nor that there is none. */
export interface Unstated {
  readonly from: number;
  readonly to: number;
  /** Name of the track. */
  readonly track: string;
  readonly lacks: (typeof alongside)[number];
  /** What stands near it and is told of the track that it leaves alone. */
  readonly near?: string;
}

export type SurveyQuality = 'levelled' | 'taped' | 'gps' | 'stated' | 'assumed';

export interface Line {
  readonly name: string;
  /** m between railheads. */
  readonly gauge: number;
  /** Distance between wheel-rail contact points across the track, m. */
  readonly contactWidth: number;
  readonly loop: boolean;
  /** m; a loop's circumference or a point-to-point line's end. */
  readonly length: number;
  /** At least two, first at 0, last at length, strictly growing; a loop's first and last heights agree. */
  readonly heights: readonly HeightKnot[];
  readonly heightQuality: SurveyQuality;
  /** Sorted, not overlapping; elsewhere straight. */
  readonly curves: readonly CurveElement[];
  /** Sorted; level where empty. */
  readonly cants: readonly CantKnot[];
  readonly places: readonly Place[];
  readonly speedLimits: readonly SpeedLimit[];
  readonly sights: readonly Sight[];
  /** Sorted; absent: nobody measured one. */
  readonly flangeways?: readonly Flangeway[];
  /** Sorted; absent: nobody measured one. */
  readonly structures?: readonly Structure[];
  /** Sorted; absent: nobody measured one. */
  readonly sidings?: readonly Siding[];
  /** Tracks that leave it or one another, as a graph joined at points; absent: nobody measured one. */
  readonly tracks?: readonly Track[];
  /** What the rail usually is there; it never makes a day's rail better. */
  readonly railStretches?: readonly RailStretch<UsualRail>[];
  /** What nobody told of a track: it is asked for where one runs over it. */
  readonly unstated?: readonly Unstated[];
  /** Worst twist measured or admitted, m per m; absent: not known. */
  readonly twist?: number;
  /** Curve resistance ÷ weight × radius, m, as measured; absent: assumed. */
  readonly curveConstant?: Quantity;
}
