/**
 * One schema for each kind of file. Types, the published JSON Schema and the texts of errors all come from
 * here. Fields hold what people write; the output is SI.
 */

import * as z from 'zod/mini';
import { railStates } from '../../engine/things/rail.ts';
import { blockMaterials, brakeKinds, postures } from '../../engine/things/vehicle/types.ts';
import { age } from './age.ts';
import { figure, quantity } from './quantity.ts';

const text = z.string().check(z.minLength(1));
const name = text.check(z.maxLength(200));
const yes = z.boolean();
const opt = z.optional;
const length = () => figure('length', { least: 0 });
const size = () => figure('length', { above: 0 });

const head = <K extends string>(kind: K) => ({
  heedway: z.literal(kind),
  version: z.int(),
  name,
  note: opt(z.string()),
});

// ---- line

const profilePoint = z.strictObject({
  at: opt(length()),
  length: opt(size()),
  height: opt(figure('length')),
  grade: opt(figure('grade')),
});
const curve = z.strictObject({
  from: length(),
  to: length(),
  radius: size(),
  hand: z.enum(['left', 'right']),
  transitionIn: opt(length()),
  transitionOut: opt(length()),
  cant: opt(figure('length')),
  gaugeWidening: opt(length()),
});
const placeKinds = [
  'station',
  'stop',
  'signal',
  'switch',
  'crossing',
  'tunnel',
  'bridge',
  'summit',
  'board',
  'siding',
  'yard',
  'buffers',
] as const;
const place = z.strictObject({
  name,
  kind: z.enum(placeKinds),
  at: length(),
  to: opt(length()),
  sight: opt(size()),
  sightReverse: opt(size()),
  stop: opt(yes),
  note: opt(z.string()),
});
const speedLimit = z.strictObject({
  from: length(),
  to: length(),
  speed: figure('speed', { above: 0 }),
  why: name,
  source: text,
});
const sight = z.strictObject({
  from: length(),
  to: length(),
  distance: size(),
  direction: opt(z.enum(['forward', 'reverse', 'both'])),
});

export const lineSchema = z.strictObject({
  ...head('line'),
  gauge: size(),
  contactWidth: opt(size()),
  shape: z.enum(['loop', 'point-to-point']),
  survey: opt(z.enum(['levelled', 'taped', 'gps', 'stated', 'assumed'])),
  profile: z.array(profilePoint).check(z.minLength(2)),
  curves: opt(z.array(curve)),
  places: opt(z.array(place)),
  speedLimits: opt(z.array(speedLimit)),
  sights: opt(z.array(sight)),
  twist: opt(figure('twist', { least: 0, most: 0.1 })),
});

// ---- vehicle

const factor = () => quantity('ratio', { above: 0, most: 1 });
const newtons = () => quantity('force', { least: 0 });

