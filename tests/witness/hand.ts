/**
 * A hand: one set of all that is uncertain about a train and its day, dealt at once. What belongs to the
 * whole train is dealt once (rails, driver, curve drag, block material, the pressure and timing of a pipe);
 * what belongs to one vehicle or one gear is dealt for each.
 */

import type { Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { BlockMaterial, BrakeGear, BrakeKind } from '../../engine/things/vehicle/types.ts';
import { drawn, type Triangle } from './chance.ts';
import { type Brake, borne, type Car, carsOf, G } from './train.ts';

/** Block friction by speed of one hand. */
export interface Friction {
  readonly speed: readonly number[];
  readonly share: Float64Array;
}

/** Brakes on one axle group by one gear, N, with all wheels of that group by index. */
export interface Hand {
  /** kg by vehicle, and with the inertia of all wheels. */
  readonly mass: Float64Array;
  readonly inertia: number;
  /** Resistance a + b·v + c·v², N. */
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Curve drag = weight·curve/R, m. */
  readonly curve: number;
  readonly reaction: number;
  readonly adhesion: number;
  /** Locked ÷ adhesion, where one figure stands for it. */
  readonly slide: number;
  /** Share of adhesion that a driver's hand keeps after easing. */
  readonly utilisation: number;
  /** N on each braked axle group. */
  readonly load: Float64Array;
  /** Each push of a gear on an axle group: which group, which friction (−1: none), N, s, s, which handle. */
  readonly wheels: Int16Array;
  readonly material: Int16Array;
  readonly push: Float64Array;
  readonly dead: Float64Array;
  readonly build: Float64Array;
  readonly handle: Int16Array;
  /** By handle: a hand that feels its way works it, not a valve that goes all the way. */
  readonly graduated: readonly boolean[];
  readonly frictions: readonly Friction[];
}

/** Standard atmosphere, Pa: p₀·(1 − 2.25577e−5·h)^5.25588 (ISO 2533). */
export const airAt = (height: number): number => 101_325 * (1 - 2.25577e-5 * height) ** 5.25588;

/** Worked by a hand that feels its way: all but what goes on by itself or all the way. */
const goesAllTheWay: ReadonlySet<BrakeKind> = new Set(['automatic-air', 'surge']);

export type Deal = (q: Quantity, shared?: string) => number;

/** Every input at its likely figure. */
export const likelyDeal: Deal = (q) => q.value;

/** Every input from its spread; inputs with the same name share one number. */
export function dealer(uniform: () => number, triangle: Triangle): () => Deal {
  return () => {
    const known = new Map<string, number>();
    return (q, shared) => {
      if (shared === undefined) return drawn(q, uniform(), triangle);
      let u = known.get(shared);
      if (u === undefined) {
        u = uniform();
        known.set(shared, u);
      }
      return drawn(q, u, triangle);
    };
  };
}

/** All that a hand is dealt from. */
export interface Table {
  readonly outing: Outing;
  readonly cars: readonly Car[];
  readonly brakes: readonly Brake[];
  readonly air: number;
  readonly utilisation: Quantity;
}

export const tableOf = (outing: Outing, brakes: readonly Brake[], utilisation: Quantity): Table => ({
  outing,
  cars: carsOf(outing),
  brakes,
  air: outing.conditions.airPressure ?? airAt(outing.conditions.altitude ?? 0),
  utilisation,
});

export function hand(table: Table, deal: Deal): Hand {
  const { outing, cars, brakes } = table;
  const { assumed, conditions } = outing;
  const mass = new Float64Array(cars.length);
  let [inertia, a, b, c] = [0, 0, 0, 0];
  const loads = cars.map((car, i) => {
    const { tare: tareOf, rotatingShare, resistance } = car.vehicle;
    const tare = deal(tareOf);
    const items = car.items.map((item) => deal(item.mass));
    mass[i] = items.reduce((sum, m) => sum + m, tare);
    inertia += mass[i] + tare * deal(rotatingShare);
    a += mass[i] * G * deal(resistance.rolling);
    b += mass[i] * G * resistance.perSpeed;
    c += resistance.perSpeedSquared;
    return borne(car, tare, items).map((m) => m * G);
  });
  const adhesion = deal(assumed.adhesion[conditions.railState], 'adhesion');
  return {
    mass,
    inertia,
    a,
    b,
    c,
    curve: deal(assumed.curveConstant, 'curve'),
    reaction: deal(conditions.reaction, 'reaction'),
    adhesion,
    slide: deal(assumed.slideFactor, 'slide'),
    utilisation: deal(table.utilisation, 'utilisation'),
    ...pushes(table, loads, brakes, deal),
  };
}

type Pushes = Pick<
  Hand,
  'load' | 'wheels' | 'material' | 'push' | 'dead' | 'build' | 'handle' | 'graduated' | 'frictions'
>;

function pushes(table: Table, loads: number[][], brakes: readonly Brake[], deal: Deal): Pushes {
  const { assumed } = table.outing;
  const load: number[] = [];
  const groupIndex = new Map<string, number>();
  const handleIndex = new Map<string, number>();
  const graduated: boolean[] = [];
  const frictionIndex = new Map<BlockMaterial, number>();
  const frictions: Friction[] = [];
  const rows: {
    wheels: number;
    material: number;
    push: number;
    dead: number;
    build: number;
    handle: number;
  }[] = [];
  for (const { car, gear } of brakes) {
    const force = forceOf(table, gear, deal);
    if (!force) continue;
    const { kind, on } = gear;
    const along = throughPipe.has(kind);
    const name = along ? kind : `${car} ${gear.id}`;
    let handle = handleIndex.get(name);
    if (handle === undefined) {
      handle = graduated.push(!goesAllTheWay.has(kind)) - 1;
      handleIndex.set(name, handle);
    }
    const dead = deal(gear.deadTime ?? assumed.deadTime[kind], along ? `dead ${kind}` : undefined);
    const build = deal(gear.buildUp ?? assumed.buildUp[kind], along ? `build ${kind}` : undefined);
    let material = -1;
    if (force.block !== undefined) {
      material = frictionIndex.get(force.block) ?? -1;
      if (material < 0) {
        const points = assumed.blockFriction[force.block];
        const share = Float64Array.from(points, (p) => deal(p.friction, `block ${force.block}`));
        material = frictions.push({ speed: points.map((p) => p.speed), share }) - 1;
        frictionIndex.set(force.block, material);
      }
    }
    const { groups } = table.cars[car].vehicle;
    const axles = groups.reduce((sum, g) => sum + (on.includes(g.id) ? g.axles : 0), 0);
    groups.forEach((group, i) => {
      if (!on.includes(group.id)) return;
      const key = `${car} ${i}`;
      let wheels = groupIndex.get(key);
      if (wheels === undefined) {
        wheels = load.push(loads[car][i]) - 1;
        groupIndex.set(key, wheels);
      }
      rows.push({ wheels, material, push: (force.push * group.axles) / axles, dead, build, handle });
    });
  }
  return {
    load: Float64Array.from(load),
    wheels: Int16Array.from(rows, (r) => r.wheels),
    material: Int16Array.from(rows, (r) => r.material),
    push: Float64Array.from(rows, (r) => r.push),
    dead: Float64Array.from(rows, (r) => r.dead),
    build: Float64Array.from(rows, (r) => r.build),
    handle: Int16Array.from(rows, (r) => r.handle),
    graduated,
    frictions,
  };
}

const throughPipe: ReadonlySet<BrakeKind> = new Set([
  'straight-air',
  'automatic-air',
  'simple-vacuum',
  'automatic-vacuum',
  'electric',
]);

/** Blocks' force of a whole gear, N, with the block that it must still be multiplied by; undefined: not known. */
function forceOf(
  { air, outing }: Table,
  gear: BrakeGear,
  deal: Deal,
): { push: number; block?: BlockMaterial } | undefined {
  if (gear.force) return { push: deal(gear.force) };
  const worked = gear.hand?.pull ? gear.hand : gear.rigging;
  if (!worked) return undefined;
  let push: number;
  if (gear.hand?.pull) {
    const { pull, wheelRadius, screwLead, leverRatio, efficiency } = gear.hand;
    const screw = wheelRadius && screwLead ? (2 * Math.PI * wheelRadius) / screwLead : 1;
    push = deal(pull) * screw * leverRatio * deal(efficiency);
  } else {
    const { workingPressure, bore, springForce, cylinders, leverRatio, efficiency } = gear.rigging!;
    let pressure = deal(workingPressure, throughPipe.has(gear.kind) ? `pressure ${gear.kind}` : undefined);
    if (gear.kind === 'simple-vacuum' || gear.kind === 'automatic-vacuum') {
      if (workingPressure.how !== 'measured') pressure *= Math.min(1, air / 101_325);
      pressure = Math.min(pressure, air);
    }
    const piston = Math.max(0, (Math.PI / 4) * bore * bore * pressure - (springForce ?? 0));
    push = piston * cylinders * leverRatio * deal(efficiency) * (gear.forceShare ?? 1);
  }
  if (worked.blockFriction) return { push: push * deal(worked.blockFriction) };
  return outing.assumed.blockFriction[worked.block].length > 0 ? { push, block: worked.block } : undefined;
}
