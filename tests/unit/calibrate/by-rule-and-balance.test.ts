/** Tests by rule, tape, stopwatch and spring balance: figures by hand, and what cannot be right. All made up. */
import { describe, expect, it } from 'vitest';
import { assumedValues, instruments } from '../../../data/index.ts';
import { GRAVITY } from '../../../engine/base/constants.ts';
import { between, exact } from '../../../engine/base/quantity.ts';
import { slipOf } from '../../../engine/calibrate/bad-reading.ts';
import { measure, type Test } from '../../../engine/calibrate/tests/index.ts';
import { alike, numbered, pooled, rollersOf, runningLine } from '../../../engine/calibrate/train.ts';
import type { LoadedVehicle } from '../../../engine/things/train/loaded.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { car } from '../../support/balance.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { drawer, randomOuting } from '../../support/random-outings.ts';

const TARE = 120;
const W = TARE * GRAVITY;
const plain: Vehicle = {
  ...car(drawer(7), { tare: TARE }),
  brakes: brakedTrain('automatic-vacuum', 1).vehicles[1].brakes,
};
const tell = (test: object, vehicle: Vehicle = plain) =>
  measure({ source: 'book', ...test } as unknown as Test, { instruments, assumed: assumedValues, vehicle });
type Made = ReturnType<typeof tell>;
const result = (made: Made, key: string) => (made.ok ? made.results.find((r) => r.key === key) : undefined);
const value = (made: Made, key: string): number => result(made, key)?.quantity.value ?? Number.NaN;
const code = (made: Made): string => (made.ok ? 'ok' : made.code);

