/** What the trade always asks, on both sides of each bound, and the host's own rule in its place. All made up. */

import { describe, expect, it } from 'vitest';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { askPractice } from '../../../engine/questions/practice/ask.ts';
import type { Rider } from '../../../engine/things/train/types.ts';
import { tellFinding } from '../../../words/finding.ts';
import { factOf } from '../../support/facts.ts';
import { altered, party, plain, rider, rule, withHost } from '../../support/rules.ts';

const IN = 0.0254;
const PRACTICE = 'common practice, no source';

/** Nothing but what the test is about: the brake is tried. */
const tried = (outing: Outing): Outing => ({
  ...outing,
  conditions: { ...outing.conditions, brakeTried: true },
});
const says = (outing: Outing): Finding[] => askPractice(openOuting(tried(outing)));
const brief = (findings: readonly Finding[]) => findings.map((f) => `${f.severity} ${f.code}`);
const told = (outing: Outing, finding: Finding): string => {
  const { what, why } = tellFinding(finding, { wording: 'us', system: 'imperial', outing } as never);
  return `${what} ${why}`;
};
const child = (id: string, seat: string, more: Partial<Rider> = {}): Rider =>
  rider(id, seat, { mass: exact(25), ageGroup: 'child', ...more });
const aboard = (...riders: Rider[]): Outing => plain(2, { riders });

describe('an ordinary train', () => {
  it('by day, with grown people, is asked nothing', () =>
    expect(says(plain(3, { riders: party(4) }))).toEqual([]));
});

describe('a child', () => {
  const alone = (age: number | undefined, ...others: Rider[]) =>
    brief(says(aboard(child('a', '1', age === undefined ? {} : { age }), ...others)));

  it.each([
    [2, 'forbids child-alone'],
    [5, 'forbids child-alone'],
    [6.9, 'forbids child-alone'],
    [7, 'limits child-alone'],
    [11.9, 'limits child-alone'],
    [undefined, 'limits child-alone'],
  ])('of %s alone on a car: %s', (age, expected) => expect(alone(age)).toEqual([expected]));

  it('of twelve is none', () => expect(alone(12)).toEqual([]));
  it('rides with an adult, whatever the adult’s duty', () => {
    for (const duty of ['rider', 'guard', 'driver'] as const)
      expect(alone(5, rider('b', '2', { duty }))).toEqual([]);
  });
  it('is not looked after from another car, nor by another child', () => {
    expect(alone(5, rider('b', '2', { vehicle: 'car2' }))).toEqual(['forbids child-alone']);
    expect(alone(5, child('b', '2', { age: 11 }))).toEqual(['forbids child-alone']);
  });
  it('under seven with a youth limits, an older one with a youth rides', () => {
    const youth = rider('b', '2', { ageGroup: 'youth', age: 14 });
    expect(alone(5, youth)).toEqual(['limits child-alone']);
    expect(alone(8, youth)).toEqual([]);
  });
  it('is told with who keeps it company, and no age where none is given', () => {
    const youth = rider('b', '2', { ageGroup: 'youth', age: 14 });
    expect(says(aboard(child('a', '1', { age: 5 }), youth))[0].facts).toMatchObject({ company: 'youth' });
    expect(says(aboard(child('a', '1')))[0].facts).toEqual({ riders: 'rider a', company: 'nobody' });
  });
  it('is one by its group where nobody gave its age, heavy as it may be', () =>
    expect(brief(says(aboard(child('a', '1', { mass: exact(45) }))))).toEqual(['limits child-alone']));
  it('is looked after by eighteen years, whatever a younger one calls itself', () => {
    expect(alone(8, rider('b', '2', { age: 18 }))).toEqual([]);
    expect(alone(5, rider('b', '2', { age: 18 }))).toEqual([]);
    expect(alone(5, rider('b', '2', { age: 17.9 }))).toEqual(['limits child-alone']);
    expect(alone(5, rider('b', '2', { ageGroup: 'youth' }))).toEqual(['limits child-alone']);
  });
  it('is whoever weighs little and whose age nobody gave', () => {
    const light = (kg: number, more = {}) =>
      brief(says(aboard(rider('a', '1', { mass: exact(kg), ...more }))));
    expect(light(30)).toEqual(['limits child-alone']);
    expect(light(31)).toEqual([]);
    expect(light(30, { age: 40 })).toEqual([]);
  });
  it('is one line for the car, with the youngest', () => {
    const outing = aboard(child('a', '1', { age: 9 }), child('b', '2', { age: 6 }));
    const [only, ...none] = says(outing);
    expect(none).toEqual([]);
    expect(only).toMatchObject({
      where: { vehicle: 'car1' },
      facts: { riders: 'rider a, rider b', age: 6, company: 'nobody' },
      source: PRACTICE,
    });
    expect(told(outing, only)).toMatch(/^rider a, rider b \(6 years old\) ride on .* without an adult/);
  });
  it('goes by the host’s rule where there is one', () => {
    const with_ = (value: boolean, ...riders: Rider[]) =>
      says(withHost(2, { childWithAdult: rule(value) }, { riders }));
    expect(with_(false, child('a', '1', { age: 3 }))).toEqual([]);
    const [found] = with_(true, child('a', '1', { age: 11 }));
    expect(found).toMatchObject({ severity: 'forbids', source: 'rule book, p. 3' });
    expect(
      with_(true, child('a', '1', { age: 11 }), rider('b', '2', { ageGroup: 'youth', age: 17 })),
    ).toHaveLength(1);
    expect(with_(true, child('a', '1', { age: 11 }), rider('b', '2'))).toEqual([]);
    expect(with_(true, rider('b', '2', { ageGroup: 'youth', age: 17 }))).toEqual([]);
  });
});

