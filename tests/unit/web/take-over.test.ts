/** The newer version is asked until it takes over. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { takeOver } from '../../../web/state/take-over.ts';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

it('is asked again while it waits, and whichever waits then; and no more once it has taken over', () => {
  const asked: string[] = [];
  const worker = (name: string) => ({
    postMessage: (message: unknown) => asked.push(`${name} ${JSON.stringify(message)}`),
  });
  const registration: { waiting: ReturnType<typeof worker> | null } = { waiting: worker('newer') };
  takeOver(registration);
  expect(asked).toEqual(['newer {"type":"SKIP_WAITING"}']);
  registration.waiting = worker('newest');
  vi.advanceTimersByTime(2500);
  expect(asked.slice(1)).toEqual(Array(2).fill('newest {"type":"SKIP_WAITING"}'));
  registration.waiting = null;
  vi.advanceTimersByTime(60_000);
  expect(asked).toHaveLength(3);
  expect(vi.getTimerCount()).toBe(0);
});
