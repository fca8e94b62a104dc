/** The forces of one scenario: friction by speed, what slides, what is eased, what the coupler's push gives. */

import { pick } from '../base/spread.ts';
import { skidShare } from '../things/adhesion/skid.ts';
import { settlePush } from '../things/brake/push.ts';
import type { StopModel } from './model.ts';
import { PUSHED_AT } from './push.ts';
import type { Own, Scenario } from './scenario.ts';
import { RAIL_VARIES, slidingShare, untilNoticed } from './slide.ts';
import { between3, RAMP_STEPS, rollingAt, SPEED_NODES, SPEED_STEP, type StopInputs } from './stop-inputs.ts';

/** Node at which the build-up of sliding groups is weighted by their force (4 mph). */
const WEIGHED_AT = 4;

/** @param onWheels weight of this scenario that may be counted on the wheels ÷ likely */
export function setForces(
  model: StopModel,
  inputs: StopInputs,
  scenario: Scenario,
  wary: boolean,
  onWheels: number,
  own?: Own,
): void {
  const { scratch } = model;
  model.mean.fill(0);
  model.lead.fill(0);
  model.node.fill(0);
  model.block.fill(0);
  model.early.fill(0);
  model.force.fill(0);
  scratch.lasting.fill(0);
  scratch.grip[0] = 0;
  scratch.slidesOn.fill(0);
  model.channels = inputs.friction.length;
  model.sliding = 0;
  writeFriction(model, inputs, scenario);
  const sanded = pick(inputs.adhesion, scenario.adhesion) * onWheels;
  const bare = pick(inputs.bare, scenario.adhesion) * onWheels;
  for (let g = 0; g < inputs.groups; g++) {
    const position = own ? own.brake[inputs.vehicle[g]] : scenario.brake;
    scratch.drawn[g] = between3(inputs.blockLow[g], inputs.blockValue[g], inputs.blockHigh[g], position);
    scratch.limit[g] = inputs.load[g] * (inputs.unsanded[g] ? bare : sanded);
    scratch.grip[0] += scratch.limit[g];
  }
  const utilisation = pick(inputs.easing.utilisation, scenario.easing);
  writeHandles(model, inputs, utilisation, wary ? strongerBlocks(model, inputs, scenario) : undefined);
  writeSkid(model, inputs, scenario.skid);
  const strong = wary ? Math.abs(scenario.brake) : scenario.brake;
  for (let g = 0; g < inputs.groups; g++) {
    if (!inputs.isPushed[g]) writeGroup(model, inputs, g, scenario.brake, strong);
  }
  if (inputs.pushed.length > 0) writePushed(model, inputs, scenario, own);
  writeTotals(model, inputs);
  model.notice = scratch.slides.includes(1) ? pick(inputs.easing.notice, -scenario.notice) : 0;
}

/** Friction by speed, as wet as today's rail leaves the blocks. The first table is of what speed does not change. */
function writeFriction({ factor }: StopModel, inputs: StopInputs, scenario: Scenario): void {
  for (let m = 1; m < inputs.friction.length; m++) {
    const { low, value, high, wet } = inputs.friction[m];
    const left = pick(wet, scenario.wet);
    const base = m * SPEED_NODES;
    for (let k = 0; k < SPEED_NODES; k++) {
      factor[base + k] = left * between3(low[k], value[k], high[k], scenario.friction);
    }
  }
}

/**
 * How many times as strong as in this scenario a material's blocks likely are, by speed: weak blocks slide less, and
 * nobody relies on that they keep wheels from sliding.
 */
function strongerBlocks(
  { factor }: StopModel,
  inputs: StopInputs,
  { wet, friction, brake }: Scenario,
): Stronger {
  const of = inputs.friction.map((table, m) => {
    const { low, value, high } = table;
    const left = pick(table.wet, Math.max(0, wet));
    return low.map((_, k) => {
      const now = m === 0 ? 1 : factor[m * SPEED_NODES + k];
      return now > 0 ? (left * between3(low[k], value[k], high[k], Math.max(0, friction))) / now : 1;
    });
  });
  return { of, brake: Math.max(0, brake) };
}

