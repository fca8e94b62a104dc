/** Bars and links over crests and sags: what strikes, has little left, is asked for, is left alone; and what clears it. */
import { describe, expect, it } from 'vitest';
import { lookAtFit } from '../../../desk/fit.ts';
import { familiesFor } from '../../../engine/answer/families.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askPitch } from '../../../engine/questions/pitch/ask.ts';
import { pitchOnCurve } from '../../../engine/things/coupler/pitch.ts';
import type { Coupling } from '../../../engine/things/vehicle/types.ts';
import { pitchTable } from '../../../views/tables/fit.ts';
import { tellFinding } from '../../../words/finding.ts';
import { crested } from '../../support/crested.ts';
import { altered, rider } from '../../support/rules.ts';

const DEGREE = Math.PI / 180;
const bar = (height: number, gives?: number, changes: Partial<Coupling> = {}): Coupling => ({
  type: 'bar',
  height,
  shank: 0.15,
  ...(gives === undefined ? {} : { pitch: exact(gives * DEGREE) }),
  ...changes,
});
const shape = { length: 2, overhang: 0.4 };
const OWN = { truckCentres: 1.2, overhang: 0.4, shank: 0.15 };
/** A crest of a radius (a sag: below nothing), points every five centimetres; or level. */
const round = (radius: number, half = 10) =>
  Array.from({ length: 401 }, (_, i) => {
    const off = Math.abs(i * 0.05 - 10);
    const near = Math.min(half, off);
    return { at: i * 0.05, height: -(near * (2 * off - near)) / (2 * radius) };
  });
const level = [0, 10, 20].map((at) => ({ at, height: 0 }));
const of = (heights: typeof level, a: Coupling, b = a): Outing => crested(heights, [shape, shape], [a, b]);
const asked = (outing: Outing) => askPitch(openOuting(outing));
const said = (outing: Outing): string[] =>
  asked(outing)
    .findings.filter((f) => f.severity !== 'assumed')
    .map((f) => `${f.severity} ${f.code}${f.measure ? ` ${f.measure}` : ''}`);
const voice = (outing: Outing) => ({ system: 'metric', wording: 'us', outing }) as const;

