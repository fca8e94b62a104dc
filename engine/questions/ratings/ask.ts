/** Loads against ratings, riders against seats, curves against the vehicles' least radius. */
import { GRAVITY } from '../../base/constants.ts';
import { type Amount, amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';

/** Steepest grade that the model covers: beyond it small-angle sums are off by more than 1 %. */
const STEEPEST = 0.15;

export function askLoads(context: OutingContext): Finding[] {
  return [
    ...longerThanLine(context),
    ...context.loaded.vehicles.flatMap(overloads),
    ...unseated(context),
    ...curves(context),
    ...grades(context),
  ];
}

/** A train that does not fit on its line, or whose head meets its own tail. */
export function longerThanLine({ line, loaded }: OutingContext): Finding[] {
  if (loaded.length < line.length) return [];
  return [
    makeFinding('train-longer-than-line', 'forbids', 'fit', {
      found: amount(loaded.length, 'length'),
      required: amount(line.length, 'length'),
      margin: Math.min(marginOf(loaded.length, line.length), -1e-9),
      facts: { loop: line.loop },
      source: 'lengths of the line and of the train over its couplers',
    }),
  ];
}

const over = (
  code: 'car-overloaded' | 'axle-overloaded' | 'seat-overloaded',
  vehicle: string,
  found: Amount,
  required: Amount,
  facts: Record<string, string | number> = {},
): Finding =>
  makeFinding(code, 'forbids', 'balance', {
    where: { vehicle },
    found,
    required,
    margin: marginOf(found.si, required.si),
    facts,
    source: 'rating of the vehicle',
  });

function overloads(loaded: LoadedVehicle): Finding[] {
  const { vehicle, riders, groupLoads } = loaded;
  const { ratings } = vehicle;
  const out: Finding[] = [];
  const people = riders.reduce((sum, r) => sum + r.rider.mass.value, 0);
  const goods = vehicle.loads.reduce((sum, l) => sum + l.mass.value, 0);
  if (ratings.load !== undefined && people + goods > ratings.load) {
    out.push(
      over('car-overloaded', vehicle.id, amount(people + goods, 'mass'), amount(ratings.load, 'mass')),
    );
  }
  if (ratings.riders !== undefined && riders.length > ratings.riders) {
    out.push(
      over('car-overloaded', vehicle.id, amount(riders.length, 'count'), amount(ratings.riders, 'count')),
    );
  }
  vehicle.groups.forEach((group, i) => {
    const perAxle = groupLoads[i] / GRAVITY / group.axles;
    if (ratings.axleLoad === undefined || perAxle <= ratings.axleLoad) return;
    out.push(
      over('axle-overloaded', vehicle.id, amount(perAxle, 'mass'), amount(ratings.axleLoad, 'mass'), {
        group: group.name,
      }),
    );
  });
  for (const { rider, seat } of riders) {
    if (seat.most === undefined || rider.mass.value <= seat.most) continue;
    const facts = { rider: rider.name, seat: seat.name };
    out.push(
      over('seat-overloaded', vehicle.id, amount(rider.mass.value, 'mass'), amount(seat.most, 'mass'), facts),
    );
  }
  return out;
}

function unseated({ outing }: OutingContext): Finding[] {
  return outing.riders
    .filter((r) => r.vehicle === undefined || r.seat === undefined)
    .map((r) =>
      makeFinding('rider-not-seated', 'unknown', 'balance', {
        facts: { rider: r.name },
        measure: 'riders.seat',
        source: 'outing',
      }),
    );
}

/** Sharpest curve of the line against each vehicle's least radius, and against its own length. */
function curves({ line, loaded }: OutingContext): Finding[] {
  const sharpest = line.curves.reduce<{ k: number; at: number }>(
    (worst, c) => {
      const k = Math.max(Math.abs(c.startCurvature), Math.abs(c.endCurvature));
      return k > worst.k ? { k, at: (c.from + c.to) / 2 } : worst;
    },
    { k: 0, at: 0 },
  );
  if (sharpest.k === 0) return [];
  const radius = 1 / sharpest.k;
  return loaded.vehicles.flatMap(({ vehicle }) => {
    const least = vehicle.ratings.leastRadius ?? vehicle.length;
    if (radius >= least - 1e-9) return [];
    return [
      makeFinding('curve-too-tight', 'forbids', 'fit', {
        where: { vehicle: vehicle.id, from: sharpest.at, to: sharpest.at },
        found: amount(radius, 'length'),
        required: amount(least, 'length'),
        margin: (radius - least) / least,
        source:
          vehicle.ratings.leastRadius === undefined
            ? 'a curve tighter than the vehicle is long'
            : 'rating of the vehicle',
      }),
    ];
  });
}

function grades({ line }: OutingContext): Finding[] {
  const out: Finding[] = [];
  for (let i = 1; i < line.heights.length; i++) {
    const [a, b] = [line.heights[i - 1], line.heights[i]];
    const grade = (b.height - a.height) / (b.at - a.at);
    if (Math.abs(grade) <= STEEPEST) continue;
    out.push(
      makeFinding('grade-beyond-range', 'unknown', 'line', {
        where: { from: a.at, to: b.at },
        found: amount(grade, 'grade'),
        required: amount(STEEPEST, 'grade'),
        measure: 'line.profile',
        source: 'range of the model',
      }),
    );
  }
  return out;
}
