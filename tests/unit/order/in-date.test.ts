/** What the host asks to be in date: whose it is, which of several counts, and that none that is out ever helps. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import type { InDateHolder, InDateKind, Shown } from '../../../engine/things/in-date.ts';
import { shownOn } from '../../../papers/compile/shown.ts';
import { tellFinding } from '../../../words/finding.ts';
import { rider, withHost } from '../../support/rules.ts';
import { runs } from '../../support/tier.ts';

const asks = (what: InDateKind, of: InDateHolder): Partial<HostRules> => ({
  inDate: [{ what, of, source: 'rule book, p. 4' }],
});
const outing = (rules: Partial<HostRules>, shown: readonly Shown[] = []): Outing =>
  withHost(2, rules, { shown, riders: [rider('d', '1', { duty: 'driver' }), rider('r', '2')] });
const found = (of: Outing) =>
  askOrder(of).map(({ code, severity, facts }) => [code, severity, (facts as { readonly of: string }).of]);

const [engine, car1, car2] = outing({}).train.vehicles.map((v) => v.name);
const boiler = (state: Shown['state'], of = engine, last?: string): Shown => ({
  what: 'boiler-hydraulic-test',
  of,
  state,
  ...(last === undefined ? {} : { last }),
});

describe('the host asks', () => {
  it('nothing: nothing is found, whatever is out', () =>
    expect(found(outing({}, [boiler('out')]))).toEqual([]));

  it.each([
    ['engine', [engine]],
    ['vehicle', [engine, car1, car2]],
    ['driver', ['rider d']],
    ['guard', []],
    ['club', ['the club']],
  ] as const)('of every %s', (of, whose) =>
    expect(found(outing(asks('chains', of)))).toEqual(whose.map((name) => ['not-shown', 'unknown', name])),
  );

  it('and what stands is enough; what is out forbids; grace is a note', () => {
    const rules = asks('boiler-hydraulic-test', 'engine');
    expect(found(outing(rules, [boiler('stands')]))).toEqual([]);
    expect(found(outing(rules, [boiler('out')]))).toEqual([['out-of-date', 'forbids', engine]]);
    expect(found(outing(rules, [boiler('grace')]))).toEqual([['in-grace', 'notes', engine]]);
    expect(found(outing(rules, [boiler('unknown')]))).toEqual([['not-shown', 'unknown', engine]]);
  });

  it('another’s, or of another thing, is none', () => {
    const rules = asks('boiler-hydraulic-test', 'engine');
    const steam: Shown = { what: 'boiler-steam-test', of: engine, state: 'stands' };
    const club: Shown = { what: 'boiler-hydraulic-test', state: 'stands' };
    expect(found(outing(rules, [boiler('stands', car1), steam, club]))).toEqual([
      ['not-shown', 'unknown', engine],
    ]);
  });

  it('of two that are out the one that stood longer is told, in whatever order, at its vehicle', () => {
    const rules = asks('boiler-hydraulic-test', 'engine');
    const two = [boiler('out', engine, '2020-01-01'), boiler('out', engine, '2026-05-30'), boiler('out')];
    for (const shown of [two, [...two].reverse()]) {
      const of = outing(rules, shown);
      const [one] = askOrder(of);
      expect(one.facts).toMatchObject({ last: '2026-05-30' });
      expect(one.where).toEqual({ vehicle: of.train.vehicles[0].id });
    }
    expect(askOrder(outing(asks('insurance', 'club')))[0].where).toEqual({});
  });

  it('and is told with the rule and the last day', () => {
    const of = outing(asks('boiler-hydraulic-test', 'engine'), [boiler('out', engine, '2026-05-30')]);
    const told = tellFinding(askOrder(of)[0], { system: 'metric', wording: 'us', outing: of });
    expect(told.what).toBe(`Out of date: boiler hydraulic test, of ${engine}, which stood to 2026-05-30.`);
    expect(told.source).toBe('rule book, p. 4');
  });
});

const worth = { forbids: 0, unknown: 1, notes: 2 } as const;
const standing = (of: Outing): number =>
  Math.min(3, ...askOrder(of).map(({ severity }) => worth[severity as keyof typeof worth]));

it('one more that is out never betters the word, and one more never worsens what stands', () => {
  const state = fc.constantFrom<Shown['state']>('stands', 'grace', 'out', 'unknown');
  fc.assert(
    fc.property(fc.array(state, { maxLength: 4 }), fc.nat(4), (states, at) => {
      const before = states.map((s) => boiler(s));
      const after = [...before.slice(0, at), boiler('out'), ...before.slice(at)];
      const of = (shown: readonly Shown[]): number =>
        standing(outing(asks('boiler-hydraulic-test', 'engine'), shown));
      expect(of(after)).toBeLessThanOrEqual(of(before));
      if (states.includes('stands')) expect(of(after)).toBe(3);
    }),
    { numRuns: runs(50, 1000), seed: 16 },
  );
});

describe('a certificate in the paper, on the day of the outing', () => {
  const on = (date: string | undefined, more: object) =>
    shownOn({
      shown: [{ what: 'boiler-hydraulic-test', on: '2025-01-31', ...more }],
      ...(date === undefined ? {} : { date }),
    })[0].state;
  const until = { until: '2026-03-31' };

  it('stands from its first day to its last', () => {
    expect(['2025-01-30', '2025-01-31', '2026-03-31', '2026-04-01'].map((day) => on(day, until))).toEqual([
      'out',
      'stands',
      'stands',
      'out',
    ]);
  });
  it('by service days that are left, and its last day too', () => {
    expect(on('2026-03-31', { serviceLeft: 1 })).toBe('stands');
    expect(on('2026-03-31', { serviceLeft: 0 })).toBe('out');
    expect(on('2026-03-31', { ...until, serviceLeft: 0 })).toBe('out');
    expect(on('2026-04-01', { ...until, serviceLeft: 5 })).toBe('out');
  });
  it('grace is grace, and ends; without a day or an end nobody can tell', () => {
    const grace = { ...until, graceTo: '2026-04-30' };
    expect([on('2026-04-30', grace), on('2026-05-01', grace)]).toEqual(['grace', 'out']);
    expect([on(undefined, until), on('2026-03-31', {})]).toEqual(['unknown', 'unknown']);
  });
});

describe('a defect that an inspection left open', () => {
  const defect = (of: string, rejects: boolean) => ({
    of,
    what: 'cracked tire',
    rejects,
    since: '2026-05-30',
  });
  const said = (...defects: ReturnType<typeof defect>[]) =>
    askOrder({ ...outing({}), defects }).map(({ code, severity, where }) => [code, severity, where.vehicle]);
  const code = 'defect-open';
  it('forbids what it rejects, and limits what it lets run', () => {
    expect(said(defect(car1, true))).toEqual([[code, 'forbids', 'car1']]);
    expect(said(defect(car1, false))).toEqual([[code, 'limits', 'car1']]);
  });
  it('of the line is one of this outing; of another train or line is none', () => {
    const { line } = outing({});
    expect(said(defect(line.name, true))).toEqual([[code, 'forbids', undefined]]);
    expect(said(defect('another engine', true), defect(car2, true))).toEqual([[code, 'forbids', 'car2']]);
  });
  it('and where nothing was written is none', () => expect(askOrder(outing({}))).toEqual([]));
});
