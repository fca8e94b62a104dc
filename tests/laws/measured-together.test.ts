/**
 * What one test told together is drawn together: the spread of the stop is that of the fit's covariance. Held to draws made
 * straight from the covariance, each a stop of a train whose figures are exact.
 */
import { expect, it } from 'vitest';
import { between, exact, type Quantity, type SharedFit } from '../../engine/base/quantity.ts';
import { choleskyRows } from '../../engine/calibrate/result.ts';
import { prepare } from '../../engine/motion/prepare.ts';
import { sampleStops } from '../../engine/motion/sample.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { drawsOf } from '../../engine/questions/balance/draws.ts';
import { drawHaul, pullsAlong } from '../../engine/questions/haul/draws.ts';
import { runs } from '../support/tier.ts';
import { assumedOuting, luck } from '../support/true-trains.ts';

const [AT, SPEED] = [20, 3];
/** Half widths of what was measured, in √6 deviations: of the force as a share, of the dead time in s. */
const [FORCE, DEAD] = [0.2, 0.35];
const LIKELY_DEAD = 0.6;

/** A train of which all is known but force and dead time. */
function known(force: (likely: number) => Quantity, deadTime: Quantity): Outing {
  const outing = assumedOuting(4);
  const { assumed } = outing;
  const vehicles = outing.train.vehicles.map((v) => ({
    ...v,
    rotatingShare: exact(v.rotatingShare.value),
    resistance: { ...v.resistance, rolling: exact(0.006) },
    brakes: v.brakes.map((b) => ({
      ...b,
      block: 'other' as const,
      force: force(b.force?.value ?? 0),
      deadTime,
      buildUp: exact(0.5),
    })),
  }));
  return {
    ...outing,
    train: { ...outing.train, vehicles },
    conditions: { ...outing.conditions, reaction: exact(0.5) },
    assumed: {
      ...assumed,
      blockFriction: {
        ...assumed.blockFriction,
        other: assumed.blockFriction.other.map((p) => ({ ...p, friction: exact(p.friction.value) })),
      },
      blockWet: { ...assumed.blockWet, other: exact(1) },
      gradeSpread: { ...assumed.gradeSpread, levelled: exact(0) },
      badSpot: { ...assumed.badSpot, chance: { ...assumed.badSpot.chance, dry: exact(0) } },
    },
  };
}

const deviation = (of: ArrayLike<number>): number => {
  const all = Array.from(of);
  const mean = all.reduce((a, b) => a + b, 0) / all.length;
  return Math.sqrt(all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / all.length);
};

const fitOf = (factors: readonly number[] | undefined): { fit?: SharedFit } =>
  factors ? { fit: { id: 'stops', factors } } : {};

function engineSays(rho: number, together = true): number {
  const rows = choleskyRows([
    [1, rho],
    [rho, 1],
  ]);
  const outing = known(
    (f) => ({
      ...between(f * (1 - FORCE), f, f * (1 + FORCE), 'measured'),
      ...fitOf(together ? rows[0] : undefined),
    }),
    {
      ...between(LIKELY_DEAD - DEAD, LIKELY_DEAD, LIKELY_DEAD + DEAD, 'measured'),
      ...fitOf(together ? rows[1] : undefined),
    },
  );
  return deviation(sampleStops(prepare(openOuting(outing), 2, 0).inputs('dry'), AT, SPEED, 4000, 7));
}

/** x and ρ·x + √(1 − ρ²)·y of normal numbers (Box and Muller), scaled to the deviations. */
function straight(rho: number): number {
  const u = luck(11);
  const stops = Array.from({ length: runs(600, 3000) }, () => {
    const [r, angle] = [Math.sqrt(-2 * Math.log(1 - u())), 2 * Math.PI * u()];
    const [x, y] = [r * Math.cos(angle), r * Math.sin(angle)];
    const both = rho * x + Math.sqrt(1 - rho * rho) * y;
    const outing = known(
      (f) => exact(f * (1 + (FORCE * x) / Math.sqrt(6))),
      exact(LIKELY_DEAD + (DEAD * both) / Math.sqrt(6)),
    );
    return stopDistance(prepare(openOuting(outing), 2, 0).models('dry').likely, AT, SPEED);
  });
  return deviation(stops);
}

it.each([0.9, -0.9])('force and dead time that go together by %d', (rho) => {
  const [joint, apart, witness] = [engineSays(rho), engineSays(rho, false), straight(rho)];
  if (process.env['SAY']) console.log({ rho, joint, apart, witness });
  expect(Math.abs(joint / witness - 1)).toBeLessThan(0.1);
  // Else there would be nothing to tell.
  expect(Math.abs(apart / witness - 1)).toBeGreaterThan(0.2);
});

/** Of one test of vehicles that are alike: all of them roll as easily as the test found, or none. */
it('cars of one coast-down are easy or hard to roll together', () => {
  const spare = (fit?: SharedFit): number => {
    const outing = known((f) => exact(f), exact(LIKELY_DEAD));
    const rolling: Quantity = { ...between(0.004, 0.006, 0.008, 'measured'), ...(fit ? { fit } : {}) };
    const vehicles = outing.train.vehicles.map((v) => ({
      ...v,
      tare: exact(300),
      resistance: { ...v.resistance, rolling, starting: rolling },
      traction: { kind: 'drawbar' as const, curve: [{ speed: 20, force: 900 }], how: 'measured' as const },
    }));
    const context = openOuting({
      ...outing,
      train: { ...outing.train, vehicles },
      assumed: {
        ...outing.assumed,
        curveConstant: exact(outing.assumed.curveConstant.value),
        drivenAdhesion: exact(0.5),
      },
    });
    const drawn = drawHaul(context, pullsAlong(context, 2), 'dry', 4000, 0);
    return deviation(drawn?.spare.get('dry') as Float64Array);
  };
  const weight = 3 * 300 * 9.80665;
  const together = (weight * 0.002) / Math.sqrt(6);
  expect(spare({ id: 'coast', factors: [1] }) / together).toBeCloseTo(1, 1);
  expect(spare() / together).toBeCloseTo(1 / Math.sqrt(3), 1);
});

it('weight and height of one weighing', () => {
  const rho = -0.8;
  const rows = choleskyRows([
    [1, rho],
    [rho, 1],
  ]);
  const of = (factors: readonly number[] | undefined, name: string): Float64Array =>
    drawsOf({ ...between(-1, 0, 1, 'measured'), ...fitOf(factors) }, name);
  const goTogether = (a: Float64Array, b: Float64Array): number =>
    a.reduce((sum, x, i) => sum + x * b[i], 0) / (a.length * deviation(a) * deviation(b));
  const [tare, height] = [of(rows[0], 'tare'), of(rows[1], 'height of tare')];
  expect(goTogether(tare, height)).toBeCloseTo(rho, 1);
  expect(Math.abs(goTogether(of(undefined, 'tare'), of(undefined, 'height of tare')))).toBeLessThan(0.1);
  // Each by itself is spread as evenly as ever.
  expect([...tare].sort()).toEqual([...of(undefined, 'tare')].sort());
});
