/** The speed term of rolling resistance, measured with bounds: what it may be short of lengthens no likely stop and each careful one. */
import { expect, it } from 'vitest';
import { between, exact, type Quantity } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { resistance } from '../../../engine/questions/haul/draws.ts';
import { changedExample } from '../../support/changed-examples.ts';

const outing = await changedExample('heavy-air', () => undefined);
const opened = (perSpeed: Quantity) =>
  openOuting({
    ...outing,
    train: {
      ...outing.train,
      vehicles: outing.train.vehicles.map((v) => ({ ...v, resistance: { ...v.resistance, perSpeed } })),
    },
  });
const MEASURED = 0.002;
const sharp = opened(exact(MEASURED));
const wide = opened(between(0, MEASURED, 2 * MEASURED, 'measured'));

it('its bounds leave the likely stop and lengthen the careful one, by no more than the term at its least', () => {
  const stops = (of: typeof sharp): number[] => {
    const { likely, cautious } = prepare(of, 1).models('dry');
    return [likely, cautious].map((model) => stopDistance(model, 1600, 3));
  };
  const [likely, careful] = stops(sharp);
  const [likelyWide, carefulWide] = stops(wide);
  expect(likelyWide).toBe(likely);
  expect(carefulWide).toBeGreaterThan(careful);
  expect(carefulWide).toBeLessThan(stops(opened(exact(0)))[1]);
});

it('its bounds are in what a climb takes', () => {
  const [least, most] = [-1, 1].map((at) => resistance(wide, () => at, 3));
  const weight = wide.loaded.mass * 9.80665;
  const spread = resistance(sharp, () => 1, 3) - resistance(sharp, () => -1, 3);
  expect(most - least - spread).toBeCloseTo(weight * 2 * MEASURED * 3, 6);
});
