/**
 * A brake that does not hold the fall forbids whatever the sight, sight that nobody has stated is assumed and
 * asked for, and the counts know both. On made-up planes, so that every figure has a closed form.
 */

import { describe, expect, it } from 'vitest';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { countCars } from '../../../engine/answer/counts.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { HeightKnot, Line, Place } from '../../../engine/things/line/types.ts';
import { factOf } from '../../support/facts.ts';
import { randomOuting } from '../../support/random-outings.ts';

const G = 9.80665;
const LENGTH = 600;

/** Grades by where they end, m. */
function heightsOf(grades: readonly (readonly [to: number, grade: number])[]): HeightKnot[] {
  const heights: HeightKnot[] = [{ at: 0, height: 0 }];
  for (const [to, grade] of grades) {
    const { at, height } = heights[heights.length - 1];
    heights.push({ at: to, height: height + grade * (to - at) });
  }
  return heights;
}

interface Set {
  readonly grades: readonly (readonly [to: number, grade: number])[];
  /** Brake of the whole train and rolling resistance ÷ weight, exactly. */
  readonly brake: number;
  readonly cars?: number;
  readonly line?: Partial<Line>;
  readonly outing?: Partial<Outing>;
}

const rolling = 0.005;

/** One engine with all the brake and cars without any, on a straight line, everything exact. */
function laid({ grades, brake, cars = 2, line = {}, outing = {} }: Set): Outing {
  const base = randomOuting(5, cars);
  const vehicles = base.train.vehicles.map((v, i) => ({
    ...v,
    tare: exact(i === 0 ? 400 : 100),
    rotatingShare: exact(0),
    resistance: { rolling: exact(rolling), perSpeed: exact(0), perSpeedSquared: 0 },
    brakes: [] as typeof v.brakes,
  }));
  const weight = (400 + 100 * cars) * G;
  vehicles[0].brakes = [
    {
      id: 'brake',
      name: 'brake',
      kind: 'engine-only',
      on: ['a', 'b'],
      workedBy: 'driver',
      parking: true,
      force: exact(brake * weight),
      // Composition: what was pulled at a stand holds at speed.
      hand: { leverRatio: 1, efficiency: exact(1), block: 'composition' },
      deadTime: exact(0.2),
      buildUp: exact(0.5),
    },
  ];
  const { gradeSpread, badSpot } = base.assumed;
  const assumed = {
    ...base.assumed,
    gradeSpread: { ...gradeSpread, [base.line.heightQuality]: exact(0) },
    badSpot: { ...badSpot, length: exact(0) },
  };
  return {
    ...base,
    assumed,
    line: {
      ...base.line,
      loop: false,
      length: grades[grades.length - 1][0],
      curves: [],
      heights: heightsOf(grades),
      sights: [{ from: 0, to: LENGTH, distance: 5000, direction: 'both' }],
      ...line,
    },
    train: { ...base.train, vehicles },
    riders: [],
    direction: 'forward',
    host: { name: 'made up', speed: { value: 2.5, source: 'a test' } },
    conditions: { ...base.conditions, reaction: exact(1) },
    ...outing,
  };
}

const bank = (grade: number) =>
  [
    [200, 0],
    [300, grade],
    [LENGTH, 0.02],
  ] as const;

const find = ({ findings }: Answer, code: string): Finding | undefined =>
  findings.find((f) => f.code === code);

