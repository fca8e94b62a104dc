/**
 * People who lean: in every draw the people who load the car are those who lean on it. Heavy people press the wheels
 * down and shift more. What they may lean is told so that one draw in a hundred bears less.
 */

import { GRAVITY } from '../../base/constants.ts';
import { type BodyDraws, careful, DRAWS, drawBeyond, lossesOf, type People, peopleIn } from './draws.ts';
import type { Ground } from './margins.ts';
import { type Leans, momentToLift, speedOutward, type Under } from './tipping.ts';

/** Of each draw: moments to spare before the first wheel lifts (or, `whole`, the vehicle goes over), kg·m. */
function momentsToLift(
  drawn: BodyDraws,
  under: Under,
  speed: number,
  whole: boolean,
  gale: number,
): Float64Array {
  const { base, rollShare, mass, Z, Y, amplification, groupMass } = drawn;
  const felt = (speed * speed * under.curvature) / GRAVITY;
  const side = Math.sin(under.cant) - felt * Math.cos(under.cant);
  const normal = Math.cos(under.cant) + felt * Math.sin(under.cant);
  const moments = new Float64Array(DRAWS);
  for (let i = 0; i < DRAWS; i++) {
    let bears = whole ? mass[i] / 2 : Infinity;
    for (let g = 0; g < rollShare.length && !whole; g++)
      bears = Math.min(bears, groupMass[g][i] / 2 / rollShare[g]);
    const used = Math.abs(Z[i] * side + Y[i] * normal) + gale;
    moments[i] = (bears * normal * base) / amplification[i] / normal - used / normal;
  }
  return moments;
}

type Who = keyof Leans;

const needs: Readonly<Record<Who, number>> = { one: 1, two: 2, all: 1 };

/** Minus the lean of each draw, m: the greater the worse. */
function shortOf(drawn: BodyDraws, moments: Float64Array, who: Who): Float64Array {
  const masses = drawn.people[who];
  return moments.map((moment, i) => -moment / masses[i]);
}

/** Leans that lift the first wheel or, `whole`, tip the vehicle, m. @param calm leave the wind out */
export function carefulLeans(
  drawn: BodyDraws,
  under: Under,
  speed: number,
  whole = false,
  calm = false,
): Leans {
  const moments = momentsToLift(drawn, under, speed, whole, calm ? 0 : drawn.gale);
  const least = (who: Who): Leans =>
    drawn.riders.length < needs[who] ? {} : { [who]: -careful(shortOf(drawn, moments, who)) };
  return { ...least('one'), ...least('two'), ...least('all') };
}

/** The draw whose lean is the one told. */
export function peopleTold(drawn: BodyDraws, under: Under, speed: number, who: 'one' | 'all'): People {
  const moments = momentsToLift(drawn, under, speed, who === 'all', drawn.gale);
  return peopleIn(drawn, drawBeyond(shortOf(drawn, moments, who)));
}

/** Share of the load standing level that the lighter wheels keep at rest, of each draw, negative: the greater the worse. */
function lostAtRest(drawn: BodyDraws, { cant }: Under): Float64Array {
  const { gale, Z } = drawn;
  const [left, right] = [lossesOf(drawn, 1, false), lossesOf(drawn, -1, false)];
  const [side, normal] = [Math.sin(cant), Math.cos(cant)];
  return left.map((loss, i) => {
    const wind = gale / Z[i];
    return Math.max(lossTo(loss, side + wind), lossTo(right[i], wind - side)) - normal;
  });
}

/** All of it where it does not even stand level. */
const lossTo = (loss: number, side: number): number => (loss === Infinity ? 1 : side > 0 ? loss * side : 0);

/** What of it is told. */
export const shareAtRest = (drawn: BodyDraws, under: Under): number => -careful(lostAtRest(drawn, under));

/** The draw that keeps it. */
export const restTold = (drawn: BodyDraws, under: Under): People =>
  peopleIn(drawn, drawBeyond(lostAtRest(drawn, under)));

/** Speed at which a wheel lifts when the heaviest rider leans outward by y, m/s. */
export function carefulSpeedWhileLeaning(drawn: BodyDraws, lean: number, { curvature, cant }: Under): number {
  const [sign, helps] = curvature >= 0 ? ([-1, cant] as const) : ([1, -cant] as const);
  const { gale, Z } = drawn;
  const slow = lossesOf(drawn, sign, false, lean);
  for (let i = 0; i < DRAWS; i++)
    slow[i] = -speedOutward(slow[i], Math.abs(curvature), helps, 0, gale / Z[i]);
  return -careful(slow);
}

/** All people of a vehicle leaning together, at a place of the train's head and a speed. */
export interface Together {
  readonly at: number;
  readonly speed: number;
  /** m of their centres of gravity that tip the vehicle. */
  readonly lean: number;
}

/** Where they need lean least to tip it, standing anywhere or at running speed; none without riders. */
export function leastTogether(
  drawn: BodyDraws,
  { body, wind }: Pick<People, 'body' | 'wind'>,
  { curvature, cant }: Ground,
  grid: Float64Array,
  running: Float64Array,
): Together | undefined {
  if (drawn.riders.length === 0) return undefined;
  const bears = (j: number, speed: number): number =>
    momentToLift(body, { curvature: curvature[j], cant: cant[j] }, speed, true, wind);
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
  const lean = carefulLeans(drawn, { curvature: curvature[j], cant: cant[j] }, speed, true).all ?? Infinity;
  return { at: grid[j], speed, lean };
}
