/**
 * One scenario laid over the inputs of a stop: plain numbers and arrays from which a stop is computed at once.
 *
 * The braked groups melt into a few channels: one for forces that do not change with speed, one for each
 * block material, and one for wheels that slide by each handle. A channel has a full force by speed and one
 * build-up curve, weighted by force. From then on all brakes are one force by speed (`slide.ts` has the law).
 */

import { pick } from '../base/spread.ts';
import type { Potential } from '../things/line/potential.ts';
import { emptyRails, layRails, type Rails } from './rails.ts';
import type { Caution, Own, Scenario } from './scenario.ts';
import { setForces } from './scenario-forces.ts';
import { between3, RAMP_STEPS, rollingAt, SPEED_NODES, SPEED_STEP, type StopInputs } from './stop-inputs.ts';

/** What a stop reports: distance m, time s, distance before full brake m, speed as the driver acts and top speed m/s. */
export interface StopTrace {
  distance: number;
  time: number;
  beforeFullBrake: number;
  speedAtAction: number;
  topSpeed: number;
}

/** Figures that are not known yet are NaN, and all models come from `emptyModel`: one shape, which is what makes a stop quick. */
export const emptyTrace = (): StopTrace => ({
  distance: NaN,
  time: NaN,
  beforeFullBrake: NaN,
  speedAtAction: NaN,
  topSpeed: NaN,
});

export interface StopModel {
  potential: Potential;
  /** m over couplers. */
  readonly length: number;
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
  /** From full build-up until sliding wheels are eased, s; 0 where none slide or nobody eases them. */
  notice: number;
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
  /** All brakes by speed, built up but not yet eased, N. */
  early: Float64Array;
  /** All brakes by speed from then on, N. */
  force: Float64Array;
  /** Resistance a + b·v + c·v² (N); `a` with `tilt`, the pull of the grade that the survey may have missed. */
  a: number;
  b: number;
  c: number;
  tilt: number;
  /** Bad spot that the stop meets, m (0: none), and adhesion on it ÷ beside it. */
  spot: number;
  spotFactor: number;
  /** Full brake and resistance overcome the steepest fall with room to spare everywhere. */
  holdsEverywhere: boolean;
  /** Number of groups that slide somewhere between standstill and 45 mph. */
  sliding: number;
  /** Result of the last stop computed for its distance alone. */
  trace: StopTrace;
  /** Where the rail is in another state; undefined: nowhere. */
  rails: Rails | undefined;
  /** Other scenarios that stand for the same luck: the longest stop of all counts. */
  beside: readonly StopModel[];
  readonly scratch: Scratch;
}

/** Room to lay a scenario in, so that nothing is made anew. */
export interface Scratch {
  /** Per group: block force, and what adhesion holds, N. */
  readonly drawn: Float64Array;
  readonly limit: Float64Array;
  /** What adhesion holds of all groups together, N. */
  readonly grip: Float64Array;
  /** Per handle and table of friction: greatest block force ÷ what adhesion holds. */
  readonly worst: Float64Array;
  /** Per handle and speed: share of the way that slides, and the factor on a brake that is eased. */
  readonly slips: Float64Array;
  readonly eased: Float64Array;
  readonly slides: Uint8Array;
  /** Per handle, first of what hangs on none: channel of its wheels that slide; 0: none do. */
  readonly slidesOn: Uint8Array;
  /** Per channel: block force that goes on as it is, N. */
  readonly lasting: Float64Array;
  /** By speed: friction of a skidding wheel ÷ adhesion. */
  readonly skid: Float64Array;
  /** Floor and fall speed that it was laid with. */
  readonly skidOf: Float64Array;
}

/** The two models that a map of speeds is made with. */
export interface MapModels {
  readonly likely: StopModel;
  readonly cautious: StopModel;
}

export function emptyModel(inputs: StopInputs): StopModel {
  const tables = inputs.friction.length;
  // Wheels slide on any of the handles, or on none.
  const channels = tables + inputs.handles + 1;
  return {
    potential: inputs.potential,
    length: inputs.length,
    massFactor: NaN,
    inertia: NaN,
    stride: Math.min(4, Math.max(1, inputs.length / 4)),
    reaction: NaN,
    dt: NaN,
    notice: NaN,
    channels: tables,
    mean: new Float64Array(channels * RAMP_STEPS),
    lead: new Float64Array(channels * RAMP_STEPS),
    node: new Float64Array(channels * (RAMP_STEPS + 1)),
    block: new Float64Array(channels),
    factor: new Float64Array(channels * SPEED_NODES).fill(1),
    early: new Float64Array(SPEED_NODES),
    force: new Float64Array(SPEED_NODES),
    a: NaN,
    b: NaN,
    c: NaN,
    tilt: NaN,
    spot: NaN,
    spotFactor: NaN,
    holdsEverywhere: false,
    sliding: 0,
    trace: emptyTrace(),
    rails: inputs.elsewhere.length > 0 ? emptyRails(inputs, emptyModel) : undefined,
    beside: [],
    scratch: {
      drawn: new Float64Array(inputs.groups),
      limit: new Float64Array(inputs.groups),
      grip: new Float64Array(1),
      worst: new Float64Array(inputs.handles * tables),
      slips: new Float64Array(inputs.handles * SPEED_NODES),
      eased: new Float64Array(inputs.handles * SPEED_NODES),
      slides: new Uint8Array(inputs.handles),
      slidesOn: new Uint8Array(inputs.handles + 1),
      lasting: new Float64Array(tables),
      skid: new Float64Array(SPEED_NODES),
      skidOf: new Float64Array(2),
    },
  };
}

