/** Slower on the whole line, by halves of a mile per hour, below whatever bounds it now, and no slower than anybody drives. */
import { describe, expect, it } from 'vitest';
import { slowerEverywhere } from '../../../engine/questions/changes.ts';
import { plain, rule } from '../../support/rules.ts';

const MPH = 0.44704;
const { plannedSpeed: _, ...base } = plain(1);
const speeds = (set: { plannedSpeed?: number; host?: number }): number[] => {
  const { speed: __, ...host } = base.host;
  const outing = {
    ...base,
    ...(set.plannedSpeed === undefined ? {} : { plannedSpeed: set.plannedSpeed * MPH }),
    host: { ...host, ...(set.host === undefined ? {} : { speed: rule(set.host * MPH) }) },
  };
  return slowerEverywhere(outing as never).changes.map((c) => (c as { speed: number }).speed / MPH);
};
const ends = (of: number[]): number[] => [of[0], of[of.length - 1], of.length];

describe('from', () => {
  it.each([
    ['nothing that bounds it: below 15 mph', {}, [14.5, 2, 26]],
    ['what is planned', { plannedSpeed: 6 }, [5.5, 2, 8]],
    ['what the host allows', { plannedSpeed: 6, host: 5.1 }, [5, 2, 7]],
    ['least', { plannedSpeed: 2.1 }, [2, 2, 1]],
  ])('%s', (_name, set, expected) => {
    ends(speeds(set)).forEach((one, i) => {
      expect(one).toBeCloseTo(expected[i], 9);
    });
  });
  it('nothing where it creeps already', () => expect(speeds({ plannedSpeed: 1 })).toEqual([]));
});
