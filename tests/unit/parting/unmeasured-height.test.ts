/** A tail that would go over in a curve by a centre of gravity that nobody measured asks for it, and does not forbid. */
import { expect, it } from 'vitest';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { bentLine, car, person } from '../../support/balance.ts';
import { drawer, randomOuting, randomVehicle } from '../../support/random-outings.ts';

const engine: Vehicle = { ...randomVehicle(drawer(3), 'engine', true), centreHeight: exact(0.3) };
const free: Vehicle = { ...car(drawer(3)), brakes: [] };
const { centreHeight: _, ...unmeasured } = free;

/** A valley with the curve at its bottom: whatever parts on the fall rolls to and fro in it, and nowhere off the line. */
const valley = (last: Vehicle, end = 6): Outing => ({
  ...randomOuting(1, 1),
  line: {
    ...bentLine(12),
    loop: false,
    heights: [
      { at: 0, height: 6 },
      { at: 100, height: 0 },
      { at: 200, height: end },
    ],
  },
  train: {
    name: 'test',
    vehicles: [engine, last],
    pipeBrokenAfter: [],
    chainsFastened: false,
  },
  riders: [1, 2, 3, 4].map((i) => person(`${i}`, 75, { vehicle: 'car', seat: `${i}` })),
  direction: 'forward',
  plannedSpeed: 2,
});
const runaway = (o: Outing) =>
  answerOuting(o, { counts: false, remedies: false, samples: 0, couplerRuns: 3 }).findings.find(
    (f) => f.code === 'tail-runs-away',
  );

it('a measured one forbids', () => {
  expect(runaway(valley(free))).toMatchObject({ severity: 'forbids', facts: { outcome: 'overturns' } });
});

it('one that nobody measured is asked for', () => {
  expect(runaway(valley(unmeasured))).toMatchObject({
    severity: 'unknown',
    measure: 'vehicle.centreHeight',
    facts: { outcome: 'overturns', unmeasured: free.name },
  });
});

it('what runs off the line whatever its height forbids all the same', () => {
  expect(runaway(valley(unmeasured, -2))?.severity).toBe('forbids');
});