describe('an infant', () => {
  const with_ = (age: number) => brief(says(aboard(child('a', '1', { age }), rider('b', '2'))));
  it.each([0.5, 8 / 12, 1.9])('of %f years with an adult limits', (age) =>
    expect(with_(age)).toEqual(['limits infant-aboard']),
  );
  it('of two is none', () => expect(with_(2)).toEqual([]));
  it('beside another is told with the younger one’s age', () => {
    const two = [child('a', '1', { age: 1.5 }), child('b', '2', { age: 0.5 }), rider('c', '3')];
    expect(says(aboard(...two))[0].facts).toEqual({ riders: 'rider a, rider b', age: 0.5 });
  });
  it('is told in months', () => {
    const outing = aboard(child('a', '1', { age: 8 / 12 }), rider('b', '2'));
    expect(told(outing, says(outing)[0])).toContain('(8 months old)');
  });
  it('is the host’s matter where it says how young a rider may be', () => {
    const riders = [child('a', '1', { age: 0.5 }), rider('b', '2')];
    expect(says(withHost(2, { youngestRider: rule(0) }, { riders }))).toEqual([]);
  });
});

describe('people and seats', () => {
  const many = (n: number): Rider[] => {
    const seated = party(Math.min(n, 4));
    const { seat: _, ...standing } = rider('s', '1');
    return n > 4 ? [...seated, standing] : seated;
  };
  it('four on four seats ride, five do not', () => {
    expect(says(plain(2, { riders: many(4) }))).toEqual([]);
    const [found, ...none] = says(plain(2, { riders: many(5) }));
    expect(none).toEqual([]);
    expect(found).toMatchObject({
      code: 'more-people-than-seats',
      severity: 'forbids',
      where: { vehicle: 'car1' },
      found: { si: 5 },
      required: { si: 4 },
      margin: -0.25,
    });
  });
  it('a vehicle whose file names no seat has no known number', () =>
    expect(says(altered(plain(2, { riders: many(5) }), 1, { seats: [] }))).toEqual([]));

  it('a child on a lap limits, two grown people on one seat do not ride', () => {
    const [lap] = says(aboard(rider('a', '1'), child('b', '1', { age: 4 })));
    expect(lap).toMatchObject({
      code: 'seat-shared',
      severity: 'limits',
      facts: { riders: 'rider b', lap: 'rider a' },
    });
    const named = plain(2).train.vehicles[1].seats.map((s) => ({ ...s, name: `seat ${s.id}` }));
    const [on2] = says(altered(aboard(rider('a', '2'), child('b', '2', { age: 4 })), 1, { seats: named }));
    expect(on2.facts).toMatchObject({ seat: 'seat 2' });
    expect(brief(says(aboard(rider('a', '1'), rider('b', '1'))))).toEqual(['forbids seat-shared']);
    expect(says(aboard(rider('a', '2'), child('b', '1', { age: 4 })))).toEqual([]);
  });
});

