/** A braking point is never printed past where it lies, nor a slow stretch shorter than it is. */

import { describe, expect, it } from 'vitest';
import { asking, telling } from '../../../desk/asked.ts';
import { runningCard } from '../../../desk/card.ts';
import { endsOf, stretches } from '../../../desk/stretches.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import type { SpeedMap } from '../../../engine/questions/speed/types.ts';
import { dressed } from '../../support/dressed-outings.ts';

const FOOT = 0.3048;

/** Speeds by half metres with two reasons, as the map has them. */
const mapOf = (limits: readonly number[]): SpeedMap => ({
  railState: 'dry',
  step: 0.5,
  at: Float64Array.from(limits, (_, j) => j / 2),
  limit: Float64Array.from(limits),
  reason: Uint16Array.from(limits, (v) => (v < 2 ? 1 : 0)),
  reasons: [
    { kind: 'host-line', what: 'host', source: 'a test' },
    { kind: 'curve', what: 'curve', source: 'a test' },
  ],
  likelyStop: new Float64Array(limits.length),
  cautiousStop: new Float64Array(limits.length),
  gap: new Float64Array(limits.length),
});

const inFeet = (map: SpeedMap): string[][] => stretches(map).map((s) => endsOf({ system: 'imperial' }, s));

describe('stretches of the speed map', () => {
  it('a slow one begins before its first place and ends after its last', () => {
    const slow = [3, 3, 3, 3, 3, 1, 1, 1, 1, 3, 3, 3, 3];
    // Slow from 2.5 to 4.0 m: the step before, 2.0 m, is 6.6 ft; the step after, 4.5 m, is 14.8 ft.
    expect(inFeet(mapOf(slow))).toEqual([
      ['0 ft', '6 ft'],
      ['6 ft', '15 ft'],
      ['15 ft', '20 ft'],
    ]);
  });
  it('the same run the other way', () => {
    const slow = [3, 3, 3, 3, 1, 1, 1, 1, 3, 3, 3, 3, 3];
    expect(inFeet(mapOf(slow))[1]).toEqual(['4 ft', '14 ft']);
  });
  it('a fast one of a single step between slow ones is told as a point', () => {
    expect(inFeet(mapOf([1, 1, 3, 1, 1]))[1]).toEqual(['4 ft', '4 ft']);
  });
});

describe('braking points on the card', () => {
  it('are printed no later than they lie, whichever way the train runs', () => {
    let [forward, reverse] = [0, 0];
    for (let seed = 1; seed <= 40 && (forward < 5 || reverse < 5); seed++) {
      const outing = dressed(seed);
      const answer = answerOuting(outing, { remedies: false, counts: false });
      const asked = asking({}, outing);
      const told = telling(asked, { id: asked.id, answer });
      if (!told) throw new Error('an answer to another outing');
      const { braking } = runningCard(told, { system: 'imperial', wording: 'us' });
      braking.forEach((line, i) => {
        const printed = Number.parseFloat(line) * FOOT;
        const { at } = answer.brakingPoints[i];
        if (outing.direction === 'forward') {
          forward++;
          expect(printed).toBeLessThanOrEqual(at + 1e-9);
        } else {
          reverse++;
          expect(printed).toBeGreaterThanOrEqual(at - 1e-9);
        }
        expect(Math.abs(printed - at)).toBeLessThan(FOOT);
      });
    }
    expect(Math.min(forward, reverse)).toBeGreaterThanOrEqual(5);
  });
});
