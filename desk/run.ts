/**
 * The run: the train driven round once as it is told to be, in the zones and from the braking points of the answer.
 * Pieces of even acceleration, so that where it is at a time is a plain sum, forward and back.
 *
 * From each braking point, after the driver's reaction, just so hard that it slows at its place: never harder than the
 * cautious brake, for which the point was reckoned. It pulls away gently; no figure of an answer is taken from here.
 */
import { senseOf, turnOf } from '../engine/answer/chainage.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { BrakingPoint, Driven } from '../engine/questions/speed/types.ts';

/** m/s²; common practice, no source. */
export const PULLING_AWAY = 0.15;
/** At a booked stop, s; common practice, no source. */
export const STANDING = 10;
/** A run is over by then, s: nobody drives a lap for two hours. */
const LONGEST = 7200;

export interface Piece {
  /** s from the start; m along the way, in the running direction; m/s; m/s². */
  readonly time: number;
  readonly way: number;
  readonly speed: number;
  readonly gain: number;
  /** What is braked for, from the point where the driver acts. */
  readonly act?: BrakingPoint;
}

export interface TrainRun {
  readonly pieces: readonly Piece[];
  /** s */
  readonly lasts: number;
  /** Chainage of the line after so many metres. */
  readonly at: (way: number) => number;
}

export interface Frame {
  readonly at: number;
  readonly way: number;
  readonly speed: number;
  /** Brake now, for this. */
  readonly act: BrakingPoint | undefined;
}

/** A braking point as far along the way as it lies, m. */
interface Ahead {
  readonly act: BrakingPoint;
  readonly from: number;
  readonly to: number;
}

/** @param start chainage of the head as the run begins */
export function trainRun(outing: Outing, driven: Driven, start: number): TrainRun {
  const { line } = outing;
  const sense = senseOf(outing);
  const turn = turnOf(outing);
  const round = (d: number): number => (line.loop ? ((d % line.length) + line.length) % line.length : d);
  const ahead = (s: number): number => round(turn(s) - turn(start));
  const whole = line.loop ? line.length : line.length - turn(start);
  const acts = driven.acts
    .map((act): Ahead => {
      const from = ahead(act.at);
      return { act, from, to: from + round(turn(act.target) - turn(act.at)) };
    })
    .filter(({ from, to }) => to > 0 && from < whole)
    .sort((a, b) => a.from - b.from);
  const zones = driven.zones
    .map((zone) => ({ speed: zone.speed, ends: ahead(zone.to) || whole }))
    .sort((a, b) => a.ends - b.ends);
  const plan = outing.plannedSpeed ?? Infinity;
  const speedAt = (way: number): number => {
    const zone = zones.find(({ ends }) => way < ends - 1e-9) ?? zones[0];
    return Math.min(plan, zone?.speed ?? 0);
  };
  const ends = acts.filter((a) => a.act.kind === 'stop' && !line.loop).map((a) => a.to);
  const goal = line.loop ? whole : Math.max(0, ...ends);
  const marks = [...zones.map((z) => z.ends), ...acts.flatMap((a) => [a.from, a.to]), goal].filter(
    (m) => m > 0,
  );
  const pieces = drive(acts, marks, speedAt, goal, outing.conditions.reaction.value);
  const at = (way: number): number => {
    const s = start + sense * way;
    return line.loop
      ? ((s % line.length) + line.length) % line.length
      : Math.min(line.length, Math.max(0, s));
  };
  return { pieces, lasts: pieces[pieces.length - 1].time, at };
}

function drive(
  acts: readonly Ahead[],
  marks: readonly number[],
  speedAt: (way: number) => number,
  goal: number,
  reaction: number,
): Piece[] {
  const pieces: Piece[] = [];
  const done = new Set<Ahead>();
  let [time, way, speed, heeded] = [0, 0, 0, -Infinity];
  const go = (gain: number, lasts: number, act?: BrakingPoint): void => {
    pieces.push({ time, way, speed, gain, ...(act ? { act } : {}) });
    way += (speed + (gain * lasts) / 2) * lasts;
    speed = Math.max(0, speed + gain * lasts);
    time += lasts;
  };
  while (way < goal - 1e-6 && time < LONGEST) {
    const active = acts.filter((a) => !done.has(a) && a.from <= way + 1e-9);
    for (const a of active) {
      if (a.to > way + 1e-6 && !(a.act.kind === 'slow' && speed <= a.act.toSpeed + 1e-9)) continue;
      done.add(a);
      if (a.act.kind !== 'stop' || a.to < way - 0.5) continue;
      speed = 0;
      go(0, STANDING);
    }
    const braking = active.filter((a) => !done.has(a));
    const next = Math.min(...marks.filter((m) => m > way + 1e-6), goal);
    const first = braking[0];
    if (first && heeded === -Infinity) heeded = time;
    if (!first) heeded = -Infinity;
    if (first && time - heeded < reaction - 1e-9 && speed > 0) {
      go(0, Math.min(reaction - (time - heeded), (next - way) / speed), first.act);
      continue;
    }
    if (first && speed > 0) {
      const need = (a: Ahead): number => (speed * speed - a.act.toSpeed ** 2) / (2 * (a.to - way));
      const hardest = braking.reduce((a, b) => (need(b) > need(a) ? b : a));
      const fall = need(hardest);
      go(-fall, timeOver(next - way, speed, -fall), hardest.act);
      continue;
    }
    const top = speedAt(way);
    if (top <= 0) break;
    if (speed > top) speed = top;
    if (speed < top - 1e-9) {
      const lasts = Math.min((top - speed) / PULLING_AWAY, timeOver(next - way, speed, PULLING_AWAY));
      go(PULLING_AWAY, lasts);
    } else go(0, (next - way) / speed);
  }
  pieces.push({ time, way, speed: 0, gain: 0 });
  return pieces;
}

/** Seconds over a way at an even acceleration; where it comes to a stand before, until then. */
function timeOver(far: number, speed: number, gain: number): number {
  const square = Math.max(0, speed * speed + 2 * gain * far);
  return (2 * far) / (speed + Math.sqrt(square));
}

export function frameAt(run: TrainRun, time: number): Frame {
  const { pieces } = run;
  let i = pieces.length - 1;
  while (i > 0 && pieces[i].time > time) i--;
  const piece = pieces[i];
  const t = i === pieces.length - 1 ? 0 : Math.max(0, time - piece.time);
  const way = piece.way + (piece.speed + (piece.gain * t) / 2) * t;
  return { at: run.at(way), way, speed: Math.max(0, piece.speed + piece.gain * t), act: piece.act };
}

/** When the next thing is to be done: brake, stand, leave, or run faster; the end after the last. */
export function nextTime({ pieces, lasts }: TrainRun, time: number): number {
  const same = (i: number): boolean => i > 0 && pieces[i].act === pieces[i - 1].act && pieces[i].gain <= 0;
  return pieces.find((p, i) => p.time > time + 0.01 && !same(i))?.time ?? lasts;
}
