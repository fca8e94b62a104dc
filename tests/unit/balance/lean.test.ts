/** People who lean: the ones who load the car are the ones who lean on it. */
import { describe, expect, it } from 'vitest';
import { between, exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBalance } from '../../../engine/questions/balance/ask.ts';
import { DRAWS, peopleIn } from '../../../engine/questions/balance/draws.ts';
import { peopleTold } from '../../../engine/questions/balance/lean.ts';
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
  it('standing level: half the rail by the whole mass over the people’s', () => {
    const { vehicle } = carOf(outing(four(exact(75))));
    expect(vehicle.over.all).toBeCloseTo(((60 + 300) / 300) * 0.1, 9);
    expect(vehicle.lift.all).toBeCloseTo(((60 + 300) / 300) * 0.1, 9);
    expect(vehicle.lift.one).toBeCloseTo(((60 + 300) / 75) * 0.1, 9);
  });

  it('four uncertain people are never all heavy at once: the sum of four triangles, one in a hundred', () => {
    const { vehicle } = carOf(outing());
    const all = vehicle.over.all ?? 0;
    const allHeavy = ((60 + 400) / 400) * 0.1;
    const likely = ((60 + 300) / 300) * 0.1;
    expect(all).toBeGreaterThan(allHeavy * 1.01);
    expect(all).toBeLessThan(likely);
    // By draws of another generator: the sum of the four that one in a hundred passes.
    let state = 12345;
    const uniform = (): number => {
      state = (state * 1103515245 + 12345) % 2 ** 31;
      return state / 2 ** 31;
    };
    const one = (): number => {
      const u = uniform();
      return u < 0.5 ? 75 + 15 * (Math.sqrt(2 * u) - 1) : 75 + 25 * (1 - Math.sqrt(2 * (1 - u)));
    };
    const sums = Array.from({ length: 20_000 }, () => one() + one() + one() + one()).sort((a, b) => a - b);
    const [heavy, heavier] = [sums[19_800], sums[19_940]];
    expect(all).toBeLessThanOrEqual(((60 + heavy) / heavy) * 0.1 * 1.002);
    expect(all).toBeGreaterThan(((60 + heavier) / heavier) * 0.1 * 0.998);
  });

  it('one heavy rider among light ones lifts a wheel sooner than one among heavy ones', () => {
    const heavy = carOf(outing(four(exact(100)))).vehicle.lift.one ?? 0;
    expect(carOf(outing()).vehicle.lift.one).toBeLessThan(heavy);
  });

  it('a hundredth more or less of anything moves what is told by little', () => {
    const told = (by: number): number =>
      carOf(outing(four(between(60 * by, 75 * by, 100 * by, 'assumed', 'made up')))).vehicle.over.all ?? 0;
    const curve = [...Array(9).keys()].map((i) => told(0.96 + i / 100));
    curve.slice(1).forEach((lean, i) => {
      expect(lean).toBeLessThan(curve[i]);
      expect(curve[i] - lean).toBeLessThan(0.004 * lean);
    });
  });

  it('in a gale light people are worse, and are among the draws', () => {
    const windy = outing();
    const blows = { ...windy, conditions: { ...windy.conditions, crosswind: 25 } };
    const { body, masses, wind } = peopleTold(carOf(blows).data.rolling[1].drawn, level, 0, 'all');
    expect(masses.reduce((a, b) => a + b)).toBeLessThan(300);
    expect(leans(body, masses, level, 0, true, wind).all).toBeLessThan(0.12);
    const calm = peopleTold(carOf(windy).data.rolling[1].drawn, level, 0, 'all').masses;
    expect(calm.reduce((a, b) => a + b)).toBeGreaterThan(300);
  });

  it('one who leans outward in a curve lifts a wheel at the speed told, in one draw of a hundred', () => {
    const { data } = carOf(outing());
    const [curve] = data.curves;
    const { drawn } = data.rolling[data.vehicles.findIndex((v) => v.index === curve.index)];
    const there = { curvature: curve.curvature, cant: curve.cant };
    const lifts = Array.from({ length: DRAWS }, (_, i) => {
      const { body, masses, wind } = peopleIn(drawn, i);
      return momentToLift(body, there, curve.liftLeaning, false, wind) / Math.max(...masses) - 0.1524;
    });
    expect(lifts.filter((l) => l < -1e-9)).toHaveLength(3);
  });
});