describe('a brake that does not hold the fall', () => {
  it('forbids although the train comes to a stand in the hollow and sees for miles', () => {
    const answer = answerOnly(laid({ grades: bank(-0.04), brake: 0.03 }));
    const finding = find(answer, 'brake-does-not-hold-fall');
    expect(finding?.severity).toBe('forbids');
    expect(answer.verdict).toBe('hold');
    expect(factOf(finding, 'ratio')).toMatchObject({ si: expect.closeTo(0.035, 6) });
    expect(factOf(finding, 'grade')).toMatchObject({ si: expect.closeTo(0.04, 6) });
    // From where a stop runs onto the bank, to where the train hangs in the hollow with less than all of its weight.
    expect(finding!.where.from!).toBeLessThan(202);
    expect(finding!.where.to!).toBeGreaterThan(295);
    expect(finding!.where.to!).toBeLessThan(306);
  });

  it('a brake that holds it, if slowly, is none', () => {
    const answer = answerOnly(laid({ grades: bank(-0.04), brake: 0.04 }));
    expect(find(answer, 'brake-does-not-hold-fall')).toBeUndefined();
    expect(find(answer, 'cannot-stop')).toBeUndefined();
  });

  it('a pitch shorter than the train counts with its mean under the train', () => {
    const pitch = [
      [200, 0],
      [202, -0.06],
      [LENGTH, 0],
    ] as const;
    expect(
      find(answerOnly(laid({ grades: pitch, brake: 0.04 })), 'brake-does-not-hold-fall'),
    ).toBeUndefined();
    const longer = [
      [200, 0],
      [230, -0.06],
      [LENGTH, 0],
    ] as const;
    expect(find(answerOnly(laid({ grades: longer, brake: 0.04 })), 'brake-does-not-hold-fall')).toBeDefined();
  });

  it('is unknown where a brake of unknown force may hold it', () => {
    const outing = laid({ grades: bank(-0.04), brake: 0.03 });
    const { force: _force, ...noForce } = outing.train.vehicles[0].brakes[0];
    const vehicles = outing.train.vehicles.map((v, i) =>
      i === 1 ? { ...v, brakes: [{ ...noForce, kind: 'automatic-vacuum' as const }] } : v,
    );
    const answer = answerOnly({ ...outing, train: { ...outing.train, vehicles } });
    expect(find(answer, 'brake-does-not-hold-fall')?.severity).toBe('unknown');
  });

  it('is cleared by fewer cars, really tried', () => {
    const outing = laid({ grades: bank(-0.04), brake: 0.03, cars: 5 });
    const answer = answerOuting(outing, { counts: false });
    const remedies = find(answer, 'brake-does-not-hold-fall')!.remedies;
    expect(remedies.map((r) => r.change.kind)).toContain('fewer-cars');
  });

  it('ends the count of cars that can be stopped, sight or none', () => {
    // 0.03 of 900 kg is a force of 27 kg, and 27/m + 0.005 ≥ 0.04 up to m = 771 kg: engine and three cars.
    const dry = countCars(inquire(laid({ grades: bank(-0.04), brake: 0.03, cars: 5 }), { samples: 0 }), [
      'dry',
    ])[0];
    expect(dry.stopped).toBe(3);
    expect(dry.unlimited).not.toContain('stopped');
  });
});

describe('sight that nobody has stated', () => {
  const slow = [
    [300, 0],
    [500, -0.03],
    [LENGTH, 0],
  ] as const;
  const unsighted = { sights: [] };

  it('is assumed, and nobody can tell where the stop is longer', () => {
    // No car, so that nothing can part from the engine and forbid by itself.
    const answer = answerOnly(laid({ grades: slow, brake: 0.034, line: unsighted, cars: 0 }));
    const finding = find(answer, 'sight-unknown');
    expect(finding?.severity).toBe('unknown');
    expect(finding?.measure).toBe('line.sights');
    expect(answer.verdict).toBe('unknown');
    expect(finding!.found!.si).toBeLessThan(finding!.required!.si);
    // And no higher speed is permitted than what stops within it.
    const { at, limit } = answer.speeds!;
    expect(limit[at.findIndex((s) => s > 400)]).toBeLessThan(2.4);
  });

  it('is the lesser question where the train stops within it', () => {
    const answer = answerOnly(laid({ grades: slow, brake: 0.12, line: unsighted }));
    expect(find(answer, 'sight-unknown')?.severity).toBe('notes');
  });

  it('counts no more cars than stop within it', () => {
    const seen = countCars(inquire(laid({ grades: slow, brake: 0.12 }), { samples: 0 }), ['dry'])[0];
    const unseen = countCars(inquire(laid({ grades: slow, brake: 0.12, line: unsighted }), { samples: 0 }), [
      'dry',
    ])[0];
    expect(unseen.stopped!).toBeLessThan(seen.stopped!);
  });

  const signal = (sight?: number): Place => ({
    id: 'points',
    name: 'Points',
    kind: 'switch',
    at: 450,
    stop: false,
    ...(sight === undefined ? {} : { sight }),
  });
  const at = (line: Partial<Line>) => answerOnly(laid({ grades: slow, brake: 0.034, line }));

  it('of a switch is assumed and asked for where other sights are stated', () => {
    const elsewhere = [{ from: 10, to: 20, distance: 500, direction: 'both' as const }];
    const finding = find(at({ places: [signal()], sights: elsewhere }), 'sight-unknown');
    expect(finding?.severity).toBe('unknown');
    expect(finding?.measure).toBe('line.places.points.sight');
    expect(find(at({ places: [signal(400)], sights: elsewhere }), 'sight-unknown')).toBeUndefined();
  });

  it('of a switch is the sight stated over it', () => {
    const over = [{ from: 400, to: 500, distance: 500, direction: 'both' as const }];
    expect(find(at({ places: [signal()], sights: over }), 'sight-unknown')).toBeUndefined();
    // Stated for the other direction alone it says nothing.
    const back = [{ from: 400, to: 500, distance: 500, direction: 'reverse' as const }];
    expect(find(at({ places: [signal()], sights: back }), 'sight-unknown')?.measure).toBe('line.sights');
  });
});

