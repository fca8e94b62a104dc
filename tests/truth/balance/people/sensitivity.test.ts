/** How much the uncertain height of a rider's centre of gravity moves the answers. */
import { describe, expect, it } from 'vitest';
import { bodyOf } from '../../../../engine/questions/balance/body.ts';
import { leans, liftOf, speedLeaving } from '../../../../engine/questions/balance/tipping.ts';
import { loadTrain } from '../../../../engine/things/train/loaded.ts';
import { adultCentre, car, person } from '../../../support/balance.ts';
import { printedIn } from '../../../support/measured.ts';
import { drawer } from '../../../support/random-outings.ts';

const POUND = 0.45359237;
const vehicle = car(drawer(1));
const bodyWith = (pounds: readonly number[], position: number) => {
  const riders = pounds.map((p, i) => person(`${i}`, p * POUND, { vehicle: 'car', seat: `${i + 1}` }));
  const [loaded] = loadTrain(
    { name: 'one car', vehicles: [vehicle], pipeBrokenAfter: [], chainsFastened: true },
    riders,
  ).vehicles;
  const body = bodyOf(loaded, 8 * 0.0254, adultCentre, position);
  if (!body) throw new Error('no body');
  return body;
};
const curve = { curvature: 1 / 15, cant: 0 };

const made = printedIn(import.meta.url, 'B');

describe('sensitivity to the rider’s centre of gravity', () => {
  it('20 mm either way is less than 2 % of speed and less than 1 mm of lean at rest', () => {
    const four = [197.9, 170.6, 197.9, 170.6];
    const v = (p: number): number => speedLeaving(liftOf(bodyWith(four, p)), curve, 0.6);
    expect(v(1)).toBeLessThan(v(0));
    expect(v(0)).toBeLessThan(v(-1));
    made.bound('speed lost by 20 mm', v(0) / v(1) - 1, 0, 0.02);
    const lean = (p: number): number =>
      leans(
        bodyWith(four, p),
        four.map((x) => x * POUND),
        { curvature: 0, cant: 0 },
        0,
      ).all ?? 0;
    made.bound('lean lost by 20 mm', Math.abs(lean(1) - lean(-1)), 0, 1e-3);
  });

  it('two design adults of 170 lb who lean 6 in do not lift a wheel standing; four do', () => {
    const four = [170, 170, 170, 170];
    const l = leans(
      bodyWith(four, 1),
      four.map((x) => x * POUND),
      { curvature: 0, cant: 0 },
      0,
    );
    made.bound('two design adults', l.two ?? 0, 6 * 0.0254, Infinity);
    made.bound('four design adults', l.all ?? Infinity, 0, 6 * 0.0254);
  });
});
