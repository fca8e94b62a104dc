/**
 * Fouling points against plain placing: turnouts drawn by points, the frog where the gauge lines truly cross, the vehicle that stands
 * and the one that passes put down side by side, the distance of their outlines taken edge by edge. Shares no code with the engine.
 */
import { expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Body } from '../../../engine/questions/clearance/bodies.ts';
import { bodiesOf } from '../../../engine/questions/clearance/bodies.ts';
import { type RoadLaid, roadsOf } from '../../../engine/questions/clearance/roads.ts';
import { curvesInTurnout } from '../../../engine/things/line/branch.ts';
import { turnoutByLead } from '../../../engine/things/line/turnout.ts';
import type { Joint, Line } from '../../../engine/things/line/types.ts';
import { beside as standing } from '../../support/beside.ts';
import { beside } from '../../support/measured.ts';
import { runs } from '../../support/tier.ts';

type Point = readonly [number, number];

/** Numbers of its own: 16807·x mod 2³¹ − 1 (Park and Miller 1988). */
function chances(seed: number): (low: number, high: number) => number {
  let x = seed * 9173 + 29;
  return (low, high) => {
    x = (x * 16807) % 2147483647;
    return low + (high - low) * (x / 2147483647);
  };
}

interface Drawn {
  readonly gauge: number;
  readonly number: number;
  readonly lead: number;
  readonly hand: 1 | -1;
  readonly play: number;
  readonly margin: number;
  readonly stands: Shape;
  readonly passes: Shape;
}

interface Shape {
  readonly guides: number;
  readonly rear: number;
  readonly front: number;
  readonly width: number;
}

function drawn(seed: number): Drawn {
  const chance = chances(seed);
  const [gauge, number] = [chance(0.08, 0.4), chance(3, 9)];
  const shape = (): Shape => ({
    guides: chance(0.4, 1.8),
    rear: chance(0.05, 0.6),
    front: chance(0.05, 0.6),
    width: chance(0.2, 0.9),
  });
  return {
    gauge,
    number,
    lead: gauge * number * chance(1.3, 2.3),
    hand: chance(0, 1) < 0.5 ? 1 : -1,
    play: chance(0, 1) < 0.3 ? 0 : chance(0, 0.006),
    margin: chance(0, 0.1),
    stands: shape(),
    passes: shape(),
  };
}

/** Middle of the diverging track at a length from the tips: along x until it bends, then a circle, then straight at the frog's angle. */
function diverging({ gauge, number, lead, hand }: Drawn): (s: number) => Point {
  const angle = 2 * Math.atan(0.5 / number);
  // The far rail runs along y = 0, and must pass the frog at (lead, gauge) at its angle: a circle between the two lines.
  const corner = lead - gauge / Math.tan(angle);
  const tangent = Math.min(corner, gauge / Math.sin(angle));
  const outer = tangent / Math.tan(angle / 2);
  const begins = corner - tangent;
  const radius = outer - gauge / 2;
  return (s) => {
    if (s <= begins) return [s, 0];
    const turned = Math.min(angle, (s - begins) / radius);
    const rest = s - begins - radius * turned;
    const x = begins + radius * Math.sin(turned) + rest * Math.cos(turned);
    const y = radius * (1 - Math.cos(turned)) + rest * Math.sin(turned);
    return [x, hand * y];
  };
}

/** Rear guide at r, front guide where the straight distance is that of the guides; each off its track to the left by … */
function outline(
  track: (s: number) => Point,
  shape: Shape,
  r: number,
  off: readonly [number, number],
): Point[] {
  const beside = (s: number, by: number): Point => {
    const [a, b] = [track(s - 1e-5), track(s + 1e-5)];
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const [x, y] = track(s);
    return [x - (by * (b[1] - a[1])) / size, y + (by * (b[0] - a[0])) / size];
  };
  const [rx, ry] = beside(r, off[0]);
  let [low, high] = [r, r + 1.5 * shape.guides];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const [x, y] = beside(middle, off[1]);
    if (Math.hypot(x - rx, y - ry) < shape.guides) low = middle;
    else high = middle;
  }
  const [fx, fy] = beside(low, off[1]);
  const [ux, uy] = [(fx - rx) / shape.guides, (fy - ry) / shape.guides];
  const corner = (along: number, aside: number): Point => [
    rx + along * ux - aside * uy,
    ry + along * uy + aside * ux,
  ];
  const [a, b, h] = [-shape.rear, shape.guides + shape.front, shape.width / 2];
  return [corner(a, -h), corner(b, -h), corner(b, h), corner(a, h)];
}

