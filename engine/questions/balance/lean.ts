/**
 * People who lean: the same people load the car and lean on it, all heavy or all light, high on their seats either
 * way. Heavy people press the wheels down and shift more; what may be relied on is the worse of the two.
 */
import { pick } from '../../base/spread.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type Body, bodyOf } from './body.ts';
import { type Leans, leans, momentToLift, speedWhileLeaning, type Under } from './tipping.ts';
import { windShare } from './wind.ts';

export interface People {
  readonly body: Body;
  /** kg of each rider, as `body` carries them. */
  readonly masses: readonly number[];
  /** Moment of the wind ÷ (g·Z) of that body. */
  readonly wind: number;
}

/** A vehicle's people heavy, then light; none where its centre of gravity cannot be bounded. */
export function peopleOf({ line, loaded, outing }: OutingContext, index: number): People[] {
  const vehicle = loaded.vehicles[index];
  return [1, -1].flatMap((people) => {
    const body = bodyOf(vehicle, line.contactWidth, outing.assumed.riderCentre, 1, people);
    if (!body) return [];
    const masses = vehicle.riders.map((r) => pick(r.rider.mass, people));
    return [{ body, masses, wind: windShare(vehicle, body.Z, outing.conditions.crosswind) }];
  });
}

/** Leans that lift the first wheel (or, `whole`, tip the vehicle), each with the people worse for it. */
export function carefulLeans(people: readonly People[], under: Under, speed: number, whole = false): Leans {
  const all = people.map(({ body, masses, wind }) => leans(body, masses, under, speed, whole, wind));
  const least = (who: keyof Leans): Leans => {
    const found = all.flatMap((l) => l[who] ?? []);
    return found.length === 0 ? {} : { [who]: Math.min(...found) };
  };
  return { ...least('one'), ...least('two'), ...least('all') };
}

/** Speed at which a wheel lifts when the heaviest rider leans outward by y, with the people worse for it, m/s. */
export const carefulSpeedWhileLeaning = (people: readonly People[], lean: number, under: Under): number =>
  Math.min(
    ...people.map(({ body, masses, wind }) =>
      speedWhileLeaning(body, Math.max(0, ...masses), lean, under, wind),
    ),
  );

/** The people with whom the heaviest rider's lean lifts a wheel first. */
export const worseForOne = (people: readonly People[], under: Under, speed: number): People =>
  people.reduce((a, b) => (leanOfOne(b, under, speed) < leanOfOne(a, under, speed) ? b : a));

const leanOfOne = ({ body, masses, wind }: People, under: Under, speed: number): number =>
  momentToLift(body, under, speed, false, wind) / Math.max(...masses);
