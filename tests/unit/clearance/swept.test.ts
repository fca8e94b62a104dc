import { describe, expect, it } from 'vitest';
import { reachAt } from '../../../engine/things/clearance/swept.ts';
import { endThrow, middleThrow } from '../../../engine/things/clearance/throw.ts';
import { layPlan } from '../../../engine/things/line/plan.ts';
import { randomOuting } from '../../support/random-outings.ts';

const IN = 0.0254;
const base = randomOuting(1, 1).line;
const curved = (radius: number, from = 20, to = 80) => ({
  ...base,
  loop: false,
  length: 200,
  curves: [{ from, to, startCurvature: 1 / radius, endCurvature: 1 / radius, gaugeWidening: 0 }],
});
const car = (guides: number, overhang: number, width: number) => ({
  guides,
  box: { rear: -overhang, front: guides + overhang, right: -width / 2, left: width / 2 },
});

describe('how far a vehicle reaches beside the track', () => {
  it('half its width on straight track', () => {
    const plan = layPlan(curved(100), -10, 210);
    expect(reachAt(plan, car(1.5, 0.4, 0.6), 10, 'left')).toBeCloseTo(0.3, 9);
    expect(reachAt(plan, car(1.5, 0.4, 0.6), 10, 'right')).toBeCloseTo(0.3, 9);
  });

  // By hand for a 420 in curve, 48 in between trucks, 72 in long: 0.6863 in and 0.8563 in for a thin vehicle.
  it('a thin vehicle by its chord in one curve', () => {
    expect(middleThrow(420 * IN, 48 * IN)).toBeCloseTo(0.6863 * IN, 5);
    expect(endThrow(420 * IN, 48 * IN, 12 * IN)).toBeCloseTo(0.8563 * IN, 5);
    const plan = layPlan(curved(420 * IN), -10, 210);
    const thin = car(48 * IN, 12 * IN, 0);
    expect(reachAt(plan, thin, 50, 'left')).toBeCloseTo(middleThrow(420 * IN, 48 * IN), 6);
    expect(reachAt(plan, thin, 50, 'right')).toBeCloseTo(endThrow(420 * IN, 48 * IN, 12 * IN), 6);
  });

  it('the outer corner of a wide one from the centre of the curve', () => {
    const [radius, guides, overhang, width] = [8, 1.6, 0.5, 0.7];
    const plan = layPlan(curved(radius), -10, 210);
    const axis = Math.sqrt(radius ** 2 - (guides / 2) ** 2);
    const corner = Math.hypot(axis + width / 2, guides / 2 + overhang);
    expect(reachAt(plan, car(guides, overhang, width), 50, 'right')).toBeCloseTo(corner - radius, 6);
    expect(reachAt(plan, car(guides, overhang, width), 50, 'left')).toBeCloseTo(radius - axis + width / 2, 6);
  });

  it('a guide moved aside moves it', () => {
    const plan = layPlan(curved(100), -10, 210);
    const shape = car(1, 0.5, 0.6);
    expect(reachAt(plan, shape, 10, 'left', { rear: 0.003, front: 0.003 })).toBeCloseTo(0.303, 6);
    // Aslant: at the end twice what it is over the guide.
    expect(reachAt(plan, shape, 10, 'left', { rear: -0.003, front: 0.003 })).toBeCloseTo(0.306, 4);
  });

  it('says where a frame cannot stand', () => {
    const plan = layPlan(curved(1.2), -10, 210);
    expect(reachAt(plan, car(2.5, 0.3, 0.4), 50, 'left')).toBeUndefined();
  });
});
