/** Wheels on their track: what strikes, binds, drops in and touches; what is asked for and what is only noted; what clears it. */
import { Command as Program } from 'commander';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../../cli/command.ts';
import { fitCommand } from '../../../cli/commands/fit.ts';
import { openGate } from '../../../cli/gate.ts';
import { lookAtFit } from '../../../desk/fit.ts';
import { familiesFor } from '../../../engine/answer/families.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange, type Change } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { swing } from '../../../engine/questions/swing/question.ts';
import { MAIN, type Track } from '../../../engine/things/line/types.ts';
import { playOf } from '../../../engine/things/wheel/pair.ts';
import { wheelsTable } from '../../../views/tables/fit.ts';
import { tellChange } from '../../../words/change.ts';
import { tellFinding } from '../../../words/finding.ts';
import { changedExample, vehiclesOf } from '../../support/changed-examples.ts';
import { factOf } from '../../support/facts.ts';
import { between, frogAt, wheeled, wheelset, wheelsSay } from '../../support/wheeled.ts';

const IN = 0.0254;
const said = (outing: Outing): string[] => wheelsSay(outing).map((f) => `${f.severity} ${f.code}`);
const one = (outing: Outing, code: Finding['code']): Finding => {
  const found = wheelsSay(outing).find((f) => f.code === code);
  if (!found) throw new Error(`no ${code}: ${said(outing).join(', ')}`);
  return found;
};
const voice = (outing: Outing) => ({ system: 'imperial', wording: 'us', outing }) as const;
const curve = (gaugeWidening: number) => ({
  from: 40,
  to: 60,
  startCurvature: 1 / 15,
  endCurvature: 1 / 15,
  gaugeWidening,
});

