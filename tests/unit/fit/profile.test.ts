/** Sections within a host's profile: figures by hand, sampling as the witness, outlines that are none. All made up. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lookAtFit, lookAtSheet } from '../../../desk/fit.ts';
import {
  type Corner,
  crossesItself,
  depthIn,
  type Polygon,
  roomIn,
  wholeFigure,
} from '../../../engine/base/numerics/polygon.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { outsideProfile } from '../../../engine/questions/standards/profile.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { readHost } from '../../../papers/index.ts';
import { sectionPlot } from '../../../views/fit/section-plot.ts';
import { sectionsTable } from '../../../views/tables/fit.ts';
import { tellFinding } from '../../../words/finding.ts';
import { altered, plain } from '../../support/rules.ts';
import { runs } from '../../support/tier.ts';

const half = (...of: readonly [number, number][]): Polygon => of.map(([x, y]) => ({ x, y }));
/** Wide below, narrow above: like a tunnel. */
const tunnel = half([0, 0.02], [0.3, 0.02], [0.3, 0.5], [0.2, 0.8], [0, 0.8]);
const box = (w: number, h: number, from = 0.03): Polygon => half([0, from], [w, from], [w, h], [0, h]);
const voice = (outing: Outing) => ({ system: 'metric', wording: 'us', outing }) as const;

/** Every vehicle with the same section. */
const sectioned = (changes: Partial<Vehicle>, points = tunnel): Outing => {
  const bare = plain(1);
  const outing = bare.train.vehicles.reduce((o, _, i) => altered(o, i, changes), bare);
  const [{ gauge }] = outing.train.vehicles;
  return { ...outing, host: { ...outing.host, profiles: [{ gauge, points, source: 'drawing 3' }] } };
};
const told = (outing: Outing) => outsideProfile(openOuting(outing));
const said = (outing: Outing): string[] => told(outing).map((f) => `${f.severity} ${f.code}`);

