/** Couplers over crests and sags: what slips by, holds by little, is asked for, is left alone; and what clears it. */
import { describe, expect, it } from 'vitest';
import { lookAtFit } from '../../../desk/fit.ts';
import { familiesFor } from '../../../engine/answer/families.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange, type Change } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { Coupling } from '../../../engine/things/vehicle/types.ts';
import { crestsTable } from '../../../views/tables/fit.ts';
import { tellChange } from '../../../words/change.ts';
import { tellFinding } from '../../../words/finding.ts';
import { crested, crestsOf, knuckle } from '../../support/crested.ts';
import { factOf } from '../../support/facts.ts';
import { altered, rider } from '../../support/rules.ts';

/** Up and down by a grade, over a top of a length: points a foot or so apart there. */
const hump = (grade: number, top = 0.5) =>
  [0, 20, 40 - top, 40, 40 + top, 60, 80].map((at) => ({
    at,
    height: grade * (40 - Math.max(Math.abs(at - 40), top)),
  }));
const [long, short] = [
  { length: 3.6, overhang: 0.9 },
  { length: 1.2, overhang: 0.2 },
];
const of = (grade: number, on: Coupling = knuckle(0.11), other = on): Outing =>
  crested(hump(grade), [long, short], [on, other]);
const said = (outing: Outing): string[] =>
  crestsOf(outing).findings.map((f) => `${f.severity} ${f.code}${f.measure ? ` ${f.measure}` : ''}`);
const [one] = crestsOf(of(0.1)).data.gaps;
/** What a grade of one would do. */
const per = Math.abs(one.line) / 0.1;
const voice = (outing: Outing) => ({ system: 'metric', wording: 'us', outing }) as const;
const { face: _none, ...faceless } = knuckle(0.11);

describe('couplers over a hump', () => {
  it('hold by less than half a face: within limits; by none: hold', () => {
    // Faces of 30 mm.
    expect(said(of(0.014 / per))).toEqual([]);
    expect(said(of(0.016 / per))).toEqual(['limits couplers-slip-by']);
    expect(said(of(0.029 / per))).toEqual(['limits couplers-slip-by']);
    const outing = of(0.031 / per);
    expect(said(outing)).toEqual(['forbids couplers-slip-by']);
    const [finding] = crestsOf(outing).findings;
    expect(finding).toMatchObject({ found: { si: 0 }, required: { si: 0.015 }, margin: -1 });
    const [half] = crestsOf(of(0.024 / per)).findings;
    // Of 15 mm that must hold 6 do.
    expect(half.found?.si).toBeCloseTo(0.006, 4);
    expect(half.margin).toBeCloseTo(-0.6, 2);
    expect(finding.where.gap).toBe(0);
    expect(Math.abs((finding.where.from ?? 0) - 40)).toBeLessThan(3);
    expect(tellFinding(finding, voice(outing)).what).toMatch(/slip by each other over the crest at/);
  });

  it('count the heights as stated, on the side where they add', () => {
    const higher = one.apart > 0 ? [0.115, 0.11] : [0.11, 0.115];
    const grade = 0.027 / per;
    expect(said(of(grade, knuckle(higher[0]), knuckle(higher[1])))).toEqual(['forbids couplers-slip-by']);
    // As they stand in the yard, they are told elsewhere.
    expect(said(of(0, knuckle(0.11), knuckle(0.145)))).toEqual([]);
  });

  it('sink on springs under people, by the softest that they may be', () => {
    const seats = [
      { id: '1', name: '1', at: 0.1, across: 0, height: 0.3, facing: 'forward', driver: false },
    ] as const;
    const sprung = (low: number, riders = [rider('1', '1')]) =>
      altered({ ...of(0), riders }, 1, {
        seats,
        suspension: { equalised: true, wheelStiffness: { ...exact(100_000), low } },
      });
    // 70 kg over the end: 686.5 N·(0.8 + 0.2·…)… moment about the trucks, two wheels an axle.
    const [near, far] = [(686.46 * 0.9) / 0.8, (-686.46 * 0.1) / 0.8].map((n) => n / 2);
    const sink = (k: number) => (near + (near - far) * (0.2 / 0.8)) / k;
    const [gap] = crestsOf(sprung(40_000)).data.gaps;
    expect(gap.springs).toBeCloseTo(sink(40_000), 5);
    expect(said(sprung(20_000))).toEqual(['limits couplers-slip-by']);
    expect(said(sprung(20_000, []))).toEqual([]);
  });

  it('are left alone where a link or bar joins them', () => {
    expect(said(of(0.5, knuckle(0.11, { type: 'link and pin' })))).toEqual([]);
  });

  it('by few points of a survey: nobody can tell', () => {
    const sharp = [0, 40, 80].map((at) => ({ at, height: (0.08 / per) * -Math.abs(at - 40) }));
    const outing = crested(sharp, [long, short]);
    expect(said(outing)).toEqual(['unknown couplers-slip-by line.profile']);
    expect(tellFinding(crestsOf(outing).findings[0], voice(outing)).why).toContain('few points');
  });
});

