/** Hours of duty and rest by published law, at their boundaries: what is over by a minute is out, what is equal is not. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import { askCrew } from '../../../engine/questions/crew/ask.ts';
import type { CrewMember, Hours } from '../../../engine/things/duty.ts';
import { tellFinding } from '../../../words/finding.ts';
import { rider, rule, withHost } from '../../support/rules.ts';

const [MINUTE, HOUR] = [60, 3600];

const outing = (rules: Partial<HostRules>, hours?: Hours, more: Partial<Outing> = {}): Outing => {
  const d = rider('d', '1', { duty: 'driver' });
  const said: CrewMember = { id: 'd', name: d.name, mass: exact(80), ...(hours ? { hours } : {}) };
  return withHost(2, rules, { riders: [d], crew: [said], ...more });
};
const found = (rules: Partial<HostRules>, hours?: Hours, more: Partial<Outing> = {}): string[] =>
  askCrew(outing(rules, hours, more)).map((f) => `${f.severity} ${(f.facts as { limit?: string }).limit}`);

/** 49 CFR 228.405(a): at most 12 h on end, 8 h off before, 10 h off after 12 h, no more than 14 days. */
const passengerCrews = {
  mostOnDuty: rule(12 * HOUR),
  leastRest: rule(8 * HOUR),
  restAfterFullTurn: rule(10 * HOUR),
  mostDays: rule(14),
};
const rested: Hours = { onDuty: 12 * HOUR, rest: 8 * HOUR, turnBefore: 11 * HOUR, days: 14 };

describe('passenger train crews of the United States', () => {
  it('may work at every limit', () => expect(found(passengerCrews, rested)).toEqual([]));
  it.each([
    [{ onDuty: 12 * HOUR + MINUTE }, ['forbids mostOnDuty']],
    [{ rest: 8 * HOUR - MINUTE }, ['forbids leastRest']],
    [{ turnBefore: 12 * HOUR, rest: 10 * HOUR }, []],
    [{ turnBefore: 12 * HOUR, rest: 10 * HOUR - MINUTE }, ['forbids restAfterFullTurn']],
    [{ turnBefore: 12 * HOUR - MINUTE, rest: 10 * HOUR - MINUTE }, []],
    [{ days: 15 }, ['forbids mostDays']],
  ] as const)('%j', (hours, out) => expect(found(passengerCrews, { ...rested, ...hours })).toEqual(out));
});

/** Crews across borders in the European Union: driving 9 h by day, 8 h by night; 12 h of rest. */
describe('crews across European borders', () => {
  const rules = {
    mostDriving: rule(9 * HOUR),
    mostDrivingAtNight: rule(8 * HOUR),
    leastRest: rule(12 * HOUR),
  };
  const night = { conditions: { ...outing({}).conditions, night: true } };
  it.each([
    [9 * HOUR, {}, []],
    [9 * HOUR + MINUTE, {}, ['forbids mostDriving']],
    [8 * HOUR, night, []],
    [8 * HOUR + MINUTE, night, ['forbids mostDrivingAtNight']],
  ] as const)('%d s at the handles', (driving, more, out) =>
    expect(found(rules, { driving, rest: 12 * HOUR }, more)).toEqual(out),
  );
  it('a guard is at no handles', () => {
    const guard = [rider('d', '1', { duty: 'guard' })];
    expect(found({ mostDriving: rule(9 * HOUR) }, undefined, { riders: guard })).toEqual([]);
  });
});

/** British limits after Clapham: 12 h a turn, 12 h between, 72 h a week; a break where 6 h are over. */
describe('British limits', () => {
  const rules = {
    mostOnDuty: rule(12 * HOUR),
    leastRest: rule(12 * HOUR),
    mostInWeek: rule(72 * HOUR),
    mostWithoutBreak: rule(6 * HOUR),
  };
  const at: Hours = { onDuty: 12 * HOUR, rest: 12 * HOUR, inWeek: 72 * HOUR, sinceBreak: 6 * HOUR };
  it('may work at every limit', () => expect(found(rules, at)).toEqual([]));
  it.each(['onDuty', 'inWeek', 'sinceBreak'] as const)('%s a minute over is out', (of) =>
    expect(found(rules, { ...at, [of]: (at[of] as number) + MINUTE })).toHaveLength(1),
  );
  it('a minute less of rest is out', () =>
    expect(found(rules, { ...at, rest: 12 * HOUR - MINUTE })).toEqual(['forbids leastRest']));
});

describe('what nobody said', () => {
  it('is no hours: each that the host limits cannot be told, and is asked in its place', () => {
    const asked = askCrew(outing(passengerCrews));
    expect(asked.map(({ severity, measure }) => [severity, measure])).toEqual([
      ['unknown', 'outing.crew.d.hours.onDuty'],
      ['unknown', 'outing.crew.d.hours.rest'],
      ['unknown', 'outing.crew.d.hours.days'],
      ['unknown', 'outing.crew.d.hours.turnBefore'],
    ]);
    for (const key of ['onDuty', 'rest', 'days', 'turnBefore'] as const) {
      const { [key]: _, ...rest } = rested;
      expect(found(passengerCrews, rest).every((f) => f.startsWith('unknown'))).toBe(true);
      expect(found(passengerCrews, rest)).not.toEqual([]);
    }
  });
  it('of whoever is not listed at all either', () =>
    expect(found({ mostOnDuty: rule(12 * HOUR) }, undefined, { crew: [] })).toEqual(['unknown mostOnDuty']));
  it('of the turn before is no matter to whoever rested long enough after any', () =>
    expect(
      found(
        { restAfterFullTurn: rule(10 * HOUR), mostOnDuty: rule(12 * HOUR) },
        { onDuty: 1, rest: 10 * HOUR },
      ),
    ).toEqual([]));
  it('no limit of turns: every turn before counts as a full one', () =>
    expect(found({ restAfterFullTurn: rule(10 * HOUR) }, { rest: 9 * HOUR })).toEqual([
      'forbids restAfterFullTurn',
    ]));
  it('is nothing where the host has no limit', () => expect(found({})).toEqual([]));
});

it('is told in hours, rounded against whoever is tired', () => {
  const of = outing(passengerCrews, { ...rested, onDuty: 12 * HOUR + 1, rest: 8 * HOUR - 1 });
  const [long, short] = askCrew(of).map(
    (f) => tellFinding(f, { system: 'metric', wording: 'us', outing: of }).what,
  );
  expect(long).toBe(
    'rider d will have been on duty for 12 h 1 min when this outing is over; the host allows 12 h.',
  );
  expect(short).toBe('rider d rested for 7 h 59 min before this turn; the host asks for 8 h.');
});

it('of two duties one is asked', () => {
  const both = outing({ mostOnDuty: rule(HOUR) }, { onDuty: 2 * HOUR });
  const crew = (both.crew ?? []).map((one) => ({ ...one, looksOutAt: 'the crossing' }));
  expect(askCrew({ ...both, crew })).toHaveLength(1);
});
