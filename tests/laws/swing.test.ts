/** Laws of coupler angles along a line: mirrored, reversed, sharper, S-curves, long beside short. */
import { describe, expect, it } from 'vitest';
import type { EndShape, PairShape } from '../../engine/things/coupler/bend.ts';
import { lieAt, worstBend } from '../../engine/things/coupler/bends.ts';
import { bendsOf } from '../../engine/things/coupler/train-bends.ts';
import { reverseLine } from '../../engine/things/line/geometry.ts';
import type { CurveElement, Line } from '../../engine/things/line/types.ts';
import { drawer, randomLine } from '../support/random-outings.ts';

const arc = (from: number, to: number, radius: number): CurveElement => ({
  from,
  to,
  startCurvature: 1 / radius,
  endCurvature: 1 / radius,
  gaugeWidening: 0,
});
const lineOf = (curves: readonly CurveElement[], changes: Partial<Line> = {}): Line => ({
  ...randomLine(drawer(1), 0, false, 301),
  length: 80,
  heights: [
    { at: 0, height: 0 },
    { at: 80, height: 0 },
  ],
  curves,
  ...changes,
});
const end = (guides: number, overhang: number, shank = 0.15): EndShape => ({ guides, overhang, shank });
const pairOf = (ahead: EndShape, behind: EndShape): PairShape => ({ ahead, behind });
const turned = ({ ahead, behind }: PairShape): PairShape => ({ ahead: behind, behind: ahead });
const car = end(1.3, 0.45);
const alike = pairOf(car, car);

function worst(line: Line, pair: PairShape) {
  const { plan, gaps } = bendsOf(line, [pair]);
  const of = (side: 'ahead' | 'behind') => worstBend(plan, pair, gaps[0].bends, side);
  const [ahead, behind] = [of('ahead'), of('behind')];
  const greater = ahead.angle >= behind.angle ? ahead : behind;
  return { ahead, behind, most: greater.angle, ...lieAt(plan, pair, greater.at) };
}

const random = (seed: number): { line: Line; pair: PairShape } => {
  const draw = drawer(seed);
  const line = randomLine(draw, 0, seed % 2 === 0, 400);
  const ends = [0, 1].map(() => end(draw(0.6, 2), draw(0.2, 0.7), draw(0.1, 0.3)));
  return { line, pair: pairOf(ends[0], ends[1]) };
};

describe('coupler angles', () => {
  it('are nothing on straight track', () => {
    expect(worst(lineOf([]), pairOf(car, end(2, 0.8))).most).toBe(0);
  });

  it('are the same on the mirrored line, and with ends exchanged on the line run the other way', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { line, pair } = random(seed);
      const here = worst(line, pair);
      const curves = line.curves.map((c) => ({
        ...c,
        startCurvature: -c.startCurvature,
        endCurvature: -c.endCurvature,
      }));
      const mirrored = worst({ ...line, curves }, pair);
      expect(mirrored.ahead.angle).toBeCloseTo(here.ahead.angle, 9);
      expect(mirrored.behind.angle).toBeCloseTo(here.behind.angle, 9);
      // Which of the two leads decides where they meet to a hair, not how far they bend.
      const back = worst(reverseLine(line), turned(pair));
      expect(Math.abs(back.behind.angle - here.ahead.angle), `seed ${seed}`).toBeLessThan(1e-5);
      expect(Math.abs(back.ahead.angle - here.behind.angle), `seed ${seed}`).toBeLessThan(1e-5);
    }
  });

  it('grow as the radius falls', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { pair } = random(seed);
      const radii = [60, 30, 20, 14, 10];
      const most = radii.map((r) => worst(lineOf([arc(20, 45, r)]), pair).most);
      for (let i = 1; i < most.length; i++) expect(most[i], `seed ${seed}`).toBeGreaterThan(most[i - 1]);
    }
  });

  it('are more between curves of opposite hand than in either, and a straight between them helps', () => {
    for (const pair of [alike, pairOf(end(2, 0.8), car)]) {
      const single = worst(lineOf([arc(20, 40, 15)]), pair).most;
      const s = worst(lineOf([arc(20, 40, 15), arc(40, 60, -15)]), pair);
      const parted = worst(lineOf([arc(20, 40, 15), arc(46, 66, -15)]), pair).most;
      expect(s.most).toBeGreaterThan(1.1 * single);
      expect(s.lie).toBe('reverse');
      expect(parted).toBeCloseTo(single, 4);
    }
  });

  it('are more where a curve begins at once than in it, and less so behind a transition', () => {
    const long = pairOf(end(2, 0.8), car);
    const sudden = lineOf([arc(20, 50, 15)]);
    const eased = lineOf([
      { from: 12, to: 20, startCurvature: 0, endCurvature: 1 / 15, gaugeWidening: 0 },
      arc(20, 50, 15),
      { from: 50, to: 58, startCurvature: 1 / 15, endCurvature: 0, gaugeWidening: 0 },
    ]);
    const at = worst(sudden, long);
    expect(at.lie).toBe('ends');
    expect(worst(eased, long).most).toBeLessThan(at.most);
  });

  it('are more for long beside short than for two alike of the mean', () => {
    const line = lineOf([arc(20, 50, 15)]);
    const mean = end(1.5, 0.6);
    expect(worst(line, pairOf(end(2, 0.85), end(1, 0.35))).most).toBeGreaterThan(
      1.5 * worst(line, pairOf(mean, mean)).most,
    );
  });

  it('are found over the seam of a loop as anywhere else', () => {
    const loop = (curves: readonly CurveElement[]): Line => lineOf(curves, { loop: true });
    const pair = pairOf(end(2, 0.8), car);
    const inside = worst(loop([arc(20, 30, 15), arc(30, 40, -15)]), pair);
    const over = worst(loop([arc(0, 10, -15), arc(70, 80, 15)]), pair);
    expect(over.ahead.angle).toBeCloseTo(inside.ahead.angle, 6);
    expect(over.behind.angle).toBeCloseTo(inside.behind.angle, 6);
  });
});
