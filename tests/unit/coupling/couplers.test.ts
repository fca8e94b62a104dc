/** What is found about couplings: their strength, and their peaks in curves. */

import { describe, expect, it } from 'vitest';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { exact, type Quantity } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBalance } from '../../../engine/questions/balance/ask.ts';
import { askCouplers } from '../../../engine/questions/couplers/ask.ts';
import { cautiousPeaks, passedBy } from '../../../engine/questions/couplers/peaks.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import type { Coupling, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { tellFinding } from '../../../words/finding.ts';
import type { Voice } from '../../../words/voice.ts';
import { car, person } from '../../support/balance.ts';
import { factOf } from '../../support/facts.ts';
import { drawer, randomOuting, randomVehicle } from '../../support/random-outings.ts';

const draw = drawer(8);
const flange = { angle: (70 * Math.PI) / 180, frictionHigh: 0.35 };
const coupling = (strength?: Quantity, height = 0.11): Coupling => ({
  type: 'link',
  height,
  ...(strength ? { strength } : {}),
});
const coupled = (v: Vehicle, strength?: Quantity, height?: number): Vehicle => ({
  ...v,
  flange,
  front: coupling(strength, height),
  rear: coupling(strength, height),
});
const engine: Vehicle = { ...randomVehicle(draw, 'engine', true), centreHeight: exact(0.3) };
const cars = ['a', 'b', 'c'].map((id): Vehicle => {
  const braked = car(draw, { id });
  return { ...braked, brakes: [{ ...engine.brakes[0], kind: 'automatic-vacuum', on: ['0', '1'] }] };
});

/** Found, beside what was taken for what nobody stated. */
const worth = (findings: readonly Finding[]): Finding[] => findings.filter((f) => f.code !== 'assumed');

const straight: Partial<Line> = { curves: [] };
const sharp = (radius: number): Partial<Line> => ({
  curves: [{ from: 80, to: 120, startCurvature: 1 / radius, endCurvature: 1 / radius, gaugeWidening: 0 }],
});

/** Light cars are the first to be pushed out or drawn over. */
const empty = (o: Outing): Outing => ({ ...o, riders: [] });
const shallow = (o: Outing): Outing => ({
  ...o,
  train: {
    ...o.train,
    vehicles: o.train.vehicles.map((v) => ({ ...v, flange: { ...flange, angle: Math.PI / 4 } })),
  },
});

function outing(on: Partial<Line>, strength?: Quantity, height?: number, grade = 0): Outing {
  const base = randomOuting(1, 1);
  const line: Line = {
    ...base.line,
    loop: false,
    length: 200,
    heights: [0, 200].map((at) => ({ at, height: at * grade })),
    twist: 0.002,
    ...on,
  };
  return {
    ...base,
    line,
    train: {
      name: 'test',
      vehicles: [engine, ...cars].map((v) => coupled(v, strength, height)),
      pipeBrokenAfter: [],
      chainsFastened: true,
    },
    riders: cars.flatMap(({ id }) =>
      ['1', '2', '3', '4'].map((seat) => person(`${id}${seat}`, 75, { vehicle: id, seat })),
    ),
    direction: 'forward',
    plannedSpeed: 2,
  };
}

const ask = (o: Outing) => {
  const context = openOuting(o);
  const look = askBalance(context, gridOf(context.line.length)).data;
  return askCouplers(context, prepare(context, 0.5, 0).brakes.groups, look);
};
const of = (findings: readonly Finding[], code: string): Finding[] => findings.filter((f) => f.code === code);

describe('peaks of rough handling', () => {
  const context = openOuting(outing(straight));
  const { groups } = prepare(context, 0.5, 0).brakes;
  const peaks = cautiousPeaks(context, groups);

  it('an engine that brakes alone bunches the train; one that starts stretches it', () => {
    const [start, , runIn] = peaks;
    expect(peaks.map((p) => p.scenario)).toEqual(['start-bunched', 'full-brake', 'run-in']);
    expect(Math.min(...start.pull)).toBeGreaterThan(5 * Math.max(...start.push));
    expect(Math.min(...runIn.push)).toBeGreaterThan(5 * Math.max(...runIn.pull));
  });
  it('are passed by one run in a hundred: of many more runs neither many nor none', () => {
    const many = cautiousPeaks(context, groups, 700);
    let [beyond, all] = [0, 0];
    peaks.forEach(({ pull, push }, i) => {
      many[i].runs.forEach((gap, g) => {
        for (const [told, runs] of [
          [pull[g], gap.pull],
          [push[g], gap.push],
        ] as const) {
          // Forces that hardly ever come, and do not matter.
          if (told < 100) continue;
          all += runs.length;
          beyond += runs.filter((f) => f > told).length;
        }
      });
    });
    expect(beyond / all).toBeLessThan(0.013);
    expect(beyond / all).toBeGreaterThan(0.002);
  });
  it('the tail beyond few values is that of an exponential: 1/100 of it', () => {
    const values = Float64Array.from({ length: 400 }, (_, i) => -Math.log(1 - (i + 0.5) / 400));
    expect(passedBy(values, 0.01) / Math.log(100)).toBeCloseTo(1, 1);
  });
  it('are no less than the steady forces of the same effort', () => {
    const { data } = ask(outing(straight, undefined, undefined, 0.01));
    for (const { pull, steady } of data.gaps) expect(pull.force).toBeGreaterThan(steady);
  });
  it('there are none of one vehicle by itself', () => {
    const alone = outing(straight);
    const o = openOuting({ ...alone, train: { ...alone.train, vehicles: [engine] } });
    expect(cautiousPeaks(o, groups)).toEqual([]);
  });
});

