/** Which orders are tried where couplers swing too far: each of the two cars for one of another shape elsewhere. */
import { describe, expect, it } from 'vitest';
import { orders } from '../../../engine/questions/swing/remedies.ts';
import { altered, plain } from '../../support/rules.ts';

const [, { groups }] = plain(1).train.vehicles;
/** By the cars' lengths; the engine before them, all else alike. */
const tried = (lengths: readonly number[], gap: number): string[] => {
  const ends = { front: { type: 'link' }, rear: { type: 'link' }, groups };
  const whole = lengths.reduce(
    (o, length, i) => altered(o, i + 1, { length, ...ends }),
    plain(lengths.length),
  );
  const at = new Map(whole.train.vehicles.map((v, i) => [v.id, i]));
  return orders(whole, gap).map(({ changes: [change] }) =>
    change.kind === 'order' ? change.order.map((id) => at.get(id)).join(' ') : change.kind,
  );
};

describe('at a gap', () => {
  it('behind the engine its car alone is exchanged, once for each other shape', () => {
    expect(tried([2, 3, 4, 3], 0)).toEqual(['0 2 1 3 4', '0 3 2 1 4']);
  });
  it('between cars either is, never the two for one another', () => {
    expect(tried([2, 3, 4], 1)).toEqual(['0 1 3 2', '0 3 2 1']);
    expect(tried([2, 3], 1)).toEqual([]);
  });
  it('cars of one shape are not exchanged', () => {
    expect(tried([2, 2, 2], 0)).toEqual([]);
    expect(tried([2, 3, 3], 1)).toEqual(['0 3 2 1']);
  });
});
