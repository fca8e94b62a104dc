/** Counts of the day's rail alone are those of all rails, for whoever shows no other. */
import { expect, it } from 'vitest';
import { wholeAnswer } from '../../../engine/answer/complete.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { changedExample } from '../../support/changed-examples.ts';

it('the same of today, asked alone or with all rails', async () => {
  const outing = await changedExample('steam-light', () => {});
  const care = { step: 1, samples: 40, couplerRuns: 3 };
  const all = wholeAnswer(inquire(outing, care), { remedies: false });
  const alone = wholeAnswer(inquire(outing, care), { remedies: false, counts: 'today' });
  expect(alone.cars).toEqual(all.cars.filter((c) => c.railState === outing.conditions.railState));
  expect(alone.cars).toHaveLength(1);
  expect(alone.verdict).toBe(all.verdict);
});
