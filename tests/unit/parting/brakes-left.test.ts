/** Which brake is left on each half of a train that parts behind its first car, kind by kind, by the trade's rule. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { brakesLeft, wholeLeft } from '../../../engine/questions/part/brakes-left.ts';
import { braked, gearOf, leftBy } from '../../support/brakes-left.ts';

type Of = Parameters<typeof braked>[0];

const halves = (of: Of): [head: string, tail: string] => {
  const context = openOuting(braked(of));
  return [
    leftBy(brakesLeft(context, 0, 1, 'head'), [0, 1]),
    leftBy(brakesLeft(context, 2, 3, 'tail'), [2, 3]),
  ];
};
const own = gearOf('engine-only');

describe('the driver on the engine', () => {
  it.each([
    [{ kind: 'automatic-air' }, 'none alone', 'alone alone'],
    [{ kind: 'automatic-vacuum' }, 'none alone', 'alone alone'],
    [{ kind: 'straight-air' }, 'none lost', 'lost lost'],
    [{ kind: 'simple-vacuum' }, 'none lost', 'lost lost'],
    [{ kind: 'electric', gear: { onSupplyLoss: 'applies' } }, 'none works', 'alone alone'],
    [{ kind: 'electric', gear: { onSupplyLoss: 'lost' } }, 'none works', 'lost lost'],
    [{ kind: 'electric' }, 'none works', 'unknown unknown'],
    // Pushed by an engine that is braked; stretched, the tail's are off.
    [{ kind: 'surge', engine: own }, 'works works', 'lost lost'],
    [{ kind: 'surge' }, 'none none', 'none none'],
    // Out of anybody's reach who is relied on.
    [{ kind: 'mechanical' }, 'none none', 'none none'],
    [{ kind: 'automatic-air', engine: own }, 'works alone', 'alone alone'],
    // Nothing tears that did not lead across: the head answers as before, the tail had none.
    [{ kind: 'straight-air', pipeBrokenAfter: [1] }, 'none works', 'none none'],
    [{ kind: 'automatic-air', pipeBrokenAfter: [1] }, 'none works', 'none none'],
  ] as [Of, string, string][])('%o', (of, head, tail) => expect(halves(of)).toEqual([head, tail]));
});

describe('the driver on the last car', () => {
  it.each([
    [{ kind: 'automatic-air' }, 'none alone', 'alone alone'],
    [{ kind: 'straight-air' }, 'none lost', 'lost lost'],
    // Nobody is left at the head's handle.
    [{ kind: 'electric', gear: { onSupplyLoss: 'applies' } }, 'none lost', 'alone alone'],
    [{ kind: 'straight-air', pipeBrokenAfter: [1] }, 'none lost', 'none none'],
    [{ kind: 'mechanical' }, 'none none', 'none works'],
  ] as [Of, string, string][])('%o', (of, head, tail) =>
    expect(halves({ ...of, driverOn: 'car3' })).toEqual([head, tail]),
  );
});

describe('a brake that the guard works', () => {
  const guards = { workedBy: 'guard' } as const;
  it.each([
    [{ kind: 'mechanical', gear: guards, guardOn: 'car2' }, 'none none', 'works none'],
    [{ kind: 'mechanical', gear: guards, guardOn: 'car1' }, 'none works', 'none none'],
    [{ kind: 'mechanical', gear: guards }, 'none none', 'none none'],
    [{ kind: 'automatic-vacuum', gear: guards, guardOn: 'car3' }, 'none alone', 'alone alone'],
    [{ kind: 'simple-vacuum', gear: guards, guardOn: 'car3' }, 'none lost', 'lost lost'],
    [
      { kind: 'electric', gear: { ...guards, onSupplyLoss: 'applies' }, guardOn: 'car3' },
      'none lost',
      'alone alone',
    ],
    [{ kind: 'surge', gear: guards, guardOn: 'car3', engine: own }, 'works none', 'none none'],
    // A rider's is nobody's.
    [{ kind: 'mechanical', gear: { workedBy: 'rider' } }, 'none none', 'none none'],
  ] as [Of, string, string][])('%o', (of, head, tail) => expect(halves(of)).toEqual([head, tail]));
});

describe('held by its chain, or with the hose off alone', () => {
  const whole = (of: Of, couplersShut: boolean): string =>
    leftBy(wholeLeft(openOuting(braked(of)), 1, couplersShut), [0, 1, 2, 3]);
  it.each([
    [{ kind: 'automatic-air' }, 'none alone alone alone', 'none alone alone alone'],
    [{ kind: 'straight-air' }, 'none lost lost lost', 'none lost lost lost'],
    [{ kind: 'electric', gear: { onSupplyLoss: 'lost' } }, 'none works lost lost', 'none works lost lost'],
    // With the couplers shut the engine still pushes on them.
    [{ kind: 'surge', engine: own }, 'works works lost lost', 'works works works works'],
  ] as [Of, string, string][])('%o', (of, parted, shut) => {
    expect(whole(of, false)).toBe(parted);
    expect(whole(of, true)).toBe(shut);
  });
});

describe('the time that it takes', () => {
  const dead = (of: Of, half: 'head' | 'tail'): unknown => {
    const outing = braked(of);
    const [first, last] = half === 'head' ? [0, 1] : [2, 3];
    const [group] = brakesLeft(openOuting(outing), first, last, half).groups;
    return [group.deadTime.low, group.deadTime.value, group.deadTime.high];
  };
  it('is the brake’s own where it comes on by itself', () =>
    expect(dead({ kind: 'automatic-air' }, 'tail')).toEqual([0.5, 0.5, 0.5]));
  // 0.5 s of the brake after 0.7, 1.2 or 2 s of the person.
  it('has the person’s before it where somebody acts', () =>
    expect(dead({ kind: 'electric' }, 'head')).toEqual([1.2, 1.7, 2.5]));
});

it('what does not park leaks off', () => {
  const leaks = (of: Of): number => brakesLeft(openOuting(braked(of)), 2, 3, 'tail').leaking.length;
  expect(leaks({ kind: 'automatic-vacuum' })).toBe(2);
  const hand = { workedBy: 'guard', parking: true } as const;
  expect(leaks({ kind: 'mechanical', gear: hand, guardOn: 'car2' })).toBe(0);
});