interface Stronger {
  readonly of: readonly Float64Array[];
  /** Position of the blocks' force. */
  readonly brake: number;
}

/** Per handle and speed: how much of the way its hardest braked group slides, and how far the handle is eased. */
function writeHandles(
  { scratch, factor }: StopModel,
  inputs: StopInputs,
  utilisation: number,
  stronger?: Stronger,
): void {
  const { worst, slips, eased, slides, drawn, limit } = scratch;
  const tables = inputs.friction.length;
  worst.fill(0);
  for (let g = 0; g < inputs.groups; g++) {
    const handle = inputs.handle[g];
    if (handle < 0) continue;
    const i = handle * tables + inputs.material[g];
    const block = stronger
      ? between3(inputs.blockLow[g], inputs.blockValue[g], inputs.blockHigh[g], stronger.brake)
      : drawn[g];
    const ratio = limit[g] > 0 ? block / limit[g] : 0;
    if (ratio > worst[i]) worst[i] = ratio;
  }
  for (let h = 0; h < inputs.handles; h++) {
    slides[h] = 0;
    for (let k = 0; k < SPEED_NODES; k++) {
      let r = 0;
      for (let m = 0; m < tables; m++) {
        const more = stronger ? stronger.of[m][k] : 1;
        const of = worst[h * tables + m] * factor[m * SPEED_NODES + k] * more;
        if (of > r) r = of;
      }
      const p = slidingShare(r);
      slips[h * SPEED_NODES + k] = p;
      eased[h * SPEED_NODES + k] = p > 0 ? utilisation / r : 0;
      if (p > 0) slides[h] = 1;
    }
  }
}

function writeSkid({ scratch }: StopModel, { skid }: StopInputs, position: number): void {
  const floor = pick(skid.floor, position);
  const fall = pick(skid.fallSpeed, position);
  if (scratch.skidOf[0] === floor && scratch.skidOf[1] === fall) return;
  scratch.skidOf[0] = floor;
  scratch.skidOf[1] = fall;
  const law = { floor, fallSpeed: fall };
  for (let k = 0; k < SPEED_NODES; k++) {
    scratch.skid[k] = skidShare(k * SPEED_STEP, law);
  }
}

function writeGroup(model: StopModel, inputs: StopInputs, g: number, brake: number, strong: number): void {
  const { scratch } = model;
  const handle = inputs.handle[g];
  if (handle < 0) writeAlone(model, inputs, g, brake, strong);
  else if (scratch.slides[handle]) writeEased(model, inputs, g);
  else writeRolling(model, inputs, g, true);
}

/** Its wheels roll: the blocks' force on their channel. @param lasts the handle is never eased */
function writeRolling(model: StopModel, inputs: StopInputs, g: number, lasts: boolean): void {
  const m = inputs.material[g];
  addRamp(model, inputs, g, m, model.scratch.drawn[g]);
  if (lasts) model.scratch.lasting[m] += model.scratch.drawn[g];
}

/** On a handle that is eased: rolling or sliding at full brake first, then as the handle is eased. */
function writeEased(model: StopModel, inputs: StopInputs, g: number): void {
  const { scratch, factor, force } = model;
  const { skid, drawn, limit } = scratch;
  const friction = inputs.material[g] * SPEED_NODES;
  const most = limit[g];
  let slides = false;
  for (let k = 0; k < SPEED_NODES; k++) {
    force[k] += onceEased(model, inputs, g, k);
    if (drawn[g] * factor[friction + k] > most * (1 - RAIL_VARIES)) slides = true;
  }
  if (!slides) return writeRolling(model, inputs, g, false);
  model.sliding++;
  slideFrom(model, inputs, g, (k) => {
    const r = most > 0 ? (drawn[g] * factor[friction + k]) / most : 0;
    return most * untilNoticed(r, skid[k]);
  });
}

