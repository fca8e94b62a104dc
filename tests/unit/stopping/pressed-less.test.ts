/** Surge brakes over a crest: against every push of a rigid train found by halving, and a march of it in small steps. */
import { expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { potentialOf, prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { slopeAt } from '../../../engine/things/line/potential.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { plain } from '../../support/rules.ts';

const G = 9.80665;
const [LEVER, EFFICIENCY, FRICTION, ENGINE] = [4, 0.8, 0.2, 800];
const LENGTH = 400;
const CREST = 200;

const surge = (id: string): BrakeGear =>
  ({
    id,
    kind: 'surge',
    on: ['front', 'rear'],
    workedBy: 'driver',
    parking: false,
    surge: {
      leverRatio: LEVER,
      efficiency: exact(EFFICIENCY),
      springForce: 0,
      block: 'cast-iron',
      blockFriction: exact(FRICTION),
    },
  }) as unknown as BrakeGear;

const heights = (after: number): Line['heights'] => [
  { at: 0, height: 50 },
  { at: CREST, height: 50 },
  { at: LENGTH, height: 50 + after * (LENGTH - CREST) },
];

function train(line: Line['heights']): Outing {
  const base = plain(3);
  const vehicles = base.train.vehicles.map((v, i) => ({
    ...v,
    brakes:
      i === 0
        ? [
            {
              id: 'engine',
              kind: 'engine-only',
              on: v.groups.map((g) => g.id),
              workedBy: 'driver',
              parking: false,
              force: exact(ENGINE),
            } as unknown as BrakeGear,
          ]
        : [{ ...surge(`surge-${i}`), on: v.groups.map((g) => g.id) }],
  }));
  return {
    ...base,
    train: { ...base.train, vehicles },
    line: { ...base.line, loop: false, length: LENGTH, heights: line, curves: [], cants: [], places: [] },
  };
}

/** All pushes of a rigid train, halved upon its retardation; N of all surge brakes. */
function pressed(mass: readonly number[], climb: readonly number[]): number {
  const gain = LEVER * EFFICIENCY * FRICTION;
  const balance = (a: number): { left: number; surge: number } => {
    let [push, surge] = [0, 0];
    for (let j = mass.length - 1; j > 0; j--) {
      // What it and those behind it would press with, less what the grade under it holds back.
      const own = push + mass[j] * (a - G * climb[j]);
      const brake = own > 0 ? own - own / (1 + gain) : 0;
      surge += brake;
      push = Math.max(0, own - brake);
    }
    return { left: mass[0] * (a - G * climb[0]) + push - ENGINE, surge };
  };
  let [low, high] = [-20, 20];
  for (let k = 0; k < 200; k++) {
    const middle = (low + high) / 2;
    if (balance(middle).left > 0) high = middle;
    else low = middle;
  }
  return balance(low).surge;
}

const near = (a: number, b: number): number => Math.abs(a - b) / Math.max(1, Math.abs(b));

it('lose what every push of a rigid train loses with its head at each place, and gain nothing', () => {
  for (const after of [-0.01, -0.02, -0.03, 0.02]) {
    const outing = train(heights(after));
    const context = openOuting(outing);
    const { potential } = prepare(context, 0.5, 0);
    const ground = potentialOf(context.line, context.loaded, 0, 0.5, 300);
    const { vehicles, length } = context.loaded;
    const mass = vehicles.map((v) => v.mass);
    const height = (s: number): number => 50 + (s > CREST ? after * (s - CREST) : 0);
    const even = pressed(
      mass,
      mass.map(() => 0),
    );
    let most = 0;
    for (let s = CREST - 5; s <= CREST + length + 5; s += 0.5) {
      const climb = vehicles.map(
        ({ behind, vehicle }) => (height(s - behind) - height(s - behind - vehicle.length)) / vehicle.length,
      );
      const theirs = Math.max(0, even - pressed(mass, climb));
      const ours = slopeAt(ground, s) - slopeAt(potential, s);
      expect(near(ours, theirs), `${after} at ${s}: ${ours} of ${theirs}`).toBeLessThan(0.02);
      most = Math.max(most, ours);
    }
    // A crest and a sag alike have their worst place; the front may be the one that climbs.
    if (after < 0) expect(most).toBeGreaterThan(5);
  }
});

it('on every even grade are what they are on the level', () => {
  for (const grade of [-0.04, 0, 0.03]) {
    const line = [
      { at: 0, height: 50 },
      { at: LENGTH, height: 50 + grade * LENGTH },
    ];
    const context = openOuting(train(line));
    const { potential } = prepare(context, 0.5, 0);
    const ground = potentialOf(
      context.line,
      context.loaded,
      context.outing.assumed.curveConstant.low,
      0.5,
      300,
    );
    for (let s = 30; s < LENGTH; s += 7) expect(slopeAt(potential, s)).toBeCloseTo(slopeAt(ground, s), 4);
  }
});
