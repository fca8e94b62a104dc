/** Laws that every brake obeys, whatever its parts. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../engine/base/quantity.ts';
import { openOuting } from '../../engine/outing/open.ts';
import { standing } from '../../engine/questions/brakes/standing.ts';
import { atmosphericPressure } from '../../engine/things/air/formulas.ts';
import {
  afterApplications,
  automaticVacuumDifference,
  cylinderPressure,
  equalised,
} from '../../engine/things/brake/equalise.ts';
import { fillTrain } from '../../engine/things/brake/fill.ts';
import { workableVacuum } from '../../engine/things/brake/force.ts';
import { type AirKind, airKinds } from '../../engine/things/brake/kinds/index.ts';
import { type AirNode, AirTree } from '../../engine/things/brake/network.ts';
import { leakedGear } from '../../engine/things/brake/reserve.ts';
import { emptyTime, filledPressure, fillTime } from '../../engine/things/brake/vessel.ts';
import { brakedTrain, isVacuumKind, loadedTrain } from '../support/braked-trains.ts';
import { assumedValues, randomOuting } from '../support/random-outings.ts';
import { runs } from '../support/tier.ts';

const seed = 20260401;
const many = { seed, numRuns: runs(200, 2000) };
/** Whole trains are filled: fewer runs. */
const some = { seed, numRuns: runs(30, 300) };
const sea = 101_325;
const { brakeParts } = assumedValues;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const kind = fc.constantFrom<AirKind>(...airKinds);
const piston = fc.record({
  clearance: number(1e-6, 1e-4),
  swept: number(1e-5, 1e-3),
  strokeAt: number(2000, 60_000),
});

describe('one vessel', () => {
  const passage = fc.record({
    volume: number(1e-5, 0.1),
    area: number(1e-7, 1e-4),
    temperature: number(255, 315),
  });

  it('a larger passage is never later', () => {
    fc.assert(
      fc.property(passage, number(1.1, 9), number(0.1, 0.9), number(1, 5), (p, ratio, share, more) => {
        const supply = sea * ratio;
        const to = sea + share * (supply - sea);
        const wide = { ...p, area: p.area * more };
        expect(fillTime(wide, supply, sea, to)).toBeLessThanOrEqual(
          fillTime(p, supply, sea, to) * (1 + 1e-12),
        );
        expect(emptyTime(wide, sea, supply, to)).toBeLessThanOrEqual(
          emptyTime(p, sea, supply, to) * (1 + 1e-12),
        );
      }),
      many,
    );
  });

  it('pressure after the time to a pressure is that pressure', () => {
    fc.assert(
      fc.property(passage, number(1.1, 9), number(0.05, 0.95), (p, ratio, share) => {
        const supply = sea * ratio;
        const to = sea + share * (supply - sea);
        const back = filledPressure(p, supply, sea, fillTime(p, supply, sea, to));
        expect(Math.abs(back - to)).toBeLessThan(1e-6 * supply);
      }),
      many,
    );
  });

  it('times add up', () => {
    fc.assert(
      fc.property(passage, number(1.2, 9), number(0.1, 0.5), number(0.5, 0.9), (p, ratio, a, b) => {
        const high = sea * ratio;
        const at = (s: number): number => sea + s * (high - sea);
        for (const thermal of ['isothermal', 'adiabatic'] as const) {
          const whole = fillTime(p, high, sea, at(b), thermal);
          const parts = fillTime(p, high, sea, at(a), thermal) + fillTime(p, high, at(a), at(b), thermal);
          expect(Math.abs(parts / whole - 1)).toBeLessThan(1e-9);
        }
        const out = emptyTime(p, sea, high, at(a));
        const outParts = emptyTime(p, sea, high, at(b)) + emptyTime(p, sea, at(b), at(a));
        expect(Math.abs(outParts / out - 1)).toBeLessThan(1e-7);
      }),
      many,
    );
  });
});

