/**
 * Pull moves weight off leading drivers: the heights it hangs on, stated, assumed, and on the cautious side. Checked by
 * moments about where the other wheels stand.
 */
import { describe, expect, it } from 'vitest';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { gapLoads } from '../../../engine/questions/couplers/loads.ts';
import { askHauling } from '../../../engine/questions/haul/ask.ts';
import { haul } from '../../../engine/questions/haul/question.ts';
import { adhesionLimit } from '../../../engine/things/traction/pull.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { factOf } from '../../support/facts.ts';
import { randomOuting } from '../../support/random-outings.ts';

const G = 9.80665;
const base = randomOuting(5, 2);
const heights = base.assumed.engineHeight;

/** Drivers ahead of a truck that is not driven, or behind it. */
function engineOf(drivers: 'ahead' | 'behind', stated: { centre?: number; coupler?: number } = {}): Outing {
  const [engine, ...cars] = base.train.vehicles;
  const { centreHeight: _own, ...bare } = engine;
  const made: Vehicle = {
    ...bare,
    ...(stated.centre === undefined ? {} : { centreHeight: exact(stated.centre) }),
    groups: engine.groups.map((g, i) => ({ ...g, driven: (i === 0) === (drivers === 'ahead') })),
    rear: { ...engine.rear, ...(stated.coupler === undefined ? {} : { height: stated.coupler }) },
  };
  return { ...base, train: { ...base.train, vehicles: [made, ...cars] } };
}

const loadedOf = (outing: Outing) => openOuting(outing).loaded.vehicles[0];

/** Greatest pull µ·N with N from moments about the other group's rail: found by halving, not by the formula. */
function byMoments(outing: Outing, mu: number, grade: number, centre: number, coupler: number): number {
  const { vehicle, groupLoads, mass } = loadedOf(outing);
  const driven = vehicle.groups.findIndex((g) => g.driven);
  const lever = vehicle.groups[driven].at - vehicle.groups[1 - driven].at;
  let [low, high] = [0, mu * mass * G];
  for (let i = 0; i < 60; i++) {
    const pull = (low + high) / 2;
    // Pull back at the coupler and the grade's part of the weight at the centre both tip the engine onto its rear.
    const load = groupLoads[driven] + (pull * coupler + mass * G * grade * centre) / lever;
    if (mu * load > pull) low = pull;
    else high = pull;
  }
  return low;
}

describe('the adhesion of an engine with wheels that are not driven', () => {
  it.each(['ahead', 'behind'] as const)('with its drivers %s is what the moments leave', (drivers) => {
    const outing = engineOf(drivers, { centre: 0.3, coupler: 0.12 });
    for (const grade of [0, 0.03, -0.02])
      expect(adhesionLimit(loadedOf(outing), 0.2, grade, heights, 0)).toBeCloseTo(
        byMoments(outing, 0.2, grade, 0.3, 0.12),
        6,
      );
  });

  it('takes heights that nobody stated for their gauge, on the side that is asked', () => {
    for (const drivers of ['ahead', 'behind'] as const) {
      const silent = engineOf(drivers);
      const at = (side: number) => adhesionLimit(loadedOf(silent), 0.2, 0.03, heights, side);
      const bounds = (['low', 'high'] as const).flatMap((a) =>
        (['low', 'high'] as const).map((b) => {
          const { gauge } = loadedOf(silent).vehicle;
          return byMoments(silent, 0.2, 0.03, gauge * heights.centre[a], gauge * heights.coupler[b]);
        }),
      );
      expect(at(-1)).toBeCloseTo(Math.min(...bounds), 6);
      expect(at(1)).toBeCloseTo(Math.max(...bounds), 6);
      expect(at(0)).toBeGreaterThan(at(-1));
      expect(at(0)).toBeLessThan(at(1));
    }
  });

  it('leaves leading drivers several percent less than no heights at all would', () => {
    const [silent, flat] = [engineOf('ahead'), engineOf('ahead', { centre: 0, coupler: 0 })];
    const share =
      adhesionLimit(loadedOf(silent), 0.25, 0.03, heights, -1) /
      adhesionLimit(loadedOf(flat), 0.25, 0.03, heights, -1);
    expect(share).toBeLessThan(0.97);
    expect(share).toBeGreaterThan(0.85);
  });

  it('is never more than the whole engine holds: the others lift', () => {
    const outing = engineOf('behind', { centre: 2, coupler: 40 });
    const { mass } = loadedOf(outing);
    expect(adhesionLimit(loadedOf(outing), 0.25, 0.03, heights, 0)).toBeCloseTo(0.25 * mass * G, 6);
  });
});

describe('what hangs on them', () => {
  const pulled = (outing: Outing): number => {
    const { data } = askHauling(openOuting(strong(outing)));
    if (!data) throw new RangeError('no pull');
    return data.startPull;
  };
  /** A machine that always slips first. */
  const strong = (outing: Outing): Outing => ({
    ...outing,
    train: {
      ...outing.train,
      vehicles: outing.train.vehicles.map((v) =>
        v.traction
          ? {
              ...v,
              traction: {
                kind: 'drawbar',
                how: 'stated',
                curve: [0, 5].map((speed) => ({ speed, force: 1e5 })),
              },
            }
          : v,
      ),
    },
  });
  const taken = (outing: Outing): unknown[] =>
    askHauling(openOuting(outing))
      .findings.filter((f) => f.code === 'assumed')
      .map((f) => factOf(f, 'key'));

  it('a start counts on less pull than with the heights nought', () => {
    expect(pulled(engineOf('ahead'))).toBeLessThan(
      0.97 * pulled(engineOf('ahead', { centre: 0, coupler: 0 })),
    );
  });

  it('a chain must bear more than with trailing drivers’ heights nought', () => {
    const { dry } = base.assumed.adhesion;
    const pull = (outing: Outing): number => gapLoads(openOuting(strong(outing)), [], dry)[0].load.parting;
    expect(pull(engineOf('behind'))).toBeGreaterThan(
      1.01 * pull(engineOf('behind', { centre: 0, coupler: 0 })),
    );
  });

  it('is said where it acts, each height until it is stated', () => {
    const both = ['engine-height/centre', 'engine-height/coupler'];
    expect(taken(strong(engineOf('ahead')))).toEqual(both);
    expect(taken(strong(engineOf('behind', { centre: 0.3 })))).toEqual(both.slice(1));
    expect(taken(strong(engineOf('ahead', { centre: 0.3, coupler: 0.1 })))).toEqual([]);
    expect(taken(strong(base))).toEqual([]);
  });

  it('is not said of a machine that is always weaker than the rail', () => {
    const weak = engineOf('ahead');
    const [engine, ...cars] = weak.train.vehicles;
    const traction = {
      kind: 'drawbar',
      how: 'stated',
      curve: [0, 5].map((speed) => ({ speed, force: 1 })),
    } as const;
    expect(
      taken({ ...weak, train: { ...weak.train, vehicles: [{ ...engine, traction }, ...cars] } }),
    ).toEqual([]);
  });

  it('stands in the answer', () => {
    const { findings } = inquire(strong(engineOf('ahead'))).of(haul);
    expect(findings.some((f) => f.code === 'assumed' && factOf(f, 'key') === 'engine-height/centre')).toBe(
      true,
    );
  });
});
