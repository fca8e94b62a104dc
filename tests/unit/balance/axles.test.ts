/** Where the axles of a group stand, by hand. */
import { expect, it } from 'vitest';
import { axlePlaces } from '../../../engine/questions/balance/wheels.ts';

it.each([
  [1, [3]],
  [2, [2.25, 3.75]],
  [3, [2.25, 3, 3.75]],
])('%i axles over 1.5 m about 3 m', (axles, at) => expect(axlePlaces(3, axles, 1.5)).toEqual(at));
