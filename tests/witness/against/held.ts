/** Trains left on the line on brakes that do not leak off: random ones, and what the engine says of them beside the witness. */
import { between, type Quantity } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askHolding } from '../../../engine/questions/hold/ask.ts';
import type { RailState } from '../../../engine/things/rail.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { type Draw, drawer, randomOuting } from '../../support/random-outings.ts';
import { chance } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { dealer, hand, tableOf } from '../hand.ts';
import { gradesAt, spare } from '../held.ts';
import { type Brake, carsOf } from '../train.ts';
import { MOST_HANDS, oddsOf } from './odds.ts';

const rails: readonly RailState[] = ['dry', 'damp', 'wet', 'greasy'];

/** Some with a screw on the engine, some with a guard's on the last car, or on two trucks of it, or on a rider's car. */
export function parkedOuting(seed: number): Outing {
  const base = randomOuting(seed, undefined, 0.03);
  const draw = drawer(seed + 57);
  const last = base.train.vehicles.length - 1;
  const vehicles = base.train.vehicles.map((v, i): Vehicle => {
    const has = i === 0 ? draw(0, 1) < 0.85 : i === last ? draw(0, 1) < 0.6 : draw(0, 1) < 0.15;
    return has ? { ...v, brakes: [...v.brakes, screw(draw, v, i > 0)] } : v;
  });
  const guarded = draw(0, 1) < 0.6;
  const riders = base.riders.map((r) =>
    guarded && r.vehicle === vehicles[last].id && r.duty === 'rider' ? { ...r, duty: 'guard' as const } : r,
  );
  const conditions = { ...base.conditions, railState: rails[Math.floor(draw(0, 4))] };
  return { ...base, riders, conditions, train: { ...base.train, vehicles } };
}

const spread = (value: number, share: number): Quantity =>
  between(value * (1 - share), value, value * (1 + share), 'assumed');

function screw(draw: Draw, { tare }: Vehicle, car: boolean): BrakeGear {
  const common = {
    id: 'screw',
    name: 'screw',
    kind: 'mechanical',
    on: draw(0, 1) < 0.6 ? ['a'] : ['a', 'b'],
    workedBy: car ? 'guard' : 'driver',
    parking: true,
  } as const;
  if (draw(0, 1) < 0.5) {
    const block = (['cast-iron', 'composition', 'wood'] as const)[Math.floor(draw(0, 3))];
    return { ...common, force: spread(tare.value * 9.8 * draw(0.02, 0.25), 0.2), block };
  }
  const levers = { wheelRadius: draw(0.06, 0.12), screwLead: draw(0.004, 0.008), leverRatio: draw(1, 4) };
  return {
    ...common,
    hand: {
      ...levers,
      pull: spread(draw(20, 90), 0.2),
      efficiency: between(0.2, 0.3, 0.4, 'assumed'),
      block: draw(0, 1) < 0.5 ? 'cast-iron' : 'composition',
    },
  };
}

/** Put on by the driver on the engine, or by a guard on the guard's own car. */
const putOn = ({ train, riders }: Outing): Brake[] =>
  train.vehicles.flatMap((v, car) => {
    const manned = riders.some((r) => r.vehicle === v.id && (r.duty === 'driver' || r.duty === 'guard'));
    return manned ? v.brakes.filter((b) => b.parking).map((gear) => ({ car, gear })) : [];
  });

export interface HeldCompared {
  readonly seed: number;
  readonly rail: string;
  /** The engine's: it holds at its hardest place. */
  readonly holds: boolean;
  /** By how much of the pull. */
  readonly margin: number;
  /** Share of hands that roll where the most do of the places tried, and whether they are too many for "it holds". */
  readonly share: number;
  readonly tooMany: boolean;
}

export function compareHeld(seed: number): HeldCompared {
  const outing = parkedOuting(seed);
  const { data } = askHolding(prepare(openOuting(outing)));
  const cars = carsOf(outing);
  const ground = groundOf(outing);
  const brakes = putOn(outing);
  const places = Array.from({ length: Math.ceil(outing.line.length / 2) }, (_, i) => 2 * i);
  const weight = (grades: number[]): number =>
    Math.abs(grades.reduce((sum, grade, i) => sum + grade * masses[i], 0));
  const masses = hand(tableOf(outing, []), (q) => q.value).mass;
  const hardest = places
    .map((head) => gradesAt(ground, cars, head))
    .reduce((a, b) => (weight(b) > weight(a) ? b : a));
  const uniform = chance(seed + 909);
  const deal = dealer(uniform, 'halves');
  const table = tableOf(outing, brakes);
  const { share, tooMany } = oddsOf(MOST_HANDS, () => spare(hand(table, deal()), hardest) < 0);
  return {
    seed,
    rail: outing.conditions.railState,
    holds: data.crew >= data.pull,
    margin: data.pull > 0 ? data.crew / data.pull - 1 : 1,
    share,
    tooMany,
  };
}