function toSegment([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}

const inside = ([px, py]: Point, ring: readonly Point[]): boolean =>
  ring.every(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % 4];
    return (bx - ax) * (py - ay) - (by - ay) * (px - ax) >= 0;
  });

function apart(a: readonly Point[], b: readonly Point[]): number {
  if (a.some((p) => inside(p, b)) || b.some((p) => inside(p, a))) return -1;
  const side = (from: readonly Point[], to: readonly Point[]): number =>
    Math.min(...from.map((p) => Math.min(...to.map((q, i) => toSegment(p, q, to[(i + 1) % 4])))));
  return Math.min(side(a, b), side(b, a));
}

const ways = (play: number): readonly (readonly [number, number])[] =>
  [-1, 1].flatMap((i) => [-1, 1].map((j) => [(i * play) / 2, (j * play) / 2] as const));

const turnedShape = (shape: Shape): Shape => ({ ...shape, rear: shape.front, front: shape.rear });

/** Least distance from the tips at which the nearer end stands clear of all that passes, whichever way round either is. */
function placedFouling(d: Drawn): number {
  const branch = diverging(d);
  const main = (s: number): Point => [s, 0];
  const passers = [d.passes, turnedShape(d.passes)].flatMap((shape) =>
    ways(d.play).map((off) => outline(main, shape, 0, off)),
  );
  const clearAt = (p: number): boolean =>
    [d.stands, turnedShape(d.stands)].every((shape) =>
      ways(d.play).every((off) => {
        const box = outline(branch, shape, p + shape.rear, off);
        const xs = box.map(([x]) => x);
        return passers.every((passer) => {
          const own = passer.map(([x]) => x);
          const [first, last] = [Math.min(...xs) - Math.max(...own), Math.max(...xs) - Math.min(...own)];
          // On straight track it only slides: where a corner of the one lies abreast of a side or a corner of the other.
          const slides = xs.flatMap((x) => own.map((y) => x - y));
          const all = [...slides, ...Array.from({ length: 9 }, (_, i) => first + ((last - first) * i) / 8)];
          return all.every(
            (by) =>
              apart(
                box,
                passer.map(([x, y]) => [x + by, y] as const),
              ) >= d.margin,
          );
        });
      }),
    );
  let p = 0;
  while (!clearAt(p) && p < 40) p += 0.2;
  let [bad, good] = [p - 0.2, p];
  for (let i = 0; i < 14; i++) {
    const middle = (bad + good) / 2;
    if (clearAt(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

const bodyOf = (base: Body, { guides, rear, front, width }: Shape, play: number): Body => ({
  ...base,
  half: width / 2,
  shape: { guides, box: { rear: -rear, front: guides + front, right: -width / 2, left: width / 2 } },
  play: { ...base.play, low: play, value: play, high: play },
});

const LENGTH = 45;

function engineFouling(d: Drawn, base: Line, body: Body): RoadLaid | undefined {
  const angle = 2 * Math.atan(0.5 / d.number);
  const turnout = turnoutByLead(d.gauge, angle, d.lead);
  const line: Line = { ...base, loop: false, gauge: d.gauge, length: 100, curves: [] };
  const joint: Joint = {
    track: 'main',
    at: 30,
    hand: d.hand > 0 ? 'left' : 'right',
    facing: true,
    ...(turnout ? { turnout } : {}),
  };
  const own = { ...line, length: LENGTH, curves: curvesInTurnout(line, joint) };
  const track = { id: 'road', name: 'Road', line: own, levelled: false, start: joint };
  const found = roadsOf(
    {
      line: { ...line, tracks: [track] },
      standing: [bodyOf(body, d.stands, d.play)],
      passing: [bodyOf(body, d.passes, d.play)],
      margin: d.margin,
    },
    track,
  );
  return Array.isArray(found) ? found[0] : undefined;
}

it(`finds the fouling point where placing by hand does, within 1 mm, on ${runs(6, 150)} turnouts`, () => {
  const outing = standing({});
  const apart: number[] = [];
  const [body] = bodiesOf(openOuting(outing));
  for (let seed = 1; seed <= runs(6, 150); seed++) {
    const d = drawn(seed);
    const road = engineFouling(d, outing.line, body);
    const by = placedFouling(d);
    const off = Math.abs((road?.clear?.from ?? Number.NaN) - by);
    apart.push(off);
    expect(off, `turnout ${seed}: ${road?.clear?.from} and ${by} m`).toBeLessThan(1e-3);
  }
  beside(import.meta.url, 'fouling points of turnouts', 'both vehicles placed side by side', apart, 'm');
});
