/** Whatever is handed in: a word, in time, with figures that are some, and never a go that is none. */
import { expect, it } from 'vitest';
import { runs } from '../support/tier.ts';
import { attack } from './attack.ts';

it('changed inputs of every kind', async () => {
  const before = process.memoryUsage.rss() / 1e6;
  const { tallies, memory } = await attack(runs(5000, 1_000_000), 1);
  for (const { name, tried, accepted, answered, refused, ...rest } of tallies) {
    expect(tried, name).toBeGreaterThan(20);
    expect(accepted + answered, name).toBeGreaterThan(0);
    expect(refused + answered, name).toBeGreaterThan(0);
    const { crashes, slow, notFinite, unsafe } = rest;
    expect({ name, crashes, slow, notFinite, unsafe }).toEqual({
      name,
      crashes: [],
      slow: [],
      notFinite: [],
      unsafe: [],
    });
  }
  // What the runner of the tests and those before it hold is not its own.
  expect(memory - before).toBeLessThan(600);
}, 7_200_000);
