/**
 * Air in a tree of volumes joined by orifices: pipes in series along the train, reservoirs and cylinders on
 * them. The state is the air content u = p·V of each volume (Pa·m³, air at one temperature); what leaves one
 * volume enters the next, so content is kept exactly.
 *
 *   du_i/dt = Σ C·A·√(R·T)·p_up·ψ(p_down/p_up) − suction·(p_i − p_lowest) − leak·(p_i − p_atm)
 *
 * Within `LAMINAR` of equal pressures ψ is replaced by a straight line through zero (as ISO 6358 does near
 * zero difference, from memory): the orifice law has infinite slope there. The system is stiff (a hose
 * evens out in under a millisecond, a reservoir in a minute), hence ROS2, an L-stable second-order
 * Rosenbrock method (Verwer et al. 1999, from memory), whose linear system is a tree solved leaf by leaf.
 */
import { AIR_GAMMA, AIR_GAS_CONSTANT } from '../../base/constants.ts';
import { CRITICAL_RATIO, flowAboveCritical, flowNumber } from '../air/formulas.ts';
import { type Piston, pistonState, workingVolume } from './piston.ts';
import { CHOKED_NUMBER } from './vessel.ts';

export type Body =
  | { readonly kind: 'rigid'; readonly volume: number }
  /** `behind`: a constant pressure, or the node whose volume the piston squeezes. */
  | {
      readonly kind: 'piston';
      readonly piston: Piston;
      readonly behind: { readonly pressure: number } | { readonly node: number };
      readonly pull: boolean;
    };

/** An opening to constant pressure. */
export interface Vent {
  /** C·A, m² */
  readonly area: number;
  /** Pa absolute */
  readonly pressure: number;
  /** Lets air only in, only out, or both. */
  readonly way: 'both' | 'in' | 'out';
}

export interface AirNode {
  readonly name: string;
  /** Index of the node it hangs on, smaller than its own; −1 for the first. */
  readonly parent: number;
  /** C·A of the passage to the parent, m². */
  readonly area: number;
  /** Air passes both ways, only from the parent in, or only out to the parent. */
  readonly way: 'both' | 'in' | 'out';
  /** Share of the passage that is open, by the pressures of all nodes (a valve). */
  readonly opening?: (pressures: Float64Array) => number;
  /** A valve in the passage that closes as the node's own pressure comes up to `at`, over the last `over`, Pa. */
  readonly laps?: { readonly at: number; readonly over: number };
  readonly body: Body;
  readonly vents: readonly Vent[];
  /**
   * m³/s at the node's pressure, the least pressure that it could reach at last, and the pressure at which a
   * relief valve holds it, Pa.
   */
  readonly suction?: { readonly rate: number; readonly lowest: number; readonly holds: number };
  /** Compressor: free air, m³/s, and the absolute pressure at which it stops, Pa. */
  readonly pump?: { readonly freeAir: number; readonly upTo: number };
  /** Leak to the atmosphere, m³/s per unit of pressure difference over pressure: du/dt = −leak·(p − p_atm). */
  readonly leak: number;
  /** Pressure at the start, Pa absolute. */
  readonly start: number;
}

export interface AirState {
  readonly content: Float64Array;
  readonly pressure: Float64Array;
  readonly stroke: Float64Array;
  /** Content that came in from outside since the start (negative: went out), Pa·m³. */
  admitted: number;
}

/** 1 − p_down/p_up below which flow is taken as proportional to the difference. */
export const LAMINAR = 0.002;
const LAMINAR_SLOPE = flowNumber(1 - LAMINAR) / LAMINAR;
/** Share of the vacuum held over which a relief valve opens. */
const RELIEF_WIDTH = 0.02;
/** 1 − 1/√2: the smaller of the two values that make ROS2 L-stable. */
const ROS = 1 - Math.SQRT1_2;

