/** Draws, places and speeds in bulk against the same one by one, and by hand. All made up. */
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../engine/base/constants.ts';
import { between, exact } from '../../../engine/base/quantity.ts';
import { triangular } from '../../../engine/base/spread.ts';
import { type Body, bodyOf, leaning } from '../../../engine/questions/balance/body.ts';
import {
  type BodyDraws,
  careful,
  DRAWS,
  drawBeyond,
  drawBodies,
  lossesOf,
  peopleIn,
  positionsOf,
  tipsOf,
} from '../../../engine/questions/balance/draws.ts';
import {
  carefulLeans,
  carefulSpeedWhileLeaning,
  leastTogether,
  peopleTold,
} from '../../../engine/questions/balance/lean.ts';
import {
  groundUnder,
  marginsAlong,
  type Rolling,
  rollingOf,
  speedsLeaving,
} from '../../../engine/questions/balance/margins.ts';
import {
  leans,
  liftOf,
  overturnOf,
  shareAt,
  speedLeaving,
  speedWhileLeaning,
} from '../../../engine/questions/balance/tipping.ts';
import { layTrack, read } from '../../../engine/questions/balance/track.ts';
import type { LoadedVehicle } from '../../../engine/things/train/loaded.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { bentLine, car, person, seatAt } from '../../support/balance.ts';
import { drawer } from '../../support/random-outings.ts';

const draw = drawer(6);
const BASE = 0.2;
const adult = exact(0.25);
const seats = [seatAt('1', 0.4, 0.38, 0.05), seatAt('2', 1.1, 0.4, -0.02), seatAt('3', 1.8)];
const masses = [95, 60, 75];
const vehicleOf = (changes: Partial<Vehicle> = {}): Vehicle => ({ ...car(draw, { seats }), ...changes });
const loadedWith = (vehicle: Vehicle, spread = 0, count = 3): LoadedVehicle =>
  ({
    vehicle,
    index: 2,
    behind: 5,
    riders: masses.slice(0, count).map((m, i) => ({
      rider: {
        ...person(`p${i}`, m),
        mass: spread === 0 ? exact(m) : between(m - spread, m, m + spread, 'stated'),
      },
      seat: seats[i],
    })),
  }) as unknown as LoadedVehicle;
const drawn = (loaded: LoadedVehicle, gale = 0): BodyDraws =>
  drawBodies(loaded, BASE, adult, gale) as BodyDraws;
const springs = { suspension: { equalised: true, rollStiffness: between(3000, 4000, 6000, 'measured') } };
const known = { tare: exact(110), centreHeight: exact(0.24) };
const places = [
  { curvature: 0, cant: 0 },
  { curvature: 0.1, cant: 0 },
  { curvature: -0.08, cant: 0.05 },
  { curvature: 0.05, cant: 0.08 },
  { curvature: 0, cant: -0.1 },
];

describe('what one draw in a hundred passes', () => {
  it('is the fourth greatest of all, or the least where there are fewer', () => {
    for (let n = 0; n < 30; n++) {
      const figures = Float64Array.from({ length: 60 }, () => Math.round(draw(-20, 20)));
      const sorted = [...figures].sort((a, b) => b - a);
      expect(careful(figures)).toBe(sorted[3]);
    }
    expect(careful(Float64Array.of(3, 9))).toBe(3);
    expect(drawBeyond(Float64Array.of(1, 5, 2, Infinity, 4, 3))).toBe(5);
    expect(drawBeyond(Float64Array.of(7, 7, 7, 7, 7))).toBe(3);
  });

  it('each input’s positions are spread evenly over its odds, in an order of its own, always the same', () => {
    const even = Array.from({ length: DRAWS }, (_, i) => triangular((i + 0.5) / DRAWS));
    const [a, b] = [positionsOf('a'), positionsOf('b')];
    expect([...a].sort((x, y) => x - y)).toEqual(even.sort((x, y) => x - y));
    expect([...a]).not.toEqual([...b]);
    expect([...a]).not.toEqual(even);
    expect(positionsOf('a')).toBe(a);
  });
});

