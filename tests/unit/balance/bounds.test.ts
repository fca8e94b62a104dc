/** Every bound of what balance finds, from both sides, and what is told at it: a look at a train with one figure put otherwise. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBalance, type BalanceData } from '../../../engine/questions/balance/ask.ts';
import { MOST_UNLOADING, UNEVEN_TRUCKS, USUAL_LEAN } from '../../../engine/questions/balance/limits.ts';
import type { VehicleBalance } from '../../../engine/questions/balance/look.ts';
import { centreFindings, loadFindings, twistFindings } from '../../../engine/questions/balance/say-load.ts';
import { curveFindings, leanFindings, standingFindings } from '../../../engine/questions/balance/say-tip.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { bentLine, car, person } from '../../support/balance.ts';
import { drawer, randomOuting, randomVehicle } from '../../support/random-outings.ts';

const draw = drawer(3);
const engine: Vehicle = { ...randomVehicle(draw, 'engine', true), centreHeight: exact(0.3) };
const calm: Vehicle = { ...car(draw), suspension: { equalised: true, twistFreedom: 0.02 } };
const outing: Outing = {
  ...randomOuting(1, 1),
  line: { ...bentLine(12), twist: 0.002 },
  train: { name: 'test', vehicles: [engine, calm], pipeBrokenAfter: [], chainsFastened: true },
  riders: [1, 2].map((i) => person(`p${i}`, 60 + i, { vehicle: 'car', seat: `${i}` })),
  direction: 'forward',
  plannedSpeed: 2.5,
};
const context = openOuting(outing);
const { data } = askBalance(context, gridOf(context.line.length));
/** The car, its figures as given; the engine is left out of sight. */
const [, its] = data.vehicles;
const looked = (changes: Partial<VehicleBalance>, more: Partial<BalanceData> = {}): BalanceData => ({
  ...data,
  vehicles: [{ ...its, ...changes }],
  rolling: [data.rolling[1]],
  grounds: [data.grounds[1]],
  ...more,
});
/** The same track, canted wherever one looks. */
const [, ground] = data.grounds;
const canted = { grounds: [{ ...ground, cant: ground.cant.map(() => 0.01) }] };
const words = (findings: readonly Finding[]): string[] => findings.map((f) => `${f.code} ${f.severity}`);
const LEAST = 1 - MOST_UNLOADING.value;
const [there] = data.grid;

describe('standing', () => {
  const says = (evenAcross: number, share: number, centreKnown = true): readonly Finding[] =>
    standingFindings(
      context,
      looked({ evenAcross, centreKnown, standing: { ...its.standing, share, at: there } }),
    );

  it('tips where a wheel bears nothing, on the level or on cant; is light below two fifths; else is well', () => {
    expect(words(says(0, 0.5))).toEqual(['tips-at-rest forbids']);
    expect(words(says(1e-6, 0.5))).toEqual(['stands-light-on-one-side limits']);
    expect(words(says(0.5, 0))).toEqual(['tips-at-rest forbids']);
    expect(words(says(0.5, 1e-6))).toEqual(['stands-light-on-one-side limits']);
    expect(words(says(LEAST - 1e-9, 1))).toEqual(['stands-light-on-one-side limits']);
    expect(words(says(1, LEAST - 1e-9))).toEqual(['stands-light-on-one-side limits']);
    expect(words(says(LEAST, LEAST))).toEqual([]);
  });

  it('of a centre that is only bounded from above nothing is said on cant; on the level it is', () => {
    expect(words(says(0.5, -0.1, false))).toEqual([]);
    expect(words(says(-0.1, -0.1, false))).toEqual(['tips-at-rest forbids']);
    expect(says(-0.1, 0.2, false)[0].sure).toBe('assumed');
    expect(says(-0.1, 0.2)[0].sure).toBe('stated');
  });

  it('is told where it is worst, by how much, and what makes it so', () => {
    expect(says(-0.2, -0.3)[0]).toMatchObject({
      where: { vehicle: 'car' },
      found: { si: -0.2 },
      required: { si: 0 },
      margin: -0.2,
      facts: { where: 'level', height: { si: its.highest } },
    });
    expect(says(-0.2, -0.3)[0].where.from).toBeUndefined();
    const standing = { ...its.standing, share: -0.3, at: there };
    const tips = (more: Partial<BalanceData>): Finding =>
      standingFindings(context, looked({ evenAcross: 0.2, standing }, more))[0];
    expect(tips(canted)).toMatchObject({
      where: { vehicle: 'car', from: there, to: there },
      found: { si: -0.3 },
      margin: -0.3,
      facts: { where: 'cant' },
    });
    // Without cant under it no place is worse than another.
    expect(tips({})).toMatchObject({ found: { si: -0.3 }, facts: { where: 'level' } });
    expect(tips({}).where.from).toBeUndefined();
    expect(says(0, 1)[0].margin).toBe(-1e-9);
    const seated = says(0.1, 0.2)[0];
    expect(seated).toMatchObject({ found: { si: 0.1 }, required: { si: LEAST }, facts: { by: 'seating' } });
    expect(seated.where.from).toBeUndefined();
    expect(seated.margin).toBeCloseTo(0.1 / LEAST - 1, 12);
    expect(says(0.2, 0.1)[0]).toMatchObject({
      where: { from: there },
      found: { si: 0.1 },
      facts: { by: 'cant' },
    });
  });

  it('the heavy side is the one that the people sit on', () => {
    const side = (Y: number): unknown => {
      const rolling = { ...data.rolling[1], body: { ...data.rolling[1].body, Y } };
      const of = looked({ evenAcross: 0.1 }, { rolling: [rolling] });
      const [{ facts }] = standingFindings(context, of);
      return 'side' in facts ? facts.side : undefined;
    };
    expect([side(-1), side(1)]).toEqual(['right', 'left']);
  });
});

