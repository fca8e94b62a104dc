/** What is said of brakes and how it weighs, at its bound and on either side, of figures laid by hand. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBrakes } from '../../../engine/questions/brakes/ask.ts';
import { fillingFindings } from '../../../engine/questions/brakes/filling.ts';
import { askBrakeGear } from '../../../engine/questions/brakes/gear.ts';
import type { Standing } from '../../../engine/questions/brakes/standing.ts';
import {
  type WithoutSupply,
  withoutSupplyFindings,
} from '../../../engine/questions/brakes/without-supply.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { GearFill, TrainFill } from '../../../engine/things/brake/fill.ts';
import type { Reserve } from '../../../engine/things/brake/reserve.ts';
import { braked, gearOf } from '../../support/brakes-left.ts';
import { altered } from '../../support/rules.ts';

const short = (findings: readonly Finding[]) => findings.map((f) => `${f.severity}: ${f.code}`);
const air = braked({ kind: 'straight-air' });
const context = openOuting(air);
const { practice } = air.assumed;
const [, { brakes }] = air.train.vehicles;
const [gear] = brakes;

describe('a standing train that leaks', () => {
  const stand = practice.stand.value;
  const standing = (changes: Partial<Standing>): Standing => ({
    pull: 100,
    at: 50,
    sum: { id: 'grade-force', inputs: { mass: 1000, grade: 0.01 } },
    parking: 0,
    tight: 200,
    time: 2 * stand,
    unmeasured: [],
    parkingGrade: 0,
    ...changes,
  });
  const said = (changes: Partial<Standing>) =>
    withoutSupplyFindings(context, { reserves: [], losses: [], standing: standing(changes) });
  const before = 'leaks-off-before-time';

  it('limits where it does not hold as long as is wanted', () => {
    expect(short(said({}))).toEqual([`notes: ${before}`]);
    expect(short(said({ time: stand }))).toEqual([`notes: ${before}`]);
    expect(short(said({ time: stand / 2 }))).toEqual([`limits: ${before}`]);
    expect(said({ time: stand / 2 })[0]).toMatchObject({ margin: -0.5, where: { from: 50, to: 50 } });
  });
  it('is no matter where what does not leak holds it, where nothing pulls, and where it holds a day', () => {
    expect(said({ parking: 100 })).toEqual([]);
    expect(short(said({ parking: 99.9 }))).toEqual([`notes: ${before}`]);
    expect(said({ time: Infinity })).toEqual([]);
  });
  it('that does not hold while tight is told of by holding', () => {
    expect(said({ tight: 99.9 })).toEqual([]);
    expect(short(said({ tight: 100 }))).toEqual([`notes: ${before}`]);
  });
  it('of whose leak nobody knows is asked for, where it would hold no time', () => {
    const unmeasured = [{ vehicle: 2, gear }];
    expect(said({ time: 0, unmeasured })).toMatchObject([
      {
        code: 'leak-unknown',
        severity: 'limits',
        where: { vehicle: 'car2' },
        measure: 'vehicle.brakes.brake.rigging.leakRate',
        required: { si: stand },
        facts: { gears: 1 },
      },
    ]);
    expect(short(said({ time: 1, unmeasured }))).toEqual([`limits: ${before}`]);
    expect(short(said({ time: 0 }))).toEqual([`limits: ${before}`]);
  });
});

describe('applications in store', () => {
  const wanted = practice.applications.value;
  const reserve = (full: number, own: boolean): Reserve => ({
    vehicle: own ? 1 : 0,
    kind: own ? 'automatic-air' : 'straight-air',
    full,
    useful: 9,
    pressures: [],
    working: 1,
    ...(own ? { gear } : {}),
  });
  const calm = { losses: [], standing: { ...({} as Standing), pull: 0, parking: 0 } };
  const said = (...reserves: Reserve[]) => withoutSupplyFindings(context, { ...calm, reserves });

  it('fewer than are wanted of a main reservoir, or none in a car’s, limit', () => {
    expect(wanted).toBeGreaterThan(1);
    expect(said(reserve(wanted, false), reserve(1, true))).toEqual([]);
    expect(said(reserve(wanted - 1, false))).toMatchObject([
      {
        code: 'few-applications',
        severity: 'limits',
        where: { vehicle: 'engine' },
        margin: expect.closeTo(-1 / wanted, 12),
      },
    ]);
    expect(said(reserve(0, true))).toMatchObject([
      { severity: 'limits', where: { vehicle: 'car1' }, margin: -1 },
    ]);
  });
  it('are one line, of the reservoir with fewest', () =>
    expect(said(reserve(wanted - 1, false), reserve(0, true))).toMatchObject([
      { found: { si: 0 }, where: { vehicle: 'car1' }, facts: { reservoirs: 2 } },
    ]));
});

describe('a brake lost with its hose', () => {
  const calm = { reserves: [], standing: { ...({} as Standing), pull: 0, parking: 0 } };
  const loss = (parted: 'lost' | 'unknown' | 'applies' | 'as-set'): WithoutSupply['losses'] => [
    { vehicle: 1, gear, loss: { parted, engineFails: 'as-set' } },
  ];
  const said = (losses: WithoutSupply['losses'], outing = context) =>
    withoutSupplyFindings(outing, { ...calm, losses });
  it('is a note, one that nobody has told of limits and is asked for, and others are no matter', () => {
    expect(short(said(loss('lost')))).toEqual(['notes: brake-lost-with-hose']);
    expect(said(loss('unknown'))).toMatchObject([
      { code: 'supply-loss-unknown', severity: 'limits', measure: 'vehicle.brakes.brake.onSupplyLoss' },
    ]);
    expect(said(loss('applies'))).toEqual([]);
    expect(said(loss('as-set'))).toEqual([]);
  });
  it('is no loss where it answers nobody', () => {
    const broken = openOuting({ ...air, train: { ...air.train, pipeBrokenAfter: [0] } });
    expect(said(loss('lost'), broken)).toEqual([]);
  });
});

describe('how the brakes fill', () => {
  const timed = { ...gear, deadTime: exact(1), buildUp: exact(2) };
  const fill = (changes: Partial<GearFill>, vehicle = 1): GearFill => ({
    vehicle,
    gear: timed,
    t10: 0.5,
    t90: 2,
    full: 3,
    curve: { time: [], share: [] },
    pressure: 3e5,
    ofWorking: 1,
    block: 100,
    assumed: [],
    ...changes,
  });
  const of = (gears: readonly GearFill[]): TrainFill => ({
    kind: 'straight-air',
    action: 'apply',
    gears,
    missing: [],
    ran: 1,
    balance: 0,
  });
  const applied = (...gears: GearFill[]) => fillingFindings(context, { apply: [of(gears)], release: [] });
  const released = (...gears: GearFill[]) => fillingFindings(context, { apply: [], release: [of(gears)] });
  const enough = practice.reservoir.value;
  const most = practice['over-pressure'].value;
  const spread = practice['fill-spread'].value;
  const release = practice.release.value;

  it('later than stated limits: 1 s and nine tenths of 2 s', () => {
    expect(applied(fill({ t90: 2.8 }))).toEqual([]);
    expect(applied(fill({ t90: 3.5 }))).toMatchObject([
      { code: 'brake-slower-than-stated', severity: 'limits', required: { si: 2.8 }, margin: -0.25 },
    ]);
    const { buildUp: _, ...untimed } = timed;
    expect(applied(fill({ t90: 3.5, gear: untimed }))).toEqual([]);
  });
  it('the last much later than the first is a note', () => {
    const { buildUp: _, ...untimed } = timed;
    const at = (t90: number, vehicle: number) => fill({ gear: untimed, t90, vehicle });
    expect(applied(at(1, 1), at(1 + spread, 2))).toEqual([]);
    expect(applied(at(1, 1), at(1.1 + spread, 3), at(1.05, 2))).toMatchObject([
      {
        code: 'brake-slow-to-fill',
        severity: 'notes',
        where: { vehicle: 'car3' },
        required: { si: 1 + spread },
      },
    ]);
    // One that never fills is told of by what it lacks.
    expect(applied(at(1, 1), at(Infinity, 2))).toEqual([]);
  });
  it('less than is reckoned with limits, unless the stop reckons with what is left', () => {
    expect(applied(fill({ ofWorking: enough }))).toEqual([]);
    const less = applied(fill({ ofWorking: enough / 2 }), fill({ ofWorking: enough / 1.5, vehicle: 2 }));
    expect(less).toMatchObject([
      { code: 'reservoir-too-small', severity: 'limits', where: { vehicle: 'car1' }, facts: { cars: 2 } },
    ]);
    expect(less[0].margin).toBeCloseTo(-0.5, 12);
    const known = { ...timed, forceShare: 0.5 };
    expect(short(applied(fill({ ofWorking: enough / 2, gear: known })))).toEqual([
      'notes: reservoir-too-small',
    ]);
    const both = applied(fill({ ofWorking: enough / 2, gear: known }), fill({ ofWorking: enough / 3 }));
    expect(short(both)).toEqual(['limits: reservoir-too-small']);
  });
  it('more than is reckoned with limits: wheels slide sooner', () => {
    expect(applied(fill({ ofWorking: most }))).toEqual([]);
    const more = applied(fill({ ofWorking: most * 1.25, vehicle: 2 }), fill({ ofWorking: most * 2 }));
    expect(more).toMatchObject([
      { code: 'brake-stronger-than-stated', severity: 'limits', where: { vehicle: 'car1' }, margin: -0.5 },
    ]);
  });
  it('slow to let go is a note; what never lets go limits', () => {
    expect(released(fill({ t90: release }))).toEqual([]);
    expect(short(released(fill({ t90: release * 1.01 })))).toEqual(['notes: brake-slow-to-release']);
    expect(short(released(fill({ recharged: release * 1.01 })))).toEqual(['notes: brake-slow-to-release']);
    expect(short(released(fill({ t90: Infinity }), fill({})))).toEqual(['limits: brake-slow-to-release']);
  });
});

describe('which brakes answer', () => {
  const said = (outing: Outing) => askBrakeGear(prepare(openOuting(outing), 1, 0));
  const codes = (outing: Outing) => short(said(outing));

  it('all of them is nothing to say but of an engine without one', () => expect(codes(air)).toEqual([]));
  it('cars without are a note, with how many have one', () => {
    expect(said(altered(air, 2, { brakes: [], throughPipe: ['straight-air'] }))).toMatchObject([
      {
        code: 'not-braked',
        severity: 'notes',
        where: { vehicle: 'car2' },
        found: { si: 2 },
        required: { si: 3 },
      },
    ]);
  });
  it('none at all forbids, fitted or not', () => {
    const bare = {
      ...air,
      train: { ...air.train, vehicles: air.train.vehicles.map((v) => ({ ...v, brakes: [] })) },
    };
    expect(said(bare)).toMatchObject([
      { code: 'not-braked' },
      { code: 'no-brake-answers', severity: 'forbids', facts: { fitted: false } },
    ]);
    const riders = said(braked({ kind: 'mechanical', gear: { workedBy: 'rider' } }));
    expect(riders).toMatchObject([
      {
        code: 'brake-not-worked-by-driver',
        severity: 'notes',
        facts: { why: 'worked-by-another', vehicles: 'car1, car2, car3' },
      },
      { code: 'not-braked' },
      { code: 'no-brake-answers', facts: { fitted: true, why: 'worked-by-another' } },
    ]);
  });
  it('one whose force nobody knows is asked for, and may be a brake', () => {
    const { force: _, ...unknown } = gearOf('straight-air');
    const outing = [1, 2, 3].reduce((o, at) => altered(o, at, { brakes: [unknown] }), air);
    const [first] = said(outing);
    expect(first).toMatchObject({
      code: 'brake-force-unknown',
      severity: 'unknown',
      measure: 'vehicle.brakes.brake.force',
    });
    expect(codes(outing)).not.toContain('forbids: no-brake-answers');
  });
  it('of a surge brake the levers are asked for: what was pulled with it on is not what a push gives', () => {
    const { surge: _, ...pulled } = gearOf('surge');
    const own = gearOf('engine-only');
    const outing = [1, 2, 3].reduce(
      (o, at) => altered(o, at, { brakes: [pulled] }),
      braked({ kind: 'surge', engine: own }),
    );
    expect(said(outing).find((f) => f.code === 'brake-force-unknown')).toMatchObject({
      severity: 'unknown',
      measure: 'vehicle.brakes.brake.surge.leverRatio',
    });
    const levers = codes(braked({ kind: 'surge', engine: own }));
    expect(levers.filter((c) => c.includes('brake-force-unknown'))).toEqual([]);
  });
  it('two of another name or reason are two lines', () => {
    const own = gearOf('mechanical', { workedBy: 'rider' });
    const mixed = altered(altered(air, 1, { brakes: [own] }), 2, { brakes: [{ ...own, name: 'screw' }] });
    expect(codes(mixed).filter((c) => c.includes('not-worked'))).toHaveLength(2);
    const parks = { ...own, workedBy: 'driver', parking: true } as const;
    const both = altered(altered(air, 1, { brakes: [own] }), 2, { brakes: [parks] });
    expect(codes(both).filter((c) => c.includes('not-worked'))).toHaveLength(2);
  });
  it('a kind that nothing supplies, and one behind a broken pipe, limit', () => {
    const other = altered(air, 3, { brakes: [gearOf('automatic-vacuum')] });
    expect(codes(other)).toContain('limits: brake-kinds-do-not-work-together');
    const broken = { ...air, train: { ...air.train, pipeBrokenAfter: [1] } };
    expect(codes(broken)).toContain('limits: brake-pipe-broken');
  });

  // 0.9882, 0.9765 and 0.8244 of the air at the sea, by the standard atmosphere.
  const high = (altitude: number | undefined, measured = false, airPressure?: number) => {
    const outing = braked({ kind: 'simple-vacuum' });
    const working = { ...exact(65_000), how: measured ? ('measured' as const) : ('stated' as const) };
    const { force: _, ...bare } = gearOf('simple-vacuum');
    const rigging = {
      cylinders: 1,
      bore: 0.1,
      leverRatio: 3,
      efficiency: exact(0.8),
      block: 'cast-iron' as const,
    };
    const brake = { ...bare, rigging: { ...rigging, workingPressure: working } };
    const vehicles = outing.train.vehicles.map((v, i) => (i === 1 ? { ...v, brakes: [brake] } : v));
    const conditions = {
      ...outing.conditions,
      ...(altitude === undefined ? {} : { altitude }),
      ...(airPressure === undefined ? {} : { airPressure }),
    };
    return said({ ...outing, conditions, train: { ...outing.train, vehicles } }).filter(
      (f) => f.code === 'vacuum-limited-by-air',
    );
  };
  it('a vacuum that thin air does not give is told from a fiftieth on', () => {
    expect(high(100)).toEqual([]);
    expect(short(high(200))).toEqual(['notes: vacuum-limited-by-air']);
    const [at1600] = high(1600);
    expect((at1600.found?.si ?? 0) / 65_000).toBeCloseTo(0.8244, 3);
    expect(at1600.margin).toBeCloseTo(0.8244 - 1, 3);
    expect(high(1600, true)).toEqual([]);
    // The standard atmosphere is the sum where the air is reckoned from the height, not where a gauge told it.
    expect(at1600.sum).toMatchObject({ id: 'standard-atmosphere', inputs: { altitude: 1600 } });
    const [byGauge] = high(undefined, false, 83_500);
    expect(byGauge).toMatchObject({ facts: { air: { si: 83_500 } } });
    expect(byGauge.sum).toBeUndefined();
    expect(high(1600, false, 83_500)[0].sum).toBeUndefined();
  });
});

describe('how evenly', () => {
  const { uneven } = practice;
  /** 100 kg cars with axles alike: ratio = force ÷ weight. */
  const ratios = (...forces: number[]): readonly Finding[] => {
    const outing = forces.reduce<Outing>((o, force, i) => {
      const groups = o.train.vehicles[i + 1].groups.map((g, k) => ({ ...g, at: 0.6 + 1.2 * k }));
      const of = [gearOf('straight-air', { force: exact(force) })];
      return altered(o, i + 1, { tare: exact(100), groups, brakes: of });
    }, air);
    return askBrakes(openOuting(outing)).findings;
  };
  const codesOf = (...forces: number[]) => short(ratios(...forces));
  it('more than so many times as strong for its weight as another is a note', () => {
    const note = 'notes: brake-ratio-uneven';
    expect(codesOf(20, 20, 20 * uneven.value * 0.999)).not.toContain(note);
    expect(codesOf(20, 20, 20 * uneven.value * 1.01)).toContain(note);
    const [found] = ratios(10, 20, 60).filter((f) => f.code === 'brake-ratio-uneven');
    expect(found).toMatchObject({ where: { vehicle: 'car3' }, facts: { weak: 'car1' } });
    expect(found.found?.si).toBeCloseTo(60 / (100 * 9.80665), 9);
  });
  it('what slides first is told where the worst rail does not hold it', () => {
    const low = air.assumed.adhesion.dry.low * 100 * 9.80665;
    expect(codesOf(0.99 * low, 0.5 * low, 0.5 * low)).not.toContain('notes: slides-first');
    const [first] = ratios(0.9 * low, 1.25 * low, 0.8 * low).filter((f) => f.code === 'slides-first');
    expect(first).toMatchObject({ severity: 'notes', where: { vehicle: 'car2' } });
    expect(first.margin).toBeCloseTo(-0.2, 9);
  });
});