describe('a vehicle with its people, drawn', () => {
  it('of which all is known is in every draw the one that is reckoned', () => {
    const load = { name: 'coal', mass: exact(30), at: 0.3, across: 0.04, height: 0.5 };
    const loaded = loadedWith(vehicleOf({ ...known, loads: [load] }));
    const body = bodyOf(loaded, BASE, adult, 0) as Body;
    const { mass, Z, Y, groupMass, people, amplification } = drawn(loaded, 49);
    for (const i of [0, 250, DRAWS - 1]) {
      expect(mass[i]).toBeCloseTo(body.mass, 9);
      expect(Z[i]).toBeCloseTo(body.Z, 9);
      expect(Y[i]).toBeCloseTo(body.Y, 9);
      expect(groupMass.map((m) => m[i])).toEqual(body.groupMass.map((m) => expect.closeTo(m, 9)));
      expect([people.one[i], people.two[i], people.all[i]]).toEqual([95, 170, 230]);
      expect(amplification[i]).toBe(1);
    }
    expect(peopleIn(drawn(loaded, 49), 7).wind).toBeCloseTo(49 / GRAVITY / body.Z, 12);
    expect(peopleIn(drawn(loaded), 7).masses).toEqual(masses);
    const { centreHeight: _, ...bare } = vehicleOf({ seats: [] });
    expect(drawBodies(loadedWith(bare), BASE, adult)).toBeUndefined();
  });

  it('loses of its wheels’ load per side acceleration what each draw’s own body does, whoever leans', () => {
    const all = drawn(loadedWith(vehicleOf(springs), 8));
    const heaviest = all.people.one;
    for (const [sign, side] of [
      [1, 'left'],
      [-1, 'right'],
    ] as const) {
      const [lift, over, lean] = [
        lossesOf(all, sign, false),
        lossesOf(all, sign, true),
        lossesOf(all, sign, false, 0.1),
      ];
      for (let i = 0; i < DRAWS; i += 37) {
        const { body } = peopleIn(all, i);
        expect(lift[i]).toBeCloseTo(liftOf(body)[side], 9);
        expect(over[i]).toBeCloseTo(overturnOf(body)[side], 9);
        expect(lean[i]).toBeCloseTo(liftOf(leaning(body, sign * heaviest[i] * 0.1))[side], 9);
      }
    }
    const tips = tipsOf(all);
    expect(tips.lift).toEqual({
      left: careful(lossesOf(all, 1, false)),
      right: careful(lossesOf(all, -1, false)),
    });
    expect(tips.over).toEqual({
      left: careful(lossesOf(all, 1, true)),
      right: careful(lossesOf(all, -1, true)),
    });
    expect(tips.wind).toBe(0);
    // They sit to the left, all together: of that side more is lost.
    expect(liftOf(tips.body).left).toBeCloseTo(tips.lift.left, 9);
    expect(tips.highest).toBeGreaterThan((bodyOf(loadedWith(vehicleOf()), BASE, adult, 0) as Body).Z / 400);
  });

  it('springs that cannot hold it upright lose everything', () => {
    const soft = { suspension: { equalised: true, rollStiffness: exact(100) } };
    const all = drawn(loadedWith(vehicleOf({ ...known, ...soft })));
    expect(lossesOf(all, 1, false)[0]).toBe(Infinity);
    expect(tipsOf({ ...all, gale: 5 }).wind).toBeCloseTo(5 / all.Z[0], 9);
  });
});

describe('people who lean', () => {
  const stiff = loadedWith(vehicleOf(known));
  const body = bodyOf(stiff, BASE, adult, 0) as Body;

  it('of which all is known are those that are reckoned, in every motion', () => {
    const all = drawn(stiff, 60);
    const wind = 60 / GRAVITY / body.Z;
    for (const under of places)
      for (const speed of [0, 1.5, 3])
        for (const whole of [false, true]) {
          const [many, one] = [
            carefulLeans(all, under, speed, whole),
            leans(body, masses, under, speed, whole, wind),
          ];
          for (const who of ['one', 'two', 'all'] as const)
            expect(many[who]).toBeCloseTo(one[who] as number, 9);
          const calm = leans(body, masses, under, speed, whole);
          expect(carefulLeans(all, under, speed, whole, true).one).toBeCloseTo(calm.one as number, 9);
        }
    for (const under of places.filter((p) => p.curvature !== 0))
      for (const lean of [0, 0.05, 0.15])
        expect(carefulSpeedWhileLeaning(all, lean, under)).toBeCloseTo(
          speedWhileLeaning(body, 95, lean, under, wind),
          9,
        );
  });

  it('one alone is no two, and nobody is none', () => {
    expect(Object.keys(carefulLeans(drawn(loadedWith(vehicleOf(known), 0, 1)), places[0], 0))).toEqual([
      'one',
      'all',
    ]);
    expect(carefulLeans(drawn(loadedWith(vehicleOf(known), 0, 0)), places[0], 0)).toEqual({});
  });

  it('who is told are those of the draw whose lean is', () => {
    const all = drawn(loadedWith(vehicleOf(springs), 8));
    for (const [who, whole] of [
      ['one', false],
      ['all', true],
    ] as const) {
      const told = peopleTold(all, places[1], 2, who);
      const lean = carefulLeans(all, places[1], 2, whole)[who] as number;
      expect(leans(told.body, told.masses, places[1], 2, whole, told.wind)[who]).toBeCloseTo(lean, 9);
    }
  });

  it('together tip it where they need lean least, standing or at the speed that is run', () => {
    const all = drawn(stiff);
    const ground = {
      curvature: Float64Array.from(places, (p) => p.curvature),
      cant: Float64Array.from(places, (p) => p.cant),
    };
    const grid = Float64Array.of(10, 20, 30, 40, 50);
    const running = Float64Array.of(2, 2.5, 2, 3, 2);
    const found = leastTogether(all, { body, wind: 0 }, ground, grid, running);
    let [least, at, speed] = [Infinity, 0, 0];
    places.forEach((under, j) => {
      for (const v of [0, running[j]]) {
        const { all: lean = Infinity } = leans(body, masses, under, v, true);
        if (lean < least - 1e-12) [least, at, speed] = [lean, grid[j], v];
      }
    });
    expect(found).toEqual({ at, speed, lean: expect.closeTo(least, 9) });
    const level = { curvature: new Float64Array(2), cant: new Float64Array(2) };
    expect(leastTogether(all, { body, wind: 0 }, level, Float64Array.of(7, 8), running)).toMatchObject({
      at: 7,
      speed: 0,
    });
    expect(
      leastTogether(drawn(loadedWith(vehicleOf(known), 0, 0)), { body, wind: 0 }, level, grid, running),
    ).toBeUndefined();
  });
});

