/**
 * Random but plausible lines, trains and conditions from a seed, for laws and independent checks.
 * All made up.
 */

import { assumedValues as published } from '../../data/index.ts';
import { between, exact, type Quantity } from '../../engine/base/quantity.ts';
import { seeded } from '../../engine/base/spread.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { AssumedValues } from '../../engine/things/assumed.ts';
import { type BrakeKind, brakeKinds } from '../../engine/things/brake/kinds/index.ts';
import type { CurveElement, HeightKnot, Line } from '../../engine/things/line/types.ts';
import type { Rider } from '../../engine/things/train/types.ts';
import type { BrakeGear, Vehicle } from '../../engine/things/vehicle/types.ts';

export type Draw = (low: number, high: number) => number;

export const drawer = (seed: number): Draw => {
  const uniform = seeded(seed);
  return (low, high) => low + (high - low) * uniform();
};

const spread = (value: number, share: number): Quantity =>
  between(value * (1 - share), value, value * (1 + share), 'assumed', 'made up');

export const assumedValues: AssumedValues = {
  ...published,
  adhesion: {
    dry: between(0.18, 0.22, 0.25, 'assumed'),
    damp: between(0.09, 0.13, 0.15, 'assumed'),
    wet: between(0.13, 0.17, 0.24, 'assumed'),
    greasy: between(0.05, 0.07, 0.1, 'assumed'),
    sanded: between(0.2, 0.25, 0.3, 'assumed'),
    'damp-sanded': between(0.15, 0.2, 0.25, 'assumed'),
    'wet-sanded': between(0.17, 0.21, 0.26, 'assumed'),
    'greasy-sanded': between(0.05, 0.12, 0.18, 'assumed'),
  },
  curveConstant: between(0.1, 0.3, 0.6, 'assumed'),
  blockFriction: {
    'cast-iron': [0, 2.2352, 4.4704, 8.9408].map((speed, i) => ({
      speed,
      friction: spread([0.33, 0.273, 0.242, 0.192][i], 0.15),
    })),
    composition: [{ speed: 0, friction: between(0.2, 0.25, 0.32, 'assumed') }],
    wood: [{ speed: 0, friction: between(0.2, 0.3, 0.4, 'assumed') }],
    steel: [{ speed: 0, friction: between(0.12, 0.18, 0.25, 'assumed') }],
    bronze: [{ speed: 0, friction: between(0.12, 0.18, 0.25, 'assumed') }],
    other: [{ speed: 0, friction: between(0.1, 0.2, 0.3, 'assumed') }],
  },
  deadTime: kinds((k) =>
    k === 'engine-only' ? between(0.1, 0.3, 0.5, 'assumed') : between(0.3, 0.7, 1.2, 'assumed'),
  ),
  buildUp: kinds((k) =>
    k === 'engine-only' ? between(0.5, 1, 1.5, 'assumed') : between(1, 2, 3, 'assumed'),
  ),
  pipe: { vehicles: 10, growth: between(1, 1.25, 1.5, 'assumed') },
  startingFactor: between(1.5, 2, 3, 'assumed'),
  riderCentre: between(0.23, 0.25, 0.27, 'assumed'),
  couplerSlack: between(0.002, 0.006, 0.012, 'assumed'),
  couplerStiffness: between(1e5, 3e5, 1e6, 'assumed'),
  stopMargin: 3,
  sight: 30,
  unstatedSpeed: 3.6,
};

function kinds<T>(of: (kind: BrakeKind) => T): Record<BrakeKind, T> {
  return Object.fromEntries(brakeKinds.map((k) => [k, of(k)])) as Record<BrakeKind, T>;
}

/** A line of 300 … 2,000 m with grades to `steepest` and curves of 12 … 80 m radius. */
export function randomLine(draw: Draw, steepest = 0.03, loop = draw(0, 1) < 0.5, longest = 2000): Line {
  const length = Math.round(draw(300, longest));
  const heights: HeightKnot[] = [{ at: 0, height: 0 }];
  let at = 0;
  let height = 0;
  while (at < length) {
    const run = Math.min(draw(20, 120), length - at);
    at = length - at - run < 5 ? length : at + run;
    height += (at - heights[heights.length - 1].at) * draw(-steepest, steepest);
    heights.push({ at, height });
  }
  if (loop) {
    const misclosure = heights[heights.length - 1].height;
    heights.forEach((k, i) => {
      heights[i] = { at: k.at, height: k.height - (misclosure * k.at) / length };
    });
  }
  return {
    name: 'random',
    gauge: 0.184,
    contactWidth: 0.2,
    loop,
    length,
    heights,
    heightQuality: 'levelled',
    curves: randomCurves(draw, length),
    cants: [],
    places: [],
    speedLimits: [],
    sights: [],
  };
}

function randomCurves(draw: Draw, length: number): CurveElement[] {
  const curves: CurveElement[] = [];
  let at = draw(0, 60);
  while (at + 40 < length) {
    const k = (draw(0, 1) < 0.5 ? 1 : -1) / draw(12, 80);
    const [into, arc, out] = [draw(3, 8), draw(10, 25), draw(3, 7)];
    curves.push(
      { from: at, to: at + into, startCurvature: 0, endCurvature: k, gaugeWidening: 0 },
      { from: at + into, to: at + into + arc, startCurvature: k, endCurvature: k, gaugeWidening: 0 },
      {
        from: at + into + arc,
        to: at + into + arc + out,
        startCurvature: k,
        endCurvature: 0,
        gaugeWidening: 0,
      },
    );
    at += into + arc + out + draw(10, 150);
  }
  return curves;
}

