/** Tests whose sum can be done by hand. */
import { describe, expect, it } from 'vitest';
import { assumedValues, instruments } from '../../../data/index.ts';
import { exact } from '../../../engine/base/quantity.ts';
import type { Around } from '../../../engine/calibrate/instruments.ts';
import { measure, type Test } from '../../../engine/calibrate/tests/index.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { drawer, randomVehicle } from '../../support/random-outings.ts';

const G = 9.80665;
const { centreHeight: _, ...plain } = randomVehicle(drawer(5), 'car', false);
const vehicle: Vehicle = {
  ...plain,
  tare: { value: 100, low: 80, high: 120, how: 'assumed' },
  groups: plain.groups.map((g, i) => ({ ...g, at: i === 0 ? 0.5 : 2 })),
  resistance: {
    rolling: { value: 0.006, low: 0.003, high: 0.012, how: 'assumed' },
    perSpeed: exact(0),
    perSpeedSquared: 0,
  },
  brakes: [{ id: 'screw-1', name: 'screw', kind: 'mechanical', on: ['a'], workedBy: 'rider', parking: true }],
};
const around: Around = { instruments, assumed: assumedValues, vehicle };
const head = { source: 'test' };
const both = (...forces: number[]) =>
  forces.map((force, i) => ({ force, way: i % 2 ? ('reverse' as const) : ('forward' as const) }));

function told(test: Test, with_: Around = around): Record<string, number> {
  const made = measure(test, with_);
  if (!made.ok) throw new Error(JSON.stringify(made));
  return Object.fromEntries(made.results.map((r) => [r.key, r.quantity.value]));
}

describe('by spring balance', () => {
  it('a brake: the pull less what keeps it rolling', () => {
    const { force } = told({ kind: 'brake-pull', ...head, gear: 'screw', pulls: both(206, 206, 206, 206) });
    expect(force).toBeCloseTo(206 - 0.006 * 100 * G, 0);
  });
  it('starting and rolling: pull ÷ weight, the floor taken out by pulling both ways', () => {
    const at = told({
      kind: 'starting-pull',
      ...head,
      pulls: both(10.8, 8.8, 10.8, 8.8),
      keeping: both(6.9, 4.9, 6.9, 4.9),
    });
    expect(at['starting']).toBeCloseTo(9.8 / (100 * G), 3);
    expect(at['rolling']).toBeCloseTo(5.9 / (100 * G), 3);
  });
  it('adhesion: pull ÷ weight', () => {
    expect(told({ kind: 'locked-wheels', ...head, pulls: both(200, 200, 200) })['adhesion']).toBeCloseTo(
      200 / (100 * G),
      4,
    );
    expect(
      told({ kind: 'hauling-pull', ...head, ended: 'slip', drivenMass: 50, pulls: both(100, 100, 100) })[
        'drivenAdhesion'
      ],
    ).toBeCloseTo(100 / (50 * G), 4);
  });
  it('a stall: the factor of the cylinders, F·2D/(P·d²·s·n)', () => {
    const traction = {
      kind: 'steam',
      cylinders: 2,
      bore: 0.05,
      stroke: 0.07,
      wheelDiameter: 0.2,
      boilerPressure: 6e5,
      meanPressureFactor: { value: 0.85, low: 0.75, high: 0.9, how: 'assumed' },
    } as const;
    const F = (0.8 * 6e5 * 0.05 ** 2 * 0.07 * 2) / (2 * 0.2);
    const many = both(...Array.from({ length: 12 }, () => F));
    const by = { ...instruments, balance: exact(1) };
    expect(
      told(
        { kind: 'hauling-pull', ...head, ended: 'stall', pulls: many },
        { ...around, instruments: by, vehicle: { ...vehicle, traction } },
      )['meanPressureFactor'],
    ).toBeCloseTo(0.8, 3);
  });
});

describe('on scales', () => {
  it('weight, and where and how high its centre lies', () => {
    // 100 kg, centre 1.1 m from the front end and 0.3 m up; 1.5 m between groups, the front raised by 0.15 m.
    const slope = 0.15 / Math.sqrt(1.5 ** 2 - 0.15 ** 2);
    const rear = (raise: number): number => (100 * (1.1 - 0.5 + 0.3 * raise)) / 1.5;
    const loads = (raise: number): [number, number] => [100 - rear(raise), rear(raise)];
    const at = told({
      kind: 'weighing',
      ...head,
      level: [loads(0), loads(0), loads(0), loads(0)],
      raised: Array.from({ length: 4 }, () => ({ by: 0.15, loads: loads(slope) })),
    });
    expect(at['tare']).toBeCloseTo(100, 0);
    expect(at['centreAt']).toBeCloseTo(1.1, 4);
    expect(at['centreHeight']).toBeCloseTo(0.3, 3);
  });
});

describe('by rule, tape and stopwatch', () => {
  it('a spring: load ÷ travel, shared', () => {
    const loads = [0, 100, 200, 300].map((load) => ({ load, height: 0.2 - load / 20_000 }));
    expect(told({ kind: 'spring', ...head, of: 'wheel', springs: 4, loads })['stiffness']).toBeCloseTo(
      5000,
      -1,
    );
  });
  it('a wheel: distance ÷ π turns', () => {
    const rolls = [10, 20].map((turns) => ({ turns, distance: turns * Math.PI * 0.16 }));
    expect(told({ kind: 'wheel-diameter', ...head, rolls })['wheelDiameter']).toBeCloseTo(0.16, 6);
  });
  it('a block: between the last that all bore and the first that lifted one', () => {
    const blocks = [
      { height: 0.004, lifts: false },
      { height: 0.006, lifts: true },
    ];
    expect(told({ kind: 'wheel-block', ...head, blocks })['twistFreedom']).toBeCloseTo(0.005, 9);
    const wrong = measure(
      { kind: 'wheel-block', ...head, blocks: [{ height: 0.009, lifts: false }, blocks[1]] },
      around,
    );
    expect(wrong).toMatchObject({ ok: false, code: 'readings-disagree' });
  });
  it('sight goes into the paper at its short end', () => {
    const made = measure({ kind: 'sight', ...head, at: 100, distances: [40, 41, 42] }, around);
    expect(made.ok && made.results[0].careful).toBe('low');
  });
  it('riders: mean, and what the next may weigh', () => {
    const masses = [60, 70, 80, 90, 65, 75, 85, 95];
    const made = measure({ kind: 'riders', ...head, who: 'adult', masses }, around);
    if (!made.ok) throw new Error(made.code);
    const [{ quantity }] = made.results;
    expect(quantity.value).toBeCloseTo(77.5, 9);
    expect(quantity.high - quantity.value).toBeCloseTo(Math.sqrt(6) * Math.sqrt(150) * Math.sqrt(9 / 8), 6);
    expect(measure({ kind: 'riders', ...head, who: 'adult', masses: masses.slice(1) }, around)).toMatchObject(
      {
        code: 'too-few-readings',
      },
    );
  });
});
