/** Who works a train: declared, old enough, somebody beside, somebody who looks out, signals agreed, and who could. */
import { describe, expect, it } from 'vitest';
import { askPlace } from '../../../desk/ask-place.ts';
import { verdictOf } from '../../../engine/answer/verdict.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import { askCrew } from '../../../engine/questions/crew/ask.ts';
import { crewRemedies } from '../../../engine/questions/crew/remedies.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { CrewMember } from '../../../engine/things/duty.ts';
import type { Rider } from '../../../engine/things/train/types.ts';
import { tellChange } from '../../../words/change.ts';
import { describedAt } from '../../../words/field.ts';
import { rider, rule, withHost } from '../../support/rules.ts';

const listed = (id: string, more: Partial<CrewMember> = {}): CrewMember => ({
  id,
  name: `rider ${id}`,
  mass: exact(80),
  ...more,
});
const engine = withHost(2, {}).train.vehicles[0].id;
const driver = (more: Partial<Rider> = {}): Rider =>
  rider('d', '1', { duty: 'driver', vehicle: engine, ...more });
const outing = (
  rules: Partial<HostRules>,
  crew: readonly CrewMember[],
  riders: readonly Rider[] = [driver()],
): Outing => withHost(2, rules, { riders, crew });
const codes = (of: Outing): string[] => askCrew(of).map(({ code, severity }) => `${severity} ${code}`);

describe('yes or no', () => {
  it.each([
    ['soberDeclared', 'sober'],
    ['fitDeclared', 'fit'],
  ] as const)('%s: yes is enough, no holds, silence cannot be told', (name, says) => {
    const rules = { [name]: rule(true) };
    expect(codes(outing(rules, [listed('d', { [says]: true })]))).toEqual([]);
    expect(codes(outing(rules, [listed('d', { [says]: false })]))).toEqual(['forbids not-fit-to-work']);
    expect(codes(outing(rules, [listed('d')]))).toEqual(['unknown not-declared']);
    expect(codes(outing(rules, []))).toEqual(['unknown not-declared']);
    expect(codes(outing({ [name]: rule(false) }, []))).toEqual([]);
  });
  it('is asked of everybody who works the train, and of nobody who rides', () => {
    const riders = [driver(), rider('g', '2', { duty: 'guard' }), rider('r', '3')];
    const crew = [listed('l', { looksOutAt: 'the crossing' }), listed('by')];
    expect(askCrew(outing({ fitDeclared: rule(true) }, crew, riders)).map(({ measure }) => measure)).toEqual([
      'outing.crew.d.fit',
      'outing.crew.g.fit',
      'outing.crew.l.fit',
    ]);
  });
});

describe('age', () => {
  it.each([
    ['youngestDriver', 'driver'],
    ['youngestGuard', 'guard'],
  ] as const)('%s: that age will do, a day less will not, unsaid cannot be told', (name, duty) => {
    const of = (age?: number) =>
      codes(outing({ [name]: rule(16) }, [], [driver({ duty, ...(age === undefined ? {} : { age }) })]));
    expect([of(16), of(15.99), of()]).toEqual([
      [],
      ['forbids crew-too-young'],
      ['unknown crew-age-not-said'],
    ]);
  });
  it('of a lookout who does not ride stands with the crew', () => {
    const of = (age?: number) =>
      codes(
        outing({ youngestLookout: rule(14) }, [
          listed('l', { looksOutAt: 'x', ...(age === undefined ? {} : { age }) }),
        ]),
      );
    expect([of(14), of(13), of()]).toEqual([[], ['forbids crew-too-young'], ['unknown crew-age-not-said']]);
  });
  it('the rider’s own counts before the list’s', () =>
    expect(
      codes(outing({ youngestDriver: rule(16) }, [listed('d', { age: 40 })], [driver({ age: 12 })])),
    ).toEqual(['forbids crew-too-young']));
});