const rigging = z.strictObject({
  cylinders: opt(figure('count', { above: 0, most: 16 })),
  bore: size(),
  stroke: opt(size()),
  leverRatio: figure('ratio', { above: 0, most: 100 }),
  efficiency: opt(factor()),
  block: z.enum(blockMaterials),
  blockFriction: opt(factor()),
  workingPressure: opt(quantity('gaugePressure', { above: 0, most: 2e6 })),
  workingVacuum: opt(quantity('vacuum', { above: 0, most: 101325 })),
  springForce: opt(figure('force', { least: 0 })),
  reservoirVolume: opt(figure('volume', { above: 0 })),
  cylinderVolume: opt(figure('volume', { above: 0 })),
  pipeVolume: opt(figure('volume', { above: 0 })),
  chokeDiameter: opt(size()),
  leakRate: opt(
    z.strictObject({ fall: figure('gaugePressure', { least: 0 }), in: figure('time', { above: 0 }) }),
  ),
  hoseDiameter: opt(size()),
  chamberVolume: opt(figure('volume', { above: 0 })),
  feedDiameter: opt(size()),
});
const hand = z.strictObject({
  pull: opt(newtons()),
  wheelRadius: opt(size()),
  screwLead: opt(size()),
  leverRatio: figure('ratio', { above: 0, most: 100 }),
  efficiency: opt(factor()),
  block: z.enum(blockMaterials),
  blockFriction: opt(factor()),
});
const surge = z.strictObject({
  leverRatio: figure('ratio', { above: 0, most: 100 }),
  efficiency: opt(factor()),
  springForce: figure('force', { least: 0 }),
  block: z.enum(blockMaterials),
  blockFriction: opt(factor()),
});
const brake = z.strictObject({
  name: opt(name),
  kind: z.enum(brakeKinds),
  on: opt(z.array(text).check(z.minLength(1))),
  force: opt(newtons()),
  rigging: opt(rigging),
  hand: opt(hand),
  surge: opt(surge),
  lag: opt(quantity('time', { above: 0 })),
  deadTime: opt(quantity('time', { least: 0, most: 60 })),
  buildUp: opt(quantity('time', { least: 0, most: 120 })),
  workedBy: opt(z.enum(['driver', 'guard', 'rider'])),
  parking: opt(yes),
  onSupplyLoss: opt(z.enum(['applies', 'lost'])),
});
const axles = z.strictObject({
  name,
  at: length(),
  axles: opt(figure('count', { above: 0, most: 8 })),
  wheelBase: opt(length()),
  wheelRadius: opt(size()),
  driven: opt(yes),
  tareShare: opt(figure('ratio', { above: 0, most: 1 })),
});
const steam = z.strictObject({
  kind: z.literal('steam'),
  cylinders: figure('count', { above: 0, most: 8 }),
  bore: size(),
  stroke: size(),
  wheelDiameter: size(),
  boilerPressure: figure('gaugePressure', { above: 0, most: 5e6 }),
  meanPressureFactor: opt(quantity('ratio', { above: 0, most: 1 })),
  power: opt(quantity('power', { above: 0 })),
});
const drawbar = z.strictObject({
  kind: z.literal('drawbar'),
  curve: z
    .array(z.strictObject({ speed: figure('speed', { least: 0 }), force: figure('force', { least: 0 }) }))
    .check(z.minLength(1)),
  how: opt(z.enum(['measured', 'stated', 'assumed'])),
  source: opt(text),
});
const chain = z.strictObject({
  count: opt(figure('count', { above: 0, most: 4 })),
  grade: opt(z.union([z.literal(30), z.literal(43), z.literal(70), z.literal(80), z.literal(100)])),
  size: opt(size()),
  workingLoad: opt(newtons()),
  weakestPart: opt(newtons()),
  weakestPartName: opt(name),
  weakestPartBreaks: opt(newtons()),
  slack: opt(length()),
  slackDifference: opt(length()),
  stiffness: opt(quantity('stiffness', { above: 0 })),
});
const coupling = z.strictObject({
  type: opt(name),
  height: opt(length()),
  slack: opt(quantity('length', { least: 0 })),
  stiffness: opt(quantity('stiffness', { above: 0 })),
  strength: opt(newtons()),
  chain: opt(chain),
});
const seat = z.strictObject({
  name,
  at: length(),
  across: opt(figure('length')),
  height: size(),
  posture: opt(z.enum([...postures, 'sit-in'])),
  facing: opt(z.enum(['forward', 'backward', 'sideways'])),
  most: opt(figure('mass', { above: 0 })),
  driver: opt(yes),
});
const load = z.strictObject({
  name,
  mass: quantity('mass', { least: 0 }),
  at: length(),
  across: opt(figure('length')),
  height: length(),
});

export const vehicleSchema = z.strictObject({
  ...head('vehicle'),
  role: z.enum(['engine', 'tender', 'car', 'guard']),
  gauge: size(),
  length: size(),
  tare: quantity('mass', { above: 0 }),
  centreHeight: opt(quantity('length', { above: 0 })),
  centreAt: opt(length()),
  axleGroups: z.array(axles).check(z.minLength(1)),
  rotatingShare: opt(quantity('ratio', { least: 0, most: 2 })),
  bearing: opt(z.enum(['ball', 'roller', 'plain'])),
  resistance: opt(
    z.strictObject({
      rolling: opt(quantity('specificForce', { least: 0, most: 0.2 })),
      starting: opt(quantity('specificForce', { least: 0, most: 0.5 })),
      perSpeed: opt(figure('ratio', { least: 0 })),
      perSpeedSquared: opt(figure('ratio', { least: 0 })),
    }),
  ),
  brakes: opt(z.array(brake)),
  supplies: opt(z.array(z.enum(brakeKinds))),
  throughPipe: opt(z.array(z.enum(brakeKinds))),
  brakeSupply: opt(
    z.strictObject({
      reservoirVolume: opt(figure('volume', { above: 0 })),
      pressure: opt(figure('gaugePressure', { above: 0 })),
      vacuum: opt(figure('vacuum', { above: 0 })),
      rate: opt(figure('flow', { above: 0 })),
      greatestVacuum: opt(figure('vacuum', { above: 0 })),
      valveDiameter: opt(size()),
    }),
  ),
  traction: opt(z.discriminatedUnion('kind', [steam, drawbar])),
  front: opt(coupling),
  rear: opt(coupling),
  seats: opt(z.array(seat)),
  loads: opt(z.array(load)),
  ratings: opt(
    z.strictObject({
      riders: opt(figure('count')),
      load: opt(figure('mass', { above: 0 })),
      axleLoad: opt(figure('mass', { above: 0 })),
      speed: opt(figure('speed', { above: 0 })),
      leastRadius: opt(size()),
    }),
  ),
  suspension: opt(
    z.strictObject({
      rollStiffness: opt(quantity('moment', { above: 0 })),
      wheelStiffness: opt(quantity('stiffness', { above: 0 })),
      equalised: opt(yes),
      twistFreedom: opt(length()),
      frameTwist: opt(length()),
    }),
  ),
  flange: opt(
    z.strictObject({
      angle: opt(figure('angle', { above: 0, most: Math.PI / 2 })),
      frictionHigh: opt(figure('ratio', { least: 0, most: 1 })),
    }),
  ),
  envelope: opt(z.strictObject({ width: size(), height: size() })),
  headlight: opt(yes),
  taillight: opt(yes),
});