describe('by rule and tape', () => {
  it('slack: the mean of what was read, of the end that it was read at; a chain’s careful end is the longer', () => {
    const of = (end: string, lengths: readonly number[]) => tell({ kind: 'slack', of: end, lengths });
    const front = of('front', [0.011, 0.013, 0.012]);
    expect(value(front, 'slack')).toBeCloseTo(0.012, 3);
    expect(result(front, 'slack')?.belongs).toEqual([{ paper: 'vehicle', field: 'front.slack' }]);
    expect(result(front, 'slack')?.careful).toBeUndefined();
    const chain = of('rear.chain', [0.04, 0.041]);
    expect(result(chain, 'chainSlack')).toMatchObject({
      careful: 'high',
      belongs: [{ field: 'rear.chain.slack' }],
    });
    expect(of('front', [0.01])).toMatchObject({ code: 'too-few-readings', facts: { found: 1, needed: 2 } });
    expect(of('front', [0.01, 0])).toMatchObject({
      code: 'out-of-range',
      facts: { field: 'lengths.1', low: 0 },
    });
    expect(code(of('front', [0.01, Number.POSITIVE_INFINITY]))).toBe('out-of-range');
  });

  it('a spring: load by what it gave, growing or falling, for each of those that share it', () => {
    const of = (sign: number, springs = 1, on = 'wheel') =>
      tell({
        kind: 'spring',
        of: on,
        springs,
        loads: [300, 100, 200].map((load) => ({ load, height: 0.2 + (sign * load) / 20_000 })),
      });
    for (const sign of [1, -1]) expect(value(of(sign), 'stiffness') / 20_000).toBeCloseTo(1, 2);
    expect(value(of(1, 2), 'stiffness') / 10_000).toBeCloseTo(1, 2);
    expect(result(of(1), 'stiffness')?.belongs[0].field).toBe('suspension.wheelStiffness');
    expect(result(of(1, 1, 'rear'), 'stiffness')?.belongs[0].field).toBe('rear.stiffness');
    const flat = [100, 200, 300].map((load) => ({ load, height: 0.2 }));
    expect(code(tell({ kind: 'spring', of: 'wheel', springs: 1, loads: flat }))).toBe('not-told-apart');
    expect(code(tell({ kind: 'spring', of: 'wheel', springs: 1, loads: flat.slice(1) }))).toBe(
      'too-few-readings',
    );
    const same = [0.2, 0.19, 0.18].map((height) => ({ load: 100, height }));
    expect(code(tell({ kind: 'spring', of: 'wheel', springs: 1, loads: same }))).toBe('not-told-apart');
  });

  it('a wheel: how far it rolled for each turn over π', () => {
    const rolls = [
      { turns: 5, distance: 5 * Math.PI * 0.15 },
      { turns: 10, distance: 10 * Math.PI * 0.15 },
    ];
    const made = tell({ kind: 'wheel-diameter', rolls });
    expect(value(made, 'wheelDiameter')).toBeCloseTo(0.15, 4);
    // Only a steam engine's pull hangs on it.
    expect(result(made, 'wheelDiameter')?.belongs).toEqual([]);
    expect(tell({ kind: 'wheel-diameter', rolls: [rolls[0], { turns: 0, distance: 1 }] })).toMatchObject({
      facts: { field: 'rolls.turns.1' },
    });
    expect(tell({ kind: 'wheel-diameter', rolls: [{ turns: 1, distance: -1 }, rolls[0]] })).toMatchObject({
      facts: { field: 'rolls.distance.0' },
    });
  });

  it('a speedometer: true over shown', () => {
    const run = (length: number, time: number, shown: number) => ({ length, time, shown });
    const made = tell({
      kind: 'speedometer',
      runs: [run(100, 50, 2.5), run(200, 100, 2.5), run(100, 40, 3.125)],
    });
    expect(value(made, 'speedometerFactor')).toBeCloseTo(0.8, 2);
    for (const [field, bad] of [
      ['length', run(0, 50, 2)],
      ['time', run(100, 0, 2)],
      ['shown', run(100, 50, 0)],
    ] as const)
      expect(tell({ kind: 'speedometer', runs: [run(100, 50, 2), bad] })).toMatchObject({
        code: 'out-of-range',
        facts: { field: `runs.${field}.1` },
      });
  });

  it('sight: the mean, less sure by eyes, by long steps; the careful end is the shorter', () => {
    const of = (more: object = {}) => tell({ kind: 'sight', at: 50, distances: [40, 41, 39, 40], ...more });
    expect(value(of(), 'sight')).toBeCloseTo(40, 0);
    expect(result(of(), 'sight')).toMatchObject({
      careful: 'low',
      belongs: [{ paper: 'line', field: 'sight', seen: { at: 50, way: 'forward' } }],
    });
    const back = result(of({ way: 'reverse', place: 'Signal' }), 'sight');
    expect(back?.belongs[0].seen).toEqual({ at: 50, way: 'reverse', place: 'Signal' });
    const width = (made: Made): number => {
      const [low, high] = result(made, 'sight')?.interval ?? [0, 0];
      return high - low;
    };
    // Steps of 4 m: half of one is more than three hundredths of the distance.
    expect(width(of({ paced: { steps: 10, length: 40 } }))).toBeGreaterThan(1.5 * width(of()));
    expect(width(of({ paced: { steps: 100, length: 80 } }))).toBeCloseTo(width(of()), 6);
  });

  it('riders: the club’s mean, with what the next one may weigh; eight at least', () => {
    const masses = [60, 62, 66, 70, 74, 78, 82, 84];
    const made = tell({ kind: 'riders', who: 'adult', masses, date: '2026-05-01' });
    const found = result(made, 'riderMass');
    expect(found?.quantity).toMatchObject({ value: 72, how: 'measured', source: 'book', date: '2026-05-01' });
    const deviation = Math.sqrt(masses.reduce((sum, m) => sum + (m - 72) ** 2, 0) / 7);
    const next = deviation * Math.sqrt(1 + 1 / 8);
    expect(found?.interval).toEqual([72 - 1.96 * next, 72 + 1.96 * next].map((v) => expect.closeTo(v, 9)));
    expect(found?.quantity.low).toBeLessThan(60);
    expect((found?.quantity.low ?? 0) + (found?.quantity.high ?? 0)).toBeCloseTo(144, 9);
    expect(tell({ kind: 'riders', who: 'adult', masses: masses.slice(1) })).toMatchObject({
      facts: { found: 7, needed: 8 },
    });
    // One far beyond the others is within the bounds all the same; nobody weighs less than 2 kg.
    const odd = result(
      tell({ kind: 'riders', who: 'adult', masses: [...masses.slice(1).map(() => 70), 200] }),
      'riderMass',
    );
    expect(odd?.quantity.high).toBeGreaterThanOrEqual(200);
    expect(odd?.quantity.low).toBeGreaterThanOrEqual(2);
    expect(odd?.interval[0]).toBeGreaterThanOrEqual(2);
  });
});