describe('couplers', () => {
  const at = (inches: number, more: { type?: string; host?: number } = {}) => {
    const end = (height?: number) => ({
      type: more.type ?? 'knuckle',
      chain: { count: 1, slack: 0.02 },
      ...(height === undefined ? {} : { height }),
    });
    const base = more.host === undefined ? plain(2) : withHost(2, { couplerTolerance: rule(more.host * IN) });
    return altered(altered(base, 1, { rear: end(4 * IN) }), 2, { front: end((4 + inches) * IN) });
  };
  it.each([0, 3 / 16, -3 / 16])('%f in apart couple', (by) => expect(says(at(by))).toEqual([]));
  it.each([1 / 4, -1 / 4, 5 / 8])('%f in apart limit', (by) => {
    const [found] = says(at(by));
    expect(found).toMatchObject({
      code: 'coupler-heights-differ',
      severity: 'limits',
      where: { gap: 1, vehicle: 'car1' },
      sure: 'assumed',
    });
    expect(found.found?.si).toBeCloseTo(Math.abs(by) * IN, 12);
    expect(found.required?.si).toBeCloseTo((3 / 16) * IN, 12);
  });
  it('13/16 in apart one rides over the other; links do not', () => {
    expect(brief(says(at(13 / 16)))).toEqual(['forbids coupler-heights-differ']);
    expect(brief(says(at(13 / 16, { type: 'link and pin' })))).toEqual(['limits coupler-heights-differ']);
  });
  it('are one line for the train, the worst gap named; what rides over is told apart', () => {
    const end = (inches: number) => ({
      type: 'knuckle',
      height: inches * IN,
      chain: { count: 1, slack: 0.02 },
    });
    const train = (...rear: number[]) =>
      rear.reduce(
        (outing, inches, i) => altered(altered(outing, i, { rear: end(inches) }), i + 1, { front: end(4) }),
        plain(4),
      );
    const found = says(train(4.25, 4.5, 4.375, 4));
    expect(found.map((f) => [f.severity, f.where.gap, factOf(f, 'others')])).toEqual([['limits', 1, 2]]);
    expect(told(train(4.25, 4.5, 4.375, 4), found[0])).toContain('2 more: as much or less.');
    const both = says(train(4.25, 5, 4.375, 4));
    expect(both.map((f) => [f.severity, f.where.gap, factOf(f, 'others')])).toEqual([
      ['forbids', 1, 0],
      ['limits', 2, 1],
    ]);
  });
  it('a link at one of both ends is enough', () => {
    const ends = (front: string, rear: string) => {
      const end = (type: string, height: number) => ({ type, height, chain: { count: 1, slack: 0.02 } });
      return altered(altered(plain(2), 1, { rear: end(front, 0.1) }), 2, { front: end(rear, 0.13) });
    };
    const both = ['limits coupler-kinds-differ', 'limits coupler-heights-differ'];
    expect(brief(says(ends('link', 'knuckle')))).toEqual(both);
    expect(brief(says(ends('knuckle', 'link')))).toEqual(both);
    expect(brief(says(ends('knuckle', 'knuckle')))).toEqual(['forbids coupler-heights-differ']);
  });
  it('of two kinds are told apart, and of one kind however it is written are not', () => {
    const end = (type: string) => ({ type, height: 0.1, chain: { count: 1, slack: 0.02 } });
    const ends = (...pairs: readonly (readonly [string, string])[]) =>
      pairs.reduce(
        (outing, [rear, front], i) =>
          altered(altered(outing, i, { rear: end(rear) }), i + 1, { front: end(front) }),
        plain(2),
      );
    expect(says(ends(['knuckle', 'Automatic coupler'], ['three-link', 'drawbar']))).toEqual([]);
    expect(says(ends(['coupler', 'hook'], ['small ball', 'ball']))).toEqual([]);
    const found = says(ends(['knuckle', 'hook'], ['knuckle', 'ball']));
    expect(found).toMatchObject([{ code: 'coupler-kinds-differ', severity: 'limits', where: { gap: 0 } }]);
    expect(told(ends(['knuckle', 'hook'], ['knuckle', 'ball']), found[0])).toMatch(/“knuckle” and “hook”/);
  });
  it('the host’s tolerance stands in its place, on both sides', () => {
    const engine = { rear: { type: 'link', height: 4 * IN, chain: { count: 1, slack: 0.02 } } };
    const whole = (inches: number, host: number) => {
      const outing = altered(at(inches, { host }), 0, engine);
      return altered(outing, 1, { front: { ...engine.rear } });
    };
    expect(says(whole(1 / 2, 1 / 2))).toEqual([]);
    const [found] = says(whole(1 / 8, 1 / 16));
    expect(found).toMatchObject({ severity: 'forbids', source: 'rule book, p. 3', sure: 'stated' });
  });
  const bare = (type: string) => ({ type, chain: { count: 1, slack: 0.02 } });
  it('a height that is not stated is asked for in a note, of one coupler and of both', () => {
    const half = altered(at(1), 2, { front: bare('knuckle') });
    expect(says(half)).toMatchObject([
      {
        code: 'coupler-height-unknown',
        severity: 'notes',
        where: { vehicle: 'car2' },
        measure: 'coupling.height',
      },
    ]);
    const other = altered(at(1), 1, { rear: bare('knuckle') });
    expect(says(other)).toMatchObject([{ code: 'coupler-height-unknown', where: { vehicle: 'car1' } }]);
    const neither = altered(half, 1, { rear: bare('knuckle') });
    expect(brief(says(neither))).toEqual(['notes coupler-height-unknown']);
    expect(told(neither, says(neither)[0])).toContain('couplers of car1, car2 stand');
  });
  it('of links without a height how far they turn is asked, of one with a height here', () => {
    const links = altered(altered(plain(2), 1, { rear: bare('link') }), 2, { front: bare('link') });
    expect(says(links)).toEqual([]);
    expect(brief(says(altered(links, 1, { rear: { ...bare('link'), height: 0.1 } })))).toEqual([
      'notes coupler-height-unknown',
    ]);
  });
  it('where the host has a tolerance it cannot be told without, of links neither', () => {
    const host = withHost(2, { couplerTolerance: rule(IN / 4) });
    for (const type of ['knuckle', 'link'])
      expect(says(altered(altered(host, 1, { rear: bare(type) }), 2, { front: bare(type) }))).toMatchObject([
        {
          code: 'coupler-height-unknown',
          severity: 'unknown',
          required: { si: IN / 4 },
          source: 'rule book, p. 3',
        },
      ]);
  });
  it('a sheet that says how high they stand asks for them itself', () => {
    const knuckles = altered(altered(plain(2), 1, { rear: bare('knuckle') }), 2, { front: bare('knuckle') });
    const standards = { couplerHeight: { least: 0.1, source: 'sheet' } };
    expect(says({ ...knuckles, host: { ...knuckles.host, standards } })).toEqual([]);
    const couplerTolerance = rule(IN / 4);
    expect(says({ ...knuckles, host: { ...knuckles.host, standards, couplerTolerance } })).toEqual([]);
  });
});

