/** Wheels that stand aslant in a curve: against points tried all over a flange that is turned, and what the answer says. */
import { describe, expect, it } from 'vitest';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { aslantRoom, type FlangeShape } from '../../../engine/things/wheel/aslant.ts';
import { drawer } from '../../support/random-outings.ts';
import { altered } from '../../support/rules.ts';
import { runs } from '../../support/tier.ts';
import { wheeled, wheelsSay } from '../../support/wheeled.ts';

/** The farthest that any point of both flanges below the tread stands out beyond where it stands on straight track, m. */
function tried({ radius, height, angle }: FlangeShape, over: number, sine: number): number {
  const cosine = Math.sqrt(1 - sine * sine);
  let most = -Infinity;
  for (let i = 0; i <= 400; i++) {
    const z = (height * i) / 400;
    // Round the disc of that depth, as far as it lies below the rail's top.
    const end = Math.acos(radius / (radius + z));
    for (let j = 0; j <= 400; j++) {
      const turn = (end * j) / 400;
      const [along, across] = [(radius + z) * Math.sin(turn), over / 2 - z / Math.tan(angle)];
      most = Math.max(most, across * cosine + along * sine - over / 2);
    }
  }
  return 2 * most;
}

it('takes as much room as points tried all over its flanges', () => {
  for (let seed = 1; seed <= runs(40, 300); seed++) {
    const draw = drawer(seed);
    const flange = { radius: draw(0.02, 0.2), height: draw(0.002, 0.012), angle: draw(0.9, Math.PI / 2) };
    const [over, sine] = [draw(0.08, 0.4), draw(0, 0.5)];
    const [ours, theirs] = [aslantRoom(flange, over, sine), tried(flange, over, sine)];
    expect(ours, `seed ${seed}`).toBeGreaterThanOrEqual(theirs - 1e-12);
    expect(ours - theirs, `seed ${seed}`).toBeLessThan(2e-6);
  }
});

it('straight it takes none; steeper, deeper, larger or narrower never less, and no step in it', () => {
  const flange = { radius: 0.055, height: 0.004, angle: 1.3 };
  expect(aslantRoom(flange, 0.18, 0)).toBe(0);
  for (let sine = 0.005, last = 0; sine <= 0.5; sine += 0.005) {
    const room = aslantRoom(flange, 0.18, sine);
    expect(Math.abs(room - last)).toBeLessThan(8e-4);
    last = room;
    for (const more of [{ angle: 1.4 }, { height: 0.005 }, { radius: 0.07 }])
      expect(aslantRoom({ ...flange, ...more }, 0.18, sine)).toBeGreaterThanOrEqual(room - 1e-12);
    expect(aslantRoom(flange, 0.17, sine)).toBeGreaterThanOrEqual(room);
  }
});

describe('in the answer', () => {
  const SHAPE = { radius: 0.055, height: (5 / 32) * 0.0254, angle: 1.3 };
  const LONG = 1.8;
  /** By the wheels of the made-up train: gauge 7.25 in less 6.87 in and two flanges of 5/32 in. */
  const PLAY = (7.25 - 6.87 - 2 * (5 / 32)) * 0.0254;
  const truck = (radius: number, changes: Partial<Vehicle> = {}, gaugeWidening = 0): Outing => {
    const curve = { from: 40, to: 60, startCurvature: 1 / radius, endCurvature: 1 / radius, gaugeWidening };
    const outing = wheeled({}, [], { curves: [curve] });
    const [{ groups }] = outing.train.vehicles;
    const long = { ...groups[0], axles: 2, wheelBase: LONG, wheelRadius: SHAPE.radius };
    return altered(outing, 0, {
      groups: [long, ...groups.slice(1)],
      flange: { angle: SHAPE.angle },
      ratings: {},
      ...changes,
    });
  };
  const said = (outing: Outing): string[] =>
    wheelsSay(outing).flatMap((f) =>
      f.code === 'wheels-aslant-bind' && f.where.vehicle === outing.train.vehicles[0].id ? [f.severity] : [],
    );
  /** Found by halving on what was tried, not on the closed form. */
  let [low, high] = [2, 40];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (tried(SHAPE, 7.25 * 0.0254 - PLAY, LONG / 2 / middle) > PLAY) low = middle;
    else high = middle;
  }

  it('binds in a sharper curve than its play lets it round, and not in a gentler one', () => {
    expect(low).toBeGreaterThan(3);
    // Nor in one so sharp that a single wheelset would stand free again.
    for (const by of [0.97, 0.6, 0.3, 0.05]) expect(said(truck(low * by))).toEqual(['forbids']);
    expect(said(truck(low * 1.03))).toEqual([]);
    expect(said(truck(low * 0.97, {}, 0.002))).toEqual([]);
  });

  it('is a note where it was not measured, and nothing where the owner states so sharp a curve', () => {
    const { flange: _, ...bare } = truck(4).train.vehicles[0];
    const unmeasured = { ...truck(4), train: { ...truck(4).train, vehicles: [bare] } };
    expect(said(unmeasured)).toEqual(['notes']);
    const found = (o: Outing) => wheelsSay(o).find((f) => f.code === 'wheels-aslant-bind');
    expect(found(unmeasured)).toMatchObject({ sure: 'assumed', measure: 'vehicle.axleGroups.wheelRadius' });
    expect(found(truck(4))?.measure).toBeUndefined();
    // By the diameters on the tread, where nobody wrote the radius down.
    const [{ groups, wheelsets = [] }] = truck(4).train.vehicles;
    const diameters = [2 * SHAPE.radius, 2 * SHAPE.radius - 1e-4];
    const [{ wheelRadius: _r, ...truckOf }, ...rest] = groups;
    const taped = { groups: [truckOf, ...rest], wheelsets: wheelsets.map((w) => ({ ...w, diameters })) };
    const needs = (o: Outing): number => found(o)?.found?.si ?? Number.NaN;
    expect(needs(truck(4, taped))).toBeCloseTo(needs(truck(4)), 12);
    expect(said(truck(4, { ratings: { leastRadius: 4 } }))).toEqual(['forbids']);
    expect(
      said({
        ...unmeasured,
        train: { ...unmeasured.train, vehicles: [{ ...bare, ratings: { leastRadius: 4 } }] },
      }),
    ).toEqual([]);
  });
});
