/** Whose certificates count is the host's to say: another's holds, and one that does not say whose cannot be told. */
import { describe, expect, it } from 'vitest';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import type { Shown } from '../../../engine/things/in-date.ts';
import { readOuting } from '../../../papers/index.ts';
import { look } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import type { Json } from '../../../records/record.ts';
import type { Named } from '../../../records/store.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { tellFinding } from '../../../words/finding.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';
import { withHost } from '../../support/rules.ts';

const source = 'rule 1';
const asking = (shown: readonly Partial<Shown>[], by?: readonly string[]): Outing =>
  withHost(
    2,
    { inDate: [{ what: 'insurance', of: 'club', ...(by ? { by } : {}), source }] },
    { shown: shown.map((one) => ({ what: 'insurance', state: 'stands', ...one })) },
  );
const told = (of: Outing): string[] =>
  askOrder(of).map((f) => `${f.severity} ${f.code} ${(f.facts as { why?: string }).why ?? ''}`.trim());
const here = ['This Club', 'That Club'];

describe('a host that accepts some', () => {
  it.each([
    [[{ by: 'That Club' }], []],
    [[{ by: 'Another Club' }], ['forbids not-signed-for-this by']],
    [[{}], ['unknown not-signed-for-this by']],
    [[], ['unknown not-shown']],
    // The one that counts counts, whatever else is shown.
    [[{ by: 'Another Club' }, { by: 'This Club' }, {}], []],
    // And is none the less out of date.
    [[{ by: 'This Club', state: 'out' }, { by: 'Another Club' }], ['forbids out-of-date']],
    [[{ by: 'Another Club', signedFor: { line: 'Elsewhere' } }], ['forbids not-signed-for-this by']],
    [[{ signedFor: { line: 'Elsewhere' } }], ['forbids not-signed-for-this line']],
  ] as const)('shown %j', (shown, found) => expect(told(asking(shown, here))).toEqual(found));

  it('and one that says nothing of whose takes anybody’s', () => {
    expect(told(asking([{}]))).toEqual([]);
    expect(told(asking([{ by: 'Another Club' }]))).toEqual([]);
  });

  it('is told in words, with whose it accepts', () => {
    const say = (shown: Partial<Shown>) => {
      const of = asking([shown], here);
      return tellFinding(askOrder(of)[0], { system: 'metric', wording: 'uk', outing: of }).what;
    };
    expect(say({ by: 'Another Club' })).toBe(
      'the club: insurance is by nobody whom this host accepts (This Club, That Club).',
    );
    expect(say({})).toBe('the club: insurance does not say by whom: this host accepts This Club, That Club.');
  });
});

describe('from the records', () => {
  const steam = examplePaper('steam-light') as Promise<Json>;
  const asked = async (by: readonly string[] | undefined): Promise<Json> => {
    const paper = await steam;
    const host = { ...(paper['host'] as Json), inDate: [{ what: 'insurance', of: 'club', by, source }] };
    const [store, ada, clock] = [memoryStore(), await author(), clockFrom()];
    await said(store, ada, clock, 'certificate', {
      what: 'insurance',
      on: '2026-01-01',
      until: '2026-12-31',
      by: 'An Insurer',
    });
    const { entries } = await look(store, 'chain');
    return withShown(JSON.parse(JSON.stringify({ ...paper, host })), recorded(entries, [], '2026-05-31'));
  };

  it('who gave it goes to a host that asks, however it is spelled, and to no other', async () => {
    const paper = await asked(['an  INSURER']);
    const read = await readOuting({ path: 'o', content: JSON.stringify(paper) }, async () => undefined);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(told(read.value)).toEqual([]);
    expect(JSON.stringify((await asked(undefined))['shown'])).not.toContain('An Insurer');
  });

  it('an inspection is by whoever went through it, or said it anew; of a name that is not known nobody can tell', async () => {
    const paper = await steam;
    const rule = { what: 'inspection', of: 'engine', by: ['A. Keeper'], source };
    const host = { ...(paper['host'] as Json), inDate: [rule] };
    const [store, keeper, other, clock] = [memoryStore(), await author(), await author(), clockFrom()];
    const named = await personNamed(store, 'A. Keeper');
    await said(store, keeper, clock, 'author', { person: named.person });
    const looked = [{ item: 'glass', ask: 'Glass clear', result: 'right' }];
    const all = { list: 'L', listHash: 'a'.repeat(64), when: 'daily', of: 'Fenwick', looked };
    const found = async (names: readonly Named[]): Promise<string[]> => {
      const { entries } = await look(store, 'chain');
      const day = clock.now().slice(0, 10);
      const put = withShown({ ...paper, host, date: day }, recorded(entries, names, day));
      const read = await readOuting({ path: 'o', content: JSON.stringify(put) }, async () => undefined);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      return told(read.value);
    };
    const first = await said(store, keeper, clock, 'inspection', all);
    expect(await found([named])).toEqual([]);
    expect(await found([])).toEqual(['unknown not-signed-for-this by']);
    await said(store, other, clock, 'inspection', all, first.row.hash);
    expect(await found([named])).toEqual(['unknown not-signed-for-this by']);
    await said(store, other, clock, 'author', { person: (await personNamed(store, 'B. Other')).person });
    expect(await found(await store.names())).toEqual(['forbids not-signed-for-this by']);
  });
});
