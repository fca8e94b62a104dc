/** Trains whose cars brake by the push of their couplers: random ones, and the engine's likely stop beside the witness's. */
import { between, exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { type Draw, drawer, randomOuting } from '../../support/random-outings.ts';
import { chance } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { sprungStop } from '../surge.ts';
import { stopWord } from './engine.ts';

/** An engine that brakes, cars that press on it: most with surge brakes, some with vacuum ones or none. */
export function pushedOuting(seed: number): Outing {
  const base = randomOuting(seed, undefined, 0.02);
  const draw = drawer(seed + 77);
  const vehicles = base.train.vehicles.map((v): Vehicle => {
    if (v.role === 'engine') {
      const common = { id: 'brake', name: 'brake', kind: 'engine-only', on: ['a', 'b'] } as const;
      const likely = v.tare.value * 9.8 * draw(0.06, 0.15);
      const force = between(0.9 * likely, likely, 1.1 * likely, 'assumed');
      const brake: BrakeGear = { ...common, force, workedBy: 'driver', parking: false };
      return { ...v, brakes: [brake] };
    }
    const which = draw(0, 1);
    if (which < 0.15) return { ...v, brakes: [] };
    return which < 0.3 ? v : { ...v, brakes: [surge(draw)] };
  });
  const conditions = { ...base.conditions, reaction: exact(0) };
  return { ...base, conditions, train: { ...base.train, vehicles } };
}

const surge = (draw: Draw): BrakeGear => ({
  id: 'surge',
  name: 'surge',
  kind: 'surge',
  on: draw(0, 1) < 0.7 ? ['a', 'b'] : ['a'],
  workedBy: 'driver',
  parking: false,
  surge: {
    leverRatio: draw(1, 6),
    efficiency: exact(draw(0.6, 0.9)),
    springForce: draw(0, 1) < 0.5 ? 0 : draw(10, 80),
    block: draw(0, 1) < 0.5 ? 'cast-iron' : 'composition',
    ...(draw(0, 1) < 0.3 ? { blockFriction: exact(draw(0.15, 0.35)) } : {}),
  },
});

export interface PushedCompared {
  readonly seed: number;
  readonly at: number;
  readonly speed: number;
  readonly engine: number;
  readonly witness: number;
  /** The most that a surge brake asked of the grip of its wheels. */
  readonly hardest: number;
}

export function comparePushed(seed: number, places: number): PushedCompared[] {
  const written = pushedOuting(seed);
  const { outing, likelyStop } = stopWord(written);
  const uniform = chance(seed + 303);
  const ground = groundOf(outing);
  return Array.from({ length: places }, () => {
    const at = uniform() * outing.line.length;
    const speed = 1 + 3 * uniform();
    const { distance, hardest } = sprungStop(timed(written, outing), ground, at, speed);
    return { seed, at, speed, engine: likelyStop(at, speed), witness: distance, hardest };
  });
}

/** The times that the product has put into the gears, and of surge brakes their levers as they were written. */
const timed = (written: Outing, opened: Outing): Outing => ({
  ...opened,
  train: {
    ...opened.train,
    vehicles: opened.train.vehicles.map((v, i) => ({
      ...v,
      brakes: v.brakes.map((gear, j) =>
        gear.kind === 'surge'
          ? {
              ...written.train.vehicles[i].brakes[j],
              ...(gear.deadTime ? { deadTime: gear.deadTime } : {}),
              ...(gear.buildUp ? { buildUp: gear.buildUp } : {}),
            }
          : gear,
      ),
    })),
  },
});
