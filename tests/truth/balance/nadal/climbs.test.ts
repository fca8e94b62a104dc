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
import { printedIn } from '../../../support/measured.ts';
import { drawer } from '../../../support/random-outings.ts';

const cases = [
  { angle: 75, friction: 0.5, limit: 1.128, half: 0.0005, grade: 'A' },
  { angle: 63, friction: 0.5, limit: 0.738, half: 0.0005, grade: 'A' },
  { angle: 45, friction: 0.3, limit: 0.538, half: 0.0005, grade: 'A' },
  // From memory: the rounded limit of EN 14363.
  { angle: 70, friction: 0.36, limit: 1.2, half: 0.05, grade: 'C' },
] as const;
const printed = { A: printedIn(import.meta.url, 'A'), C: printedIn(import.meta.url, 'C') };

describe('Nadal', () => {
  for (const { angle, friction, limit, half, grade } of cases) {
    it(`${angle}°, ${friction} → ${limit}`, () => {
      const vehicle = {
        ...car(drawer(1)),
        flange: { angle: (angle * Math.PI) / 180, frictionHigh: friction },
      };
      const shape = flangeShape(vehicle);
      printed[grade].figure(`${angle}°, ${friction}`, shape.limit, limit, half);
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
