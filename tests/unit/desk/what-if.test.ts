/** What would help a vehicle holds in the wind that blows: each figure put to the statics of its wheels. */
import { describe, expect, it } from 'vitest';
import { type BalanceView, lookAtBalance, sectionOf, whatIf } from '../../../desk/balance.ts';
import { GRAVITY } from '../../../engine/base/constants.ts';
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { leaning, raised, withPoint } from '../../../engine/questions/balance/body.ts';
import { rollMoment, wheelLoads } from '../../../engine/questions/balance/wheels.ts';
import { windMoment } from '../../../engine/questions/balance/wind.ts';
import { bentLine, car, person, seatAt } from '../../support/balance.ts';
import { drawer, randomOuting, randomVehicle } from '../../support/random-outings.ts';

const draw = drawer(9);
const engine = { ...randomVehicle(draw, 'engine', true), centreHeight: exact(0.3) };
const tall = {
  ...car(draw, { seats: [seatAt('1', 1.1, 0.75)] }),
  suspension: { equalised: true, twistFreedom: 0.02 },
};

const outing = (crosswind: number): Outing => {
  const base = randomOuting(1, 1);
  return {
    ...base,
    line: bentLine(15),
    train: { name: 'test', vehicles: [engine, tall], pipeBrokenAfter: [], chainsFastened: true },
    riders: [person('tall1', 80, { vehicle: tall.id, seat: '1' })],
    direction: 'forward',
    plannedSpeed: 2.5,
    conditions: { ...base.conditions, crosswind },
  };
};

/** Leans that call for help in the calm and in the wind, m. */
const LEANS: Readonly<Record<number, number>> = { 0: 0.2, 9: 0.12 };
const HEIGHT = 0.15;

/** Share left on the lightest wheel at the place of the what-if, the wind pushing the worse way. */
function shareOf(
  view: BalanceView,
  lean: number,
  change: 'ballast' | 'seats',
  by: number,
  sign: 1 | -1,
): number {
  const { rolling } = view.data;
  const { body } = rolling.find((r) => r.index === 1)!;
  const { place } = whatIf(view, 1, lean, HEIGHT)!;
  const leaned = leaning(body, sign * 80 * lean);
  const changed =
    change === 'ballast'
      ? withPoint(leaned, { mass: by, at: body.vehicle.length / 2, across: 0, height: HEIGHT })
      : raised(leaned, -80 * by);
  const felt = place.speed * place.speed * place.curvature;
  const motion = { side: -felt, normal: GRAVITY, rear: 0 };
  const gale = windMoment(
    view.context.loaded.vehicles[1],
    view.context.outing.conditions.crosswind ?? 0,
    view.context.outing.assumed.wind,
  );
  const left = rollMoment(changed, motion) < 0 ? -gale : gale;
  const axles = wheelLoads(changed, motion, gale === 0 ? [] : [{ at: 0, height: 1, left, rear: 0 }]);
  const still = wheelLoads(changed, { side: 0, normal: GRAVITY, rear: 0 });
  return Math.min(...axles.flatMap((a, i) => [a.left / still[i].left, a.right / still[i].right]));
}

const worst = (view: BalanceView, lean: number, change: 'ballast' | 'seats', by: number): number =>
  Math.min(shareOf(view, lean, change, by, 1), shareOf(view, lean, change, by, -1));

describe.each([0, 9])('what would help, in a cross wind of %d m/s', (wind) => {
  const view = lookAtBalance(outing(wind));
  const lean = LEANS[wind];
  const asked = whatIf(view, 1, lean, HEIGHT)!;

  it('ballast is just enough to keep all wheels down', () => {
    expect(asked.ballast).toBeGreaterThan(0);
    expect(worst(view, lean, 'ballast', asked.ballast!)).toBeCloseTo(0, 6);
  });

  it('lower seats are just low enough', () => {
    expect(asked.lowerSeats).toBeGreaterThan(0);
    expect(worst(view, lean, 'seats', asked.lowerSeats!)).toBeCloseTo(0, 6);
  });

  it('the speed told is the one at which a wheel lifts with that lean', () => {
    const out = asked.place.curvature >= 0 ? -lean : lean;
    const at = (speed: number): number =>
      sectionOf(view.context, { index: 1, speed, under: asked.place, lean: { tall1: out } })!.share;
    if (asked.speed > 0) expect(at(asked.speed)).toBeCloseTo(0, 3);
    else expect(at(0)).toBeLessThanOrEqual(0);
  });
});

it('a wind asks for more', () => {
  const [calm, windy] = [0, 9].map((w) => whatIf(lookAtBalance(outing(w)), 1, 0.2, HEIGHT)!);
  expect(windy.ballast ?? Infinity).toBeGreaterThan(calm.ballast!);
  expect(windy.speed).toBeLessThan(calm.speed);
});
