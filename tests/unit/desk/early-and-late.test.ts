/** What must be done by a place is told no later, what must last until it no earlier, whichever way the train runs. */

import { describe, expect, it } from 'vitest';
import { asking, telling } from '../../../desk/asked.ts';
import { runningCard } from '../../../desk/card.ts';
import { drivenRows } from '../../../desk/driven.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { landmark } from '../../../words/landmark.ts';
import { dressed } from '../../support/dressed-outings.ts';

const FOOT = 0.3048;

/** Metres that a printed chainage lies behind the true one, in the running direction. */
const behind = (printed: string, at: number, { direction }: Outing): number =>
  (at - Number.parseFloat(/-?\d+(?= ft)/.exec(printed)![0]) * FOOT) * (direction === 'forward' ? 1 : -1);

const answers = Array.from({ length: 16 }, (_, i): [Outing, Answer] => {
  const outing = dressed(i + 1);
  return [outing, answerOuting(outing, { remedies: false, counts: false, step: 1, samples: 40 })];
});

describe('zones that are driven', () => {
  it('a slower one is told to begin no later and to end no earlier than it does', () => {
    let told = 0;
    for (const [outing, answer] of answers) {
      const rows = drivenRows(answer, { system: 'imperial', wording: 'us', outing });
      rows.slice(1).forEach((row, i) => {
        const before = rows[i];
        const falls = row.zone.kind === 'arrive' || row.zone.speed < before.zone.speed;
        for (const printed of [row.from, before.to]) {
          const m = behind(printed, row.zone.from, outing);
          expect(falls ? m : -m).toBeGreaterThanOrEqual(-1e-9);
          expect(Math.abs(m)).toBeLessThan(FOOT);
        }
        told++;
      });
    }
    expect(told).toBeGreaterThan(10);
  });
});

describe('braking points on the card', () => {
  it('are printed no later than they lie', () => {
    const seen = { forward: 0, reverse: 0 };
    for (const [outing, answer] of answers) {
      const asked = asking({}, outing);
      const told = telling(asked, { id: asked.id, answer })!;
      runningCard(told, { system: 'imperial', wording: 'us' }, '0').braking.forEach((line, i) => {
        const where = line.slice(0, line.indexOf(':'));
        const chain = /\((-?\d+ ft)\)/.exec(where)?.[1] ?? where;
        const m = behind(chain, answer.driven!.imperial.acts[i].at, outing);
        expect(m, line).toBeGreaterThanOrEqual(-1e-9);
        expect(m, line).toBeLessThan(FOOT);
        seen[outing.direction]++;
      });
    }
    expect(Math.min(seen.forward, seen.reverse)).toBeGreaterThanOrEqual(3);
  });
});

describe('landmarks', () => {
  const at = (metres: number, side: 'early' | 'late', direction: Outing['direction'] = 'forward'): string => {
    const base = dressed(1);
    const places = [{ id: 'x', name: 'Mill Lane', kind: 'crossing', at: 100, stop: false }] as const;
    const line = { ...base.line, length: 400, loop: false, places, curves: [] };
    return landmark({ system: 'metric', wording: 'us', outing: { ...base, line, direction } }, metres, side);
  };

  it('a driver is never told to act at a landmark that comes too late', () => {
    expect(at(104, 'early')).toBe('at Mill Lane');
    expect(at(96, 'early')).toBe('4.0 m before Mill Lane');
    expect(at(96, 'late')).toBe('at Mill Lane');
    expect(at(104, 'late')).toBe('4.0 m past Mill Lane');
  });

  it('distances from it round to the safe side, and run the other way in reverse', () => {
    expect(at(79.96, 'early')).toBe('20.1 m before Mill Lane');
    expect(at(79.96, 'late')).toBe('20.0 m before Mill Lane');
    expect(at(120.06, 'early')).toBe('20.0 m past Mill Lane');
    expect(at(79.96, 'early', 'reverse')).toBe('20.0 m past Mill Lane');
  });

  it('far from all of them it is chainage', () => {
    expect(at(300.7, 'early')).toBe('at 300 m');
    expect(at(300.7, 'early', 'reverse')).toBe('at 301 m');
  });
});