describe('a curve', () => {
  const n = data.grid.length;
  const says = (slow: Readonly<Record<number, number>>): Finding[] => {
    const speed = new Float64Array(n).fill(5);
    for (const [j, v] of Object.entries(slow)) speed[Number(j)] = v;
    const ceiling = { speed, by: new Int16Array(n).fill(1) };
    return curveFindings(context, looked({}, { ceiling, wanted: new Float64Array(n).fill(2.5) }));
  };
  const middle = data.grid.findIndex((s) => s > 101);

  it('limits from where less is allowed than would be run to where it ends, by the least in it', () => {
    expect(says({})).toEqual([]);
    expect(says({ [middle]: 2.5 })).toEqual([]);
    expect(says({ [middle]: 2.5 - 1e-8 })).toHaveLength(1);
    const [one, ...more] = says({ [middle]: 2, [middle + 1]: 1.5, [middle + 2]: 1.8 });
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      severity: 'limits',
      where: { vehicle: 'car', from: data.grid[middle], to: data.grid[middle + 2] },
      found: { si: 1.5 },
      required: { si: 2.5 },
      facts: { share: { si: data.required.value }, height: { si: its.highest } },
    });
    expect(one.margin).toBeCloseTo(1.5 / 2.5 - 1, 12);
    // Under the whole of a car in a curve of 12 m.
    expect('radius' in one.facts && one.facts.radius).toMatchObject({ si: expect.closeTo(12, 6) });
    expect(one.sum?.inputs).toMatchObject({ radius: expect.closeTo(12, 6), base: data.rolling[1].body.base });
  });

  it('two stretches are two findings; where nothing is allowed it forbids; to the end of the line it counts', () => {
    const two = says({ [middle]: 2, [middle + 2]: 1 });
    expect(two.map((f) => f.found?.si)).toEqual([2, 1]);
    expect(words(says({ [middle]: 0 }))).toEqual(['curve-speed-limited-by-balance forbids']);
    const inCurve = says({ [middle]: 2, [middle + 1]: 2 });
    expect(inCurve[0].where.to).toBe(data.grid[middle + 1]);
  });
});