/** Flow ÷ (C·A·√(R·T)) from `a` to `b`, and its derivatives to both, into `out`. */
function passage(a: number, b: number, out: Float64Array): void {
  const up = Math.max(a, b);
  const down = Math.min(a, b);
  const r = down / up;
  let flow: number;
  let toUp: number;
  let toDown: number;
  if (r <= CRITICAL_RATIO) {
    flow = up * CHOKED_NUMBER;
    toUp = CHOKED_NUMBER;
    toDown = 0;
  } else if (r >= 1 - LAMINAR) {
    flow = LAMINAR_SLOPE * (up - down);
    toUp = LAMINAR_SLOPE;
    toDown = -LAMINAR_SLOPE;
  } else {
    const q = r ** (1 / AIR_GAMMA);
    const psi = flowAboveCritical(r, q);
    const slope = ((2 * q * q) / r - (AIR_GAMMA + 1) * q) / ((AIR_GAMMA - 1) * psi);
    flow = up * psi;
    toUp = psi - r * slope;
    toDown = slope;
  }
  const sign = a >= b ? 1 : -1;
  out[0] = sign * flow;
  out[1] = a >= b ? toUp : -toDown;
  out[2] = a >= b ? toDown : -toUp;
}

const blocked = (way: 'both' | 'in' | 'out', flowIn: number): boolean =>
  (way === 'in' && flowIn < 0) || (way === 'out' && flowIn > 0);

export class AirTree {
  readonly nodes: readonly AirNode[];
  readonly state: AirState;
  private readonly atmosphere: number;
  private readonly speed: number;
  private readonly rate: Float64Array;
  private readonly diagonal: Float64Array;
  /** Coupling of node to parent's row and of the parent to the node's row. */
  private readonly up: Float64Array;
  private readonly down: Float64Array;
  private readonly softness: Float64Array;
  /** Whether a piston squeezes the node's volume and so tells its pressure. */
  private readonly squeezed: Uint8Array;
  private readonly outside: Float64Array;
  private readonly pivot: Float64Array;
  private readonly k1: Float64Array;
  private readonly k2: Float64Array;
  private rateOutside = 0;
  private readonly flow = new Float64Array(3);

  /** @param temperature of the air everywhere, K */
  constructor(nodes: readonly AirNode[], atmosphere: number, temperature: number) {
    nodes.forEach((node, i) => {
      if (node.parent >= i) throw new RangeError('a node must come after the node it hangs on');
    });
    const n = nodes.length;
    this.nodes = nodes;
    this.atmosphere = atmosphere;
    this.speed = Math.sqrt(AIR_GAS_CONSTANT * temperature);
    const array = (): Float64Array => new Float64Array(n);
    [this.rate, this.diagonal, this.up, this.down] = [array(), array(), array(), array()];
    [this.softness, this.outside] = [array(), array()];
    this.squeezed = new Uint8Array(n);
    for (const { body } of nodes)
      if (body.kind === 'piston' && 'node' in body.behind) this.squeezed[body.behind.node] = 1;
    [this.pivot, this.k1, this.k2] = [array(), array(), array()];
    this.state = { content: startContent(nodes), pressure: array(), stroke: array(), admitted: 0 };
    this.settle(this.state.content);
  }

  /** Pressures and strokes from contents: a loop and no more, for it runs twice a step. */
  private settle(content: Float64Array): void {
    const { nodes, softness, squeezed } = this;
    const { pressure, stroke } = this.state;
    for (let i = 0; i < nodes.length; i++) {
      const { body } = nodes[i];
      if (body.kind === 'rigid') {
        if (squeezed[i] === 0) pressure[i] = content[i] / body.volume;
        softness[i] = 1 / body.volume;
        continue;
      }
      const back = 'node' in body.behind ? body.behind.node : -1;
      const chamber = back >= 0 ? nodes[back].body : undefined;
      const behind =
        chamber?.kind === 'rigid'
          ? { content: content[back], volume: chamber.volume }
          : (body.behind as { pressure: number });
      const found = pistonState(body.piston, content[i], behind, body.pull);
      pressure[i] = found.pressure;
      stroke[i] = found.stroke;
      if (back >= 0) pressure[back] = found.behind;
      const moves = found.stroke > 0 && found.stroke < 1;
      const volume = workingVolume(body.piston, found.stroke, body.pull);
      softness[i] = 1 / (volume + (moves ? (found.pressure * body.piston.swept) / body.piston.strokeAt : 0));
    }
  }

