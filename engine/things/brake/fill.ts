/**
 * How each brake of the train fills, along the train: time to 10 %, 90 % and full force per gear, and the
 * curve between. Air at outside temperature throughout (isothermal: the later of the two bounds).
 *
 * No part of a train can act before a sound wave has run along the pipe to it: that bound is laid over the
 * lumped volumes, which would let a trace through at once.
 */
import { AIR_GAMMA, AIR_GAS_CONSTANT } from '../../base/constants.ts';
import { STANDARD_TEMPERATURE } from '../air/formulas.ts';
import type { BrakePartValues } from '../assumed.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import type { BrakeGear } from '../vehicle/types.ts';
import type { AirKind, BrakeKind } from './kinds/index.ts';
import { type AirState, AirTree } from './network.ts';
import { type Action, type MissingPart, type TrainAir, trainAir } from './train-air.ts';

/** Speed of sound in the pipe, m/s. */
export const WAVE_SPEED: number = Math.sqrt(AIR_GAMMA * AIR_GAS_CONSTANT * STANDARD_TEMPERATURE);

/** A run ends when no brake's pressure changes by more than this share of it per second, or at the last. */
const SETTLED = 0.001;
/** Pressure that a share is taken of at least, Pa. */
const LEAST_PRESSURE = 1000;
const LONGEST = 600;
/** Error of a step, as a share of atmospheric content: times come out within 0.1 % (compared with 1e-6). */
const TOLERANCE = 1e-3;
/** Share of the final force that counts as full. */
const FULL = 0.99;
/** Share of its charge at which a reservoir counts as charged again. */
const CHARGED = 0.95;
/** Points kept of each curve. */
const CURVE_POINTS = 120;

export interface GearFill {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  /** s after the driver's action until 10 %, 90 % and 99 % of the change of force; Infinity: not reached. */
  readonly t10: number;
  readonly t90: number;
  readonly full: number;
  /** Share of the greatest force (1 = full) by time, s. */
  readonly curve: { readonly time: readonly number[]; readonly share: readonly number[] };
  /** Pressure difference across the piston at the end, Pa. */
  readonly pressure: number;
  /** Force of the blocks before friction at the end, as a share of that at the stated working pressure. */
  readonly ofWorking: number;
  /** Force of all blocks of the gear together at full brake, N: piston force × lever ratio × efficiency. */
  readonly block: number;
  /** Automatic air, release: s until the car's reservoir is charged to 95 % again; Infinity: not reached. */
  readonly recharged?: number;
  /** Parts taken by rule. */
  readonly assumed: readonly string[];
}

export interface TrainFill {
  readonly kind: BrakeKind;
  readonly action: Action;
  readonly gears: readonly GearFill[];
  readonly missing: readonly MissingPart[];
  /** s */
  readonly ran: number;
  /** (content now − content before − admitted) ÷ content: the books of the air, zero but for rounding. */
  readonly balance: number;
}

/** @param atmosphere Pa at the line today */
export function fillTrain(
  loaded: LoadedTrain,
  kind: AirKind,
  action: Action,
  atmosphere: number,
  values: BrakePartValues,
): TrainFill {
  const laid = trainAir(loaded, kind, action, atmosphere, values);
  const nothing = { kind, action, gears: [], missing: laid.missing, ran: 0, balance: 0 };
  if (laid.gears.length === 0 || laid.nodes.length === 0) return nothing;
  const tree = new AirTree(laid.nodes, atmosphere, STANDARD_TEMPERATURE);
  const before = tree.state.content.reduce((sum, u) => sum + u, 0);
  const records = new Recorder(laid);
  records.note(0, tree.state);
  const ran = tree.run(LONGEST, (time, state) => records.note(time, state), TOLERANCE);
  const after = tree.state.content.reduce((sum, u) => sum + u, 0);
  return {
    kind,
    action,
    gears: laid.gears.map((_, g) => records.fill(g)),
    missing: laid.missing,
    ran,
    balance: (after - before - tree.state.admitted) / before,
  };
}

