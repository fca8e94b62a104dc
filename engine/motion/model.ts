/**
 * One scenario laid over a stop kit: plain numbers and arrays from which a stop is computed at once.
 *
 * The braked groups melt into a few channels: one for forces that do not change with speed, one for each
 * block material. A channel has a full force by speed and one build-up curve, weighted by force. A group whose brakes would exceed adhesion slides: it keeps only `slideFactor` of the adhesion limit.
 */

import { pick } from '../base/spread.ts';
import type { Potential } from '../things/line/potential.ts';
import { between3, RAMP_STEPS, SPEED_NODES, SPEED_STEP, type StopKit } from './kit.ts';
import type { Scenario } from './scenario.ts';

/** What a stop reports: distance m, time s, distance before full brake m, speed as the driver acts and top speed m/s. */
export interface StopTrace {
  distance: number;
  time: number;
  beforeFullBrake: number;
  speedAtAction: number;
  topSpeed: number;
}

export const emptyTrace = (): StopTrace => ({
  distance: 0,
  time: 0,
  beforeFullBrake: 0,
  speedAtAction: 0,
  topSpeed: 0,
});

export interface StopModel {
  potential: Potential;
  /** Mass of this scenario ÷ likely mass: scales weight and potential. */
  massFactor: number;
  /** kg, with the inertia of the wheels. */
  inertia: number;
  /** Length over which the pull of the line changes little, m: a quarter of the train, 1 … 4 m. */
  stride: number;
  /** s */
  reaction: number;
  /** Step of the build-up, s. */
  dt: number;
  channels: number;
  /** Per channel and step: mean block force over the step and its weight on the distance run, N. */
  mean: Float64Array;
  lead: Float64Array;
  /** Per channel: block force at the start of each step and at the end of the last, N. */
  node: Float64Array;
  /** Per channel: force of its blocks, N. */
  block: Float64Array;
  /** Per channel: factor on the block force by speed, at SPEED_STEP. */
  factor: Float64Array;
  /** Full brake of all channels by speed, N. */
  force: Float64Array;
  a: number;
  b: number;
  c: number;
  /** Full brake and resistance overcome the steepest fall with room to spare everywhere. */
  holdsEverywhere: boolean;
  /** Number of groups that slide. */
  sliding: number;
  /** Result of the last stop computed for its distance alone. */
  trace: StopTrace;
}

/** The two models that a map of speeds is made with. */
export interface MapModels {
  readonly likely: StopModel;
  readonly cautious: StopModel;
}

export function emptyModel(kit: StopKit): StopModel {
  const channels = 1 + kit.friction.length;
  return {
    potential: kit.potential,
    massFactor: 1,
    inertia: kit.effectiveMass,
    stride: Math.min(4, Math.max(1, kit.length / 4)),
    reaction: 0,
    dt: 0,
    channels,
    mean: new Float64Array(channels * RAMP_STEPS),
    lead: new Float64Array(channels * RAMP_STEPS),
    node: new Float64Array(channels * (RAMP_STEPS + 1)),
    block: new Float64Array(channels),
    factor: new Float64Array(channels * SPEED_NODES).fill(1),
    force: new Float64Array(SPEED_NODES),
    a: 0,
    b: 0,
    c: 0,
    holdsEverywhere: false,
    sliding: 0,
    trace: emptyTrace(),
  };
}

/**
 * Lay a scenario over the kit into an existing model (no allocation: sampling calls it 10,000 times).
 *
 * @param wary bounding use: a group slides if the strong end of its spread could lock it, while its force
 *   is the weak end's. Sampling uses the one drawn force for both.
 */
export function layScenario(model: StopModel, kit: StopKit, scenario: Scenario, wary: boolean): void {
  const adhesion = pick(kit.adhesion, scenario.adhesion);
  const slide = pick(kit.slideFactor, scenario.adhesion);
  const massFactor = pick(kit.massSpread, -scenario.mass);
  model.massFactor = massFactor;
  model.inertia = kit.effectiveMass + kit.mass * (massFactor - 1);
  model.reaction = pick(kit.reaction, -scenario.reaction);
  model.dt = (kit.rampTime / RAMP_STEPS) * pick(kit.rampSpread, -scenario.timing);
  layResistance(model, kit, scenario.resistance, massFactor);
  layForces(model, kit, scenario.brake, wary, adhesion * Math.min(1, massFactor), slide);
  let least = Infinity;
  for (let k = 0; k < SPEED_NODES; k++) if (model.force[k] < least) least = model.force[k];
  model.holdsEverywhere = 0.85 * (least + model.a) + massFactor * kit.potential.leastSlope > 0;
}