/** Came on by itself: locks at speeds at which the brake overcomes adhesion, and nobody eases it. */
function writeAlone(model: StopModel, inputs: StopInputs, g: number, brake: number, strong: number): void {
  const { scratch, factor, force } = model;
  const harder = harderBy(model, inputs, g, brake, strong);
  if (!mayLock(model, inputs, g, harder)) return writeRolling(model, inputs, g, true);
  model.sliding++;
  const at = (k: number): number => {
    const full = scratch.drawn[g] * factor[inputs.material[g] * SPEED_NODES + k];
    return full * harder > scratch.limit[g] ? lockedAt(model, inputs, g, k) : full;
  };
  for (let k = 0; k < SPEED_NODES; k++) force[k] += at(k);
  slideFrom(model, inputs, g, at);
}

/** Whether a group that nobody eases locks at any speed. */
const mayLock = ({ scratch, factor }: StopModel, inputs: StopInputs, g: number, harder: number): boolean =>
  scratch.drawn[g] * harder * greatest(factor, inputs.material[g] * SPEED_NODES) > scratch.limit[g];

/** What a group does at a node with its wheels locked, N. */
export function lockedAt(
  { scratch, factor }: StopModel,
  inputs: StopInputs,
  g: number,
  node: number,
): number {
  const full = scratch.drawn[g] * factor[inputs.material[g] * SPEED_NODES + node];
  return Math.min(scratch.skid[node] * scratch.limit[g], full);
}

/** How much harder than in this scenario a group may be braked when it is asked whether it locks. */
export function harderBy(
  model: StopModel,
  inputs: StopInputs,
  g: number,
  brake: number,
  strong: number,
): number {
  if (strong === brake || inputs.isPushed[g]) return 1;
  const m = inputs.material[g];
  const force = model.scratch.drawn[g] * model.factor[m * SPEED_NODES];
  return strongerBy(inputs, g, m, brake, strong, force);
}

/** Force at a stand of the strong end ÷ that of this scenario. */
function strongerBy(
  inputs: StopInputs,
  g: number,
  m: number,
  brake: number,
  strong: number,
  force: number,
): number {
  const { low, value, high } = inputs.friction[m];
  const weak = between3(low[0], value[0], high[0], brake);
  const hard = between3(low[0], value[0], high[0], strong);
  const block = between3(inputs.blockLow[g], inputs.blockValue[g], inputs.blockHigh[g], strong);
  const now = between3(inputs.blockLow[g], inputs.blockValue[g], inputs.blockHigh[g], brake);
  return force > 0 && weak > 0 && now > 0 ? (block * hard) / (now * weak) : 1;
}

function greatest(factor: Float64Array, base: number): number {
  let most = 0;
  for (let k = 0; k < SPEED_NODES; k++) if (factor[base + k] > most) most = factor[base + k];
  return most;
}

/** Onto the channel of what slides by its handle: its force by speed, its build-up weighted by its force at a walk. */
function slideFrom(model: StopModel, inputs: StopInputs, g: number, at: (node: number) => number): void {
  const { slidesOn } = model.scratch;
  const by = inputs.handle[g] + 1;
  if (slidesOn[by] === 0) {
    slidesOn[by] = model.channels++;
    model.factor.fill(0, slidesOn[by] * SPEED_NODES, model.channels * SPEED_NODES);
  }
  const channel = slidesOn[by];
  const base = channel * SPEED_NODES;
  for (let k = 0; k < SPEED_NODES; k++) model.factor[base + k] += at(k);
  addRamp(model, inputs, g, channel, at(WEIGHED_AT));
}