describe('a wheelset and a frog', () => {
  it('that suit say nothing', () => expect(said(wheeled())).toEqual([]));

  it('holds what is wider over back and flange than the guard check, by the widest reading and the thicker flange', () => {
    // 6.872 + 5/32 = 7.02825 in: 0.02175 in left of 7.05; near is 0.0145 in.
    expect(said(wheeled({ backToBack: [6.87 * IN, 6.894 * IN] }))).toEqual(['forbids wheel-strikes-frog']);
    expect(said(wheeled({ backToBack: [6.87 * IN, 6.89 * IN] }))).toEqual(['notes wheel-strikes-frog']);
    const thick = wheeled({ flangeThickness: between(0.15 * IN, 0.19 * IN) });
    const finding = one(thick, 'wheel-strikes-frog');
    expect(finding.severity).toBe('forbids');
    expect(finding.found?.si).toBeCloseTo((6.872 + 0.19) * IN, 12);
    expect(finding.required?.si).toBeCloseTo(7.05 * IN, 12);
    expect(finding.where).toMatchObject({ vehicle: 'car2', from: 30, to: 30 });
    expect(tellFinding(finding, voice(thick)).what).toContain(
      'axle 1: 7.062 in over back and flange; the guard check at North points is 7.050 in: the flange strikes',
    );
  });

  it('holds what is narrower between its backs than guard rail and wing are apart, by the narrowest reading', () => {
    expect(said(wheeled({ backToBack: [6.872 * IN, 6.819 * IN] }))).toContain(
      'forbids wheelset-binds-at-guard',
    );
    expect(said(wheeled({ backToBack: [6.83 * IN] }))).toEqual(['notes wheelset-binds-at-guard']);
  });

  it('holds a flange deeper than its gap', () => {
    expect(said(wheeled({ flangeHeight: 0.251 * IN }))).toEqual(['forbids flange-strikes-floor']);
    expect(said(wheeled({ flangeHeight: 0.24 * IN }))).toEqual(['notes flange-strikes-floor']);
  });

  it('takes check and face by the gaps where they were not measured across the track, and says so', () => {
    const { guardCheck: _c, guardFace: _f, ...bare } = frogAt(30);
    const gap = (guard: number, frog: number) => [{ ...bare, guard: guard * IN, frog: frog * IN }];
    expect(said(wheeled({}, gap(0.2, 0.2)))).toEqual([]);
    const strikes = one(wheeled({}, gap(0.23, 0.2)), 'wheel-strikes-frog');
    expect(strikes.severity).toBe('forbids');
    expect(factOf(strikes, 'known')).toBe('by gap');
    expect(tellFinding(strikes, voice(wheeled())).why).toContain('measure it across the track');
    // The narrower gap moves the guarding face outward: what struck no more may bind.
    expect(said(wheeled({}, gap(0.2, 0.15)))).toContain('forbids wheelset-binds-at-guard');
    // Gauge there, where it was measured, else with the widening of its curve.
    const narrow = wheeled({}, [{ ...gap(0.2, 0.2)[0], gauge: 7.22 * IN }]);
    expect(said(narrow)).toContain('forbids wheel-strikes-frog');
    // In a widened curve nobody knows whether it was laid wide: the worse of both.
    const inCurve = (guard: number, frog: number, widening: number, own = {}) =>
      said(wheeled({}, [{ ...gap(guard, frog)[0], ...own, at: 50 }], { curves: [curve(widening * IN)] }));
    expect(inCurve(0.23, 0.2, 0.1)).toContain('forbids wheel-strikes-frog');
    expect(inCurve(0.23, 0.2, 0.1, { gauge: 7.35 * IN })).not.toContain('forbids wheel-strikes-frog');
    expect(inCurve(0.2, 0.2, 0)).toEqual([]);
    expect(inCurve(0.2, 0.2, 0.1)).toContain('forbids wheelset-binds-at-guard');
    expect(inCurve(0.2, 0.2, 0.1, { gauge: 7.25 * IN })).toEqual([]);
  });

  it('names the worst, and how many more', () => {
    const outing = wheeled({ backToBack: [6.95 * IN] }, [frogAt(30), frogAt(90, { guardCheck: 7 * IN })]);
    const finding = one(outing, 'wheel-strikes-frog');
    expect(finding.where).toMatchObject({ vehicle: 'car2', from: 90 });
    // Every wheelset strikes the second one.
    const axles = outing.train.vehicles.reduce((n, v) => n + (v.wheelsets?.length ?? 0), 0);
    expect(factOf(finding, 'others')).toBe(axles - 1);
  });
});

describe('a wheelset and the gauge', () => {
  it('holds what is wider over its flanges than the rails are apart', () => {
    const wide = { backToBack: [6.94 * IN], flangeThickness: exact(0.156 * IN) };
    const open = [frogAt(30, { guardCheck: 7.2 * IN })];
    expect(said(wheeled(wide, open))).toContain('forbids wheelset-binds-in-gauge');
    expect(said(wheeled({ ...wide, backToBack: [6.93 * IN] }, open))).toEqual([]);
    // A frog laid tight to gauge binds by itself.
    const tight = [frogAt(30, { guardCheck: 7.15 * IN, gauge: 7.17 * IN })];
    expect(one(wheeled({}, tight), 'wheelset-binds-in-gauge').where.from).toBe(30);
  });

  it('holds a wheel that drops in where the gauge is widest, with the thinner flange; little tread limits', () => {
    const on = (widening: number, changes = {}) =>
      wheeled({ width: 0.5 * IN, ...changes }, [frogAt(30)], { curves: [curve(widening * IN)] });
    // 6.87 + 5/32 + 1/2 − 7.25 = 0.276 in of tread on the straight; 0.145 in is wanted.
    expect(said(on(0.1))).toEqual([]);
    const little = one(on(0.2), 'wheel-drops-in');
    expect(little.severity).toBe('limits');
    expect(little.found?.si).toBeCloseTo(0.07625 * IN, 9);
    expect(little.where).toMatchObject({ from: 40, to: 60 });
    expect(one(on(0.3), 'wheel-drops-in').severity).toBe('forbids');
    // Worn to a thin flange it drops in sooner.
    expect(one(on(0.2, { flangeThickness: between(0.05 * IN, 0.16 * IN) }), 'wheel-drops-in').severity).toBe(
      'forbids',
    );
  });

  it('limits a back-to-back that varies round the wheels', () => {
    // 1/4 in on 56.5 in is 0.032 in here.
    const at = (by: number) => wheeled({ backToBack: [6.836 * IN, (6.836 + by) * IN] });
    expect(said(at(0.031))).toEqual([]);
    expect(said(at(0.034))).toEqual(['limits back-to-back-varies']);
  });
});