describe('by spring balance', () => {
  const pulls = (force: number, fall = 0) =>
    (['forward', 'reverse', 'forward', 'reverse'] as const).map((way) => ({
      force: force + (way === 'forward' ? 1 : -1) * W * fall,
      way,
    }));
  const rolling = W * plain.resistance.rolling.value;

  it('a brake pulled against holds the pull less the rolling resistance; both ways, the floor falls out', () => {
    const gear = plain.brakes[0];
    for (const fall of [0, 0.002]) {
      const made = tell({ kind: 'brake-pull', gear: gear.id, pulls: pulls(200 + rolling, fall) });
      expect(value(made, 'force') / 200).toBeCloseTo(1, 2);
      expect(result(made, 'force')?.belongs).toEqual([
        { paper: 'vehicle', field: 'brakes.force', gear: gear.id },
      ]);
    }
    expect(code(tell({ kind: 'brake-pull', gear: gear.name, pulls: pulls(200) }))).toBe('ok');
    expect(tell({ kind: 'brake-pull', gear: 'none', pulls: pulls(200) })).toMatchObject({
      code: 'no-such-brake',
      facts: { found: 'none', has: [gear.name] },
    });
    const two = pulls(200).slice(2);
    expect(tell({ kind: 'brake-pull', gear: gear.id, pulls: two })).toMatchObject({
      facts: { found: 2, needed: 3 },
    });
    expect(
      tell({ kind: 'brake-pull', gear: gear.id, pulls: [...two, { force: 0, way: 'forward' }] }),
    ).toMatchObject({
      code: 'out-of-range',
      facts: { field: 'pulls.2.force', found: 0 },
    });
    const nobody = measure({ kind: 'brake-pull', gear: gear.id, pulls: pulls(200) } as unknown as Test, {
      instruments,
      assumed: assumedValues,
    });
    expect(nobody).toMatchObject({ code: 'not-stated', facts: { field: 'vehicle' } });
  });

  it('what starts a vehicle and what keeps it moving, each over its weight; as it was pulled, not as it is empty', () => {
    const both = tell({ kind: 'starting-pull', pulls: pulls(0.02 * W), keeping: pulls(0.01 * W) });
    expect(value(both, 'starting')).toBeCloseTo(0.02, 3);
    expect(value(both, 'rolling')).toBeCloseTo(0.01, 3);
    const alone = tell({ kind: 'starting-pull', pulls: pulls(0.02 * W) });
    expect(value(alone, 'starting')).toBeCloseTo(0.02, 3);
    expect(result(alone, 'rolling')).toBeUndefined();
    const full = tell({ kind: 'starting-pull', pulls: pulls(0.02 * W), mass: 2 * TARE });
    expect(value(full, 'starting')).toBeCloseTo(0.01, 3);
  });

  it('locked wheels dragged: pull over weight', () => {
    expect(value(tell({ kind: 'locked-wheels', pulls: pulls(0.25 * W) }), 'adhesion')).toBeCloseTo(0.25, 2);
  });

  it('an engine that slips tells adhesion by the load on its driven wheels, one that stalls its pull', () => {
    const slip = (more: object, vehicle = plain) =>
      tell({ kind: 'hauling-pull', ended: 'slip', pulls: pulls(0.2 * W), ...more }, vehicle);
    expect(value(slip({ drivenMass: TARE / 2 }), 'drivenAdhesion')).toBeCloseTo(0.4, 2);
    expect(slip({})).toMatchObject({ code: 'not-stated', facts: { field: 'drivenMass' } });
    const driven = { ...plain, groups: plain.groups.map((g) => ({ ...g, driven: true })) };
    expect(value(slip({}, driven), 'drivenAdhesion')).toBeCloseTo(0.2, 2);
    const half = { ...plain, groups: plain.groups.map((g, i) => ({ ...g, driven: i === 0 })) };
    expect(code(slip({}, half))).toBe('not-stated');
    const stall = (vehicle: Vehicle) =>
      tell({ kind: 'hauling-pull', ended: 'stall', pulls: pulls(300) }, vehicle);
    expect(stall(plain)).toMatchObject({ code: 'not-stated', facts: { field: 'traction' } });
    const curve = [{ speed: 0, force: 500 }];
    const drawn = stall({ ...plain, traction: { kind: 'drawbar', curve, how: 'stated' } });
    expect(value(drawn, 'drawbarPull') / 300).toBeCloseTo(1, 2);
    expect(result(drawn, 'drawbarPull')?.careful).toBe('low');
  });
});

