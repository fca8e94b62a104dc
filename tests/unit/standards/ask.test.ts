import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing, Standard, StandardKey, Standards } from '../../../engine/outing/types.ts';
import { hostCeilings } from '../../../engine/questions/speed/ceilings.ts';
import { askStandards } from '../../../engine/questions/standards/ask.ts';
import { standardRemedies } from '../../../engine/questions/standards/remedies.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { tellFinding } from '../../../words/finding.ts';
import { altered } from '../../support/rules.ts';
import { wheeled } from '../../support/wheeled.ts';

const IN = 0.0254;
const SOURCE = 'sheet of the invented host, 3';
const measured = (): Outing => {
  const bare = wheeled();
  const hollow = (v: Vehicle): Partial<Vehicle> => ({
    wheelsets: (v.wheelsets ?? []).map((w) => ({ ...w, hollow: 0.0005, taper: 0.05 })),
  });
  const outing = bare.train.vehicles.reduce((o, v, i) => altered(o, i, hollow(v)), bare);
  const dress = (v: Vehicle): Partial<Vehicle> => ({
    front: { ...v.front, height: 0.11, swing: exact(0.3) },
    rear: { ...v.rear, height: 0.112, swing: exact(0.35) },
    envelope: { width: 0.6, height: 0.7 },
    flange: { angle: 1.2 },
    ratings: { leastRadius: 12 },
  });
  return outing.train.vehicles.reduce((o, v, i) => altered(o, i, dress(v)), outing);
};
const under = (standards: Standards, outing = measured()): Outing => ({
  ...outing,
  host: { ...outing.host, standards },
});
const asks = (key: StandardKey, standard: Omit<Standard, 'source'>, outing?: Outing): Outing =>
  under({ [key]: { ...standard, source: SOURCE } }, outing);
const told = (outing: Outing) => askStandards(openOuting(outing)).findings;
const words = (outing: Outing): string[] => told(outing).map((f) => `${f.code} ${f.severity}`);

/** Of the made-up train: each figure, and what a limit just short of it and one just beyond it say. */
const figures: readonly (readonly [StandardKey, number, number])[] = [
  ['backToBack', 6.87 * IN, 6.872 * IN],
  ['backVariation', 0.002 * IN, 0.002 * IN],
  ['wheelCheck', 6.87 * IN + (5 / 32) * IN, 6.872 * IN + (5 / 32) * IN],
  ['flangeThickness', (5 / 32) * IN, (5 / 32) * IN],
  ['flangeHeight', (5 / 32) * IN, (5 / 32) * IN],
  ['treadHollow', 0.0005, 0.0005],
  ['wheelWidth', 0.75 * IN, 0.75 * IN],
  ['flangeAngle', 1.2, 1.2],
  ['treadTaper', 0.05, 0.05],
  ['couplerHeight', 0.11, 0.112],
  ['couplerSwing', 0.3, 0.35],
  ['bodyWidth', 0.6, 0.6],
  ['bodyHeight', 0.7, 0.7],
  ['leastRadius', 12, 12],
];

describe.each(figures)('%s', (key, low, high) => {
  const off = 1e-6;
  it('is accepted at its limit and refused beyond it, either way', () => {
    expect(words(asks(key, { least: low - off, most: high + off }))).toEqual([]);
    expect(words(asks(key, { most: high - off }))).toEqual(['standard-refused forbids']);
    expect(words(asks(key, { least: low + off }))).toEqual(['standard-refused forbids']);
  });

  it('runs slowly in the band between, and is refused before it is slow', () => {
    const slowSpeed = 1;
    expect(words(asks(key, { most: high + off, slowAbove: high - off, slowSpeed }))).toEqual([
      'standard-slow limits',
    ]);
    expect(words(asks(key, { slowBelow: low + off, slowSpeed }))).toEqual(['standard-slow limits']);
    expect(words(asks(key, { most: high - off, slowAbove: high - 2 * off, slowSpeed }))).toEqual([
      'standard-refused forbids',
    ]);
    expect(words(asks(key, { slowAbove: high - off }))).toEqual(['standard-slow unknown']);
  });
});