describe('what was not measured', () => {
  const without = (field: 'backToBack' | 'flangeThickness' | 'flangeHeight' | 'width', ways?: never[]) => {
    const { [field]: _left, ...rest } = wheelset();
    const outing = wheeled({}, ways);
    const vehicles = outing.train.vehicles.map((v, i) =>
      i === 1
        ? { ...v, wheelsets: (v.wheelsets ?? []).map((w) => ({ ...rest, id: w.id, name: w.name })) }
        : v,
    );
    return { ...outing, train: { ...outing.train, vehicles } };
  };

  it.each([
    ['backToBack', 'back to back'],
    ['flangeThickness', 'flange thickness'],
    ['flangeHeight', 'flange height'],
  ] as const)('%s: cannot tell where the line has a frog to hold it against', (field, of) => {
    const [finding, ...more] = wheelsSay(without(field));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      code: 'wheels-not-measured',
      severity: 'unknown',
      measure: `vehicle.wheelsets.${field}`,
      facts: { vehicles: 'car1', of },
    });
  });

  it('an axle that nobody looked at is asked for as well', () => {
    const outing = wheeled();
    const [engine, car, ...rest] = outing.train.vehicles;
    const fewer = { ...car, wheelsets: car.wheelsets?.slice(1) ?? [] };
    expect(said({ ...outing, train: { ...outing.train, vehicles: [engine, fewer, ...rest] } })).toEqual(
      ['unknown', 'unknown', 'unknown'].map((s) => `${s} wheels-not-measured`),
    );
  });

  it('asks for no more than the line states', () => {
    const { depth: _d, guardCheck: _c, ...face } = frogAt(30);
    const bare = wheeled({ flangeThickness: undefined as never, flangeHeight: undefined as never }, [face]);
    expect(said(bare)).toEqual([]);
    const { guardFace: _f, ...nothing } = face;
    expect(said(wheeled({ backToBack: undefined as never }, [nothing]))).toEqual([
      'notes wheels-not-measured',
    ]);
  });

  it('on a line without measured frogs is a note, one for the train', () => {
    const vehicles = wheeled().train.vehicles.map(({ wheelsets: _w, ...v }) => v);
    const bare: Outing = { ...wheeled({}, []), train: { ...wheeled().train, vehicles } };
    expect(said(bare)).toEqual(['notes wheels-not-measured']);
    expect(factOf(wheelsSay(bare)[0], 'vehicles')).toBe('engine, car1, car2');
  });

  it('frogs are asked for in a note where the wheels are measured and the line has turnouts', () => {
    const points = [20, 50].map((at) => ({
      id: `${at}`,
      name: `Points ${at}`,
      kind: 'switch' as const,
      at,
      stop: false,
    }));
    expect(said(wheeled({}, [], { places: points }))).toEqual(['notes flangeways-not-measured']);
    expect(said(wheeled({}, [frogAt(22), frogAt(49)], { places: points }))).toEqual([]);
  });
});

