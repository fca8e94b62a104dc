/**
 * Retarding force of each braked axle group: from a measured force, or from cylinder, lever and block.
 *
 *   F = φ(v)·B,   B = n·(π/4·d²·Δp − S)·r·η        never more than µ·N: beyond it the wheel slides
 *
 * φ block friction (by speed), B force of the blocks (N), n cylinders, d bore (m), Δp working pressure or
 * depression (Pa), S return spring (N), r lever ratio, η efficiency, µ adhesion, N load on the braked group (N).
 * What a sliding wheel still does, and what its driver does about it: `motion/slide.ts`.
 */

import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import { type SkidLaw, skidShare } from '../adhesion/skid.ts';
import type { AssumedValues } from '../assumed.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import { blockOf } from '../vehicle/blocks.ts';
import type { BlockMaterial, BrakeGear, BrakeRigging, Vehicle } from '../vehicle/types.ts';
import { type FrictionPoint, frictionAt } from './friction.ts';
import { handBlockForce } from './hand-and-push.ts';
import { brakeOf, isElectric, isPushed, isVacuumKind } from './kinds/index.ts';
import { shareBySpeed } from './speed-share.ts';
import { gearStates, type WhyNot } from './system.ts';
import { after, gearTimes } from './times.ts';
import type { Block } from './wet.ts';

export type { FrictionPoint } from './friction.ts';
export { frictionAt } from './friction.ts';

export interface BrakedGroup {
  readonly vehicle: number;
  readonly group: number;
  readonly gear: BrakeGear;
  /** Force of the blocks on the wheels of this group, N; where the force was measured, the retarding force. */
  readonly block: Quantity;
  /** Friction by speed, or what speed leaves of a force measured at a stand; absent where nothing rubs. */
  readonly friction?: readonly FrictionPoint[];
  readonly material?: Block;
  /** Handle by which a person graduates it with all others on it; absent: it comes on by itself, and stays on. */
  readonly handle?: string;
  /** Sand, where it is thrown, lies under its wheels. */
  readonly sanded: boolean;
  /** Static load on the group, N. */
  readonly load: number;
  /** s */
  readonly deadTime: Quantity;
  readonly buildUp: Quantity;
}

export interface BrakeFault {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  readonly why: WhyNot | 'force-unknown';
}

export interface TrainBrakes {
  /** Groups whose brakes answer the driver. */
  readonly groups: readonly BrakedGroup[];
  readonly faults: readonly BrakeFault[];
}

/** Depression that the day's air allows, Pa: a stated working vacuum falls in proportion to the air pressure. */
export function workableVacuum(working: Quantity, airPressure: number, seaLevel: number): Quantity {
  const share = working.how === 'measured' ? 1 : Math.min(1, airPressure / seaLevel);
  const limit = (p: number): number => Math.min(p * share, airPressure);
  return { ...working, value: limit(working.value), low: limit(working.low), high: limit(working.high) };
}

/** Force of the blocks, N, from the rigging. Bounds use the bounds of pressure and efficiency together. */
export function blockForce(rigging: BrakeRigging, pressure: Quantity): Quantity {
  const area = (Math.PI / 4) * rigging.bore * rigging.bore;
  const at = (p: number, efficiency: number): number =>
    Math.max(0, area * p - (rigging.springForce ?? 0)) * rigging.cylinders * rigging.leverRatio * efficiency;
  return {
    value: at(pressure.value, rigging.efficiency.value),
    low: at(pressure.low, rigging.efficiency.low),
    high: at(pressure.high, rigging.efficiency.high),
    how: pressure.how,
  };
}

/** A gear's force, of all its groups together, with friction by speed where blocks rub. */
export interface GearForce {
  readonly block: Quantity;
  readonly friction?: readonly FrictionPoint[];
  readonly material?: Block;
}

export function gearForce(
  gear: BrakeGear,
  assumed: AssumedValues,
  airPressure: number,
  seaLevel: number,
): GearForce | undefined {
  // How hard it brakes when pushed in wholly says nothing of how hard it is pushed.
  if (isPushed(gear.kind) && !gear.pushed) return undefined;
  if (gear.force)
    return gear.pushed ? pushedForce(gear, gear.force, assumed) : standingForce(gear, gear.force, assumed);
  const { rigging, hand } = gear;
  if (hand?.pull) {
    return { block: handBlockForce(hand, hand.pull), ...blocksOf(hand, assumed) };
  }
  if (!rigging) return undefined;
  const pressure = isVacuumKind(gear.kind)
    ? workableVacuum(rigging.workingPressure, airPressure, seaLevel)
    : rigging.workingPressure;
  return {
    block: scaled(blockForce(rigging, pressure), gear.forceShare ?? 1),
    ...blocksOf(rigging, assumed),
  };
}

interface Blocked {
  readonly block: BlockMaterial;
  readonly blockFriction?: Quantity;
}

const blocksOf = (
  { block, blockFriction }: Blocked,
  assumed: AssumedValues,
): { friction: readonly FrictionPoint[]; material: Block } => ({
  friction: blockFriction ? [{ speed: 0, friction: blockFriction }] : assumed.blockFriction[block],
  material: block,
});

/** Measured at a stand, a force falls with speed as its blocks do; a motor that brakes has none. */
function standingForce(gear: BrakeGear, force: Quantity, assumed: AssumedValues): GearForce {
  const material = blockOf(gear) ?? 'unknown';
  if (isElectric(gear.kind) && material === 'unknown') return { block: force };
  return { block: force, friction: shareBySpeed(material, assumed), material };
}

