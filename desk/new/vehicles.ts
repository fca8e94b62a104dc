/** Engine and cars from the replies: what was measured as it was typed, what their shape gives as assumed. */
import {
  carCentreOverSeat,
  carGroups,
  carLength,
  centreOverGauge,
  DRIVER_BEHIND_BELOW,
  type EngineShape,
  engineGroups,
  engineLength,
  type GroupShape,
  POWER_AT_RAIL,
  POWER_SPEEDS,
  PULL_KEPT_TO,
  SEAT_PITCH,
  seatHeight,
} from '../../data/shapes.ts';
import { VERSION } from '../../papers/index.ts';
import type { System } from '../../units/index.ts';
import { isThrough, staysOn, steamKeys } from './applies.ts';
import type { Figure, Read } from './reading.ts';
import {
  assumedAs,
  assumedLength,
  forceText,
  type Json,
  lengthText,
  speedText,
  wholeSpeedText,
} from './written.ts';

export interface TrainParts {
  readonly engine: Json;
  /** A car alike to all others, without a driver's seat. */
  readonly car: Json | undefined;
  /** The first car, where the driver sits on it. */
  readonly driverCar: Json | undefined;
  readonly cars: number;
  readonly seats: number;
}

const shapeOf = (read: Read): EngineShape =>
  (['steam', 'petrol'] as const).find((kind) => read.says('engine.kind', kind)) ?? 'battery';

const vehicle = (name: string, role: 'engine' | 'car', rest: Json): Json => ({
  heedway: 'vehicle',
  version: VERSION,
  name,
  role,
  ...rest,
});

const groupsOf = (shapes: readonly GroupShape[], length: number, gauge: number, read: Read): Json[] =>
  shapes.map(({ name, at, axles, wheelBase, driven }) => ({
    name,
    at: assumedLength(at * length, read.system),
    axles: assumedAs(String(axles)),
    wheelBase: assumedLength(wheelBase * gauge, read.system),
    ...(driven ? { driven } : {}),
  }));

/**
 * Whether the driver takes a seat of the first car.
 *
 * @param gauge m; not known: only where it is said
 */
export const sitsBehind = (read: Read, cars: number, gauge: number | undefined): boolean =>
  cars > 0 &&
  (read.says('people.driverOn', 'first car') ||
    (read.text('people.driverOn') === undefined && gauge !== undefined && gauge < DRIVER_BEHIND_BELOW));

/** @param gauge m */
export function trainParts(read: Read, gauge: Figure, weight: Figure): TrainParts {
  const cars = read.count('cars.count');
  const behind = sitsBehind(read, cars, gauge.si);
  const { car, driverCar, seats } = carsOf(read, gauge, cars, behind);
  return { engine: engineOf(read, gauge, weight, behind), car, driverCar, cars, seats };
}

function engineOf(read: Read, gauge: Figure, weight: Figure, behind: boolean): Json {
  const cars = read.count('cars.count');
  const shape = shapeOf(read);
  const length = engineLength(shape, weight.si);
  const [low, value, high] = centreOverGauge[shape].map((over) => lengthText(over * gauge.si, read.system));
  const through = (read.text('cars.brake') ?? '').replace(' ', '-');
  return vehicle(read.text('engine.name') ?? engineName(read, shape), 'engine', {
    gauge: gauge.text,
    length: assumedLength(length, read.system),
    tare: weight.text,
    centreHeight: { ...assumedAs(value), low, high },
    axleGroups: groupsOf(engineGroups[shape], length, gauge.si, read),
    brakes: engineBrakes(read),
    ...(cars > 0 ? chainOf(read, 'rear') : {}),
    supplies: read.says('cars.worked', 'yes') ? [through] : [],
    ...tractionOf(read),
    ...(behind
      ? {}
      : {
          seats: [
            {
              name: 'driver',
              at: assumedLength(0.6 * length, read.system),
              height: assumedLength(seatHeight(gauge.si), read.system),
              driver: true,
            },
          ],
        }),
  });
}

/** "Battery engine" */
const engineName = (read: Read, shape: EngineShape): string =>
  read.text('engine.kind') === undefined ? 'Engine' : `${shape[0].toUpperCase()}${shape.slice(1)} engine`;

/** One of which nobody knows how hard it brakes is written without its force: that is asked for. */
function engineBrakes(read: Read): Json[] {
  const parks = parkingBrake(read, 'engine.parks');
  if (read.says('engine.brake', 'none')) return parks;
  const force = read.figure('engine.brake');
  const { stays, screw } = holdOf(read, 'engine.holds');
  return [
    {
      name: screw ? 'hand screw' : 'engine brake',
      kind: screw ? 'mechanical' : 'engine-only',
      ...(force ? { force: force.text } : {}),
      ...(stays ? { parking: true } : {}),
    },
    ...parks,
  ];
}

/** A screw only parks: it is no part of a stop. */
const holdOf = (
  read: Read,
  key: 'engine.holds' | 'cars.holds',
): { readonly stays: boolean; readonly screw: boolean } => ({
  stays: staysOn(read.text(key)),
  screw: read.says(key, 'by a screw'),
});

/** The one to park with beside the one that stops; by lever or screw, it is not counted on for a stop. */
function parkingBrake(read: Read, key: 'engine.parks' | 'cars.parks'): Json[] {
  const force = read.figure(key);
  if (!force && !read.says(key, 'yes')) return [];
  return [
    { name: 'parking brake', kind: 'mechanical', ...(force ? { force: force.text } : {}), parking: true },
  ];
}