describe('the strength of couplings', () => {
  it('is asked for once, where none is stated', () => {
    const unknown = of(ask(outing(straight)).findings, 'coupler-strength-unknown');
    expect(unknown).toHaveLength(1);
    expect(unknown[0]).toMatchObject({ severity: 'notes', measure: 'coupling.strength' });
  });
  it('that bears all is not spoken of', () => {
    expect(worth(ask(outing(straight, exact(20_000))).findings)).toEqual([]);
  });
  it('below a peak limits, and fewer cars clear it', () => {
    const strong = ask(outing(straight)).data.gaps[2].pull.force;
    // The last gap bears most: light cars are snatched hardest.
    const o = outing(straight, exact(strong * 0.98));
    const found = of(ask(o).findings, 'coupler-overloaded');
    expect(found.length).toBeGreaterThan(0);
    for (const f of found) expect(f).toMatchObject({ severity: 'limits', facts: { way: 'peak' } });
    const answer = answerOuting(o, { counts: false });
    const told = of(answer.findings, 'coupler-overloaded');
    expect(told.flatMap((f) => f.remedies).length).toBeGreaterThan(0);
    for (const { where, remedies } of told) {
      for (const { change } of remedies) {
        const after = of(ask(applyChange(o, change)).findings, 'coupler-overloaded');
        expect(after.map((f) => f.where.vehicle)).not.toContain(where.vehicle);
      }
    }
  });
  it('below the steady pull forbids', () => {
    const o = outing(straight, exact(60), undefined, 0.03);
    expect(of(ask(o).findings, 'coupler-overloaded')[0]).toMatchObject({
      severity: 'forbids',
      facts: { way: 'steady' },
      where: { gap: 0 },
    });
  });
  it('counts the weaker of two, and asks for the other where only one is stated', () => {
    const o = outing(straight, exact(20_000));
    const vehicles = o.train.vehicles.map((v, i) => (i === 1 ? { ...v, front: coupling(exact(100)) } : v));
    const { data } = ask({ ...o, train: { ...o.train, vehicles } });
    expect(data.gaps[0]).toMatchObject({ strength: 100, known: true });
    const one = o.train.vehicles.map((v, i) => (i === 1 ? { ...v, front: coupling() } : v));
    const half = ask({ ...o, train: { ...o.train, vehicles: one } });
    expect(half.data.gaps[0]).toMatchObject({ strength: 20_000, known: false });
    expect(of(half.findings, 'coupler-strength-unknown')[0].where.gap).toBe(0);
  });
});

describe('peaks in curves', () => {
  it('press no flange on straight track', () => {
    expect(ask(outing(straight)).data.curves.every((c) => !c.climb && !c.tip)).toBe(true);
  });
  it('press harder the sharper the curve, until a flange may climb', () => {
    const found = [200, 20, 8].map((radius) => ask(shallow(empty(outing(sharp(radius), exact(20_000))))));
    const used = found.map(({ data }) =>
      Math.max(...data.curves.map(({ climb }) => (climb ? climb.found / climb.limit : 0))),
    );
    expect(used[1]).toBeGreaterThan(used[0]);
    expect(used[2]).toBeGreaterThan(used[1]);
    expect(worth(found[0].findings)).toEqual([]);
    expect(of(found[2].findings, 'flange-may-climb').map((f) => factOf(f, 'way'))).toContain('full-brake');
  });
  it('of a full brake limit, and the answer says so once for a vehicle', () => {
    const o = shallow(empty(outing(sharp(8), exact(20_000))));
    const braked = of(ask(o).findings, 'flange-may-climb').filter((f) => factOf(f, 'way') === 'full-brake');
    expect(braked.length).toBeGreaterThan(0);
    expect(braked.every((f) => f.severity === 'limits')).toBe(true);
    const said = of(answerOuting(o, { counts: false, remedies: false }).findings, 'flange-may-climb');
    expect(new Set(said.map((f) => f.where.vehicle)).size).toBe(said.length);
  });
  it('may turn a car over where its couplings are high', () => {
    const low = ask(empty(outing(sharp(8), exact(20_000), 0.05))).data.curves;
    const high = ask(empty(outing(sharp(8), exact(20_000), 0.6)));
    const least = (curves: typeof low): number => Math.min(...curves.map((c) => c.tip?.share ?? 1));
    expect(least(high.data.curves)).toBeLessThan(least(low));
    expect(of(high.findings, 'coupler-jerk-tips').length).toBeGreaterThan(0);
  });
});

describe('words of couplings', () => {
  const findings = [
    outing(straight),
    outing(straight, exact(500)),
    outing(straight, exact(60), undefined, 0.03),
    empty(outing(sharp(8), exact(20_000), 0.6)),
  ].flatMap((o) => ask(o).findings);

  it('nothing is blank, undefined or a bare code', () => {
    expect(new Set(findings.map((f) => f.code)).size).toBeGreaterThanOrEqual(4);
    for (const system of ['imperial', 'metric'] as const) {
      const voice: Voice = { system, wording: 'us', outing: outing(straight) };
      for (const finding of findings) {
        const { what, why } = tellFinding(finding, voice);
        for (const sentence of [what, why]) {
          expect(sentence).toMatch(/^\S.*[.]$/);
          expect(sentence).not.toMatch(/undefined|NaN|Infinity|not known\b| {2}|\(\)/);
        }
        expect(what).not.toContain(finding.code);
      }
    }
  });
});