/** What the push gives is a force at the rail: of its blocks it is 1/φ as much. */
function pushedForce(gear: BrakeGear, force: Quantity, assumed: AssumedValues): GearForce {
  if (!gear.surge) return { block: force };
  const blocks = blocksOf(gear.surge, assumed);
  const standing = frictionAt(blocks.friction, 0, 0);
  return { block: scaled(force, 1 / standing), ...blocks };
}

/** Every braked group of the train that answers the driver, and why the others do not. */
export function trainBrakes(
  loaded: LoadedTrain,
  assumed: AssumedValues,
  airPressure: number,
  seaLevel: number,
): TrainBrakes {
  const states = gearStates(loaded);
  const answering = states.filter((s) => s.answers);
  const { groups, unknown } = gearGroups(loaded, answering, assumed, airPressure, seaLevel);
  const faults = states.flatMap(({ vehicle, gear, answers, why }): BrakeFault[] => {
    if (!answers) return [{ vehicle, gear, why: why ?? 'no-supply' }];
    return unknown.some((u) => u.vehicle === vehicle && u.gear === gear)
      ? [{ vehicle, gear, why: 'force-unknown' }]
      : [];
  });
  return { groups, faults };
}

export interface GearAt {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  /** It came on by itself: nobody eases it. */
  readonly alone?: boolean;
  /** Another driver works it, whom the leading one must signal first. */
  readonly signalled?: boolean;
}

/** Braked groups of chosen gears, and those of them whose force nobody knows. */
export function gearGroups(
  loaded: LoadedTrain,
  gears: readonly GearAt[],
  assumed: AssumedValues,
  airPressure: number,
  seaLevel: number,
): { groups: BrakedGroup[]; unknown: GearAt[] } {
  const groups: BrakedGroup[] = [];
  const unknown: GearAt[] = [];
  for (const at of gears) {
    const force = gearForce(at.gear, assumed, airPressure, seaLevel);
    if (force) groups.push(...spreadOverGroups(loaded, at, force, assumed));
    else unknown.push(at);
  }
  return { groups: shareAdhesion(groups), unknown };
}

/** Likely retarding force at the rail as the wheels come to rest, N: what locks them. */
export const forceAtRest = ({ block, friction }: BrakedGroup): number =>
  block.value * (friction ? frictionAt(friction, 0, 0) : 1);

/**
 * Two gears on the same wheels share their adhesion in proportion to what each does at the rail, measured there or
 * reckoned from its blocks, so that they lock together.
 */
function shareAdhesion(groups: readonly BrakedGroup[]): BrakedGroup[] {
  return groups.map((g) => {
    const together = groups.filter((o) => o.vehicle === g.vehicle && o.group === g.group);
    const force = together.reduce((sum, o) => sum + forceAtRest(o), 0);
    return together.length === 1 || force === 0 ? g : { ...g, load: (g.load * forceAtRest(g)) / force };
  });
}

/** Whether the engine throws sand: stated, or taken of an engine. */
const throwsSand = ({ sander, role }: Vehicle): boolean => sander ?? role === 'engine';

/** Sand, where it is thrown, lies under these wheels. */
export const sandReaches = (vehicle: Vehicle, group: Vehicle['groups'][number]): boolean =>
  throwsSand(vehicle) && group.driven;

/** A pipe, cable or steam pipe is one handle; a screw or lever is one by itself; a push has none. */
function handleOf({ vehicle, gear, alone }: GearAt): string | undefined {
  const { worked } = brakeOf(gear.kind);
  if (alone || worked === 'push') return undefined;
  return worked === 'arm' ? `${vehicle} ${gear.id}` : gear.kind;
}

/** One gear's force on the wheels of its groups, by the axles of each. */
export function spreadOverGroups(
  loaded: LoadedTrain,
  at: GearAt,
  force: GearForce,
  assumed: AssumedValues,
): BrakedGroup[] {
  const { vehicle, gear, signalled } = at;
  const handle = handleOf(at);
  const { deadTime, buildUp } = gearTimes(gear, loaded.train.vehicles, assumed);
  const { vehicle: body, groupLoads } = loaded.vehicles[vehicle];
  const on = body.groups.flatMap((g, i) => (gear.on.includes(g.id) ? [i] : []));
  const axles = on.reduce((sum, i) => sum + body.groups[i].axles, 0);
  return on.map((i) => {
    const share = body.groups[i].axles / axles;
    return {
      vehicle,
      group: i,
      gear,
      block: scaled(force.block, share),
      ...(force.friction ? { friction: force.friction } : {}),
      ...(force.material ? { material: force.material } : {}),
      ...(handle === undefined ? {} : { handle }),
      sanded: sandReaches(body, body.groups[i]),
      load: groupLoads[i],
      deadTime: signalled ? after(assumed.anotherDriver, deadTime) : deadTime,
      buildUp,
    };
  });
}

const scaled = (q: Quantity, factor: number): Quantity => ({
  ...q,
  value: q.value * factor,
  low: q.low * factor,
  high: q.high * factor,
});

/** Force of one group at a speed, N: up to adhesion, beyond it that of a locked wheel. */
export function groupForce(
  group: BrakedGroup,
  speed: number,
  adhesion: number,
  skid: SkidLaw,
  position: number,
): number {
  const block = pick(group.block, position);
  const force = block * (group.friction ? frictionAt(group.friction, speed, position) : 1);
  const limit = adhesion * group.load;
  return force > limit ? skidShare(speed, skid) * limit : force;
}
