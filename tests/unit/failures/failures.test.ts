/** One thing fails, or a chain holds what parted: the whole train is ranked as a tail is. */

import { describe, expect, it } from 'vitest';
import { type FailureCase, lookAtFailures } from '../../../desk/failures.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { percentile } from '../../../engine/base/spread.ts';
import { cautionOfPart } from '../../../engine/motion/caution.ts';
import { modelOf } from '../../../engine/motion/model.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { sampleStops } from '../../../engine/motion/sample.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { wholeLeft } from '../../../engine/questions/part/brakes-left.ts';
import { changedExample, type OutingPaper, vehiclesOf } from '../../support/changed-examples.ts';
import { factOf } from '../../support/facts.ts';

const bearings = { value: '3.5 N/kN', low: '3 N/kN', high: '4 N/kN', how: 'measured' };

/** The heavy train with its air worked straight, chains that hold anything, and little on the engine. */
const straight =
  (engine: string, kind = 'straight-air', more: object = {}) =>
  (paper: OutingPaper): void => {
    for (const v of vehiclesOf(paper)) {
      delete v['brakeSupply'];
      if (v.role === 'engine') v['supplies'] = [kind];
      v['resistance'] = { rolling: bearings };
      v.rear['chain'] = { grade: 80, size: '5/16 in', slack: '2 in' };
      v.brakes &&= v.brakes.map((b) => {
        if (b['kind'] === 'automatic-air') return { name: 'train brake', kind, force: '62 lbf', ...more };
        return b['kind'] === 'engine-only' ? { ...b, force: engine } : b;
      });
    }
  };
const answer = (outing: Outing) => answerOuting(outing, { remedies: false, counts: false });
const caseOf = (outing: Outing, failure: FailureCase['failure']): FailureCase => {
  const found = lookAtFailures(outing, 5).cases.find((c) => c.failure === failure);
  if (!found) throw new Error(`no ${failure}`);
  return found;
};

describe('a chain that holds', () => {
  it('leaves a straight-air train without its brake: it runs away whole, and may not leave', async () => {
    const { verdict, findings } = answer(await changedExample('heavy-air', straight('60 lbf')));
    expect(verdict).toBe('hold');
    const held = findings.find((f) => f.code === 'held-train-runs-away');
    expect(held?.severity).toBe('forbids');
    expect(factOf(held, 'outcome')).toBe('overturns');
    expect(findings.some((f) => f.code === 'parting-held-by-chains')).toBe(true);
    // The hose alone would say the same again.
    expect(findings.some((f) => factOf(f, 'failure') === 'hose')).toBe(false);
  });

  it('leaves an automatic brake that comes on', async () => {
    const { findings } = answer(await changedExample('heavy-air', straight('60 lbf', 'automatic-air')));
    expect(findings.some((f) => f.code.startsWith('held-train'))).toBe(false);
  });
});

describe('a dead end ahead', () => {
  it('is run towards so slowly that what is left stops it: then the train may leave', async () => {
    const outing = await changedExample('heavy-air', (paper) => {
      straight('110 lbf')(paper);
      Object.assign(paper, { wayBack: 'none' });
      const line = paper['line'] as Record<string, unknown>;
      Object.assign(line, {
        shape: 'point-to-point',
        profile: [
          { at: '0 ft', height: '0 ft' },
          { length: '1000 ft', grade: '0 %' },
        ],
        ...{ curves: [], places: [], speedLimits: [], sights: [], twist: undefined },
      });
    });
    const { verdict, findings } = answerOuting(outing, { counts: false });
    const [off] = findings.filter((f) => f.code === 'failure-runs-away' && f.severity === 'forbids');
    expect(verdict).toBe('hold');
    expect(factOf(off, 'outcome')).toBe('leaves-line');
    const slower = off.remedies.find(({ change }) => change.kind === 'slower');
    expect(slower).toMatchObject({ clears: true, verdict: 'limits', change: { to: outing.line.length } });
  });
});

