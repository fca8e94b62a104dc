/** Which brake is left when one thing fails with the train whole, kind by kind, by the trade's rule. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { casesOf, type Failure } from '../../../engine/questions/failures/left.ts';
import { riggingFor, supplyFor } from '../../support/braked-trains.ts';
import { braked, gearOf, leftBy } from '../../support/brakes-left.ts';
import { altered } from '../../support/rules.ts';

type Of = Parameters<typeof braked>[0];

const all = [0, 1, 2, 3];
const cases = (of: Of) => casesOf(openOuting(braked(of)));
const left = (of: Of, failure: Failure, vehicle?: number): string | undefined => {
  const found = cases(of).find((c) => c.failure === failure && c.vehicle === vehicle);
  return found && leftBy(found.left, all);
};
const own = gearOf('engine-only');
const guards = { workedBy: 'guard' } as const;

describe('steam, compressor or current fails', () => {
  it.each([
    [{ kind: 'automatic-air' }, 'none alone alone alone'],
    [{ kind: 'automatic-vacuum' }, 'none alone alone alone'],
    [{ kind: 'simple-vacuum' }, 'none lost lost lost'],
    // Of its reservoir nobody knows that it holds one application.
    [{ kind: 'straight-air' }, 'none lost lost lost'],
    [{ kind: 'electric', gear: { onSupplyLoss: 'applies' } }, 'none alone alone alone'],
    [{ kind: 'electric', gear: { onSupplyLoss: 'lost' } }, 'none lost lost lost'],
    [{ kind: 'electric' }, 'none unknown unknown unknown'],
    [{ kind: 'simple-vacuum', engine: own }, 'works lost lost lost'],
    // The same current may work the engine's; a hand lever it does not.
    [{ kind: 'electric', gear: { onSupplyLoss: 'lost' }, engine: own }, 'unknown lost lost lost'],
    [
      { kind: 'electric', gear: { onSupplyLoss: 'lost' }, engine: gearOf('engine-only', { parking: true }) },
      'works lost lost lost',
    ],
    [{ kind: 'simple-vacuum', gear: guards, guardOn: 'car2' }, undefined],
  ] as [Of, string | undefined][])('%o', (of, expected) => expect(left(of, 'supply')).toBe(expected));

  it("the guard keeps a brake of the guard's own, and one of nobody works no more than before", () => {
    const own = (
      workedBy: 'guard' | 'rider',
      guardOn?: string,
      kind: 'mechanical' | 'automatic-air' = 'mechanical',
    ) => {
      const whole = braked({ kind: 'simple-vacuum', ...(guardOn ? { guardOn } : {}) });
      const found = casesOf(openOuting(altered(whole, 3, { brakes: [gearOf(kind, { workedBy })] }))).find(
        (c) => c.failure === 'supply',
      );
      return found && leftBy(found.left, all);
    };
    expect(own('guard', 'car3')).toBe('none lost lost works');
    expect(own('guard')).toBe('none lost lost none');
    expect(own('rider')).toBe('none lost lost none');
  });
  it('straight air has what its reservoir holds', () => {
    const parts = riggingFor('straight-air');
    const whole = braked({ kind: 'straight-air', gear: { rigging: parts } });
    const stored = (reservoirVolume: number): string => {
      const brakeSupply = supplyFor('straight-air', { reservoirVolume });
      const context = openOuting(altered(whole, 0, { brakeSupply }));
      const found = casesOf(context).find((c) => c.failure === 'supply');
      return found ? leftBy(found.left, all) : '';
    };
    expect(stored(0.02)).toBe('none works works works');
    expect(stored(0.0001)).toBe('none lost lost lost');
  });
});

describe('the driver drops', () => {
  it.each([
    // Nothing has parted: even an automatic brake stays off.
    [{ kind: 'automatic-air' }, 'none lost lost lost'],
    [{ kind: 'mechanical', gear: guards, guardOn: 'car2' }, 'none none works none'],
    [{ kind: 'automatic-vacuum', gear: guards, guardOn: 'car2' }, 'none none works none'],
    [{ kind: 'mechanical', gear: guards }, 'none none none none'],
  ] as [Of, string][])('%o', (of, expected) => expect(left(of, 'driver')).toBe(expected));

  it('is noticed before the guard acts', () => {
    const outing = braked({ kind: 'mechanical', gear: guards, guardOn: 'car2' });
    const { guardNotice } = outing.assumed;
    const { deadTime } =
      casesOf(openOuting(outing)).find((c) => c.failure === 'driver')?.left.groups[0] ?? {};
    // 0.5 s of the brake, 0.7, 1.2 or 2 s of the person, and the notice.
    expect(deadTime?.low).toBeCloseTo(1.2 + guardNotice.low, 9);
    expect(deadTime?.value).toBeCloseTo(1.7 + guardNotice.value, 9);
    expect(deadTime?.high).toBeCloseTo(2.5 + guardNotice.high, 9);
  });
});

describe('a cock', () => {
  it('cuts out one vehicle of the train brake', () => {
    expect(left({ kind: 'automatic-air', engine: own }, 'cock', 2)).toBe('works works lost works');
    expect(left({ kind: 'automatic-air', engine: own }, 'cock', 0)).toBeUndefined();
  });
  it('left shut behind a vehicle takes all behind it', () => {
    expect(left({ kind: 'automatic-air', engine: own }, 'pipe', 1)).toBe('works works lost lost');
    expect(left({ kind: 'automatic-air' }, 'pipe', 2)).toBe('none works works lost');
  });
  it('is none where no pipe leads', () => {
    expect(cases({ kind: 'mechanical' }).map((c) => c.failure)).toEqual(['nothing', 'driver']);
    const broken = cases({ kind: 'automatic-air', pipeBrokenAfter: [1] });
    for (const failure of ['pipe', 'hose'])
      expect(broken.filter((c) => c.failure === failure).map((c) => c.vehicle)).toEqual([0, 2]);
  });
});

it('nothing fails: what answers the driver', () => {
  expect(left({ kind: 'simple-vacuum', engine: own }, 'nothing')).toBe('works works works works');
  expect(left({ kind: 'surge', engine: own }, 'nothing')).toBe('works works works works');
});

it('a hose that comes off with the couplers shut', () => {
  expect(left({ kind: 'straight-air', engine: own }, 'hose', 1)).toBe('works lost lost lost');
  expect(left({ kind: 'automatic-air' }, 'hose', 0)).toBe('none alone alone alone');
});
