/** Where a train is hardest to stand, on each rail of its line: no place counts that is not on that rail. All made up. */
import { expect, it } from 'vitest';
import { potentialOf } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { parkedHold, standsOn } from '../../../engine/questions/hold/hold.ts';
import { FALL, G, laid } from '../../support/on-a-fall.ts';

const outing = laid({});
const wetFrom = (from: number, to: number, heights = outing.line.heights) => {
  const railStretches = [{ from, to, state: 'wet' as const }];
  const context = openOuting({
    ...outing,
    line: { ...outing.line, heights },
    conditions: { ...outing.conditions, railState: 'dry', railStretches },
  });
  return { context, stands: standsOn(context, potentialOf(context.line, context.loaded, 0, 1, 0), 'dry') };
};

it('on an even fall: a place that is on it', () => {
  const { context, stands } = wetFrom(200, 300);
  const at = (rail: string): number | undefined => stands.find((s) => s.rail === rail)?.at;
  // On the wet with its first wheels or its last.
  expect(at('wet')).toBeGreaterThanOrEqual(199);
  expect(at('wet')).toBeLessThan(300 + context.loaded.length + 1);
  const dry = at('dry') as number;
  expect(dry < 201 || dry > 299).toBe(true);
  for (const stand of stands) {
    expect(stand.forward).toBe(true);
    expect(stand.pull).toBeCloseTo(600 * G * (FALL - 0.005), 0);
  }
});

it('the steepest of those that count, though another is steeper; uphill it would roll back', () => {
  const heights = [
    [0, 0],
    [100, 8],
    [300, 12],
    [600, 12],
  ].map(([at, height]) => ({ at, height }));
  const { stands } = wetFrom(350, 500, heights);
  const [dry, wet] = ['dry', 'wet'].map((rail) => stands.find((s) => s.rail === rail));
  expect(dry?.at).toBeLessThan(100);
  expect(dry?.pull).toBeCloseTo(600 * G * (Math.sin(Math.atan(0.08)) - 0.005), -1);
  expect(dry?.forward).toBe(false);
  // All on the level there: nothing pulls.
  expect(wet?.at).toBeGreaterThan(300);
  expect(wet?.pull).toBe(0);
});

it('where nowhere is on a rail there is no stand on it', () => {
  const { stands } = wetFrom(0, 600);
  expect(stands.map((s) => s.rail)).toEqual(['wet']);
});

it('what parks, by who puts it on: the driver on the engine, everybody on the car too', () => {
  const { context, stands } = wetFrom(0, 600);
  const held = parkedHold(context.loaded, stands[0].hold);
  expect(held.everybody).toBeGreaterThan(held.driver);
  expect(held.crew).toBeCloseTo(held.driver, 6);
});