it('a reading that looks like another unit’s is named, the nearest of its kind', () => {
  const slip = (found: number, expected: number, kind: Parameters<typeof slipOf>[0]['kind']) =>
    slipOf({ found, expected, kind });
  expect(slip(300, 30, 'time')).toBe('tenfold');
  expect(slip(3, 30, 'length')).toBe('tenfold');
  expect(slip(98.4, 30, 'length')).toBe('ft-m');
  expect(slip(30, 98.4, 'length')).toBe('ft-m');
  expect(slip(98.4, 30, 'time')).toBeUndefined();
  expect([slip(4.47, 2, 'speed'), slip(7.2, 2, 'speed'), slip(3.2, 2, 'speed')]).toEqual([
    'mph-m/s',
    'km/h-m/s',
    'mph-km/h',
  ]);
  expect([
    slip(1, 60, 'time'),
    slip(220, 100, 'mass'),
    slip(444, 100, 'force'),
    slip(980, 100, 'force'),
  ]).toEqual(['min-s', 'lb-kg', 'lb-N', 'kg-N']);
  expect(slip(1450, 100, 'gaugePressure')).toBe('psi-bar');
  expect(slip(30 * 10 * Math.exp(0.119), 30, 'time')).toBe('tenfold');
  expect(slip(30 * 10 * Math.exp(0.121), 30, 'time')).toBeUndefined();
  expect([slip(0, 3, 'time'), slip(3, 0, 'time')]).toEqual([undefined, undefined]);
});

describe('the train of a test', () => {
  it('what its parts share is one factor, bounds moved together, by weight', () => {
    const parts = [between(1, 2, 4, 'assumed'), between(2, 4, 5, 'assumed')];
    expect(pooled(parts, (q) => q)).toMatchObject({ value: 1, low: 0.5, high: 1.5 });
    const weighed = pooled(
      parts,
      (q) => q,
      (q) => (q.value === 2 ? 3 : 1),
    );
    expect([weighed.low, weighed.high]).toEqual([5 / 10, 17 / 10].map((v) => expect.closeTo(v, 12)));
  });

  it('parts alike are one unknown; numbered where there are several', () => {
    const [a, b] = [exact(0.01), between(0.01, 0.01, 0.02, 'assumed')];
    expect(alike([a, b, a], (q) => q)).toEqual([[a, a], [b]]);
    expect([numbered('rolling', 0, 1), numbered('rolling', 1, 2)]).toEqual(['rolling', 'rolling/2']);
    const of = (rolling: typeof a) => ({ vehicle: { resistance: { rolling } } }) as unknown as LoadedVehicle;
    expect(rollersOf([of(a), of(b), of(a)]).map((r) => [r.key, r.vehicles.length, r.rolling])).toEqual([
      ['rolling/1', 2, a],
      ['rolling/2', 1, b],
    ]);
    expect(rollersOf([of(a)])[0].key).toBe('rolling');
  });

  it('run the other way, a chainage of the line lies as far from its other end', () => {
    const { line } = randomOuting(1, 1);
    expect(runningLine(line, 'forward').line).toBe(line);
    expect(runningLine(line, 'forward').at(7)).toBe(7);
    expect(runningLine(line, 'reverse').at(7)).toBe(line.length - 7);
  });
});