it('a turnout is asked for whose frog nobody measured, whether it is a place or points of a track', () => {
  const at = (spot: number, name: string) => ({
    id: name,
    name,
    kind: 'switch' as const,
    at: spot,
    stop: false,
  });
  const joint = (spot: number, track = MAIN) => ({ track, at: spot, hand: 'left' as const, facing: true });
  const track = (name: string, start: number, end?: number): Track => ({
    id: name,
    name,
    line: wheeled().line,
    levelled: true,
    start: joint(start),
    ...(end === undefined ? {} : { end: joint(end) }),
  });
  const asked = (line: Parameters<typeof wheeled>[2], ways = [frogAt(30)]) =>
    wheelsSay(wheeled({}, ways, line)).map((f) => [f.code, factOf(f, 'places'), f.where.place, f.where.from]);
  const frogs = (places: number, name: string, from: number) => [
    ['flangeways-not-measured', places, name, from],
  ];
  expect(asked({ places: [at(28, 'North points')] })).toEqual([]);
  expect(asked({ places: [at(28, 'North points'), at(60, 'South points')] })).toEqual(
    frogs(1, 'South points', 60),
  );
  expect(asked({ tracks: [track('Shed road', 29)] })).toEqual([]);
  expect(asked({ tracks: [track('Loop', 29, 70), track('Shed road', 50)] })).toEqual(
    frogs(2, 'Shed road', 50),
  );
  // One frog is of one turnout, however near the next one is.
  expect(asked({ places: [at(28, 'North points'), at(32.5, 'Yard points')] })).toEqual(
    frogs(1, 'Yard points', 32.5),
  );
  expect(
    asked({ places: [at(28, 'North points'), at(32.5, 'Yard points')] }, [frogAt(30), frogAt(34)]),
  ).toEqual([]);
  expect(asked({ tracks: [track('Shed road', 29), track('Yard road', 29)] })).toEqual(
    frogs(1, 'Yard road', 29),
  );
  // Written both as a place and as points: one turnout.
  expect(asked({ places: [at(51, 'Shed points')], tracks: [track('Shed road', 50)] })).toEqual(
    frogs(1, 'Shed points', 51),
  );
  // A depth alone tells of no point and no guard rail.
  const { guardCheck: _c, guardFace: _f, ...deep } = frogAt(50);
  expect(wheelsSay(wheeled({}, [deep], { tracks: [track('Shed points', 50)] })).map((f) => f.code)).toContain(
    'flangeways-not-measured',
  );
  // Off another track: not on this line.
  const off = { ...track('Back road', 50), start: joint(50, 'loop') };
  expect(asked({ tracks: [off] })).toEqual([]);
});

