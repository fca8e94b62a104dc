/**
 * A log of a phone made into readings: one run of a coast-down, or one stop. Which seconds of it count, where the front stood at the
 * first of them and which way it ran is said beside it; how far its figures may be off goes into the record. Pure.
 */
import { GRAVITY } from '../../engine/base/constants.ts';
import { runningLine, type Sense } from '../../engine/calibrate/train.ts';
import { gradeUnder } from '../../engine/motion/prepare.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Log, LogRow } from '../../papers/import/log.ts';
import type { Json } from './apply.ts';
import { type Felt, levelOf, steady, tiltFrom } from './level.ts';

export interface LogAbout {
  /** Chainage of the head at `begin`, m. */
  readonly from: number;
  readonly way: Sense;
  /** s of the log: let go, or the brake put on (the signal given). A coast begins at its fastest, if nothing is said. */
  readonly begin?: number;
  /** s of the log; its last, if nothing is said. */
  readonly end?: number;
  /** What the phone felt on level track, laid both ways round: for a log of what it felt. */
  readonly level?: Felt;
  readonly turned?: Felt;
}

export type LogFault =
  | 'too-short'
  | 'no-begin'
  | 'not-at-rest'
  | 'no-level'
  | 'not-level'
  | 'upside-down'
  | 'weight-off'
  | 'not-slowing'
  | 'no-coast-by-feel';

export type FromLog = { readonly reading: Json; readonly instruments: Json } | { readonly fault: LogFault };

/** So far may figures of each sort be off; common practice, no source. */
const instruments: Readonly<Record<Log['of'], Json>> = {
  // A fix is 1.2 m off and drifts over 15 s: those 5 s apart go together (r = 0.7), so each counts as √((1 + r)/(1 − r)) times
  // as far off, and its bounds as √6 times that. The first is as far off as all others: a second at a walk.
  satellites: { place: '8 m', stopwatch: '1 s', speedometer: 0.03 },
  distance: {},
  // What is summed up of speeds is as far off as they are.
  speed: { speedometer: 0.07, tape: 0.07 },
  felt: { speed: '0.3 m/s', speedometer: 0.05, tape: 0.08 },
};

const metres = (m: number): string => `${m.toFixed(3)} m`;
const seconds = (s: number): string => `${s.toFixed(3)} s`;
const speedText = (v: number): string => `${v.toFixed(4)} m/s`;

/** Of a coast so many readings, none nearer to the next than so many s: nearer ones tell nothing more. */
const MOST = 40;
const NEAREST: Readonly<Record<Log['of'], number>> = { satellites: 5, distance: 1, speed: 1, felt: 1 };

export function coastFrom({ of, rows }: Log, { from, way, begin, end = Infinity }: LogAbout): FromLog {
  if (of === 'felt') return { fault: 'no-coast-by-feel' };
  const moving = withSpeeds(of, rows);
  const start = begin ?? fastest(moving);
  const own = moving.filter((r) => r.time >= start && r.time <= end);
  const rest = own.findIndex((r) => r.speed < AT_REST);
  const run = rest < 0 ? own : own.slice(0, rest);
  if (run.length < 3) return { fault: 'too-short' };
  const [first, ...passes] = thinned(run, NEAREST[of]);
  const at = (r: Moving): string => metres(from + (way === 'forward' ? 1 : -1) * (r.way - first.way));
  const bySpeed = of === 'speed';
  return {
    reading: {
      way,
      from: metres(from),
      ...(bySpeed ? { speed: speedText(first.speed) } : {}),
      passes: passes.map((r) => ({
        at: at(r),
        ...(bySpeed ? { speed: speedText(r.speed) } : { time: seconds(r.time - first.time) }),
      })),
    },
    instruments: instruments[of],
  };
}

export function stopFrom(log: Log, about: LogAbout): FromLog {
  const { from, way, begin, end = Infinity } = about;
  if (begin === undefined) return { fault: 'no-begin' };
  const felt = log.of === 'felt' ? feltStop(log.rows, about) : undefined;
  if (felt && 'fault' in felt) return felt;
  const moving = felt?.moving ?? withSpeeds(log.of, log.rows);
  const own = moving.filter((r) => r.time >= begin && r.time <= end);
  if (own.length < 3) return { fault: 'too-short' };
  const rest = own.find((r) => r.speed < AT_REST);
  if (!rest) return { fault: 'not-at-rest' };
  const speed = at(moving, begin).speed;
  if (!(speed > AT_REST)) return { fault: 'too-short' };
  const length = restOf(own, rest).way - at(moving, begin).way;
  return {
    reading: {
      way,
      from: metres(from),
      speed: speedText(speed),
      restAt: metres(from + (way === 'forward' ? length : -length)),
      // Of satellites the moment of rest is lost in their wandering.
      ...(log.of === 'satellites' ? {} : { time: seconds(rest.time - begin) }),
    },
    instruments: instruments[log.of],
  };
}

