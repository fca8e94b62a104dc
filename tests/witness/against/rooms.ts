/**
 * Does the train stop in its room? At chosen places of an outing's speed map the witness deals hands and
 * follows each stop: from the permitted speed within the room less the margin, from the running speed within
 * the room itself and within the gap that was told.
 */

import type { Outing } from '../../../engine/outing/types.ts';
import type { SpeedMap } from '../../../engine/questions/speed/types.ts';
import { chance, type Triangle } from '../chance.ts';
import { groundOf, meanGrade } from '../ground.ts';
import { dealer, type Hand, hand, tableOf } from '../hand.ts';
import { ceilingAt, eyesOf, roomAt, roomOf } from '../room.ts';
import { type Asked, nothingTold, stop, type Way, wayAhead } from '../stop.ts';
import { answering, type Car, G } from '../train.ts';
import type { Word } from './engine.ts';
import { MOST_HANDS, oddsOf } from './odds.ts';

/** Enough to see a brake that does not hold the fall. */
const FEW = 20;
/** A driver to whom nobody has stated a sight sees so far, m (100 ft; common practice, no source). */
export const SIGHT_UNSTATED = 30.48;
/** A stop in which the speed still rises by so much when every brake is full on is none, m/s. */
const RISES = 0.05;
/** Step of the many hands, s, but in the full tier: apart from the fine step by less than 0.1 % of the way. */
const QUICK_STEP = 0.01;

export interface Overrun {
  readonly at: number;
  readonly speed: number;
  /** m */
  readonly room: number;
  /** Of the hands. */
  readonly share: number;
  readonly of: 'limit' | 'room' | 'gap' | 'unstated' | 'speeds up';
}

export interface RoomsAnswer {
  readonly places: number;
  readonly overruns: readonly Overrun[];
  /** Grid points at which the permitted speed is above a ceiling of the witness's. */
  readonly aboveCeiling: readonly number[];
}

export interface Hands {
  readonly step?: number;
  /** Dealt at one place at most. */
  readonly most?: number;
  readonly triangle?: Triangle;
}

/** Kept to whatever the train must stop short of, m. */
export const marginOf = (outing: Outing): number =>
  outing.host.stopMargin?.value ?? outing.assumed.stopMargin;

export function checkRooms(seed: number, { outing, answer }: Word, hands: Hands = {}): RoomsAnswer {
  const map = answer.speeds as SpeedMap;
  const ground = groundOf(outing);
  const table = tableOf(outing, answering(outing));
  const uniform = chance(seed + 1);
  const deal = dealer(uniform, hands.triangle ?? 'halves');
  const dealt: Hand[] = [];
  const nth = (i: number): Hand => (dealt[i] ??= hand(table, deal()));
  const length = table.cars.reduce((sum, c) => sum + c.vehicle.length, 0);
  const room = roomOf(ground, outing, length);
  const margin = marginOf(outing);
  const planned = outing.plannedSpeed ?? Infinity;
  const rooms = Array.from(map.at, (x) => roomAt(room, x, map.step * 1.01));
  const aboveCeiling = [...map.at.keys()].filter((j) => map.limit[j] > ceilingAt(room, map.at[j]) + 1e-9);
  const places = placesIn(map, rooms, ground.line.loop, (x) => grade(table.cars, x), uniform);
  const overruns: Overrun[] = [];
  const told = nothingTold();
  const most = hands.most ?? MOST_HANDS;
  const asked: Asked = { step: hands.step ?? QUICK_STEP };
  for (const j of places) {
    const at = map.at[j];
    const way = wayAhead(ground, table.cars, at);
    const permitted = map.limit[j];
    const running = Math.min(permitted, planned);
    const look = (speed: number, within: number, of: Overrun['of']): void => {
      if (within === Infinity || speed <= 0) return;
      const { share, tooMany } = oddsOf(most, (i) => {
        stop(way, nth(i), speed, told, { ...asked, enough: within });
        return told.distance === Number.POSITIVE_INFINITY;
      });
      if (tooMany) overruns.push({ at, speed, room: within, share, of });
    };
    look(permitted, rooms[j] - margin, 'limit');
    if (overruns.at(-1)?.at === at || running < permitted) look(running, rooms[j], 'room');
    look(running, map.gap[j] - margin, 'gap');
    if (rooms[j] === Infinity && outing.host.leastGap === undefined && outing.line.sights.length === 0)
      look(running, SIGHT_UNSTATED - eyesOf(outing), 'unstated');
    const rising = speedsUp(way, nth, running, asked);
    if (rising > 0) overruns.push({ at, speed: running, room: rooms[j], share: rising, of: 'speeds up' });
  }
  return { places: places.length, overruns, aboveCeiling };

  function grade(cars: readonly Car[], x: number): number {
    let force = 0;
    const { mass } = nth(0);
    cars.forEach(({ front, vehicle }, i) => {
      force += mass[i] * G * meanGrade(ground, x - front - vehicle.length, x - front);
    });
    return force;
  }
}

/** The two tightest, where each signal comes in sight, the steepest fall under the train, and one by chance. */
function placesIn(
  map: SpeedMap,
  rooms: readonly number[],
  loop: boolean,
  grade: (x: number) => number,
  uniform: () => number,
): number[] {
  const moving = [...map.at.keys()].filter((j) => map.limit[j] > 0 && (loop || j < map.at.length - 1));
  if (moving.length === 0) return [];
  const tight = (j: number): number => map.cautiousStop[j] / rooms[j];
  const byRoom = [...moving].sort((a, b) => tight(b) - tight(a));
  const far = byRoom.find((j) => Math.abs(j - byRoom[0]) > 20);
  const byGap = moving.reduce((a, b) => (map.cautiousStop[b] > map.cautiousStop[a] ? b : a));
  const pulls = new Map(moving.filter((j) => j % 4 === 0).map((j) => [j, grade(map.at[j])]));
  const steep = [...pulls].reduce((a, b) => (b[1] < a[1] ? b : a), [moving[0], Infinity])[0];
  const any = moving[Math.floor(uniform() * moving.length)];
  return [...new Set([byRoom[0], ...(far === undefined ? [] : [far]), byGap, steep, any])];
}

/** Share of hands in which the speed still rises after the driver has acted. */
function speedsUp(way: Way, nth: (i: number) => Hand, speed: number, asked: Asked): number {
  const told = nothingTold();
  let rising = 0;
  const hands = FEW;
  for (let i = 0; i < hands; i++) {
    stop(way, nth(i), speed, told, asked);
    if (told.gained > RISES) rising++;
  }
  return rising / hands;
}