describe('all riders of a car leaning together', () => {
  const together = (o: Outing) => {
    const context = openOuting(o);
    return askBalance(context, gridOf(context.line.length)).findings.find(
      (f) => f.code === 'all-lean-goes-over',
    );
  };
  const straight = (cant: number, riders = four(exact(75)), wind = 0): Outing => {
    const o = outing(riders);
    const line = { ...o.line, curves: [], cants: [{ at: 0, cant }] };
    return { ...o, line, conditions: { ...o.conditions, crosswind: wind } };
  };

  it('limits where 6 in tip it, by moments about the rail', () => {
    // (60 + 300)/300 · 0.1 = 0.12 m of the 6 in (0.1524 m) that people lean.
    const found = together(straight(0));
    expect(found).toMatchObject({ severity: 'limits', where: { vehicle: 'car' } });
    expect(found?.found?.si).toBeCloseTo(0.12, 9);
    expect(found?.margin).toBeCloseTo(0.12 / 0.1524 - 1, 9);
    expect(found?.facts['place']).toBe('anywhere');
  });

  it('wind from whatever side comes across: it tips sooner, unless it is said how much does', () => {
    const calm = straight(0);
    const { crosswind: _, ...still } = calm.conditions;
    const blown = (conditions: object) =>
      together({ ...calm, conditions: { ...still, ...conditions } })?.found?.si;
    const across = blown({ crosswind: 10 });
    expect(across).toBeLessThan(0.11);
    expect(blown({ wind: 10 })).toBe(across);
    expect(blown({ wind: 10, crosswind: 0 })).toBe(blown({}));
  });

  it('says nothing where more than that tips it', () => {
    const two = four(exact(75)).slice(1, 3);
    // (60 + 150)/150 · 0.1 = 0.14, and with a car of 110 kg 0.173.
    const o = straight(0, two);
    expect(together(o)?.found?.si).toBeCloseTo(0.14, 9);
    const vehicles = o.train.vehicles.map((v, i) => (i === 1 ? { ...v, tare: exact(110) } : v));
    expect(together({ ...o, train: { ...o.train, vehicles } })).toBeUndefined();
  });

  it('less on cant, standing, than on the level, and less again in wind', () => {
    const level = together(straight(0))?.found?.si ?? 0;
    const canted = together(straight(0.01));
    expect(canted?.facts['place']).toBe('standing');
    expect(canted?.found?.si).toBeLessThan(level - 0.01);
    expect(together(straight(0.01, undefined, 8))?.found?.si).toBeLessThan(canted?.found?.si ?? 0);
  });

  it('names the car and the place that bear least', () => {
    const o = outing(four(exact(75)));
    const empty = { ...car(draw, { tare: 400 }), id: 'heavy', front: car(draw).front };
    const train = { ...o.train, vehicles: [o.train.vehicles[0], empty, o.train.vehicles[1]] };
    const riders = [...o.riders, person('x', 75, { vehicle: 'heavy', seat: '2' })];
    const line = { ...o.line, curves: [], cants: [0, 0.004, 0.012].map((cant, i) => ({ at: 60 * i, cant })) };
    const found = together({ ...o, train, riders, line });
    expect(found?.where.vehicle).toBe('car');
    expect(found?.where.from).toBeGreaterThan(115);
    expect(found?.facts['vehicles']).toBe(1);
  });

  it('grows and fades without a jump', () => {
    const leans = [...Array(20).keys()].map((i) => together(straight(i * 0.0005))?.found?.si ?? 0);
    leans.slice(1).forEach((lean, i) => {
      expect(leans[i] - lean).toBeGreaterThan(0);
      expect(leans[i] - lean).toBeLessThan(0.004);
    });
  });

  it('one rider who lifts one wheel is a note', () => {
    const context = openOuting(straight(0.02));
    const { findings } = askBalance(context, gridOf(context.line.length));
    expect(findings.filter((f) => f.code === 'lean-small').map((f) => f.severity)).not.toContain('limits');
  });
});