describe('people who lean', () => {
  const together = { at: data.grid[3], speed: 2, lean: 0.1 };
  const place = (one: number, share = 0.8) => ({ ...its.standing, at: data.grid[3], share, lift: { one } });
  const says = (changes: Partial<VehicleBalance>): readonly Finding[] =>
    leanFindings(
      context,
      looked({ together: { ...together, lean: 1 }, running: place(1), standing: place(1), ...changes }),
    );

  it('of several cars the one that goes over first is named, wherever it runs', () => {
    const named = (leans: readonly number[]) => {
      const vehicles = leans.map((lean, i) => ({
        ...data.vehicles[i],
        together: { ...together, lean },
        running: place(1),
        standing: place(1),
      }));
      return leanFindings(context, { ...data, vehicles }).map((f) => [f.where.vehicle, f.found?.si]);
    };
    const [first, second] = data.vehicles.map((v) => v.vehicle);
    expect(named([0.12, 0.08])).toEqual([[second, 0.08]]);
    expect(named([0.08, 0.12])).toEqual([[first, 0.08]]);
  });

  it('all of a car: between nothing and what is usual; none that lies over already', () => {
    const all = (lean: number): string[] => words(says({ together: { ...together, lean } }));
    expect(all(USUAL_LEAN.value - 1e-9)).toEqual(['all-lean-goes-over limits']);
    expect(all(USUAL_LEAN.value)).toEqual([]);
    expect(all(1e-9)).toEqual(['all-lean-goes-over limits']);
    expect(all(0)).toEqual([]);
    const { together: _, ...nobody } = its;
    expect(
      leanFindings(context, {
        ...looked({}),
        vehicles: [{ ...nobody, running: place(1), standing: place(1) }],
      }),
    ).toEqual([]);
    const [finding] = says({ together });
    expect(finding).toMatchObject({
      where: { vehicle: 'car', from: data.grid[3] },
      found: { si: 0.1 },
      required: { si: USUAL_LEAN.value },
      facts: { place: 'anywhere', riders: 2, speed: { si: 2 }, cant: { si: 0 }, vehicles: 1 },
    });
    expect(finding.margin).toBeCloseTo(0.1 / USUAL_LEAN.value - 1, 12);
  });

  it('where they do is running, standing or anywhere', () => {
    const middle = data.grid.findIndex((s) => s > 101);
    const at = (speed: number): unknown => {
      const [{ facts }] = says({ together: { at: data.grid[middle], speed, lean: 0.1 } });
      return 'place' in facts ? facts.place : undefined;
    };
    expect([at(2), at(0)]).toEqual(['running', 'standing']);
  });

  it('one alone: the least of where they stand and run, below what is usual, where the car stands at all', () => {
    expect(words(says({ running: place(USUAL_LEAN.value) }))).toEqual([]);
    expect(words(says({ running: place(USUAL_LEAN.value - 1e-9) }))).toEqual(['lean-small notes']);
    expect(words(says({ standing: place(0.1) }))).toEqual(['lean-small notes']);
    expect(words(says({ standing: place(0.1, 0) }))).toEqual([]);
    expect(words(says({ standing: place(0.1, 1e-9) }))).toEqual(['lean-small notes']);
    const [finding] = says({ running: place(0.12), standing: place(0.1) });
    expect(finding).toMatchObject({ found: { si: 0.1 }, facts: { rider: 'p2', vehicles: 1 } });
    expect(finding.margin).toBeCloseTo(0.1 / USUAL_LEAN.value - 1, 12);
    expect(
      words(
        leanFindings(
          context,
          looked({ running: { ...place(1), lift: {} }, standing: { ...place(1), lift: {} } }),
        ),
      ),
    ).not.toContain('lean-small notes');
  });
});

