/**
 * Laws of stopping, hauling and speed, over random outings with a fixed seed: 200 cases each on a push, 2,000 in full.
 *
 * "More load" is load on vehicles whose own wheels are not braked: load on a braked car also presses its
 * wheels down, and where they were about to slide it may honestly shorten a stop.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../engine/base/quantity.ts';
import { coast } from '../../engine/motion/coast.ts';
import { modelOf } from '../../engine/motion/model.ts';
import { likely, unsafeBy } from '../../engine/motion/scenario.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { buildInputs } from '../../engine/motion/stop-inputs.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { speedThatStops } from '../../engine/questions/speed/limits.ts';
import { speedMap } from '../../engine/questions/speed/map.ts';
import { reverseLine } from '../../engine/things/line/geometry.ts';
import { potentialAt } from '../../engine/things/line/potential.ts';
import { resistanceTerms } from '../../engine/things/train/resistance.ts';
import { drawer, randomLine, randomOuting } from '../support/random-outings.ts';
import { modelFor, type Ready, ready } from '../support/ready.ts';
import { runs } from '../support/tier.ts';

const SEED = { seed: 20261125, numRuns: runs(200, 2000) };
const seeds = fc.integer({ min: 1, max: 1_000_000 });
const share = fc.double({ min: 0, max: 0.9, noNaN: true });
const speeds = fc.double({ min: 0.5, max: 6, noNaN: true });

/** Errors of the integration itself, as a share: two runs that should be equal may differ by twice this. */
const NOISE = 4e-3;
const notShorter = (after: number, before: number): void => {
  expect(after).toBeGreaterThanOrEqual(before * (1 - NOISE) - 1e-6);
};

const place = (r: Ready, at: number): number => at * r.context.line.length;

describe('laws of stopping', () => {
  it('more speed never shortens a stop', () => {
    fc.assert(
      fc.property(seeds, share, speeds, speeds, (seed, at, a, b) => {
        const r = ready(randomOuting(seed));
        const model = modelFor(r);
        const [slow, fast] = [Math.min(a, b), Math.max(a, b)];
        notShorter(stopDistance(model, place(r, at), fast), stopDistance(model, place(r, at), slow));
      }),
      SEED,
    );
  });

  it('later reaction, less adhesion and weaker brakes never shorten a cautious stop', () => {
    fc.assert(
      fc.property(seeds, share, speeds, share, share, (seed, at, v, p, q) => {
        const r = ready(randomOuting(seed));
        const [less, more] = [Math.min(p, q), Math.max(p, q)];
        const model = modelFor(r, unsafeBy(less), true);
        const later = modelFor(r, { ...unsafeBy(less), reaction: -more }, true);
        const slippery = modelFor(r, { ...unsafeBy(less), adhesion: -more }, true);
        const weaker = modelFor(r, { ...unsafeBy(less), brake: -more }, true);
        const base = stopDistance(model, place(r, at), v);
        for (const worse of [later, slippery]) notShorter(stopDistance(worse, place(r, at), v), base);
        // Where wheels slide a weaker brake is a blessing.
        if (model.sliding === 0) notShorter(stopDistance(weaker, place(r, at), v), base);
      }),
      SEED,
    );
  });

  it('more load on unbraked vehicles never shortens a stop, downhill or level', () => {
    fc.assert(
      fc.property(seeds, share, speeds, fc.double({ min: 1, max: 300, noNaN: true }), (seed, at, v, load) => {
        const outing = level(randomOuting(seed));
        const unbraked = outing.train.vehicles.find((x) => x.brakes.length === 0);
        fc.pre(unbraked !== undefined);
        // Where rolling resistance does most of the stopping, a load on stiff bearings does shorten the stop.
        const before = ready(outing);
        fc.pre(modelFor(before).force[0] > 0.3 * before.context.loaded.effectiveMass);
        const heavier = changeLoad(outing, unbraked!.id, load);
        const [a, b] = [ready(outing), ready(heavier)];
        notShorter(stopDistance(modelFor(b), place(b, at), v), stopDistance(modelFor(a), place(a, at), v));
      }),
      SEED,
    );
  });

  it('a steeper fall never shortens a stop', () => {
    fc.assert(
      fc.property(
        seeds,
        share,
        speeds,
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        (seed, at, v, more) => {
          const outing = randomOuting(seed);
          const steeper = tilt(outing, outing.direction === 'forward' ? -more : more);
          fc.pre(!outing.line.loop);
          const [a, b] = [ready(outing), ready(steeper)];
          notShorter(stopDistance(modelFor(b), place(b, at), v), stopDistance(modelFor(a), place(a, at), v));
        },
      ),
      SEED,
    );
  });

  it('a cautious stop is never told shorter than the likely one, even where its scenario is the milder', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const r = ready(randomOuting(seed));
      const [mild, harsh] = [modelFor(r), modelFor(r, unsafeBy(0.5))];
      const grid = Float64Array.from({ length: 50 }, (_, i) => 2 * i);
      const ceiling = {
        reason: { kind: 'host-line', what: '', source: '' },
        speed: new Float64Array(50).fill(2),
      } as const;
      const map = speedMap(r.context, 'dry', { cautious: mild, likely: harsh }, grid, [ceiling]);
      for (let j = 0; j < 50; j++) {
        if (map.limit[j] > 0) expect(map.cautiousStop[j]).toBeGreaterThanOrEqual(map.likelyStop[j]);
      }
      expect(map.likelyStop.some((stop, j) => map.limit[j] > 0 && stop > 0)).toBe(true);
    }
  });

  it('a permitted speed really stops within what is available, and 2 % more does not', () => {
    fc.assert(
      fc.property(
        seeds,
        share,
        fc.double({ min: 5, max: 120, noNaN: true }),
        speeds,
        (seed, at, available, cap) => {
          const r = ready(randomOuting(seed));
          const model = modelFor(r, unsafeBy(0.6), true);
          const s = place(r, at);
          const v = speedThatStops(model, s, available, cap, cap / 3);
          if (v > 0) expect(stopDistance(model, s, v)).toBeLessThanOrEqual(available);
          if (v < cap && v > 0) expect(stopDistance(model, s, v * 1.02)).toBeGreaterThan(available);
        },
      ),
      SEED,
    );
  });
});

