/**
 * The order in which remedies are offered, argued by hand: what gets the train out is said first, however much it asks;
 * among alike what is done on the spot (a chain hooked up, a guard) before a car left behind, and that before the workshop.
 */
import { describe, expect, it } from 'vitest';
import { asOffered } from '../../../engine/answer/remedies.ts';
import type { Change } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { keepTogether } from '../../../engine/questions/changes.ts';
import type { Remedy } from '../../../engine/questions/finding.ts';
import { makeFinding } from '../../../engine/questions/make.ts';
import { automaticKinds, brakeKinds, brakeOf } from '../../../engine/things/brake/kinds/index.ts';
import { plain } from '../../support/rules.ts';

const remedy = (size: number, betters: boolean, change: Change = { kind: 'guard' }): Remedy => ({
  change,
  size,
  clears: true,
  betters,
  verdict: betters ? 'go' : 'hold',
});
const told = (of: readonly Remedy[]): string[] =>
  of.map((r) => `${r.betters ? 'out' : 'still held'} ${r.size}`);

describe('remedies', () => {
  it('that better the word come first, however great; the smaller before the greater', () => {
    const found = [remedy(1, false), remedy(7, true), remedy(2, true), remedy(0.5, false)];
    expect(told(asOffered(found))).toEqual(['out 2', 'out 7', 'still held 0.5', 'still held 1']);
  });

  it('are four at the most, and no better one falls out for a smaller', () => {
    const found = [1, 2, 3, 4, 5].map((size) => remedy(size, false));
    expect(told(asOffered([...found, remedy(9, true)]))).toEqual([
      'out 9',
      'still held 1',
      'still held 2',
      'still held 3',
    ]);
    expect(found.map((r) => r.size)).toEqual([1, 2, 3, 4, 5]);
  });

  it('alike in both stay as their question has them', () => {
    const two = [remedy(2, true, { kind: 'guard' }), remedy(2, true, { kind: 'chains' })];
    expect(asOffered(two).map((r) => r.change.kind)).toEqual(['guard', 'chains']);
  });

  it('against a parting: chains, a guard, a car less, and the workshop last', () => {
    const base = plain(3);
    const vehicles = base.train.vehicles.map((v) => ({
      ...v,
      brakes: v.brakes.map((b) => ({ ...b, kind: 'straight-air' as const })),
    }));
    const outing: Outing = { ...base, train: { ...base.train, vehicles, chainsFastened: false } };
    const finding = makeFinding('traction-unknown', 'forbids', 'parting', {
      where: { gap: 0 },
      source: 'test',
    });
    const found = keepTogether(outing, finding).flatMap(({ size, changes }) =>
      changes.length > 0 ? [remedy(size, true, changes[0])] : [],
    );
    expect(asOffered(found).map((r) => r.change.kind)).toEqual([
      'chains',
      'guard',
      'fewer-cars',
      'brake-kind',
    ]);
  });
});

describe('a train made to brake by itself', () => {
  it('is made over from what its pipe already carries, to a kind that comes on when a hose tears', () => {
    expect(automaticKinds.length).toBeGreaterThan(0);
    for (const kind of brakeKinds) {
      const { madeAutomatic: becomes, carries } = brakeOf(kind);
      if (!becomes) continue;
      expect(brakeOf(becomes).carries, kind).toBe(carries);
      expect(brakeOf(becomes).supplyLost({ parking: false }).parted, kind).toBe('applies');
      expect(brakeOf(kind).supplyLost({ parking: false }).parted, kind).toBe('lost');
    }
  });
});