function layResistance(model: StopModel, kit: StopKit, position: number, massFactor: number): void {
  const { low, value, high } = kit.resistance;
  model.a = between3(low.a, value.a, high.a, position) * massFactor;
  model.b = between3(low.b, value.b, high.b, position) * massFactor;
  model.c = between3(low.c, value.c, high.c, position);
}

function layForces(
  model: StopModel,
  kit: StopKit,
  brake: number,
  wary: boolean,
  adhesion: number,
  slide: number,
): void {
  const { mean, lead, node, block: channelBlock } = model;
  mean.fill(0);
  lead.fill(0);
  node.fill(0);
  channelBlock.fill(0);
  model.sliding = 0;
  const strong = wary ? Math.abs(brake) : brake;
  for (let g = 0; g < kit.groups; g++) {
    let force = between3(kit.blockLow[g], kit.blockValue[g], kit.blockHigh[g], brake);
    let channel = kit.material[g] + 1;
    const table = channel === 0 ? undefined : kit.friction[channel - 1];
    const locking =
      between3(kit.blockLow[g], kit.blockValue[g], kit.blockHigh[g], strong) *
      (table ? between3(table.low[0], table.value[0], table.high[0], strong) : 1);
    const limit = adhesion * kit.load[g];
    if (locking > limit) {
      // Never more than the weak brake gives where, being weak, it does not slide after all.
      const weak = table
        ? force * between3(table.low[LAST], table.value[LAST], table.high[LAST], brake)
        : force;
      force = Math.min(slide * limit, weak);
      channel = 0;
      model.sliding++;
    }
    channelBlock[channel] += force;
    const base = g * RAMP_STEPS;
    const to = channel * RAMP_STEPS;
    for (let k = 0; k < RAMP_STEPS; k++) {
      mean[to + k] += force * kit.rampMean[base + k];
      lead[to + k] += force * kit.rampLead[base + k];
      node[to + channel + k] += force * kit.rampNode[base + k];
    }
  }
  layChannels(model, kit, brake);
}

const LAST = SPEED_NODES - 1;

/** Friction by speed of each channel, and the force of all channels together. Build-up stays in N per channel. */
function layChannels(model: StopModel, kit: StopKit, brake: number): void {
  const { factor, force, block, node } = model;
  force.fill(block[0]);
  node[RAMP_STEPS] = block[0];
  for (let m = 0; m < kit.friction.length; m++) {
    const { low, value, high } = kit.friction[m];
    const from = (m + 1) * SPEED_NODES;
    for (let k = 0; k < SPEED_NODES; k++) {
      const friction = between3(low[k], value[k], high[k], brake);
      factor[from + k] = friction;
      force[k] += block[m + 1] * friction;
    }
    node[(m + 2) * (RAMP_STEPS + 1) - 1] = block[m + 1];
  }
}

/** A model of its own for one scenario. */
export function modelOf(kit: StopKit, scenario: Scenario, wary = true): StopModel {
  const model = emptyModel(kit);
  layScenario(model, kit, scenario, wary);
  return model;
}

/** Factor of one channel at a speed. */
export function channelFactor(factor: Float64Array, channel: number, v: number): number {
  const r = v / SPEED_STEP;
  const i = r | 0;
  const base = channel * SPEED_NODES;
  if (i >= SPEED_NODES - 1) return factor[base + SPEED_NODES - 1];
  return factor[base + i] + (r - i) * (factor[base + i + 1] - factor[base + i]);
}

/** Full brake at a speed, N. */
export function brakeForce(force: Float64Array, v: number): number {
  const r = v / SPEED_STEP;
  const i = r | 0;
  if (i >= SPEED_NODES - 1) return force[SPEED_NODES - 1];
  return force[i] + (r - i) * (force[i + 1] - force[i]);
}
