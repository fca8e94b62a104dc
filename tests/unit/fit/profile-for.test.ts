/** A profile is for its gauge, and for what is called the same; 7-1/4 and 7-1/2 in are not. */
import { expect, it } from 'vitest';
import { profileFor } from '../../../engine/questions/standards/profile.ts';

const IN = 0.0254;
const profile = { gauge: 7.25 * IN, points: [], source: 'sheet' } as never;

it.each([
  [1.0049, true],
  [0.9951, true],
  [1.0051, false],
  [0.9949, false],
  [7.5 / 7.25, false],
])('%d of its gauge', (times, same) =>
  expect(profileFor([profile], 7.25 * IN * times)).toBe(same ? profile : undefined),
);
