import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { skidShare } from '../../../../engine/things/adhesion/skid.ts';
import { printedIn } from '../../../support/measured.ts';

const MPH = 0.44704;
const report = printedIn(import.meta.url, 'A');

describe('Absecon 1913', () => {
  const { dry, damp } = assumedValues.adhesion;

  it('readings on the rail: most 0.22 to 0.30, the worst 0.12', () => {
    report.bound('likely dry rail', dry.value, 0, 0.22);
    report.bound('best dry rail', dry.high, 0, 0.3);
    report.bound('worst reading within damp', 0.12, damp.low, damp.high);
  });

  it('1,353 ft instead of 1,204 ft is twelve per cent, and needs some 15 % of the wheels to slide', () => {
    expect(Math.abs(1353 / 1204 - 1.12)).toBeLessThan(0.005);
    const { floor, fallSpeed } = assumedValues.skid;
    const law = { floor: floor.value, fallSpeed: fallSpeed.value };
    // Mean share of a skid over the way of an even stop from 60 mph: v² falls evenly with the way.
    const steps = 1000;
    const mean =
      Array.from({ length: steps }, (_, i) => skidShare(60 * MPH * Math.sqrt((i + 0.5) / steps), law)).reduce(
        (sum, s) => sum + s,
        0,
      ) / steps;
    const sliding = (1 - 1204 / 1353) / (1 - mean);
    expect(sliding).toBeCloseTo(0.155, 2);
  });
});
