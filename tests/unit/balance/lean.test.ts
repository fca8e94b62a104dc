/** People who lean: the ones who load the car are the ones who lean on it. */
import { describe, expect, it } from 'vitest';
import { between, exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBalance } from '../../../engine/questions/balance/ask.ts';
import { carefulLeans, peopleOf } from '../../../engine/questions/balance/lean.ts';
import { leans, momentToLift } from '../../../engine/questions/balance/tipping.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import { bentLine, car, person } from '../../support/balance.ts';
import { drawer, randomOuting, randomVehicle } from '../../support/random-outings.ts';

const draw = drawer(3);
const uncertain = between(60, 75, 100, 'assumed', 'made up');
const four = (mass = uncertain) =>
  [1, 2, 3, 4].map((i) => ({ ...person(`r${i}`, 75, { vehicle: 'car', seat: `${i}` }), mass }));

const outing = (riders = four(), more: Partial<Outing> = {}): Outing => ({
  ...randomOuting(1, 1),
  line: bentLine(30),
  train: {
    name: 'test',
    vehicles: [{ ...randomVehicle(draw, 'engine', true), centreHeight: exact(0.3) }, car(draw, { tare: 60 })],
    pipeBrokenAfter: [],
    chainsFastened: true,
  },
  riders,
  direction: 'forward',
  plannedSpeed: 2,
  ...more,
});

const level = { curvature: 0, cant: 0 };
const carOf = (o: Outing) => {
  const context = openOuting(o);
  const { data } = askBalance(context, gridOf(context.line.length));
  const vehicle = data.vehicles.find((v) => v.index === 1);
  if (!vehicle) throw new Error('no car');
  return { context, data, vehicle };
};

describe('what people may lean', () => {
  it('standing level: half the rail by the whole mass over the people’s, all heavy', () => {
    const { vehicle } = carOf(outing());
    // (60 + 4·100)/(4·100) · 0.2/2, by hand; with likely people to share it out it would be 0.153.
    expect(vehicle.over.all).toBeCloseTo(((60 + 400) / 400) * 0.1, 9);
    expect(vehicle.lift.all).toBeCloseTo(((60 + 400) / 400) * 0.1, 9);
    expect(vehicle.lift.one).toBeCloseTo(((60 + 400) / 100) * 0.1, 9);
  });

  it('heavy people as stated give what uncertain ones are told', () => {
    const told = carOf(outing()).vehicle.over.all ?? 0;
    expect(carOf(outing(four(exact(100)))).vehicle.over.all).toBeCloseTo(told, 9);
    expect(carOf(outing(four(exact(60)))).vehicle.over.all).toBeGreaterThan(told);
  });

  it('in a gale light people are worse, and are taken', () => {
    const windy = outing();
    const { context } = carOf({ ...windy, conditions: { ...windy.conditions, crosswind: 25 } });
    const people = peopleOf(context, 1);
    const [heavy, light] = people.map(
      ({ body, masses, wind }) => leans(body, masses, level, 0, true, wind).all ?? 0,
    );
    expect(light).toBeLessThan(heavy);
    expect(carefulLeans(people, level, 0, true).all).toBe(light);
  });

  it('one who leans outward in a curve: the same people there', () => {
    const { context, data } = carOf(outing());
    const [curve] = data.curves;
    const [{ body, masses, wind }] = peopleOf(context, curve.index);
    const there = { curvature: curve.curvature, cant: curve.cant };
    const moment = momentToLift(body, there, curve.liftLeaning, false, wind);
    expect(moment / Math.max(...masses)).toBeCloseTo(0.15, 9);
  });
});
