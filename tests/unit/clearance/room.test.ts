/** Room between two boxes, and between one that stands and what passes: by hand, and by trying every place. All made up. */
import { describe, expect, it } from 'vitest';
import {
  type Boxed,
  between,
  boxAt,
  COARSE,
  FAR,
  laneOf,
  looseOf,
  type Poised,
  roomBeside,
  turned,
} from '../../../engine/things/clearance/room.ts';
import { farthest, reachAt, standing } from '../../../engine/things/clearance/swept.ts';
import { layPlan } from '../../../engine/things/line/plan.ts';
import { drawer, randomOuting } from '../../support/random-outings.ts';

const box = (x: number, y: number, degrees = 0, long = 1, wide = 0.5): Boxed => {
  const a = (degrees * Math.PI) / 180;
  return { x, y, ux: Math.cos(a), uy: Math.sin(a), long, wide };
};

describe('between two boxes', () => {
  it('side by side, end to end and corner to corner, by hand', () => {
    expect(between(box(0, 0), box(0, 1.3))).toBeCloseTo(0.3, 12);
    expect(between(box(0, 0), box(-2.4, 0.2))).toBeCloseTo(0.4, 12);
    expect(between(box(0, 0), box(2.3, 1.4))).toBeCloseTo(Math.hypot(0.3, 0.4), 12);
    // Across: half lengths and widths change places.
    expect(between(box(0, 0), box(0, 2, 90))).toBeCloseTo(0.5, 12);
    expect(between(box(0, 0), box(2, 0, -90))).toBeCloseTo(0.5, 12);
    // A corner of the one turned by 45° against the other's side.
    expect(between(box(0, 0), box(0, 2, 45))).toBeCloseTo(1.5 - 1.5 * Math.SQRT1_2, 12);
    expect(between(box(0, 2, 45), box(0, 0))).toBeCloseTo(1.5 - 1.5 * Math.SQRT1_2, 12);
  });

  it('overlapping is less than nothing, by the least way out', () => {
    expect(between(box(0, 0), box(0, 0.9))).toBeCloseTo(-0.1, 12);
    expect(between(box(0, 0), box(1.95, 0.1))).toBeCloseTo(-0.05, 12);
    expect(between(box(0, 0), box(0, 1))).toBeCloseTo(0, 12);
    expect(between(box(0, 0), box(0, 0, 30))).toBeLessThan(-0.9);
  });

  it('is what their edges say, sampled, whichever is asked of which, wherever both are turned and moved to', () => {
    const draw = drawer(8);
    const edge = (b: Boxed): { x: number; y: number }[] =>
      Array.from({ length: 120 }, (_, i) => {
        const t = ((i % 30) / 29) * 2 - 1;
        const [along, across] = [
          [t * b.long, b.wide],
          [t * b.long, -b.wide],
          [b.long, t * b.wide],
          [-b.long, t * b.wide],
        ][Math.floor(i / 30)];
        return { x: b.x + along * b.ux - across * b.uy, y: b.y + along * b.uy + across * b.ux };
      });
    for (let n = 0; n < 10; n++) {
      const at = draw(0, 6.28);
      const a = box(0, 0, draw(-180, 180), draw(0.5, 2), draw(0.2, 0.6));
      const b = box(4 * Math.cos(at), 4 * Math.sin(at), draw(-180, 180), draw(0.3, 1), draw(0.2, 0.6));
      const found = between(a, b);
      let sampled = Infinity;
      for (const p of edge(a))
        for (const q of edge(b)) sampled = Math.min(sampled, Math.hypot(p.x - q.x, p.y - q.y));
      expect(sampled).toBeGreaterThan(found - 1e-9);
      expect(sampled).toBeLessThan(found + 0.02);
      expect(between(b, a)).toBeCloseTo(found, 12);
    }
  });
});

const base = randomOuting(1, 1).line;
const shape = { guides: 1.6, box: { rear: -0.3, front: 2.1, left: 0.35, right: -0.25 } };
const poised = (rear = 0, front = 0): Poised => ({ shape, aside: { rear, front } });
const straight = { ...base, loop: false, length: 60, curves: [] };
const round = {
  ...straight,
  curves: [{ from: 0, to: 60, startCurvature: 1 / 12, endCurvature: 1 / 12, gaugeWidening: 0 }],
};

