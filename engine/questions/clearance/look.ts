/** Every vehicle of a train against everything that stands beside or over its line: what room is left, and where least. */
import type { Quantity } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Side } from '../../things/clearance/swept.ts';
import { heightAt, onLine } from '../../things/line/geometry.ts';
import type { Line, Structure } from '../../things/line/types.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import {
  type Body,
  bodiesOf,
  leanToward,
  type Most,
  reachedAlong,
  reachesAt,
  reachWith,
  STEP,
  type Way,
  wayFor,
} from './bodies.ts';
import type { Level } from './sway.ts';

/** A look that is finer than this finds nothing that could be measured, m; each is so many times finer than the one before. */
const CLOSE = 0.002;
/** Less than this is the same, m. */
const LEVEL = 1e-7;
const CUTS = 8;

/** Room beside or over a vehicle at a structure, at the least; m, below nothing where they touch. */
export interface Room {
  /** What the vehicle takes, lean and play in it, and what the structure leaves, m. */
  readonly takes: number;
  readonly leaves: number;
  readonly left: number;
  readonly at: number;
  /** Of what it takes, by sway on springs, m; absent: nobody measured them, or it is overhead. */
  readonly sway?: number;
}

/** A figure with the play or the people at their least, likely and most. */
export interface Spread {
  readonly low: Room;
  readonly likely: Room;
  readonly high: Room;
}

export interface Passing {
  readonly structure: Structure;
  readonly vehicle: string;
  readonly name: string;
  readonly side: Side | 'over';
  /** Of the vehicle with its people; null: its heights do not meet, or it is open above. */
  readonly body: Spread | null;
  /** Of its people, where they stand out above it: heads under a roof, shoulders as wide as it is beside. */
  readonly people: Spread | null;
  /** How far it stands out of its own straight half width there, m: throw, lean and play. */
  readonly beyond: number;
}

export interface Clearances {
  readonly passings: readonly Passing[];
  /** Vehicles of which nobody measured the width and height. */
  readonly unmeasured: readonly LoadedVehicle[];
  /** A frame longer than the curve under it lets stand, with the place. */
  readonly tooLong: { readonly vehicle: LoadedVehicle; readonly at: number } | null;
}

export function lookAtClearance(context: OutingContext): Clearances {
  const { line, loaded } = context;
  const { structures = [] } = line;
  if (structures.length === 0) return { passings: [], unmeasured: [], tooLong: null };
  const unmeasured = loaded.vehicles.filter((v) => !v.vehicle.envelope);
  const bodies = bodiesOf(context);
  const way = wayFor(line, bodies);
  const passings: Passing[] = [];
  // Cars alike, their people in it, pass alike.
  const known = new Map<string, readonly Found[]>();
  for (const body of bodies) {
    const key = JSON.stringify([body.kind, body.play, body.top, body.people]);
    const all = known.get(key) ?? structures.map((structure) => pass(way, body, structure));
    known.set(key, all);
    for (const found of all) {
      if ('stands' in found) return { passings: [], unmeasured, tooLong: { vehicle: body.of, at: found.at } };
      const { id, name } = body.of.vehicle;
      passings.push(...found.passings.map((p) => ({ ...p, vehicle: id, name })));
    }
  }
  return { passings, unmeasured, tooLong: null };
}

type Found = { readonly passings: readonly Passing[] } | { readonly stands: false; readonly at: number };

function pass(way: Way, body: Body, structure: Structure): Found {
  const passings: Passing[] = [];
  const sides = structure.side === 'both' ? (['left', 'right'] as const) : [structure.side];
  const { distance } = structure;
  for (const side of distance === undefined ? [] : sides) {
    const beside = besides(way, body, structure, side, distance as number);
    if (typeof beside === 'number') return { stands: false, at: onLine(way.line, beside) };
    if (beside) passings.push(beside);
  }
  const over = overs(way, body, structure);
  return { passings: over ? [...passings, over] : passings };
}

