/**
 * Opening an outing: the times of its brakes found from their parts, the line turned to the running direction, the
 * train loaded, the air of the day. Once, for every question. Chainages are then in the running direction;
 * `answer/chainage.ts` turns them back for people.
 */
import { type DayAir, dayAir } from '../things/air/day.ts';
import { timedTrain } from '../things/brake/build-up-from-parts.ts';
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

/** @throws RangeError for a train without a vehicle: `papers/` lets none through */
export function timeOuting(written: Outing): TimedOuting {
  if (written.train.vehicles.length === 0) throw new RangeError('a train needs at least one vehicle');
  const loaded = loadTrain(written.train, written.riders);
  const train = timedTrain(loaded, written.assumed, dayAir(written.conditions));
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