describe('energy', () => {
  it('closes to 1e-6 of what is turned over when a train coasts without resistance', () => {
    fc.assert(
      fc.property(seeds, share, speeds, (seed, at, v) => {
        const r = ready(randomOuting(seed));
        const { potential } = r.prepared;
        const inertia = r.context.loaded.effectiveMass;
        const s0 = Math.floor(place(r, at) * 0.5);
        const window = { ...potential, count: Math.min(potential.count, 2 * s0 + 81) };
        const result = coast(window, inertia, { a: 0, b: 0, c: 0 }, s0, v);
        const end = potential.from + (window.count - 1) * potential.step;
        const start = (inertia * v * v) / 2;
        const fall = potentialAt(potential, s0) - potentialAt(potential, end);
        if (result.distance !== Infinity) {
          const rest = s0 + result.distance;
          const climbed = potentialAt(potential, rest) - potentialAt(potential, s0);
          expect(Math.abs(climbed - start)).toBeLessThan(1e-6 * (start + Math.abs(climbed)) + 1e-9);
          return;
        }
        const gained = (inertia * result.endSpeed ** 2) / 2 - start;
        expect(Math.abs(gained - fall)).toBeLessThan(1e-6 * (start + Math.abs(fall)) + 1e-9);
      }),
      SEED,
    );
  });

  it('a stop on the level turns its kinetic energy into brake and rolling work, to 1e-6', () => {
    fc.assert(
      fc.property(seeds, speeds, fc.double({ min: 0.2, max: 1.2, noNaN: true }), (seed, v, decel) => {
        const outing = steady(level(randomOuting(seed)));
        const r = ready(outing);
        const loaded = r.context.loaded;
        // One constant brake on the whole train, at once: v²/2a exactly, resistance on top.
        const group = {
          vehicle: 0,
          group: 0,
          gear: {
            id: 'x',
            name: 'x',
            kind: 'mechanical' as const,
            on: ['a'],
            workedBy: 'driver' as const,
            parking: false,
          },
          block: exact(loaded.effectiveMass * decel),
          load: 1e9,
          sanded: false,
          deadTime: exact(0),
          buildUp: exact(1e-9),
        };
        const inputs = buildInputs(loaded, [group], r.prepared.potential, exact(0.3), exact(0), {
          ...outing.assumed,
        });
        const d = stopDistance(modelOf(inputs, likely, false), 10, v);
        const work = loaded.effectiveMass * decel * d;
        const rolling = resistanceTerms(loaded.vehicles, 0).a * d;
        const kinetic = (loaded.effectiveMass * v * v) / 2;
        expect(Math.abs(work + rolling - kinetic) / kinetic).toBeLessThan(1e-6);
      }),
      SEED,
    );
  });
});

describe('lines', () => {
  it('reversed twice is itself', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const line = randomLine(drawer(seed));
        const twice = reverseLine(reverseLine(line));
        expect(twice.length).toBe(line.length);
        twice.heights.forEach((k, i) => {
          expect(k.at).toBeCloseTo(line.heights[i].at, 9);
          expect(k.height).toBe(line.heights[i].height);
        });
        twice.curves.forEach((c, i) => {
          expect(c.from).toBeCloseTo(line.curves[i].from, 9);
          expect(c.startCurvature).toBe(line.curves[i].startCurvature);
          expect(c.endCurvature).toBe(line.curves[i].endCurvature);
        });
      }),
      SEED,
    );
  });

  it('a loop run once round brings gravity back to where it began', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const outing = randomOuting(seed);
        fc.pre(outing.line.loop);
        const zero = { ...outing, assumed: { ...outing.assumed, curveConstant: exact(0) } };
        const { potential } = ready(zero).prepared;
        const first = potentialAt(potential, 3);
        const lap = potentialAt(potential, 3 + outing.line.length);
        expect(Math.abs(lap - first)).toBeLessThan(
          1e-6 * (Math.abs(potential.mostSlope) * outing.line.length + 1),
        );
      }),
      SEED,
    );
  });
});

/** The same outing on level straight track. */
function level(outing: Outing): Outing {
  const { length } = outing.line;
  return {
    ...outing,
    line: {
      ...outing.line,
      curves: [],
      heights: [
        { at: 0, height: 0 },
        { at: length, height: 0 },
      ],
    },
  };
}

/** The same outing with resistance that does not change with speed. */
function steady(outing: Outing): Outing {
  const vehicles = outing.train.vehicles.map((v) => ({
    ...v,
    resistance: { ...v.resistance, perSpeed: exact(0), perSpeedSquared: 0 },
  }));
  return { ...outing, train: { ...outing.train, vehicles } };
}

function tilt(outing: Outing, grade: number): Outing {
  const heights = outing.line.heights.map((k) => ({ at: k.at, height: k.height + grade * k.at }));
  return { ...outing, line: { ...outing.line, heights } };
}

function changeLoad(outing: Outing, vehicle: string, mass: number): Outing {
  const vehicles = outing.train.vehicles.map((v) =>
    v.id === vehicle
      ? { ...v, loads: [{ name: 'goods', mass: exact(mass), at: v.length / 2, across: 0, height: 0.3 }] }
      : v,
  );
  return { ...outing, train: { ...outing.train, vehicles } };
}