it('a box stands with its guides on the track, its middle where its ends and sides lie', () => {
  const b = box(0, 0);
  expect(boxAt(layPlan(straight, 0, 70), poised(0.1, 0.1), 20, standing(1.6), b)).toBe(true);
  expect([b.x, b.y, b.long, b.wide]).toEqual([20.9, 0.15, 1.2, 0.3].map((v) => expect.closeTo(v, 9)));
  const aslant = box(0, 0);
  boxAt(layPlan(straight, 0, 70), poised(-0.08, 0.08), 20, standing(1.6), aslant);
  expect(aslant.uy).toBeCloseTo(0.16 / 1.6, 9);
  const sharp = {
    ...round,
    curves: [{ ...round.curves[0], startCurvature: 1 / 0.7, endCurvature: 1 / 0.7 }],
  };
  expect(boxAt(layPlan(sharp, -10, 70), poised(), 20, standing(1.6), b)).toBe(false);
  expect(laneOf(layPlan(sharp, -10, 70), poised(), 5, 20)).toBeUndefined();
});

/** Middle and way of a box of a lane. */
function placeOf({ boxes }: { readonly boxes: Float64Array }, i: number) {
  const [x, y, ux, uy] = boxes.slice(4 * i);
  return { x, y, ux, uy };
}

describe('beside what passes', () => {
  const lane = laneOf(layPlan(round, 0, 70), poised(), 2, 30) as NonNullable<ReturnType<typeof laneOf>>;

  it('a lane has a box every tenth of a metre, to its end or just beyond', () => {
    expect([4 * 281, 4 * 282]).toContain(lane.boxes.length);
    expect(laneOf(layPlan(straight, 0, 70), poised(), 1, 1.95)?.boxes).toHaveLength(4 * 11);
    const [first, third] = [placeOf(lane, 0), placeOf(lane, 2)];
    expect(Math.hypot(third.x - first.x, third.y - first.y)).toBeCloseTo(0.2 * (1 - 0.05 / 12), 2);
  });

  it('is the least of all its places, to a hundredth of a millimetre where it is asked finely', () => {
    const draw = drawer(9);
    for (let n = 0; n < 12; n++) {
      const angle = draw(0.4, 2);
      const off = draw(0.7, 1.4);
      const here = box(
        (12 - off) * Math.sin(angle),
        12 - (12 - off) * Math.cos(angle),
        draw(-40, 40) + angle * 57,
        0.6,
        0.2,
      );
      let tried = Infinity;
      const at = box(0, 0);
      const stand = standing(1.6);
      for (let s = 2; s <= 30; s += 0.01) {
        boxAt(lane.plan, poised(), s, stand, at);
        tried = Math.min(tried, between(here, at));
      }
      const fine = roomBeside(here, [lane], true);
      const rough = roomBeside(here, [lane], false);
      expect(fine.room).toBeLessThan(tried + 1e-5);
      expect(fine.room).toBeGreaterThan(tried - 1e-3);
      expect(rough.room).toBeGreaterThan(fine.room - 1e-12);
      expect(rough.room).toBeLessThan(fine.room + COARSE);
      boxAt(lane.plan, poised(), fine.at, stand, at);
      expect(between(here, at)).toBeCloseTo(fine.room, 9);
    }
  });

  it('of several lanes is that of the nearest, whichever comes first; far off is none', () => {
    const along = (y: number) => laneOf(layPlan(straight, 0, 70), poised(y, y), 0, 40) as typeof lane;
    const here = box(20, 2, 0, 1, 0.3);
    const [near, far] = [along(0.9), along(0.6)];
    for (const [lanes, which] of [
      [[near, far], 0],
      [[far, near], 1],
    ] as const) {
      const found = roomBeside(here, lanes, true);
      expect(found.lane).toBe(which);
      expect(found.room).toBeCloseTo(2 - 0.3 - 0.9 - 0.35, 9);
    }
    expect(roomBeside(box(20, 2.9, 0, 1, 0.3), [along(0)], true)).toMatchObject({ room: FAR, lane: -1 });
    expect(roomBeside(box(20, 1.6, 0, 1, 0.3), [along(0)], true).room).toBeCloseTo(0.95, 9);
  });

  it('is the same whether a vehicle’s ways to stand are looked at as one family or each alone, with or without what was near before', () => {
    const draw = drawer(10);
    const plan = layPlan(round, 0, 70);
    const lanesOf = (play: number, family?: { loose: number }) =>
      [
        // The farthest first.
        [-1, -1],
        [1, 1],
        [-1, 1],
        [1, -1],
      ].map(
        ([r, f]) =>
          laneOf(
            plan,
            poised((r * play) / 2, (f * play) / 2),
            2,
            30,
            family ? { family } : {},
          ) as typeof lane,
      );
    for (let n = 0; n < 6; n++) {
      const play = draw(0.001, 0.06);
      const { shape } = poised();
      const all = [play / 3, play].flatMap((p) => lanesOf(p));
      const together = [play / 3, play].flatMap((p) => lanesOf(p, { loose: looseOf(shape, p) }));
      let [before, angle]: [ReturnType<typeof roomBeside> | undefined, number] = [undefined, 0.4];
      for (let i = 0; i < 12; i++, angle += 0.02) {
        const off = draw(0.5, 1.6);
        const here = box(
          (12 - off) * Math.sin(angle),
          12 - (12 - off) * Math.cos(angle),
          angle * 57 + draw(-9, 9),
          0.6,
          0.2,
        );
        for (const fine of [false, true]) {
          const alone = roomBeside(here, all, fine);
          expect(roomBeside(here, together, fine, before)).toEqual(alone);
        }
        before = roomBeside(here, together, false, before);
      }
    }
  });

  it('on a plan of its own is where that plan is laid', () => {
    const frame = { x: 3, y: 4, cos: 0.6, sin: 0.8 };
    const laid = laneOf(layPlan(straight, 0, 70), poised(), 0, 20, { frame }) as typeof lane;
    const first = placeOf(laid, 0);
    // Its middle lies 0.9 m ahead of the rear guide and 0.05 m to its left.
    expect(first.x).toBeCloseTo(3 + 0.9 * 0.6 - 0.05 * 0.8, 9);
    expect(first.y).toBeCloseTo(4 + 0.9 * 0.8 + 0.05 * 0.6, 9);
    expect([first.ux, first.uy]).toEqual([0.6, 0.8].map((v) => expect.closeTo(v, 9)));
    // 10 m along it, and 1 m off its left side.
    const off = 0.35 + 0.2 + 0.5;
    const here = box(3 + 10 * 0.6 - off * 0.8, 4 + 10 * 0.8 + off * 0.6, 53.13010235, 0.5, 0.2);
    expect(roomBeside(here, [laid], true).room).toBeCloseTo(0.5, 8);
  });
});

