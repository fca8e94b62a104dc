/** The worker gives signs of life while it counts, however slow the machine: silence is taken for a fault. */
import { afterEach, expect, it, vi } from 'vitest';
import { type Reply, reckoner } from '../../../web/reckoning.ts';
import { dressed } from '../../support/dressed-outings.ts';

afterEach(() => vi.restoreAllMocks());

it('the reckoning of counts is not silent', async () => {
  // Every look at the clock is a second later than the one before.
  let now = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => {
    now += 1001;
    return now;
  });
  const replies: Reply[] = [];
  const work = reckoner((message) => {
    replies.push(message);
    // The remedies are not looked for here.
    if (message.answer && message.answer.cars.length > 0) throw new Error('enough');
  });
  await work({ id: 1, outing: dressed(4) });
  const told = replies.flatMap(({ answer }, i) => (answer ? [i] : []));
  const [first, counted] = told;
  expect(replies[counted].answer?.cars.length).toBeGreaterThan(0);
  expect(counted - first - 1).toBeGreaterThan(10);
  expect(replies.slice(first + 1, counted)).toContainEqual({ id: 1, last: false });
});