// ---- train, host, outing: parts that are files of their own are read apart (`unknown` here)

const trainMember = z.strictObject({
  vehicle: z.unknown(),
  id: opt(text.check(z.maxLength(60))),
  name: opt(name),
  count: opt(figure('count', { above: 0, most: 40 })),
});

export const trainSchema = z.strictObject({
  ...head('train'),
  vehicles: z.array(trainMember).check(z.minLength(1), z.maxLength(60)),
  pipeBrokenAfter: opt(z.array(text)),
  chainsFastened: opt(yes),
});

const rule = <T extends z.ZodMiniType>(value: T) => opt(z.strictObject({ value, source: text }));

export const hostSchema = z.strictObject({
  ...head('host'),
  speed: rule(figure('speed', { above: 0 })),
  leastGap: rule(figure('length', { least: 0 })),
  mostCars: rule(figure('count')),
  mostRiders: rule(figure('count')),
  mostRidersPerCar: rule(figure('count')),
  ridersPerAxle: rule(figure('count')),
  chainsRequired: rule(yes),
  chainLoad: rule(figure('force', { least: 0 })),
  brakedShare: rule(figure('ratio', { least: 0, most: 1 })),
  guardFromCars: rule(figure('count')),
  guardFromRiders: rule(figure('count')),
  lightsAtNight: rule(yes),
  gauge: rule(size()),
  seatHeight: rule(size()),
  leastWheelShare: rule(figure('ratio', { least: 0, most: 1 })),
  youngestRider: rule(figure('count')),
  childWithAdult: rule(yes),
  couplerTolerance: rule(figure('length', { least: 0 })),
  flagDistance: rule(figure('length', { least: 0 })),
  parkingBrakeRequired: rule(yes),
  stopMargin: rule(figure('length', { least: 0 })),
});

const rider = z.strictObject({
  name,
  weight: opt(quantity('mass', { above: 0, most: 300 })),
  typical: opt(z.enum(['man', 'woman', 'adult', 'youth', 'child'])),
  age: opt(age()),
  vehicle: opt(text),
  seat: opt(text),
  duty: opt(z.enum(['rider', 'driver', 'guard'])),
  group: opt(text),
  heldBy: opt(text),
});

export const outingSchema = z.strictObject({
  ...head('outing'),
  date: opt(z.string().check(z.regex(/^\d{4}-\d\d-\d\d$/))),
  line: z.unknown(),
  train: z.unknown(),
  host: z.unknown(),
  direction: opt(z.enum(['forward', 'reverse'])),
  riders: opt(z.array(rider).check(z.maxLength(400))),
  conditions: z.strictObject({
    railState: z.enum(railStates),
    adhesion: opt(quantity('ratio', { above: 0, most: 1 })),
    altitude: opt(figure('length', { least: -500, most: 6000 })),
    airPressure: opt(figure('pressure', { least: 30_000, most: 115_000 })),
    night: opt(yes),
    crosswind: opt(figure('speed', { least: 0 })),
    brakeTried: opt(yes),
    reaction: opt(quantity('time', { least: 0, most: 30 })),
  }),
  plannedSpeed: opt(figure('speed', { above: 0, most: 20 })),
  following: opt(
    z.strictObject({ after: figure('time', { least: 0 }), speed: figure('speed', { above: 0 }) }),
  ),
  agreedLimits: opt(
    z.array(z.strictObject({ from: length(), to: length(), speed: figure('speed', { above: 0 }) })),
  ),
});

export const schemas = {
  line: lineSchema,
  vehicle: vehicleSchema,
  train: trainSchema,
  host: hostSchema,
  outing: outingSchema,
} as const;
export type FileKind = keyof typeof schemas;

export type LineFile = z.output<typeof lineSchema>;
export type VehicleFile = z.output<typeof vehicleSchema>;
export type TrainFile = z.output<typeof trainSchema>;
export type HostFile = z.output<typeof hostSchema>;
export type OutingFile = z.output<typeof outingSchema>;

/** Newest version of every kind of file. */
export const VERSION = 1;
