/**
 * What the witness allows itself: the room to stop in at a place, and the ceilings of speed that need no stop.
 * Running places and directions; see ground.ts.
 */

import type { Outing } from '../../engine/outing/types.ts';
import type { Place } from '../../engine/things/line/types.ts';
import { covers, type Ground, running, runningStretch } from './ground.ts';

/** Where a stop may be asked for as soon as it comes in sight. */
const asks: ReadonlySet<Place['kind']> = new Set(['signal', 'crossing', 'switch']);

export interface Room {
  readonly ground: Ground;
  readonly stretches: readonly { from: number; to: number; distance: number }[];
  /** Where each signal, crossing or switch comes in sight, and how far ahead it then is, m. */
  readonly seen: readonly { at: number; distance: number }[];
  /** How far is seen anywhere today, m ahead of the train; Infinity: as far as the line lets one see. */
  readonly today: number;
  readonly ceilings: readonly { from: number; to: number; speed: number; everywhere: boolean }[];
}

/** How far behind the train's head the foremost named driver sits, m; nobody named: not witnessed, 0. */
export function eyesOf({ train, riders }: Outing): number {
  let front = 0;
  for (const v of train.vehicles) {
    const at = riders
      .filter((r) => r.duty === 'driver' && r.vehicle === v.id)
      .flatMap((r) => v.seats.filter((s) => s.id === r.seat).map((s) => s.at));
    if (at.length > 0) return front + Math.min(...at);
    front += v.length;
  }
  return 0;
}

export function roomOf(ground: Ground, outing: Outing, trainLength: number): Room {
  const { line, reverse } = ground;
  const eyes = eyesOf(outing);
  const against = reverse ? 'forward' : 'reverse';
  const stretches = line.sights
    .filter((s) => s.direction !== against)
    .map((s) => ({ ...runningStretch(ground, s), distance: s.distance - eyes }));
  const seen = line.places.flatMap((p) => {
    const sight = reverse ? p.sightReverse : p.sight;
    if (!asks.has(p.kind) || sight === undefined) return [];
    const near = running(ground, reverse ? (p.to ?? p.at) : p.at);
    const left = sight - eyes;
    const at = near - left;
    return [{ at: line.loop ? ((at % line.length) + line.length) % line.length : at, distance: left }];
  });
  // A limit holds until the last vehicle has left it.
  const held = [...line.speedLimits, ...outing.extraLimits].map((limit) => {
    const { from, to } = runningStretch(ground, limit);
    const span = (to < from ? to + line.length : to) - from + trainLength;
    const end = from + span;
    return {
      from,
      to: line.loop && end > line.length ? end - line.length : end,
      speed: limit.speed,
      everywhere: line.loop && span >= line.length,
    };
  });
  const all = (speed: number) => ({ from: 0, to: 0, speed, everywhere: true });
  const ceilings = [
    ...held,
    ...(outing.host.speed ? [all(outing.host.speed.value)] : []),
    ...outing.train.vehicles.flatMap((v) => (v.ratings.speed === undefined ? [] : [all(v.ratings.speed)])),
  ];
  const today = outing.conditions.visibility === undefined ? Infinity : outing.conditions.visibility - eyes;
  return { ground, stretches, seen, today, ceilings };
}

/** Ceiling of speed at a place, m/s; Infinity where nothing is known. */
export const ceilingAt = ({ ground, ceilings }: Room, x: number): number =>
  ceilings.reduce(
    (least, c) => (c.everywhere || covers(ground, c.from, c.to, x) ? Math.min(least, c.speed) : least),
    Infinity,
  );

/** Room to stop in at a place, m; Infinity where nothing is known to be ahead. @param near m around where a signal is first seen */
export function roomAt({ ground, stretches, seen, today }: Room, x: number, near: number): number {
  const { line } = ground;
  let room = line.loop ? today : Math.min(today, line.length - x);
  for (const s of stretches) if (covers(ground, s.from, s.to, x)) room = Math.min(room, s.distance);
  for (const s of seen) {
    if (Math.abs(x - s.at) <= near) room = Math.min(room, s.distance, s.distance - (x - s.at));
  }
  return room;
}