/** Keeps the force of every gear by time. */
class Recorder {
  private readonly laid: TrainAir;
  private readonly time: number[] = [];
  private readonly force: number[][];
  private readonly pressure: number[];
  private readonly charge: number[][];

  constructor(laid: TrainAir) {
    this.laid = laid;
    this.force = laid.gears.map(() => []);
    this.pressure = laid.gears.map(() => 0);
    this.charge = laid.gears.map(() => []);
  }

  /** @returns whether the run may end: nothing moves any more */
  note(time: number, state: AirState): boolean {
    const last = this.time.length - 1;
    const passed = last >= 0 ? time - this.time[last] : 0;
    let still = time > 0.5;
    this.laid.gears.forEach((gear, g) => {
      const was = this.pressure[g];
      this.pressure[g] = gear.difference(state.pressure);
      const force = Math.max(0, this.pressure[g] * gear.area - gear.spring);
      const moved = Math.abs(this.pressure[g] - was);
      if (moved > SETTLED * Math.max(Math.abs(this.pressure[g]), LEAST_PRESSURE) * passed) still = false;
      if (gear.waits(state.pressure)) still = false;
      this.force[g].push(force);
      if (gear.charge) this.charge[g].push(gear.charge(state.pressure));
    });
    this.time.push(time);
    return still;
  }

  fill(g: number): GearFill {
    const gear = this.laid.gears[g];
    const { time } = this;
    const force = this.force[g];
    const end = force[force.length - 1];
    const start = force[0];
    const greatest = Math.max(start, end);
    const wave = gear.along / WAVE_SPEED;
    const reach = (share: number): number =>
      Math.max(wave, crossing(time, force, start + share * (end - start)));
    const moved = Math.abs(end - start) > 1e-6 * Math.max(gear.working, 1);
    return {
      vehicle: gear.vehicle,
      gear: gear.gear,
      t10: moved ? reach(0.1) : Infinity,
      t90: moved ? reach(0.9) : Infinity,
      full: moved ? reach(FULL) : Infinity,
      curve: thinned(time, force, greatest, wave),
      pressure: this.pressure[g],
      ofWorking: gear.working > 0 ? greatest / gear.working : 0,
      block: greatest * (gear.gear.rigging?.leverRatio ?? 0) * (gear.gear.rigging?.efficiency.value ?? 0),
      ...(gear.charge ? { recharged: crossing(time, this.charge[g], CHARGED) } : {}),
      assumed: gear.assumed,
    };
  }
}

/** First time at which a curve that goes from its first to its last value crosses a level, linear between. */
function crossing(time: readonly number[], values: readonly number[], level: number): number {
  const rising = values[values.length - 1] >= values[0];
  for (let i = 1; i < time.length; i++) {
    const passed = rising ? values[i] >= level : values[i] <= level;
    if (!passed) continue;
    const rise = values[i] - values[i - 1];
    const share = rise === 0 ? 1 : (level - values[i - 1]) / rise;
    return time[i - 1] + share * (time[i] - time[i - 1]);
  }
  return Infinity;
}

/** A few points, closest together where the force changes most. */
function thinned(
  time: readonly number[],
  force: readonly number[],
  greatest: number,
  wave: number,
): { time: number[]; share: number[] } {
  const result = { time: [0], share: [greatest > 0 ? force[0] / greatest : 0] };
  const length = time[time.length - 1];
  let [lastTime, lastShare] = [0, result.share[0]];
  for (let i = 1; i < time.length; i++) {
    const share = greatest > 0 ? force[i] / greatest : 0;
    const far = Math.abs(share - lastShare) + (time[i] - lastTime) / length >= 2 / CURVE_POINTS;
    if (!far && i < time.length - 1) continue;
    result.time.push(Math.max(wave, time[i]));
    result.share.push(share);
    [lastTime, lastShare] = [time[i], share];
  }
  return result;
}