describe('how far a bar turns', () => {
  it('on one crest and in one sag: by half the length over the radius, either end, the other way', () => {
    for (const [radius, way, lie] of [
      [600, 'down', 'crest'],
      [-600, 'up', 'sag'],
    ] as const) {
      const { ends } = asked(of(round(radius), bar(0.15))).data;
      expect(ends.map((e) => [e.end, e.way, e.lie])).toEqual([
        ['rear', way, lie],
        ['front', way, lie],
      ]);
      for (const e of ends) expect(e.needed).toBeCloseTo(1 / 600, 5);
      expect(pitchOnCurve(radius, OWN, OWN, 0)).toBeCloseTo(1 / radius, 12);
    }
  });

  it('by heights alone on even track: up from the lower, down from the higher, as steep as the bar is short', () => {
    const { ends } = asked(of(level, bar(0.15), bar(0.18))).data;
    expect(ends.map((e) => [e.way, e.lie])).toEqual([
      ['up', 'level'],
      ['down', 'level'],
    ]);
    for (const e of ends) expect(e.needed).toBeCloseTo(Math.asin(0.1), 9);
  });

  it('heights and a crest add at the higher end and take off at the lower', () => {
    const outing = of(round(600), bar(0.15), bar(0.153));
    const [rear, front] = asked(outing).data.ends;
    expect(front.needed).toBeCloseTo(1 / 600 + 0.01, 4);
    expect(front.needed).toBeCloseTo(pitchOnCurve(600, OWN, OWN, 0.003), 4);
    expect(rear.way).toBe('up');
    expect(rear.needed).toBeCloseTo(0.01 - 1 / 600, 4);
  });

  it('most where one stands on the crest and the other before it: its pin hangs off the rail as well', () => {
    const [end] = asked(of(round(60, 2.5), bar(0.15))).data.ends;
    const pin = (0.4 * 1.6 - 2 * 0.15) / 120;
    // Two guides of one on the crest and all of the other before it; partly on it, a little more.
    expect(end.needed).toBeGreaterThan(1 / 60 + pin / 0.3);
    expect(end.needed).toBeLessThan(1.03 * (1 / 60 + pin / 0.3));
  });

  it('springs under people over one end tip its frame and lower its pin', () => {
    const seats = [
      { id: '1', name: '1', at: 0.1, across: 0, height: 0.3, facing: 'forward', driver: false },
    ] as const;
    const sprung = altered({ ...of(level, bar(0.15)), riders: [rider('1', '1')] }, 1, {
      seats,
      suspension: { equalised: true, wheelStiffness: exact(40_000) },
    });
    const [rear, front] = asked(sprung).data.ends;
    const load = 686.46 / 2 / 40_000;
    const [near, far] = [(load * 1.5) / 1.2, (-load * 0.3) / 1.2];
    const sink = near + ((near - far) / 1.2) * 0.25;
    expect(rear.way).toBe('down');
    expect(rear.needed).toBeCloseTo(Math.asin(sink / 0.3), 5);
    expect(rear.people).toBe('seated');
    expect(front.needed).toBeCloseTo(Math.asin(sink / 0.3) + Math.atan((near - far) / 1.2), 4);
    expect(rear.springs).toBeCloseTo(rear.needed, 9);
  });

  it('empty counts as well as seated: people over the higher end bring it down', () => {
    const seats = [
      { id: '1', name: '1', at: 0.1, across: 0, height: 0.3, facing: 'forward', driver: false },
    ] as const;
    const higher = { ...of(level, bar(0.15), bar(0.165)), riders: [rider('1', '1')] };
    const sprung = altered(higher, 1, {
      seats,
      suspension: { equalised: true, wheelStiffness: exact(40_000) },
    });
    const [rear] = asked(sprung).data.ends;
    expect(rear).toMatchObject({ people: 'empty', way: 'up' });
    expect(rear.needed).toBeCloseTo(Math.asin(0.05), 9);
  });

  it('cant that runs off sets one pin above the other where both hang aside in a curve', () => {
    const outing = of(level, bar(0.15));
    const cants = [0, 9, 10, 20].map((at, i) => ({ at, cant: i < 2 ? 0 : 0.03 }));
    const curves = [{ from: 0, to: 20, startCurvature: 0.1, endCurvature: 0.1, gaugeWidening: 0 }];
    const turned = (line: Partial<Outing['line']>) =>
      asked({ ...outing, line: { ...outing.line, ...line } }).data.ends[0];
    expect(turned({ cants }).cant).toBe(0);
    const both = turned({ cants, curves });
    expect(both.cant).toBeGreaterThan(0.001);
    // Level and of one height: all that it turns.
    expect(both.needed).toBeCloseTo(both.cant, 9);
    expect(turned({ curves }).cant).toBe(0);
  });

  it('knuckles are held by their faces and left alone', () => {
    expect(
      asked(of(level, bar(0.15, 1, { type: 'knuckle' }), bar(0.2, 1, { type: 'knuckle' }))).data.ends,
    ).toEqual([]);
  });
});

