/** What a pull does sideways: by the angle that each coupler stands at, not by half the vehicles' distance. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { sidesOf } from '../../../engine/questions/balance/pull.ts';
import { couplerAngle } from '../../../engine/things/coupler/formulas.ts';
import type { AxleGroup, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { plain } from '../../support/rules.ts';

const group = (at: number): AxleGroup => ({
  id: `${at}`,
  name: `${at}`,
  at,
  axles: 2,
  wheelBase: 0.3,
  driven: false,
});
const on = { type: 'link', shank: 0.15 };
const long = { length: 3.6, groups: [group(0.7), group(2.9)], front: on, rear: on };
const short = { length: 1.8, groups: [group(0.4), group(1.4)], front: on, rear: on };
const shapes = [
  { truckCentres: 2.2, overhang: 0.7, shank: 0.15 },
  { truckCentres: 1, overhang: 0.4, shank: 0.15 },
];
const radius = 14;
/** Head of the train where the two meet at `at`. */
const sidesAt = (hand: 1 | -1, at: number) => {
  const base = plain(1);
  const curve = { from: 60, to: 120, startCurvature: hand / radius, endCurvature: hand / radius };
  const vehicles = base.train.vehicles.map((v, i): Vehicle => ({ ...v, ...(i === 0 ? long : short) }));
  const outing = {
    ...base,
    line: { ...base.line, curves: [{ ...curve, gaugeWidening: 0 }] },
    train: { ...base.train, vehicles },
  };
  const [{ ahead, behind }] = sidesOf(openOuting(outing), Float64Array.of(at + long.length));
  return { ahead: ahead[0], behind: behind[0] };
};

describe('a pull in a curve', () => {
  it('presses each end inward by the sine of its coupler’s angle', () => {
    for (const hand of [1, -1] as const) {
      const { ahead, behind } = sidesAt(hand, 90);
      expect(ahead).toBeCloseTo(hand * Math.sin(couplerAngle(radius, shapes[0], shapes[1])), 6);
      expect(behind).toBeCloseTo(hand * Math.sin(couplerAngle(radius, shapes[1], shapes[0])), 6);
    }
  });

  it('presses the long one more than half their distance would, most where the curve begins', () => {
    const half = (3.6 + 1.8) / 2 / (2 * radius);
    const within = sidesAt(1, 90).ahead;
    const begins = Math.max(...[60, 60.25, 60.5, 60.75, 61].map((s) => sidesAt(1, s).ahead));
    expect(within).toBeGreaterThan(1.5 * half);
    expect(begins).toBeGreaterThan(within);
  });

  it('presses nowhere on the straight', () => {
    const { ahead, behind } = sidesAt(1, 30);
    expect(Math.abs(ahead) + Math.abs(behind)).toBeLessThan(1e-9);
  });
});
