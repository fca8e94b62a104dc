/**
 * A hand: one set of all that is uncertain about a train and its day, dealt at once. What belongs to the
 * whole train is dealt once (rails, driver, curve drag, block material, the pressure and timing of a pipe);
 * what belongs to one vehicle or one gear is dealt for each.
 */

import type { Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { BlockMaterial, BrakeGear } from '../../engine/things/vehicle/types.ts';
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
  /** Share of adhesion that a driver's hand keeps after easing, and s until it has eased. */
  readonly utilisation: number;
  readonly notice: number;
  /** Friction of a skidding wheel ÷ adhesion: floor + (1 − floor)·e^(−v/fall). */
  readonly skid: { readonly floor: number; readonly fall: number };
  /** What the rail holds of each braked axle group, N. */
  readonly grip: Float64Array;
  /** Where each braked axle group is behind the train's head, m, between its outer axles, m, and its axles. */
  readonly at: Float64Array;
  readonly base: Float64Array;
  readonly axles: Float64Array;
  /** Each push of a gear on an axle group: which group, which friction (−1: none), N, s, s, which handle. */
  readonly wheels: Int16Array;
  readonly material: Int16Array;
  readonly push: Float64Array;
  readonly dead: Float64Array;
  readonly build: Float64Array;
  readonly handle: Int16Array;
  /** By handle: nobody's hand eases it. */
  readonly alone: readonly boolean[];
  readonly frictions: readonly Friction[];
}

/** Standard atmosphere, Pa: p₀·(1 − 2.25577e−5·h)^5.25588 (ISO 2533). */
export const airAt = (height: number): number => 101_325 * (1 - 2.25577e-5 * height) ** 5.25588;

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
}

export const tableOf = (outing: Outing, brakes: readonly Brake[]): Table => ({
  outing,
  cars: carsOf(outing),
  brakes,
  air: outing.conditions.airPressure ?? airAt(outing.conditions.altitude ?? 0),
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
    b += mass[i] * G * resistance.perSpeed.value;
    c += resistance.perSpeedSquared;
    return borne(car, tare, items).map((m) => m * G);
  });
  // The survey may have missed the grade; read by a receiver or guessed, it counts as a stated one until levelled.
  const { heightQuality: heights } = outing.line;
  const missed = assumed.gradeSpread[heights === 'gps' || heights === 'assumed' ? 'stated' : heights];
  a += mass.reduce((sum, m) => sum + m, 0) * G * deal(missed, 'grade');
  return {
    mass,
    inertia,
    a,
    b,
    c,
    curve: deal(assumed.curveConstant, 'curve'),
    reaction: deal(conditions.reaction, 'reaction'),
    utilisation: deal(assumed.easing.utilisation, 'utilisation'),
    notice: deal(assumed.easing.notice, 'notice'),
    skid: { floor: deal(assumed.skid.floor, 'skid'), fall: deal(assumed.skid.fallSpeed, 'skid') },
    ...pushes(table, loads, brakes, deal),
  };
}

type Pushes = Pick<
  Hand,
  | 'grip'
  | 'at'
  | 'base'
  | 'axles'
  | 'wheels'
  | 'material'
  | 'push'
  | 'dead'
  | 'build'
  | 'handle'
  | 'alone'
  | 'frictions'
>;

function pushes(table: Table, loads: number[][], brakes: readonly Brake[], deal: Deal): Pushes {
  const { assumed } = table.outing;
  const grip: number[] = [];
  const bears: { at: number; base: number; axles: number }[] = [];
  const groupIndex = new Map<string, number>();
  const handleIndex = new Map<string, number>();
  const alone: boolean[] = [];
  const frictionIndex = new Map<string, number>();
  const frictions: Friction[] = [];
  const rows: {
    wheels: number;
    material: number;
    push: number;
    dead: number;
    build: number;
    handle: number;
  }[] = [];
  for (const { car, gear, alone: byItself = false, whistled = false } of brakes) {
    const force = forceOf(table, gear, deal);
    if (!force) continue;
    const { kind, on } = gear;
    const along = throughPipe.has(kind);
    const nobody = byItself || kind === 'surge';
    const name = nobody || !(along || kind === 'engine-only') ? `${car} ${gear.id}` : kind;
    let handle = handleIndex.get(name);
    if (handle === undefined) {
      handle = alone.push(nobody) - 1;
      handleIndex.set(name, handle);
    }
    const dead =
      deal(gear.deadTime ?? assumed.deadTime[kind], along ? `dead ${kind}` : undefined) +
      (whistled ? deal(assumed.anotherDriver, 'whistle') : 0);
    const build = deal(gear.buildUp ?? assumed.buildUp[kind], along ? `build ${kind}` : undefined);
    let material = -1;
    if (force.rubs) {
      const key = JSON.stringify(force.rubs);
      material = frictionIndex.get(key) ?? -1;
      if (material < 0) {
        material = frictions.push(rubbing(table.outing, force.rubs, deal)) - 1;
        frictionIndex.set(key, material);
      }
    }
    const { vehicle } = table.cars[car];
    const { groups } = vehicle;
    const axles = groups.reduce((sum, g) => sum + (on.includes(g.id) ? g.axles : 0), 0);
    groups.forEach((group, i) => {
      if (!on.includes(group.id)) return;
      const key = `${car} ${i}`;
      let wheels = groupIndex.get(key);
      if (wheels === undefined) {
        const sand = group.driven && (vehicle.sander ?? vehicle.role === 'engine');
        wheels = grip.push(deal(railUnder(table.outing, sand), 'adhesion') * loads[car][i]) - 1;
        groupIndex.set(key, wheels);
        bears.push({ at: table.cars[car].front + group.at, base: group.wheelBase, axles: group.axles });
      }
      rows.push({ wheels, material, push: (force.push * group.axles) / axles, dead, build, handle });
    });
  }
  return {
    grip: Float64Array.from(grip),
    at: Float64Array.from(bears, (b) => b.at),
    base: Float64Array.from(bears, (b) => b.base),
    axles: Float64Array.from(bears, (b) => b.axles),
    wheels: Int16Array.from(rows, (r) => r.wheels),
    material: Int16Array.from(rows, (r) => r.material),
    push: Float64Array.from(rows, (r) => r.push),
    dead: Float64Array.from(rows, (r) => r.dead),
    build: Float64Array.from(rows, (r) => r.build),
    handle: Int16Array.from(rows, (r) => r.handle),
    alone,
    frictions,
  };
}

