/** Cant where canted curves touch, come close to one another, or meet at a loop's origin. */
import { describe, expect, it } from 'vitest';
import { cantAt } from '../../../engine/things/line/geometry.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { readLine } from '../../../papers/index.ts';

const CANT = 0.009525;

interface Bend {
  readonly from: number;
  readonly to: number;
  readonly hand?: 'left' | 'right';
  readonly cant?: number;
}

async function lineOf(bends: readonly Bend[], shape: 'loop' | 'point-to-point' = 'loop'): Promise<Line> {
  const m = (x: number): string => `${x} m`;
  const read = await readLine({
    path: 'line.json',
    content: JSON.stringify({
      heedway: 'line',
      version: 1,
      name: 'bends',
      gauge: '7.25 in',
      shape,
      profile: [
        { at: '0 m', height: '0 m' },
        { at: '200 m', height: '0 m' },
      ],
      curves: bends.map(({ from, to, hand = 'left', cant = CANT }) => ({
        from: m(from),
        to: m(to),
        radius: '15 m',
        hand,
        cant: m(cant),
      })),
    }),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const along = (line: Line, from: number, to: number): number[] =>
  Array.from({ length: 101 }, (_, i) => cantAt(line, from + ((to - from) * i) / 100));

describe('cant', () => {
  it('of two touching curves with the same cant goes on through the joint', async () => {
    const line = await lineOf([
      { from: 50, to: 80 },
      { from: 80, to: 110 },
    ]);
    for (const c of along(line, 50, 110)) expect(c).toBeCloseTo(CANT, 12);
    expect(cantAt(line, 47)).toBeCloseTo(0, 12);
    expect(cantAt(line, 48.5)).toBeCloseTo(CANT / 2, 12);
    expect(cantAt(line, 113)).toBeCloseTo(0, 12);
  });

  it('goes on through a loop’s origin', async () => {
    const line = await lineOf([
      { from: 0, to: 40 },
      { from: 170, to: 200 },
    ]);
    for (const s of [0, 1, 2.9, 20, 171, 198.5, 200]) expect(cantAt(line, s), `${s}`).toBeCloseTo(CANT, 12);
  });

  it('runs out beyond a loop’s origin where only one side is canted', async () => {
    const line = await lineOf([{ from: 0, to: 40 }]);
    expect(cantAt(line, 0)).toBeCloseTo(CANT, 12);
    expect(cantAt(line, 198.5)).toBeCloseTo(CANT / 2, 12);
    expect(cantAt(line, 197)).toBeCloseTo(0, 12);
  });

  it('is whole where a line begins or ends in a curve', async () => {
    const line = await lineOf(
      [
        { from: 0, to: 40 },
        { from: 150, to: 200 },
      ],
      'point-to-point',
    );
    for (const s of [0, 0.5, 40, 150, 199.5, 200]) expect(cantAt(line, s), `${s}`).toBeCloseTo(CANT, 12);
  });

  it('of a reverse curve is level at the middle and whole a run-off away', async () => {
    const line = await lineOf([
      { from: 50, to: 80 },
      { from: 80, to: 110, hand: 'right' },
    ]);
    expect(cantAt(line, 80)).toBeCloseTo(0, 12);
    expect(cantAt(line, 77)).toBeCloseTo(CANT, 12);
    expect(cantAt(line, 83)).toBeCloseTo(-CANT, 12);
  });

  it('never falls below what a curve states, where its neighbour is of the same hand', async () => {
    const line = await lineOf([
      { from: 50, to: 80 },
      { from: 82, to: 110, cant: 2 * CANT },
    ]);
    for (const c of along(line, 50, 80)) expect(c).toBeGreaterThan(CANT - 1e-12);
    for (const c of along(line, 82, 110)) expect(c).toBeCloseTo(2 * CANT, 12);
  });

  it('changes little as a gap between two curves opens', async () => {
    const at = async (gap: number, hand: 'left' | 'right'): Promise<number[]> =>
      along(
        await lineOf([
          { from: 50, to: 80 },
          { from: 80 + gap, to: 120, hand },
        ]),
        40,
        130,
      );
    for (const hand of ['left', 'right'] as const) {
      for (const gap of [0, 1, 5.95, 6, 8]) {
        const [a, b] = [await at(gap, hand), await at(gap + 0.05, hand)];
        for (let i = 0; i < a.length; i++) expect(Math.abs(a[i] - b[i])).toBeLessThan(0.02 * CANT);
      }
    }
  });
});
