/**
 * Opening an outing: the times of its brakes found from their parts, the line turned to the running direction, the
 * train loaded, the air of the day. Once, for every question. Chainages are then in the running direction;
 * `answer/chainage.ts` turns them back for people.
 */
import type { Quantity } from '../base/quantity.ts';
import { type DayAir, dayAir } from '../things/air/day.ts';
import { type GearBuildUp, riggingBuildUp, timedTrain } from '../things/brake/build-up-from-parts.ts';
import { reverseLine } from '../things/line/geometry.ts';
import type { Line } from '../things/line/types.ts';
import { type LoadedTrain, loadTrain } from '../things/train/loaded.ts';
import type { Outing } from './types.ts';

/**
 * An outing with what the parts of its brakes tell (times, share of force, surge) written into the gears. Plain
 * data: found once, it can be sent to where stops are asked at hand.
 */
export interface TimedOuting {
  /** As its papers have it. */
  readonly written: Outing;
  readonly outing: Outing;
}

export interface OutingContext extends TimedOuting {
  /** The line in the running direction. */
  readonly line: Line;
  readonly loaded: LoadedTrain;
  readonly air: DayAir;
}

/** Times of a train's brakes as its parts tell them, by vehicle. */
export type BrakeTimes = readonly (Omit<GearBuildUp, 'vehicle'> & { readonly vehicle: string })[];

/** @throws RangeError for a train without a vehicle: `papers/` lets none through */
export function brakeTimes({ train, riders, conditions, assumed }: Outing): BrakeTimes {
  if (train.vehicles.length === 0) throw new RangeError('a train needs at least one vehicle');
  const times = riggingBuildUp(loadTrain(train, riders), dayAir(conditions).pressure, assumed.brakeParts);
  return times.map((t) => ({ ...t, vehicle: train.vehicles[t.vehicle].id }));
}

/** Those that an opened outing has already. */
export const timesFound = ({ written, outing }: TimedOuting): BrakeTimes =>
  written.train.vehicles.flatMap(({ id, brakes }, v) =>
    brakes.flatMap((gear, g) => {
      const { deadTime, buildUp, forceShare = 1, pushed } = outing.train.vehicles[v].brakes[g];
      const found = deadTime !== undefined && buildUp !== undefined && pushed !== true;
      return found ? [{ vehicle: id, gear, deadTime, buildUp, forceShare }] : [];
    }),
  );

/**
 * From the times of a train, ramps that no shorter train of the same vehicles lies below at any time. In a longer one 10 %
 * and 90 % of the force come later, and the force is no greater; but the straight ramp through both may begin earlier.
 */
export const atLatest = (times: BrakeTimes): BrakeTimes =>
  times.map((t) => {
    const of = (key: 'low' | 'value' | 'high'): readonly [number, number] => {
      const [dead, build] = [t.deadTime[key], t.buildUp[key]];
      const [tenth, nineTenths] = [dead + 0.1 * build, dead + 0.9 * build];
      return [tenth, (9 / 8) * nineTenths - tenth];
    };
    const [low, value, high] = [of('low'), of('value'), of('high')];
    const put = (q: Quantity, i: 0 | 1): Quantity => ({ ...q, low: low[i], value: value[i], high: high[i] });
    return { ...t, deadTime: put(t.deadTime, 0), buildUp: put(t.buildUp, 1) };
  });

/** @param times of this train, or those at the latest of a longer one */
export function timeOuting(written: Outing, times: BrakeTimes = brakeTimes(written)): TimedOuting {
  const loaded = loadTrain(written.train, written.riders);
  const at = new Map(written.train.vehicles.map(({ id }, i) => [id, i]));
  const here = times.flatMap((t) => {
    const vehicle = at.get(t.vehicle);
    return vehicle === undefined ? [] : [{ ...t, vehicle }];
  });
  const train = timedTrain(loaded, written.assumed, dayAir(written.conditions), here);
  return { written, outing: train === written.train ? written : { ...written, train } };
}

export const openTimed = ({ written, outing }: TimedOuting): OutingContext => ({
  written,
  outing,
  line: outing.direction === 'reverse' ? reverseLine(outing.line) : outing.line,
  loaded: loadTrain(outing.train, outing.riders),
  air: dayAir(outing.conditions),
});

export const openOuting = (written: Outing): OutingContext => openTimed(timeOuting(written));

/** The outing as its papers have it, without what the brakes' parts tell: to hold the one against the other. */
export const asWritten = (context: OutingContext): OutingContext => ({
  ...context,
  outing: context.written,
  loaded: loadTrain(context.written.train, context.written.riders),
});

/** Margin kept to whatever the train must stop short of, m. */
export const stopMargin = ({ outing }: OutingContext): number =>
  outing.host.stopMargin?.value ?? outing.assumed.stopMargin;