describe('along the line', () => {
  const loaded = loadedWith(vehicleOf(known));
  const likely = bodyOf(loaded, BASE, adult, 0) as Body;
  const rolling = rollingOf(drawn(loaded, 40), likely);
  const ground = {
    curvature: Float64Array.from(places, (p) => p.curvature),
    cant: Float64Array.from(places, (p) => p.cant),
  };

  it('the share left at each place is that of the place by itself', () => {
    const speed = Float64Array.of(2, 2.5, 1, 3, 2);
    const { share, upright } = marginsAlong(rolling, ground, speed);
    places.forEach((under, j) => {
      expect(share[j]).toBeCloseTo(shareAt(rolling.lift, under, speed[j], rolling.wind), 12);
      expect(upright[j]).toBeCloseTo(shareAt(rolling.over, under, speed[j], rolling.wind), 12);
    });
    const tipped: Rolling = { ...rolling, lift: { left: Infinity, right: 1 }, wind: 0 };
    expect(marginsAlong(tipped, ground, new Float64Array(5)).share[3]).toBe(-Infinity);
  });

  it('speeds leave every vehicle its share, by the one that asks for least; straight track asks for none', () => {
    const top: Rolling = {
      ...rolling,
      index: 7,
      lift: { left: 2 * rolling.lift.left, right: 2 * rolling.lift.right },
    };
    for (const train of [
      [rolling, top],
      [top, rolling],
    ]) {
      const { speed, by } = speedsLeaving(train, [ground, ground], 5, 0.3, true);
      expect([...by]).toEqual([-1, 7, 7, 7, -1]);
      for (const j of [1, 2, 3])
        expect(speed[j]).toBeCloseTo(speedLeaving(top.lift, places[j], 0.3, top.wind), 9);
      expect([speed[0], speed[4]]).toEqual([Infinity, Infinity]);
    }
  });

  it('where standing does not leave the share the rule gives what it can, unless the host insists', () => {
    // Cant against the curve: standing, the wheels of one side keep cos θ − β·sin θ.
    const against = { curvature: Float64Array.of(0.1, -0.1), cant: Float64Array.of(-0.06, 0.06) };
    const calm: Rolling = { ...rolling, wind: 0, lift: { left: 8, right: 8 } };
    const left = Math.cos(0.06) - 8 * Math.sin(0.06);
    expect(left).toBeLessThan(0.6);
    const { speed } = speedsLeaving([calm], [against], 2, 0.6, false);
    for (const j of [0, 1])
      expect(speed[j]).toBeCloseTo(
        speedLeaving(calm.lift, { curvature: against.curvature[j], cant: against.cant[j] }, 0.6 * left),
        9,
      );
    expect([...speedsLeaving([calm], [against], 2, 0.6, true).speed]).toEqual([0, 0]);
    expect([
      ...speedsLeaving([{ ...calm, lift: { left: 20, right: 20 } }], [against], 2, 0.6, false).speed,
    ]).toEqual([0, 0]);
  });

  it('the track under it is read straight between places, under each truck by the mass on it', () => {
    const line = {
      ...bentLine(10),
      heights: [
        { at: 0, height: 0 },
        { at: 200, height: 20 },
      ],
      cants: [
        { at: 0, cant: 0 },
        { at: 100, cant: 0.05 },
      ],
    };
    const track = layTrack(line, -10, 200);
    expect(track.from).toBe(-10);
    expect(read(track, track.height, 33.1)).toBeCloseTo(3.31, 9);
    expect(read(track, track.height, -20)).toBeCloseTo(-1, 9);
    expect(read(track, track.height, 900)).toBeCloseTo(0.1 * (-10 + (track.count - 1) * track.step), 9);
    expect(read(track, track.curvature, 100.1)).toBeCloseTo(0.1, 12);
    expect(read(track, track.curvature, 79.9)).toBeCloseTo(0.1 * (1 - 0.1 / 0.25), 9);
    expect(read(track, track.cant, 50)).toBeCloseTo(Math.asin(0.025 / 0.2), 9);
    // Front truck 5.45 m behind the head in the curve from 80 m on, the rear one 1.3 m farther back not yet.
    const under = groundUnder(track, rolling, Float64Array.of(86, 86.2, 100));
    const [front] = rolling.weights;
    expect(under.curvature[0]).toBeCloseTo(0.1 * front, 9);
    expect(under.curvature[2]).toBeCloseTo(0.1, 9);
    expect(rolling.weights.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    expect(rolling.offsets).toEqual([5.45, 6.75].map((v) => expect.closeTo(v, 9)));
  });
});