function addRamp(model: StopModel, inputs: StopInputs, g: number, channel: number, force: number): void {
  const { mean, lead, node, block } = model;
  block[channel] += force;
  const from = g * RAMP_STEPS;
  const to = channel * RAMP_STEPS;
  for (let k = 0; k < RAMP_STEPS; k++) {
    mean[to + k] += force * inputs.rampMean[from + k];
    lead[to + k] += force * inputs.rampLead[from + k];
    node[to + channel + k] += force * inputs.rampNode[from + k];
  }
}

/** What is pushed follows what all others do, before and after the driver eases; the lesser counts throughout. */
function writePushed(model: StopModel, inputs: StopInputs, scenario: Scenario, own?: Own): void {
  const { drawn, limit } = model.scratch;
  const { brake: position } = scenario;
  const friction = inputs.pushed.map(
    ({ groups }) => model.factor[inputs.material[groups[0].index] * SPEED_NODES + PUSHED_AT],
  );
  const most = inputs.pushed.map(({ groups }) => groups.reduce((sum, { index }) => sum + limit[index], 0));
  const rolling = inputs.vehicleMass.map((_, j) =>
    rollingAt(inputs, j, own ? own.resistance[j] : scenario.resistance),
  );
  const settled = [false, true].map((eased) => {
    const others = rolling.slice();
    addOthers(model, inputs, eased, others);
    return settlePush(inputs.pushed, inputs.vehicleMass, others, most, friction, position);
  });
  inputs.pushed.forEach(({ groups }, i) => {
    const force = friction[i] > 0 ? Math.min(settled[0][i], settled[1][i]) / friction[i] : 0;
    for (const { index, share } of groups) {
      drawn[index] = force * share;
      writeAlone(model, inputs, index, position, position);
    }
  });
}

/** What a group does at a node before anybody eases it: rolling, sliding, or some of both, N. */
export function beforeEasing(model: StopModel, inputs: StopInputs, g: number, node: number): number {
  const { drawn, limit, skid } = model.scratch;
  const full = drawn[g] * model.factor[inputs.material[g] * SPEED_NODES + node];
  if (inputs.handle[g] < 0) return full > limit[g] ? lockedAt(model, inputs, g, node) : full;
  return limit[g] > 0 ? limit[g] * untilNoticed(full / limit[g], skid[node]) : 0;
}

/** What a group on a handle does at a node from when the driver has eased, N. */
export function onceEased(
  { scratch, factor }: StopModel,
  inputs: StopInputs,
  g: number,
  node: number,
): number {
  const { drawn, limit, slips, eased } = scratch;
  const full = drawn[g] * factor[inputs.material[g] * SPEED_NODES + node];
  const row = inputs.handle[g] * SPEED_NODES + node;
  return (1 - slips[row]) * Math.min(full, limit[g]) + slips[row] * eased[row] * full;
}

/** To each vehicle what its brakes that are not pushed do. */
function addOthers(model: StopModel, inputs: StopInputs, eased: boolean, by: Float64Array): void {
  for (let g = 0; g < inputs.groups; g++) {
    if (inputs.isPushed[g]) continue;
    by[inputs.vehicle[g]] +=
      eased && inputs.handle[g] >= 0
        ? onceEased(model, inputs, g, PUSHED_AT)
        : beforeEasing(model, inputs, g, PUSHED_AT);
  }
}

/** Sums of all channels, and the factors of those that slide from newtons to a share of their block force. */
function writeTotals(model: StopModel, inputs: StopInputs): void {
  const { factor, force, early, block, node, scratch } = model;
  const tables = inputs.friction.length;
  for (let i = 0; i < model.channels; i++) {
    const base = i * SPEED_NODES;
    node[(i + 1) * (RAMP_STEPS + 1) - 1] = block[i];
    for (let k = 0; k < SPEED_NODES; k++) {
      if (i >= tables) factor[base + k] = block[i] > 0 ? factor[base + k] / block[i] : 0;
      early[k] += block[i] * factor[base + k];
      if (i < tables) force[k] += scratch.lasting[i] * factor[base + k];
    }
  }
}