describe('what is said of it', () => {
  const steep = (gives?: number, changes: Partial<Coupling> = {}) =>
    of(level, bar(0.15, gives, changes), bar(0.165, gives, changes));

  it('beyond what is stated: hold; within a tenth of it: a note; well within: nothing', () => {
    // 15 mm on 300: 2.87°.
    expect(said(steep(2.8))).toEqual(['forbids coupler-pitch-short']);
    expect(said(steep(2.9))).toEqual(['notes coupler-pitch-short']);
    expect(said(steep(3.3))).toEqual([]);
    // Measured between two and four degrees: the less counts.
    expect(said(steep(4, { pitch: { ...exact(4 * DEGREE), low: 2 * DEGREE } }))).toEqual([
      'forbids coupler-pitch-short',
    ]);
    const [finding] = asked(steep(2)).findings;
    expect(finding.found?.si).toBeCloseTo(Math.asin(0.05), 9);
    expect(finding.required?.si).toBeCloseTo(2 * DEGREE, 9);
    expect(finding.margin).toBeCloseTo(1 - Math.asin(0.05) / (2 * DEGREE), 9);
    const told = tellFinding(finding, voice(steep(2)));
    expect(told.what).toMatch(
      /^The bar at the rear of .* must turn 2\.9° up toward .* on even track, .*; it strikes at 2\.0°/,
    );
    expect(told.why).toMatch(/the heights of the two 2\.9°; 300 mm from pin to pin/);
  });

  it('by few points of a survey: nobody can tell', () => {
    const sharp = [0, 10, 20].map((at) => ({ at, height: -0.04 * Math.abs(at - 10) }));
    expect(said(of(sharp, bar(0.15, 1)))).toEqual(['unknown coupler-pitch-short line.profile']);
  });

  it('not stated: nothing below what the stiffest usual one gives, then limits, then cannot tell', () => {
    const apart = (degrees: number) => of(level, bar(0.15), bar(0.15 + 0.3 * Math.sin(degrees * DEGREE)));
    expect(said(apart(2.9))).toEqual([]);
    expect(said(apart(3.1))).toEqual(['limits coupler-pitch-unknown coupling.pitch']);
    expect(said(apart(9.9))).toEqual(['limits coupler-pitch-unknown coupling.pitch']);
    expect(said(apart(10.1))).toEqual(['unknown coupler-pitch-unknown coupling.pitch']);
    expect(asked(apart(2.9)).findings).toMatchObject([{ code: 'assumed', facts: { key: 'coupler/pitch' } }]);
    expect(tellFinding(asked(apart(5)).findings[0], voice(apart(5))).why).toContain(
      'push the two slowly over it',
    );
  });

  describe('where the survey has the track bend at one point', () => {
    /** A crest of one point, the next so far to either side; beyond them straight. */
    const kink = (spacing: number, turn: number) =>
      [-60, -spacing, 0, spacing, 60].map((x) => ({ at: 60 + x, height: (-turn / 2) * Math.abs(x) }));
    const end = (spacing: number, turn: number) => asked(of(kink(spacing, turn), bar(0.15))).data.ends[0];
    const word = (spacing: number, turn: number) =>
      said(of(kink(spacing, turn), bar(0.15))).map((s) => s.split(' ')[0])[0] ?? '';

    it('by its spacing alone is asked for; what strikes bent evenly too limits', () => {
      // 7 % between points 20 m apart: sharp it turns a bar 7°, on a curve of 20/0.07 = 286 m half a degree.
      expect(said(of(kink(20, 0.07), bar(0.15)))).toEqual(['notes coupler-pitch-unknown line.profile']);
      expect(said(of(kink(1, 0.07), bar(0.15)))).toEqual(['limits coupler-pitch-unknown coupling.pitch']);
      expect(said(of(round(12), bar(0.15)))).toEqual(['limits coupler-pitch-unknown coupling.pitch']);
      const outing = of(kink(20, 0.07), bar(0.15));
      const told = tellFinding(asked(outing).findings[0], voice(outing));
      expect(told.what).toMatch(
        /if the track bends at one point as surveyed; bent evenly between the points, 0\.\d°/,
      );
      expect(told.why).toContain('Level points a car’s length apart there');
    });

    it('is a line of its own: one levelling settles it, and not what is to be measured at the train', () => {
      const base = of(kink(20, 0.07), bar(0.15));
      const { height: _, ...bare } = bar(0.15);
      const { vehicles } = base.train;
      // Behind two bars of like heights one of which no height is stated, far from any bend of the track but by half a knuckle.
      const third = {
        ...vehicles[1],
        id: 'third',
        name: 'third',
        front: { ...bare, shank: 0.4 } as Coupling,
      };
      const second = { ...vehicles[1], rear: { ...bar(0.15), shank: 0.4 } };
      const three = { ...base, train: { ...base.train, vehicles: [vehicles[0], second, third] } };
      expect(said({ ...three, line: { ...three.line, heights: kink(20, 0.03) } })).toEqual([
        'notes coupler-pitch-unknown coupling.height',
        'notes coupler-pitch-unknown line.profile',
      ]);
    });

    it('so sharp that a loose link would strike: never less than limits', () => {
      expect(word(20, 0.25)).toBe('limits');
      expect(word(1.2, 0.3)).toBe('unknown');
    });

    it('evenly is by hand: half the length over the radius, and the pin of one that stands before it', () => {
      const radius = 20 / 0.07;
      const pin = (0.4 * 1.6 - 2 * 0.15) / (2 * radius);
      const { gentle, needed } = end(20, 0.07);
      expect(gentle).toBeGreaterThan(1 / radius + pin / 0.3);
      expect(gentle).toBeLessThan(1.05 * (1 / radius + pin / 0.3) + 0.001);
      expect(needed).toBeGreaterThan(10 * gentle);
    });

    it('nearer points or a greater bend never turn it less, and a little of either a little', () => {
      let before = end(40, 0.08).gentle;
      const words = new Set<string>();
      for (let spacing = 40; spacing > 0.2; spacing /= 1.05) {
        const { gentle, needed } = end(spacing, 0.08);
        expect(gentle, `${spacing}`).toBeGreaterThan(before - 0.002);
        expect(Math.abs(gentle - before), `${spacing}`).toBeLessThan(0.006);
        expect(gentle).toBeLessThanOrEqual(needed);
        words.add(word(spacing, 0.08));
        before = gentle;
      }
      expect([...words]).toEqual(['notes', 'limits']);
      // So near that they are one point.
      const one = end(0.01, 0.08);
      expect(one.gentle).toBeCloseTo(one.needed, 3);
      before = end(3, 0.055).gentle;
      const grades = new Set<string>();
      for (let turn = 0.055; turn < 0.6; turn *= 1.03) {
        const { gentle } = end(3, turn);
        expect(gentle, `${turn}`).toBeGreaterThan(before - 0.002);
        expect(gentle - before, `${turn}`).toBeLessThan(0.01);
        grades.add(word(3, turn));
        before = gentle;
      }
      expect([...grades]).toEqual(['notes', 'limits', 'unknown']);
    });

    it('of a round by its first point too: wherever the round begins', () => {
      const corners = [0, 0.5, 0.3, 0.1, 0.05];
      const at = (first: number) => {
        const heights = [...corners.slice(first), ...corners.slice(0, first)];
        const all = [...heights, heights[0]].map((height, i) => ({ at: i * 10, height }));
        const outing = of(all, bar(0.15));
        return asked({ ...outing, line: { ...outing.line, loop: true, length: 50 } }).data.ends.map(
          (e) => e.gentle,
        );
      };
      // The sharpest is the second point, then the first of the round.
      const [a, b] = [at(0), at(1)];
      expect(a[0]).toBeLessThan(asked(of(kink(10, 0.07), bar(0.15))).data.ends[0].needed / 4);
      b.forEach((g, i) => {
        expect(g).toBeCloseTo(a[i], 9);
      });
    });
  });

  it('heights not stated: a note where they could matter, limits beside a stated angle, cannot tell beyond it', () => {
    const { height: _, ...bare } = bar(0.15);
    expect(said(of(level, bare as Coupling))).toEqual(['notes coupler-pitch-unknown coupling.height']);
    const stated = { ...bare, pitch: exact(2 * DEGREE) } as Coupling;
    expect(said(of(level, stated))).toEqual(['limits coupler-pitch-unknown coupling.height']);
    expect(said(of(level, { ...stated, pitch: exact(0.6) }))).toEqual([]);
    expect(said(of(round(20), stated))).toEqual(['unknown coupler-pitch-unknown coupling.height']);
  });

  it('a bar not measured is taken as short; people on springs not measured may sink', () => {
    const { shank: _, ...short } = bar(0.15, 4);
    const { shank: _s, ...other } = bar(0.165, 4);
    expect(said(of(level, short as Coupling, other as Coupling))).toEqual([
      'unknown coupler-pitch-unknown coupling.shank',
    ]);
    const seats = [
      { id: '1', name: '1', at: 0.5, across: 0, height: 0.3, facing: 'forward', driver: false },
    ] as const;
    const sat = altered({ ...steep(3.3), riders: [rider('1', '1')] }, 1, { seats });
    expect(said(sat)).toEqual(['limits coupler-pitch-unknown vehicle.suspension.wheelStiffness']);
  });

  it('a shim under either, a longer bar, another order or a car left behind: tried, and the first two clear it', () => {
    const outing = steep(2);
    const [finding] = asked(outing).findings;
    const families = familiesFor(outing, finding);
    const clears = families.map(({ changes }) =>
      changes.findIndex((c) => !said(applyChange(outing, c)).some((s) => s.startsWith('forbids'))),
    );
    // 5 mm of 15 suffice: 10 mm on 300 are 1.9°.
    expect(clears.slice(0, 2)).toEqual([4, 4]);
    expect(families[0].changes[0]).toMatchObject({ kind: 'coupler-raised', end: 'rear', by: 0.001 });
    expect(families[1].changes[0]).toMatchObject({ kind: 'coupler-raised', end: 'front', by: -0.001 });
    expect(families[2].changes[clears[2]]).toMatchObject({ kind: 'longer-coupling', gap: 0 });
    expect(clears[2]).toBeGreaterThanOrEqual(0);
    expect(families.at(-1)?.changes[0].kind).toBe('fewer-cars');
  });

  it('stands in the table of fit, end by end', () => {
    const outing = steep(2);
    const { rows } = pitchTable(lookAtFit(outing), voice(outing));
    expect(rows.map((r) => [r[3], r[4], r[2]])).toEqual([
      ['2.9° up', '2.0°', 'none'],
      ['2.9° down', '2.0°', 'none'],
    ]);
    expect(lookAtFit(outing).findings.map((f) => f.code)).toContain('coupler-pitch-short');
  });
});