interface Moving {
  readonly time: number;
  readonly way: number;
  readonly speed: number;
}

/** Slower than this it stands, m/s. */
const AT_REST = 0.1;
/** A speed is that over so many s to each side, by satellites and by a measured way. */
const ASIDE: Readonly<Record<'satellites' | 'distance', number>> = { satellites: 3, distance: 0.6 };

/** What the log lacks of speed and way from what it has: ∫ v dt, or Δs/Δt about each moment. */
function withSpeeds(of: Log['of'], rows: readonly LogRow[]): Moving[] {
  if (of === 'speed') {
    let way = 0;
    return rows.map(({ time, speed = 0 }, i) => {
      const before = rows[i - 1];
      if (before) way += ((speed + (before.speed ?? 0)) / 2) * (time - before.time);
      return { time, speed, way };
    });
  }
  const aside = ASIDE[of as 'satellites' | 'distance'];
  const rising = (rows[rows.length - 1].way ?? 0) >= (rows[0].way ?? 0) ? 1 : -1;
  const ways = rows.map(({ way = 0 }) => rising * way);
  let [a, b] = [0, 0];
  return rows.map(({ time }, i) => {
    while (rows[a].time < time - aside) a++;
    while (b + 1 < rows.length && rows[b + 1].time <= time + aside) b++;
    const [back, on] = a === b ? [Math.max(0, i - 1), Math.min(rows.length - 1, i + 1)] : [a, b];
    return { time, way: ways[i], speed: (ways[on] - ways[back]) / (rows[on].time - rows[back].time) };
  });
}

const fastest = (rows: readonly Moving[]): number =>
  rows.reduce((best, r) => (r.speed > best.speed ? r : best)).time;

/** Between two rows evenly. */
function at(rows: readonly Moving[], time: number): Moving {
  const i = rows.findIndex((r) => r.time >= time);
  if (i <= 0) return rows[Math.max(i, 0)];
  const [a, b] = [rows[i - 1], rows[i]];
  const share = (time - a.time) / (b.time - a.time);
  const mix = (x: number, y: number): number => x + share * (y - x);
  return { time, way: mix(a.way, b.way), speed: mix(a.speed, b.speed) };
}

/** Where it stood: the mean of what the log says of it standing. */
function restOf(own: readonly Moving[], rest: Moving): Pick<Moving, 'way'> {
  const stood = own.slice(own.indexOf(rest));
  return { way: stood.reduce((sum, r) => sum + r.way, 0) / stood.length };
}

function thinned(rows: readonly Moving[], nearest: number): readonly Moving[] {
  const apart = Math.max(nearest, (rows[rows.length - 1].time - rows[0].time) / MOST);
  const kept: Moving[] = [];
  for (const row of rows) {
    const last = kept[kept.length - 1];
    if (!last || (row.time - last.time >= apart && row.way > last.way)) kept.push(row);
  }
  return kept;
}

// ---- what a phone felt

/** The phone lay as it lay where it was set level, by no more than this, rad: a car on a line. */
const FARTHEST = 0.35;
/** Mean over so many s to each side: rails and wheels shake it. */
const SHAKES = 0.2;
/** At the end of the log it stands for so long, s. */
const STANDS = 1;
/** Under this share of the mean deceleration it no longer slows. */
const LITTLE = 0.2;

/**
 * The phone as a decelerometer: what it feels along the track beyond what it feels standing after the stop, from rest back.
 *
 *   v(t) = ∫ d dt from t to rest,   d: toward where it feels the stop, m/s²
 *
 * Level by both ways round says which way is down, whatever lies under it; what it feels standing takes out how the floor and
 * the rail fall there. So the rail must fall alike all the way of the stop: that is looked at by whoever knows the line.
 */
