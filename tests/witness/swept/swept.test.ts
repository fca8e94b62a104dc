/**
 * The swept path against plain placing of the vehicle: the line laid in steps of a millimetre, the vehicle stood on it every
 * half millimetre by walking out its chord, the four sides of its box cut with the track's normal. Shares no code with the engine.
 */
import { expect, it } from 'vitest';
import { reachAt } from '../../../engine/things/clearance/swept.ts';
import { layPlan } from '../../../engine/things/line/plan.ts';
import { randomOuting } from '../../support/random-outings.ts';
import { runs } from '../../support/tier.ts';

const GRAIN = 0.001;

interface Bend {
  readonly from: number;
  readonly to: number;
  readonly startCurvature: number;
  readonly endCurvature: number;
  readonly gaugeWidening: number;
}

/** Numbers of its own: 16807·x mod 2³¹ − 1 (Park and Miller 1988). */
function chances(seed: number): (low: number, high: number) => number {
  let x = seed * 7919 + 17;
  return (low, high) => {
    x = (x * 16807) % 2147483647;
    return low + (high - low) * (x / 2147483647);
  };
}

/** Straight, easement, arc, perhaps at once the other way. */
function bendsOf(chance: (low: number, high: number) => number): Bend[] {
  const bends: Bend[] = [];
  let at = chance(6, 9);
  let k = 0;
  for (let i = 0; i < 4; i++) {
    const length = chance(0.5, 5);
    const next = i === 3 ? 0 : chance(-1, 1) / chance(3, 30);
    const jump = chance(0, 1) < 0.4;
    bends.push({
      from: at,
      to: at + length,
      startCurvature: jump ? next : k,
      endCurvature: next,
      gaugeWidening: 0,
    });
    at += length;
    k = next;
  }
  return bends;
}

function laid(bends: readonly Bend[], length: number): readonly (readonly [number, number, number])[] {
  const points: [number, number, number][] = [];
  let [x, y, way] = [0, 0, 0];
  for (let i = 0; i * GRAIN <= length; i++) {
    points.push([x, y, way]);
    const s = (i + 0.5) * GRAIN;
    const bend = bends.find((b) => s >= b.from && s < b.to);
    const k = bend
      ? bend.startCurvature +
        ((s - bend.from) / (bend.to - bend.from)) * (bend.endCurvature - bend.startCurvature)
      : 0;
    const middle = way + (k * GRAIN) / 2;
    x += GRAIN * Math.cos(middle);
    y += GRAIN * Math.sin(middle);
    way += k * GRAIN;
  }
  return points;
}

function bruteReach(
  points: readonly (readonly [number, number, number])[],
  guides: number,
  overhang: number,
  width: number,
  s: number,
  way: 1 | -1,
): number {
  const [cx, cy, heading] = points[Math.round(s / GRAIN)];
  const [nx, ny] = [-Math.sin(heading), Math.cos(heading)];
  let most = -Infinity;
  let front = 0;
  const first = Math.round((s - guides - overhang * 1.1) / GRAIN) - 20;
  const last = Math.round((s + overhang * 1.1) / GRAIN) + 20;
  const spot = (t: number): [number, number] => {
    const i = Math.floor(t);
    const f = t - i;
    return [
      points[i][0] + f * (points[i + 1][0] - points[i][0]),
      points[i][1] + f * (points[i + 1][1] - points[i][1]),
    ];
  };
  for (let half = 2 * first; half <= 2 * last; half++) {
    const r = half / 2;
    const [rx, ry] = spot(r);
    front = Math.max(front, r);
    while (Math.hypot(points[Math.ceil(front)][0] - rx, points[Math.ceil(front)][1] - ry) < guides)
      front = Math.ceil(front) + 1;
    const end = Math.ceil(front);
    const [before, after] = [end - 1, end].map((i) => Math.hypot(points[i][0] - rx, points[i][1] - ry));
    const [fx, fy] = spot(end - 1 + (guides - before) / (after - before));
    const [ux, uy] = [(fx - rx) / guides, (fy - ry) / guides];
    const corner = (along: number, aside: number): [number, number] => [
      rx + along * ux - aside * uy,
      ry + along * uy + aside * ux,
    ];
    const ring = [
      corner(-overhang, -width / 2),
      corner(guides + overhang, -width / 2),
      corner(guides + overhang, width / 2),
      corner(-overhang, width / 2),
    ];
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % 4];
      const [pa, pb] = [ax, bx].map((px, j) => (px - cx) * ny - ((j === 0 ? ay : by) - cy) * nx);
      if (pa === pb || pa > 0 === pb > 0) return;
      const f = pa / (pa - pb);
      const t = (ax + f * (bx - ax) - cx) * nx + (ay + f * (by - ay) - cy) * ny;
      most = Math.max(most, way * t);
    });
    front = Math.max(0, front - 2);
  }
  return most;
}

it(`reaches as far as placing it by hand says, within 0.2 mm, on ${runs(25, 500)} lines`, () => {
  const base = randomOuting(1, 1).line;
  for (let seed = 1; seed <= runs(25, 500); seed++) {
    const chance = chances(seed);
    const bends = bendsOf(chance);
    const length = bends[bends.length - 1].to + 8;
    const [guides, overhang, width] = [chance(0.4, 1.8), chance(0.05, 0.7), chance(0.2, 0.9)];
    const plan = layPlan({ ...base, loop: false, length, curves: bends }, -8, length + 8);
    const points = laid(bends, length);
    const shape = {
      guides,
      box: { rear: -overhang, front: guides + overhang, right: -width / 2, left: width / 2 },
    };
    for (let n = 0; n < 3; n++) {
      const s = Math.round(chance(bends[0].from - 2, length - 6) / GRAIN) * GRAIN;
      for (const side of ['left', 'right'] as const) {
        const found = reachAt(plan, shape, s, side) ?? Number.NaN;
        const brute = bruteReach(points, guides, overhang, width, s, side === 'left' ? 1 : -1);
        expect(
          Math.abs(found - brute),
          `line ${seed}, ${s} m, ${side}: ${found} and ${brute} m`,
        ).toBeLessThan(2e-4);
      }
    }
  }
});
