/**
 * A stop of a train whose cars brake by what presses on their couplers, vehicle by vehicle: each is a body of its own, and
 * the coupler ahead of it a damped spring. Nothing is settled: a surge brake does what the push of the moment gives.
 *
 *   m_i·dv_i/dt = P_{i+1} − P_i − B_i − S_i − (a_i + b_i·v + c_i·v²) − m_i·g·(grade_i + curve·bend_i)
 *   P_i = K·squeeze_i + C·d(squeeze_i)/dt        S_i = φ(v)·η·i·max(0, P_i − P₀), no more than what was measured
 *
 * P_i push on the front coupler of vehicle i (N; below nothing it pulls), B_i its other brakes, S_i its surge brake. Other
 * brakes are those of `slide.ts`. From the driver's act on: until then nothing presses. Speeds first, then places, 1 ms.
 */
import type { Outing } from '../../engine/outing/types.ts';
import type { BrakeGear } from '../../engine/things/vehicle/types.ts';
import { type Ground, meanBend, meanGrade } from './ground.ts';
import { type Hand, hand, likelyDeal, tableOf } from './hand.ts';
import { brakeAt, brakedBy } from './slide.ts';
import { frictionAt, risen } from './stop.ts';
import { answering, G } from './train.ts';

const STEP = 0.001;
/** N/m and N·s/m of a coupler: stiff enough that it yields by millimetres, damped so that it does not ring. */
const STIFF = 2e5;
const DAMPED = 2500;
const LONGEST = 300;

interface Body {
  readonly length: number;
  readonly front: number;
  readonly mass: number;
  readonly inertia: number;
  readonly drag: (v: number) => number;
  readonly brake: (t: number, v: number) => number;
  readonly surge: (t: number, v: number, push: number) => number;
  /** What the rail holds of its surge-braked wheels, N. */
  readonly grip: number;
}

export interface SprungStop {
  /** m the head runs; Infinity: it does not stop. */
  readonly distance: number;
  /** The most that a surge brake asked of the grip of its wheels. */
  readonly hardest: number;
}

/** @param at, v0 place of the train's head (m) and its speed (m/s) as the driver acts */
export function sprungStop(outing: Outing, ground: Ground, at: number, v0: number): SprungStop {
  const bodies = bodiesOf(outing);
  const n = bodies.length;
  const v = new Float64Array(n).fill(v0);
  const x = Float64Array.from(bodies, (b) => at - b.front);
  const push = new Float64Array(n + 1);
  const curve = outing.assumed.curveConstant.low;
  let hardest = 0;
  for (let k = 0; k * STEP < LONGEST; k++) {
    const t = k * STEP;
    for (let i = 1; i < n; i++) {
      const squeeze = bodies[i].front - bodies[i - 1].front - (x[i - 1] - x[i]);
      push[i] = STIFF * squeeze + DAMPED * (v[i] - v[i - 1]);
    }
    for (let i = 0; i < n; i++) {
      const { mass, inertia, length, drag, brake, surge, grip } = bodies[i];
      const [rear, head] = [x[i] - length, x[i]];
      const climb = mass * G * (meanGrade(ground, rear, head) + curve * meanBend(ground, rear, head));
      const speed = Math.max(0, v[i]);
      const own = i > 0 ? surge(t, speed, push[i]) : 0;
      if (grip > 0) hardest = Math.max(hardest, own / grip);
      const against = drag(speed) + brake(t, speed) + own;
      const along = push[i + 1] - push[i] - climb;
      const then = v[i] + ((along - against) / inertia) * STEP;
      // Brakes and resistance stop a vehicle and do not push it back.
      v[i] = then < 0 ? Math.min(0, v[i] + (along / inertia) * STEP) : then;
      x[i] += v[i] * STEP;
    }
    if (v[0] <= 1e-3) return { distance: x[0] - at, hardest };
  }
  return { distance: Infinity, hardest };
}

function bodiesOf(outing: Outing): Body[] {
  const brakes = answering(outing);
  const of = (own: typeof brakes): ReturnType<typeof tableOf> => tableOf(outing, own);
  const { mass } = hand(of([]), likelyDeal);
  return of([]).cars.map((car, i): Body => {
    const { vehicle, front, items } = car;
    const { resistance, rotatingShare, tare, length } = vehicle;
    const own = brakes.filter((b) => b.car === i);
    const braked = brakedBy(hand(of(own.filter((b) => b.gear.kind !== 'surge')), likelyDeal));
    const pushed = own.find((b) => b.gear.kind === 'surge');
    // A force in the place of a gear's levers: its wheels and what rubs on them, of one newton.
    const one = pushed && hand(of([{ ...pushed, gear: ofOneNewton(pushed.gear) }]), likelyDeal);
    const loaded = items.reduce((sum, item) => sum + item.mass.value, tare.value);
    return {
      length,
      front,
      mass: mass[i],
      inertia: loaded + tare.value * rotatingShare.value,
      drag: (v) =>
        loaded * G * (resistance.rolling.value + resistance.perSpeed.value * v) +
        resistance.perSpeedSquared * v * v,
      brake: (t, v) => brakeAt(braked, t, v),
      surge: pushed && one ? surgeOf(outing, pushed.gear, one) : () => 0,
      grip: one ? one.grip.reduce((sum, g) => sum + g, 0) : 0,
    };
  });
}

/** Of levers, friction and efficiency: the force of its blocks on the rail for each newton beyond the spring. */
function surgeOf(outing: Outing, gear: BrakeGear, one: Hand): Body['surge'] {
  const { leverRatio, efficiency, springForce, block, blockFriction } = gear.surge!;
  const points = outing.assumed.blockFriction[block];
  const friction = (v: number): number =>
    blockFriction
      ? blockFriction.value
      : frictionAt(
          {
            speed: points.map((p) => p.speed),
            share: Float64Array.from(points, (p) => p.friction.value),
          },
          v,
        );
  const [dead, build] = [one.dead[0], one.build[0]];
  return (t, v, push) =>
    push <= springForce
      ? 0
      : risen(t, dead, build) * friction(v) * efficiency.value * leverRatio * (push - springForce);
}

const ofOneNewton = ({ surge: _, ...gear }: BrakeGear): BrakeGear => ({
  ...gear,
  force: { value: 1, low: 1, high: 1, how: 'stated' },
});