const passing = (
  { of }: Body,
  structure: Structure,
  side: Passing['side'],
  rest: Pick<Passing, 'body' | 'people' | 'beyond'>,
): Passing => ({ structure, side, vehicle: of.vehicle.id, name: of.vehicle.name, ...rest });

/** Whether what stands from … to meets what reaches from … to, each a height. */
const meets = (low: number, high: number, { bottom, top = Infinity }: Structure): boolean =>
  low < top && high > bottom;

function besides(
  way: Way,
  body: Body,
  structure: Structure,
  side: Side,
  distance: number,
): Passing | null | number {
  const { underside, top, people, half } = body;
  const meeting = (high: number): boolean => meets(underside, high, structure);
  const trunk = meeting(top);
  if (!trunk && !(people && meeting(people.heads.high))) return null;
  const roomWith = (level: Level, height: number): Room | number => {
    const most = mostBeside(way, body, structure, side, level, height);
    if (typeof most === 'number') return most;
    return {
      takes: most.value,
      leaves: distance,
      left: distance - most.value,
      at: onLine(way.line, most.at),
      ...(most.sway === undefined ? {} : { sway: most.sway }),
    };
  };
  const spreadTo = ({ low: l, value: v, high: h }: Levels): Spread | number => {
    const rooms = [roomWith('low', l), roomWith('value', v), roomWith('high', h)];
    const fault = rooms.find((r) => typeof r === 'number');
    if (typeof fault === 'number') return fault;
    const [low, likely, high] = rooms as Room[];
    return { low, likely, high };
  };
  const trunks = trunk ? spreadTo(level(top)) : null;
  if (typeof trunks === 'number') return trunks;
  const theirs = people ? spreadOfPeople(people) : null;
  if (typeof theirs === 'number') return theirs;
  const of = trunks ?? theirs;
  return (
    of && passing(body, structure, side, { body: trunks, people: theirs, beyond: of.likely.takes - half })
  );

  function spreadOfPeople({ heads, shoulders }: NonNullable<Body['people']>): Spread | number | null {
    if (trunk) {
      const { high } = shoulders;
      // Canted track leans their shoulders farther than what they sit on.
      return high > top && (structure.top ?? Infinity) > top ? spreadTo(atLeast(top, shoulders)) : null;
    }
    const of = spreadTo(level(heads.high));
    if (typeof of === 'number') return of;
    // Surely, likely, or only the highest.
    const met = (height: number, room: Room): Room => (meeting(height) ? room : { ...room, left: Infinity });
    return { low: met(heads.low, of.low), likely: met(heads.value, of.likely), high: of.high };
  }
}

type Levels = Pick<Quantity, 'low' | 'value' | 'high'>;

const level = (height: number): Levels => ({ low: height, value: height, high: height });

const atLeast = (least: number, { low, value, high }: Levels): Levels => ({
  low: Math.max(least, low),
  value: Math.max(least, value),
  high: Math.max(least, high),
});

/** The same of cars alike. */
function mostBeside(
  way: Way,
  body: Body,
  structure: Structure,
  side: Side,
  level: Level,
  height: number,
): Most | number {
  const key = JSON.stringify([body.kind, structure.id, side, level, body.play[level], height]);
  const found = way.mosts.get(key) ?? mostSought(way, body, structure, side, level, height);
  way.mosts.set(key, found);
  return found;
}

