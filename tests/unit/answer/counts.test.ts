/** How many cars: from the train as it is, up and down, and never a count of a train that nobody can stop. */
import { describe, expect, it } from 'vitest';
import { engineBrakeNote, limitLines, mostWords } from '../../../desk/count-ways.ts';
import { countCars } from '../../../desk/stops.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { reachFrom } from '../../../engine/answer/counts.ts';
import type { CarCount } from '../../../engine/answer/types.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Voice } from '../../../words/voice.ts';
import { changedExample } from '../../support/changed-examples.ts';

const limit = { what: 'start' } as const;
/** Fails but for the numbers given. */
const only =
  (...good: number[]) =>
  (n: number) =>
    good.includes(n) ? undefined : limit;

describe('counting from the train as it is', () => {
  it('goes up and down: few cars may fail and more do better', () => {
    expect(reachFrom(only(3, 4, 5, 6), 5, 0, 40)).toEqual({ from: 3, to: 6, next: limit });
  });
  it('takes fewer where it fails itself, else more', () => {
    expect(reachFrom(only(1, 2), 5, 0, 40)).toEqual({ from: 1, to: 2, next: limit });
    expect(reachFrom(only(7, 8), 5, 0, 40)).toEqual({ from: 7, to: 8, next: limit });
  });
  it('says by what the train itself fails where no number does', () => {
    expect(reachFrom(only(), 5, 0, 40)).toEqual({ never: limit });
  });
  it('knows nothing where nobody can tell for the train as it is', () => {
    expect(reachFrom(() => 'unknown', 5, 0, 40)).toBeNull();
    // Of another number that nobody can tell ends the count.
    expect(reachFrom((n) => (n > 5 ? 'unknown' : undefined), 5, 0, 40)).toMatchObject({ from: 0, to: 5 });
  });
});

const voice = (outing: Outing): Voice => ({ system: 'imperial', wording: 'us', outing });
const todayOf = (outing: Outing, cars: readonly CarCount[]): CarCount =>
  cars.find((c) => c.railState === outing.conditions.railState)!;

describe('a train without brakes', () => {
  it('is stopped in no number of cars, and no word but hold is said', async () => {
    const outing = await changedExample('steam-light', (paper) => {
      for (const { vehicle } of paper.train.vehicles) vehicle['brakes'] = [];
    });
    const cars = countCars(outing);
    for (const count of cars) {
      expect(count.none).toContain('stopped');
      expect(count.least).toBeNull();
      expect(count.by).toBe('stopped');
    }
    expect(mostWords(todayOf(outing, cars))).toBe('no number may leave');
    expect(limitLines(todayOf(outing, cars), cars, voice(outing)).join()).toContain(
      'the driver has no brake at all',
    );
    expect(engineBrakeNote(outing)).toBe('The engine has no brake of its own.');
    const answer = answerOnly(outing);
    expect(answer.verdict).toBe('hold');
    expect(answer.findings.some((f) => f.code === 'no-brake-answers' && f.severity === 'forbids')).toBe(true);
  });

  it('on its engine is told so, and the count is of what the cars stop', async () => {
    const outing = await changedExample('heavy-air', (paper) => {
      for (const { vehicle } of paper.train.vehicles) if (vehicle.role === 'engine') vehicle['brakes'] = [];
    });
    expect(engineBrakeNote(outing)).toBe('The engine has no brake of its own.');
    const count = todayOf(outing, countCars(outing));
    // A bare engine cannot be stopped: the least number is of braked cars.
    if (!count.none.includes('stopped')) expect(count.from.stopped).toBeGreaterThan(0);
    expect(engineBrakeNote(await changedExample('heavy-air', () => undefined))).toBe('');
  });
});

describe('the gap', () => {
  it('grows to what the stop needs and takes no car from the count', async () => {
    const wide = await changedExample('heavy-air', () => undefined);
    const rule = { value: 20, source: 'a test' };
    const near = { ...wide, host: { ...wide.host, leastGap: rule } };
    expect(countCars(near).map((c) => c.stopped)).toEqual(countCars(wide).map((c) => c.stopped));
  });
});

describe('what sets a count', () => {
  it('is told with place, need and what there is', async () => {
    const outing = await changedExample('heavy-air', () => undefined);
    const cars = countCars(outing);
    const lines = limitLines(todayOf(outing, cars), cars, voice(outing));
    expect(lines[0]).toMatch(
      /^started anywhere \d+: with \d+, at \d+ ft it needs \d+ lbf to start, and the engine pulls \d+ lbf$/,
    );
    expect(lines[1]).toMatch(/^stopped \d+: with \d+, at \d+ ft the stop takes \d+ ft, and \d+ ft is seen$/);
  });
});
