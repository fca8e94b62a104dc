import { describe, expect, it } from 'vitest';
import { between, exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBrakes } from '../../../engine/questions/brakes/ask.ts';
import { type DesignRequest, designBrakes } from '../../../engine/questions/brakes/design.ts';
import { standing } from '../../../engine/questions/brakes/standing.ts';
import type { BrakeKind } from '../../../engine/things/brake/kinds/index.ts';
import { brakeRatios } from '../../../engine/things/brake/slide.ts';
import { loadTrain } from '../../../engine/things/train/loaded.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { randomOuting } from '../../support/random-outings.ts';

const air = { pressure: 101_325, seaLevel: 101_325 };

const outingWith = (kind: BrakeKind, cars: number, ...changes: [object?, object?]): Outing => ({
  ...randomOuting(3, cars),
  train: brakedTrain(kind, cars, ...changes),
});

const codes = (outing: Outing): string[] => askBrakes(openOuting(outing)).findings.map((f) => f.code);

describe('what the brakes say', () => {
  it('a small chamber leaves too little', () => {
    expect(codes(outingWith('automatic-vacuum', 2, { chamberVolume: 7e-4 }))).toContain(
      'reservoir-too-small',
    );
    expect(codes(outingWith('automatic-vacuum', 2, { chamberVolume: 2e-2 }))).not.toContain(
      'reservoir-too-small',
    );
  });

  it('a long thin pipe is slow to fill', () => {
    const thin = { hoseDiameter: 0.003, chokeDiameter: 0.003 };
    expect(codes(outingWith('straight-air', 10, thin))).toContain('brake-slow-to-fill');
    expect(codes(outingWith('straight-air', 2, { hoseDiameter: 0.01, chokeDiameter: 0.006 }))).not.toContain(
      'brake-slow-to-fill',
    );
  });

  it('stated times that the parts cannot keep', () => {
    const outing = outingWith('straight-air', 6);
    const hasty = { deadTime: exact(0.1), buildUp: exact(0.1) };
    const vehicles = outing.train.vehicles.map((v) => ({
      ...v,
      brakes: v.brakes.map((b) => ({ ...b, ...hasty })),
    }));
    expect(codes({ ...outing, train: { ...outing.train, vehicles } })).toContain('brake-slower-than-stated');
  });

  it('a part left out of a description that was begun cannot be told', () => {
    const outing = outingWith('automatic-air', 2, { reservoirVolume: undefined });
    const found = askBrakes(openOuting(outing)).findings.find((f) => f.code === 'brake-part-unknown');
    expect(found?.severity).toBe('unknown');
    expect(found?.measure).toBe('vehicle.brakes.brake.rigging.reservoirVolume');
  });

  it('a measured force without parts asks for nothing', () => {
    const outing = outingWith('straight-air', 2);
    const vehicles = outing.train.vehicles.map((v) => ({
      ...v,
      brakes: v.brakes.map(({ rigging: _, ...b }) => ({ ...b, force: exact(100) })),
    }));
    expect(codes({ ...outing, train: { ...outing.train, vehicles } })).not.toContain('brake-part-unknown');
  });

  it('a small main reservoir holds few applications', () => {
    expect(codes(outingWith('straight-air', 6, {}, { reservoirVolume: 0.003 }))).toContain(
      'few-applications',
    );
    expect(codes(outingWith('straight-air', 2, {}, { reservoirVolume: 0.05 }))).not.toContain(
      'few-applications',
    );
  });

  it('straight air is lost with its hose, automatic air is not', () => {
    const lost = askBrakes(openOuting(outingWith('straight-air', 3))).findings;
    expect(lost.filter((f) => f.code === 'brake-lost-with-hose')).toMatchObject([
      { severity: 'notes', facts: { kind: 'straight-air', cars: 3 } },
    ]);
    expect(codes(outingWith('automatic-air', 2))).not.toContain('brake-lost-with-hose');
  });

  it('mass of data that others draw: a curve from 0 to 1 per car', () => {
    const { data } = askBrakes(openOuting(outingWith('simple-vacuum', 4)));
    for (const { curve } of data.apply[0].gears) {
      expect(curve.share[0]).toBe(0);
      expect(curve.share[curve.share.length - 1]).toBeCloseTo(1, 2);
      expect(curve.time.length).toBeLessThan(250);
    }
  });
});

