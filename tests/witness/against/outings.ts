/**
 * Random outings as awkward as real ones: what dressed outings have (reverse, loops, signals, limits, sights),
 * and engines at the rear or in the middle, brakes mixed, broken or on one truck alone, high ground, steep
 * knees, cant, stretches over the seam of a loop, ballast, a hand on some cars' brakes.
 */

import { exact, type Quantity } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { BrakeKind } from '../../../engine/things/brake/kinds/index.ts';
import type { HeightKnot, Line } from '../../../engine/things/line/types.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { dressed } from '../../support/dressed-outings.ts';
import { type Draw, drawer } from '../../support/random-outings.ts';

const kinds: readonly BrakeKind[] = [
  'automatic-vacuum',
  'automatic-vacuum',
  'automatic-air',
  'straight-air',
  'simple-vacuum',
  'electric',
  'mechanical',
];

/** From this seed on outings are wider: other gauges, engines doubled, lookouts, sand thrown or not. */
export const WIDE = 100_000;

/** Two of three such as a club would run, so that many may leave; the third as awkward as they come. */
export function randomOuting(seed: number): Outing {
  const outing = seed % 3 === 0 ? awkward(seed) : ordinary(seed);
  return seed > WIDE ? widened(outing, drawer(seed + 11)) : outing;
}

/** Of another gauge from 5 to 12 in, heights as wide; a second engine, with its own driver or without; a guard up front. */
function widened(base: Outing, draw: Draw): Outing {
  const often = (share: number): boolean => draw(0, 1) < share;
  const wide = draw(0.127, 0.305) / base.line.gauge;
  const line = { ...base.line, gauge: base.line.gauge * wide, contactWidth: base.line.contactWidth * wide };
  const scaled = base.train.vehicles.map((v) => ofGauge(v, wide));
  const at = scaled.findIndex((v) => v.role === 'engine');
  const sander = often(0.5);
  const engine = { ...scaled[at], ...(often(0.7) ? { sander } : {}) };
  const second = { ...engine, id: 'second', name: 'second' };
  const doubled = often(0.4);
  const vehicles = scaled.toSpliced(at, 1, ...(doubled ? [engine, second] : [engine]));
  const pipeBrokenAfter = base.train.pipeBrokenAfter.map((i) => (doubled && i >= at ? i + 1 : i));
  const twin = base.riders.find((r) => r.duty === 'driver' && r.vehicle === engine.id);
  const riders = [
    ...base.riders.map((r) =>
      r.vehicle === vehicles[0].id && r.duty === 'rider' && often(0.3) ? { ...r, duty: 'guard' as const } : r,
    ),
    ...(doubled && twin && often(0.5) ? [{ ...twin, id: 'second-driver', vehicle: 'second' }] : []),
  ];
  return { ...base, line, riders, train: { ...base.train, vehicles, pipeBrokenAfter } };
}

const ofGauge = (v: Vehicle, wide: number): Vehicle => ({
  ...v,
  gauge: v.gauge * wide,
  ...(v.centreHeight ? { centreHeight: times(v.centreHeight, wide) } : {}),
  seats: v.seats.map((s) => ({ ...s, height: s.height * wide })),
  loads: v.loads.map((l) => ({ ...l, height: l.height * wide })),
});

const times = (q: Quantity, by: number): Quantity => ({
  ...q,
  low: q.low * by,
  value: q.value * by,
  high: q.high * by,
});