describe('chains on a grade', () => {
  const on = (grade: number, chainsFastened: boolean, base = plain(2)): Outing => ({
    ...base,
    train: { ...base.train, chainsFastened },
    line: {
      ...base.line,
      loop: false,
      heights: [
        { at: 0, height: 0 },
        { at: 100, height: 0 },
        { at: 200, height: -100 * grade },
        { at: base.line.length, height: -100 * grade },
      ],
    },
  });
  it.each([0.011, -0.011, 0.03])('a line of %f without chains limits', (grade) => {
    const [found, ...none] = says(on(grade, false));
    expect(none).toEqual([]);
    expect(found).toMatchObject({
      code: 'no-chain-on-grade',
      severity: 'limits',
      where: { gap: 0 },
      facts: { gaps: 2 },
    });
    expect(found.found?.si).toBeCloseTo(Math.abs(grade), 12);
    expect(factOf(found, 'at')).toMatchObject({ si: 100 });
  });
  it('up to 1 %, with chains, or one vehicle alone, nothing is asked', () => {
    expect(says(on(0.01, false))).toEqual([]);
    expect(says(on(0.03, true))).toEqual([]);
    expect(says(on(0.03, false, plain(0)))).toEqual([]);
  });
  it('one end of a gap may have them', () => {
    const bare = { type: 'link' };
    const o = plain(2);
    for (const changed of [
      altered(altered(altered(o, 0, { rear: bare }), 1, { rear: bare }), 2, { rear: bare }),
      altered(altered(o, 1, { front: bare }), 2, { front: bare }),
    ])
      expect(says(on(0.03, true, changed))).toEqual([]);
  });
  it.each([true, false])('a host that says %s has its way', (value) =>
    expect(says(on(0.03, false, withHost(2, { chainsRequired: rule(value) })))).toEqual([]),
  );
});

