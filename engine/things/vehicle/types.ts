/**
 * A vehicle: engine, tender or car. Positions along it are m from its front end (over couplers),
 * across it m to the left of the centre line, heights m above the rail head.
 */

import type { Polygon } from '../../base/numerics/polygon.ts';
import type { Quantity } from '../../base/quantity.ts';
import type { BrakeKind } from '../brake/kinds/index.ts';
import type { Power } from '../duty.ts';
import type { Wheelset } from '../wheel/types.ts';

export type VehicleRole = 'engine' | 'tender' | 'car' | 'guard';

/** A truck, or a group of axles in a rigid frame, that carries load through one centre. */
export interface AxleGroup {
  readonly id: string;
  readonly name: string;
  /** Centre of the group from the front end, m. */
  readonly at: number;
  readonly axles: number;
  /** Between its outer axles, m; 0 for a single axle. */
  readonly wheelBase: number;
  /** How far axles between the outer ones move sideways in the frame, to one side, m; absent: not measured. */
  readonly middlePlay?: number;
  /** How far one of its axles moves up or down from the line of the others and still bears, m; absent: not measured. */
  readonly travel?: number;
  readonly wheelRadius?: number;
  readonly driven: boolean;
  /** Share of the tare that it carries; where absent the lever rule over two groups gives it. */
  readonly tareShare?: number;
}

export type BearingKind = 'ball' | 'roller' | 'plain';

/** Rolling resistance R = weight·(rolling + perSpeed·v) + perSpeedSquared·v². */
export interface RollingResistance {
  /** N/N */
  readonly rolling: Quantity;
  /** N/N from rest, where measured; else rolling × an assumed factor. */
  readonly starting?: Quantity;
  /** N/N per m/s; exactly none where nobody has measured it. */
  readonly perSpeed: Quantity;
  /** N/(m/s)² */
  readonly perSpeedSquared: number;
}

export const blockMaterials = ['cast-iron', 'composition', 'wood', 'steel', 'bronze', 'other'] as const;
export type BlockMaterial = (typeof blockMaterials)[number];

/** Cylinder, lever and block from which a brake's force is computed. */
export interface BrakeRigging {
  readonly cylinders: number;
  /** m */
  readonly bore: number;
  /** m */
  readonly stroke?: number;
  /** Block force ÷ piston force, all blocks together. */
  readonly leverRatio: number;
  readonly efficiency: Quantity;
  readonly block: BlockMaterial;
  /** Block friction where measured; else by material and speed. */
  readonly blockFriction?: Quantity;
  /** Working pressure above atmosphere (air) or depression (vacuum), Pa. */
  readonly workingPressure: Quantity;
  /** Return-spring force at the piston, N. */
  readonly springForce?: number;
  /** Parts behind the pressure; needed for filling and leak questions. */
  readonly reservoirVolume?: number;
  readonly cylinderVolume?: number;
  readonly pipeVolume?: number;
  /** Smallest passage to the cylinder, m diameter. */
  readonly chokeDiameter?: number;
  /** Loss of pressure in a leak test, Pa/s. */
  readonly leakRate?: number;
  /** Narrowest bore of this vehicle's pipe and hoses, m. */
  readonly hoseDiameter?: number;
  /** Automatic vacuum: chamber side of all cylinders with its reservoir, piston at rest, m³. */
  readonly chamberVolume?: number;
  /** Automatic air: groove through which the car's reservoir is charged, m diameter. */
  readonly feedDiameter?: number;
}

/** What an engine has to work the train brake with. */
export interface BrakeSupply {
  /** Main reservoir, m³. */
  readonly reservoirVolume?: number;
  /** Pressure above atmosphere (air) or depression (vacuum) that it is kept at, Pa. */
  readonly pressure?: number;
  /** Compressor: free air, m³/s. Ejector or vacuum pump: suction at the pipe's own pressure, m³/s. */
  readonly rate?: number;
  /** Greatest vacuum that ejector or pump reaches at sea level, Pa. */
  readonly greatestVacuum?: number;
  /** Narrowest passage of the driver's valve, m diameter. */
  readonly valveDiameter?: number;
}

/** A brake worked by a person's arm: handwheel and screw, or lever. */
export interface HandRigging {
  /** Force that the person keeps up, N; absent: must be measured. */
  readonly pull?: Quantity;
  /** Radius at which the hand pulls, m, and the lead of the screw per turn, m. */
  readonly wheelRadius?: number;
  readonly screwLead?: number;
  /** Block force ÷ force in the rod (or ÷ the hand's force where there is no screw). */
  readonly leverRatio: number;
  readonly efficiency: Quantity;
  readonly block: BlockMaterial;
  readonly blockFriction?: Quantity;
}

/** A brake worked by the push of the coupler. */
export interface SurgeRigging {
  /** Block force ÷ coupler push beyond the spring. */
  readonly leverRatio: number;
  readonly efficiency: Quantity;
  /** Push that the spring takes before the blocks touch, N. */
  readonly springForce: number;
  readonly block: BlockMaterial;
  readonly blockFriction?: Quantity;
}

