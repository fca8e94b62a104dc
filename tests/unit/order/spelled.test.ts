/** Whose it is, however it was spelled where it was found: what is amiss is not missed for a letter. */
import { describe, expect, it } from 'vitest';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { meant } from '../../../papers/compile/named.ts';
import { readOuting } from '../../../papers/index.ts';
import { look } from '../../../records/ledger.ts';
import type { Json } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';

it('a name without a number means each of several alike, and one with it that one', () => {
  const cars = ['Light car 1', 'Light car 2', 'Light car 12', 'Light carriage'];
  expect(meant('light  CAR', cars)).toEqual(['Light car 1', 'Light car 2', 'Light car 12']);
  expect(meant('Light car 1', cars)).toEqual(['Light car 1']);
  expect(meant('Light', cars)).toEqual([]);
  expect(meant('Light car', [...cars, 'Light car'])).toEqual(['Light car']);
  expect(meant('Bru\u0308cke', ['Br\u00fccke'])).toEqual(['Br\u00fccke']);
});

const paper = (await examplePaper('steam-light')) as Json;
const line = (paper['line'] as Json)['name'] as string;
const read = async (json: Json): Promise<Outing> => {
  const got = await readOuting({ path: 'o', content: JSON.stringify(json) }, async () => undefined);
  if (!got.ok) throw new Error(JSON.stringify(got.problems));
  return got.value;
};
const looked = (item: string) => ({ item, ask: 'x', result: 'reject', note: 'cracked' });

describe('what is recorded of this train and line', () => {
  it.each(['FENWICK', ' fenwick', 'light car', 'Light-Car 1', line.toUpperCase()])(
    'holds it as “%s” too',
    async (of) => {
      const [store, ada, clock] = [memoryStore(), await author(), clockFrom('2026-05-30T08:00:00Z')];
      await said(store, ada, clock, 'inspection', {
        list: 'L',
        listHash: 'a'.repeat(64),
        when: 'daily',
        of,
        looked: [looked('a')],
      });
      const outing = await read(withShown(paper, recorded((await look(store)).entries, [], '2026-05-31')));
      expect(askOrder(outing).map((f) => [f.code, f.severity])).toContainEqual(['defect-open', 'forbids']);
    },
  );
  it('shuts the line however it is spelled, and under another name is refused', async () => {
    const shut = (of: string): Json => ({
      ...paper,
      restrictions: [{ of, from: '120 ft', to: '200 ft', why: 'x', since: '2026-05-30' }],
    });
    const spelled = await read(shut(`${line.toLowerCase()} `));
    expect(askOrder(spelled).map((f) => f.code)).toEqual(['line-closed']);
    // A slip of the pen must not open the line.
    const refused = await readOuting(
      { path: 'o', content: JSON.stringify(shut(line.slice(1))) },
      async () => undefined,
    );
    expect(refused.ok ? [] : refused.problems).toMatchObject([
      { path: 'restrictions[0].of', expected: `"${line}", the line of this outing` },
    ]);
  });
  it('a certificate that names several alike without a number is of none of them', async () => {
    const host = { ...(paper['host'] as Json), inDate: [{ what: 'chains', of: 'vehicle', source: 'x' }] };
    const unshown = async (of: string): Promise<number> => {
      const shown = [{ what: 'chains', of, on: '2026-01-01', until: '2027-01-01' }];
      const found = askOrder(await read({ ...paper, date: '2026-05-31', host, shown }));
      return found.filter(({ code }) => code === 'not-shown').length;
    };
    const all = await unshown('Elsewhere');
    expect([await unshown('light car'), await unshown('LIGHT CAR 1')]).toEqual([all, all - 1]);
  });
});