describe('a young driver', () => {
  const rules = { drivesAlone: rule(18) };
  const with_ = (...riders: Rider[]) => codes(outing(rules, [], [driver({ age: 16 }), ...riders]));
  it('drives with a grown person within reach, and not alone', () => {
    expect(with_()).toEqual(['forbids nobody-beside']);
    expect(with_(rider('b', '2', { vehicle: engine, age: 18 }))).toEqual([]);
    expect(with_(rider('b', '2', { vehicle: engine, age: 17 }))).toEqual(['forbids nobody-beside']);
    expect(with_(rider('b', '2', { vehicle: engine, mass: exact(25) }))).toEqual(['forbids nobody-beside']);
    expect(with_(rider('b', '2', { age: 40 }))).toEqual(['forbids nobody-beside']);
  });
  it('has somebody of the host’s age beside, not of any age that is grown', () => {
    const of = (age: number) =>
      codes(
        outing(
          { drivesAlone: rule(21) },
          [],
          [driver({ age: 20 }), rider('b', '2', { vehicle: engine, age })],
        ),
      );
    expect([of(20), of(21)]).toEqual([['forbids nobody-beside'], []]);
  });
  it('of that age drives alone, and one of no age said cannot be told', () => {
    expect(codes(outing(rules, [], [driver({ age: 18 })]))).toEqual([]);
    expect(codes(outing(rules, []))).toEqual(['unknown crew-age-not-said']);
  });
});

describe('lookouts and signals', () => {
  const lookouts = [
    { at: 'the crossing', source: 'book, 7' },
    { at: 'the front car', source: 'book, 8' },
  ];
  it('every post has somebody, or nobody can tell', () => {
    const both = [listed('a', { looksOutAt: 'the crossing' }), listed('b', { looksOutAt: 'the front car' })];
    expect(codes(outing({ lookouts }, both))).toEqual([]);
    const [lacks] = askCrew(outing({ lookouts }, both.slice(0, 1)));
    expect(lacks).toMatchObject({
      code: 'no-lookout',
      severity: 'unknown',
      facts: { posts: 'the front car' },
    });
  });
  it('where a guard rides, how they signal is said by the host or for the day', () => {
    const rules = { guardSignals: rule(true) };
    const riders = [driver(), rider('g', '2', { duty: 'guard' })];
    expect(codes(outing(rules, [], riders))).toEqual(['unknown signals-not-said']);
    expect(codes(outing(rules, []))).toEqual([]);
    expect(codes({ ...outing(rules, [], riders), signals: 'bell' })).toEqual([]);
    const signals = [{ signal: 'one bell', means: 'stop' }];
    expect(codes(outing({ ...rules, signals }, [], riders))).toEqual([]);
    expect(codes(outing({ guardSignals: rule(false) }, [], riders))).toEqual([]);
  });
});

it('what is asked of anybody has words for it, and its place', () => {
  const rules = {
    fitDeclared: rule(true),
    soberDeclared: rule(true),
    mostOnDuty: rule(1),
    youngestLookout: rule(14),
  };
  const more = { mostInDay: rule(1), mostInWeek: rule(1), mostDays: rule(1), leastRest: rule(1) };
  const last = { mostWithoutBreak: rule(1), restAfterFullTurn: rule(1), mostDriving: rule(1) };
  const of = outing({ ...rules, ...more, ...last }, [listed('l', { looksOutAt: 'x' })]);
  const asked = askCrew(of).flatMap(({ measure }) => measure ?? []);
  expect(new Set(asked).size).toBeGreaterThan(18);
  for (const path of asked) {
    expect(describedAt(path)?.asked, path).toBeDefined();
    const place = askPlace({ crew: [{ name: 'Other' }, { name: 'L' }] }, path, {});
    expect(place, path).toEqual(path.includes('.l.') ? ['crew', 1, ...path.split('.').slice(3)] : ['crew']);
  }
});