describe('night', () => {
  const by = (night: boolean, head?: boolean, tail?: boolean, base = plain(2)) => {
    const o = { ...base, conditions: { ...base.conditions, night } };
    const front = head === undefined ? {} : { headlight: head };
    const rear = tail === undefined ? {} : { taillight: tail };
    return says(altered(altered(o, 0, front), 2, rear));
  };
  it('with both lights, or by day, is asked nothing', () => {
    expect(by(true, true, true)).toEqual([]);
    expect(by(false)).toEqual([]);
  });
  it('without a headlight does not run; whether there is one must be known', () => {
    const [without] = by(true, false, true);
    expect(without).toMatchObject({
      severity: 'forbids',
      where: { vehicle: 'engine' },
      facts: { light: 'headlight', known: true },
    });
    expect(without.measure).toBeUndefined();
    expect(by(true, undefined, true)[0].facts).toMatchObject({ known: false });
    expect(by(true, undefined, true)).toMatchObject([{ severity: 'unknown', measure: 'vehicle.headlight' }]);
  });
  it('without a rear marker limits', () => {
    expect(by(true, true, false)).toMatchObject([{ severity: 'limits', where: { vehicle: 'car2' } }]);
    const [unsaid, ...none] = by(true, true);
    expect(none).toEqual([]);
    expect(unsaid).toMatchObject({
      severity: 'limits',
      measure: 'vehicle.taillight',
      facts: { known: false },
    });
  });
  it.each([true, false])('is the host’s matter where it says %s', (value) =>
    expect(by(true, false, false, withHost(2, { lightsAtNight: rule(value) }))).toEqual([]),
  );
});

describe('a brake not tried', () => {
  const when = (brakeTried?: boolean) => {
    const o = plain(2);
    const conditions = { ...o.conditions, ...(brakeTried === undefined ? {} : { brakeTried }) };
    return askPractice(openOuting({ ...o, conditions })).map(
      (f) => `${f.severity} ${f.code} ${factOf(f, 'said')}`,
    );
  };
  it('limits; not said it is a note; tried it is nothing', () => {
    expect(when(false)).toEqual(['limits brake-not-tried true']);
    expect(when()).toEqual(['notes brake-not-tried false']);
    expect(when(true)).toEqual([]);
  });
});

describe('what clears it is tried', () => {
  const remediesOf = (outing: Outing, code: string) => {
    const { findings } = answerOuting(tried(outing), { counts: false, samples: 40, step: 1, couplerRuns: 3 });
    return findings.find((f) => f.code === code)?.remedies ?? [];
  };
  const cleared = (outing: Outing, code: string): number => {
    const remedies = remediesOf(outing, code);
    for (const { change } of remedies)
      expect(brief(says(applyChange(outing, change)))).not.toContain(`forbids ${code}`);
    return remedies.length;
  };

  it('a child alone: an adult comes, or it goes to one', () => {
    const on2 = { vehicle: 'car2' };
    const outing = plain(2, {
      riders: [
        child('a', '1', { age: 5 }),
        rider('b', '1', on2),
        rider('c', '2', on2),
        child('d', '3', { ...on2, age: 4 }),
      ],
    });
    const kinds = remediesOf(outing, 'child-alone').map((r) => r.change.kind);
    expect(kinds.filter((k) => k === 'seat')).toHaveLength(3);
    expect(kinds).toContain('fewer-riders');
    expect(cleared(outing, 'child-alone')).toBe(4);
  });
  it('the only adult beside another child stays with it', () => {
    const on2 = { vehicle: 'car2' };
    const outing = plain(2, {
      riders: [child('a', '1', { age: 5 }), rider('b', '1', on2), child('d', '3', { ...on2, age: 4 })],
    });
    for (const { change } of remediesOf(outing, 'child-alone'))
      expect(brief(says(applyChange(outing, change)))).toEqual([]);
  });
  it('a child on a lap gets a seat, couplers lose a car', () => {
    expect(cleared(aboard(rider('a', '1'), child('b', '1', { age: 4 })), 'seat-shared')).toBe(2);
    const high = { type: 'knuckle', height: 0.14, chain: { count: 1, slack: 0.02 } };
    const low = { ...high, height: 0.11 };
    const odd = altered(altered(plain(2), 1, { rear: high }), 2, { front: low });
    expect(cleared(odd, 'coupler-heights-differ')).toBe(2);
  });
});
