/**
 * Bars and links over crests and sags: both vehicles laid on random profiles over the whole line, true to their lengths, by halving;
 * pins stand square off their own frames, and the bar is as long as it is. Shares no code with the engine.
 */
import { expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { lookAtPitch } from '../../../engine/questions/pitch/look.ts';
import { crested } from '../../support/crested.ts';
import { drawer } from '../../support/random-outings.ts';
import { runs } from '../../support/tier.ts';

interface Point {
  readonly x: number;
  readonly z: number;
}
interface Knot {
  readonly at: number;
  readonly height: number;
}
interface Body {
  readonly length: number;
  readonly overhang: number;
  readonly base: number;
  readonly shank: number;
  readonly height: number;
}

function on(knots: readonly Knot[], x: number): Point {
  const after = knots.findIndex((k) => k.at >= x);
  const i = after === -1 ? knots.length - 1 : Math.max(1, after);
  const [a, b] = [knots[i - 1], knots[i]];
  return { x, z: a.height + ((x - a.at) / (b.at - a.at)) * (b.height - a.height) };
}

/** Where `f` crosses nothing, rising. */
function halved(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 30; i++) {
    const m = (a + b) / 2;
    if (f(m) < 0) a = m;
    else b = m;
  }
  return (a + b) / 2;
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.z - b.z);
const between = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, z: (a.z + b.z) / 2 });

/** A truck whose rear axle stands at x: the middle of its frame. */
function truck(knots: readonly Knot[], x: number, base: number): Point {
  const rear = on(knots, x);
  if (base === 0) return rear;
  const front = halved((s) => apart(on(knots, s), rear) - base, x, x + base + 0.01);
  return between(rear, on(knots, front));
}

interface Laid {
  /** Unit vector forward. */
  readonly along: Point;
  readonly rear: Point;
  readonly front: Point;
}

function laid(knots: readonly Knot[], x: number, { length, overhang, base }: Body): Laid {
  const guides = length - 2 * overhang;
  const rear = truck(knots, x, base);
  const far = halved((s) => apart(truck(knots, s, base), rear) - guides, x, x + guides + 0.05);
  const front = truck(knots, far, base);
  const d = apart(rear, front);
  return { rear, front, along: { x: (front.x - rear.x) / d, z: (front.z - rear.z) / d } };
}

/** A pin so far out of a guide along the frame, and so high square off it. */
const pin = (from: Point, { x, z }: Point, out: number, up: number): Point => ({
  x: from.x + x * out - z * up,
  z: from.z + z * out + x * up,
});
const slope = ({ x, z }: Point): number => Math.atan2(z, x);

type Tips = Readonly<Record<'ahead' | 'behind', number>>;

/** Where the rear guide of the one ahead stands at x: how far the bar tips upward from either. */
function tips(knots: readonly Knot[], [a, b]: readonly [Body, Body], x: number): Tips {
  const bar = a.shank + b.shank;
  const front = laid(knots, x, a);
  const own = pin(front.rear, front.along, -(a.overhang - a.shank), a.height);
  const pinOf = (s: number): readonly [Point, Laid] => {
    const back = laid(knots, s, b);
    return [pin(back.front, back.along, b.overhang - b.shank, b.height), back];
  };
  const start = x - a.overhang - b.length + b.overhang;
  // The nearer it stands, the shorter the bar.
  const [its, back] = pinOf(halved((at) => bar - apart(pinOf(at)[0], own), start - 0.1, start + 0.1));
  const rearward = Math.atan2(its.z - own.z, own.x - its.x);
  return { ahead: rearward + slope(front.along), behind: -rearward - slope(back.along) };
}

/** Most upward and most downward of the bar against both, over the whole line: coarsely, then closely about the best. */
function placed(knots: readonly Knot[], bodies: readonly [Body, Body]) {
  const end = knots[knots.length - 1].at;
  const [from, to] = [bodies[1].length + 0.3, end - bodies[0].length - 0.3];
  const most = (side: keyof Tips, sign: 1 | -1): number => {
    const best = (low: number, high: number, step: number): readonly [number, number] => {
      let found = [-Infinity, low] as readonly [number, number];
      for (let x = low; x <= high; x += step) {
        const tip = sign * tips(knots, bodies, x)[side];
        if (tip > found[0]) found = [tip, x];
      }
      return found;
    };
    const [, near] = best(from, to, 0.06);
    const [, nearer] = best(Math.max(from, near - 0.06), Math.min(to, near + 0.06), 0.008);
    return best(Math.max(from, nearer - 0.008), Math.min(to, nearer + 0.008), 0.0008)[0];
  };
  const both = (side: keyof Tips) => ({ up: most(side, 1), down: most(side, -1) });
  return { ahead: both('ahead'), behind: both('behind') };
}

const DEGREE = Math.PI / 180;
/** m */
const LEVEL = 5;

function drawn(draw: (low: number, high: number) => number, base: number, high: number) {
  // Level at both ends for longer than a vehicle: placed by hand both stand whole on the line.
  const heights: Knot[] = [
    { at: 0, height: 0 },
    { at: LEVEL, height: 0 },
  ];
  while (heights.length < 22) {
    const last = heights[heights.length - 1];
    const run = draw(0.5, 3);
    heights.push({ at: last.at + run, height: last.height + run * draw(-0.03, 0.03) });
  }
  const last = heights[heights.length - 1];
  heights.push({ at: last.at + LEVEL, height: last.height });
  const body = (): Body => {
    const length = draw(1.2, 3.6);
    const [overhang, shank] = [length * draw(0.12, 0.28), draw(0.1, 0.25)];
    return { length, overhang, base, shank, height: high + draw(0, 0.04) };
  };
  return { heights, bodies: [body(), body()] as const };
}

/**
 * Pins near the rail: by what chords and the track under them differ in length. Pins as high as couplers: frames that tip toward one
 * another bring them nearer by that height times the grade's change, some 9 mm at breaks of 6 %, and the vehicles farther apart.
 * Bound: a tenth of what the stiffest bar is taken to give (3°), less than anybody measures at a bar.
 */
it.each([
  ['pins near the rail', 0.01, 0.3],
  ['pins as high as couplers', 0.12, 0.3],
])('turn as far as both placed by hand: %s', (_, high, degrees) => {
  const draw = drawer(11);
  let worst = 0;
  for (let n = 0; n < runs(2, 60); n++) {
    const { heights, bodies } = drawn(draw, n % 4 === 3 ? 0.2 : 0, high);
    const coupling = ({ shank, height }: Body) => ({ type: 'bar', shank, height });
    const found = lookAtPitch(openOuting(crested(heights, bodies, bodies.map(coupling))));
    const by = placed(heights, bodies);
    for (const [i, side] of (['ahead', 'behind'] as const).entries()) {
      const { needed, way } = found[i];
      const more = Math.max(by[side].up, by[side].down);
      worst = Math.max(worst, Math.abs(needed - more), more - by[side][way]);
    }
  }
  expect(worst / DEGREE).toBeLessThan(degrees);
  expect(worst).toBeGreaterThan(0);
});
