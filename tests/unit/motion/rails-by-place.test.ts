/** Shares of a train on rail in another state, and what goes together in a draw: by hand. All made up. */
import { describe, expect, it } from 'vitest';
import type { SharedFit } from '../../../engine/base/quantity.ts';
import { fitsOf, StopFits } from '../../../engine/motion/fits.ts';
import type { StopModel } from '../../../engine/motion/model.ts';
import {
  covered,
  easedBy,
  lostAt,
  meetsOther,
  moreThere,
  type RailPlace,
  type Rails,
  shareOn,
  shareOnOwn,
} from '../../../engine/motion/rails.ts';
import { RAMP_STEPS, SPEED_STEP } from '../../../engine/motion/stop-inputs.ts';

/** Nodes of speed at which losses are weighed. */
const NODES = 11;
const by = (...groups: readonly ((node: number) => number)[]): Float64Array =>
  Float64Array.from({ length: NODES * groups.length }, (_, i) =>
    groups[i % groups.length](Math.floor(i / groups.length)),
  );
const place = (from: number, to: number, weight: Float64Array, lost = 100): RailPlace => ({
  model: {} as StopModel,
  from: Float64Array.of(from),
  to: Float64Array.of(to),
  weight,
  more: new Float64Array(NODES),
  drier: new Float64Array(1),
  lost,
});
/** Two groups: over the first 4 m behind the head, and from 6 to 10 m; the second comes on later. */
const rails = (places: readonly RailPlace[], changes: Partial<Rails> = {}): Rails => ({
  places,
  front: Float64Array.of(0, 6),
  rear: Float64Array.of(4, 10),
  ramp: Float64Array.from({ length: 2 * RAMP_STEPS }, (_, i) => (i < RAMP_STEPS ? 1 : 0.25)),
  best: -1,
  own: by(
    () => 0.5,
    () => 0.5,
  ),
  ownMore: new Float64Array(NODES),
  ownDrier: new Float64Array(1),
  ownLost: 0,
  felt: 0.5,
  ...changes,
});
const even = by(
  () => 0.75,
  () => 0.25,
);

describe('how much of a train is on other rail', () => {
  it('covers of a length what lies in it, in one piece or several', () => {
    const two = { from: Float64Array.of(0, 20), to: Float64Array.of(10, 30) };
    expect([covered(two, 0, 10), covered(two, 5, 15), covered(two, 11, 19), covered(two, 10, 20)]).toEqual([
      1, 0.5, 0, 0,
    ]);
    expect(covered(two, 5, 25)).toBeCloseTo(0.5, 12);
    expect(covered(two, -10, 40)).toBeCloseTo(0.4, 12);
  });

  it('by what each group loses there: the head 2 m into it has half of the first group on it', () => {
    const wet = place(50, 90, even);
    const all = rails([wet]);
    const share = (s: number): number => shareOn(all, wet, s, 2);
    expect([share(50), share(52), share(54), share(56), share(58), share(60)]).toEqual(
      [0, 0.375, 0.75, 0.75, 0.875, 1].map((v) => expect.closeTo(v, 12)),
    );
    expect([share(94), share(98)].map((v) => Math.round(1000 * v))).toEqual([250, 125]);
    expect(share(101)).toBe(0);
    // What loses nothing is nowhere.
    const none = place(50, 90, new Float64Array(2 * NODES));
    expect(shareOn(all, none, 70, 2)).toBe(0);
  });

  it('weighed at the speed, straight between nodes, at most as at the last', () => {
    const wet = place(
      50,
      90,
      by(
        (node) => node / 10,
        (node) => 1 - node / 10,
      ),
    );
    const share = (v: number): number => shareOn(rails([wet]), wet, 54, v);
    expect(share(0)).toBeCloseTo(0, 12);
    expect(share(3 * SPEED_STEP)).toBeCloseTo(0.3, 9);
    expect(share(3.5 * SPEED_STEP)).toBeCloseTo(0.35, 9);
    expect(share(100)).toBeCloseTo(1, 2);
  });

  it('while the brakes build up, by what has come on', () => {
    const wet = place(50, 90, even);
    // The second has a quarter of its brake: 0.75 against 0.0625.
    expect(shareOn(rails([wet]), wet, 54, 2, 3)).toBeCloseTo(0.75 / 0.8125, 12);
    expect(shareOn(rails([wet]), wet, 54, 2, RAMP_STEPS)).toBeCloseTo(0.75, 12);
  });

  it('of the day’s own rail is what the others leave', () => {
    const all = rails([place(50, 90, even), place(95, 99, even)]);
    expect(shareOnOwn(all, 40, 2)).toBeCloseTo(1, 12);
    expect(shareOnOwn(all, 52, 2)).toBeCloseTo(0.5 * 0.5 + 0.5, 12);
    // First group from 93 to 97: half on it; second from 87 to 91: a quarter left.
    expect(shareOnOwn(all, 97, 2)).toBeCloseTo(0.5 * 0.5 + 0.5 * 0.25, 12);
    expect(shareOnOwn(rails([], { own: new Float64Array(2 * NODES) }), 40, 2)).toBe(0);
  });

  it('is met where any of its wheels come over it on the way', () => {
    const all = rails([place(50, 90, even)]);
    expect([meetsOther(all, 10, 30, 50), meetsOther(all, 10, 30, 50.1)]).toEqual([false, true]);
    expect([meetsOther(all, 10, 100, 120), meetsOther(all, 10, 99.9, 120)]).toEqual([false, true]);
    expect(meetsOther(rails([]), 10, 0, 500)).toBe(false);
  });
});