it('how wide wheels must be is said where nobody measured them, as hard as the narrowest published would be told', () => {
  const curves = (gaugeWidening: number) => [
    { from: 10, to: 20, startCurvature: 0.05, endCurvature: 0.05, gaugeWidening: gaugeWidening * IN },
  ];
  const { width: _w, ...narrow } = wheelset();
  const odd = (
    width: number | undefined,
    line: Parameters<typeof wheeled>[2],
    ways = [frogAt(30)],
  ): Outing => {
    const outing = wheeled({}, ways, line);
    const [first, ...rest] = outing.train.vehicles;
    const of = { ...narrow, ...(width === undefined ? {} : { width }) };
    const wheelsets = (first.wheelsets ?? []).map(({ id, name }) => ({ ...of, id, name }));
    return { ...outing, train: { ...outing.train, vehicles: [{ ...first, wheelsets }, ...rest] } };
  };
  const bare = (line: Parameters<typeof wheeled>[2], ways?: ReturnType<typeof frogAt>[]): Outing =>
    odd(undefined, line, ways);
  expect(said(bare({ curves: curves(0) }))).toEqual([]);
  expect(said(wheeled({}, [frogAt(30)], { curves: curves(0.08) }))).toEqual([]);
  const outing = bare({ curves: curves(0.08) });
  expect(said(outing)).toEqual(['notes wheels-not-measured']);
  const [finding] = wheelsSay(outing);
  // 7.25 + 0.08 − 6.87 − 5/32 = 0.30375 in, and 2 % of the gauge.
  expect(finding.required?.si).toBeCloseTo((0.30375 + 0.145) * IN, 9);
  expect(finding).toMatchObject({ measure: 'vehicle.wheelsets.width', where: { from: 10, to: 20 } });
  expect(tellFinding(finding, voice(outing)).what).toMatch(
    /how wide the wheels of engine are; from 32.* they must be 0\.449 in wide\.$/,
  );
  expect(said(bare({}, [frogAt(30, { gauge: 7.28 * IN })]))).toEqual(['notes wheels-not-measured']);
  // The narrowest published is a tenth of the gauge: 0.725 in. Of the others the widths are known, and do.
  const word = (width: number | undefined, widening: number) =>
    wheelsSay(odd(width, { curves: curves(widening) })).find(
      (f) =>
        (f.code === 'wheel-drops-in' || f.code === 'wheels-not-measured') && f.where.vehicle === 'engine',
    )?.severity;
  const tenth = 0.1 * 7.25 * IN;
  for (const [widening, measured, silent] of [
    [0.35, undefined, 'notes'],
    [0.36, 'limits', 'limits'],
    [0.5, 'limits', 'limits'],
    [0.51, 'forbids', 'unknown'],
  ] as const) {
    expect(word(tenth, widening), `${widening}`).toBe(measured);
    expect(word(undefined, widening), `${widening}`).toBe(silent);
  }
  const drops = wheelsSay(bare({ curves: curves(0.51) })).find((f) => f.code === 'wheels-not-measured');
  expect(tellFinding(drops as Finding, voice(outing)).what).toContain('0.725 in, drops between the rails');
});

describe('what clears it', () => {
  const tried = (outing: Outing, code: Finding['code']) => {
    const families = familiesFor(outing, one(outing, code));
    const clears = (change: Change): boolean =>
      !wheelsSay(applyChange(outing, change)).some((f) => f.severity === 'forbids');
    return families.flatMap(({ changes }) => changes.find(clears) ?? []);
  };

  it('wheels pressed or a guard rail moved by the least that suits both sides, or the car left', () => {
    const outing = wheeled({ backToBack: [6.9 * IN] });
    const [press, guard, leave] = tried(outing, 'wheel-strikes-frog');
    // 6.9 + 5/32 − 7.05 = 0.00625 in = 0.16 mm: two steps of a tenth.
    expect(press).toEqual({ kind: 'wheel-gauge', vehicle: 'car2', wheelset: 'axle-1', by: -0.0002 });
    expect(guard).toEqual({ kind: 'guard-rail', flangeway: 'north-points-1', by: 0.0002 });
    expect(leave.kind).toBe('fewer-cars');
    expect([press, guard].map((c) => tellChange(c, voice(outing)))).toEqual([
      'press the wheels of car2, axle 1, 0.008 in nearer together',
      'move the guard rail at North points 0.008 in nearer to its rail',
    ]);
  });

  it('proposes no guard rail that makes the others bind', () => {
    // 0.06 in too wide: the guard rail would have to come 0.06 in nearer, and the others have 0.05 in left.
    const outing = wheeled({ backToBack: [6.954 * IN], flangeThickness: exact(0.156 * IN) }, [frogAt(30)], {
      gauge: 7.3 * IN,
    });
    expect(tried(outing, 'wheel-strikes-frog').map((c) => c.kind)).toEqual(['wheel-gauge', 'fewer-cars']);
  });
});