describe('a section within a profile', () => {
  it('has the least distance left, by hand; out of it by how much, and where', () => {
    expect(roomIn(wholeFigure(tunnel), wholeFigure(box(0.25, 0.4))).left).toBeCloseTo(0.01, 12);
    const { left, at } = roomIn(wholeFigure(tunnel), wholeFigure(box(0.25, 0.7)));
    // Top corner (0.25, 0.7) against the slope from (0.3, 0.5) to (0.2, 0.8): (0.05·0.3 − 0.2·0.1)/√0.1 in.
    expect(left).toBeCloseTo(-(0.2 * 0.1 - 0.05 * 0.3) / Math.hypot(0.1, 0.3), 12);
    expect([Math.abs(at.x), at.y]).toEqual([0.25, 0.7]);
  });

  it('is refused where it stands out, and told where', () => {
    expect(said(sectioned({ section: box(0.25, 0.6) }))).toEqual([]);
    const outing = sectioned({ section: box(0.25, 0.7) });
    expect(said(outing)).toEqual(['forbids outside-profile']);
    expect(tellFinding(told(outing)[0], voice(outing)).what).toContain('out of the host’s profile');
    expect(sectionsTable(lookAtFit(outing).sections, voice(outing)).rows[0][1]).toBe('stands out 16 mm');
    expect(sectionPlot(lookAtFit(outing).sections, voice(outing))).toBeDefined();
  });

  it('a ledge of the profile that reaches into it, between its corners, is out by as much', () => {
    // A platform's coping 50 mm inside the wall: of a side 270 mm out it cuts off 20 mm.
    const ledge = half([0, 0], [0.3, 0], [0.3, 0.3], [0.25, 0.35], [0.3, 0.4], [0.3, 0.8], [0, 0.8]);
    expect(said(sectioned({ section: box(0.24, 0.7) }, ledge))).toEqual([]);
    const outing = sectioned({ section: box(0.27, 0.7) }, ledge);
    expect(said(outing)).toEqual(['forbids outside-profile']);
    expect(told(outing)[0].found?.si).toBeCloseTo(0.02, 12);
  });

  it('a spike right through it is out, though neither has a corner in the other', () => {
    const spiked = half([-1, 0], [1, 0], [1, 0.45], [-0.5, 0.5], [1, 0.55], [1, 1], [-1, 1]);
    const mast = half([-0.1, 0.1], [0.1, 0.1], [0.1, 0.9], [-0.1, 0.9]);
    expect(said(sectioned({ section: mast }, spiked))).toEqual(['forbids outside-profile']);
    // At its right side the spike is 40 mm high: its middle lies 20 mm from either edge, aslant.
    expect(roomIn(spiked, mast).left).toBeCloseTo((-0.02 * 1.5) / Math.hypot(1.5, 0.05), 12);
  });

  it('of width and height alone passes within, and is asked for beyond; with nothing, asked for', () => {
    expect(said(sectioned({ envelope: { width: 0.5, height: 0.6, underside: 0.03 } }))).toEqual([]);
    expect(said(sectioned({ envelope: { width: 0.5, height: 0.7, underside: 0.03 } }))).toEqual([
      'unknown outline-not-measured',
    ]);
    expect(said(sectioned({}))).toEqual(['unknown outline-not-measured']);
    expect(sectionPlot(lookAtFit(sectioned({})).sections, voice(sectioned({})))).toBeUndefined();
  });

  it('of the box counts every side; of several the worst is told, with how many more', () => {
    const boxed = (width: number, height: number, underside = 0.03): string[] =>
      said(sectioned({ envelope: { width, height, underside } }));
    expect(boxed(0.6 - 1e-6, 0.5)).toEqual([]);
    expect(boxed(0.6 + 1e-6, 0.5)).toEqual(['unknown outline-not-measured']);
    expect(boxed(0.1, 0.8 + 1e-6)).toEqual(['unknown outline-not-measured']);
    expect(boxed(0.1, 0.5, 0.02 - 1e-6)).toEqual(['unknown outline-not-measured']);
    const outing = altered(sectioned({ section: box(0.25, 0.7) }), 1, { section: box(0.31, 0.4) });
    const [finding] = told(outing);
    expect(finding).toMatchObject({ where: { vehicle: 'engine' }, facts: { others: 1 } });
    expect(finding.found?.si).toBeCloseTo((0.2 * 0.1 - 0.05 * 0.3) / Math.hypot(0.1, 0.3), 9);
    const other = altered(outing, 1, { section: box(0.33, 0.4) });
    expect(told(other)[0]).toMatchObject({
      where: { vehicle: 'car1' },
      found: { si: expect.closeTo(0.03, 9) },
    });
  });

  it('a sheet without a profile of the gauge says nothing of it: cannot tell; without any, nothing is asked', () => {
    const outing = sectioned({ section: box(0.1, 0.3) });
    const [profile] = outing.host.profiles ?? [];
    const other = {
      ...outing,
      host: { ...outing.host, profiles: [{ ...profile, gauge: profile.gauge * 1.03 }] },
    };
    expect(said(other)).toEqual(['unknown no-profile-of-gauge']);
    expect(said({ ...outing, host: { ...outing.host, profiles: [] } })).toEqual([]);
  });

  it('counts in the word of a sheet', () => {
    const wide = sectioned({ section: box(0.25, 0.7) });
    expect(lookAtSheet(wide, wide.host).word).toBe('refused');
    const unknown = sectioned({});
    expect(lookAtSheet(unknown, unknown.host).word).toBe('cannot tell');
    const within = sectioned({ section: box(0.25, 0.6) });
    expect(lookAtSheet(within, within.host).word).toBe('accepted');
  });
});