describe('faces and heights that nobody stated', () => {
  // Half of a usual knuckle on this gauge.
  const half = 0.09734513274336283 * of(0).line.gauge;
  it('are asked for only where usual ones might slip by', () => {
    expect(said(of((0.95 * half) / per, faceless))).toEqual([]);
    expect(said(of((1.4 * half) / per, faceless))).toEqual(['limits coupler-face-unknown coupling.face']);
    expect(said(of((2.05 * half) / per, faceless))).toEqual(['unknown coupler-face-unknown coupling.face']);
  });

  it('by how much, of half a usual knuckle', () => {
    const [finding] = crestsOf(of((1.5 * half) / per, faceless)).findings;
    expect(finding.found?.si).toBeCloseTo(1.5 * half, 4);
    expect(finding.margin).toBeCloseTo(-0.5, 2);
  });

  it('heights: never told less than the worst that the trade couples', () => {
    const { height: _h, ...bare } = knuckle(0.11);
    const { face: _f, ...nothing } = bare;
    const trade = (3 / 16) * 0.0254;
    for (const [on, all] of [
      [nothing, 2 * half],
      [bare, 0.03],
    ] as const) {
      const at = (out: number) => said(of((out - trade) / per, on));
      expect(at(0.48 * all)).toEqual([]);
      expect(at(0.7 * all)).toEqual(['limits coupler-face-unknown coupling.height']);
      expect(at(0.98 * all)).toEqual(['limits coupler-face-unknown coupling.height']);
      expect(at(1.02 * all)).toEqual(['unknown coupler-face-unknown coupling.height']);
    }
    const ranks = ['', 'notes', 'limits', 'unknown', 'forbids'];
    const rank = (outing: Outing) => ranks.indexOf(said(outing)[0]?.split(' ')[0] ?? '');
    for (let halves = 0.1; halves < 1.9; halves += 0.1)
      for (const differ of [-trade, 0, trade])
        for (const on of [{}, { face: 0.03 }])
          expect(
            Math.min(
              3,
              rank(
                of(
                  (halves * half) / per,
                  { ...faceless, ...on },
                  { ...faceless, ...on, height: 0.11 + differ },
                ),
              ),
            ),
            `${halves} ${differ}`,
          ).toBeLessThanOrEqual(rank(of((halves * half) / per, { type: 'knuckle', ...on })));
  });

  it('are told by the faces where these are known', () => {
    const { height: _h, ...bare } = knuckle(0.11);
    const outing = of(0.012 / per, bare);
    const [finding] = crestsOf(outing).findings;
    expect(finding.found?.si).toBeCloseTo(0.012 + (3 / 16) * 0.0254, 4);
    expect(finding.required?.si).toBeCloseTo(0.015, 9);
    const { what, why } = tellFinding(finding, voice(outing));
    expect(what).toMatch(/less than half of their faces, 30 mm high/);
    expect(why).toContain('heights that nobody stated may differ by');
  });
});

