/** A sign-off is for some engines, a gauge, a line: on another it is none, and where nobody can tell it says so. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { orderRemedies } from '../../../engine/questions/order/remedies.ts';
import type { Power, SignedFor } from '../../../engine/things/duty.ts';
import type { InDateHolder, Shown } from '../../../engine/things/in-date.ts';
import { tellFinding } from '../../../words/finding.ts';
import { altered, rider, withHost } from '../../support/rules.ts';
import { runs } from '../../support/tier.ts';

const what = 'driver-competence';
const base = withHost(2, {});
const [engine] = base.train.vehicles;
const driver = rider('d', '1', { duty: 'driver', vehicle: engine.id });

const outing = (
  signed: readonly SignedFor[],
  state: Shown['state'] = 'stands',
  of: InDateHolder = 'driver',
): Outing =>
  withHost(
    2,
    { inDate: [{ what, of, source: 'rule book, p. 4' }] },
    {
      riders: [{ ...driver, duty: of === 'guard' ? 'guard' : 'driver' }],
      shown: signed.map((signedFor) => ({ what, of: driver.name, state, signedFor })),
    },
  );
const told = (of: Outing): string[] =>
  askOrder(of).map((f) => `${f.severity} ${f.code} ${(f.facts as { why?: string }).why ?? ''}`.trim());
const steam = (of: Outing, power: Power = 'steam'): Outing => altered(of, 0, { power });

describe('signed off', () => {
  it.each([
    [{}, []],
    [{ line: base.line.name }, []],
    [{ line: 'Elsewhere' }, ['forbids not-signed-for-this line']],
    [{ gauge: base.line.gauge + 0.0009 }, []],
    [{ gauge: 0.127 }, ['forbids not-signed-for-this gauge']],
    [{ engines: [engine.name] }, []],
    [{ engines: ['Another'] }, ['forbids not-signed-for-this engine']],
    [{ heaviest: engine.tare.high }, []],
    [{ heaviest: engine.tare.high - 0.5 }, ['forbids not-signed-for-this weight']],
    [{ powers: ['steam'] }, ['unknown not-signed-for-this power']],
  ] as const)('for %j', (signed, found) => expect(told(outing([signed]))).toEqual(found));

  it.each([
    // Of one that is for another engine it does not matter whether it is in date.
    [{ engines: ['Another'] }, 'out', ['forbids not-signed-for-this engine']],
    [{ engines: ['Another'] }, 'grace', ['forbids not-signed-for-this engine']],
    // Of one that may be for this engine it does: out of date it is for none.
    [{ powers: ['steam'] }, 'out', ['forbids out-of-date']],
    [{ powers: ['steam'] }, 'grace', ['unknown not-signed-for-this power']],
    [{}, 'out', ['forbids out-of-date']],
    [{}, 'grace', ['notes in-grace']],
  ] as const)('for %j, and it is %s', (signed, state, found) =>
    expect(told(outing([signed], state))).toEqual(found),
  );

  it('for engines of a kind: by what drives this one', () => {
    const of = outing([{ powers: ['electric', 'petrol'] }]);
    expect(told(steam(of, 'petrol'))).toEqual([]);
    expect(told(steam(of))).toEqual(['forbids not-signed-for-this power']);
    expect(askOrder(of)[0].measure).toBe('vehicle.power');
  });

  it('to guard: engines are no matter of it, line and gauge are', () => {
    expect(
      told(outing([{ engines: ['Another'], powers: ['electric'], heaviest: 1 }], 'stands', 'guard')),
    ).toEqual([]);
    expect(told(outing([{ line: 'Elsewhere' }], 'stands', 'guard'))).toEqual([
      'forbids not-signed-for-this line',
    ]);
  });

  it('of several the one that is for this counts, out of date or not', () => {
    const elsewhere = { line: 'Elsewhere' };
    expect(told(outing([elsewhere, {}]))).toEqual([]);
    const both = outing([elsewhere]);
    const out: Shown = { what, of: driver.name, state: 'out', signedFor: {} };
    expect(told({ ...both, shown: [...(both.shown ?? []), out] })).toEqual(['forbids out-of-date']);
    expect(told(outing([{ powers: ['steam'] }], 'out'))).toEqual(['forbids out-of-date']);
  });

  it('each driver for the engine within reach', () => {
    const of = outing([{ engines: [engine.name] }]);
    const second = { ...engine, id: 'second', name: 'Second' };
    const doubled = { ...of, train: { ...of.train, vehicles: [...of.train.vehicles.slice(0, 2), second] } };
    expect(told(doubled)).toEqual([]);
    // Nobody can say which is driven from nowhere: all of them are.
    const { vehicle: _, ...nowhere } = driver;
    expect(told({ ...doubled, riders: [nowhere] })).toEqual(['forbids not-signed-for-this engine']);
  });

  it('and is told in words', () => {
    const say = (of: Outing) =>
      tellFinding(askOrder(of)[0], { system: 'metric', wording: 'us', outing: of }).what;
    expect(say(outing([{ engines: ['Another'] }]))).toBe(
      `rider d: driver competence does not name ${engine.name}.`,
    );
    expect(say(outing([{ powers: ['steam'] }]))).toContain('nobody has said what drives');
  });
});

it('lookouts hold a competence of their own', () => {
  const crew = [{ id: 'l', name: 'rider l', mass: exact(70), looksOutAt: 'the crossing' }];
  const inDate = [{ what: 'lookout-competence', of: 'lookout', source: 'rule book, p. 4' }] as const;
  const of = withHost(2, { inDate }, { crew });
  expect(told(of)).toEqual(['unknown not-shown']);
  expect(told({ ...of, shown: [{ what: 'lookout-competence', of: 'rider l', state: 'stands' }] })).toEqual(
    [],
  );
});

it('somebody who is listed and signed off for it could', () => {
  const crew = ['a', 'b'].map((id) => ({ id, name: `rider ${id}`, mass: exact(70) }));
  const of = { ...outing([{ line: 'Elsewhere' }]), crew };
  const shown = [...(of.shown ?? []), { what, of: 'rider b', state: 'stands' } as const];
  const [finding] = askOrder({ ...of, shown });
  expect(
    orderRemedies['not-signed-for-this']?.({ ...of, shown }, finding).flatMap(({ changes }) => changes),
  ).toEqual([{ kind: 'relieve', rider: 'd', by: 'b' }]);
});

it('one more that is out never betters the word, whatever each is for', () => {
  const signed = fc.constantFrom<SignedFor>(
    {},
    { line: 'Elsewhere' },
    { powers: ['steam'] },
    { engines: ['Another'] },
  );
  const one = fc.record({
    state: fc.constantFrom<Shown['state']>('stands', 'grace', 'out', 'unknown'),
    signedFor: signed,
  });
  const worth = { forbids: 0, unknown: 1, notes: 2 } as const;
  const of = (
    shown: readonly { readonly state: Shown['state']; readonly signedFor: SignedFor }[],
  ): number => {
    const found = askOrder({ ...outing([]), shown: shown.map((s) => ({ what, of: driver.name, ...s })) });
    return Math.min(3, ...found.map(({ severity }) => worth[severity as keyof typeof worth]));
  };
  fc.assert(
    fc.property(fc.array(one, { maxLength: 4 }), signed, (shown, signedFor) => {
      expect(of([...shown, { state: 'out', signedFor }])).toBeLessThanOrEqual(of(shown));
    }),
    { numRuns: runs(80, 2000), seed: 16 },
  );
});
