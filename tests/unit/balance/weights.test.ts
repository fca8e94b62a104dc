/** How what balance finds weighs, at its bound and on either side, of figures laid by hand. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { BalanceData } from '../../../engine/questions/balance/ask.ts';
import type { FlangeWay, NearestClimb } from '../../../engine/questions/balance/climbing.ts';
import type { VehicleBalance } from '../../../engine/questions/balance/look.ts';
import { climbFindings } from '../../../engine/questions/balance/say-climb.ts';
import { centreFindings, loadFindings, twistFindings } from '../../../engine/questions/balance/say-load.ts';
import { checkTwist, twistFreedom } from '../../../engine/questions/balance/twist.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { Suspension } from '../../../engine/things/vehicle/types.ts';
import { altered, plain } from '../../support/rules.ts';

const outing = plain(3);
const context = openOuting(outing);
const words = (findings: readonly Finding[]) => findings.map((f) => `${f.severity}: ${f.code}`);
const data = (changes: object): BalanceData =>
  ({
    vehicles: [],
    rolling: [],
    unbounded: [],
    grid: Float64Array.of(0, 10),
    ...changes,
  }) as unknown as BalanceData;
const of = (index: number, changes: object): VehicleBalance =>
  ({
    index,
    vehicle: outing.train.vehicles[index].id,
    centreKnown: true,
    highest: 0.6,
    evenAlong: 1,
    axles: [],
    ...changes,
  }) as unknown as VehicleBalance;

describe('a flange', () => {
  const climb = (found: number, index = 1, angleKnown = true): NearestClimb => ({
    index,
    group: 0,
    at: 10,
    found,
    limit: 0.8,
    shape: { angle: 1.2, friction: 0.4, angleKnown, frictionKnown: true } as NearestClimb['shape'],
    front: 5,
    rear: 5,
  });
  interface Near {
    readonly nearest?: Partial<Record<FlangeWay, NearestClimb>>;
    readonly unmeasured?: NearestClimb;
    readonly holdsAt?: readonly number[];
  }
  const said = ({ nearest = {}, unmeasured, holdsAt = [0, 0] }: Near) =>
    climbFindings(
      context,
      data({ flanges: { nearest, unmeasured, ceiling: { speed: Float64Array.from(holdsAt) } } }),
    );

  it.each([
    ['running', 'forbids'],
    ['creeping', 'limits'],
    ['braking', 'limits'],
    ['engine-braking', 'notes'],
  ] as const)('that climbs %s, %s; at its limit it holds', (way, severity) => {
    const [only, ...more] = said({ nearest: { [way]: climb(1) } });
    expect(more).toEqual([]);
    expect(only).toMatchObject({
      code: 'flange-may-climb',
      severity,
      where: { vehicle: 'car1', from: 10, to: 10 },
      margin: -0.25,
      facts: { way },
      sure: 'stated',
    });
    expect(said({ nearest: { [way]: climb(0.8) } })).toEqual([]);
  });
  it('that a slower run would hold limits, where some speed holds everywhere', () => {
    expect(said({ nearest: { running: climb(1) }, holdsAt: [3, 2] })).toMatchObject([
      { severity: 'limits', facts: { slower: { si: 2 } } },
    ]);
    expect(words(said({ nearest: { running: climb(1) }, holdsAt: [0, 2] }))).toEqual([
      'forbids: flange-may-climb',
    ]);
    expect(words(said({ nearest: { running: climb(1) }, holdsAt: [3, Infinity] }))).toEqual([
      'forbids: flange-may-climb',
    ]);
  });
  it('is told once for a vehicle, and of each vehicle', () => {
    expect(said({ nearest: { running: climb(1), braking: climb(2) } })).toHaveLength(1);
    expect(words(said({ nearest: { running: climb(1), braking: climb(2, 2) } }))).toEqual([
      'forbids: flange-may-climb',
      'limits: flange-may-climb',
    ]);
  });
  it('whose wheel has lifted has no figure and no margin left', () => {
    const [only] = said({ nearest: { braking: climb(Infinity) } });
    expect(only.found).toBeUndefined();
    expect(only.margin).toBe(-1);
  });
  describe('that nobody measured', () => {
    const code = 'flange-shape-unknown';
    it.each([
      ['running', 'unknown'],
      ['creeping', 'notes'],
      ['braking', 'limits'],
      ['engine-braking', 'notes'],
    ] as const)('and might climb %s: %s', (way, severity) => {
      expect(said({ nearest: { [way]: climb(1, 1, false) } })).toMatchObject([
        { code, severity, measure: 'vehicle.flange.angle', sure: 'assumed', facts: { bears: false } },
      ]);
    });
    it('is asked for though one that was measured is nearer, and noted where it holds', () => {
      const both = said({ nearest: { running: climb(2) }, unmeasured: climb(1, 2, false) });
      expect(words(both)).toEqual(['forbids: flange-may-climb', `unknown: ${code}`]);
      expect(said({ unmeasured: climb(0.4, 2, false) })).toMatchObject([
        { code, severity: 'notes', margin: 0.5, facts: { bears: true }, where: { vehicle: 'car2' } },
      ]);
      expect(words(said({ nearest: { running: climb(2) }, unmeasured: climb(0.4, 2, false) }))).toEqual([
        'forbids: flange-may-climb',
      ]);
    });
    it('is slowed for by nothing that is not known', () =>
      expect(words(said({ unmeasured: climb(1, 2, false), holdsAt: [2, 2] }))).toEqual([`unknown: ${code}`]));
  });
});

describe('a centre of gravity that nobody measured', () => {
  const said = (
    vehicles: readonly VehicleBalance[],
    unbounded: readonly number[] = [],
    speed = [3, 3],
    by = [1, 1],
  ) =>
    centreFindings(
      context,
      data({ vehicles, unbounded, wanted: Float64Array.of(3, 3), ceiling: { speed, by } }),
    );
  const bounded = (share: number) => of(1, { centreKnown: false, standing: { share } });
  it('cannot be told where nothing bounds it, or the bound would tip', () => {
    expect(said([], [2])).toMatchObject([
      {
        severity: 'unknown',
        where: { vehicle: 'car2' },
        measure: 'vehicle.centreHeight',
        facts: { bounded: 'no' },
      },
    ]);
    expect(said([bounded(0)])).toMatchObject([{ severity: 'unknown', facts: { bounded: 'tips' } }]);
  });
  it('limits where its bound sets a speed, and else is safe', () => {
    expect(said([bounded(0.1)], [], [3, 2])).toMatchObject([
      { severity: 'limits', facts: { bounded: 'limits' } },
    ]);
    expect(said([bounded(0.1)], [], [3, 2], [1, 2])).toMatchObject([{ severity: 'notes' }]);
    expect(said([bounded(0.1)])).toMatchObject([{ severity: 'notes', facts: { bounded: 'safe' } }]);
  });
  it('is nothing to say where it is known', () =>
    expect(said([of(1, { standing: { share: 0 } })])).toEqual([]));
});

describe('the load on two trucks', () => {
  const said = (evenAlong: number) => loadFindings(context, data({ vehicles: [of(1, { evenAlong })] }));
  it('is uneven below half, and lifts a truck at nothing', () => {
    expect(said(0.5)).toEqual([]);
    expect(said(0.4)).toMatchObject([
      { code: 'trucks-uneven', severity: 'notes', margin: expect.closeTo(-0.2, 9) },
    ]);
    expect(said(0)).toMatchObject([{ code: 'truck-lifts', severity: 'forbids', required: { si: 0 } }]);
    expect(said(0)[0].margin).toBeLessThan(0);
    expect(said(-0.2)).toMatchObject([{ severity: 'forbids', margin: -0.2 }]);
  });
});

describe('twist', () => {
  /** Freedom of a tenth of an inch over 2 m. */
  const measured = (freedom?: number) =>
    altered(outing, 1, {
      ...(freedom === undefined ? {} : { suspension: { equalised: false, twistFreedom: freedom } }),
    });
  const said = (unloading: readonly number[], line: object = { twist: 1 / 240 }, freedom?: number) => {
    const base = measured(freedom);
    const asked = openOuting({ ...base, line: { ...base.line, ...line } });
    const vehicles = unloading.map((u, i) =>
      of(i + 1, {
        twist: { unloading: u, lift: 1, freedom: 2, over: 3, margin: 1 - u / 0.6 },
        axles: [{ left: 100, right: 100 }],
      }),
    );
    return twistFindings(asked, data({ vehicles, trackTwist: 1 / 240 })).filter(
      (f) => f.code !== 'twist-unknown',
    );
  };
  it('that takes more than three fifths of a wheel’s load limits, and all of it forbids', () => {
    expect(said([0.6])).toEqual([]);
    expect(said([0.7])).toMatchObject([{ code: 'wheel-unloads-on-twist', severity: 'limits' }]);
    expect(words(said([0.99]))).toEqual(['limits: wheel-unloads-on-twist']);
    expect(words(said([1]))).toEqual(['forbids: wheel-unloads-on-twist']);
  });
  it('is told of the worst vehicle', () => {
    expect(said([0.7, 0.9, 0.8])).toMatchObject([{ where: { vehicle: 'car2' }, found: { si: 0.9 } }]);
    expect(said([0.9, 0.7])).toMatchObject([{ where: { vehicle: 'car1' } }]);
  });
  it('is asked for: of vehicles without a freedom, and of a line where somebody would not bear the poorest', () => {
    const unknown = (freedom: number | undefined, twist?: number) => {
      const base = measured(freedom);
      const { twist: _, ...line } = base.line;
      const asked = openOuting({ ...base, line: twist === undefined ? line : { ...line, twist } });
      const vehicles = [of(1, { axles: [{ left: 100, right: 100 }] })];
      return twistFindings(asked, data({ vehicles })).map((f) => [f.severity, f.measure]);
    };
    const vehicle = ['notes', 'vehicle.suspension.twistFreedom'];
    const line = ['notes', 'line.twist'];
    expect(unknown(undefined, 0.004)).toEqual([vehicle]);
    expect(unknown(undefined)).toEqual([vehicle, line]);
    expect(unknown(0.001)).toEqual([line]);
    // 3 in over 62 ft lift a wheel by 8 mm over 2 m: a freedom of 50 mm bears it.
    expect(unknown(0.05)).toEqual([]);
  });

  const car = (suspension: Partial<Suspension>) =>
    altered(outing, 1, { suspension: { equalised: false, ...suspension } }).train.vehicles[1];
  it('a wheel’s load over its springs is its freedom: four corners of 100 N on 20 N/mm give 20 mm', () => {
    expect(twistFreedom(car({ wheelStiffness: exact(20_000) }), 100)).toBeCloseTo(0.02, 12);
    expect(twistFreedom(car({ twistFreedom: 0.003, wheelStiffness: exact(1) }), 100)).toBe(0.003);
    expect(twistFreedom(car({}), 100)).toBeUndefined();
    expect(twistFreedom(car({ wheelStiffness: exact(0) }), 100)).toBeUndefined();
  });
  it('the lift is that of the track and of the frame together, over the freedom', () => {
    const [base] = [car({ twistFreedom: 0.01, frameTwist: 0.002 })];
    const { groups } = base;
    const over = groups[groups.length - 1].at - groups[0].at;
    const check = checkTwist(base, -0.001, 100);
    expect(check?.over).toBeCloseTo(over, 12);
    expect(check?.lift).toBeCloseTo(0.001 * over + 0.002, 5);
    expect(check?.unloading).toBeCloseTo((0.001 * over + 0.002) / 0.01, 3);
    expect(check?.margin).toBeCloseTo(1 - (0.001 * over + 0.002) / 0.01 / 0.6, 3);
    expect(checkTwist(car({ twistFreedom: 0 }), 0.001, 100)).toBeUndefined();
  });
});