/** The same with easier grades, fewer cars, a stronger engine, chains and a hand brake: much of it may leave. */
function ordinary(seed: number): Outing {
  const base = awkward(seed);
  const draw = drawer(seed + 5);
  const most = Math.floor(draw(1, 7));
  const cars = base.train.vehicles.filter((v) => v.role === 'car').slice(0, most);
  const kept = new Set(cars.map((v) => v.id));
  const vehicles = base.train.vehicles.flatMap((v) =>
    v.role === 'car' && !kept.has(v.id) ? [] : [madeFit(v)],
  );
  const easier = draw(0.1, 0.4);
  const heights = base.line.heights.map((k) => ({ at: k.at, height: k.height * easier }));
  const line: Line = {
    ...base.line,
    heights,
    sights: base.line.sights.map((s) => ({ ...s, distance: s.distance + draw(0, 20) })),
  };
  const pipeBrokenAfter = base.train.pipeBrokenAfter.filter((i) => i < vehicles.length - 1);
  const { mostCars: _, ...host } = base.host;
  return { ...base, line, host, train: { ...base.train, vehicles, pipeBrokenAfter } };
}

/**
 * A second brake that the driver works on the engine's own wheels: one force measured, one from cylinder and block.
 *
 * @param block of the one that was measured; else nobody says, and it falls with speed as cast iron's does
 */
export function withTwoGears(outing: Outing, block?: BrakeGear['block']): Outing {
  const vehicles = outing.train.vehicles.map((v): Vehicle => {
    if (v.role !== 'engine') return v;
    const common = { kind: 'engine-only', on: ['a', 'b'], workedBy: 'driver', parking: false } as const;
    const measured: BrakeGear = {
      ...common,
      id: 'hand',
      name: 'hand',
      force: exact(v.tare.value),
      ...(block ? { block } : {}),
    };
    const cylinder: BrakeGear = {
      ...common,
      id: 'steam',
      name: 'steam',
      rigging: {
        cylinders: 1,
        bore: 0.05,
        leverRatio: 3,
        efficiency: exact(0.8),
        block: 'cast-iron',
        workingPressure: exact(400_000),
      },
    };
    return { ...v, brakes: [measured, cylinder] };
  });
  return { ...outing, train: { ...outing.train, vehicles } };
}

function madeFit(v: Vehicle): Vehicle {
  const end = { ...v.rear, chain: { count: 2, grade: 80 as const, size: 0.008, slack: 0.02 } };
  const safe: Vehicle = { ...v, front: end, rear: end, flange: { angle: 1.22, frictionHigh: 0.35 } };
  if (v.role !== 'engine' || v.traction?.kind !== 'drawbar') return safe;
  const curve = v.traction.curve.map((p) => ({ ...p, force: p.force * 2 }));
  const screw: BrakeGear = {
    id: 'screw',
    name: 'hand screw',
    kind: 'mechanical',
    on: ['a'],
    force: exact(v.tare.value),
    workedBy: 'guard',
    parking: true,
  };
  return { ...safe, traction: { ...v.traction, curve }, brakes: [...v.brakes, screw] };
}

export function awkward(seed: number): Outing {
  const draw = drawer(seed * 7919 + 13);
  const often = (share: number): boolean => draw(0, 1) < share;
  const base = dressed(seed);
  const other = kinds[Math.floor(draw(0, kinds.length))];
  const mixed = often(0.4);
  const vehicles = base.train.vehicles.map((v) => {
    const carrying = v.role === 'engine' ? withSupply(v, other) : withPipe(v, other);
    const ballasted = often(0.2) ? withBallast(carrying, draw) : carrying;
    const braked = mixed && v.role !== 'engine' && often(0.5) ? ofKind(ballasted, other) : ballasted;
    return often(0.15) ? onOneTruck(braked, draw) : braked;
  });
  const [engine, ...cars] = vehicles;
  const place = often(0.5) ? 0 : often(0.5) ? cars.length : Math.floor(draw(0, cars.length));
  const ordered = [...cars.slice(0, place), engine, ...cars.slice(place)];
  const broken = often(0.15) ? [Math.floor(draw(0, ordered.length - 1))] : [];
  let line = base.line;
  if (often(0.3)) line = withKnees(line, draw);
  if (often(0.5)) line = withCant(line, draw);
  if (line.loop && often(0.5)) line = overTheSeam(line, draw);
  if (often(0.15)) line = { ...line, sights: [] };
  return {
    ...base,
    line,
    train: { ...base.train, vehicles: ordered, pipeBrokenAfter: broken },
    host: often(0.3)
      ? { name: base.host.name, ...(base.host.speed ? { speed: base.host.speed } : {}) }
      : base.host,
    conditions: {
      ...base.conditions,
      ...(often(0.3)
        ? { altitude: draw(0, 2500) }
        : often(0.2)
          ? { airPressure: draw(85_000, 103_000) }
          : {}),
    },
  };
}

