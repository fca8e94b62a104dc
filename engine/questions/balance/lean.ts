/**
 * People who lean: the same people load the car and lean on it, all heavy or all light, high on their seats either
 * way. Heavy people press the wheels down and shift more; what may be relied on is the worse of the two.
 */
import { pick } from '../../base/spread.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type Body, bodyOf } from './body.ts';
import type { Ground } from './margins.ts';
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

/** All people of a vehicle leaning together, at a place of the train's head and a speed. */
export interface Together {
  readonly at: number;
  readonly speed: number;
  /** m of their centres of gravity that tip the vehicle. */
  readonly lean: number;
}

/** Where they need lean least to tip it, standing anywhere or at running speed; none without riders. */
export function leastTogether(
  people: readonly People[],
  { curvature, cant }: Ground,
  grid: Float64Array,
  running: Float64Array,
): Together | undefined {
  const [heavy] = people;
  if (!heavy || heavy.masses.length === 0) return undefined;
  const bears = (j: number, speed: number): number =>
    momentToLift(heavy.body, { curvature: curvature[j], cant: cant[j] }, speed, true, heavy.wind);
  let worst = { j: 0, speed: 0, moment: bears(0, 0) };
  for (let j = 0; j < grid.length; j++) {
    // Straight and level all speeds are one, and so is every such place.
    if (curvature[j] === 0 && cant[j] === 0 && j > 0) continue;
    for (const speed of [0, running[j]]) {
      const moment = bears(j, speed);
      if (moment < worst.moment) worst = { j, speed, moment };
    }
  }
  const { j, speed } = worst;
  const lean = carefulLeans(people, { curvature: curvature[j], cant: cant[j] }, speed, true).all ?? Infinity;
  return { at: grid[j], speed, lean };
}

/** The people who tip it first by leaning together, or who lift a wheel first where one of them leans. */
export function worsePeople(
  people: readonly People[],
  under: Under,
  speed: number,
  who: 'one leans' | 'all lean',
): People {
  const bears = (p: People): number => {
    const { one, all } = carefulLeans([p], under, speed, who === 'all lean');
    return (who === 'all lean' ? all : one) ?? Infinity;
  };
  return people.reduce((a, b) => (bears(b) < bears(a) ? b : a));
}
