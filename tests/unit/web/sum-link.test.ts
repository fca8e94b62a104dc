/** A sum's address carries the numbers of a finding, in either system, and gives them back. */
import { describe, expect, it } from 'vitest';
import { answerSum, sums } from '../../../desk/sums.ts';
import { readSumLink, sumLink } from '../../../web/parts/sum-link.ts';
import { example } from '../../../web/rooms/sums/example.ts';

describe('the address of a sum', () => {
  for (const system of ['imperial', 'metric'] as const) {
    it.each(sums.map((s) => s.id))(`keeps the numbers of %s, ${system}`, (id) => {
      const first = answerSum(id, example(id), system);
      if (!first.ok) throw new Error(`the example of ${id} has no result`);
      const place = readSumLink(sumLink(id, first.answer.inputs, system));
      expect(place.id).toBe(id);
      const again = answerSum(id, place.written ?? {}, system);
      expect(again.ok ? [] : again.faults).toEqual([]);
      if (!again.ok) return;
      for (const [symbol, si] of Object.entries(first.answer.inputs)) {
        // Six figures are carried.
        expect(Math.abs(again.answer.inputs[symbol] - si), symbol).toBeLessThanOrEqual(
          5e-6 * Math.abs(si) + 1e-12,
        );
      }
    });
  }

  it('without numbers opens the worked example, and an unknown sum the list', () => {
    expect(readSumLink('#sums/gap-time')).toEqual({ id: 'gap-time' });
    expect(readSumLink('#sums/no-such')).toEqual({});
    expect(readSumLink('#sums/gap-time?gap=120%20ft&odd=1')).toEqual({
      id: 'gap-time',
      written: { gap: '120 ft' },
    });
  });
});
