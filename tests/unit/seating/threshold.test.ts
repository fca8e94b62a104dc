/** The search for the greatest worst margin: the solver proves it, the bound only tells where to look first. */
import { beforeAll, describe, expect, it } from 'vitest';
import { loadSolver } from '../../../desk/seating.ts';
import { type Car, carOf } from '../../../engine/questions/seat/car.ts';
import { buildPatterns, type PatternTable, unitCounts } from '../../../engine/questions/seat/patterns.ts';
import { choose, kindColumns } from '../../../engine/questions/seat/program.ts';
import { bestThreshold } from '../../../engine/questions/seat/threshold.ts';
import type { SeatingProblem, Solve } from '../../../engine/questions/seat/types.ts';
import { unitsOf } from '../../../engine/questions/seat/units.ts';
import { adultCentre, car, person } from '../../support/balance.ts';
import { type Draw, drawer } from '../../support/random-outings.ts';

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

function tableOf(draw: Draw, grain: number): PatternTable {
  const vehicles = Array.from({ length: 3 }, (_, i) => car(draw, { id: `c${i}`, tare: draw(60, 160) }));
  const people = Array.from({ length: 7 }, (_, i) => person(`p${i}`, Math.round(draw(25, 110))));
  const problem: SeatingProblem = {
    cars: vehicles.map((vehicle) => ({ vehicle, fixed: [] })),
    people,
    base: 0.2,
    adultCentre,
    sideDemand: 0.06,
    rules: { heldChild: 'in-front' },
  };
  const cars = problem.cars.map((c) => carOf(c, problem) as Car);
  const table = buildPatterns(problem, cars, unitsOf(people, 4, grain).units, grain, 5000);
  if (!table) throw new Error('too many patterns');
  return table;
}

/** Every margin asked for in turn, from the greatest down. */
function byScanning(table: PatternTable): number | undefined {
  const margins = [...new Set(table.carKinds.flatMap((k) => k.patterns.map((p) => p.margin)))];
  const rows = { cars: table.carKinds.map((k) => k.cars.length), units: unitCounts(table) };
  return margins
    .sort((a, b) => b - a)
    .find((least) => typeof choose(kindColumns(table, least), rows, solve) === 'object');
}

describe('the greatest worst margin', () => {
  it('is the same however wrong the bound that guides the search', () => {
    const draw = drawer(20261126);
    for (let n = 0; n < 3; n++) {
      const table = tableOf(draw, 0);
      const greatest = byScanning(table) as number;
      expect(greatest).toBeGreaterThan(0);
      for (const bound of [
        -5,
        greatest - 0.3,
        greatest - 0.03,
        greatest,
        greatest + 0.001,
        greatest + 0.1,
        5,
      ]) {
        expect(bestThreshold(table, bound, solve), `case ${n}, bound ${bound}`).toBe(greatest);
      }
    }
  });

  it('of rounded masses is found as finely as rounding tells apart, however wrong the bound', () => {
    const draw = drawer(20261127);
    for (let n = 0; n < 3; n++) {
      const table = tableOf(draw, 20);
      const greatest = byScanning(table) as number;
      for (const bound of [-5, greatest - 0.3, greatest, greatest + 0.1, 5]) {
        const found = bestThreshold(table, bound, solve) as number;
        expect(found, `case ${n}, bound ${bound}`).toBeGreaterThan(greatest - 0.00125);
        expect(found).toBeLessThanOrEqual(greatest);
      }
    }
  });

  it('is none where nobody can be seated, whatever the bound', () => {
    const table = tableOf(drawer(3), 0);
    // One unit more of a kind than all cars take.
    const crowded = { ...table, units: table.units.map((u) => [...u, ...u, ...u]) };
    for (const bound of [-5, 0.5, 5]) expect(bestThreshold(crowded, bound, solve)).toBeUndefined();
  });
});
