/** A truck is called climbing where its L/V passes the printed limit, not before. */
import { describe, expect, it } from 'vitest';
import { bodyFrom } from '../../../../engine/questions/balance/body.ts';
import {
  climbing,
  climbSpeed,
  flangeShape,
  guiding,
  trucksOf,
} from '../../../../engine/questions/balance/flange.ts';
import { car } from '../../../support/balance.ts';
import { drawer } from '../../../support/random-outings.ts';

const cases = [
  { angle: 75, friction: 0.5, limit: 1.128, digits: 3 },
  { angle: 63, friction: 0.5, limit: 0.738, digits: 3 },
  { angle: 45, friction: 0.3, limit: 0.538, digits: 3 },
  // From memory: the rounded limit of EN 14363.
  { angle: 70, friction: 0.36, limit: 1.2, digits: 1 },
];

describe('Nadal', () => {
  for (const { angle, friction, limit, digits } of cases) {
    it(`${angle}°, ${friction} → ${limit}`, () => {
      const vehicle = {
        ...car(drawer(1)),
        flange: { angle: (angle * Math.PI) / 180, frictionHigh: friction },
      };
      const shape = flangeShape(vehicle);
      expect(shape.limit).toBeCloseTo(limit, digits);
      // A low car, whose inner wheels stay down until long after its flange would climb.
      const [truck] = trucksOf(bodyFrom(vehicle, 0.2, 110, 0.04, []));
      const under = { curvature: 1 / 15, cant: 0 };
      const v = climbSpeed(truck, under, { front: 0, rear: 0 }, shape);
      const ratio = (speed: number): number =>
        climbing(guiding(truck, under, speed * speed, { front: 0, rear: 0 }), under.curvature, friction);
      expect(ratio(v * 0.999)).toBeLessThan(shape.limit);
      expect(ratio(v * 1.001)).toBeGreaterThan(shape.limit);
    });
  }
});
