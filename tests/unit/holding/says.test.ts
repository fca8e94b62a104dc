/**
 * What is said of a standing train. On a fall of 3 in 100 with rolling resistance of 5 N/kN, 600 kg pull with
 * 600 · 9.80665 · (0.030 − 0.005) = 147.1 N: two and a half in a hundred.
 */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askHolding } from '../../../engine/questions/hold/ask.ts';
import { holdRemedies } from '../../../engine/questions/hold/remedies.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { G, laid } from '../../support/on-a-fall.ts';
import { altered, rider } from '../../support/rules.ts';

const PULL = 600 * G * 0.025;
/** With a guard of 70 kg. */
const WITH_GUARD = 670 * G * 0.025;
const asked = (outing: Outing) => askHolding(prepare(openOuting(outing), 1, 0));
const said = (outing: Outing) => asked(outing).findings.map((f) => `${f.severity}: ${f.code}`);
/** Screws of so many newtons on the engine and the first car. */
const screws = (force: number): Outing => laid({ screw: exact(force) });
const withGuard = (outing: Outing): Outing => ({
  ...outing,
  riders: [rider('g', '1', { vehicle: outing.train.vehicles[1].id, duty: 'guard' })],
});
/** Vacuum brakes on the last car besides, which answer the driver and leak off. */
const withAir = (outing: Outing, force: number): Outing => {
  const [, , car] = outing.train.vehicles;
  const gear: BrakeGear = {
    id: 'vacuum',
    name: 'vacuum',
    kind: 'automatic-vacuum',
    on: car.groups.map((g) => g.id),
    workedBy: 'driver',
    parking: false,
    force: exact(force),
  };
  return altered(outing, 2, { brakes: [gear] });
};

describe('a train on a fall', () => {
  it('is held by the engine’s screw alone, or may not stand', () => {
    expect(said(screws(PULL + 0.1))).toEqual([]);
    expect(said(screws(PULL - 0.1))).toEqual(['forbids: does-not-hold']);
  });
  it('is held by the guard’s screw too, and by no rider’s', () => {
    expect(said(screws(PULL / 2 + 0.1))).toEqual(['forbids: does-not-hold']);
    expect(said(withGuard(screws(WITH_GUARD / 2 + 0.1)))).toEqual([]);
    expect(said(withGuard(screws(WITH_GUARD / 2 - 0.1)))).toEqual(['forbids: does-not-hold']);
  });
  it('says whether it would hold with everybody at a screw, what is lacking, and where', () => {
    const [would] = asked(screws(0.8 * PULL)).findings;
    expect(would.found?.si).toBeCloseTo(0.8 * PULL, 3);
    expect(would.required?.si).toBeCloseTo(PULL, 3);
    expect(would.margin).toBeCloseTo(-0.2, 6);
    expect(would).toMatchObject({
      facts: { riders: 'hold' },
      sum: { id: 'grade-force', differs: 'rolling' },
    });
    expect(would.sum?.inputs['grade']).toBeCloseTo(0.03, 3);
    const [not] = asked(screws(0.4 * PULL)).findings;
    expect(not.facts).toMatchObject({ riders: 'do not hold' });
    expect('everybody' in not.facts ? not.facts.everybody.si : 0).toBeCloseTo(0.8 * PULL, 3);
  });
  it('that a brake holds which leaks off may stand while it is tight', () => {
    const tight = withAir(screws(0.8 * PULL), 0.3 * PULL);
    const [limits] = asked(tight).findings;
    expect(said(tight)).toEqual(['limits: holds-only-while-brake-is-tight']);
    // Of what stays on when the air is gone.
    expect(limits.margin).toBeCloseTo(-0.2, 6);
    expect(said(withAir(screws(0.8 * PULL), 0.1 * PULL))).toEqual(['forbids: does-not-hold']);
  });
  it('asks for a brake to park with that nobody has measured, where others hold while tight', () => {
    const unpulled = laid({ screw: exact(0) });
    const [engine] = unpulled.train.vehicles;
    const brakes = engine.brakes.map(({ force: _, ...gear }) => gear);
    const [limits] = asked(withAir(altered(unpulled, 0, { brakes }), 1.1 * PULL)).findings;
    expect(limits).toMatchObject({
      severity: 'limits',
      code: 'holds-only-while-brake-is-tight',
      where: { vehicle: engine.id },
      measure: `vehicle.brakes.${brakes[0].id}.force`,
    });
    expect(asked(withAir(screws(0.8 * PULL), 0.3 * PULL)).findings[0]).not.toHaveProperty('measure');
  });
  it('tells who holds how much', () => {
    const { data } = asked(withAir(withGuard(screws(100)), 30));
    expect(data.driver).toBeCloseTo(100, 6);
    expect(data.crew).toBeCloseTo(200, 6);
    expect(data.everybody).toBeCloseTo(200, 6);
    expect(data.tight).toBeCloseTo(230, 6);
  });
});

it('on level ground nothing pulls and nothing is lacking', () => {
  const outing = screws(1);
  const flat = { ...outing.line, heights: outing.line.heights.map((k) => ({ ...k, height: 0 })) };
  const { data, findings } = asked({ ...outing, line: flat });
  expect(data.pull).toBe(0);
  expect(findings).toEqual([]);
});

it('uphill pulls as much as downhill', () => {
  const { data } = asked({ ...screws(100), direction: 'reverse' });
  expect(data.pull).toBeCloseTo(PULL, 3);
});

it('of two falls the steeper is where it stands hardest', () => {
  const outing = screws(100);
  const heights = [0, 200, 400, 600].map((at, i) => ({ at, height: [20, 18, 12, 10][i] }));
  const { data } = asked({ ...outing, line: { ...outing.line, heights } });
  expect(data.at).toBeGreaterThan(200);
  expect(data.at).toBeLessThan(410);
});

describe('what would help', () => {
  const outing = withGuard(screws(0.4 * PULL));
  const [finding] = asked(outing).findings;
  const families = holdRemedies['does-not-hold']?.(outing, finding) ?? [];
  const brakes = families.flatMap(({ changes }) => changes.filter((c) => c.kind === 'parking-brake'));
  it('is a brake with the driver or the guard, by at least what is lacking', () => {
    const [engine, car] = outing.train.vehicles;
    expect([...new Set(brakes.map((c) => c.vehicle))]).toEqual([engine.id, car.id]);
    const lacks = WITH_GUARD - 0.8 * PULL;
    expect(brakes.map((c) => c.force)).toEqual(
      [1, 2].flatMap(() => [1.1, 1.5, 2, 3].map((times) => Math.ceil(times * lacks))),
    );
  });
  it('is fewer riders before fewer cars before a brake', () => {
    const sizes = families.map((f) => f.size);
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(families.flatMap((f) => f.changes.map((c) => c.kind))).toContain('fewer-cars');
  });
});