describe('couplers on the sheet', () => {
  /** Knuckles 30 mm high, 2 mm apart in height, on level track. */
  const knuckles = (changes: Partial<Vehicle['front']> = {}): Outing => {
    const base = measured();
    const heights = [0, base.line.length].map((at) => ({ at, height: 0 }));
    const level: Outing = { ...base, line: { ...base.line, heights } };
    return base.train.vehicles.reduce<Outing>(
      (o, v, i) =>
        altered(o, i, {
          front: { ...v.front, type: 'knuckle', face: 0.03, ...changes },
          rear: { ...v.rear, type: 'knuckle', face: 0.03 },
        }),
      level,
    );
  };

  it('hold by what of their faces meets, and are asked for where a face was not measured', () => {
    expect(words(asks('couplerHold', { least: 0.0279 }, knuckles()))).toEqual([]);
    expect(words(asks('couplerHold', { least: 0.0281 }, knuckles()))).toEqual(['standard-refused forbids']);
    expect(words(asks('couplerHold', { least: 0.01 }, knuckles({ face: undefined as never })))).toEqual([
      'standard-not-measured unknown',
    ]);
    expect(told(asks('couplerHold', { least: 0.01 }, knuckles({ height: undefined as never })))).toHaveLength(
      1,
    );
  });

  it('sink under their people by load over springs', () => {
    const base = measured();
    const [car] = base.train.vehicles.slice(1);
    const middle = (car.groups[0].at + car.groups[car.groups.length - 1].at) / 2;
    const k = 20_000;
    const ridden: Outing = {
      ...altered(base, 1, {
        loads: [],
        seats: [{ id: 's', name: 's', at: middle, across: 0, height: 0.3, facing: 'forward', driver: false }],
        suspension: { wheelStiffness: exact(k), equalised: false },
      }),
      riders: [
        { id: 'r', name: 'r', mass: exact(80), ageGroup: 'adult', vehicle: car.id, seat: 's', duty: 'rider' },
      ],
    };
    const one: Outing = { ...ridden, train: { ...ridden.train, vehicles: [ridden.train.vehicles[1]] } };
    // Evenly on both guides: by hand, half the weight over two wheels of each axle there.
    const sink = (80 * 9.80665) / 2 / (2 * car.groups[0].axles * k);
    expect(words(asks('couplerHeightLoaded', { least: 0.11 - sink - 1e-6 }, one))).toEqual([]);
    expect(words(asks('couplerHeightLoaded', { least: 0.11 - sink + 1e-6 }, one))).toEqual([
      'standard-refused forbids',
    ]);
    const { suspension: _, ...unsprung } = one.train.vehicles[0];
    const asked = told(
      asks('couplerHeightLoaded', { least: 0.01 }, { ...one, train: { ...one.train, vehicles: [unsprung] } }),
    );
    expect(asked).toMatchObject([
      { code: 'standard-not-measured', measure: 'vehicle.suspension.wheelStiffness' },
    ]);
  });

  const takes = (kinds: readonly string[], type: string): string[] => {
    const base = measured();
    const all = base.train.vehicles.reduce(
      (o, v, i) => altered(o, i, { front: { ...v.front, type }, rear: { ...v.rear, type } }),
      base,
    );
    return words({ ...all, host: { ...all.host, couplerKinds: { value: kinds, source: SOURCE } } });
  };

  it.each([
    [['knuckle'], 'Knuckle', []],
    [['automatic couplers'], 'small knuckle', []],
    [['link and pin'], 'drawbar', []],
    [['Norwegian hook'], 'hook and link', []],
    [['knuckle', 'bar'], 'link and pin', []],
    [['knuckle'], 'link and pin', ['coupler-kind-refused forbids']],
    [['hook'], 'knuckle', ['coupler-kind-refused forbids']],
    [['knuckle'], 'coupler', ['coupler-kind-unknown unknown']],
    [['brass ball'], 'iron ball', []],
    [['knuckle coupler'], 'ball coupler', ['coupler-kind-refused forbids']],
  ])('a host that takes %j, and a train with %s', (kinds, type, says) => {
    expect(takes(kinds, type)).toEqual(says);
  });
});

