/** The outing: one train, on one line, with these riders, in today's conditions, under the host's rules. */

import type { Polygon } from '../base/numerics/polygon.ts';
import type { Quantity } from '../base/quantity.ts';
import type { AssumedValues } from '../things/assumed.ts';
import type { CrewMember } from '../things/duty.ts';
import type { Defect, GroundRule, InDateRule, Shown } from '../things/in-date.ts';
import type { Line, RailStretch } from '../things/line/types.ts';
import type { RailState } from '../things/rail.ts';
import type { Rider, Train } from '../things/train/types.ts';

/** One rule of the host, with the words and place it comes from. */
export interface Rule<T> {
  readonly value: T;
  readonly source: string;
}

/** One train at a time, a staff or token for each stretch, signals, the word of somebody in charge, or eyes alone. */
export const keptApartWays = ['one-train', 'staff', 'signals', 'word', 'sight'] as const;
export type KeptApart = (typeof keptApartWays)[number];

/** Other trains on the line while this one is: none, such as run its way, or such as come the other way too. */
export const otherTrainsWays = ['none', 'same-way', 'either-way'] as const;
export type OtherTrains = (typeof otherTrainsWays)[number];

export interface HostRules {
  readonly name: string;
  /** m/s for the whole line. */
  readonly speed?: Rule<number>;
  /** How trains that could meet on one track are kept apart. */
  readonly keptApart?: Rule<KeptApart>;
  /** Least gap to the train ahead, m. */
  readonly leastGap?: Rule<number>;
  readonly mostCars?: Rule<number>;
  readonly mostRiders?: Rule<number>;
  readonly mostRidersPerCar?: Rule<number>;
  readonly ridersPerAxle?: Rule<number>;
  readonly chainsRequired?: Rule<boolean>;
  /** Least working load of a chain, N. */
  readonly chainLoad?: Rule<number>;
  /** Least share of cars that must be braked by the driver, 0…1. */
  readonly brakedShare?: Rule<number>;
  /** A guard must ride when there are at least this many cars. */
  readonly guardFromCars?: Rule<number>;
  /** A guard must ride when there are at least this many riders. */
  readonly guardFromRiders?: Rule<number>;
  readonly lightsAtNight?: Rule<boolean>;
  readonly gauge?: Rule<number>;
  /** Highest seat above rail, m. */
  readonly seatHeight?: Rule<number>;
  /** Least wheel load as a share of its static load (balance); absent: the project's default applies. */
  readonly leastWheelShare?: Rule<number>;
  readonly youngestRider?: Rule<number>;
  /** A child rides only with an adult on the same vehicle. */
  readonly childWithAdult?: Rule<boolean>;
  /** Greatest difference in height of two coupled couplers, m. */
  readonly couplerTolerance?: Rule<number>;
  /** Kinds of couplers that may run here, as they are written on the sheet. */
  readonly couplerKinds?: Rule<readonly string[]>;
  /** Distance at which a stopped train must be protected, m. */
  readonly flagDistance?: Rule<number>;
  readonly parkingBrakeRequired?: Rule<boolean>;
  /** Days after which a measured value counts as assumed again. */
  readonly measuredLasts?: Rule<number>;
  /** Extra distance added to each cautious stop, m. */
  readonly stopMargin?: Rule<number>;
  /** Least between two trains beside each other, m. */
  readonly roomBetweenTrains?: Rule<number>;
  /** Most from the edge of a platform to what riders step on, level, m; and up or down, m. */
  readonly platformGap?: Rule<number>;
  readonly platformStep?: Rule<number>;
  /** The host's sheet. */
  readonly standards?: Standards;
  /** What a vehicle must lie within on straight level track, by gauge. */
  readonly profiles?: readonly Profile[];
  /** What must be in date for an outing. */
  readonly inDate?: readonly InDateRule[];
  /** What trains do while something on the ground is rejected. */
  readonly ground?: readonly GroundRule[];
  // ---- people at work; times in s
  readonly mostOnDuty?: Rule<number>;
  readonly mostDriving?: Rule<number>;
  readonly mostDrivingAtNight?: Rule<number>;
  readonly mostWithoutBreak?: Rule<number>;
  readonly leastRest?: Rule<number>;
  /** Rest before a turn, where the one before it was of the most hours on duty. */
  readonly restAfterFullTurn?: Rule<number>;
  readonly mostInDay?: Rule<number>;
  readonly mostInWeek?: Rule<number>;
  readonly mostDays?: Rule<number>;
  readonly soberDeclared?: Rule<boolean>;
  readonly fitDeclared?: Rule<boolean>;
  readonly youngestDriver?: Rule<number>;
  readonly youngestGuard?: Rule<number>;
  readonly youngestLookout?: Rule<number>;
  /** Years: a younger driver drives with a grown one beside. */
  readonly drivesAlone?: Rule<number>;
  /** The driver has tried a stop with this engine before people are on the train. */
  readonly stopTried?: Rule<boolean>;
  /** It is written how guard and driver signal each other. */
  readonly guardSignals?: Rule<boolean>;
  readonly signals?: readonly Signal[];
  /** Where somebody looks out whenever a train runs. */
  readonly lookouts?: readonly LookoutRule[];
  // ---- weather and night
  /** Nothing runs while it is about. */
  readonly lightningStops?: Rule<boolean>;
  /** m/s, gusts, from whatever side. */
  readonly mostWind?: Rule<number>;
  /** K */
  readonly mostHeat?: Rule<number>;
  readonly runsAtNight?: Rule<boolean>;
  /** After dark a guard rides, however short the train. */
  readonly guardAtNight?: Rule<boolean>;
}