  /** du/dt of what is settled into `rate`; with `jacobian`, the tree matrix too. */
  private slope(jacobian: boolean): void {
    const { nodes, rate, diagonal, up, down, softness, outside, flow, speed } = this;
    const { pressure } = this.state;
    rate.fill(0);
    this.rateOutside = 0;
    if (jacobian) {
      diagonal.fill(0);
      up.fill(0);
      down.fill(0);
      outside.fill(0);
    }
    for (let i = 0; i < nodes.length; i++) {
      const node = nodes[i];
      const p = node.parent;
      if (p >= 0) {
        passage(pressure[p], pressure[i], flow);
        const { laps } = node;
        const lapping = laps ? Math.min(1, Math.max(0, (laps.at - pressure[i]) / laps.over)) : 1;
        const open = blocked(node.way, flow[0]) ? 0 : (node.opening?.(pressure) ?? 1);
        const c = node.area * speed * open * lapping;
        rate[i] += c * flow[0];
        rate[p] -= c * flow[0];
        if (jacobian) {
          const closing =
            laps && lapping > 0 && lapping < 1 ? (node.area * speed * open * flow[0]) / laps.over : 0;
          const toNode = c * flow[2] - closing;
          diagonal[i] += toNode * softness[i];
          diagonal[p] -= c * flow[1] * softness[p];
          down[i] = c * flow[1] * softness[p];
          up[i] = -toNode * softness[i];
        }
      }
      this.exchange(i, jacobian);
    }
  }

  /** What a node exchanges with the outside. */
  private exchange(i: number, jacobian: boolean): void {
    const { nodes, flow, speed, state, softness } = this;
    const node = nodes[i];
    const { vents } = node;
    const p = state.pressure[i];
    let rate = -node.leak * (p - this.atmosphere);
    let slope = -node.leak;
    for (let k = 0; k < vents.length; k++) {
      const vent = vents[k];
      passage(vent.pressure, p, flow);
      if (blocked(vent.way, flow[0])) continue;
      rate += vent.area * speed * flow[0];
      slope += vent.area * speed * flow[2];
    }
    const { suction, pump } = node;
    if (pump && p < pump.upTo) {
      const width = RELIEF_WIDTH * (pump.upTo - this.atmosphere);
      const full = pump.freeAir * this.atmosphere;
      const share = Math.min(1, (pump.upTo - p) / width);
      rate += full * share;
      if (share < 1) slope -= full / width;
    }
    if (suction && p > Math.max(suction.lowest, suction.holds)) {
      const width = RELIEF_WIDTH * (this.atmosphere - suction.holds);
      const open = suction.rate * Math.min(1, (p - suction.holds) / width);
      rate -= open * (p - suction.lowest);
      slope -= open + (open < suction.rate ? (suction.rate * (p - suction.lowest)) / width : 0);
    }
    this.rate[i] += rate;
    this.rateOutside += rate;
    if (!jacobian) return;
    this.outside[i] = slope * softness[i];
    this.diagonal[i] += slope * softness[i];
  }

  /** Solve (I − h·A)·x = b in place, from the leaves to the root and back. */
  private solve(b: Float64Array, h: number): void {
    const { nodes, diagonal, up, down, pivot } = this;
    for (let i = 0; i < pivot.length; i++) pivot[i] = 1 - h * diagonal[i];
    for (let i = nodes.length - 1; i > 0; i--) {
      const p = nodes[i].parent;
      if (p < 0) continue;
      const factor = (-h * up[i]) / pivot[i];
      pivot[p] -= factor * -h * down[i];
      b[p] -= factor * b[i];
    }
    for (let i = 0; i < nodes.length; i++) {
      const p = nodes[i].parent;
      b[i] = (b[i] + (p >= 0 ? h * down[i] * b[p] : 0)) / pivot[i];
    }
  }