it('lengths and loads of the train and its vehicles', () => {
  const outing = measured();
  const { loaded } = openOuting(outing);
  const longest = Math.max(...outing.train.vehicles.map((v) => v.length));
  expect(words(asks('vehicleLength', { most: longest }))).toEqual([]);
  expect(words(asks('vehicleLength', { most: longest - 0.001 }))).toHaveLength(1);
  expect(words(asks('trainLength', { most: loaded.length }))).toEqual([]);
  expect(words(asks('trainLength', { most: loaded.length - 0.001 }))).toHaveLength(1);
  // By hand: the load of a group over its axles and g.
  const heaviest = Math.max(
    ...loaded.vehicles.flatMap((v) => v.groupLoads.map((n, i) => n / v.vehicle.groups[i].axles / 9.80665)),
  );
  expect(words(asks('axleLoad', { most: heaviest + 0.01 }))).toEqual([]);
  expect(words(asks('axleLoad', { most: heaviest - 0.01 }))).toEqual(['standard-refused forbids']);
});

it('tells what a calliper reads in thousandths, what a tape reads in sixteenths, and never better than it is', () => {
  const say = (
    key: StandardKey,
    standard: Omit<Standard, 'source'>,
    system: 'imperial' | 'metric',
  ): string => {
    const outing = asks(key, standard);
    return tellFinding(told(outing)[0], { system, wording: 'us', outing }).what;
  };
  // 700 mm are 27.559 in, 690 mm 27.165, 110 mm 4.331.
  expect(say('bodyHeight', { most: 0.69 }, 'imperial')).toMatch(
    /height 2 ft 3-9\/16 in; the host takes 2 ft 3-1\/8 in at most/,
  );
  expect(say('bodyWidth', { most: 0.59 }, 'metric')).toMatch(/width 600 mm; the host takes 590 mm at most/);
  expect(say('couplerHeight', { least: 0.1103 }, 'metric')).toMatch(
    /110 mm; the host asks for 111 mm at least/,
  );
  expect(say('couplerHeight', { slowBelow: 0.1103, slowSpeed: 1 }, 'imperial')).toMatch(
    /coupler height 4-5\/16 in, less than 4-3\/8 in: no faster/,
  );
  expect(say('backToBack', { most: 6.871 * IN }, 'imperial')).toMatch(
    /6\.872 in; the host takes 6\.871 in at most/,
  );
  expect(say('flangeHeight', { slowAbove: 0.0039, slowSpeed: 1 }, 'metric')).toMatch(
    /3\.97 mm, more than 3\.90 mm/,
  );
});

it('asks for what the sheet limits and nobody measured, and for nothing else', () => {
  const outing = measured();
  const bare = outing.train.vehicles.reduce(
    (o, _, i) => altered(o, i, { wheelsets: [], envelope: undefined as never, flange: {} }),
    outing,
  );
  for (const key of ['backToBack', 'bodyWidth', 'flangeAngle'] as const) {
    const [finding, ...rest] = told(asks(key, { most: 1 }, bare));
    expect(rest).toEqual([]);
    expect(finding).toMatchObject({ code: 'standard-not-measured', severity: 'unknown', source: SOURCE });
    expect(finding.measure).toMatch(/^vehicle\./);
  }
  expect(words(bare)).toEqual([]);
});

it('one axle that lacks it is enough to ask', () => {
  const outing = measured();
  const [first, ...others] = outing.train.vehicles[0].wheelsets ?? [];
  const { flangeHeight: _, ...lacking } = first;
  const one = altered(outing, 0, { wheelsets: [lacking, ...others] });
  expect(words(asks('flangeHeight', { most: 1 }, one))).toEqual(['standard-not-measured unknown']);
});

it('the slow speed bounds the speed everywhere, the slowest of several', () => {
  const grid = Float64Array.of(0, 10, 20);
  const speedOf = (outing: Outing): number =>
    Math.min(...hostCeilings(openOuting(outing), grid).map(({ speed }) => speed[1]));
  const slow = {
    flangeHeight: { slowAbove: 0.001, slowSpeed: 1.5, source: SOURCE },
    wheelWidth: { slowBelow: 0.1, slowSpeed: 1.2, source: SOURCE },
  };
  expect(speedOf(under(slow))).toBe(1.2);
  expect(speedOf(under({ flangeHeight: slow.flangeHeight }))).toBe(1.5);
  expect(speedOf(under({ flangeHeight: { ...slow.flangeHeight, slowAbove: 1 } }))).toBeGreaterThan(1.5);
});