describe('what a driver eases for it', () => {
  it('the share against what he feels as all of it', () => {
    expect([0, 0.25, 0.5, 0.7].map((share) => easedBy(share, 0.5))).toEqual([0, 0.5, 1, 1]);
  });

  it('more than on the best rail counts the greater of two nodes', () => {
    const more = Float64Array.from({ length: NODES }, (_, i) => (i === 3 ? 7 : i === NODES - 1 ? 5 : 0));
    expect([2, 2.5, 3, 3.9, 4, 9.5, 50].map((v) => moreThere(more, v * SPEED_STEP))).toEqual([
      7, 7, 7, 7, 0, 5, 5,
    ]);
  });

  it('loses by place what is eased of each, never more than on the worst, against what the day’s own rail loses', () => {
    const wet = place(50, 90, even, 100);
    const oil = place(90, 200, even, 300);
    const lost = (s: number, changes: Partial<Rails> = {}): number =>
      lostAt({ rails: rails([wet, oil], changes) } as StopModel, s, 2);
    // A quarter and an eighth of what slides, felt as a half.
    expect(lost(40)).toBe(0);
    expect(lost(52)).toBeCloseTo(100 * 0.75, 9);
    expect(lost(70)).toBeCloseTo(100, 9);
    expect(lost(120)).toBeCloseTo(300, 9);
    // Head 2 m into the oil: of each half and more: all of both, at most the worse.
    expect(lost(92)).toBeCloseTo(Math.min(300, 100 + 300 * 0.75), 9);
    // The first of the places holds most: the day's own loses 50 against it.
    const own = { best: 0, ownLost: 50 };
    expect(lost(40, own)).toBeCloseTo(0, 9);
    expect(lost(70, own)).toBeCloseTo(-50, 9);
    expect(lost(120, own)).toBeCloseTo(250, 9);
    expect(lostAt({ rails: undefined } as StopModel, 70, 2)).toBe(0);
  });
});

describe('what was measured together', () => {
  const together = (id: string): SharedFit => ({ id, factors: [1] }) as SharedFit;
  const quantity = (value: number, half: number, of?: SharedFit) => ({
    value,
    low: value - half,
    high: value + half,
    how: 'measured' as const,
    ...(of ? { fit: of } : {}),
  });
  type Asked = Parameters<typeof fitsOf>;
  const group = (vehicle: number, force: number, changes: object) => ({
    vehicle,
    block: quantity(force, 0),
    deadTime: quantity(1, 0.2),
    buildUp: quantity(2, 0.6),
    ...changes,
  });
  const asked = (
    groups: readonly object[],
    reaction = quantity(1, 0),
    rolling = [quantity(0.01, 0), quantity(0.01, 0)],
  ) =>
    fitsOf(
      {
        vehicles: rolling.map((r, i) => ({ index: 4 + i, vehicle: { resistance: { rolling: r } } })),
      } as unknown as Asked[0],
      groups as unknown as Asked[1],
      reaction,
    );

  it('is nothing where nothing was', () => {
    expect(asked([group(4, 100, {})])).toBeUndefined();
    expect(asked([], quantity(1, 0, together('r')))?.reaction?.id).toBe('r');
    expect(
      asked([], quantity(1, 0), [quantity(0.01, 0), quantity(0.01, 0, together('q'))])?.resistance.map(
        (f) => f?.id,
      ),
    ).toEqual([undefined, 'q']);
  });

  it('of each vehicle its strongest brake; of times each by its force and spread, a build-up by half', () => {
    const found = asked([
      group(4, 100, { block: quantity(100, 1, together('weak')) }),
      group(4, 300, { block: quantity(300, 1, together('strong')) }),
      group(5, 100, { block: quantity(100, 1, together('other')) }),
    ]);
    expect(found?.brake.map((f) => f?.id)).toEqual(['strong', 'other']);
    // Widths 0.4·F and 1.2·F/2 of 500 N in all: 40, 60, 120, 180, 40, 60 of 500.
    expect(found?.timing.map((t) => t.share)).toEqual(
      [0.08, 0.12, 0.24, 0.36, 0.08, 0.12].map((v) => expect.closeTo(v, 12)),
    );
    const known = { deadTime: quantity(1, 0), buildUp: quantity(2, 0), block: quantity(1, 0, together('b')) };
    expect(asked([group(4, 100, known)])?.timing).toEqual([]);
  });

  it('is put in place of what was drawn alone; later and slower is the unsafe side', () => {
    const r = together('r');
    const fits = {
      reaction: r,
      brake: [undefined, r],
      resistance: [r, undefined],
      timing: [
        { share: 0.25, fit: r },
        { share: 0.75, fit: undefined },
      ],
    };
    const scenario = { reaction: 9, timing: 0.4 } as Parameters<StopFits['next']>[0];
    const own = { brake: [7, 7], resistance: [8, 8] } as unknown as Parameters<StopFits['next']>[1];
    new StopFits(fits, 5).next(scenario, own);
    const p = own.brake[1];
    expect(Math.abs(p)).toBeLessThanOrEqual(1);
    expect([own.brake[0], own.resistance[0], own.resistance[1]]).toEqual([7, p, 8]);
    expect(scenario.reaction).toBe(-p);
    expect(scenario.timing).toBeCloseTo(0.25 * -p + 0.75 * 0.4, 12);
    const alone = { reaction: 9, timing: 0.4 } as typeof scenario;
    new StopFits({ reaction: undefined, brake: [], resistance: [], timing: [] }, 5).next(alone, own);
    expect([alone.reaction, alone.timing]).toEqual([9, 0.4]);
  });
});