  /**
   * Run from the present state.
   *
   * @param end s, at most  @param tolerance of each step, share of atmospheric content
   * @param watch called after each step; true ends the run
   * @returns time run, s
   */
  run(end: number, watch: (time: number, state: AirState) => boolean, tolerance = 1e-4): number {
    const { content } = this.state;
    const n = content.length;
    const scale = Float64Array.from(startVolumes(this.nodes), (v) => v * this.atmosphere);
    const before = new Float64Array(n);
    const trial = new Float64Array(n);
    let time = 0;
    let h = 1e-5;
    while (time < end) {
      h = Math.min(h, end - time);
      before.set(content);
      const { k1, k2, outside } = this.stages(before, trial, h);
      let error = 0;
      let lowest = Infinity;
      for (let i = 0; i < n; i++) {
        trial[i] = before[i] + 1.5 * k1[i] + 0.5 * k2[i];
        error = Math.max(error, (0.5 * Math.abs(k1[i] + k2[i])) / scale[i]);
        lowest = Math.min(lowest, trial[i]);
      }
      const fits = error <= tolerance && lowest > 0;
      if (fits) {
        content.set(trial);
        this.state.admitted += outside;
        time += h;
      }
      // What was tried and did not fit goes.
      this.settle(content);
      if (fits && watch(time, this.state)) break;
      h *=
        fits || lowest > 0 ? Math.min(4, Math.max(0.1, 0.8 * Math.sqrt(tolerance / (error + 1e-300)))) : 0.25;
      if (h < 1e-12) throw new RangeError('air flow: the step became too small');
    }
    return time;
  }

  private stages(
    before: Float64Array,
    trial: Float64Array,
    h: number,
  ): { k1: Float64Array; k2: Float64Array; outside: number } {
    const n = before.length;
    const { k1, k2, rate, outside } = this;
    this.slope(true);
    for (let i = 0; i < n; i++) k1[i] = h * rate[i];
    const first = h * this.rateOutside;
    this.solve(k1, ROS * h);
    for (let i = 0; i < n; i++) trial[i] = Math.max(before[i] + k1[i], 1e-3 * before[i]);
    this.settle(trial);
    this.slope(false);
    for (let i = 0; i < n; i++) k2[i] = h * rate[i] - 2 * k1[i];
    const second = h * this.rateOutside;
    this.solve(k2, ROS * h);
    // The outside is one more row of the same linear systems: its own stages keep the balance exact.
    const row = (k: Float64Array): number => {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += outside[i] * k[i];
      return sum;
    };
    const o1 = first + ROS * h * row(k1);
    const o2 = second - 2 * o1 + ROS * h * row(k2);
    return { k1, k2, outside: 1.5 * o1 + 0.5 * o2 };
  }
}

const startVolumes = (nodes: readonly AirNode[]): number[] =>
  nodes.map(({ body }) => (body.kind === 'rigid' ? body.volume : body.piston.clearance + body.piston.swept));

/** Contents at the start pressures, the piston where these put it. */
function startContent(nodes: readonly AirNode[]): Float64Array {
  const content = Float64Array.from(nodes, ({ body, start }) =>
    body.kind === 'rigid' ? body.volume * start : 0,
  );
  nodes.forEach(({ body, start }, i) => {
    if (body.kind === 'rigid') return;
    const back = 'node' in body.behind ? nodes[body.behind.node] : undefined;
    const behind = back ? back.start : (body.behind as { pressure: number }).pressure;
    const share = ((body.pull ? -1 : 1) * (start - behind)) / body.piston.strokeAt;
    const stroke = Math.min(1, Math.max(0, share));
    content[i] = start * workingVolume(body.piston, stroke, body.pull);
    if (back?.body.kind === 'rigid' && 'node' in body.behind) {
      content[body.behind.node] = back.start * (back.body.volume - body.piston.swept * stroke);
    }
  });
  return content;
}