/** What a spring balance reads at a stand, taken to be kept up to a walk. */
export function pullOf(force: string, system: System): Json {
  const kept = assumedAs(wholeSpeedText(PULL_KEPT_TO, system), 'kept at a walk, common practice, no source');
  const curve = [
    { speed: speedText(0, system), force },
    { speed: kept, force },
  ];
  return { kind: 'drawbar', curve, how: 'stated', source: 'spring balance, engine held' };
}

function tractionOf(read: Read): Json {
  const pull = read.figure('engine.pull');
  if (pull) return { traction: pullOf(pull.text, read.system) };
  const [cylinders, bore, stroke, wheelDiameter, boilerPressure] = steamKeys.map((key) => read.figure(key));
  if (cylinders && bore && stroke && wheelDiameter && boilerPressure)
    return {
      traction: {
        kind: 'steam',
        cylinders: cylinders.si,
        bore: bore.text,
        stroke: stroke.text,
        wheelDiameter: wheelDiameter.text,
        boilerPressure: boilerPressure.text,
      },
    };
  const power = read.figure('engine.power');
  return power ? { traction: fromPower(power, read) } : {};
}

/** F = η·P ÷ v, and at a stand no more than at the first speed above it. */
function fromPower(power: Figure, read: Read): Json {
  const curve = POWER_SPEEDS.map((v) => ({
    speed: speedText(v, read.system),
    force: forceText((POWER_AT_RAIL * power.si) / Math.max(v, POWER_SPEEDS[1]), read.system),
  }));
  const source = `half of ${power.text} at the rail, common practice, no source`;
  return { kind: 'drawbar', curve, how: 'assumed', source };
}

const seatsAlong = (length: number): number => Math.max(1, Math.floor(length / SEAT_PITCH));

/**
 * Seats of one car: counted, else from its length, else from the usual length.
 *
 * @param gauge m; undefined: not known, and then only what was said of the car tells
 */
export function usualSeats(read: Read, gauge: number | undefined): number | undefined {
  const told = read.figure('cars.seats')?.si;
  const length = read.figure('cars.length')?.si ?? (gauge === undefined ? undefined : carLength(gauge));
  return told ?? (length === undefined ? undefined : seatsAlong(length));
}

function carsOf(
  read: Read,
  gauge: Figure,
  cars: number,
  behind: boolean,
): Pick<TrainParts, 'car' | 'driverCar' | 'seats'> {
  const weight = read.figure('cars.weight');
  if (cars === 0 || !weight) return { car: undefined, driverCar: undefined, seats: 0 };
  const told = read.figure('cars.seats')?.si;
  const measured = read.figure('cars.length');
  const length =
    measured?.si ?? Math.max(carLength(gauge.si), told === undefined ? 0 : (told + 0.4) * SEAT_PITCH);
  const seats = told ?? seatsAlong(length);
  const named = read.text('cars.name') ?? 'Car';
  const make = (name: string, driver: boolean): Json =>
    vehicle(name, 'car', {
      gauge: gauge.text,
      length: measured?.text ?? assumedLength(length, read.system),
      tare: weight.text,
      centreHeight: carCentre(gauge.si, read),
      axleGroups: groupsOf(carGroups, length, gauge.si, read),
      ...bearingOf(read),
      brakes: carBrakes(read),
      ...chainOf(read, 'front'),
      ...chainOf(read, 'rear'),
      seats: Array.from({ length: seats }, (_, i) => ({
        name: `${i + 1}`,
        at: assumedLength(((i + 0.5) / seats) * length, read.system),
        height: read.figure('cars.seatHeight')?.text ?? assumedLength(seatHeight(gauge.si), read.system),
        ...(driver && i === 0 ? { driver: true } : {}),
      })),
    });
  const alike = cars - (behind ? 1 : 0);
  return {
    car: alike > 0 ? make(named, false) : undefined,
    driverCar: behind ? make(`${named} of the driver`, true) : undefined,
    seats,
  };
}

function carBrakes(read: Read): Json[] {
  const kind = read.text('cars.brake');
  if (kind === undefined || kind === 'none') return [];
  // Worked by the car's own push: its lever and spring are asked for by the answer.
  const parks = parkingBrake(read, 'cars.parks');
  if (kind === 'surge') return [{ kind }, ...parks];
  const figure = read.figure('cars.pull');
  const force = figure ? { force: figure.text } : {};
  if (isThrough(kind)) return [{ kind: kind.replace(' ', '-'), ...force }, ...parks];
  const { stays, screw } = holdOf(read, 'cars.holds');
  return [
    {
      name: 'hand brake',
      kind: 'mechanical',
      ...force,
      ...(stays ? { parking: true } : {}),
      ...(stays && !screw ? { stops: true } : {}),
    },
  ];
}

/** Between floor and seat; no higher than the seat. */
function carCentre(gauge: number, read: Read): Json {
  const seat = read.figure('cars.seatHeight')?.si ?? seatHeight(gauge);
  const [low, value, high] = carCentreOverSeat.map((over) => lengthText(over * seat, read.system));
  return { ...assumedAs(value), low, high };
}

const bearingOf = (read: Read): Json => {
  const bearing = read.text('cars.bearing');
  return bearing === undefined ? {} : { bearing };
};

/** One of which nothing but that it hangs there is known is written so: what it bears is asked for. */
function chainOf(read: Read, end: 'front' | 'rear'): Json {
  if (!read.says('cars.chains', 'yes')) return {};
  const size = read.figure('cars.chainSize');
  return { [end]: { chain: size ? { size: size.text } : {} } };
}