/** Adhesion under wheels: sand lies, on a dry rail, under driven wheels whose engine throws it. */
const railUnder = ({ assumed, conditions: { railState } }: Outing, sand: boolean): Quantity =>
  assumed.adhesion[railState === 'sanded' && !sand ? 'dry' : railState];

/** What rubs: blocks of a material, or what speed leaves of a force that was measured at a stand with them. */
interface Rubs {
  readonly block: BlockMaterial | 'unknown';
  readonly standing: boolean;
  /** Block friction where measured, for all speeds. */
  readonly stated?: Quantity;
}

/** A second formula falls further: at and above this speed (10 mph) to this much of the first one's share. */
const FURTHER = 0.87;
const FURTHER_FROM = 4.4704;

/** Friction by speed as wet as today's rail leaves it, as the product states it (docs/stopping.md). */
function rubbing({ assumed, conditions }: Outing, { block, standing, stated }: Rubs, deal: Deal): Friction {
  const { blockFriction, blockWet } = assumed;
  const dry = conditions.railState === 'dry' || conditions.railState === 'sanded';
  // Nobody named it: of the usual two composition is the wetter.
  const w = deal(blockWet[block === 'unknown' ? 'composition' : block], 'wet');
  const wet = dry ? 1 : conditions.railState === 'damp' ? (1 + w) / 2 : w;
  const own = block === 'unknown' ? [] : blockFriction[block];
  if (stated) return { speed: [0], share: Float64Array.of(wet * deal(stated)) };
  if (!standing)
    return {
      speed: own.map((p) => p.speed),
      share: Float64Array.from(own, (p) => wet * deal(p.friction, `block ${block}`)),
    };
  if (block === 'composition' && own.length === 1) return { speed: [0], share: Float64Array.of(wet) };
  const points = own.length > 1 ? own : blockFriction['cast-iron'];
  const share = points.map(({ speed, friction }) => {
    const value = friction.value / points[0].friction.value;
    const low = value * (1 - (1 - FURTHER) * Math.min(1, speed / FURTHER_FROM));
    return wet * deal({ value, low, high: value, how: 'assumed' }, `block ${block}`);
  });
  return { speed: points.map((p) => p.speed), share: Float64Array.from(share) };
}

const throughPipe: ReadonlySet<BrakeGear['kind']> = new Set([
  'straight-air',
  'automatic-air',
  'simple-vacuum',
  'automatic-vacuum',
  'electric',
]);

/** Blocks' force of a whole gear, N, with what it must still be multiplied by; undefined: not known. */
function forceOf(
  { air, outing }: Table,
  gear: BrakeGear,
  deal: Deal,
): { push: number; rubs?: Rubs } | undefined {
  if (gear.force) {
    const block = gear.block ?? gear.rigging?.block ?? gear.hand?.block ?? gear.surge?.block ?? 'unknown';
    const push = deal(gear.force);
    // A motor that brakes has no blocks.
    return gear.kind === 'electric' && block === 'unknown'
      ? { push }
      : { push, rubs: { block, standing: true } };
  }
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
  const { block, blockFriction: stated } = worked;
  if (stated) return { push, rubs: { block, standing: false, stated } };
  return outing.assumed.blockFriction[block].length > 0
    ? { push, rubs: { block, standing: false } }
    : undefined;
}
