/** The ladder: least that people must do for the best word, each step needed, and what stays said. */
import { describe, expect, it } from 'vitest';
import { tellLadder } from '../../../desk/ladder.ts';
import { effortOf, worth } from '../../../engine/answer/effort.ts';
import type { Ladder } from '../../../engine/answer/ladder.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
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
  }, 120_000);

  it('says which word is the best one for this train here, and what the driver minds', async () => {
    const outing = await as('steam-light');
    const [only, ...more] = laddersOf(outing);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ from: 'limits', verdict: 'limits', steps: [] });
    const told = tellLadder(only, { system: 'imperial', wording: 'us', outing });
    expect(told.lead).toBe('Go within limits is the best word for this train here');
    expect(told.left.map(({ mind }) => mind)).toEqual([
      expect.stringMatching(/^Brief the riders .* Do not stand on cant\.$/),
    ]);
  });

  it('asks for a measurement where no change makes up for it', async () => {
    const outing = await as('brake-not-measured');
    const found = laddersOf(outing);
    const best = found[found.length - 1];
    expect(best.verdict).toBe('unknown');
    expect(best.left.some(({ measure }) => measure?.startsWith('vehicle.brakes.'))).toBe(true);
  }, 60_000);
});
