/** What is found of brakes that fill late, unevenly, too much, too little or slowly again: each bound from both sides. All made up. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { fillingFindings } from '../../../engine/questions/brakes/filling.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { fillTrain, type GearFill, type TrainFill } from '../../../engine/things/brake/fill.ts';
import type { BrakeKind } from '../../../engine/things/brake/kinds/index.ts';
import type { MissingPart } from '../../../engine/things/brake/train-air.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { tellFinding } from '../../../words/finding.ts';
import { brakedTrain, loadedTrain } from '../../support/braked-trains.ts';
import { plain } from '../../support/rules.ts';

const outing = plain(3);
const { assumed } = outing;
const context = openOuting(outing);
const SPREAD = assumed.practice['fill-spread'].value;
const RELEASE = assumed.practice.release.value;
const ENOUGH = assumed.practice.reservoir.value;
const STRONG = assumed.practice['over-pressure'].value;
const [gear] = outing.train.vehicles[1].brakes;
/** Stated: 0.5 s and 1.5 s to full force at the latest; nine tenths of it after 1.85 s. */
const timed: BrakeGear = { ...gear, deadTime: exact(0.5), buildUp: exact(1.5) };

const filled = (vehicle: number, t90: number, more: Partial<GearFill> = {}): GearFill => ({
  vehicle,
  gear,
  t10: 0.4,
  t90,
  full: t90 + 1,
  curve: { time: [0, 1], share: [0, 1] },
  pressure: 60_000,
  ofWorking: 1,
  block: 500,
  assumed: [],
  ...more,
});
const fill = (gears: readonly GearFill[], missing: readonly MissingPart[] = []): TrainFill => ({
  kind: gear.kind as BrakeKind,
  action: 'apply',
  gears,
  missing,
  ran: 10,
  balance: 0,
});
const applied = (...gears: readonly GearFill[]) =>
  fillingFindings(context, { apply: [fill(gears)], release: [fill([])] });
const released = (...gears: readonly GearFill[]) =>
  fillingFindings(context, { apply: [fill([])], release: [fill(gears)] });
const words = (findings: ReturnType<typeof applied>): string[] =>
  findings.map((f) => `${f.code} ${f.severity}`);
const idOf = (i: number): string => outing.train.vehicles[i].id;

describe('as it is put on', () => {
  it('later than stated limits, from what is stated on; what is not stated is not later', () => {
    const at = (t90: number, of = timed) => applied(filled(1, t90, { gear: of }));
    expect(words(at(1.85))).toEqual([]);
    expect(words(at(1.85 + 1e-6))).toEqual(['brake-slower-than-stated limits']);
    expect(words(at(9, gear))).toEqual([]);
    // One that never comes on has no time: it is not late, and says so by what it gives.
    expect(words(at(Infinity))).toEqual([]);
    const never = applied(filled(1, Infinity, { gear: timed, ofWorking: 0, pressure: 0 }));
    expect(words(never)).toEqual(['reservoir-too-small limits']);
    const { what, why } = tellFinding(never[0] as Finding, { system: 'imperial', wording: 'us', outing });
    expect(what).toMatch(/does not overcome its return spring/);
    expect(`${what} ${why}`).not.toMatch(/reservoir/i);
    const [finding] = at(3.7);
    expect(finding).toMatchObject({
      where: { vehicle: idOf(1) },
      found: { si: 3.7 },
      required: { si: expect.closeTo(1.85, 12) },
      facts: { gear: gear.name, kind: gear.kind },
    });
    expect(finding.margin).toBeCloseTo(1 - 2, 12);
    const spread = { ...timed, deadTime: { ...exact(0.5), high: 0.7 }, buildUp: { ...exact(1.5), high: 2 } };
    expect(words(at(2.5 - 1e-6, spread))).toEqual([]);
    expect(words(at(2.5 + 1e-6, spread))).toHaveLength(1);
    const { deadTime: _, ...half } = timed;
    const dead = assumed.deadTime[gear.kind].high;
    expect(words(at(dead + 1.35 - 1e-6, half))).toEqual([]);
    expect(words(at(dead + 1.35 + 1e-6, half))).toHaveLength(1);
  });

  it('the last one much after the first is noted, of those that come on at all', () => {
    expect(words(applied(filled(1, 1), filled(2, 1 + SPREAD)))).toEqual([]);
    const [late, ...none] = applied(filled(3, 1 + SPREAD + 0.5, { t10: 0.9 }), filled(1, 1), filled(2, 1.2));
    expect(none).toEqual([]);
    expect(late).toMatchObject({
      code: 'brake-slow-to-fill',
      severity: 'notes',
      where: { vehicle: idOf(3) },
      found: { si: 1 + SPREAD + 0.5 },
      required: { si: 1 + SPREAD },
      facts: { kind: gear.kind, first: { si: 1 }, t10: { si: 0.9 } },
    });
    expect(words(applied(filled(1, 1), filled(2, Infinity)))).toEqual([]);
    expect(words(applied(filled(1, Infinity)))).toEqual([]);
    expect(words(applied())).toEqual([]);
  });

  it('more than stated, less than stated: the worst, with how many cars', () => {
    const of = (...shares: readonly number[]) =>
      applied(...shares.map((s, i) => filled(i + 1, 1, { ofWorking: s, pressure: 1000 * (i + 1) })));
    expect(words(of(STRONG, ENOUGH))).toEqual([]);
    expect(words(of(STRONG + 1e-9))).toEqual(['brake-stronger-than-stated limits']);
    expect(words(of(ENOUGH - 1e-9))).toEqual(['reservoir-too-small limits']);
    const [strong] = of(STRONG + 0.1, STRONG + 0.3, 1);
    expect(strong).toMatchObject({
      where: { vehicle: idOf(2) },
      found: { si: STRONG + 0.3 },
      required: { si: STRONG },
      facts: { cars: 2, pressure: { si: 2000 } },
    });
    expect(strong.margin).toBeCloseTo(STRONG / (STRONG + 0.3) - 1, 12);
    const [small] = of(ENOUGH - 0.1, ENOUGH - 0.3, 1);
    expect(small).toMatchObject({
      where: { vehicle: idOf(2) },
      found: { si: ENOUGH - 0.3 },
      required: { si: ENOUGH },
      facts: { cars: 2, pressure: { si: 2000 } },
    });
    expect(small.margin).toBeCloseTo((ENOUGH - 0.3) / ENOUGH - 1, 12);
  });

  it('too small a reservoir limits no more where the stop reckons with what is left, in every car', () => {
    const left: BrakeGear = { ...gear, forceShare: 0.7 };
    const of = (...gears: readonly BrakeGear[]) =>
      words(applied(...gears.map((g, i) => filled(i + 1, 1, { ofWorking: 0.5, gear: g }))));
    expect(of(left, left)).toEqual(['reservoir-too-small notes']);
    expect(of(left, gear)).toEqual(['reservoir-too-small limits']);
  });
});

