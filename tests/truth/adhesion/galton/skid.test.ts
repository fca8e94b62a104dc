import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { skidShare } from '../../../../engine/things/adhesion/skid.ts';

const FOOT = 0.3048;
const MPH = 0.44704;
const { floor, fallSpeed } = assumedValues.skid;
const likely = { floor: floor.value, fallSpeed: fallSpeed.value };
const least = { floor: floor.low, fallSpeed: fallSpeed.low };
const most = { floor: floor.high, fallSpeed: fallSpeed.high };
const COMING_TO_REST = 0.242;
/** Dry rail, Koffman 1948. */
const DRY = 0.25;

describe('skidded wheels, Galton 1878-79', () => {
  it('hold all their adhesion as they come to rest', () => expect(skidShare(0, likely)).toBe(1));

  for (const [feet, friction] of [
    [10, 0.088],
    [20, 0.072],
    [40, 0.07],
  ]) {
    it(`${feet} ft/s: ${friction}`, () => {
      expect(Math.abs(COMING_TO_REST * skidShare(feet * FOOT, likely) - friction)).toBeLessThan(0.0005);
    });
  }

  it('keep less than a third at the speeds of a train; the lower bound is what 60 ft/s left, 0.057', () => {
    expect(skidShare(20 * FOOT, likely)).toBeLessThan(1 / 3);
    expect(Math.abs(least.floor - 0.057 / COMING_TO_REST)).toBeLessThan(0.005);
  });

  for (const [mph, friction] of [
    [10, 0.11],
    [15, 0.087],
    [25, 0.08],
  ]) {
    it(`the other series lies within the bounds: ${mph} mph, ${friction}`, () => {
      expect(DRY * skidShare(mph * MPH, most)).toBeGreaterThan(friction - 0.0005);
      expect(COMING_TO_REST * skidShare(mph * MPH, least)).toBeLessThan(friction);
    });
  }

  it('the upper bound is the dry traction model, A 0.40 and B 0.60 s/m', () => {
    const model = (w: number): number => 0.6 * Math.exp(-0.6 * w) + 0.4;
    for (const v of [0, 1, 2, 3, 5]) expect(Math.abs(skidShare(v, most) - model(v))).toBeLessThan(0.005);
  });

  it('falls without a knee', () => {
    for (let v = 0; v < 12; v += 0.1) {
      const drop = skidShare(v, likely) - skidShare(v + 0.1, likely);
      expect(drop).toBeGreaterThan(0);
      expect(drop).toBeLessThan(0.055);
    }
  });
});
