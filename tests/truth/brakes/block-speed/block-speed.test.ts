import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { speedShare } from '../../../../engine/things/brake/speed-share.ts';
import { printedIn } from '../../../support/measured.ts';

const MPH = 0.44704;

const remembered = printedIn(import.meta.url, 'C');

describe('force measured at a stand', () => {
  for (const [mph, friction] of [
    [0, 0.33],
    [5, 0.273],
    [10, 0.242],
    [20, 0.192],
    [30, 0.164],
  ]) {
    it(`cast iron at ${mph} mph: ${friction} of 0.330`, () => {
      const share = speedShare(assumedValues.blockFriction['cast-iron'], mph * MPH);
      remembered.figure(`${mph} mph`, 0.33 * share, friction, 0.0005);
    });
  }

  it('is a fifth too much at 6 mph', () => {
    expect(speedShare(assumedValues.blockFriction['cast-iron'], 6 * MPH)).toBeCloseTo(0.81, 2);
  });

  for (const [mph, ratio] of [
    [5, 0.93],
    [10, 0.88],
    [15, 0.86],
    [20, 0.87],
  ]) {
    it(`Karwatzki has ${ratio} of it at ${mph} mph`, () => {
      const v = mph * 1.609344;
      const karwatzki = (v + 100) / (5 * v + 100);
      const share = speedShare(assumedValues.blockFriction['cast-iron'], mph * MPH);
      remembered.figure(`Karwatzki, ${mph} mph`, karwatzki / share, ratio, 0.005);
    });
  }

  it('composition holds at speed', () => {
    expect(speedShare(assumedValues.blockFriction.composition, 3)).toBe(1);
  });
});