const withSupply = (v: Vehicle, kind: BrakeKind): Vehicle => ({
  ...v,
  supplies: [...new Set<BrakeKind>([...(v.supplies ?? []), kind])],
});

const withPipe = (v: Vehicle, kind: BrakeKind): Vehicle => ({
  ...v,
  throughPipe: [...new Set<BrakeKind>([...(v.throughPipe ?? []), kind])],
});

function ofKind(v: Vehicle, kind: BrakeKind): Vehicle {
  const change = (gear: BrakeGear): BrakeGear => ({
    ...gear,
    kind,
    workedBy: kind === 'mechanical' ? 'rider' : 'driver',
    ...(kind === 'electric' ? { onSupplyLoss: 'applies' as const } : {}),
  });
  return { ...v, brakes: v.brakes.map(change) };
}

const onOneTruck = (v: Vehicle, draw: Draw): Vehicle => ({
  ...v,
  brakes: v.brakes.map((gear) => ({ ...gear, on: [draw(0, 1) < 0.5 ? 'a' : 'b'] })),
});

const withBallast = (v: Vehicle, draw: Draw): Vehicle => ({
  ...v,
  loads: [
    {
      name: 'ballast',
      mass: exact(draw(10, 60)),
      at: draw(0.3, 0.7) * v.length,
      across: 0,
      height: draw(0.1, 0.3),
    },
  ],
});

/** Every few metres another grade, up to 6 %. */
function withKnees(line: Line, draw: Draw): Line {
  const heights: HeightKnot[] = [{ at: 0, height: 0 }];
  let [at, height] = [0, 0];
  while (at < line.length) {
    const run = Math.min(draw(3, 25), line.length - at);
    const end = line.length - at - run < 3 ? line.length : at + run;
    height += (end - at) * draw(-0.06, 0.06);
    at = end;
    heights.push({ at, height });
  }
  const wrong = line.loop ? height : 0;
  return {
    ...line,
    heights: heights.map((k) => ({ at: k.at, height: k.height - (wrong * k.at) / line.length })),
  };
}

/** Cant in every arc, run off in its transitions. */
const withCant = (line: Line, draw: Draw): Line => ({
  ...line,
  cants: line.curves.flatMap((c) => {
    if (c.startCurvature !== c.endCurvature) return [];
    const cant = Math.sign(c.startCurvature) * draw(0, 0.012);
    return [
      { at: c.from - 2.9, cant: 0 },
      { at: c.from, cant },
      { at: c.to, cant },
      { at: c.to + 2.9, cant: 0 },
    ];
  }),
});

/** A sight and a limit over the loop's origin, and a signal just past it. */
function overTheSeam(line: Line, draw: Draw): Line {
  const { length } = line;
  const stretch = { from: length - draw(5, 40), to: draw(5, 40) };
  return {
    ...line,
    sights: [...line.sights, { ...stretch, distance: draw(5, 90), direction: 'both' }],
    speedLimits: [...line.speedLimits, { ...stretch, speed: draw(0.5, 3), why: 'seam', source: 'made up' }],
    places: [
      ...line.places,
      {
        id: 'seam',
        name: 'Seam signal',
        kind: 'signal',
        at: draw(1, 20),
        sight: draw(10, 60),
        sightReverse: draw(10, 60),
        stop: false,
      },
    ],
  };
}
