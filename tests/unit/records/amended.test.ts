/** What is said anew: the newest stands, everything that was said before stays, and nothing of another kind says it anew. */
import { describe, expect, it } from 'vitest';
import { standing } from '../../../records/amended.ts';
import { dueOn } from '../../../records/due.ts';
import { look } from '../../../records/ledger.ts';
import type { Json } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { verify } from '../../../records/verify.ts';
import { author, clockFrom, noted, said } from '../../support/club-records.ts';

const ada = await author();
const chains = (until: string): Json => ({
  what: 'chains',
  of: 'Bench',
  on: '2026-01-01',
  until,
  by: 'A. Tester',
});

/** Said once and twice anew. */
async function saidThrice() {
  const [store, clock] = [memoryStore(), clockFrom()];
  const first = await said(store, ada, clock, 'certificate', chains('2026-01-31'));
  await said(store, ada, clock, 'certificate', chains('2026-02-28'), first.row.hash);
  const last = await said(store, ada, clock, 'certificate', chains('2026-03-31'), first.row.hash);
  return { store, clock, first, last };
}

describe('said anew', () => {
  it('the newest stands, and neither the first nor what came between is gone', async () => {
    const { store, first, last } = await saidThrice();
    const { entries, faults } = await look(store);
    expect([entries.length, faults]).toEqual([3, []]);
    expect(dueOn(entries, '2026-03-31')).toMatchObject([{ state: 'stands', last: '2026-03-31' }]);
    const [one, ...others] = standing(entries, 'certificate');
    expect(others).toEqual([]);
    expect([one.first.row.hash, one.amendments.length, one.amendments[1].row.hash]).toEqual([
      first.row.hash,
      2,
      last.row.hash,
    ]);
  });

  it('nothing is gone where another record is amiss, either', async () => {
    const { store, clock } = await saidThrice();
    await noted(store, ada, clock, 'rail greasy');
    const rows = (await store.rows()).map((row) => ({ ...row, text: row.text.replace('greasy', 'dry') }));
    const { entries, faults } = await verify(rows);
    expect(faults.map(({ what }) => what)).toEqual(['altered']);
    expect(entries.map(({ body }) => body.content['until'])).toEqual([
      '2026-01-31',
      '2026-02-28',
      '2026-03-31',
    ]);
  });

  it('what says another kind of thing changes nothing of it', async () => {
    const { store, clock, first } = await saidThrice();
    await said(store, ada, clock, 'note', { text: 'it is no certificate' }, first.row.hash);
    const { entries, faults } = await look(store);
    expect([entries.length, faults]).toEqual([4, []]);
    expect(dueOn(entries, '2026-03-31')).toMatchObject([{ state: 'stands', last: '2026-03-31' }]);
  });
});
