/**
 * What a gap bears as the train parts, of masses and forces that are known: an engine of 400 kg without steam and three
 * cars of 100 kg, rolling resistance 5 N/kN, no inertia of wheels.
 */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { gapLoads } from '../../../engine/questions/couplers/loads.ts';
import { trainBrakes } from '../../../engine/things/brake/force.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { gearOf } from '../../support/brakes-left.ts';
import { plain } from '../../support/rules.ts';

const G = 9.80665;
const LENGTH = 200;

interface Known {
  readonly grade?: number;
  readonly brakes?: readonly BrakeGear[];
  /** Pull of the engine at a stand, N. */
  readonly pull?: number;
  /** The last car is an engine too, as heavy as a car, that pulls as hard. */
  readonly banked?: boolean;
}
function train({ grade = 0, brakes = [], pull, banked = false }: Known): Outing {
  const base = plain(3);
  const vehicles = base.train.vehicles.map(({ traction: _, ...v }, i) => ({
    ...v,
    tare: exact(i === 0 ? 400 : 100),
    rotatingShare: exact(0),
    resistance: { rolling: exact(0.005), perSpeed: exact(0), perSpeedSquared: 0 },
    brakes: i === 0 ? [] : brakes,
    ...((i === 0 || (banked && i === 3)) && pull !== undefined
      ? {
          traction: {
            kind: 'drawbar' as const,
            how: 'measured' as const,
            curve: [{ speed: 0, force: pull }],
          },
        }
      : {}),
  }));
  const heights = [
    { at: 0, height: 0 },
    { at: LENGTH, height: grade * LENGTH },
  ];
  const { gradeSpread } = base.assumed;
  return {
    ...base,
    assumed: { ...base.assumed, gradeSpread: { ...gradeSpread, [base.line.heightQuality]: exact(0) } },
    line: { ...base.line, loop: false, length: LENGTH, heights },
    train: { ...base.train, vehicles },
  };
}
const loads = (of: Known) => {
  const context = openOuting(train(of));
  const { loaded, outing, air } = context;
  const { groups } = trainBrakes(loaded, outing.assumed, air.pressure, air.seaLevel);
  return gapLoads(context, groups, exact(1)).map(({ load }) => load);
};
const weight = (kg: number): number => kg * G;
const drag = (kg: number): number => 0.005 * weight(kg);

describe('on a grade', () => {
  it('the chain holds the weight of the tail along it, up or down', () => {
    for (const grade of [0.03, -0.03]) {
      const steady = loads({ grade }).map((load) => load.steady);
      [300, 200, 100].forEach((kg, gap) => {
        expect(steady[gap]).toBeCloseTo(0.03 * weight(kg), 3);
      });
    }
    expect(loads({ grade: 0.03 }).map((load) => load.steadyMass)).toEqual([300, 200, 100]);
  });
  it('the engine draws the tail up, and its resistance; down, no more than nothing', () => {
    const up = loads({ grade: 0.03, pull: 1000 });
    [300, 200, 100].forEach((kg, gap) => {
      expect(up[gap].running).toBeCloseTo(0.03 * weight(kg) + drag(kg), 3);
    });
    expect(loads({ grade: -0.03, pull: 1000 }).map((load) => load.running)).toEqual([0, 0, 0]);
  });
});

describe('with an engine at the rear', () => {
  it('each bears its share of the whole by its weight: what it pushes no chain draws', () => {
    // Engines of 400 and 100 kg: a fifth of what keeps all 700 kg up is pushed from the rear.
    const pushed = (0.035 * weight(700)) / 5;
    const running = loads({ grade: 0.03, pull: 1000, banked: true }).map((load) => load.running);
    [300, 200, 100].forEach((kg, gap) => {
      expect(running[gap]).toBeCloseTo(Math.max(0, 0.035 * weight(kg) - pushed), 3);
    });
  });
});

describe('drawn apart on the level', () => {
  it('by an engine that pulls on: its share by mass, and the resistance of the tail', () => {
    // μ · (F/head + R/tail), μ = head · tail ÷ both.
    const [first, , last] = loads({ pull: 350 });
    expect(first.parting).toBeCloseTo(((400 * 300) / 700) * (350 / 400 + drag(300) / 300), 6);
    expect(last.parting).toBeCloseTo(((600 * 100) / 700) * (350 / 600 + drag(100) / 100), 6);
    expect(first.way).toBe('pulling');
  });
  it('by a tail whose brake comes on by itself', () => {
    const [first, , last] = loads({ brakes: [gearOf('automatic-vacuum', { force: exact(50) })], pull: 1 });
    expect(first.parting).toBeCloseTo(((400 * 300) / 700) * ((150 + drag(300)) / 300), 6);
    expect(last.parting).toBeCloseTo(((600 * 100) / 700) * ((50 + drag(100)) / 100), 6);
    expect(first.way).toBe('tail braked');
  });
  it('by one that is lost with its hose no more than by its resistance', () => {
    const [first] = loads({ brakes: [gearOf('straight-air', { force: exact(50) })], pull: 0 });
    expect(first.parting).toBeCloseTo(((400 * 300) / 700) * (drag(300) / 300), 6);
  });
  it('by blocks with their friction, from 0.2 to 0.32 of their force', () => {
    const { force: _, ...gear } = gearOf('automatic-vacuum');
    const rigging = {
      cylinders: 1,
      bore: 0.1,
      leverRatio: 1,
      efficiency: exact(0.8),
      block: 'composition' as const,
      workingPressure: exact(65_000),
      springForce: 60,
    };
    const block = (Math.PI * 0.05 ** 2 * 65_000 - 60) * 0.8;
    const [first] = loads({ brakes: [{ ...gear, rigging }], pull: 0 });
    const by = (friction: number): number => ((400 * 300) / 700) * ((3 * block * friction + drag(300)) / 300);
    expect(first.parting).toBeLessThanOrEqual(by(0.32));
    // One draw in a hundred: near the upper bound.
    expect(first.parting).toBeGreaterThan(by(0.29));
  });
});
