/** How far is seen today, whatever the line lets one see: fog by day, the engine's own light after dark. */
import { describe, expect, it } from 'vitest';
import { answerOnly } from '../../../engine/answer/answer.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { availableAlong, seenBy } from '../../../engine/questions/speed/available.ts';
import { tellLight } from '../../../words/rails.ts';
import { randomOuting } from '../../support/random-outings.ts';
import { plain, rule, withHost } from '../../support/rules.ts';
import { runs } from '../../support/tier.ts';

const base = plain(2);
const today = (conditions: Partial<Outing['conditions']>, of: Outing = base): Outing => ({
  ...of,
  conditions: { ...of.conditions, ...conditions },
});
/** m, of 100 m of loop of which one sees 90 m everywhere; the driver sits 3 m behind the front, 2 m are to spare. */
function room(outing: Outing): number {
  const line: Outing['line'] = {
    ...base.line,
    loop: true,
    length: 100,
    places: [],
    sights: [{ from: 0, to: 100, distance: 90, direction: 'both' }],
  };
  const grid = Float64Array.from({ length: 101 }, (_, j) => j);
  const { distance } = availableAlong(line, grid, 2, seenBy(outing), 3);
  expect(new Set(distance).size).toBe(1);
  return distance[50];
}

describe('the room to stop in', () => {
  it('by clear daylight is what the line lets one see', () => expect(room(base)).toBe(90 - 3 - 2));
  it('in fog is what is seen, from the seat', () => expect(room(today({ visibility: 40 }))).toBe(40 - 3 - 2));
  it('is never more than the line lets one see', () =>
    expect(room(today({ visibility: 400 }))).toBe(90 - 3 - 2));
  it('after dark is 50 ft where nobody has said how far the light shows', () =>
    expect(room(today({ night: true }))).toBeCloseTo(50 * 0.3048 - 3 - 2, 9));
  it('after dark is what the light shows', () =>
    expect(room(today({ night: true, visibility: 25 }))).toBe(25 - 3 - 2));
  it('on a line that is lit, where the host asks for no lights, is that of the day', () => {
    const lit = withHost(2, { lightsAtNight: rule(false) });
    expect(room(today({ night: true }, lit))).toBe(90 - 3 - 2);
    expect(room(today({ night: true, visibility: 25 }, lit))).toBe(25 - 3 - 2);
  });
});

describe('the answer', () => {
  const asked = (outing: Outing) =>
    answerOnly(outing, { step: 5, samples: 40 }).findings.filter(
      ({ code }) => code === 'night-sight-unknown',
    );

  it('after dark cannot tell until somebody has paced it, where the train runs faster than 50 ft allow', () =>
    expect(asked(today({ night: true }))).toMatchObject([
      { severity: 'unknown', measure: 'outing.conditions.visibility', facts: { sight: { si: 15.24 } } },
    ]));
  it('only mentions it where it stops within them', () =>
    expect(asked(today({ night: true }, { ...base, plannedSpeed: 0.9 }))).toMatchObject([
      { severity: 'notes' },
    ]));
  it('asks no more once it is said, and not by day', () => {
    expect(asked(today({ night: true, visibility: 25 }))).toEqual([]);
    expect(asked(base)).toEqual([]);
  });

  it('allows no more speed the less is seen, and no sudden step of it', () => {
    for (let seed = 1; seed <= runs(2, 60); seed++) {
      const { visibility: _, ...conditions } = randomOuting(seed).conditions;
      const of = { ...randomOuting(seed), conditions };
      let before = 0;
      for (let seen = 8; seen <= 60; seen += 6.5) {
        const { speeds } = answerOnly(today({ visibility: seen }, of), { step: 5, samples: 40 });
        const fastest = speeds ? speeds.limit.reduce((a, b) => Math.max(a, b), 0) : 0;
        expect(fastest, `seed ${seed}, ${seen} m`).toBeGreaterThanOrEqual(before - 1e-6);
        before = fastest;
      }
    }
  });
});

it('is told with the answer: of what light it is', () => {
  const told = (of: Outing): string => tellLight({ outing: of, system: 'imperial', wording: 'us' });
  expect(told(base)).toBe('by daylight');
  expect(told(today({ night: true }))).toBe('after dark');
  expect(told(today({ night: true, visibility: 25 }))).toBe('after dark, 82 ft seen');
  expect(told(today({ visibility: 25 }))).toBe('by daylight, 82 ft seen');
});