describe('who could', () => {
  const rules = { mostOnDuty: rule(3600), fitDeclared: rule(true) };
  const fresh = (id: string, more: Partial<CrewMember> = {}) =>
    listed(id, { hours: { onDuty: 1800 }, fit: true, ...more });
  const tired = fresh('d', { hours: { onDuty: 7200 } });
  const remedies = (of: Outing) => {
    const [finding] = askCrew(of).filter(({ severity }) => severity === 'forbids' || severity === 'unknown');
    const families = crewRemedies[finding.code]?.(of, finding as Finding) ?? [];
    return families.flatMap(({ changes }) => changes);
  };
  it('is whoever is listed, free and in order; nobody who is tired too, or at work already', () => {
    const guard = rider('g', '2', { duty: 'guard' });
    const of = outing(
      rules,
      [
        tired,
        fresh('g'),
        fresh('also', { hours: { onDuty: 7200 } }),
        fresh('ill', { fit: false }),
        fresh('ok'),
      ],
      [driver(), guard],
    );
    const found = remedies(of);
    expect(found).toEqual([{ kind: 'relieve', rider: 'd', by: 'ok' }]);
    const after = applyChange(of, found[0]);
    expect(verdictOf(askCrew(after))).toBe('go');
    expect(after.riders.find(({ duty }) => duty === 'driver')).toMatchObject({
      id: 'ok',
      vehicle: engine,
      seat: '1',
    });
    expect(after.riders.some(({ id }) => id === 'd')).toBe(false);
    expect(tellChange(found[0], { system: 'metric', wording: 'us', outing: of })).toBe(
      'let rider ok drive in place of rider d',
    );
  });
  it('one who rides already changes seats, and weighs what he or she weighs', () => {
    const of = outing(
      rules,
      [tired, fresh('r')],
      [driver({ mass: exact(90) }), rider('r', '3', { mass: exact(60) })],
    );
    const after = applyChange(of, remedies(of)[0]);
    expect(after.riders.map(({ id, seat, duty, mass }) => [id, seat, duty, mass.value])).toEqual([
      ['r', '1', 'driver', 60],
      ['d', '3', 'rider', 90],
    ]);
  });
  it('a new driver has not tried this engine’s brake; a new guard changes nothing of that', () => {
    const tried = { ...outing(rules, [tired, fresh('ok')]).conditions, brakeTried: true };
    const of = { ...outing(rules, [tired, fresh('ok')]), conditions: tried };
    expect(applyChange(of, remedies(of)[0]).conditions.brakeTried).toBeUndefined();
    const guarded = { ...of, riders: [driver({ duty: 'guard' })] };
    expect(applyChange(guarded, remedies(guarded)[0]).conditions.brakeTried).toBe(true);
  });
  it('a post that nobody looks out at is given to whoever is free', () => {
    const of = outing({ lookouts: [{ at: 'x', source: 's' }] }, [listed('l')]);
    const [change] = remedies(of);
    expect(change).toEqual({ kind: 'look-out', at: 'x', by: 'l' });
    expect(askCrew(applyChange(of, change))).toEqual([]);
  });
  it('a lookout is relieved at the post', () => {
    const of = outing(rules, [fresh('d'), fresh('l', { looksOutAt: 'x', fit: false }), fresh('ok')]);
    const after = applyChange(of, remedies(of)[0]);
    expect(after.crew?.map(({ id, looksOutAt }) => [id, looksOutAt])).toEqual([
      ['d', undefined],
      ['l', undefined],
      ['ok', 'x'],
    ]);
  });
});

describe('who is posted', () => {
  const lookouts = ['the crossing', 'the bridge'].map((at) => ({ at, source: 's' }));
  const posted = (crew: readonly CrewMember[]) => {
    const of = outing({ lookouts }, crew);
    const [lacks] = askCrew(of).filter(({ code }) => code === 'no-lookout');
    return crewRemedies['no-lookout']?.(of, lacks as never);
  };
  it('one for each post, as many as are free', () => {
    expect(posted([listed('a'), listed('b'), listed('c')])).toEqual([
      {
        size: 2,
        changes: [
          {
            kind: 'together',
            changes: [
              { kind: 'look-out', at: 'the crossing', by: 'a' },
              { kind: 'look-out', at: 'the bridge', by: 'b' },
            ],
          },
        ],
      },
    ]);
    expect(posted([listed('d'), listed('a', { looksOutAt: 'the crossing' }), listed('b')])).toEqual([
      { size: 1, changes: [{ kind: 'look-out', at: 'the bridge', by: 'b' }] },
    ]);
  });
  it('nobody where fewer are free than posts', () => {
    expect(posted([listed('a')])).toEqual([]);
    expect(posted([listed('d'), listed('a')])).toEqual([]);
  });
});
