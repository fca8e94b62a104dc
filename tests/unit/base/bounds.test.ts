/** Small numerics at their ends and by hand. */
import { describe, expect, it } from 'vitest';
import { atLeast } from '../../../engine/base/numerics/binomial.ts';
import { highest } from '../../../engine/base/numerics/highest.ts';
import { minimise } from '../../../engine/base/numerics/minimise.ts';
import { normalDeviate, normalShare } from '../../../engine/base/numerics/normal.ts';
import { countAtLeast } from '../../../engine/base/numerics/poisson.ts';
import {
  type Corner,
  crossesItself,
  depthIn,
  roomIn,
  toEdge,
  wholeFigure,
} from '../../../engine/base/numerics/polygon.ts';

const figure = (...of: readonly [number, number][]): Corner[] => of.map(([x, y]) => ({ x, y }));

it('shares of a count at their ends: none is surely reached, all only where each is sure', () => {
  expect([atLeast(0, 5, 0.3), atLeast(-1, 5, 0), atLeast(1, 5, 0), atLeast(5, 5, 1)]).toEqual([1, 1, 0, 1]);
  expect(atLeast(3, 4, 0.5)).toBeCloseTo(5 / 16, 14);
  expect(atLeast(4, 4, 0.5)).toBeCloseTo(1 / 16, 14);
  expect(atLeast(2, 3, 0.2)).toBeCloseTo(0.104, 14);
  expect([countAtLeast(0, 2), countAtLeast(1, 0)]).toEqual([1, 0]);
  expect(countAtLeast(1, 0.7)).toBeCloseTo(1 - Math.exp(-0.7), 12);
  expect(countAtLeast(2, 3)).toBeCloseTo(1 - 4 * Math.exp(-3), 12);
  expect(countAtLeast(3, 0.1)).toBeCloseTo(1 - Math.exp(-0.1) * (1 + 0.1 + 0.005), 12);
});

it('the highest point, where the function is not defined beyond it, and at a bound', () => {
  const bell = highest((x) => -((x - 0.7) ** 2), -1, 3, 60);
  expect(bell.at).toBeCloseTo(0.7, 6);
  expect(bell.value).toBeCloseTo(0, 12);
  expect(highest((x) => (x < 2.9 ? -Infinity : -x), 0, 4, 60).at).toBeCloseTo(2.9, 9);
  expect(highest((x) => (x > 2 ? -Infinity : x), 0, 4, 60).at).toBeCloseTo(2, 9);
  expect(highest((x) => -x, 2, 5, 60).at).toBeCloseTo(2, 9);
  expect(highest((x) => x, 2, 5, 60).value).toBeCloseTo(5, 9);
  // Each cut asks once, after the bounds and the first two.
  let asked = 0;
  highest((x) => -(x * x) - 0 * asked++, -1, 1, 10);
  expect(asked).toBe(14);
});

it('normal deviates are those of the table, and the share of a deviate its inverse', () => {
  for (const [share, deviate] of [
    [0.5, 0],
    [0.841344746, 1],
    [0.975, 1.959963985],
    [0.99, 2.326347874],
    [0.001, -3.090232306],
    [0.02, -2.053748911],
  ]) {
    expect(normalDeviate(share)).toBeCloseTo(deviate, 6);
    expect(normalShare(deviate)).toBeCloseTo(share, 6);
  }
  expect(normalShare(-9)).toBeLessThan(1e-18);
});

describe('figures', () => {
  const square = figure([0, 0], [4, 0], [4, 4], [0, 4]);
  it('a point lies as deep as the nearest edge is far, or stands out by as much', () => {
    expect([
      depthIn(square, { x: 1, y: 2 }),
      depthIn(square, { x: 3.5, y: 2 }),
      depthIn(square, { x: 2, y: 0.25 }),
    ]).toEqual([1, 0.5, 0.25]);
    expect([
      depthIn(square, { x: -1, y: 2 }),
      depthIn(square, { x: 7, y: 8 }),
      depthIn(square, { x: 2, y: 6 }),
    ]).toEqual([-1, -5, -2]);
    // One edge without length counts as a point.
    expect(toEdge(figure([1, 1], [1, 1]), { x: 4, y: 5 })).toBe(5);
  });

  it('one inside another has the least of either’s corners left, and is told where', () => {
    expect(roomIn(square, figure([1, 1], [2.5, 1], [2.5, 3.7]))).toMatchObject({
      left: expect.closeTo(0.3, 12),
      at: { x: 2.5, y: 3.7 },
    });
    expect(roomIn(square, figure([1, 1], [5, 2], [1, 3]))).toMatchObject({ left: -1, at: { x: 5, y: 2 } });
    // A corner of the outer one that reaches into the inner one.
    const dented = figure([0, 0], [4, 0], [4, 4], [2, 2], [0, 4]);
    expect(roomIn(dented, figure([1, 0.5], [3, 0.5], [3, 2.5], [1, 2.5]))).toMatchObject({
      left: expect.closeTo(-0.5, 12),
      at: { x: 2, y: 2 },
    });
  });

  it('bars that cross have nothing left, where their edges cross', () => {
    const upright = figure([1, -1], [3, -1], [3, 9], [1, 9]);
    const { left, at } = roomIn(figure([-5, 3], [9, 3], [9, 5], [-5, 5]), upright);
    expect(left).toBeLessThan(0);
    expect(at.y < 3 || at.y > 5 || ((at.x === 1 || at.x === 3) && (at.y === 3 || at.y === 5))).toBe(true);
    expect(crossesItself(figure([0, 0], [2, 2], [2, 0], [0, 2]))).toEqual([0, 2]);
    expect(crossesItself(square)).toBeUndefined();
  });

  it('half a figure is made whole, a whole one stays', () => {
    expect(wholeFigure(figure([0, 0], [1, 0], [2, 3], [0, 3]))).toEqual(
      figure([0, 0], [1, 0], [2, 3], [0, 3], [-2, 3], [-1, 0]),
    );
    expect(wholeFigure(square.map(({ x, y }) => ({ x: x - 1, y })))).toHaveLength(4);
  });
});

it('least squares that are not linear: the bottom, its residuals and slopes there', () => {
  // Rosenbrock’s valley.
  const told = minimise(([x, y]) => [10 * (y - x * x), 1 - x], [-1.2, 1], [1, 1]);
  expect(told.ended).toBe(true);
  expect([...told.x]).toEqual([1, 1].map((v) => expect.closeTo(v, 8)));
  expect(told.sum).toBeLessThan(1e-16);
  expect([...told.jacobian]).toEqual([-20, 10, -1, 0].map((v) => expect.closeTo(v, 5)));
  const line = minimise(([a, b]) => [a - 1, a + b - 3, a + 2 * b - 4], [0, 0], [1, 1]);
  expect([...line.x]).toEqual([7 / 6, 1.5].map((v) => expect.closeTo(v, 9)));
  expect(line.sum).toBeCloseTo(1 / 6, 9);
});