describe('a kink that the survey’s spacing alone makes', () => {
  const half = 0.09734513274336283 * of(0).line.gauge;
  const kink = (spacing: number, grade: number): Outing =>
    crested(
      [0, 60 - spacing, 60, 60 + spacing, 120].map((at) => ({ at, height: -grade * Math.abs(at - 60) })),
      [long, short],
      [faceless, faceless],
    );
  const gap = (spacing: number, grade: number) => crestsOf(kink(spacing, grade)).data.gaps[0];
  const outOf = ({ apart, tilt }: { apart: number; tilt: number }) => Math.abs(apart) + tilt;
  /** Grade that puts them so many halves of a usual knuckle out of line, bent at one point. */
  const one = outOf(gap(30, 0.1)) / 0.1;
  const by = (halves: number) => (halves * half) / one;

  it('is a note; so sharp that all of a knuckle would miss, within limits; bent evenly too: as any other', () => {
    expect(said(kink(30, by(0.95)))).toEqual([]);
    expect(said(kink(30, by(1.05)))).toEqual(['notes coupler-face-unknown line.profile']);
    expect(said(kink(30, by(2.05)))).toEqual(['limits coupler-face-unknown line.profile']);
    expect(said(kink(0.2, by(1.5)))).toEqual(['limits coupler-face-unknown coupling.face']);
    expect(said(kink(0.2, by(2.5)))).toEqual(['unknown coupler-face-unknown coupling.face']);
    const outing = kink(30, by(1.05));
    const { what, why } = tellFinding(crestsOf(outing).findings[0], voice(outing));
    expect(what).toContain('bent evenly between the points');
    expect(why).toContain('Level points a car’s length apart there');
    expect(why).not.toContain('Before anybody gets on');
  });

  it('lies bent evenly where two circles put it', () => {
    // Both stand on one curve of radius 2·T/|g₂ − g₁|, T half the way to the next point.
    const grade = by(2.05);
    const radius = (2 * 15) / (2 * grade);
    const off = ({ length, overhang }: { length: number; overhang: number }) =>
      ((length / 2) ** 2 - (length / 2 - overhang) ** 2) / (2 * radius);
    expect(gap(30, grade).gentle).toBeGreaterThan(Math.abs(off(long) - off(short)));
    // At the end of the curve the one that has left it adds nothing of its own.
    expect(gap(30, grade).gentle).toBeLessThan(off(long) + off(short));
  });

  it('grows without a leap as points lie nearer or the grade changes more, and its word by one step at a time', () => {
    const ranks = ['', 'notes', 'limits', 'unknown'];
    const rank = (spacing: number, grade: number) =>
      ranks.indexOf(said(kink(spacing, grade))[0]?.split(' ')[0] ?? '');
    for (const halves of [1.2, 1.8, 2.3]) {
      let before = { rank: rank(30, by(halves)), gentle: gap(30, by(halves)).gentle };
      for (let spacing = 30; spacing > 0.2; spacing /= 1.07) {
        const now = { rank: rank(spacing, by(halves)), gentle: gap(spacing, by(halves)).gentle };
        expect(Math.abs(now.gentle - before.gentle)).toBeLessThan(0.1 * half);
        expect(now.rank - before.rank).toBeOneOf([0, 1]);
        before = now;
      }
    }
    for (const spacing of [0.3, 2, 30]) {
      let before = 0;
      for (let halves = 0.9; halves < 3; halves += 0.03) {
        const now = rank(spacing, by(halves));
        expect(now - before, `${spacing} ${halves}`).toBeOneOf([0, 1]);
        before = now;
      }
    }
  });
});

