import { describe, expect, it } from 'vitest';
import { askChains } from '../../../engine/coupling/ask-chains.ts';
import { catchPeak, chainOf } from '../../../engine/coupling/chain.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/context.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { between, exact } from '../../../engine/quantity.ts';
import { prepare } from '../../../engine/stopping/prepare.ts';
import type { SafetyChain, Vehicle } from '../../../engine/vehicle/types.ts';
import { randomOuting } from '../../support/random-outings.ts';

const POUND = 4.4482216152605;
const INCH = 0.0254;
const stiffness = between(2e5, 5e5, 2e6, 'assumed');
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
    chainOf(hung(front, 'rear', a), hung(rear, 'front', b), stiffness);

  it('counts as grade 30 without a mark (49 CFR 393.108: ¼ in bears 1,300 lb)', () => {
    expect(gear(quarter)?.workingLoad?.value).toBeCloseTo(1300 * POUND, 6);
    expect(gear({ ...quarter, grade: 70 })?.workingLoad?.value).toBeCloseTo(3150 * POUND, 6);
  });
  it('bears no more than its weakest part', () => {
    const weak = { ...quarter, weakestPart: exact(140 * POUND), weakestPartName: 'S-hook' };
    expect(gear(weak)?.workingLoad).toMatchObject({ value: 140 * POUND, by: 'S-hook' });
  });
  it('cannot be told without size or load, even where a part is rated', () => {
    expect(gear({ count: 1, slack: 0.05, weakestPart: exact(5000) })?.workingLoad).toBeNull();
    expect(gear({ ...quarter, size: 0.0055 })?.workingLoad).toBeNull();
  });
  it('counts two side by side as one', () => {
    expect(gear({ ...quarter, count: 2 })?.workingLoad).toEqual(gear(quarter)?.workingLoad);
  });
  it('is the weaker of two described for the same gap, an unknown one weakest of all', () => {
    expect(gear({ ...quarter, grade: 80 }, quarter)?.workingLoad?.value).toBeCloseTo(1300 * POUND, 6);
    expect(gear(quarter, { count: 1, slack: 0.05 })?.workingLoad).toBeNull();
    expect(gear()).toBeNull();
  });
  it('more slack never lowers the snatch', () => {
    let before = 0;
    for (const slack of [0, 0.01, 0.05, 0.1, 0.5]) {
      const peak = catchPeak(gear({ ...quarter, slack })!, 300, 0.1, 600);
      expect(peak).toBeGreaterThan(before);
      before = peak;
    }
  });
  it('bears twice the pull where it has no slack', () => {
    expect(catchPeak(gear({ ...quarter, slack: 0 })!, 300, 0, 600)).toBeCloseTo(1200, 9);
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