it('what is promised to clear it clears it: wheels pressed, a coupler shimmed', () => {
  const wide = wheeled({ backToBack: [6.88 * IN, 6.881 * IN] });
  const narrow = wheeled({ backToBack: [6.86 * IN, 6.861 * IN] });
  const low = altered(measured(), 1, { front: { ...measured().train.vehicles[1].front, height: 0.105 } });
  for (const outing of [
    asks('backToBack', { most: 6.875 * IN }, wide),
    asks('wheelCheck', { most: 6.875 * IN + (5 / 32) * IN }, wide),
    asks('backToBack', { least: 6.865 * IN }, narrow),
    asks('couplerHeight', { least: 0.11 }, low),
  ]) {
    const [finding] = told(outing);
    const [{ changes }] = standardRemedies['standard-refused']?.(outing, finding) ?? [];
    const clears = changes.find((c) => told(applyChange(outing, c)).length === 0);
    expect(clears?.kind, JSON.stringify(finding.facts)).toMatch(/^(wheel-gauge|coupler-raised)$/);
  }
  const weight = asks('axleLoad', { most: 1 });
  const kinds = (standardRemedies['standard-refused']?.(weight, told(weight)[0]) ?? []).flatMap((f) =>
    f.changes.map((c) => c.kind),
  );
  expect(new Set(kinds).has('wheel-gauge')).toBe(false);
});

it('no way out leads past the other side of the band, and both ends of one make are shimmed', () => {
  const bands = {
    least: 6.85 * IN,
    slowBelow: 6.865 * IN,
    slowAbove: 6.89 * IN,
    most: 6.9 * IN,
    slowSpeed: 1.3,
  };
  const family = (outing: Outing, code: 'standard-slow' | 'standard-refused') => {
    const finding = told(outing).find((f) => f.code === code);
    return (finding && standardRemedies[code]?.(outing, finding)[0].changes) ?? [];
  };
  for (const [from, to, code] of [
    [6.86, 6.861, 'standard-slow'],
    [6.892, 6.897, 'standard-slow'],
    [6.84, 6.846, 'standard-refused'],
    [6.905, 6.91, 'standard-refused'],
  ] as const) {
    const outing = asks('backToBack', bands, wheeled({ backToBack: [from * IN, to * IN] }));
    const changes = family(outing, code);
    expect(changes.length, `${from}`).toBeGreaterThan(0);
    for (const change of changes) expect(words(applyChange(outing, change)), `${from}`).toEqual([]);
  }
  // Wider round its wheels than the band: pressing alone does not do.
  const loose = asks('backToBack', bands, wheeled({ backToBack: [6.86 * IN, 6.89 * IN] }));
  expect(family(loose, 'standard-slow')).toEqual([]);
  const [, car] = measured().train.vehicles;
  const low = altered(measured(), 1, {
    front: { ...car.front, height: 0.105 },
    rear: { ...car.rear, height: 0.105 },
  });
  const outing = asks('couplerHeight', { least: 0.11, most: 0.1127 }, low);
  const shims = family(outing, 'standard-refused');
  expect(shims[0]).toMatchObject({
    kind: 'together',
    changes: [
      { kind: 'coupler-raised', end: 'front' },
      { kind: 'coupler-raised', end: 'rear' },
    ],
  });
  for (const change of shims) expect(words(applyChange(outing, change))).toEqual([]);
});

it('a heavier load is no less of an axle load', () => {
  const outing = measured();
  const heavier = altered(outing, 1, { tare: exact(900) });
  const of = (o: Outing): number => told(asks('axleLoad', { most: 1 }, o))[0].found?.si ?? 0;
  expect(of(heavier)).toBeGreaterThan(of(outing));
});

it('what the sheet asks of an axle is asked for where any part of it was not measured', () => {
  const lacking = (of: 'flangeThickness' | 'backToBack'): Outing => {
    const outing = measured();
    const [engine] = outing.train.vehicles;
    const wheelsets = (engine.wheelsets ?? []).map((w, i) => {
      const { [of]: _, ...rest } = w;
      return i === 0 ? rest : w;
    });
    return altered(outing, 0, { wheelsets });
  };
  for (const of of ['flangeThickness', 'backToBack'] as const)
    expect(words(asks('wheelCheck', { most: 1 }, lacking(of)))).toEqual(['standard-not-measured unknown']);
});
