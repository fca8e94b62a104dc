/**
 * Retarding force of each braked axle group: from a measured force, or from cylinder, lever and block.
 *
 *   F = φ(v)·B,   B = n·(π/4·d²·Δp − S)·r·η        never more than µ·N, beyond it the wheel slides: F = σ·µ·N
 *
 * φ block friction (by speed), B force of the blocks (N), n cylinders, d bore (m), Δp working pressure or
 * depression (Pa), S return spring (N), r lever ratio, η efficiency, µ adhesion, N load on the braked group
 * (N), σ share of the adhesion limit that a locked wheel keeps.
 */

import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { AssumedValues } from '../assumed.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import type { BrakeGear, BrakeRigging } from '../vehicle/types.ts';
import { handBlockForce } from './hand-and-push.ts';
import { gearStates, type WhyNot } from './system.ts';

export interface FrictionPoint {
  readonly speed: number;
  readonly friction: Quantity;
}

export interface BrakedGroup {
  readonly vehicle: number;
  readonly group: number;
  readonly gear: BrakeGear;
  /** Force of the blocks on the wheels of this group, N; where the force was measured, the retarding force. */
  readonly block: Quantity;
  /** Friction by speed; absent where the force was measured. */
  readonly friction?: readonly FrictionPoint[];
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

const isVacuum = (gear: BrakeGear): boolean =>
  gear.kind === 'simple-vacuum' || gear.kind === 'automatic-vacuum';

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

/** A gear's force, of all its groups together, with friction by speed where it is not in the force already. */
export function gearForce(
  gear: BrakeGear,
  assumed: AssumedValues,
  airPressure: number,
  seaLevel: number,
): { block: Quantity; friction?: readonly FrictionPoint[] } | undefined {
  if (gear.force) return { block: gear.force };
  const { rigging, hand } = gear;
  if (hand?.pull) {
    const friction = hand.blockFriction
      ? [{ speed: 0, friction: hand.blockFriction }]
      : assumed.blockFriction[hand.block];
    return { block: handBlockForce(hand, hand.pull), friction };
  }
  if (!rigging) return undefined;
  const pressure = isVacuum(gear)
    ? workableVacuum(rigging.workingPressure, airPressure, seaLevel)
    : rigging.workingPressure;
  const friction = rigging.blockFriction
    ? [{ speed: 0, friction: rigging.blockFriction }]
    : assumed.blockFriction[rigging.block];
  return { block: scaled(blockForce(rigging, pressure), gear.forceShare ?? 1), friction };
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
    if (force) groups.push(...spreadOverGroups(loaded, at.vehicle, at.gear, force, assumed));
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

function spreadOverGroups(
  loaded: LoadedTrain,
  vehicle: number,
  gear: BrakeGear,
  force: { block: Quantity; friction?: readonly FrictionPoint[] },
  assumed: AssumedValues,
): BrakedGroup[] {
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
      load: groupLoads[i],
      deadTime: gear.deadTime ?? assumed.deadTime[gear.kind],
      buildUp: gear.buildUp ?? assumed.buildUp[gear.kind],
    };
  });
}

const scaled = (q: Quantity, factor: number): Quantity => ({
  ...q,
  value: q.value * factor,
  low: q.low * factor,
  high: q.high * factor,
});

/** Friction at a speed and position in its spread, linear between points, the end values beyond. */
export function frictionAt(points: readonly FrictionPoint[], speed: number, position: number): number {
  let i = 0;
  while (i < points.length - 1 && points[i + 1].speed <= speed) i++;
  const here = pick(points[i].friction, position);
  if (i === points.length - 1 || speed <= points[i].speed) return here;
  const share = (speed - points[i].speed) / (points[i + 1].speed - points[i].speed);
  return here + share * (pick(points[i + 1].friction, position) - here);
}

/**
 * Force of one group at a speed, N, as physics has it: adhesion-limited, sliding beyond.
 * A group that could lock at walking pace counts as locked for the whole stop.
 */
export function groupForce(
  group: BrakedGroup,
  speed: number,
  adhesion: number,
  slideFactor: number,
  position: number,
): number {
  const block = pick(group.block, position);
  const limit = adhesion * group.load;
  const atRest = block * (group.friction ? frictionAt(group.friction, 0, position) : 1);
  if (atRest > limit) return slideFactor * limit;
  return block * (group.friction ? frictionAt(group.friction, speed, position) : 1);
}
