/** What stands in where a figure is not given. */
import type { Quantity } from '../base/quantity.ts';
import type { BrakeKind } from './brake/kinds/index.ts';
import type { SurveyQuality } from './line/types.ts';
import type { RailState } from './rail.ts';
import type { BearingKind, BlockMaterial } from './vehicle/types.ts';

/** What the trade asks, or calls worth saying, where no host rules it: rows `practice/…` of `data/`. */
export const practiceKeys = [
  'stand',
  'applications',
  'fill-spread',
  'release',
  'uneven',
  'reservoir',
  'over-pressure',
  'late',
  'slow-climb',
  'walking-pace',
  'slowest-driven',
  'kept-speed',
  'arm-brake',
  'chains-from',
  'chain-close',
  'half-knuckle',
  'coupler-sink',
  'lever-least',
  'lever-most',
  'infant',
  'small',
  'child',
  'adult',
  'light',
  'wheel-near',
  'wheel-runout',
  'wheel-tread',
  'wheel-narrow',
  'wheel-diameter',
  'flange-thin',
  'tread-hollow',
  'clear-below',
  'flange-least',
  'flange-draft',
  'wheel-usual',
  'clear-beside',
  'platform-gap',
  'platform-step',
] as const;
export type Practice = Readonly<
  Record<(typeof practiceKeys)[number], { readonly value: number; readonly source: string }>
>;

/** Figures that stand in where an outing's files give none; filled from `data/` by `papers/`. */
export interface AssumedValues {
  /** Wheel on rail, by rail state, N/N. */
  readonly adhesion: Readonly<Record<RailState, Quantity>>;
  /** Curve drag = weight·c/R: c in m. */
  readonly curveConstant: Quantity;
  /** Block on wheel by speed (growing, m/s), linear between. */
  readonly blockFriction: Readonly<
    Record<BlockMaterial, readonly { readonly speed: number; readonly friction: Quantity }[]>
  >;
  /** s, by brake kind. */
  readonly deadTime: Readonly<Record<BrakeKind, Quantity>>;
  readonly buildUp: Readonly<Record<BrakeKind, Quantity>>;
  /** Vehicles on one brake pipe for which its assumed times stand; the power by which more take longer: `brake/times.ts`. */
  readonly pipe: { readonly vehicles: number; readonly growth: Quantity };
  /** Starting resistance ÷ rolling resistance, from rest. */
  readonly startingFactor: Quantity;
  /** Centre of gravity of a seated rider above the seat, m, where the posture is not known. */
  readonly riderCentre: Quantity;
  /** Coupler free movement, m, and stiffness, N/m. */
  readonly couplerSlack: Quantity;
  readonly couplerStiffness: Quantity;
  /** Slack that a safety chain hangs with, m. */
  readonly chainSlack: Quantity;
  /** Friction of a locked wheel ÷ adhesion, falling with speed: floor, and speed over which it falls, m/s. */
  readonly skid: { readonly floor: Quantity; readonly fallSpeed: Quantity };
  /** A driver who feels wheels slide: share of adhesion that easing and braking anew uses, s until he eases, and
   * the share of what can slide that he feels as all of it. */
  readonly easing: { readonly utilisation: Quantity; readonly notice: Quantity; readonly felt: Quantity };
  /** Adhesion of a light engine's driving wheels on a dry rail, N/N. */
  readonly drivenAdhesion: Quantity;
  /** Of an engine not all of whose wheels are driven, ÷ gauge, where nobody measured them: centre of gravity, and rear coupler. */
  readonly engineHeight: { readonly centre: Quantity; readonly coupler: Quantity };
  /** s in which a throttle is opened fully, anything between alike. */
  readonly throttle: Quantity;
  /** s until a guard sees that nobody drives. */
  readonly guardNotice: Quantity;
  /** s from the leading driver's action until another driver, whom that one signals, acts too. */
  readonly anotherDriver: Quantity;
  /** How much a seated person's centre of gravity rises on standing up, m. */
  readonly standingRise: Quantity;
  /** A cross wind: drag; a seated adult's side view, m², and its middle above the seat, m. */
  readonly wind: { readonly drag: Quantity; readonly personArea: Quantity; readonly personMiddle: Quantity };
  readonly brakeParts: BrakePartValues;
  /** A seated adult: top of head and shoulders above the seat, how far a stretched arm reaches beyond the widest part, m. */
  readonly person: { readonly head: Quantity; readonly shoulder: Quantity; readonly arm: Quantity };
  readonly practice: Practice;
  /** A short stretch that nobody knew to be greasy: chance in one stop, adhesion there ÷ beside it, length m. */
  readonly badSpot: {
    readonly chance: Readonly<Record<RailState, Quantity>>;
    readonly factor: Quantity;
    readonly length: Quantity;
  };
  /** Starting ÷ rolling resistance, by bearings; curve and grade not in it. */
  readonly startingByBearing: Readonly<Record<BearingKind, Quantity>>;
  /** Friction of wet blocks ÷ dry. */
  readonly blockWet: Readonly<Record<BlockMaterial, Quantity>>;
  /** True grade − surveyed grade, by the way the heights were taken, N/N. */
  readonly gradeSpread: Readonly<Record<SurveyQuality, Quantity>>;
  /** Length of a safety chain, m; mean ÷ breaking force until it breaks; stiffness of what it hangs on, each end, N/m. */
  readonly chainCatch: {
    readonly length: Quantity;
    readonly fullness: Quantity;
    readonly hook: Quantity;
    readonly headstock: Quantity;
  };
  /** A seated rider as a sprung mass: share of his mass that is sprung, Hz, share of critical damping. */
  readonly sprungRider: {
    readonly share: Quantity;
    readonly frequency: Quantity;
    readonly damping: Quantity;
  };
  /**
   * Swing of a coupler to one side, rad; how far a bar or link turns up or down, rad; its shank ÷ gauge; sideways play of a wheelset on track of its own gauge, m;
   * difference in height of two coupled ones, m; damping ÷ critical of two neighbours.
   */
  readonly coupler: {
    readonly swing: Quantity;
    readonly pitch: Quantity;
    readonly shank: Quantity;
    readonly play: Quantity;
    readonly heightDifference: Quantity;
    readonly damping: Quantity;
  };
  /** Extra distance kept to whatever the train must stop short of, m. */
  readonly stopMargin: number;
  /** Clear track that a driver sees ahead, m. */
  readonly sight: number;
  /** The same after dark, by the engine's own light, m. */
  readonly nightSight: number;
  /** No higher speed is looked at where none is stated, m/s. */
  readonly unstatedSpeed: number;
}

/** What the parts of a brake leave open. */
export interface BrakePartValues {
  /** Handle, valve and slack in the rigging before the air counts; dead time of a current whose lag is stated, s. */
  readonly mechanical: Quantity;
  readonly electricDead: Quantity;
  /** On times reckoned with parts taken by rule. */
  readonly byRule: Quantity;
  /** Greatest vacuum ÷ working vacuum, of an ejector of unknown reach. */
  readonly ejectorReach: number;
  /** Pipe below reservoir at which a triple valve begins to open, and over which it opens wholly, Pa. */
  readonly tripleBegins: number;
  readonly tripleOpens: number;
  /** A driver's valve that holds a set pressure closes over this share of it. */
  readonly lapsOver: number;
}