describe('figures', () => {
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  /** Round about the middle, so that it does not cross itself. */
  const star = fc.array(real(0.2, 1), { minLength: 4, maxLength: 12 }).map(
    (radii): Polygon =>
      radii.map((r, i) => {
        const angle = (2 * Math.PI * i) / radii.length;
        return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
      }),
  );
  /** Points along the edges: what a person with a rule would try. */
  const along = (of: Polygon, n: number): Corner[] =>
    of.flatMap((a, i) => {
      const b = of[(i + 1) % of.length];
      return Array.from({ length: n }, (_, k) => ({
        x: a.x + ((b.x - a.x) * k) / n,
        y: a.y + ((b.y - a.y) * k) / n,
      }));
    });

  it('what is left is what sampling the edges of the inner one finds; growing it never leaves more', () => {
    fc.assert(
      fc.property(star, star, real(0.05, 0.6), real(1, 1.5), (outer, shape, size, more) => {
        const scaled = (by: number): Polygon => shape.map(({ x, y }) => ({ x: x * by, y: y * by }));
        const { left } = roomIn(outer, scaled(size));
        const sampled = Math.min(...along(scaled(size), 60).map((p) => depthIn(outer, p)));
        if (left >= 0) expect(Math.abs(sampled - left)).toBeLessThan(0.02);
        else expect(sampled).toBeLessThan(0.02);
        if (sampled < -1e-9) expect(left).toBeLessThan(0);
        if (left < 0) expect(roomIn(outer, scaled(size * more)).left).toBeLessThan(0);
        // Mirrored, and begun at another corner, it is the same.
        const flip = (of: Polygon): Polygon => of.map(({ x, y }) => ({ x: -x, y }));
        expect(roomIn(flip(outer), flip(scaled(size))).left).toBeCloseTo(left, 9);
        expect(roomIn([...outer.slice(2), ...outer.slice(0, 2)], scaled(size)).left).toBeCloseTo(left, 12);
      }),
      { numRuns: runs(60, 1000) },
    );
  });

  it('that cross themselves are found; a star about its middle does not', () => {
    expect(crossesItself(half([0, 0], [1, 1], [1, 0], [0, 1]))).toEqual([0, 2]);
    fc.assert(
      fc.property(star, (of) => {
        expect(crossesItself(of)).toBeUndefined();
      }),
      { numRuns: runs(30, 300) },
    );
  });

  it('crossing bars have no corner in one another, and are out all the same', () => {
    const bar = (w: number, h: number): Polygon => half([w, h], [-w, h], [-w, -h], [w, -h]);
    expect(roomIn(bar(1, 0.1), bar(0.1, 1)).left).toBeLessThan(0);
  });
});

const hostWith = (more: object) =>
  readHost({
    path: 'host.json',
    content: JSON.stringify({ heedway: 'host', version: 1, name: 'A line', ...more }),
  });

describe('in a paper', () => {
  const host = (points: readonly [string, string][]) =>
    hostWith({
      profiles: [
        {
          gauge: '7-1/4 in',
          source: 'drawing 3',
          points: points.map(([across, height]) => ({ across, height })),
        },
      ],
    });

  it('an outline that crosses itself is refused in words', async () => {
    const read = await host([
      ['0 in', '1 in'],
      ['12 in', '20 in'],
      ['12 in', '1 in'],
      ['0 in', '20 in'],
    ]);
    expect(JSON.stringify(read)).toMatch(
      /profiles\[0\]\.points.*a line from point 1 that crosses.*must not cross itself/,
    );
  });

  it('one side begins and ends in the middle', async () => {
    const read = await host([
      ['0 in', '1 in'],
      ['12 in', '1 in'],
      ['12 in', '20 in'],
    ]);
    expect(JSON.stringify(read)).toMatch(/does not begin and end in the middle/);
    const good = await host([
      ['0 in', '1 in'],
      ['12 in', '1 in'],
      ['0 in', '20 in'],
    ]);
    expect(good.ok && good.value.profiles?.[0].points[1]).toEqual({
      x: expect.closeTo(0.3048, 9),
      y: expect.closeTo(0.0254, 9),
    });
  });
});

it('a sheet whose limits no figure could meet is refused where it is written', async () => {
  const read = (standard: object) =>
    hostWith({ standards: { backToBack: { source: 'sheet 1', ...standard } } });
  expect((await read({ least: '6.8 in', slowBelow: '6.82 in', slowSpeed: '3 mph', most: '6.9 in' })).ok).toBe(
    true,
  );
  expect(JSON.stringify(await read({ least: '6.9 in', most: '6.8 in' }))).toMatch(
    /backToBack\.most.*most under least/,
  );
  expect(JSON.stringify(await read({ slowAbove: '6.9 in', slowSpeed: '3 mph', most: '6.8 in' }))).toMatch(
    /most under slow above/,
  );
});
