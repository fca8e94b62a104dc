/**
 * The stop written out plainly, vehicle by vehicle, as a witness for the engine's fast form: no potential,
 * no tables, no melting of brakes. Shares only the input types with the engine.
 */

import type { Quantity } from '../../engine/base/quantity.ts';
import type { AssumedValues } from '../../engine/things/assumed.ts';
import type { BrakedGroup } from '../../engine/things/brake/force.ts';
import type { Line } from '../../engine/things/line/types.ts';
import type { LoadedTrain } from '../../engine/things/train/loaded.ts';

const G = 9.80665;

const on = (line: Line, s: number): number =>
  line.loop ? ((s % line.length) + line.length) % line.length : s;

export function height(line: Line, s: number): number {
  const at = on(line, s);
  const knots = line.heights;
  let i = knots.findIndex((k) => k.at > at) - 1;
  if (i === -2) i = knots.length - 2;
  if (i < 0) i = 0;
  const [p, q] = [knots[i], knots[i + 1]];
  return p.height + ((q.height - p.height) * (at - p.at)) / (q.at - p.at);
}

/** Mean of |curvature| from rear to front of a vehicle. */
export function meanCurvature(line: Line, rear: number, front: number): number {
  let total = 0;
  const [first, last] = line.loop
    ? [Math.floor(rear / line.length), Math.floor(front / line.length)]
    : [0, 0];
  for (let lap = first; lap <= last; lap++) {
    for (const c of line.curves) {
      const [from, to] = [c.from + lap * line.length, c.to + lap * line.length];
      const [a, b] = [Math.max(from, rear), Math.min(to, front)];
      if (b <= a) continue;
      const k = (x: number): number =>
        c.startCurvature + ((x - from) / (to - from)) * (c.endCurvature - c.startCurvature);
      total += Math.abs((k(a) + k(b)) / 2) * (b - a);
    }
  }
  return total / (front - rear);
}

/** Each input at its own position: what the engine calls a scenario. */
export interface PlainScenario {
  readonly adhesion: number;
  readonly brake: number;
  readonly reaction: number;
  readonly resistance: number;
}

const at = (q: Quantity, p: number): number =>
  p < 0 ? q.value + p * (q.value - q.low) : q.value + p * (q.high - q.value);

export interface PlainStop {
  readonly inertia: number;
  readonly reaction: number;
  /** s at which sliding wheels are eased; the reaction's end where none are. */
  readonly eased: number;
  /** dv/dt at t, s, v. */
  readonly acceleration: (t: number, s: number, v: number) => number;
}

export function plainStop(
  line: Line,
  loaded: LoadedTrain,
  groups: readonly BrakedGroup[],
  adhesion: Quantity,
  reaction: Quantity,
  assumed: AssumedValues,
  scenario: PlainScenario,
): PlainStop {
  const mu = at(adhesion, scenario.adhesion);
  const react = at(reaction, -scenario.reaction);
  const friction = (g: BrakedGroup, v: number): number => {
    if (!g.friction) return 1;
    const p = g.friction;
    let i = 0;
    while (i < p.length - 1 && p[i + 1].speed <= v) i++;
    const f = at(p[i].friction, scenario.brake);
    if (i === p.length - 1) return f;
    return (
      f + ((at(p[i + 1].friction, scenario.brake) - f) * (v - p[i].speed)) / (p[i + 1].speed - p[i].speed)
    );
  };
  const full = (g: BrakedGroup, v: number): number => at(g.block, scenario.brake) * friction(g, v);
  const ratio = (g: BrakedGroup, v: number): number => full(g, v) / (mu * g.load);
  /** Adhesion along the rail lies evenly between three and five quarters of its mean. */
  const slips = (r: number): number => Math.min(1, Math.max(0, (r - 0.75) / 0.5));
  const skids = (v: number): number =>
    assumed.skid.floor.value + (1 - assumed.skid.floor.value) * Math.exp(-v / assumed.skid.fallSpeed.value);
  const onHandle = (g: BrakedGroup): BrakedGroup[] => groups.filter((o) => o.handle === g.handle);
  const hardest = (g: BrakedGroup, v: number): number => Math.max(...onHandle(g).map((o) => ratio(o, v)));
  const early = (g: BrakedGroup, v: number): number => {
    const r = ratio(g, v);
    if (g.handle === undefined) return mu * g.load * (r > 1 ? skids(v) : r);
    return mu * g.load * ((1 - slips(r)) * Math.min(r, 1) + slips(r) * skids(v));
  };
  const late = (g: BrakedGroup, v: number): number => {
    if (g.handle === undefined) return early(g, v);
    const [r, most] = [ratio(g, v), hardest(g, v)];
    const p = slips(most);
    const eased = p > 0 ? (assumed.easing.utilisation.value * r) / most : 0;
    return mu * g.load * ((1 - p) * Math.min(r, 1) + p * eased);
  };
  const feels = groups.some(
    (g) => g.handle !== undefined && [0, 5, 10, 20].some((v) => slips(hardest(g, v)) > 0),
  );
  const builtUp = Math.max(0, ...groups.map((g) => g.deadTime.value + g.buildUp.value));
  const eased = react + (feels ? builtUp + assumed.easing.notice.value : 0);
  const share = (g: BrakedGroup, t: number): number =>
    Math.min(1, Math.max(0, (t - g.deadTime.value) / g.buildUp.value));
  const acceleration = (t: number, s: number, v: number): number => {
    let force = 0;
    for (const { vehicle, mass, behind } of loaded.vehicles) {
      const [front, rear] = [s - behind, s - behind - vehicle.length];
      const grade = (height(line, front) - height(line, rear)) / vehicle.length;
      const grade2 = line.loop && on(line, front) < on(line, rear) && Math.abs(grade) > 1 ? NaN : grade;
      const r = vehicle.resistance;
      force += mass * G * (grade2 + assumed.curveConstant.low * meanCurvature(line, rear, front));
      force +=
        mass * G * (at(r.rolling, scenario.resistance) + at(r.perSpeed, scenario.resistance) * v) +
        r.perSpeedSquared * v * v;
    }
    if (t < react) return force < 0 ? -force / loaded.effectiveMass : 0;
    for (const g of groups)
      force += t < eased ? early(g, v) * share(g, t - react) : late(g, v) * share(g, t - react);
    return -force / loaded.effectiveMass;
  };
  return { inertia: loaded.effectiveMass, reaction: react, eased, acceleration };
}