/** A link between pins that swings wide. */
const link: Vehicle['front'] = { type: 'link', shank: 0.15, swing: spread(0.6, 0) };

const trucks = (length: number, driven: boolean) => [
  { id: 'a', name: 'front truck', at: length * 0.2, axles: 2, wheelBase: 0.35, driven },
  { id: 'b', name: 'rear truck', at: length * 0.8, axles: 2, wheelBase: 0.35, driven },
];

export function randomVehicle(draw: Draw, id: string, engine: boolean): Vehicle {
  const length = engine ? draw(1.5, 3) : draw(1.8, 2.6);
  const tare = engine ? draw(200, 900) : draw(50, 120);
  const braked = engine || draw(0, 1) < 0.6;
  return {
    id,
    name: id,
    role: engine ? 'engine' : 'car',
    gauge: 0.184,
    length,
    tare: spread(tare, 0.03),
    centreHeight: spread(engine ? 0.35 : 0.25, 0.1),
    groups: trucks(length, engine),
    rotatingShare: spread(draw(0.03, 0.12), 0.2),
    bearing: 'ball',
    resistance: {
      rolling: spread(draw(0.005, 0.015), 0.3),
      perSpeed: exact(draw(0, 4e-4)),
      perSpeedSquared: draw(0, 1),
    },
    brakes: braked ? [randomBrake(draw, engine, tare)] : [],
    ...(engine
      ? {
          traction: {
            kind: 'drawbar' as const,
            curve: [
              { speed: 0, force: tare * 1.6 },
              { speed: 5, force: tare * 0.5 },
            ],
            how: 'stated' as const,
          },
          supplies: ['automatic-vacuum' as const],
        }
      : { throughPipe: ['automatic-vacuum' as const] }),
    front: link,
    rear: link,
    seats: engine
      ? [{ ...seat('driver', length * 0.8), driver: true }]
      : [0.15, 0.38, 0.62, 0.85].map((share, i) => seat(`${i + 1}`, length * share)),
    loads: [],
    ratings: {},
  };
}

const seat = (id: string, at: number) => ({
  id,
  name: id,
  at,
  across: 0,
  height: 0.4,
  posture: 'astride' as const,
  facing: 'forward' as const,
  driver: false,
});

function randomBrake(draw: Draw, engine: boolean, tare: number): BrakeGear {
  const kind: BrakeKind = engine ? 'engine-only' : 'automatic-vacuum';
  const common = {
    id: 'brake',
    name: 'brake',
    kind,
    on: ['a', 'b'],
    workedBy: 'driver' as const,
    parking: false,
  };
  if (draw(0, 1) < 0.5) {
    const force = tare * 9.8 * draw(0.05, 0.25);
    return {
      ...common,
      force: spread(force, 0.15),
      deadTime: spread(draw(0.2, 1.5), 0.3),
      buildUp: spread(draw(0.5, 3), 0.3),
    };
  }
  return {
    ...common,
    rigging: {
      cylinders: 1,
      bore: engine ? 0.05 : 0.06,
      leverRatio: engine ? draw(2, 6) : draw(0.5, 3),
      efficiency: between(0.7, 0.8, 0.9, 'assumed'),
      block: draw(0, 1) < 0.5 ? 'cast-iron' : 'composition',
      workingPressure: engine ? spread(400_000, 0.1) : spread(65_000, 0.1),
    },
  };
}

/** An outing with `cars` cars (random when left out) and some riders. */
export function randomOuting(seed: number, cars?: number, steepest?: number): Outing {
  const draw = drawer(seed);
  const count = cars ?? Math.floor(draw(1, 13));
  const vehicles = [randomVehicle(draw, 'engine', true)];
  for (let i = 1; i <= count; i++) vehicles.push(randomVehicle(draw, `car${i}`, false));
  return {
    name: `random ${seed}`,
    line: randomLine(draw, steepest),
    train: { name: 'random', vehicles, pipeBrokenAfter: [], chainsFastened: true },
    riders: randomRiders(draw, vehicles),
    host: { name: 'made up' },
    conditions: {
      railState: 'dry',
      night: false,
      reaction: between(0.7, 1.2, 2, 'assumed'),
      // In fog, or by what light there is.
      ...(seed % 16 === 13 ? { visibility: 12 + 10 * (seed % 5) } : {}),
    },
    direction: draw(0, 1) < 0.5 ? 'forward' : 'reverse',
    // Most are asked of one way alone: what is looked at there is that way.
    ...(seed % 4 === 0 ? {} : { wayBack: 'none' as const, otherTrains: 'none' as const }),
    extraLimits: [],
    assumptions: [],
    assumed: assumedValues,
  };
}

function randomRiders(draw: Draw, vehicles: readonly Vehicle[]): Rider[] {
  return vehicles.flatMap((v) =>
    v.seats
      .filter((s) => s.driver || draw(0, 1) < 0.7)
      .map(
        (s): Rider => ({
          id: `${v.id}-${s.id}`,
          name: 'rider',
          mass: spread(draw(25, 110), 0.1),
          ageGroup: 'adult',
          vehicle: v.id,
          seat: s.id,
          duty: s.driver ? 'driver' : 'rider',
        }),
      ),
  );
}