describe('a speed slower than anybody drives', () => {
  const SLOW_WALK = 2 * 0.44704;
  const level = [[LENGTH, 0]] as const;
  const seeing = (distance: number, more: Partial<Set> = {}) =>
    laid({
      grades: level,
      brake: 0.04,
      line: { sights: [{ from: 200, to: 400, distance, direction: 'both' }] },
      ...more,
    });
  const least = ({ speeds }: Answer): number => {
    const { at, limit } = speeds!;
    return limit.reduce((low, v, j) => (at[j] > 210 && at[j] < 390 ? Math.min(low, v) : low), Infinity);
  };

  it('is no permission: less sight than a slow walk needs forbids, a little more limits', () => {
    const told = { forbids: 0, limits: 0 };
    let before = 0;
    for (let distance = 3; distance <= 16; distance += 0.5) {
      const answer = answerOnly(seeing(distance));
      const v = least(answer);
      expect(v).toBeGreaterThanOrEqual(before - 1e-9);
      before = v;
      if (v < 0.1 * 0.44704) continue;
      const finding = find(answer, 'too-slow-to-drive');
      expect(finding !== undefined, `${distance} m of sight permit ${v} m/s`).toBe(v < SLOW_WALK);
      if (!finding) {
        told.limits++;
        continue;
      }
      told.forbids++;
      expect(answer.verdict).toBe('hold');
      expect(finding.found!.si).toBeCloseTo(v, 9);
      expect(finding.where.from!).toBeGreaterThan(195);
      expect(finding.where.to!).toBeLessThan(410);
    }
    expect(Math.min(told.forbids, told.limits)).toBeGreaterThan(3);
  });

  it('is none where a plan is as slow: a plan does not say how slowly one can drive', () => {
    const answer = answerOnly(seeing(7, { outing: { plannedSpeed: 0.2 } }));
    expect(least(answer)).toBeLessThan(SLOW_WALK);
    expect(find(answer, 'too-slow-to-drive')?.severity).toBe('forbids');
  });

  it("is the host's own business where the host rules it, and where the line ends", () => {
    const ruled = seeing(500, { outing: { host: { name: 'h', speed: { value: 0.5, source: 'a test' } } } });
    expect(find(answerOnly(ruled), 'too-slow-to-drive')).toBeUndefined();
    expect(find(answerOnly(seeing(500)), 'too-slow-to-drive')).toBeUndefined();
  });

  it('ends the count of cars that are stopped', () => {
    const [seen, plan] = [{}, { plannedSpeed: 0.2 }].map((outing) => {
      const inquiry = inquire(seeing(7.5, { outing, cars: 4 }), { samples: 0 });
      return countCars(inquiry)[0];
    });
    // A plan of 0.2 m/s stops within 7.5 m with any number; what is permitted is no more for that.
    expect(plan.least).toBe(seen.least);
    // The same brake, whatever it has to stop.
    const brake = (cars: number): number => (0.04 * 800) / (400 + 100 * cars);
    const forbids = (cars: number) =>
      find(
        answerOnly(seeing(7.5, { cars, brake: brake(cars), outing: { plannedSpeed: 0.2 } })),
        'too-slow-to-drive',
      );
    expect(forbids(plan.least!)).toBeUndefined();
    expect(forbids(plan.least! + 1)?.severity).toBe('forbids');
  });

  it('is not cleared by running slower', () => {
    const answer = answerOuting(seeing(6), { counts: false });
    const finding = find(answer, 'too-slow-to-drive')!;
    expect(finding.remedies.map(({ change }) => change.kind)).not.toContain('slower-everywhere');
  });
});

describe('speeds that nobody has stated', () => {
  const level = [[LENGTH, 0]] as const;
  const most = (outing: Partial<Outing>, line: Partial<Line> = {}): number =>
    answerOnly(laid({ grades: level, brake: 0.15, outing, line })).speeds!.limit.reduce((a, b) =>
      Math.max(a, b),
    );
  const silent = { host: { name: 'says nothing' } };
  const fast = 7;

  it('are looked at no higher than the assumed one', () => {
    expect(most(silent)).toBeCloseTo(randomOuting(1).assumed.unstatedSpeed, 6);
  });
  it('unless host, line or plan states one', () => {
    expect(most({ host: { name: 'h', speed: { value: fast, source: 'a test' } } })).toBeCloseTo(fast, 6);
    expect(most({ ...silent, plannedSpeed: fast })).toBeCloseTo(fast, 6);
    const limit = { from: 100, to: 400, speed: fast, why: 'straight', source: 'a test' };
    expect(most(silent, { speedLimits: [limit] })).toBeCloseTo(fast, 6);
  });
});

describe('the cautious scenario', () => {
  const { conditions } = randomOuting(5);
  const late = (grade: number, brake: number) => {
    const outing = { ...laid({ grades: [[LENGTH, grade]], brake }), conditions };
    return Math.min(
      ...prepare(openOuting(outing), 0.5, 200)
        .caution('dry')
        .map((s) => s.reaction),
    );
  };
  it('asks no less of a line whose falls end no stop', () => {
    expect(late(-0.05, 0.02)).toBeLessThan(-0.5);
    expect(late(-0.05, 0.02)).toBeCloseTo(late(-0.02, 0.02), 1);
  });
});