describe('what slides first', () => {
  it('the lightest-loaded group with the same brake', () => {
    const outing = outingWith('straight-air', 5);
    const loaded = loadTrain(outing.train, outing.riders);
    const ratios = brakeRatios(loaded, outing.assumed, air, () => true);
    const loads = ratios.map((r) => loaded.vehicles[r.vehicle].groupLoads[r.group]);
    expect([...loads].sort((a, b) => a - b)).toEqual(loads);
    for (const r of ratios) expect(r.empty).toBeGreaterThanOrEqual(r.loaded);
  });
});

describe('standing', () => {
  it('holds until the line of the leak has met the pull', () => {
    const leak = standing(openOuting(outingWith('automatic-vacuum', 6, { leakRate: 50 })));
    const twice = standing(openOuting(outingWith('automatic-vacuum', 6, { leakRate: 100 })));
    expect(leak.time).toBeGreaterThan(0);
    expect(Math.abs(twice.time - leak.time / 2)).toBeLessThan(1);
  });

  it('limits where it does not last for the time that is wanted, else it is worth knowing', () => {
    const said = (leakRate: number) =>
      askBrakes(openOuting(outingWith('automatic-vacuum', 6, { leakRate }))).findings.find(
        (f) => f.code === 'leaks-off-before-time',
      );
    const { found, required } = said(50) ?? {};
    const enough = (50 * (found?.si ?? 0)) / (required?.si ?? 0);
    expect(said(enough * 1.1)).toMatchObject({ severity: 'limits', margin: expect.closeTo(1 / 1.1 - 1, 2) });
    expect(said(enough * 0.9)).toMatchObject({ severity: 'notes', margin: expect.closeTo(1 / 0.9 - 1, 2) });
  });

  it('an unmeasured leak holds nothing and says so', () => {
    const s = standing(openOuting(outingWith('automatic-vacuum', 6)));
    expect(s.time).toBe(0);
    expect(s.unmeasured).toHaveLength(6);
  });
});

describe('design', () => {
  /** Stop a loaded train in 60 ft from 7 mph. */
  const request: DesignRequest = {
    distance: 60 * 0.3048,
    speed: 7 * 0.44704,
    grade: -0.03,
    pressure: between(58_000, 62_000, 66_000, 'stated'),
    efficiency: between(0.75, 0.8, 0.85, 'stated'),
    block: 'cast-iron',
    springForce: 40,
    cylindersPerCar: 1,
    deadTime: between(0.2, 0.3, 0.4, 'stated'),
    buildUp: between(0.4, 0.6, 0.8, 'stated'),
    reaction: exact(0),
    withEngine: true,
  };
  const outing = outingWith('automatic-vacuum', 3);
  const level = designBrakes(openOuting(outing), { ...request, grade: 0 });

  it('finds designs that stop in time, each proved', () => {
    const good = level.designs.filter((d) => d.feasible);
    expect(good.length).toBeGreaterThan(0);
    for (const d of good) {
      expect(d.cautiousStop).toBeLessThanOrEqual(request.distance);
      expect(d.likelyStop).toBeLessThanOrEqual(d.cautiousStop);
      expect(d.loadedRatio).toBeLessThanOrEqual(level.adhesion);
      expect(d.leverRatio % 0.25).toBeCloseTo(0, 9);
    }
  });

  it('needs less force per car with more braked cars, and more on the fall', () => {
    const force = (r: typeof level, n: number): number => r.needed[n - 1].force ?? Infinity;
    expect(force(level, 3)).toBeLessThanOrEqual(force(level, 2));
    const fall = designBrakes(openOuting(outing), { ...request, grade: -0.02 });
    expect(force(fall, 3)).toBeGreaterThan(force(level, 3));
  });

  it('a larger bore asks for less lever', () => {
    const usable = level.designs.filter((d) => d.brakedCars === 3 && d.feasible);
    for (let i = 1; i < usable.length; i++) {
      expect(usable[i].leverRatio).toBeLessThanOrEqual(usable[i - 1].leverRatio);
    }
  });

  it('says so where the rails give no more', () => {
    const hopeless = designBrakes(openOuting(outing), { ...request, distance: 4 });
    expect(hopeless.designs).toEqual([]);
    expect(hopeless.needed.every((n) => n.force === null)).toBe(true);
  });

  it('refuses a stop in no distance', () => {
    expect(() => designBrakes(openOuting(outing), { ...request, distance: 0 })).toThrow(RangeError);
  });
});