/** Farthest to a side along a structure, lean in it; a number: the chainage where the frame cannot stand. */
function mostSought(
  way: Way,
  body: Body,
  { from, to, bottom, top = Infinity }: Structure,
  side: Side,
  level: Level,
  height: number,
): Most | number {
  const { line } = way;
  const play = body.play[level];
  const end = to < from ? to + line.length : to;
  const between = { low: Math.max(body.underside, bottom), high: Math.min(height, top) };
  const swayAt = (s: number): number => body.sway?.(side, onLine(line, s), level) ?? 0;
  const leanAt = (s: number): number => leanToward(line, side, s, between, swayAt(s));
  const reached = reachedAlong(way, body, from, end, side, play);
  if (typeof reached === 'number') return reached;
  const whole = reached.map(({ at, reach, by }) => ({ at, value: reach + leanAt(at), by }));
  const best = whole.reduce((a, b) => (b.value > a.value ? b : a));
  let most = best;
  const beside = whole.filter(({ at }) => Math.abs(at - best.at) < 1.5 * STEP);
  const even = beside.every(({ value }) => best.value - value < LEVEL);
  // Nearer and nearer about the most of the coarser look, where it is not the same all round it.
  for (let step = STEP; step > CLOSE && end > from && !even; step /= CUTS) {
    const places = Array.from({ length: 2 * CUTS + 1 }, (_, i) => most.at + (step * (i - CUTS)) / CUTS);
    const near = reachesAt(
      way,
      body,
      places.filter((s) => s >= from && s <= end),
      side,
      play,
    );
    if (typeof near === 'number') return near;
    for (const { at, reach, by } of near) {
      const value = reach + leanAt(at);
      if (value > most.value) most = { at, value, by };
    }
  }
  // Sought once more by itself, to the last digit.
  const reach = reachWith(way, body, most.at, side, play, most.by);
  if (reach === undefined) return most.at;
  const lean = leanAt(most.at);
  const sway = body.sway ? { sway: lean - leanToward(line, side, most.at, between) } : {};
  return { at: most.at, value: reach + lean, ...sway };
}

function overs({ line }: Way, body: Body, structure: Structure): Passing | null {
  const { headroom } = structure;
  if (headroom === undefined) return null;
  const [low, likely, high] = (['low', 'value', 'high'] as const).map((level) => {
    const up = mostRise(line, body, structure, level);
    return (height: number): Room => ({
      takes: height + up.value,
      leaves: headroom,
      left: headroom - height - up.value,
      at: onLine(line, up.at),
    });
  });
  const { people, top } = body;
  const heads = people?.heads;
  return passing(body, structure, 'over', {
    body: { low: low(top), likely: likely(top), high: high(top) },
    people:
      heads && heads.high > top
        ? { low: low(heads.low), likely: likely(heads.value), high: high(heads.high) }
        : null,
    beyond: likely(top).takes - top,
  });
}

/** Between the places of a frame under a roof, m. */
const FINE = 0.05;

/**
 * How much higher a frame stands over the rail under a roof than on even track, where most: over a sag its middle, over a
 * crest its ends; and its higher edge on canted track, rolled on its springs.
 */
function mostRise(line: Line, body: Body, { from, to }: Structure, level: Level): Most {
  const { shape, half } = body;
  const end = to < from ? to + line.length : to;
  const steps = Math.max(1, Math.ceil((end - from) / FINE));
  const { guides, box } = shape;
  const count = Math.max(1, Math.ceil((box.front - box.rear) / FINE));
  // At a height of one, the angle itself.
  const leansTo = (side: Side, s: number): number =>
    leanToward(line, side, s, { low: 1, high: 1 }, body.sway?.(side, onLine(line, s), level));
  let most = { at: from, value: -Infinity };
  for (let i = 0; i <= steps; i++) {
    const s = from + ((end - from) * i) / steps;
    const rail = heightAt(line, s);
    const edge = half * Math.max(leansTo('left', s), leansTo('right', s));
    for (let j = 0; j <= count; j++) {
      const x = box.rear + ((box.front - box.rear) * j) / count;
      const [rear, front] = [heightAt(line, s - x), heightAt(line, s - x + guides)];
      const frame = guides > 0 ? rear + ((front - rear) * x) / guides : rail;
      const value = frame - rail + edge;
      if (value > most.value) most = { at: s, value };
    }
  }
  return most;
}