/** How guard and driver speak to each other. */
export interface Signal {
  readonly signal: string;
  readonly means: string;
}

export interface LookoutRule {
  readonly at: string;
  readonly source: string;
}

/** What a host's sheet speaks of. */
export const standardKeys = [
  'backToBack',
  'backVariation',
  'wheelCheck',
  'flangeThickness',
  'flangeHeight',
  'treadHollow',
  'wheelWidth',
  'flangeAngle',
  'treadTaper',
  'couplerHeight',
  'couplerHeightLoaded',
  'couplerSwing',
  'couplerHold',
  'bodyWidth',
  'bodyHeight',
  'vehicleLength',
  'trainLength',
  'axleLoad',
  'leastRadius',
] as const;
export type StandardKey = (typeof standardKeys)[number];

/** A limit of a sheet, SI: refused below least or above most; between those and the slow bounds no faster than the slow speed. */
export interface Standard {
  readonly least?: number;
  readonly most?: number;
  readonly slowBelow?: number;
  readonly slowAbove?: number;
  /** m/s */
  readonly slowSpeed?: number;
  readonly source: string;
}

/** Corners round, or of one side from the middle to the middle; x to the left of the middle of the track, y above the rail, m. */
export interface Profile {
  readonly gauge: number;
  readonly points: Polygon;
  readonly source: string;
}

export type Standards = Readonly<Partial<Record<StandardKey, Standard>>>;

export interface Conditions {
  readonly railState: RailState;
  /** Where somebody looked today and the rail is not like the rest, better or worse. */
  readonly railStretches?: readonly RailStretch[];
  /** Adhesion measured on this rail today; else assumed by rail state. */
  readonly adhesion?: Quantity;
  /** m above sea level; absent: taken as sea level and said so where it matters. */
  readonly altitude?: number;
  /** Atmospheric pressure of the day at the line, Pa (absolute, not reduced to sea level). */
  readonly airPressure?: number;
  readonly night: boolean;
  /** How far the driver sees today anywhere: fog, smoke, rain, the engine's own light after dark; from the seat, m. */
  readonly visibility?: number;
  /** m/s across the line; where it is not stated, the wind from whatever side counts (`windAcross`). */
  readonly crosswind?: number;
  /** m/s in gusts, from whatever side. */
  readonly wind?: number;
  /** It is about: seen or heard. */
  readonly lightning?: boolean;
  /** Of the air, in the shade, K. */
  readonly temperature?: number;
  /** The driver has tried this engine's brake; absent: not said. */
  readonly brakeTried?: boolean;
  /** Driver's reaction, s. */
  readonly reaction: Quantity;
}

export interface FollowingTrain {
  /** Seconds behind this one. */
  readonly after: number;
  /** m/s */
  readonly speed: number;
}

/** Until somebody lifts it, in the line's own chainage. */
export interface Restriction {
  /** Line by its name. */
  readonly of: string;
  readonly from: number;
  readonly to: number;
  /** m/s; absent: shut to every train. */
  readonly speed?: number;
  readonly why: string;
  /** Day from which it counts. */
  readonly since: string;
  readonly source: string;
}

/** A move of a route that sets back, beside the one that is answered in full. */
export interface OtherMove {
  /** From 1 in the order in which they are run. */
  readonly number: number;
  readonly line: Line;
  /** The train runs the other way round than in the move that is answered in full. */
  readonly turned: boolean;
  /** As they lie along it. */
  readonly restrictions?: readonly Restriction[];
}

export interface Outing {
  readonly name: string;
  readonly date?: string;
  /** The same in days since 1970-01-01. */
  readonly day?: number;
  /** That it runs over: a route over the tracks of a line as one line, where it names one. */
  readonly line: Line;
  /** The line whose tracks the route runs over; absent: no route is named. */
  readonly whole?: Line;
  /** The other moves of a route that sets back; absent: it has none. */
  readonly moves?: readonly OtherMove[];
  /** The train stands end for end in it, as against its paper. */
  readonly turned?: true;
  readonly train: Train;
  readonly riders: readonly Rider[];
  readonly host: HostRules;
  readonly conditions: Conditions;
  readonly direction: 'forward' | 'reverse';
  /** How it comes back from the end of a line that does not go round; absent: the engine leads. */
  readonly wayBack?: 'engine-leads' | 'pushed' | 'none';
  /** Speed the driver means to run at, m/s; absent: the limits alone. */
  readonly plannedSpeed?: number;
  readonly following?: FollowingTrain;
  /** Absent: not said. */
  readonly otherTrains?: OtherTrains;
  /** Speed limits agreed for this outing on top of the host's. */
  readonly extraLimits: readonly { readonly from: number; readonly to: number; readonly speed: number }[];
  /** Certificates as they stand on its day. */
  readonly shown?: readonly Shown[];
  /** What is not mended. */
  readonly defects?: readonly Defect[];
  /** Who works the train or stands by to. */
  readonly crew?: readonly CrewMember[];
  /** How guard and driver signal each other today, where the host does not say it. */
  readonly signals?: string;
  /** Where the line is slow or shut for the time being. */
  readonly restrictions?: readonly Restriction[];
  /** Assumptions made while reading the files: each shows as a finding of lowest rank. */
  readonly assumptions: readonly Assumption[];
  readonly assumed: AssumedValues;
}

export interface Assumption {
  /** What was taken, for example `rolling resistance of ball bearings`. */
  readonly of: string;
  /** Vehicle, place or file field it was taken for. */
  readonly where: string;
  readonly key: string;
  readonly source: string;
}