describe('people', () => {
  const seats = [
    { id: '1', name: '1', at: 0.1, across: 0, height: 0.3, facing: 'forward', driver: false },
  ] as const;
  const sprung = (k: number) => ({ seats, suspension: { equalised: true, wheelStiffness: exact(k) } });
  const aboard = (k: number, riders = [rider('1', '1')], high = 0.11): Outing =>
    altered({ ...of(0, knuckle(0.11), knuckle(high)), riders }, 1, sprung(k));

  it('empty counts beside as seated: a coupler set high for people rides over when nobody sits', () => {
    const k = 20_000;
    // It sinks by some 20 mm under one person: set as much higher, it stands level then.
    const sink = crestsOf(aboard(k)).data.gaps[0].springs;
    const [gap] = crestsOf(aboard(k, undefined, 0.11 + sink)).data.gaps;
    expect(gap.people).toBe('empty');
    expect(gap.under?.seated).toBeCloseTo(0.03, 9);
    expect(gap.under?.empty).toBeCloseTo(0.03 - sink, 9);
    expect(gap.hold?.held).toBe(gap.under?.empty);
  });

  it('what holds as people sit and would not with a seat taken is a note', () => {
    const outing = aboard(12_000, []);
    const one = { ...rider('1', '1'), vehicle: 'engine' };
    expect(said({ ...outing, riders: [one] })).toEqual(['notes couplers-slip-by']);
    const [finding] = crestsOf({ ...outing, riders: [one] }).findings;
    expect(factOf(finding, 'people')).toBe('any');
    expect(tellFinding(finding, voice(outing)).what).toContain('with a full car beside an empty one');
    // With nobody to go by there is nothing to load a seat with.
    expect(said(outing)).toEqual([]);
  });

  it('on springs that nobody measured, little hold is asked after', () => {
    const bare = (high: number, riders = [rider('1', '1')]): Outing =>
      altered({ ...of(0.002 / per, knuckle(0.11), knuckle(high)), riders }, 1, { seats });
    const sign = Math.sign(one.apart);
    // 49 CFR 231.31 by gauge: 3/56.5 of the gauge.
    const sink = (3 / 56.5) * bare(0.11).line.gauge;
    const lower = (held: number): number => 0.11 - sign * (0.03 - 0.002 - held);
    expect(said(bare(lower(sink - 5e-4)))).toContain(
      'limits coupler-sink-unknown vehicle.suspension.wheelStiffness',
    );
    expect(said(bare(lower(sink + 5e-4)))).not.toContain(
      'limits coupler-sink-unknown vehicle.suspension.wheelStiffness',
    );
    expect(said(bare(lower(sink - 5e-4), [])).join()).not.toContain('sink');
  });
});

describe('what clears it', () => {
  it('ballast on the springs of the one that stands too high', () => {
    const high = one.apart > 0 ? 0 : 1;
    const outing = altered(of(0.031 / per), high, {
      role: 'car',
      suspension: { equalised: true, wheelStiffness: exact(30_000) },
    });
    const [finding] = crestsOf(outing).findings as Finding[];
    const ballast = familiesFor(outing, finding)
      .flatMap(({ changes }) => changes)
      [Symbol.iterator]();
    const held = (change?: Change): number =>
      crestsOf(change ? applyChange(outing, change) : outing).data.gaps[0].under?.empty ?? Number.NaN;
    const heavy = [...ballast].filter((c) => c.kind === 'ballast').at(-1);
    expect(heavy).toMatchObject({ kind: 'ballast', vehicle: outing.train.vehicles[high].id });
    expect(held(heavy)).toBeGreaterThan(held());
  });

  it('a shim of the least that does, at either of the two; another order; a car left', () => {
    const outing = of(0.031 / per, knuckle(0.11), knuckle(one.apart > 0 ? 0.105 : 0.115));
    const [finding] = crestsOf(outing).findings as Finding[];
    const clears = (change: Change): boolean =>
      !crestsOf(applyChange(outing, change)).findings.some((f) => f.severity === 'forbids');
    const found = familiesFor(outing, finding).flatMap(({ changes }) => changes.find(clears) ?? []);
    const shims = found.filter((c) => c.kind === 'coupler-raised');
    expect(shims.map((c) => Math.abs(c.by))).toEqual([expect.closeTo(0.007, 9), expect.closeTo(0.007, 9)]);
    expect(found.some((c) => c.kind === 'fewer-cars')).toBe(true);
    expect(found.some((c) => c.kind === 'slower-everywhere')).toBe(false);
    expect(tellChange(shims[0], voice(outing))).toMatch(
      /^shim the rear coupler of engine 7\.00 mm (lower|higher)$/,
    );
  });
});