export interface BrakeGear {
  readonly id: string;
  readonly name: string;
  readonly kind: BrakeKind;
  /** Ids of the axle groups that it retards. */
  readonly on: readonly string[];
  /** Measured or stated retarding force at the rail, N (all its groups together). Else `rigging`. */
  readonly force?: Quantity;
  /** What the blocks are made of, beside a measured force. */
  readonly block?: BlockMaterial;
  readonly rigging?: BrakeRigging;
  /** Share of the rigging's force that reservoirs and chambers of the parts leave; absent: all of it. */
  readonly forceShare?: number;
  /** From the driver's action to the first force, s; absent: assumed by kind. */
  readonly deadTime?: Quantity;
  /** From first to full force, s; absent: assumed by kind. */
  readonly buildUp?: Quantity;
  /** Who must act. `driver` works it from the engine. */
  readonly workedBy: 'driver' | 'guard' | 'rider';
  /** Mechanical and does not leak off: holds a standing train. */
  readonly parking: boolean;
  /** Parking, and a lever that stops the train too. */
  readonly stops?: boolean;
  /** For `electric`: what it does when the supply is lost, as wired. */
  readonly onSupplyLoss?: 'applies' | 'lost';
  /** Worked by hand: what the arm works through. */
  readonly hand?: HandRigging;
  /** For `surge`: what the coupler works through. */
  readonly surge?: SurgeRigging;
  /** Its `force` is that of the coupler's push on level track; a stop settles the push anew. */
  readonly pushed?: true;
  /** What was measured with its coupler pushed in as far as it goes: no push gives more, N. */
  readonly pushedMost?: Quantity;
  /** For `electric`: time constant of its first-order rise, s. */
  readonly lag?: Quantity;
}

export interface SteamTraction {
  readonly kind: 'steam';
  readonly cylinders: number;
  readonly bore: number;
  readonly stroke: number;
  readonly wheelDiameter: number;
  /** Boiler pressure above atmosphere, Pa. */
  readonly boilerPressure: number;
  /** Mean effective ÷ boiler pressure at starting. */
  readonly meanPressureFactor: Quantity;
  /** Power that the boiler sustains, W; absent: not known. */
  readonly power?: Quantity;
}

export interface DrawbarTraction {
  readonly kind: 'drawbar';
  /** Force at the rail by speed, growing speed; linear between, last value to its speed, zero beyond. */
  readonly curve: readonly { readonly speed: number; readonly force: number }[];
  readonly how: 'measured' | 'stated' | 'assumed';
  readonly source?: string;
}

export type Traction = SteamTraction | DrawbarTraction;

/** A chain or link between vehicles. */
export interface SafetyChain {
  /** How many, side by side. */
  readonly count: number;
  /** Marked grade; absent = unmarked, taken as grade 30. */
  readonly grade?: 30 | 43 | 70 | 80 | 100;
  /** Nominal link wire diameter, m. */
  readonly size?: number;
  /** Working load of the weakest other part (hook, quick link, weld, eye), N. */
  readonly weakestPart?: Quantity;
  readonly weakestPartName?: string;
  /** Its least breaking load, N, where stated. */
  readonly weakestPartBreaks?: Quantity;
  /** Marked working load of the chain itself, N, where stated. */
  readonly workingLoad?: Quantity;
  /** Slack before the chain bears, m; of several side by side the shortest's. */
  readonly slack: number;
  /** How much more slack the others side by side have than the shortest, m; absent: not measured. */
  readonly slackDifference?: number;
  /** From hook to hook, pulled straight, m; absent: assumed. */
  readonly length?: number;
  /** N/m, as it hangs, with hooks and headstocks; absent: by size and length, and what those are assumed to be. */
  readonly stiffness?: Quantity;
}

export interface Coupling {
  readonly type: string;
  /** From its pivot to where it meets the next one, m; of a bar or link between two pins, half of it. */
  readonly shank?: number;
  /** How far it swings to one side before it strikes, rad. */
  readonly swing?: Quantity;
  /** Instead of `swing`: how far its end moves to one side, m. */
  readonly sidePlay?: number;
  /** How far a bar or link turns up or down before it strikes, of the two the lesser, rad. */
  readonly pitch?: Quantity;
  /** Above rail, m. */
  readonly height?: number;
  /** From top to bottom of what holds the other one, m. */
  readonly face?: number;
  /** Free movement in one coupler, m. */
  readonly slack?: Quantity;
  /** N/m */
  readonly stiffness?: Quantity;
  /** Working load in pull, N. */
  readonly strength?: Quantity;
  readonly chain?: SafetyChain;
}

export const postures = ['chair', 'legs-forward', 'knees-up', 'astride'] as const;
export type Posture = (typeof postures)[number];

