/** The ladder: least that people must do for the best word, each step needed, and what stays said. */
import { describe, expect, it } from 'vitest';
import { tellLadder } from '../../../desk/ladder.ts';
import { effortOf, worth } from '../../../engine/answer/effort.ts';
import type { Ladder } from '../../../engine/answer/ladder.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { stepWord } from '../../../words/ladder.ts';
import { bundled } from '../../support/bundled.ts';
import { changedExample } from '../../support/changed-examples.ts';

const { laddersOf, wordOf } =
  await bundled<typeof import('../../support/kept-promises.ts')>('kept-promises.ts');
const as = (name: string): Promise<Outing> => changedExample(name, () => {});
const total = (outing: Outing, { steps, verdict }: Ladder): number =>
  worth[verdict] + steps.reduce((sum, { change }) => sum + effortOf(outing, change), 0);

describe('what a change asks of people', () => {
  it('never leaves seven riders before one car, nor fits a brake before a car is left', async () => {
    const outing = await as('too-long-wet');
    const riders = outing.riders.filter((r) => r.duty === 'rider').map((r) => r.id);
    const cars = outing.train.vehicles.slice(1).map((v) => v.id);
    const effort = (change: Parameters<typeof effortOf>[1]): number => effortOf(outing, change);
    const oneCar = effort({ kind: 'fewer-cars', leave: cars.slice(-1) });
    expect(effort({ kind: 'fewer-riders', leave: riders.slice(0, 2) })).toBeGreaterThan(oneCar);
    expect(effort({ kind: 'fewer-riders', leave: riders.slice(0, 7) })).toBeGreaterThan(
      effort({ kind: 'fewer-cars', leave: cars.slice(-5) }),
    );
    const moves = [{ rider: riders[0], vehicle: cars[0], seat: '1' }];
    for (const easy of [
      { kind: 'rail-state', state: 'sanded' },
      { kind: 'slower-everywhere', speed: 1.5 },
      { kind: 'seat', moves },
      { kind: 'chains' },
    ] as const)
      expect(effort(easy), easy.kind).toBeLessThan(oneCar);
    expect(effort({ kind: 'parking-brake', vehicle: cars[0], force: 100 })).toBeGreaterThan(oneCar);
    expect(effort({ kind: 'rail-state', state: 'dry' })).toBeGreaterThan(oneCar);
  });
});

describe('a ladder', () => {
  it('leads out of a hold by steps that are each needed, with the word after each', async () => {
    const outing = await as('busy-afternoon');
    const found = laddersOf(outing);
    const best = found[found.length - 1];
    expect(best.from).toBe('hold');
    expect(best.verdict).toBe('limits');
    expect(best.steps.length).toBeGreaterThan(1);
    let after = outing;
    for (const { change, verdict } of best.steps) {
      after = applyChange(after, change);
      expect(wordOf(after)).toBe(verdict);
    }
    for (const { change: left } of best.steps) {
      const fewer = best.steps.flatMap(({ change }) => (change === left ? [] : [change]));
      expect(wordOf(fewer.reduce(applyChange, outing)), left.kind).toBe('hold');
    }
    const totals = found.map((ladder) => total(outing, ladder));
    expect(totals).toEqual([...totals].sort((a, b) => b - a));
    expect(new Set(totals).size).toBe(totals.length);
    expect(found.length).toBeLessThan(20);
  });

  it('says which word is the best one for this train here, and what the driver minds', async () => {
    const outing = await as('steam-light');
    const [only, ...more] = laddersOf(outing);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ from: 'limits', verdict: 'limits', steps: [] });
    const told = tellLadder(only, { system: 'imperial', wording: 'us', outing });
    expect(told.lead).toBe('Go within limits is the best word for this train here');
    expect(told.left.map(({ mind }) => mind)).toEqual([
      expect.stringMatching(/^Brief the riders .* Do not stand on cant\.$/),
      expect.stringMatching(/through by hand before anybody rides\.$/),
    ]);
  });

  it('asks for a measurement where no change makes up for it', async () => {
    const outing = await as('brake-not-measured');
    const found = laddersOf(outing);
    const best = found[found.length - 1];
    expect(best.verdict).toBe('unknown');
    expect(best.left.some(({ measure }) => measure?.startsWith('vehicle.brakes.'))).toBe(true);
    const { measure, left } = tellLadder(best, { system: 'imperial', wording: 'us', outing });
    expect(measure.map(({ what }) => what)).toContainEqual(
      expect.stringMatching(/^measure for .*: the retarding force/),
    );
    // Said once.
    expect(left.map(({ what }) => what)).not.toContainEqual(expect.stringContaining('measured'));
  });

  it('first has the sight measured, where only a guess of it decides, and says how much of it would do', async () => {
    const outing = await as('too-long-wet');
    const [first] = laddersOf(outing);
    const { measure, lead, steps } = tellLadder(first, { system: 'imperial', wording: 'us', outing });
    expect(measure).toContainEqual({
      field: 'line.places.loop-points.sight',
      what: expect.stringMatching(
        /^measure from how far Loop points is seen at \d+ ft: at [\d.]+ mph the train needs \d+ ft; only 100 ft is assumed$/,
      ),
    });
    if (steps.length > 0) expect(lead).toMatch(/^Until that is known, the shortest way to /);
    // What nobody drives is no way.
    for (const { change } of first.steps)
      if ('speed' in change) expect(change.speed).toBeGreaterThanOrEqual(0.89408 - 1e-9);
  });

  it('leaves for the next trip who has no seat', async () => {
    const outing = await as('steam-light');
    const { seat: _, ...standing } = outing.riders.find(
      (r) => r.duty === 'rider',
    ) as Outing['riders'][number];
    const crowded = { ...outing, riders: outing.riders.map((r) => (r.id === standing.id ? standing : r)) };
    const [first] = laddersOf(crowded);
    expect(first.from).toBe('unknown');
    expect(first.steps).toMatchObject([
      { change: { kind: 'fewer-riders', leave: [standing.id] }, verdict: 'limits' },
    ]);
  });

  it('says of a word that it means slower than a walk', async () => {
    const step = { change: { kind: 'slower-everywhere', speed: 0.9 }, verdict: 'limits' } as const;
    const voice = { outing: await as('steam-light') };
    expect(stepWord({ ...step, slowest: 1.3 }, voice)).toBe(
      'go within limits, slower than a walk where it is slowest',
    );
    expect(stepWord({ ...step, slowest: 3 * 0.44704 }, voice)).toBe('go within limits');
    expect(stepWord(step, voice)).toBe('go within limits');
  });
});