it('a spring that the air does not overcome leaves nothing of what is stated, and no time', () => {
  const train = loadedTrain('straight-air', 1, { springForce: 1e5 });
  const [never] = fillTrain(train, 'straight-air', 'apply', 101_325, assumed.brakeParts).gears;
  expect([never.ofWorking, never.t90, never.block]).toEqual([0, Infinity, 0]);
});

describe('as it is let off', () => {
  it('slow is noted, and limits where it never ends; the reservoir’s charge counts as well', () => {
    expect(words(released(filled(1, RELEASE)))).toEqual([]);
    const [slow] = released(filled(1, RELEASE + 1), filled(2, RELEASE + 2), filled(3, 1));
    expect(slow).toMatchObject({
      code: 'brake-slow-to-release',
      severity: 'notes',
      where: { vehicle: idOf(2) },
      found: { si: RELEASE + 2 },
      required: { si: RELEASE },
    });
    expect(words(released(filled(1, 1, { recharged: RELEASE + 1e-6 })))).toEqual([
      'brake-slow-to-release notes',
    ]);
    expect(words(released(filled(1, 1, { recharged: RELEASE })))).toEqual([]);
    const [never] = released(filled(1, Infinity));
    expect([never.severity, never.found]).toEqual(['limits', undefined]);
    expect(words(released())).toEqual([]);
  });
});

describe('what is still to be measured', () => {
  const lacks = (part: string, of?: BrakeGear): MissingPart => ({
    vehicle: 1,
    part,
    ...(of ? { gear: of } : {}),
  });
  const said = (apply: readonly MissingPart[], release: readonly MissingPart[] = []) =>
    fillingFindings(context, { apply: [fill([], apply)], release: [fill([], release)] }).map((f) => [
      f.severity,
      f.where.vehicle,
      f.measure,
    ]);
  const [, car] = brakedTrain('automatic-vacuum', 1).vehicles;
  const begun = car.brakes[0];
  const bare: BrakeGear = { ...begun, rigging: undefined as never };

  it('is asked for where somebody has begun to describe it, else noted; once, not again as it is let off', () => {
    expect(said([lacks('rigging.stroke', begun)])).toEqual([
      ['unknown', idOf(1), `vehicle.brakes.${begun.id}.rigging.stroke`],
    ]);
    expect(said([lacks('rigging', bare)])).toEqual([
      ['notes', idOf(1), `vehicle.brakes.${begun.id}.rigging`],
    ]);
    expect(said([lacks('brakeSupply.rate')])).toEqual([['notes', idOf(1), 'vehicle.brakeSupply.rate']]);
    expect(said([lacks('a')], [lacks('a'), lacks('b'), { ...lacks('a'), vehicle: 2 }])).toEqual([
      ['notes', idOf(1), 'vehicle.a'],
      ['notes', idOf(1), 'vehicle.b'],
      ['notes', idOf(2), 'vehicle.a'],
    ]);
  });
});