describe('a hose that comes off', () => {
  it.each([
    ['straight-air', {}, true],
    ['simple-vacuum', {}, true],
    ['electric', { onSupplyLoss: 'lost' }, true],
    ['electric', {}, true],
    ['electric', { onSupplyLoss: 'applies' }, false],
    ['automatic-air', {}, false],
    ['automatic-vacuum', {}, false],
  ])('%s %o: runs away %s', async (kind, more, runs) => {
    const outing = await changedExample('heavy-air', straight('60 lbf', kind, more));
    const { findings } = lookAtFailures(outing, 5);
    const hose = findings.find((f) => factOf(f, 'failure') === 'hose' && f.code === 'failure-runs-away');
    expect(hose?.severity).toBe(runs ? 'forbids' : undefined);
    const { outcome } = caseOf(outing, 'hose');
    expect(outcome).toBe(runs ? 'overturns' : 'stands');
    const silent = kind === 'electric' && !('onSupplyLoss' in more);
    expect(hose?.measure !== undefined).toBe(silent);
  });

  it('is no more than a longer stop where the engine by itself holds the fall', async () => {
    const outing = await changedExample('heavy-air', straight('260 lbf'));
    const hose = caseOf(outing, 'hose');
    expect(hose.outcome).toBe('stands');
    expect(hose.way).toBeGreaterThan(1.3 * hose.usual);
  });

  it('takes nothing from vehicles whose pipe does not lead there', async () => {
    // Two cars without brake or pipe behind the others: nothing can come off between them.
    const outing = await changedExample('heavy-air', straight('260 lbf'));
    const { vehicles } = outing.train;
    const last = vehicles.length - 1;
    const bare = {
      ...outing,
      train: {
        ...outing.train,
        vehicles: vehicles.map((v, i) => (i < last - 1 ? v : { ...v, brakes: [] })),
      },
    };
    const lost = (gap: number): number => wholeLeft(openOuting(bare), gap, false).lost.length;
    expect(lost(0)).toBe(3);
    expect(lost(last - 1)).toBe(0);
    expect(lost(last - 2)).toBe(0);
    expect(wholeLeft(openOuting(bare), last - 1, false).groups.length).toBeGreaterThan(3);
  });
});

describe('with nothing failed', () => {
  it('the train stops as one in a hundred does: no more are beyond, and few places are more than a quarter beyond them', async () => {
    const [draws, places] = [1000, 20];
    const ratios: number[] = [];
    for (const name of ['heavy-air', 'battery-vacuum', 'steam-light']) {
      const outing = await changedExample(name, () => undefined);
      const prepared = prepare(openOuting(outing));
      const inputs = prepared.inputs(outing.conditions.railState);
      const told = modelOf(inputs, cautionOfPart(inputs, prepared.careful));
      const sound = caseOf(outing, 'nothing');
      // A bad spot is met as the brakes begin, where it costs the most: no shorter.
      expect(sound.way / stopDistance(told, sound.at, sound.speed), name).toBeGreaterThan(0.98);
      for (let i = 0; i < places; i++) {
        const at = (outing.line.length * i) / places;
        const stop = stopDistance(told, at, sound.speed);
        const stops = sampleStops(inputs, at, sound.speed, draws, 77_001 + i).sort();
        // Two standard errors of so few draws.
        const beyond = stops.filter((s) => s > stop).length / draws;
        expect(beyond, `${name} ${at}`).toBeLessThan(0.013 + 2 * Math.sqrt(0.0128 / draws));
        ratios.push(stop / percentile(stops, 0.99));
      }
    }
    expect(ratios.filter((r) => r > 1.25).length).toBeLessThanOrEqual(0.05 * ratios.length);
  });
});

describe('single failures', () => {
  it('nobody at the handle is told and forbids nothing', async () => {
    const outing = await changedExample('steam-light', () => undefined);
    const { findings } = lookAtFailures(outing, 5);
    const driver = findings.find((f) => factOf(f, 'failure') === 'driver');
    expect(driver?.severity).toBe('notes');
    const hard = answer(outing).findings.filter((f) => f.severity === 'forbids' || f.severity === 'limits');
    expect(hard.filter((f) => f.question === driver?.question)).toEqual([]);
  });

  it('a guard with a brake on the guard’s car stops what the driver no longer does', async () => {
    const guarded = (force: string) => (paper: OutingPaper) => {
      for (const v of vehiclesOf(paper)) {
        for (const b of v.brakes ?? [])
          if (v.role === 'car' && b['kind'] === 'mechanical') Object.assign(b, { workedBy: 'guard', force });
      }
    };
    const weak = caseOf(await changedExample('heavy-air', guarded('10 lbf')), 'driver');
    const strong = caseOf(await changedExample('heavy-air', guarded('400 lbf')), 'driver');
    expect(weak.stops).toBe(false);
    expect(strong.topSpeed).toBeLessThan(weak.topSpeed);
  });

  it('one brake cut out lengthens the stop, a cock in the pipe more, and neither beyond what is lost', async () => {
    const outing = await changedExample('heavy-air', () => undefined);
    const [sound, cock, pipe] = (['nothing', 'cock', 'pipe'] as const).map((f) => caseOf(outing, f));
    expect(cock.way).toBeGreaterThan(sound.way);
    expect(pipe.way).toBeGreaterThan(cock.way);
    expect(pipe.vehicle).toBe(0);
    expect(cock.lost.length).toBe(1);
    expect(pipe.lost.length).toBe(5);
  });

  it('a supply that fails leaves straight air what its reservoir is known to hold', async () => {
    const outing = await changedExample('heavy-air', straight('60 lbf'));
    expect(caseOf(outing, 'supply').stops).toBe(false);
    const automatic = await changedExample('heavy-air', () => undefined);
    expect(caseOf(automatic, 'supply').stops).toBe(true);
  });
});
