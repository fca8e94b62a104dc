import { describe, expect, it } from 'vitest';
import { familiesFor } from '../../../engine/answer/families.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { isCleared } from '../../../engine/answer/remedies.ts';
import { between, exact } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { applyChange, type Change } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askChains } from '../../../engine/questions/chains/ask.ts';
import { catchPeak, chainOf, steadyOnOne } from '../../../engine/things/chain/chain.ts';
import { chainWorkingLoad } from '../../../engine/things/chain/formulas.ts';
import type { SafetyChain, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { factOf } from '../../support/facts.ts';
import { assumedValues, randomOuting } from '../../support/random-outings.ts';

const POUND = 4.4482216152605;
const INCH = 0.0254;
/** Of a chain as it hangs, stated. */
const stiffness = between(2e5, 5e5, 2e6, 'stated');
const { chainCatch: assumed } = assumedValues;
const base = randomOuting(5, 4, 0.02);
const [front, rear] = base.train.vehicles;
const hung = (v: Vehicle, end: 'front' | 'rear', chain?: SafetyChain): Vehicle => ({
  ...v,
  [end]: { type: 'coupler', ...(chain ? { chain } : {}) },
});
const quarter: SafetyChain = { count: 1, size: INCH / 4, slack: 0.05 };

const ask = (outing: Outing) => {
  const context = openOuting(outing);
  return askChains(context, prepare(context, 0.5, 0).brakes.groups);
};
const withChains = (chain: SafetyChain | undefined): Outing => ({
  ...base,
  train: {
    ...base.train,
    chainsFastened: true,
    vehicles: base.train.vehicles.map((v) => ({
      ...hung(hung(v, 'rear', chain), 'front'),
      brakes: v.role === 'engine' ? v.brakes : [],
    })),
  },
});

describe('the chain at a gap', () => {
  const gear = (a?: SafetyChain, b?: SafetyChain) =>
    chainOf(hung(front, 'rear', a), hung(rear, 'front', b), assumed);
  /** With the stiffest the chain may be, and everybody tied to the seat. */
  const peakOf = (chain: SafetyChain, mass: number, speed: number, pull: number): number => {
    const hangs = gear(chain)!;
    return catchPeak(hangs, { mass, first: mass, speed, pull, stiffness: hangs.stiffness.high });
  };

  it('counts as grade 30 without a mark (49 CFR 393.108: ¼ in bears 1,300 lb)', () => {
    expect(gear(quarter)?.workingLoad?.value).toBeCloseTo(1300 * POUND, 6);
    expect(gear({ ...quarter, grade: 70 })?.workingLoad?.value).toBeCloseTo(3150 * POUND, 6);
  });
  it('bears no more than its weakest part', () => {
    const weak = { ...quarter, weakestPart: exact(140 * POUND), weakestPartName: 'S-hook' };
    expect(gear(weak)?.workingLoad).toMatchObject({ value: 140 * POUND, by: 'S-hook' });
  });
  it('cannot be told without a load or a size that the tables have, even where a part is rated', () => {
    expect(gear({ count: 1, slack: 0.05, weakestPart: exact(5000) })?.workingLoad).toBeNull();
    expect(gear({ ...quarter, size: 0.003 })?.workingLoad).toBeNull();
  });
  it('breaks at four times its working load at the least, three where no mark tells the grade', () => {
    expect(gear(quarter)?.breaks).toBeCloseTo(4 * 1300 * POUND, 6);
    expect(gear({ ...quarter, grade: 43 })?.breaks).toBeCloseTo(3 * 2600 * POUND, 6);
    expect(gear({ ...quarter, workingLoad: exact(1000) })?.breaks).toBe(3000);
  });
  it('bears once what its parts are known to bear: a hook without a stated breaking load its working load', () => {
    const hook = { ...quarter, weakestPart: exact(700 * POUND), weakestPartName: 'hook' };
    expect(gear(hook)?.part).toEqual({ name: 'hook', bears: 700 * POUND, stated: false });
    const stated = gear({ ...hook, weakestPartBreaks: exact(2800 * POUND) });
    expect(stated?.part).toEqual({ name: 'hook', bears: 2800 * POUND, stated: true });
    // The chain itself is not the weaker for it: it stretches, and the hook must bear the peak.
    expect(stated?.breaks).toBeCloseTo(4 * 1300 * POUND, 6);
  });
  it('of two side by side the shorter takes it all, unless they are known to hang alike', () => {
    const catches = (chain: SafetyChain): number => peakOf({ stiffness, ...chain }, 300, 0, 600);
    const two = { ...quarter, count: 2, stiffness };
    expect(catches(two)).toBe(catches(quarter));
    expect(steadyOnOne(gear(two)!, 800)).toBe(800);
    expect(steadyOnOne(gear({ ...two, slackDifference: 0 })!, 800)).toBe(400);
    // At the stiffest, 2·10⁶ N/m, a tenth of a millimetre is 200 N on the shorter alone.
    expect(steadyOnOne(gear({ ...two, slackDifference: 1e-4 })!, 800)).toBeCloseTo(500, 9);
    expect(catches({ ...two, slackDifference: 0.1 })).toBe(catches(quarter));
    let before = catches({ ...two, slackDifference: 0 });
    expect(before).toBeLessThan(catches(quarter));
    for (const slackDifference of [1e-4, 1e-3, 5e-3, 0.1]) {
      const peak = catches({ ...two, slackDifference });
      expect(peak).toBeGreaterThan(before);
      expect(peak).toBeLessThanOrEqual(catches(quarter));
      before = peak;
    }
  });
  it('is the weaker of two described for the same gap, an unknown one weakest of all', () => {
    expect(gear({ ...quarter, grade: 80 }, quarter)?.workingLoad?.value).toBeCloseTo(1300 * POUND, 6);
    expect(gear(quarter, { count: 1, slack: 0.05 })?.workingLoad).toBeNull();
    expect(gear()).toBeNull();
  });
  it('more slack never lowers the snatch', () => {
    let before = 0;
    for (const slack of [0, 0.01, 0.05, 0.1, 0.5]) {
      const peak = peakOf({ ...quarter, slack }, 300, 0.1, 600);
      expect(peak).toBeGreaterThan(before);
      before = peak;
    }
  });
  it('bears twice the pull where it has no slack', () => {
    expect(peakOf({ ...quarter, slack: 0 }, 300, 0, 600)).toBeCloseTo(1200, 9);
  });
});

describe('a tail', () => {
  const braking = (...cars: readonly boolean[]): readonly boolean[] => {
    const train = brakedTrain('automatic-vacuum', 3);
    const vehicles = train.vehicles.map((v, i) => (i === 0 || cars[i - 1] ? v : { ...v, brakes: [] }));
    return ask({ ...base, train: { ...train, vehicles }, riders: [] }).data.map((row) => row.tailBrakes);
  };
  it('brakes by itself where every car behind the gap does', () => {
    expect(braking(true, true, true)).toEqual([true, true, true]);
    expect(braking(false, true, true)).toEqual([false, true, true]);
    expect(braking(true, true, false)).toEqual([false, false, false]);
    expect(braking(true, false, true)).toEqual([false, false, true]);
  });
});

describe('chains asked of a train', () => {
  it('forbids a thread behind which nothing brakes, and a size from the catalogue clears it', () => {
    const thread = withChains({ count: 1, slack: 0.05, workingLoad: exact(50) });
    const { findings, data } = ask(thread);
    const bad = findings.filter((f) => f.code === 'chain-too-weak' && f.severity === 'forbids');
    expect(bad.map((f) => f.where.gap)).toContain(0);
    const { grade, size } = data[0].smallest[0];
    const after = ask(applyChange(thread, { kind: 'chain-size', gap: 0, grade: grade as 30, size }));
    expect(after.data[0].verdict).not.toBe('too weak');
    expect(after.data[1].verdict).toBe('too weak');
  });
  it('cannot tell of an unmeasured chain and says what to measure', () => {
    const { findings } = ask(withChains({ count: 1, slack: 0.05 }));
    expect(findings[0]).toMatchObject({ severity: 'unknown', measure: 'coupling.chain.size' });
  });
  it('cannot tell whether a hook stands the snatch, where what breaks it is not stated', () => {
    const hook = { ...quarter, grade: 80 as const, weakestPart: exact(500), weakestPartName: 'hook' };
    const { findings, data } = ask(withChains(hook));
    expect(data[0].verdict).toBe('cannot tell');
    expect(findings[0]).toMatchObject({
      code: 'chain-strength-unknown',
      severity: 'unknown',
      measure: 'coupling.chain.weakestPartBreaks',
      facts: { way: 'part', part: 'hook' },
    });
    const stated = ask(withChains({ ...hook, weakestPartBreaks: exact(50_000) }));
    expect(stated.data[0].verdict).toBe('holds, then replace');
    const weak = ask(withChains({ ...hook, weakestPartBreaks: exact(510) }));
    expect(weak.data[0].verdict).toBe('too weak');
    expect(weak.findings[0]).toMatchObject({ severity: 'forbids', facts: { by: 'hook', way: 'snatch' } });
  });
  it('forbids a chain that breaks before it has taken up the work, and not one with less slack', () => {
    const long: SafetyChain = { count: 1, size: (3 / 16) * INCH, grade: 30, slack: 4 };
    const { findings, data } = ask(withChains(long));
    expect(data[0].steadyOnOne).toBeLessThan(800 * POUND);
    const [bad] = findings;
    expect(bad).toMatchObject({ severity: 'forbids', facts: { way: 'stretch', by: 'chain' } });
    expect(bad.sum?.id).toBe('chain-energy');
    expect(ask(withChains({ ...long, slack: INCH })).data.map((r) => r.verdict)).not.toContain('too weak');
  });
  it('says it once for the train, of the worst gap, and how many others there are', () => {
    const thread = withChains({ count: 1, slack: 0.05, workingLoad: exact(50) });
    const { findings, data } = ask(thread);
    const weak = data.filter((r) => r.verdict === 'too weak');
    expect(weak.length).toBeGreaterThan(1);
    expect(findings).toHaveLength(1);
    expect(factOf(findings[0], 'others')).toBe(weak.length - 1);
    const unknown = ask(withChains({ count: 1, slack: 0.05 })).findings;
    expect(unknown).toHaveLength(1);
    expect(factOf(unknown[0], 'others')).toBe(data.length - 1);
  });
  it('proposes the same chain on every gap where several are too weak', () => {
    const thread = withChains({ count: 1, slack: 0.05, workingLoad: exact(50) });
    const [bad] = ask(thread).findings;
    const changes = familiesFor(thread, bad).flatMap((family) => family.changes);
    expect(changes.every((c) => c.kind === 'chain-size' && c.gap === undefined)).toBe(true);
    const largest = applyChange(thread, { kind: 'chain-size', grade: 80, size: (5 / 8) * INCH });
    expect(new Set(ask(largest).data.map((r) => r.verdict))).toEqual(new Set(['holds']));
    const first: Change = { kind: 'chain-size', gap: bad.where.gap ?? 0, grade: 80, size: (5 / 8) * INCH };
    expect(isCleared(bad, inquire(applyChange(thread, first)))).toBe(false);
    expect(isCleared(bad, inquire(largest))).toBe(true);
  });
  it('says of two side by side how they share', () => {
    const two: SafetyChain = { count: 2, slack: 0.05, workingLoad: exact(50) };
    const shares = (chain: SafetyChain) =>
      ask(withChains(chain)).findings.find((f) => f.code === 'chain-too-weak')?.facts['shares'];
    expect(shares(two)).toBe('not known');
    expect(shares({ ...two, slackDifference: 0 })).toBe('known');
    expect(shares({ ...two, count: 1 })).toBe('one');
  });
  it('leaves missing chains to the host’s rule, and says what would do', () => {
    const { findings, data } = ask(withChains(undefined));
    expect(findings).toEqual([]);
    expect(data.map((r) => r.verdict)).toEqual(data.map(() => 'no chain'));
    expect(data[0].smallest.length).toBeGreaterThan(0);
  });
  it('keeps the host’s rule', () => {
    const outing = {
      ...withChains(quarter),
      host: { ...base.host, chainLoad: { value: 1e4, source: 'R1' } },
    };
    expect(ask(outing).findings[0]).toMatchObject({ severity: 'forbids', question: 'host', source: 'R1' });
  });
});

it('a chain between two sizes of the table counts as the smaller, one below them all as none', () => {
  const pounds = (grade: number, size: number): number | undefined => {
    const load = chainWorkingLoad(grade, size);
    return load === undefined ? undefined : Math.round(load / POUND);
  };
  // 5/32 in, 4 mm and 5 mm are hung and in no row: 1/8 in bears 400 lbf, 3/16 in (4.76 mm) 800 lbf.
  expect([(5 / 32) * INCH, 0.004, 0.005, 0.006].map((size) => pounds(30, size))).toEqual([
    400, 400, 800, 800,
  ]);
  // 3.15 mm is 1/8 in within 1 %; 3 mm is not.
  expect([0.00315, 0.003].map((size) => pounds(30, size))).toEqual([400, undefined]);
  expect(pounds(43, 0.006)).toBeUndefined();
});