describe('equalising', () => {
  it('a cylinder never passes equalisation, and more reduction never gives less', () => {
    fc.assert(
      fc.property(
        piston,
        number(5e-5, 5e-3),
        number(2e5, 9e5),
        number(0, 1),
        number(0, 1),
        (p, volume, charge, a, b) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)].map((s) => s * (charge - sea));
          const limit = equalised(charge, volume, p, sea);
          const [weak, strong] = [low, high].map((r) => cylinderPressure(r, charge, volume, p, sea));
          expect(strong).toBeLessThanOrEqual(limit);
          expect(weak).toBeLessThanOrEqual(strong + 1e-6);
          expect(limit).toBeLessThanOrEqual(charge);
          expect(limit).toBeGreaterThanOrEqual(sea * (1 - 1e-12));
        },
      ),
      many,
    );
  });

  it('air is kept: contents before and after are equal', () => {
    fc.assert(
      fc.property(piston, number(5e-5, 5e-3), number(2e5, 9e5), (p, volume, charge) => {
        const end = equalised(charge, volume, p, sea);
        const stroke = Math.min(1, Math.max(0, (end - sea) / p.strokeAt));
        const after = end * (volume + p.clearance + p.swept * stroke);
        const before = charge * volume + sea * p.clearance;
        expect(Math.abs(after / before - 1)).toBeLessThan(1e-9);
      }),
      many,
    );
  });

  it('more applications never raise the reservoir', () => {
    fc.assert(
      fc.property(piston, number(5e-5, 5e-3), number(2e5, 9e5), (p, volume, charge) => {
        const after = afterApplications(charge, volume, p, sea, 12);
        let before = charge;
        for (const pressure of after) {
          expect(pressure).toBeLessThanOrEqual(before);
          before = pressure;
        }
      }),
      many,
    );
  });

  it('a larger vacuum chamber never leaves less', () => {
    fc.assert(
      fc.property(piston, number(1.2, 20), number(1, 4), number(2e4, 9e4), (p, times, more, vacuum) => {
        const chamber = p.swept * times;
        const small = automaticVacuumDifference(vacuum, chamber, p, sea);
        const large = automaticVacuumDifference(vacuum, chamber * more, p, sea);
        expect(large).toBeGreaterThanOrEqual(small - 1e-6 * vacuum);
        expect(large).toBeLessThanOrEqual(vacuum * (1 + 1e-12));
      }),
      many,
    );
  });
});

describe('air in a tree', () => {
  it('a closed tree keeps its air to 1e-9, an open one books what passes', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ volume: number(1e-5, 1e-2), area: number(1e-7, 2e-5), start: number(2e4, 9e5) }),
          {
            minLength: 2,
            maxLength: 8,
          },
        ),
        piston,
        fc.boolean(),
        (list, p, open) => {
          const nodes = list.map(
            ({ volume, area, start }, i): AirNode => ({
              name: `${i}`,
              parent: i === 0 ? -1 : Math.floor(i / 2),
              area,
              way: 'both',
              body:
                i === list.length - 1
                  ? { kind: 'piston', piston: p, behind: { pressure: sea }, pull: false }
                  : { kind: 'rigid', volume },
              vents: open && i === 0 ? [{ area: 1e-6, pressure: sea, way: 'both' }] : [],
              leak: 0,
              start,
            }),
          );
          const tree = new AirTree(nodes, sea, 288.15);
          const before = tree.state.content.reduce((sum, u) => sum + u, 0);
          tree.run(0.2, () => false);
          const after = tree.state.content.reduce((sum, u) => sum + u, 0);
          expect(Math.abs(after - before - tree.state.admitted)).toBeLessThan(1e-9 * before);
          if (!open) expect(tree.state.admitted).toBe(0);
        },
      ),
      { seed, numRuns: runs(100, 1000) },
    );
  });

  it('pressures stay between the highest and the lowest there were', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ volume: number(1e-5, 1e-2), area: number(1e-7, 2e-5), start: number(2e4, 9e5) }),
          {
            minLength: 2,
            maxLength: 6,
          },
        ),
        (list) => {
          const nodes = list.map(
            ({ volume, area, start }, i): AirNode => ({
              name: `${i}`,
              parent: i - 1,
              area,
              way: 'both',
              body: { kind: 'rigid', volume },
              vents: [],
              leak: 0,
              start,
            }),
          );
          const starts = list.map((n) => n.start);
          const [low, high] = [Math.min(...starts), Math.max(...starts)];
          const tree = new AirTree(nodes, sea, 288.15);
          tree.run(0.2, (_, { pressure }) => {
            for (const q of pressure) {
              // Within the tolerance of a step.
              expect(q).toBeGreaterThan(low - 2e-3 * sea);
              expect(q).toBeLessThan(high + 2e-3 * high);
            }
            return false;
          });
        },
      ),
      { seed, numRuns: runs(100, 1000) },
    );
  });
});