describe('play of measured wheels', () => {
  const bent = (odd = {}) => {
    const outing = wheeled(odd, [], { curves: [curve(0)] });
    return inquire(outing).of(swing);
  };
  it('stands in the swing of couplers for the assumed one, which is listed no more', () => {
    const { data, findings } = bent();
    expect(findings.some((f) => factOf(f, 'key') === 'coupler/play')).toBe(false);
    expect(data.ends.every((e) => e.playKnown)).toBe(true);
    // Looser wheels on the last car: only its own gap bends more.
    const loose = bent({ backToBack: [6.8 * IN] }).data;
    expect(loose.ends[0].play).toBe(data.ends[0].play);
    expect(loose.ends[2].play / data.ends[2].play).toBeCloseTo(0.1375 / 0.0675, 3);
  });

  it('is not known of a vehicle with an axle that nobody measured', () => {
    const { backToBack: _b, ...rest } = wheelset();
    const groups = [{ axles: 2 }];
    expect(playOf({ groups, wheelsets: [wheelset(), rest] }, 7.25 * IN)).toBeUndefined();
    expect(playOf({ groups, wheelsets: [wheelset(), wheelset()] }, 7.25 * IN)).toBeCloseTo(0.0675 * IN, 9);
  });
});

describe('from papers', () => {
  const papers = (wheels: unknown, ways: unknown) =>
    changedExample('steam-light', (paper) => {
      for (const v of vehiclesOf(paper)) v['wheelsets'] = wheels;
      (paper['line'] as Record<string, unknown>)['flangeways'] = ways;
    });
  const good = { name: 'axle', backToBack: ['6.87 in', '6.872 in'], flangeThickness: '5/32 in' };

  it('are read, and what is lacking is asked for', async () => {
    const outing = await papers([good], [{ name: 'North points', at: '100 ft', guardCheck: '7.05 in' }]);
    expect(said(outing)).toEqual([
      'unknown wheels-not-measured',
      'unknown wheels-not-measured',
      // The line of the example widens its curves, and has points elsewhere.
      'notes wheels-not-measured',
      'notes flangeways-not-measured',
    ]);
    expect(outing.line.flangeways?.[0]).toMatchObject({ id: 'north-points-1', at: 30.48 });
  });

  it.each([
    [[{ ...good, backToBack: ['7.3 in'] }], [], /wheelsets.*backToBack.*less than the gauge/s],
    [[{ ...good, width: '1/8 in' }], [], /width.*more than the flange/s],
    [Array(9).fill(good), [], /9 wheelsets.*at most/s],
    [[], [{ name: 'a', at: '1 ft', guardCheck: '7.3 in' }], /guardCheck.*less than the gauge there/s],
    [
      [],
      [{ name: 'a', at: '1 ft', guardCheck: '7 in', guardFace: '7.1 in' }],
      /guardFace.*less than the guard check/s,
    ],
    [[], [{ name: 'a', at: '9000 ft' }], /flangeways.*where the profile ends/s],
  ])('bad figures are named: %j %j', async (wheels, ways, says) => {
    await expect(papers(wheels, ways)).rejects.toThrow(says);
  });
});

describe('heedway fit', () => {
  async function run(...args: string[]): Promise<Outcome> {
    let outcome: Outcome | undefined;
    const program = new Program().exitOverride();
    fitCommand.declare(program, async (action) => {
      outcome = await action(openGate({}).gate);
    });
    await program.parseAsync(['fit', ...args], { from: 'user' });
    if (!outcome) throw new Error('no command ran');
    return outcome;
  }

  it('tells an example in words and figures', async () => {
    const { text, exit } = await run('examples/steam-light.json');
    expect(text).toContain('No wheelset of this train is measured.');
    expect(text).toContain('Measure: between the backs of the two wheels');
    expect(exit).toBe(0);
  });

  it('has a row for every wheelset, with what is left and where', () => {
    const outing = wheeled({ backToBack: [6.9 * IN] });
    const { rows } = wheelsTable(lookAtFit(outing), voice(outing));
    expect(rows).toHaveLength(outing.train.vehicles.reduce((n, v) => n + (v.wheelsets?.length ?? 0), 0));
    const odd = rows.find(([name]) => name === 'car2, axle 1');
    expect(odd?.slice(1, 5)).toEqual([
      '6.900 in',
      'one reading',
      '0.007 in short (North points)',
      '0.080 in (North points)',
    ]);
  });
});
