/**
 * Grade C: slowing to a lower speed, and the braking points that rest on it, against independent code: a plain
 * vehicle-by-vehicle right-hand side run by `odex`, and by `ode-rk4` where every second is looked at
 * (tests/support/plain-stop.ts shares only input types with the engine).
 */

import { describe, expect, it } from 'vitest';
import { likely } from '../../../engine/motion/scenario.ts';
import { slowingDistance } from '../../../engine/motion/stop.ts';
import { RAMP_STEPS } from '../../../engine/motion/stop-inputs.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { hostCeilings } from '../../../engine/questions/speed/ceilings.ts';
import { brakingPoints, gridOf, speedMap } from '../../../engine/questions/speed/map.ts';
import type { BrakingPoint } from '../../../engine/questions/speed/types.ts';
import { beside } from '../../support/measured.ts';
import { integrate } from '../../support/odex.ts';
import { type PlainStop, plainStop } from '../../support/plain-stop.ts';
import { type Draw, drawer, randomOuting } from '../../support/random-outings.ts';
import { modelFor, type Ready, ready } from '../../support/ready.ts';
import { march } from '../../support/rk4.ts';
import { runs } from '../../support/tier.ts';

const CASES = runs(150, 500);
const TOLERANCE = 1e-7;

const plainOf = ({ outing, context, prepared }: Ready): PlainStop =>
  plainStop(
    context.line,
    context.loaded,
    prepared.brakes.groups,
    outing.assumed.adhesion.dry,
    outing.conditions.reaction,
    outing.assumed,
    likely,
  );

/** Distance by odex until the speed has fallen to w; undefined: it does not in 200 s. */
function referenceWay(plain: PlainStop, s0: number, v0: number, w: number): number | undefined {
  const f = (t: number, [s, v]: number[]): number[] => [v, plain.acceleration(t, s, v)];
  const reacting = (t: number, y: number[]): number[] => f(Math.min(t, plain.reaction - 1e-9), y);
  let t = plain.reaction;
  let y = integrate(reacting, 0, [s0, v0], t, TOLERANCE);
  const step = 0.25;
  for (; t < 200; t += step) {
    const next = integrate(f, t, y, t + step, TOLERANCE);
    if (next[1] > w) {
      y = next;
      continue;
    }
    let [low, high] = [0, step];
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (integrate(f, t, y, t + middle, TOLERANCE)[1] > w) low = middle;
      else high = middle;
    }
    return integrate(f, t, y, t + high, TOLERANCE)[0] - s0;
  }
  return undefined;
}

describe('slowing to a lower speed against odex', () => {
  const built: number[] = [];
  const building: number[] = [];
  const sliding: number[] = [];
  let [rising, falling] = [0, 0];
  for (let seed = 1; seed <= CASES; seed++) {
    const r = ready(randomOuting(seed + 21_000));
    const draw = drawer(seed + 3);
    const s0 = draw(0, r.context.line.length * 0.9);
    const v0 = draw(1, 6);
    // Every third only a little slower: reached while the brake is still building up.
    const w = v0 * (seed % 3 === 0 ? draw(0.9, 0.99) : draw(0.2, 0.9));
    const model = modelFor(r);
    const way = slowingDistance(model, s0, v0, w);
    if (way === Infinity) continue;
    const reference = referenceWay(plainOf(r), s0, v0, w);
    expect(reference, `seed ${seed} slows`).toBeDefined();
    const early = model.trace.time < model.reaction + RAMP_STEPS * model.dt;
    if (model.potential.slope[Math.floor(s0 / model.potential.step)] > 0) rising++;
    else falling++;
    (early ? building : model.sliding > 0 ? sliding : built).push(Math.abs(way - reference!) / reference!);
  }
  const ODEX = '`odex` on a plain vehicle-by-vehicle right-hand side';
  beside(import.meta.url, 'slowing to a lower speed, brake full on', ODEX, built);
  beside(import.meta.url, 'slowing while wheels slide until they are eased', ODEX, sliding);
  beside(import.meta.url, 'slowing while the brake builds up', ODEX, building);
  const at = (errors: number[], q: number): number =>
    errors.sort((a, b) => a - b)[Math.floor(q * (errors.length - 1))];

  it('covers rises, falls and speeds reached before the brake is full on', () => {
    expect(built.length + building.length + sliding.length).toBeGreaterThanOrEqual(0.95 * CASES);
    expect(building.length).toBeGreaterThan(0.2 * CASES);
    expect(built.length).toBeGreaterThan(0.2 * CASES);
    expect(sliding.length).toBeGreaterThan(0.03 * CASES);
    expect(rising).toBeGreaterThan(0.2 * CASES);
    expect(falling).toBeGreaterThan(0.2 * CASES);
  });
  it('under full brake agrees as the stop does', () => {
    expect(at(built, 0.5)).toBeLessThan(2e-4);
    expect(at(built, 0.99)).toBeLessThan(1e-3);
    expect(at(built, 1)).toBeLessThan(3e-3);
  });
  // How sliding wheels build up is weighted by their force at a walk (4 mph), for all speeds: up to 3.3e-3 measured.
  it('where wheels slide until they are eased agrees to 5e-3, half of what is promised', () => {
    expect(at(sliding, 0.5)).toBeLessThan(2e-4);
    expect(at(sliding, 1)).toBeLessThan(5e-3);
  });
  // A step of the build-up knows its ends and its mean, not where in it each brake begins.
  it('reached while the brake builds up agrees to 2e-3 in nine of ten, and to the 1 % promised in all', () => {
    expect(at(building, 0.9)).toBeLessThan(2e-3);
    expect(at(building, 1)).toBeLessThan(1e-2);
  });
});