function feltStop(
  rows: readonly LogRow[],
  { begin = 0, end = Infinity, level, turned }: LogAbout,
): { readonly moving: readonly Moving[] } | { readonly fault: LogFault } {
  if (!level || !turned) return { fault: 'no-level' };
  const down = levelOf(level, turned);
  const own = rows.filter((r) => r.time <= end);
  const last = own[own.length - 1]?.time ?? 0;
  const standing = steady(own.filter((r) => r.time > last - STANDS).map((r) => r.felt as Felt));
  if (!standing) return { fault: 'not-at-rest' };
  const weights = own.filter((r) => r.time > last - STANDS).map((r) => Math.hypot(...(r.felt as Felt)));
  const weight = weights.reduce((sum, w) => sum + w, 0) / weights.length;
  if (Math.abs(weight / GRAVITY - 1) > 0.05) return { fault: 'weight-off' };
  const tilt = tiltFrom(down, standing);
  if (tilt === undefined) return { fault: 'upside-down' };
  if (tilt > FARTHEST) return { fault: 'not-level' };
  const across = own.map((r) => flat(r.felt as Felt, down));
  const zero = mean(across.filter((_, i) => own[i].time > last - STANDS));
  const during = across.filter((_, i) => own[i].time >= begin && own[i].time <= last - STANDS);
  if (during.length < 3) return { fault: 'too-short' };
  const push = less(mean(during), zero);
  const size = Math.hypot(...push);
  if (!(size > 0.05)) return { fault: 'not-slowing' };
  const toward: Felt = [push[0] / size, push[1] / size, push[2] / size];
  const plain = across.map((f) => dot(less(f, zero), toward));
  const slows = smoothed(own, plain);
  let rest = slows.length - 1;
  while (rest > 0 && slows[rest] < LITTLE * size) rest--;
  const moving: Moving[] = own.map(({ time }) => ({ time, way: 0, speed: 0 }));
  for (let i = rest - 1; i >= 0; i--) {
    const [h, d] = [own[i + 1].time - own[i].time, (plain[i] + plain[i + 1]) / 2];
    const { speed, way } = moving[i + 1];
    moving[i] = { time: own[i].time, speed: speed + d * h, way: way - (speed + (d * h) / 2) * h };
  }
  return { moving };
}

/** What of it lies across the vertical, m/s². */
function flat(felt: Felt, down: Felt): Felt {
  const along = dot(felt, down);
  return [felt[0] - along * down[0], felt[1] - along * down[1], felt[2] - along * down[2]];
}

const dot = (a: Felt, b: Felt): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const less = (a: Felt, b: Felt): Felt => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const mean = (of: readonly Felt[]): Felt =>
  [0, 1, 2].map((k) => of.reduce((sum, f) => sum + f[k], 0) / of.length) as unknown as Felt;

function smoothed(rows: readonly LogRow[], plain: readonly number[]): number[] {
  let [a, b] = [0, 0];
  return rows.map(({ time }) => {
    while (rows[a].time < time - SHAKES) a++;
    while (b + 1 < rows.length && rows[b + 1].time <= time + SHAKES) b++;
    return plain.slice(a, b + 1).reduce((sum, d) => sum + d, 0) / (b + 1 - a);
  });
}

/** The mean of a log of a phone that lay still; undefined: it did not, or is no such log. */
export const stillOf = ({ of, rows }: Log): Felt | undefined =>
  of === 'felt' ? steady(rows.map((r) => r.felt as Felt)) : undefined;

/** Steeper on one side of a stop than on the other by more than this, and what the phone felt is no stop alone. */
const EVEN = 0.003;

/** Change of the grade under the train from where the stop began to where it ended, where it is more than that. */
export function gradeChange(outing: Outing, { way, from, restAt }: StopReading): number | undefined {
  const { loaded, outing: own } = openOuting(outing);
  const { line, at: running } = runningLine(own.line, way);
  const [before, after] = [from, restAt].map((s) => gradeUnder(line, loaded, running(s)));
  return Math.abs(after - before) > EVEN ? after - before : undefined;
}

interface StopReading {
  readonly way: Sense;
  readonly from: number;
  readonly restAt: number;
}

/** Into the record: one run or one stop more, and what the log's figures may be off. */
export function withReading(
  record: Json,
  { reading, instruments: off }: Extract<FromLog, { reading: Json }>,
): Json {
  const test = record['test'] as Json;
  const list = test['kind'] === 'stop-test' ? 'stops' : 'runs';
  return {
    ...record,
    instruments: { ...off, ...(record['instruments'] as Json | undefined) },
    test: { ...test, [list]: [...((test[list] as readonly unknown[] | undefined) ?? []), reading] },
  };
}
