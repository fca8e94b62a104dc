/**
 * Half a train rolling by itself, written out plainly vehicle by vehicle and run by `ode-rk4` in time: the
 * witness for the engine's partings. Shares only input types with the engine.
 */
import type { AssumedValues } from '../../engine/things/assumed.ts';
import type { BrakedGroup } from '../../engine/things/brake/force.ts';
import type { Line } from '../../engine/things/line/types.ts';
import type { LoadedVehicle } from '../../engine/things/train/loaded.ts';
import { height, meanCurvature } from './plain-stop.ts';
import { march } from './rk4.ts';

const G = 9.80665;

export interface PlainHalf {
  readonly line: Line;
  readonly vehicles: readonly LoadedVehicle[];
  readonly groups: readonly BrakedGroup[];
  readonly assumed: AssumedValues;
  readonly adhesion: number;
}

export interface PlainEnd {
  readonly how: 'rests' | 'leaves-line' | 'runs-round';
  readonly at: number;
  readonly topSpeed: number;
  /** Once it has stood and rolled off again. */
  readonly rollsOff: number;
  readonly time: number;
  readonly turns: number;
}

const inertia = ({ vehicles }: PlainHalf): number => vehicles.reduce((sum, v) => sum + v.effectiveMass, 0);

/** Grade against going forward, N. */
function grade({ line, vehicles }: PlainHalf, s: number): number {
  let force = 0;
  for (const { behind, mass, vehicle } of vehicles) {
    const [front, rear] = [s - behind, s - behind - vehicle.length];
    force += (mass * G * (rise(line, front) - rise(line, rear))) / vehicle.length;
  }
  return force;
}

/** Height with the last grades carried on beyond the ends of a point-to-point line. */
function rise(line: Line, s: number): number {
  const { heights, length } = line;
  if (line.loop || (s >= 0 && s <= length)) return height(line, s);
  const [a, b] = s < 0 ? heights : heights.slice(-2);
  return (s < 0 ? a : b).height + ((b.height - a.height) / (b.at - a.at)) * (s - (s < 0 ? a : b).at);
}

/** All that holds it back whichever way it goes, N. */
function drag(half: PlainHalf, t: number, s: number, v: number): number {
  const { line, vehicles, groups, assumed, adhesion } = half;
  let force = 0;
  for (const { behind, mass, vehicle } of vehicles) {
    const r = vehicle.resistance;
    const curve = meanCurvature(line, s - behind - vehicle.length, s - behind);
    force += mass * G * (assumed.curveConstant.low * curve + r.rolling.value + r.perSpeed.value * v);
    force += r.perSpeedSquared * v * v;
  }
  for (const g of groups) {
    const share = Math.min(1, Math.max(0, (t - g.deadTime.value) / g.buildUp.value));
    const full = g.block.value * friction(g, v);
    const locks = full > adhesion * g.load;
    const { floor, fallSpeed } = assumed.skid;
    const skid = floor.value + (1 - floor.value) * Math.exp(-v / fallSpeed.value);
    force += share * (locks ? skid * adhesion * g.load : full);
  }
  return force;
}

function friction({ friction: points }: BrakedGroup, v: number): number {
  if (!points) return 1;
  const i = points.findLastIndex((p) => p.speed <= v);
  if (i < 0) return points[0].friction.value;
  if (i === points.length - 1) return points[i].friction.value;
  const [p, q] = [points[i], points[i + 1]];
  return p.friction.value + ((q.friction.value - p.friction.value) * (v - p.speed)) / (q.speed - p.speed);
}

/** @param s0 place of the whole train's head at the parting, m */
export function plainRoll(half: PlainHalf, s0: number, v0: number, dt = 0.025): PlainEnd {
  const M = inertia(half);
  const front = half.vehicles[0].behind;
  const last = half.vehicles[half.vehicles.length - 1];
  const rear = last.behind + last.vehicle.length;
  let [t, s, v, way, top, turns] = [0, s0, v0, 1, v0, 0];
  let off = 0;
  for (;;) {
    const f = (x: number, [at, w]: readonly number[]): number[] => [
      w,
      -(grade(half, at) + way * drag(half, x, at, Math.abs(w))) / M,
    ];
    for (;;) {
      const step = Math.abs(v) < 0.4 ? dt / 4 : dt;
      const [next, w] = march(f, t, [s, v], t + step, 1);
      if (w * way <= 0 && t > 0) {
        const share = v / (v - w);
        s += share * step * (v / 2);
        t += share * step;
        v = 0;
        break;
      }
      [t, s, v] = [t + step, next, w];
      top = Math.max(top, Math.abs(v));
      if (turns > 0) off = Math.max(off, Math.abs(v));
      if (half.line.loop && Math.abs(s - s0) >= half.line.length) return end('runs-round');
      if (!half.line.loop && (s - front > half.line.length || s - rear < 0)) return end('leaves-line');
    }
    const pull = grade(half, s);
    if (Math.abs(pull) <= drag(half, t, s, 0) || turns > 200) return end('rests');
    way = pull > 0 ? -1 : 1;
    turns++;
  }
  function end(how: PlainEnd['how']): PlainEnd {
    return { how, at: s, topSpeed: top, rollsOff: off, time: t, turns };
  }
}
