/** A train stood on its line: against the closed form of one circle, and its laws. */
import { expect, it } from 'vitest';
import { lookAtClear } from '../../../desk/clear.ts';
import { type Stood, standings } from '../../../desk/stood.ts';
import type { Corner } from '../../../engine/base/numerics/polygon.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { PlacedVehicle } from '../../../engine/questions/clearance/placed.ts';
import { placeAt } from '../../../engine/things/clearance/swept.ts';
import { endThrow, middleThrow } from '../../../engine/things/clearance/throw.ts';
import { layPlan } from '../../../engine/things/line/plan.ts';
import type { CurveElement } from '../../../engine/things/line/types.ts';
import { stoodPlot } from '../../../views/fit/stood-plot.ts';
import { beside, CAR, post } from '../../support/beside.ts';

const curve = (
  from: number,
  to: number,
  startCurvature: number,
  endCurvature = startCurvature,
): CurveElement => ({
  from,
  to,
  startCurvature,
  endCurvature,
  gaugeWidening: 0,
});
const stand = (outing: Outing, at: number): Stood => standings(outing, lookAtClear(outing)).stand(at);
const only = ({ vehicles }: Stood): PlacedVehicle => vehicles[0] as PlacedVehicle;
const RADIUS = 9;
const round = (k = 1 / RADIUS): Outing => beside({ line: { curves: [curve(20, 80, k)] } });

it('hangs over on one circle as the chord has it', () => {
  const { hang } = only(stand(round(), 60));
  // Radially from the circle, as a tape from the middle of the track reads.
  expect(hang.middle).toBeCloseTo(middleThrow(RADIUS, CAR.guides), 7);
  for (const end of [hang.front, hang.rear])
    expect(end).toBeCloseTo(-endThrow(RADIUS, CAR.guides, CAR.overhang), 7);
});

it('turns about with the hand of the curve, and hangs nowhere on the straight', () => {
  const [left, right] = [only(stand(round(), 60)), only(stand(round(-1 / RADIUS), 60))];
  for (const of of ['front', 'middle', 'rear'] as const)
    expect(left.hang[of]).toBeCloseTo(-right.hang[of], 9);
  const { hang } = only(stand(round(), 12));
  for (const of of ['front', 'middle', 'rear'] as const) expect(Math.abs(hang[of])).toBeLessThan(1e-12);
});

it('runs in reverse over the same places with front and rear changed', () => {
  const forth = {
    ...round(),
    line: { ...round().line, curves: [curve(20, 40, 0, 1 / RADIUS), curve(40, 80, 1 / RADIUS)] },
  };
  const back: Outing = { ...forth, direction: 'reverse' };
  // The same car over the same stretch: its head at 38 one way stands where its tail does the other way.
  const [a, b] = [only(stand(forth, 38)).hang, only(stand(back, 38 - CAR.length)).hang];
  expect(Math.abs(a.front)).toBeGreaterThan(1e-4);
  expect(b.front).toBeCloseTo(-a.rear, 4);
  expect(b.rear).toBeCloseTo(-a.front, 4);
  expect(b.middle).toBeCloseTo(-a.middle, 4);
});

/** Of a spot from the nearest of many places laid finely: shares nothing with how it was placed. */
function offTrack(outing: Outing, spot: Corner): { readonly at: number; readonly off: number } {
  const { line, loaded } = openOuting(outing);
  const plan = layPlan(line, -loaded.length - 20, line.length + loaded.length + 20);
  let best = { at: 0, off: Infinity };
  for (let s = 0; s <= line.length; s += 0.002) {
    const { x, y } = placeAt(plan, s);
    const off = Math.hypot(spot.x - x, spot.y - y);
    if (off < best.off) best = { at: s, off };
  }
  return best;
}

it('stands with its guides on the track and every corner within what it sweeps', () => {
  const outing = {
    ...round(),
    line: {
      ...round().line,
      curves: [
        curve(20, 25, 0, 1 / 12),
        curve(25, 40, 1 / 12),
        curve(40, 50, 1 / 12, -1 / 15),
        curve(50, 70, -1 / 15),
      ],
    },
  };
  const clear = lookAtClear(outing);
  const { kept } = clear;
  if (!kept) throw new Error('nothing is measured');
  for (const at of [22, 27.3, 33, 44.8, 52, 66, 71]) {
    const { guides, corners = [], axis } = only(standings(outing, clear).stand(at));
    for (const guide of guides) expect(offTrack(outing, guide).off).toBeLessThan(0.0011);
    expect(Math.hypot(axis[0].x - axis[1].x, axis[0].y - axis[1].y)).toBeCloseTo(CAR.length, 9);
    // A rectangle as wide and long as the car, its corners in order round.
    const [a, b, c, d] = corners as readonly Corner[];
    const apart = (p: Corner, q: Corner): number => Math.hypot(p.x - q.x, p.y - q.y);
    for (const [p, q, long] of [
      [a, b, CAR.width],
      [b, c, CAR.length],
      [c, d, CAR.width],
      [d, a, CAR.length],
    ] as const)
      expect(apart(p, q)).toBeCloseTo(long, 9);
    for (const corner of corners) {
      const { at: s, off } = offTrack(outing, corner);
      const i = Math.round((s / outing.line.length) * (kept.at.length - 1));
      const near = [i - 1, i, i + 1].flatMap((j) => [kept.left[j] ?? 0, kept.right[j] ?? 0]);
      expect(off, `at ${at}`).toBeLessThanOrEqual(Math.max(...near) + 1e-3);
    }
  }
});

it('goes on over the seam of a loop, and shows what stands there on either side of it', () => {
  const base = beside({ structures: [post({ from: 0.2, to: 0.2 })] });
  const { length } = base.line;
  const loop: Outing = {
    ...base,
    line: { ...base.line, loop: true, curves: [curve(0, length, (2 * Math.PI) / length)] },
  };
  const here = stand(loop, 0.5);
  expect(here.beside).toHaveLength(1);
  const { hang } = only(here);
  expect(hang.front).toBeCloseTo(only(stand(loop, 30)).hang.front, 6);
  // A whole lap on it stands on the track that is drawn, wherever that lies.
  const { track, vehicles } = stand(loop, length);
  const [front] = (vehicles[0] as PlacedVehicle).axis;
  expect(Math.min(...track.map((p) => Math.hypot(p.x - front.x, p.y - front.y)))).toBeLessThan(0.2);
  expect(stand(loop, length - 0.3).beside).toHaveLength(1);
  expect(stand(loop, length / 2).beside).toHaveLength(0);
});

it('draws what was not measured as a line, and says which cannot stand', () => {
  const bare = beside({
    vehicle: { envelope: undefined } as never,
    line: { curves: [curve(20, 80, 1 / RADIUS)] },
  });
  const clear = lookAtClear(bare);
  const stood = standings(bare, clear).stand(40);
  expect(only(stood).corners).toBeUndefined();
  expect(stood.swept).toBeNull();
  expect(JSON.stringify(stoodPlot(stood, clear, { system: 'metric', wording: 'uk' } as never))).toContain(
    '"bold"',
  );
  const tight = beside({ line: { curves: [curve(20, 80, 1 / 0.5)] } });
  expect(stand(tight, 60).vehicles).toEqual([null]);
});
