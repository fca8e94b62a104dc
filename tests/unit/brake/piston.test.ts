/** A cylinder by hand: V = V₀ + V_s·s, and what is drawn in works on what is left. */
import { describe, expect, it } from 'vitest';
import { pistonState, workingVolume } from '../../../engine/things/brake/piston.ts';

const piston = { clearance: 1e-4, swept: 4e-4, strokeAt: 2e4 };

describe('volume on the working side', () => {
  it('grows as the piston runs out', () =>
    expect([0, 0.25, 1].map((s) => workingVolume(piston, s))).toEqual([1e-4, 2e-4, 5e-4]));
  it('lessens as it is drawn in', () =>
    expect([0, 0.25, 1].map((s) => workingVolume(piston, s, true))).toEqual([5e-4, 4e-4, 1e-4]));
});

describe('the piston stands where pressure and spring agree', () => {
  // Half the stroke needs half of strokeAt above what is behind.
  const half = 1e5 + piston.strokeAt / 2;
  it('pushed', () => {
    const content = half * workingVolume(piston, 0.5);
    expect(pistonState(piston, content, { pressure: 1e5 }).stroke).toBeCloseTo(0.5, 9);
  });
  it('drawn', () => {
    const content = (1e5 - piston.strokeAt / 2) * workingVolume(piston, 0.5, true);
    const found = pistonState(piston, content, { pressure: 1e5 }, true);
    expect(found.stroke).toBeCloseTo(0.5, 9);
    expect(found.pressure).toBeCloseTo(9e4, 3);
  });
  it('against a closed chamber that it squeezes', () => {
    const content = half * workingVolume(piston, 0.5);
    const back = { content: 1e5 * (8e-4 - 0.5 * piston.swept), volume: 8e-4 };
    expect(pistonState(piston, content, back)).toMatchObject({ stroke: expect.closeTo(0.5, 9) });
  });
  it('not beyond its ends', () => {
    expect(pistonState(piston, 0.9e5 * 1e-4, { pressure: 1e5 }).stroke).toBe(0);
    expect(pistonState(piston, 9e5 * 5e-4, { pressure: 1e5 }).stroke).toBe(1);
  });
});