/** s from the decision until the brakes do what they do for the rest of the stop. */
export const settledAfter = ({ reaction, dt, notice }: StopModel): number =>
  reaction + dt * RAMP_STEPS + notice;

/**
 * Lay a scenario over the inputs into an existing model (no allocation: sampling calls it 10,000 times).
 *
 * @param wary bounding use: a group that nobody eases slides if the strong end of its spread could lock it, while its
 *   force is the weak end's. Sampling uses the one drawn force for both.
 */
export function writeScenario(
  model: StopModel,
  inputs: StopInputs,
  scenario: Scenario,
  wary: boolean,
  own?: Own,
): void {
  const massFactor = own ? ownMass(inputs, own) : pick(inputs.massSpread, -scenario.mass);
  model.spot = scenario.spot;
  model.spotFactor = pick(inputs.badSpot.factor, scenario.spotFactor);
  model.massFactor = massFactor;
  model.inertia = inputs.effectiveMass + inputs.mass * (massFactor - 1);
  model.reaction = pick(inputs.reaction, -scenario.reaction);
  model.dt = (inputs.rampTime / RAMP_STEPS) * pick(inputs.rampSpread, -scenario.timing);
  writeResistance(model, inputs, scenario, massFactor, own);
  setForces(model, inputs, scenario, wary, Math.min(1, massFactor), own);
  let least = Infinity;
  for (let k = 0; k < SPEED_NODES; k++) if (model.force[k] < least) least = model.force[k];
  model.holdsEverywhere = 0.85 * (least + model.a) + massFactor * inputs.potential.leastSlope > 0;
  const { rails } = model;
  if (!rails) return;
  rails.places.forEach((place, i) => {
    writeScenario(place.model, inputs.elsewhere[i].inputs, scenario, wary, own);
    model.holdsEverywhere &&= place.model.holdsEverywhere;
  });
  layRails(model, rails, inputs);
}

/** Mass of vehicles drawn each by itself ÷ likely. */
function ownMass({ vehicleMass, vehicleMassLow, vehicleMassHigh, mass }: StopInputs, own: Own): number {
  let sum = 0;
  for (let j = 0; j < vehicleMass.length; j++) {
    sum += between3(vehicleMassLow[j], vehicleMass[j], vehicleMassHigh[j], -own.mass[j]);
  }
  return sum / mass;
}

function ownRolling(inputs: StopInputs, { resistance }: Own): number {
  let sum = 0;
  for (let j = 0; j < inputs.rollingValue.length; j++) sum += rollingAt(inputs, j, resistance[j]);
  return sum;
}

function writeResistance(
  model: StopModel,
  inputs: StopInputs,
  scenario: Scenario,
  massFactor: number,
  own?: Own,
): void {
  const { low, value, high } = inputs.resistance;
  const position = scenario.resistance;
  model.tilt = inputs.weight * massFactor * pick(inputs.grade, scenario.grade);
  const rolling = own ? ownRolling(inputs, own) : between3(low.a, value.a, high.a, position);
  model.a = rolling * massFactor + model.tilt;
  model.b = between3(low.b, value.b, high.b, position) * massFactor;
  model.c = between3(low.c, value.c, high.c, position);
}

/** A model of its own for one scenario. */
export function modelOf(inputs: StopInputs, scenario: Scenario, wary = true): StopModel {
  const model = emptyModel(inputs);
  writeScenario(model, inputs, scenario, wary);
  return model;
}

/** The model of one stop in a hundred. */
export function cautiousModel(inputs: StopInputs, [first, ...others]: Caution): StopModel {
  const model = modelOf(inputs, first);
  model.beside = others.map((scenario) => modelOf(inputs, scenario));
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

/** A force by speed, N. */
export function brakeForce(force: Float64Array, v: number): number {
  const r = v / SPEED_STEP;
  const i = r | 0;
  if (i >= SPEED_NODES - 1) return force[SPEED_NODES - 1];
  return force[i] + (r - i) * (force[i + 1] - force[i]);
}