it('the table has a row for every gap, with where and what is held', () => {
  const outing = of(0.016 / per);
  const [row] = crestsTable(lookAtFit(outing), voice(outing)).rows;
  expect(row.slice(0, 3)).toEqual(['engine', 'car1', '46 %']);
  expect(row[5]).toBe('0 mm');
  expect(row[4]).toMatch(/^crest at \d+ m$/);
  expect(row.slice(9)).toEqual(['14 mm', '14 mm', '14 mm']);
  expect(factOf(crestsOf(outing).findings[0], 'others')).toBe(0);
});

describe('several gaps', () => {
  const grade = 0.02 / per;
  const three = (on: readonly Coupling[]): Outing => crested(hump(grade), [long, short, long], on);
  const told = (outing: Outing) =>
    crestsOf(outing).findings.map((f) => [f.code, f.severity, f.where.gap, factOf(f, 'others')]);

  it('are one line of each weight, of the gap that holds least, with how many others', () => {
    const same = three([knuckle(0.11), knuckle(0.11), knuckle(0.11)]);
    const [line] = told(same);
    expect(line.slice(0, 2)).toEqual(['couplers-slip-by', 'limits']);
    expect(line[3]).toBe(1);
    const { gaps } = crestsOf(same).data;
    // The last coupler so set that its gap holds less than the other, and still some.
    const way = Math.sign(gaps[1].apart);
    const worse = three([knuckle(0.11), knuckle(0.11), knuckle(0.11 - way * 0.003)]);
    expect(told(worse)).toEqual([['couplers-slip-by', 'limits', 1, 1]]);
    // Far more: that one forbids, and the other is a line of its own.
    const by = three([knuckle(0.11), knuckle(0.11), knuckle(0.11 - way * 0.02)]);
    expect(told(by)).toEqual([
      ['couplers-slip-by', 'forbids', 1, 0],
      ['couplers-slip-by', 'limits', 0, 0],
    ]);
  });

  it('of which nobody stated a face are asked for in one line, by the one farthest out', () => {
    const usual = 0.09734513274336283 * of(0).line.gauge;
    const steep = (low = 0): Outing =>
      crested(
        hump((1.4 * usual) / per),
        [long, short, long],
        [faceless, faceless, { ...faceless, height: 0.11 - low }],
      );
    const way = Math.sign(crestsOf(steep()).data.gaps[1].apart);
    expect(told(steep())[0][3]).toBe(1);
    expect(told(steep(way * 0.002))).toEqual([['coupler-face-unknown', 'limits', 1, 1]]);
    expect(told(steep(-way * 0.002))).toEqual([['coupler-face-unknown', 'limits', 0, 1]]);
  });
});

it('whether it fits says too of what kind couplers are, how high they stand and how far they swing', () => {
  const { height: _h, ...bare } = knuckle(0.11);
  const codes = (outing: Outing) => lookAtFit(outing).findings.map((f) => f.code);
  expect(codes(of(0))).not.toContain('coupler-height-unknown');
  expect(codes(of(0, bare))).toContain('coupler-height-unknown');
  expect(codes(of(0, knuckle(0.11), knuckle(0.12)))).toContain('coupler-heights-differ');
  expect(codes(of(0, knuckle(0.11), knuckle(0.11, { type: 'hook' })))).toContain('coupler-kinds-differ');
  const curve = { from: 10, to: 60, startCurvature: 0.1, endCurvature: 0.1, gaugeWidening: 0 };
  const level = of(0, knuckle(0.11, { shank: 0.1, swing: exact(0.02) }));
  expect(codes({ ...level, line: { ...level.line, curves: [curve] } })).toContain('coupler-swing-short');
});
