import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { skidShare } from '../../../../engine/things/adhesion/skid.ts';
import { printedIn } from '../../../support/measured.ts';

const FOOT = 0.3048;
const MPH = 0.44704;
const { floor, fallSpeed } = assumedValues.skid;
const likely = { floor: floor.value, fallSpeed: fallSpeed.value };
const least = { floor: floor.low, fallSpeed: fallSpeed.low };
const most = { floor: floor.high, fallSpeed: fallSpeed.high };
const COMING_TO_REST = 0.242;
/** Dry rail, Koffman 1948. */
const DRY = 0.25;

const remembered = printedIn(import.meta.url, 'C');
const life = printedIn(import.meta.url, 'A');

describe('skidded wheels, Galton 1878-79', () => {
  it('hold all their adhesion as they come to rest', () => expect(skidShare(0, likely)).toBe(1));

  for (const [feet, friction] of [
    [10, 0.088],
    [20, 0.072],
    [40, 0.07],
  ]) {
    it(`${feet} ft/s: ${friction}`, () => {
      remembered.figure(`${feet} ft/s`, COMING_TO_REST * skidShare(feet * FOOT, likely), friction, 0.0005);
    });
  }

  it('keep less than a third at the speeds of a train; the lower bound is what 60 ft/s left, 0.057', () => {
    life.bound('share of a skid', skidShare(20 * FOOT, likely), 0, 1 / 3);
    remembered.figure('60 ft/s, the least', least.floor, 0.057 / COMING_TO_REST, 0.005);
  });

  for (const [mph, friction] of [
    [10, 0.11],
    [15, 0.087],
    [25, 0.08],
  ]) {
    it(`the other series lies within the bounds: ${mph} mph, ${friction}`, () => {
      const [low, high] = [COMING_TO_REST * skidShare(mph * MPH, least), DRY * skidShare(mph * MPH, most)];
      remembered.bound(`${mph} mph`, friction, low, high + 0.0005);
    });
  }

  it('the upper bound is the dry traction model, A 0.40 and B 0.60 s/m', () => {
    const model = (w: number): number => 0.6 * Math.exp(-0.6 * w) + 0.4;
    for (const v of [0, 1, 2, 3, 5])
      remembered.figure(`model at ${v} m/s`, skidShare(v, most), model(v), 0.005);
  });

  it('falls without a knee', () => {
    for (let v = 0; v < 12; v += 0.1) {
      const drop = skidShare(v, likely) - skidShare(v + 0.1, likely);
      expect(drop).toBeGreaterThan(0);
      expect(drop).toBeLessThan(0.055);
    }
  });
});
