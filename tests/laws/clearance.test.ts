/** Laws of the swept path: whatever the vehicle and the curve. */
import { expect, it } from 'vitest';
import { reachAt, type Side } from '../../engine/things/clearance/swept.ts';
import { reverseLine } from '../../engine/things/line/geometry.ts';
import { layPlan } from '../../engine/things/line/plan.ts';
import type { CurveElement, Line } from '../../engine/things/line/types.ts';
import { drawer, randomOuting } from '../support/random-outings.ts';
import { runs } from '../support/tier.ts';

const LENGTH = 60;
const base = randomOuting(1, 1).line;
const lineOf = (curves: readonly CurveElement[]): Line => ({ ...base, loop: false, length: LENGTH, curves });
const curve = (from: number, to: number, startCurvature: number, endCurvature = startCurvature) => ({
  from,
  to,
  startCurvature,
  endCurvature,
  gaugeWidening: 0,
});
/** An S with easements, sharper by a factor. */
const esses = (k: number, by = 1): CurveElement[] => [
  curve(20, 22, 0, k * by),
  curve(22, 28, k * by),
  curve(28, 30, k * by, -k * by),
  curve(30, 36, -k * by),
];
const OPPOSITE: Readonly<Record<Side, Side>> = { left: 'right', right: 'left' };

function forEach(check: (draw: ReturnType<typeof drawer>, tell: string) => void): void {
  for (let seed = 1; seed <= runs(40, 400); seed++) check(drawer(seed), `seed ${seed}`);
}

function shapeOf(draw: ReturnType<typeof drawer>, even = false) {
  const [guides, front, width] = [draw(0.4, 1.8), draw(0, 0.7), draw(0.2, 0.9)];
  const rear = even ? front : draw(0, 0.7);
  return { guides, box: { rear: -rear, front: guides + front, right: -width / 2, left: width / 2 } };
}

const reach = (line: Line, shape: ReturnType<typeof shapeOf>, s: number, side: Side): number =>
  reachAt(layPlan(line, -10, LENGTH + 10), shape, s, side) ?? Number.NaN;

it('a tighter curve of the same length never reaches less, to either side', () =>
  forEach((draw, tell) => {
    const shape = shapeOf(draw);
    const k = draw(0.02, 0.17);
    // Of a wide vehicle without overhang the corners lie over the guides, and turn inward with the chord.
    const { guides, box } = shape;
    const over = Math.min(-box.rear, box.front - guides);
    if (over * (guides + over) < (2 * box.left * guides ** 2 * k * 1.15) / 4) return;
    const arc = (by: number): Line => lineOf([curve(10, 50, k * by)]);
    for (const side of ['left', 'right'] as const)
      expect(reach(arc(1.15), shape, 30, side), `${tell} ${side}`).toBeGreaterThanOrEqual(
        reach(arc(1), shape, 30, side) - 1e-9,
      );
  }));

it('a wider or longer vehicle never reaches less', () =>
  forEach((draw, tell) => {
    const shape = shapeOf(draw);
    const line = lineOf(esses(draw(0.02, 0.17)));
    const s = draw(18, 38);
    const wider = {
      ...shape,
      box: { ...shape.box, left: shape.box.left + 0.05, right: shape.box.right - 0.05 },
    };
    const longer = {
      ...shape,
      box: { ...shape.box, rear: shape.box.rear - 0.2, front: shape.box.front + 0.2 },
    };
    for (const side of ['left', 'right'] as const)
      for (const more of [wider, longer])
        expect(reach(line, more, s, side), `${tell} ${side}`).toBeGreaterThanOrEqual(
          reach(line, shape, s, side) - 1e-6,
        );
  }));

it('in a mirror left and right change places; the same vehicle run the other way takes the same room', () =>
  forEach((draw, tell) => {
    const k = draw(0.02, 0.17);
    const shape = shapeOf(draw);
    const line = lineOf(esses(k));
    const mirrored = lineOf(esses(-k));
    const turned = {
      ...shape,
      box: { ...shape.box, rear: shape.guides - shape.box.front, front: shape.guides - shape.box.rear },
    };
    const s = draw(18, 38);
    for (const side of ['left', 'right'] as const) {
      const here = reach(line, shape, s, side);
      expect(here, tell).toBeGreaterThan(0);
      expect(reach(mirrored, shape, s, OPPOSITE[side]), `${tell} mirror`).toBeCloseTo(here, 6);
      expect(reach(reverseLine(line), turned, LENGTH - s, OPPOSITE[side]), `${tell} turned`).toBeCloseTo(
        here,
        6,
      );
    }
  }));
