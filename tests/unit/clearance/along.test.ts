/** Many places at once against one at a time, on lines that bend every way. All made up. */
import { describe, expect, it } from 'vitest';
import { reachesAlong } from '../../../engine/things/clearance/along.ts';
import { farthest, reachAt, type SweptShape } from '../../../engine/things/clearance/swept.ts';
import { layPlan } from '../../../engine/things/line/plan.ts';
import type { CurveElement } from '../../../engine/things/line/types.ts';
import { beside } from '../../support/beside.ts';
import { drawer } from '../../support/random-outings.ts';
import { runs } from '../../support/tier.ts';

const base = { ...beside({}).line, loop: false, length: 60, cants: [] };

describe('the same as one place at a time', () => {
  it.each(Array.from({ length: runs(12, 200) }, (_, i) => i))('line %i', (seed) => {
    const { between, chance } = tools(seed);
    const curves: CurveElement[] = [];
    for (let at = 5; at < 50; ) {
      const to = at + between(1, 12);
      const [a, b] = [between(-1, 1) / between(6, 40), between(-1, 1) / between(6, 40)];
      curves.push({ from: at, to, startCurvature: a, endCurvature: chance(0.5) ? a : b, gaugeWidening: 0 });
      at = to + (chance(0.5) ? between(0, 6) : 0);
    }
    const guides = chance(0.1) ? 0 : between(0.3, 3);
    const shape: SweptShape = {
      guides,
      box: {
        rear: -between(0.05, 0.8),
        front: guides + between(0.05, 0.8),
        right: -between(0.2, 0.5),
        left: between(0.2, 0.5),
      },
    };
    const aside = { rear: between(-0.004, 0.004), front: between(-0.004, 0.004) };
    const around = farthest(shape);
    const plan = layPlan({ ...base, curves }, -around, 60 + around);
    const places = Array.from({ length: 41 }, (_, i) => 4 + i * 1.23);
    const off: number[] = [];
    for (const side of ['left', 'right'] as const) {
      const found = reachesAlong(plan, shape, places, side, aside);
      places.forEach((s, i) => {
        const one = reachAt(plan, shape, s, side, aside) ?? Number.NaN;
        off.push(Math.abs((typeof found === 'number' ? Number.NaN : found[i]) - one));
      });
    }
    // It picks the place; what is told is sought there to the last digit. Beside a jump of the curvature it is less near.
    expect(Math.max(...off)).toBeLessThan(5e-4);
    expect(off.filter((d) => d > 5e-5).length).toBeLessThanOrEqual(4);
  });

  it('and tells beside which place it cannot stand', () => {
    const curves = [{ from: 30, to: 40, startCurvature: 1 / 0.7, endCurvature: 1 / 0.7, gaugeWidening: 0 }];
    const shape: SweptShape = { guides: 1.6, box: { rear: -0.4, front: 2, right: -0.3, left: 0.3 } };
    const plan = layPlan({ ...base, curves }, -5, 65);
    const places = [10, 20, 28, 34, 50];
    const found = reachesAlong(plan, shape, places, 'left', { rear: 0, front: 0 });
    const first = places.findIndex((s) => reachAt(plan, shape, s, 'left') === undefined);
    expect(found).toBe(first);
  });
});

function tools(seed: number) {
  const draw = drawer(seed);
  return {
    between: draw,
    chance: (p: number): boolean => draw(0, 1) < p,
  };
}
