/** Low parts, long wheelbases and wheels over crests and sags. All made up; figures by hand. */
import { describe, expect, it } from 'vitest';
import { lookAtFit } from '../../../desk/fit.ts';
import { familiesFor } from '../../../engine/answer/families.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange, type Change } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { askHumps } from '../../../engine/questions/humps/ask.ts';
import { verticalCurves } from '../../../engine/things/line/vertical.ts';
import type { AxleGroup, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { humpsTable, verticalTable } from '../../../views/tables/fit.ts';
import { tellChange } from '../../../words/change.ts';
import { tellFinding } from '../../../words/finding.ts';
import { crested } from '../../support/crested.ts';
import { altered, rider } from '../../support/rules.ts';

/** Round of a radius between 30 m and 50 m, a point each 0.25 m; straight before and beyond. */
const round = (radius: number, sign: 1 | -1 = -1, step = 0.25) =>
  Array.from({ length: 80 / step + 1 }, (_, i) => {
    const at = i * step;
    const x = Math.min(Math.max(at - 40, -10), 10);
    const beyond = Math.max(0, Math.abs(at - 40) - 10);
    return { at, height: sign * (x ** 2 / (2 * radius) + (10 / radius) * beyond) };
  });
const car = { length: 3, overhang: 0.5 };
const on = (heights: ReturnType<typeof round>, changes: Partial<Vehicle> = {}): Outing =>
  altered(crested(heights, [car, car]), 1, changes);
const asked = (outing: Outing) => askHumps(openOuting(outing));
const said = (outing: Outing): string[] =>
  asked(outing)
    .findings.filter((f) => f.code !== 'low-parts-not-measured')
    .map((f) => `${f.severity} ${f.code}${f.measure ? ` ${f.measure}` : ''}`);
const voice = (outing: Outing) => ({ system: 'metric', wording: 'us', outing }) as const;
const GAUGE = on(round(30)).line.gauge;
/** Guides 2 m apart: 2²/(8·R) in the middle. */
const MIDDLE = 4 / (8 * 30);
/** 49 CFR 229.71 by gauge. */
const ROOM = (2.5 / 56.5) * GAUGE;

describe('what hangs low', () => {
  const pan = (height: number, at = 1.5): Partial<Vehicle> => ({
    lowParts: [{ name: 'ash pan', at, height }],
  });

  it('strikes where the rail comes up to it, is near where less is left than practice asks', () => {
    expect(said(on(round(30), pan(MIDDLE + ROOM + 1e-4)))).toEqual([]);
    expect(said(on(round(30), pan(MIDDLE + ROOM - 1e-4)))).toEqual(['limits part-strikes-track']);
    expect(said(on(round(30), pan(MIDDLE + 1e-4)))).toEqual(['limits part-strikes-track']);
    expect(said(on(round(30), pan(MIDDLE - 1e-4)))).toEqual(['forbids part-strikes-track']);
    const [finding] = asked(on(round(30), pan(MIDDLE - 1e-4))).findings.filter(
      (f) => f.severity === 'forbids',
    );
    expect(tellFinding(finding, voice(on(round(30)))).what).toMatch(
      /^car1, ash pan: strikes the track over the crest/,
    );
  });

  it('is left alone in a sag between the guides, and strikes there under an end', () => {
    expect(said(on(round(30, 1), pan(ROOM + 1e-4)))).toEqual([]);
    // o·(A + o)/(2R) at the front end: 0.5·2.5/60.
    const end = (0.5 * 2.5) / 60;
    expect(said(on(round(30, 1), pan(end + 1e-4, 0)))).toEqual(['limits part-strikes-track']);
    expect(said(on(round(30, 1), pan(end - 1e-4, 0)))).toEqual(['forbids part-strikes-track']);
    expect(said(on(round(30, -1), pan(ROOM + 1e-4, 0)))).toEqual([]);
  });

  it('tells the worst with how many more, and in what it lies', () => {
    const low = (height: number): Partial<Vehicle> => ({
      lowParts: [
        { name: 'step', at: 0, height },
        { name: 'ash pan', at: 1.5, height: MIDDLE - 0.001 },
      ],
    });
    const crest = altered(on(round(30), low(1)), 0, pan(MIDDLE - 0.004));
    const [worst] = asked(crest).findings;
    expect(worst).toMatchObject({ where: { vehicle: 'engine' }, facts: { lie: 'crest', others: 1 } });
    const [sag] = asked(on(round(30, 1), low(0.001))).findings;
    expect(sag).toMatchObject({ where: { vehicle: 'car1' }, facts: { part: 'step', lie: 'sag' } });
  });

  it('does not strike where the vehicle cannot stand: beyond the end of the line', () => {
    const heights = [0, 1, 2, 3, 78, 78.6, 79.2, 80].map((at) => ({
      at,
      height: at > 78.6 ? -(at - 78.6) / 2 : 0,
    }));
    const [part] = asked(on(heights, pan(0.5))).data[1].parts;
    // Its front guide stands half a metre before the end at the most, 0.45 m down; its middle on the level: half of it.
    expect(part.rise).toBeCloseTo(0.225, 9);
    const loop = on(heights, pan(0.5));
    expect(asked({ ...loop, line: { ...loop.line, loop: true } }).data[1].parts[0].rise).toBeCloseTo(0.25, 9);
  });

  it('sinks on springs under people, by the softest that they may be', () => {
    const seats = [
      { id: '1', name: '1', at: 1.5, across: 0, height: 0.3, facing: 'forward', driver: false },
    ] as const;
    const sprung = (riders = [rider('1', '1')]): Outing => ({
      ...on(round(1e6), {
        ...pan(ROOM + 0.01),
        seats,
        suspension: { equalised: true, wheelStiffness: { ...exact(40_000), low: 10_000 } },
      }),
      riders,
    });
    // 70 kg in the middle, half on each end, two wheels: 686.5/4/10 000 = 17 mm.
    const [part] = asked(sprung()).data[1].parts;
    expect(part.sink).toBeCloseTo(686.46 / 4 / 10_000, 4);
    expect(said(sprung())).toEqual(['limits part-strikes-track']);
    expect(said(sprung([]))).toEqual([]);
  });

  it('by few points of a survey: nobody can tell', () => {
    const sharp = [0, 40, 80].map((at) => ({ at, height: -0.05 * Math.abs(at - 40) }));
    expect(said(on(sharp, pan(0.04)))).toEqual(['unknown part-strikes-track line.profile']);
    // Lower than the rail on the level: no survey is needed.
    expect(said(on(sharp, pan(-0.001)))).toEqual(['forbids part-strikes-track']);
    expect(said(on(round(1e7), pan(0)))).toEqual(['forbids part-strikes-track']);
  });

  it('is asked for where the line takes what practice leaves in all', () => {
    const severity = (radius: number): string | undefined =>
      asked(on(round(radius))).findings.find((f) => f.code === 'low-parts-not-measured')?.severity;
    expect(severity(4 / (8 * 0.98 * ROOM))).toBeUndefined();
    expect(severity(4 / (8 * 1.02 * ROOM))).toBe('limits');
    expect(severity(4 / (8 * 2.02 * ROOM))).toBe('unknown');
    // Between far points neither is known.
    const sharp = [0, 40, 80].map((at) => ({ at, height: -0.05 * Math.abs(at - 40) }));
    expect(asked(on(sharp)).findings.map((f) => f.severity)).toEqual(['notes']);
  });

  it('is lifted by the least that does, or the car stays', () => {
    const outing = on(round(30), pan(MIDDLE - 0.0003));
    const finding = asked(outing).findings.find((f) => f.severity === 'forbids') as Finding;
    const clears = (change: Change): boolean =>
      !asked(applyChange(outing, change)).findings.some((f) => f.code === 'part-strikes-track');
    const found = familiesFor(outing, finding).flatMap(({ changes }) => changes.find(clears) ?? []);
    expect(found.map((c) => c.kind)).toEqual(['part-lifted', 'fewer-cars']);
    expect('by' in found[0] && found[0].by).toBeCloseTo(Math.ceil((ROOM + 0.0003) * 1000) / 1000, 9);
    expect(tellChange(found[0], voice(outing))).toMatch(
      /^lift the ash pan of car1 \d+\.00 mm, or cut it away$/,
    );
  });
});

describe('a rigid group of three axles', () => {
  const BASE = 0.8;
  const six = (more: Partial<AxleGroup>, changes: Partial<Vehicle> = {}): Partial<Vehicle> => ({
    ...changes,
    groups: [{ id: 'd', name: 'drivers', at: 1.5, axles: 3, wheelBase: BASE, driven: true, ...more }],
  });
  const V = BASE ** 2 / (8 * 10);
  const FLANGE = GAUGE / 56.5;

  it('hangs its middle wheel in a sag, an outer one twice as far over a crest', () => {
    // 8 mm of versine; flanges of 2 to 3 mm.
    const hangs = (sign: 1 | -1, travel: number): number =>
      asked(on(round(10, sign, 0.1), six({ travel }))).data[1].groups[0].hangs;
    expect(hangs(1, 0)).toBeCloseTo(V, 4);
    expect(hangs(-1, 0)).toBeCloseTo(2 * V, 4);
    expect(hangs(1, 0.005)).toBeCloseTo(V - 0.005, 4);
    expect(hangs(-1, V + 1e-4)).toBe(0);
  });

  it('holds from a flange on, limits below, says nothing where all bear', () => {
    const sag = (travel: number): string[] => said(on(round(10, 1, 0.1), six({ travel })));
    expect(sag(V - FLANGE - 3e-4)).toEqual(['forbids wheel-lifts-on-hump']);
    expect(sag(V - FLANGE + 3e-4)).toEqual(['limits wheel-lifts-on-hump']);
    expect(sag(V + 3e-4)).toEqual([]);
  });

  it('goes by its own flanges where they are measured, the least of them', () => {
    const wheelsets = [0.02, 0.001].map((flangeHeight, i) => ({ id: `${i}`, name: `${i}`, flangeHeight }));
    const sag = (hangs: number): string[] =>
      said(on(round(10, 1, 0.1), six({ travel: V - hangs }, { wheelsets })));
    expect(sag(0.0015)).toEqual(['forbids wheel-lifts-on-hump']);
    expect(sag(0.0007)).toEqual(['limits wheel-lifts-on-hump']);
  });

  it('of two axles is not looked at; of four, springs alone do not answer', () => {
    const sprung = { suspension: { equalised: false, wheelStiffness: exact(1) } };
    expect(asked(on(round(10, 1, 0.1), six({ axles: 2 }))).data[1].groups).toEqual([]);
    expect(asked(on(round(10, 1, 0.1), six({ axles: 4 }, sprung))).data[1].groups[0].travel).toBeUndefined();
    expect(asked(on(round(10, 1, 0.1), six({}, sprung))).data[1].groups[0].travel).toBeGreaterThan(1);
  });

  it('is asked after where a rigid frame would hang by its flange; springs and levers answer', () => {
    expect(said(on(round(10, 1, 0.1), six({})))).toEqual([
      'unknown wheel-lifts-on-hump vehicle.axleGroups.travel',
    ]);
    expect(said(on(round(200, 1, 0.1), six({})))).toEqual([]);
    const sharp = [0, 40, 80].map((at) => ({ at, height: 0.05 * Math.abs(at - 40) }));
    expect(said(on(sharp, six({})))).toEqual(['notes wheel-lifts-on-hump vehicle.axleGroups.travel']);
    const [known] = asked(on(round(10, 1, 0.1), six({ travel: 0 }))).findings.filter(
      (f) => f.severity === 'forbids',
    );
    expect(known.measure).toBeUndefined();
    expect(known.margin).toBe(-1);
    const [unknown] = asked(on(round(10, 1, 0.1), six({}))).findings.filter(
      (f) => f.code === 'wheel-lifts-on-hump',
    );
    expect(unknown.found?.si).toBeCloseTo(V, 4);
    const levers = { suspension: { equalised: true } };
    expect(said(on(round(10, 1, 0.1), six({}, levers)))).toEqual([]);
    const sprung = (k: number) => ({ suspension: { equalised: false, wheelStiffness: exact(k) } });
    const tare = on(round(10)).train.vehicles[1].tare.value;
    // The middle one of three bears until it has come off by 1.5 times what they sink under the car.
    const just = (tare * 9.80665 * 1.5) / (6 * V);
    expect(said(on(round(10, 1, 0.1), six({}, sprung(just * 0.99))))).toEqual([]);
    expect(said(on(round(10, 1, 0.1), six({}, sprung(just * 1.1))))).not.toEqual([]);
  });
});

it('the sharpest crests and sags of a line are those of the rounds it was made of', () => {
  const heights = round(25);
  const [sharpest] = verticalCurves(on(heights).line, 2, 6);
  expect(sharpest.lie).toBe('crest');
  expect(sharpest.radius).toBeCloseTo(25, 6);
  expect(sharpest.sparse).toBe(false);
});

it('the tables say what is left under each, and how sharp a crest this train takes', () => {
  const outing = on(round(30), { lowParts: [{ name: 'ash pan', at: 1.5, height: 0.03 }] });
  const fit = lookAtFit(outing);
  const [engine, pan] = humpsTable(fit, voice(outing)).rows;
  expect(engine.slice(0, 3)).toEqual(['engine', 'low parts', 'cannot tell']);
  expect(engine[4]).toBe('not measured');
  expect(pan.slice(0, 2)).toEqual(['car1', 'ash pan']);
  expect(pan[4]).toBe('30 mm');
  expect(pan[3]).toMatch(/^crest at/);
  const rows = verticalTable(fit, voice(outing)).rows;
  expect([rows[0][0], rows[0][2]]).toEqual(['the line at 31 m', 'crest']);
  expect([rows.at(-1)?.[0], rows.at(-1)?.[2]]).toEqual(['car1, ash pan', 'crest']);
  expect(fit.needs[0].radius).toBeCloseTo(4 / (8 * (0.03 - ROOM)), 9);
  // A step at the front end, o·(A + o)/2R, and a part over the pivot, which no crest comes up to.
  const parts = [
    { name: 'step', at: 0, height: 0.03 },
    { name: 'bolster', at: 0.5, height: 0.03 },
    { name: 'drain', at: 1.5, height: ROOM },
  ];
  const [step, bolster, drain] = lookAtFit(on(round(30), { lowParts: parts })).needs;
  expect(step).toMatchObject({ lie: 'sag', radius: expect.closeTo((0.5 * 2.5) / (2 * (0.03 - ROOM)), 9) });
  expect(bolster).toMatchObject({ lie: 'crest', radius: 0 });
  expect(drain.radius).toBe(Infinity);
});