export interface Seat {
  readonly id: string;
  readonly name: string;
  /** From the front end, m (the rider's seat reference point). */
  readonly at: number;
  /** To the left, m. */
  readonly across: number;
  /** Seat surface above rail, m. */
  readonly height: number;
  /** How people sit on it; absent, or `sit-in` (where the legs go is not said): not known. */
  readonly posture?: Posture | 'sit-in';
  /** A seated adult's centre of gravity above the seat in that posture, m; absent: the posture is not known. */
  readonly adultCentre?: Quantity;
  readonly facing: 'forward' | 'backward' | 'sideways';
  /** Greatest rider mass for this seat, kg. */
  readonly most?: number;
  readonly driver: boolean;
}

/** A thing carried at a fixed place: ballast, tools, water. */
export interface Load {
  readonly name: string;
  readonly mass: Quantity;
  readonly at: number;
  readonly across: number;
  readonly height: number;
}

export interface Ratings {
  readonly riders?: number;
  /** kg of riders and goods. */
  readonly load?: number;
  /** kg per axle, gross. */
  readonly axleLoad?: number;
  /** m/s */
  readonly speed?: number;
  /** m */
  readonly leastRadius?: number;
}

export interface Suspension {
  /** Roll stiffness of the whole vehicle about the rail plane, N·m/rad. */
  readonly rollStiffness?: Quantity;
  /** Vertical stiffness per wheel, N/m. */
  readonly wheelStiffness?: Quantity;
  /** Trucks equalised, or frame and truck free to follow twist. */
  readonly equalised: boolean;
  /** Height difference of one wheel that the running gear follows before another lifts, m (measured). */
  readonly twistFreedom?: number;
  /** Frame out of square or twisted over truck centres, m. */
  readonly frameTwist?: number;
}

export interface Flange {
  /** rad, steepest part of the flange against the horizontal. */
  readonly angle?: number;
  readonly frictionHigh?: number;
}

/** m; the width with people seated, the height of the body without them. */
export interface Envelope {
  readonly width: number;
  readonly height: number;
  /** What is wider than the track lies no lower than this above the rail; absent: it may reach down to it. */
  readonly underside?: number;
}

/** Where riders put their feet as they get on: floor or foot board. */
export interface Step {
  /** Above the rail, empty, m. */
  readonly height: number;
  /** Over both sides, m. */
  readonly width: number;
}

/** What hangs low between the rails or over them: ash pan, truck frame, brake gear. Height above the rail, empty, m. */
export interface LowPart {
  readonly name: string;
  readonly at: number;
  readonly height: number;
}

/** What was worked on: what was measured of it before counts as assumed again. */
export const workedParts = ['brakes', 'wheels', 'body', 'couplers', 'engine'] as const;
export type WorkedPart = (typeof workedParts)[number];

export interface Worked {
  readonly part: WorkedPart;
  /** ISO date. */
  readonly date: string;
}

export interface Vehicle {
  readonly id: string;
  readonly name: string;
  readonly role: VehicleRole;
  /** m */
  readonly gauge: number;
  /** Over couplers, m. */
  readonly length: number;
  /** Empty, in working order, without driver or riders, kg. */
  readonly tare: Quantity;
  /** Tare centre of gravity above rail, m. */
  readonly centreHeight?: Quantity;
  /** Tare centre of gravity from the front end, m; absent: middle. */
  readonly centreAt?: number;
  readonly groups: readonly AxleGroup[];
  /** Inertia of the wheels ÷ tare mass: effective mass = tare·(1 + share) + load. */
  readonly rotatingShare: Quantity;
  readonly bearing: BearingKind;
  readonly resistance: RollingResistance;
  readonly brakes: readonly BrakeGear[];
  /** Kinds of train brake that this engine works through the train; absent: the kinds of its own gear. */
  readonly supplies?: readonly BrakeKind[];
  /** What it works them with. */
  readonly brakeSupply?: BrakeSupply;
  /** Kinds whose pipe passes through this vehicle although it has no such brake itself. */
  readonly throughPipe?: readonly BrakeKind[];
  readonly traction?: Traction;
  /** What drives an engine. */
  readonly power?: Power;
  readonly front: Coupling;
  readonly rear: Coupling;
  readonly seats: readonly Seat[];
  readonly loads: readonly Load[];
  readonly ratings: Ratings;
  readonly suspension?: Suspension;
  readonly flange?: Flange;
  /** From the front; no more than it has axles. Absent: nobody measured one. */
  readonly wheelsets?: readonly Wheelset[];
  readonly envelope?: Envelope;
  /** Absent: nobody measured it. */
  readonly step?: Step;
  /** Its outline from the front, people seated: corners round, or of one side; x to the left, y above the rail, m. */
  readonly section?: Polygon;
  /** Absent: nobody measured one. */
  readonly lowParts?: readonly LowPart[];
  /** Throws sand under its driven wheels; absent: taken of an engine. */
  readonly sander?: boolean;
  /** Somebody else's, or new to who drives it. */
  readonly borrowed?: boolean;
  readonly headlight?: boolean;
  readonly taillight?: boolean;
  readonly worked?: readonly Worked[];
}