it('turned round, its ends change places and its sides stay', () => {
  expect(turned(shape).box).toEqual({ rear: -0.5, front: expect.closeTo(1.9, 12), left: 0.35, right: -0.25 });
  expect(turned(shape).guides).toBe(1.6);
  expect(turned(turned(shape)).box.front).toBeCloseTo(shape.box.front, 12);
});

describe('how far a vehicle reaches', () => {
  it('beside which places it may stand: its longer end and a quarter more, and its shorter end', () => {
    expect(farthest(shape)).toBeCloseTo(1.25 * (2.1 + 0.3) + 0.2, 12);
    expect(farthest({ guides: 3, box: { rear: 0.5, front: 2, left: 0, right: 0 } })).toBeCloseTo(
      1.25 * 3 + 0.2,
      12,
    );
  });

  it('is the farthest of its outline over all its places, sampled, in a curve that begins and ends', () => {
    const curves = [{ from: 20, to: 26, startCurvature: 0, endCurvature: 1 / 6, gaugeWidening: 0 }];
    const plan = layPlan({ ...straight, curves }, -10, 70);
    for (const s of [19.5, 24.5, 26.3])
      for (const side of ['left', 'right'] as const) {
        const at = box(0, 0);
        const stand = standing(1.6);
        // The track at the place, by a vehicle too short to bend.
        const place = box(0, 0);
        const dot = { guides: 0, box: { rear: -1e-9, front: 1e-9, left: 0, right: 0 } };
        boxAt(plan, { shape: dot, aside: { rear: 0, front: 0 } }, s, standing(0), place);
        let sampled = -Infinity;
        for (let rear = s - 3; rear < s + 1; rear += 0.02) {
          boxAt(plan, poised(), rear, stand, at);
          for (let i = 0; i <= 240; i++)
            for (const across of [at.wide, -at.wide]) {
              const along = at.long * (i / 120 - 1);
              const dx = at.x + along * at.ux - across * at.uy - place.x;
              const dy = at.y + along * at.uy + across * at.ux - place.y;
              if (Math.abs(dx * place.ux + dy * place.uy) > 0.006) continue;
              const off = dy * place.ux - dx * place.uy;
              sampled = Math.max(sampled, side === 'left' ? off : -off);
            }
        }
        const reach = reachAt(plan, shape, s, side) as number;
        expect(Math.abs(reach - sampled), `${s} ${side}`).toBeLessThan(2e-3);
      }
  });
});