describe('whole trains', () => {
  it('books close to 1e-9, and no brake passes its stated or equalised pressure', () => {
    fc.assert(
      fc.property(
        kind,
        fc.integer({ min: 1, max: 8 }),
        fc.constantFrom('apply', 'release'),
        (k, cars, action) => {
          const fill = fillTrain(loadedTrain(k, cars), k, action as 'apply' | 'release', sea, brakeParts);
          expect(fill.missing).toEqual([]);
          expect(fill.gears).toHaveLength(cars);
          expect(Math.abs(fill.balance)).toBeLessThan(1e-9);
          for (const g of fill.gears) {
            const working = g.gear.rigging?.workingPressure.value ?? 0;
            const limit = k === 'automatic-air' ? 500_000 : working;
            expect(g.pressure).toBeLessThanOrEqual(limit * 1.001);
            expect(g.t10).toBeLessThanOrEqual(g.t90);
            expect(g.t90).toBeLessThanOrEqual(g.full);
          }
        },
      ),
      some,
    );
  });

  it('the rear is never earlier than the front, nor than sound', () => {
    fc.assert(
      fc.property(kind, fc.integer({ min: 2, max: 10 }), (k, cars) => {
        const { gears } = fillTrain(loadedTrain(k, cars), k, 'apply', sea, brakeParts);
        for (let i = 1; i < gears.length; i++) {
          expect(gears[i].t10).toBeGreaterThanOrEqual(gears[i - 1].t10 - 0.01);
          expect(gears[i].t10).toBeGreaterThanOrEqual(((i + 0.5) * 2.4) / 341);
        }
      }),
      { seed, numRuns: runs(30, 150) },
    );
  });

  it('a larger choke and hose is never later', () => {
    fc.assert(
      fc.property(kind, number(1, 3), fc.integer({ min: 1, max: 6 }), (k, more, cars) => {
        const base = isVacuumKind(k) ? { hose: 0.01, choke: 0.004 } : { hose: 0.005, choke: 0.002 };
        // Supplies without end: a quicker brake must not be charged with a reservoir that empties sooner.
        const supply = { reservoirVolume: undefined as unknown as number };
        const last = (factor: number): number => {
          const rigging = {
            hoseDiameter: base.hose * factor,
            chokeDiameter: base.choke * factor,
            pipeVolume: 1e-4,
          };
          const { gears } = fillTrain(loadedTrain(k, cars, rigging, supply), k, 'apply', sea, brakeParts);
          return gears[gears.length - 1].t90;
        };
        // 1 %: the step control of two different runs.
        expect(last(more)).toBeLessThanOrEqual(last(1) * 1.01 + 0.002);
      }),
      some,
    );
  });
});

describe('vacuum and height', () => {
  it('a higher place never has more vacuum', () => {
    fc.assert(
      fc.property(number(0, 3000), number(0, 3000), number(2e4, 9.5e4), (a, b, stated) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const at = (h: number): number => workableVacuum(exact(stated), atmosphericPressure(h), sea).value;
        expect(at(high)).toBeLessThanOrEqual(at(low) * (1 + 1e-12));
      }),
      many,
    );
  });
});

describe('leaks', () => {
  it('more leak or more time never leaves more pressure', () => {
    fc.assert(
      fc.property(
        kind,
        number(0, 500),
        number(0, 500),
        number(0, 5000),
        number(0, 5000),
        (k, l1, l2, t1, t2) => {
          const left = (leakRate: number, time: number): number => {
            const gear = brakedTrain(k, 1, { leakRate }).vehicles[1].brakes[0];
            return leakedGear(gear, time)?.rigging?.workingPressure.value ?? 0;
          };
          const [slow, fast] = [Math.min(l1, l2), Math.max(l1, l2)];
          const [early, late] = [Math.min(t1, t2), Math.max(t1, t2)];
          expect(left(fast, late)).toBeLessThanOrEqual(left(slow, early));
        },
      ),
      many,
    );
  });

  it('more leak never holds the train longer', () => {
    fc.assert(
      fc.property(
        kind,
        fc.integer({ min: 1, max: 50 }),
        number(5, 400),
        number(1, 4),
        (k, n, leakRate, more) => {
          const time = (rate: number): number =>
            standing(openOuting({ ...randomOuting(n, 4), train: brakedTrain(k, 4, { leakRate: rate }) }))
              .time;
          expect(time(leakRate * more)).toBeLessThanOrEqual(time(leakRate) + 1);
        },
      ),
      { seed, numRuns: runs(50, 500) },
    );
  });
});