/** Lower limits and a booked stop laid on a random line, the first of them at a loop's origin. */
function limited(seed: number): Outing {
  const base = randomOuting(seed);
  const draw = drawer(seed + 17);
  const { length } = base.line;
  const starts = [0, draw(60, length * 0.5), draw(length * 0.5, length - 60)];
  const limits = starts.map((from) => limit(draw, from));
  return {
    ...base,
    host: { name: 'made up', speed: { value: draw(2.5, 5), source: 'made up' } },
    line: {
      ...base.line,
      speedLimits: limits,
      sights: [{ from: 0, to: length, distance: 1000, direction: 'both' }],
      places: [{ id: 'st', name: 'Station', kind: 'station', at: draw(40, length - 20), stop: true }],
    },
  };
}

const limit = (draw: Draw, from: number) => ({
  from,
  to: from + draw(5, 30),
  speed: draw(0.8, 2.3),
  why: 'curve',
  source: 'made up',
});

/** Speed ÷ limit where it begins, or way ÷ room of a stop, of a train braked where the point says. */
function excess(plain: PlainStop, length: number, p: BrakingPoint): number {
  const room = p.target - p.at + (p.at > p.target ? length : 0);
  // A stop is followed a little beyond its mark, to see by how much it is late.
  const end = p.at + (p.kind === 'stop' ? 1.1 * room : room);
  let [s, v, t] = [p.at, p.fromSpeed, 0];
  const f =
    (late: number) =>
    (x: number, [where, speed]: readonly number[]) => [
      speed,
      plain.acceleration(Math.min(x, late), where, Math.max(speed, 0)),
    ];
  while (s < end && t < 300) {
    const before = t < plain.reaction - 1e-9;
    const h = Math.min(0.05, before ? plain.reaction - t : Infinity);
    const [s2, v2] = march(f(before ? plain.reaction - 1e-9 : Infinity), t, [s, v], t + h, 1);
    if (v2 <= p.toSpeed && !before) return p.kind === 'slow' ? 1 : (s2 - p.at) / room;
    if (s2 >= end) v += ((v2 - v) * (end - s)) / (s2 - s);
    else v = v2;
    [s, t] = [s2, t + h];
  }
  return p.kind === 'slow' ? v / p.toSpeed : Infinity;
}

describe('braking points followed by an independent integrator', () => {
  const all: { seed: number; kind: BrakingPoint['kind']; over: number }[] = [];
  for (let seed = 1; all.length < 1000 && seed < 1000; seed++) {
    const r = ready(limited(seed + 40_000));
    const model = modelFor(r);
    const grid = gridOf(r.context.line.length);
    const map = speedMap(
      r.context,
      'dry',
      { likely: model, cautious: model },
      grid,
      hostCeilings(r.context, grid),
    );
    const plain = plainOf(r);
    for (const p of brakingPoints(r.context, map, model)) {
      all.push({ seed, kind: p.kind, over: excess(plain, r.context.line.length, p) });
    }
  }
  beside(
    import.meta.url,
    'braking points: too late by, of speed or room',
    '`ode-rk4` in steps of 50 ms',
    all.map((p) => Math.max(0, p.over - 1)),
  );
  it('covers 1,000 points, some of them booked stops', () => {
    expect(all.length).toBeGreaterThanOrEqual(1000);
    expect(all.filter((p) => p.kind === 'stop').length).toBeGreaterThan(100);
  });
  it('has one for a limit that falls little by little', () => {
    const r = ready({ ...limited(40_001), plannedSpeed: 4 });
    const grid = gridOf(r.context.line.length);
    const model = modelFor(r);
    const [from, to] = [grid[100], grid[160]];
    // 4 m/s down to 1 over 60 steps of 0.05, and up again at once.
    const speed = grid.map((s) => (s < from || s > to ? 4 : 4 - (3 * (s - from)) / (to - from)));
    const reason = { kind: 'balance' as const, what: 'a transition', source: 'a test' };
    const models = { likely: model, cautious: model };
    const map = speedMap(r.context, 'dry', models, grid, [{ reason, speed }]);
    const points = brakingPoints(r.context, map, model).filter((p) => p.what === 'a transition');
    expect(points.length).toBe(1);
    expect(points[0].at).toBeLessThan(from);
    expect(points[0].toSpeed).toBeLessThan(1.2);
    expect(excess(plainOf(r), r.context.line.length, points[0])).toBeLessThanOrEqual(1.01);
  });
  it('none is too late by more than 1 %', () => expect(all.filter((p) => p.over > 1.01)).toEqual([]));
});
