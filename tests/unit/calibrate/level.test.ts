/** A phone as a level: exact angles, a crooked phone on a crooked floor, and what is no reading. */
import { describe, expect, it } from 'vitest';
import { angleBetween, type Felt, levelOf, steady, tiltFrom } from '../../../desk/measured/level.ts';

const degrees = Math.PI / 180;
const G = 9.81;

/** What it feels, lying on a floor tilted across by so much, turned about its upright; its own back is out by `crooked`. */
function felt(tilt: number, turned: number, crooked: Felt = [0, 0, 0]): Felt {
  const [x, y, z] = [Math.sin(tilt) * Math.cos(turned), -Math.sin(tilt) * Math.sin(turned), Math.cos(tilt)];
  return [G * (x + crooked[0]), G * (y + crooked[1]), G * (z + crooked[2])];
}

describe('a phone as a level', () => {
  it.each([0.001, 1, 20, 45, 80])('%d° from level', (tilt) => {
    const level = levelOf(felt(0, 0));
    expect(tiltFrom(level, felt(tilt * degrees, 0.3))).toBeCloseTo(tilt * degrees, 10);
  });

  it('laid both ways round, neither its own back nor the floor counts', () => {
    const crooked: Felt = [0.02, -0.01, 0];
    const floor = 2 * degrees;
    const once = felt(floor, 0, crooked);
    const both = levelOf(once, felt(floor, Math.PI, crooked));
    const tilted = felt(22 * degrees, 0, crooked);
    expect(Math.abs((tiltFrom(both, tilted) as number) - 22 * degrees)).toBeLessThan(0.1 * degrees);
    // Set once, the floor is taken for level: two degrees too few.
    expect(Math.abs((tiltFrom(levelOf(once), tilted) as number) - 20 * degrees)).toBeLessThan(0.1 * degrees);
  });

  it('upside down is no reading', () => {
    expect(tiltFrom(levelOf(felt(0, 0)), felt(170 * degrees, 0))).toBeUndefined();
  });

  it('a shaking hand is no reading', () => {
    expect(steady([felt(0, 0), felt(0.001, 0)])).toBeDefined();
    expect(steady([felt(0, 0), felt(3 * degrees, 0)])).toBeUndefined();
    expect(steady([])).toBeUndefined();
    expect(angleBetween([0, 0, 1], [0, 0, 1])).toBe(0);
  });
});