describe('trucks and twist', () => {
  const along = (evenAlong: number): Finding | undefined =>
    loadFindings(context, looked({ evenAlong })).find((f) => f.code.startsWith('truck'));

  it('a truck that bears nothing lifts; below half of its share it is uneven', () => {
    expect(along(0)).toMatchObject({
      code: 'truck-lifts',
      severity: 'forbids',
      margin: -1e-9,
      required: { si: 0 },
    });
    expect(along(-0.2)).toMatchObject({ code: 'truck-lifts', margin: -0.2, found: { si: -0.2 } });
    expect(along(1e-9)).toMatchObject({ code: 'trucks-uneven', severity: 'notes', required: { si: 0.5 } });
    expect(along(UNEVEN_TRUCKS.value - 1e-9)?.code).toBe('trucks-uneven');
    expect(along(0.4)?.margin).toBeCloseTo(0.4 / 0.5 - 1, 12);
    expect(along(UNEVEN_TRUCKS.value)).toBeUndefined();
  });

  it('a wheel unloads beyond three fifths, hangs from one on; of several vehicles the worst is told', () => {
    const twist = (unloading: number) => ({ over: 1.3, lift: 0.004, freedom: 0.01, unloading, margin: -0.1 });
    const says = (unloading: number): readonly Finding[] =>
      twistFindings(context, looked({ twist: twist(unloading) })).filter(
        (f) => f.code === 'wheel-unloads-on-twist',
      );
    expect(words(says(MOST_UNLOADING.value))).toEqual([]);
    expect(words(says(MOST_UNLOADING.value + 1e-9))).toEqual(['wheel-unloads-on-twist limits']);
    expect(words(says(1 - 1e-9))).toEqual(['wheel-unloads-on-twist limits']);
    expect(words(says(1))).toEqual(['wheel-unloads-on-twist forbids']);
    expect(says(0.8)[0]).toMatchObject({
      found: { si: 0.8 },
      margin: -0.1,
      facts: {
        lift: { si: 0.004 },
        freedom: { si: 0.01 },
        over: { si: 1.3 },
        twist: { si: data.trackTwist },
      },
    });
    const [a, b] = [
      { ...its, vehicle: 'a', twist: twist(0.7) },
      { ...its, vehicle: 'b', twist: twist(0.9) },
    ];
    for (const vehicles of [
      [a, b],
      [b, a],
    ])
      expect(twistFindings(context, { ...looked({}), vehicles })[0].where.vehicle).toBe('b');
  });

  it('what nobody measured is asked for: of the first such vehicle with how many, and of the line', () => {
    const bare = { ...calm, suspension: { equalised: true } };
    const told = (vehicles: readonly Vehicle[], twist?: number) => {
      const { twist: _, ...line } = outing.line;
      const here = {
        ...outing,
        line: twist === undefined ? line : { ...line, twist },
        train: { ...outing.train, vehicles },
      };
      const opened = openOuting(here);
      return twistFindings(opened, askBalance(opened, gridOf(opened.line.length)).data)
        .filter((f) => f.code === 'twist-unknown')
        .map((f) => [f.where.vehicle, 'vehicles' in f.facts && f.facts.vehicles, f.measure]);
    };
    const free = { ...engine, suspension: { equalised: true, twistFreedom: 0.1 } };
    const ofVehicle = 'vehicle.suspension.twistFreedom';
    expect(told([free, calm], 0.002)).toEqual([]);
    // Bears the poorest track there is: 3 in over 62 ft on 1.3 m is 5 mm of 20.
    expect(told([free, calm])).toEqual([]);
    expect(told([free, { ...calm, suspension: { equalised: true, twistFreedom: 0.006 } }])).toEqual([
      [undefined, 0, 'line.twist'],
    ]);
    expect(told([free, bare], 0.002)).toEqual([['car', 1, ofVehicle]]);
    expect(told([{ ...engine, suspension: { equalised: true } }, bare])).toEqual([
      ['engine', 2, ofVehicle],
      [undefined, 0, 'line.twist'],
    ]);
  });
});

describe('a centre that nobody measured', () => {
  const n = data.grid.length;
  const says = (share: number, by: number, speed: number, unbounded: readonly number[] = []) =>
    centreFindings(
      context,
      looked(
        { centreKnown: false, standing: { ...its.standing, share } },
        {
          unbounded,
          wanted: new Float64Array(n).fill(2),
          ceiling: { speed: new Float64Array(n).fill(speed), by: new Int16Array(n).fill(by) },
        },
      ),
    ).map((f) => [f.severity, 'bounded' in f.facts && f.facts.bounded]);

  it('cannot be told where it would tip, limits where it sets a speed of this vehicle, else is noted', () => {
    expect(says(0, 0, 5)).toEqual([['unknown', 'tips']]);
    expect(says(1e-9, 0, 5)).toEqual([['notes', 'safe']]);
    expect(says(0.5, its.index, 1.9)).toEqual([['limits', 'limits']]);
    expect(says(0.5, its.index, 2)).toEqual([['notes', 'safe']]);
    expect(says(0.5, 0, 1.9)).toEqual([['notes', 'safe']]);
    expect(says(0.5, 0, 5, [0])).toEqual([
      ['unknown', 'no'],
      ['notes', 'safe'],
    ]);
  });
});
