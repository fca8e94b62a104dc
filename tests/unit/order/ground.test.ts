/** What is amiss with first aid, fire gear and the bay: what it is to a train, from the list to the answer, the crew's sheet and the pack. */
import { describe, expect, it } from 'vitest';
import { exampleLists } from '../../../data/inspection-lists/index.ts';
import { crewSheet } from '../../../desk/crew.ts';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { pick } from '../../../desk/evidence/pick.ts';
import { inspectionContent } from '../../../desk/inspect/inspection.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { type GroundKind, type GroundRule, groundKinds } from '../../../engine/things/in-date.ts';
import { readOuting } from '../../../papers/index.ts';
import { readList } from '../../../papers/inspection/read.ts';
import { look } from '../../../records/ledger.ts';
import type { Json } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { tellFinding } from '../../../words/finding.ts';
import { asked, inForce } from '../../../words/records/asked.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';
import { plain } from '../../support/rules.ts';

const ada = await author();
const DAY = '2026-05-31';

const people = (...duties: readonly ('rider' | 'driver')[]): Outing['riders'] =>
  duties.map(
    (duty) =>
      ({
        id: duty,
        name: duty,
        mass: { value: 80, low: 80, high: 80, how: 'stated' },
        duty,
      }) as Outing['riders'][number],
  );

const found = (
  ground: GroundKind,
  rejects: boolean,
  rules: readonly GroundRule[] = [],
  more: Partial<Outing> = {},
) => {
  const was = plain(2, { riders: people('driver', 'rider'), ...more });
  const defects = [{ of: 'that thing', ground, what: 'empty', rejects, since: '2026-05-30' }];
  return askOrder({ ...was, defects, host: { ...was.host, ...(rules.length > 0 ? { ground: rules } : {}) } });
};
const severities = (...of: Parameters<typeof found>): readonly string[] =>
  found(...of).map(({ severity }) => severity);

describe('where the host says nothing', () => {
  it('riders are carried within limits without first aid and fire gear; a train without riders is told', () => {
    expect(severities('first-aid-and-fire', true)).toEqual(['limits']);
    expect(severities('first-aid-and-fire', true, [], { riders: people('driver') })).toEqual(['notes']);
    expect(found('first-aid-and-fire', true)[0].source).toBe('common practice, no source');
  });

  it('what is amiss with the bay, and what is to be mended, is told and stops nothing', () => {
    expect(severities('storage-and-bay', true)).toEqual(['notes']);
    for (const kind of groundKinds) expect(severities(kind, false)).toEqual(['notes']);
  });
});

describe('where the host says what trains do', () => {
  const rule = (what: GroundKind, rejected: GroundRule['rejected']): GroundRule => ({
    what,
    rejected,
    source: 'rule 9',
  });

  it.each([
    ['hold', 'forbids'],
    ['limits', 'limits'],
    ['told', 'notes'],
  ] as const)('%s: of what is rejected alone, riders or none', (rejected, severity) => {
    for (const kind of groundKinds) {
      expect(severities(kind, true, [rule(kind, rejected)])).toEqual([severity]);
      expect(severities(kind, true, [rule(kind, rejected)], { riders: [] })).toEqual([severity]);
      expect(severities(kind, false, [rule(kind, rejected)])).toEqual(['notes']);
    }
    expect(found('storage-and-bay', true, [rule('storage-and-bay', rejected)])[0].source).toBe('rule 9');
  });

  it('a rule for the one says nothing of the other', () => {
    expect(severities('first-aid-and-fire', true, [rule('storage-and-bay', 'told')])).toEqual(['limits']);
  });
});

/** A store in which an item of a list that comes along was rejected. */
async function rejected(list: string, item: string, of: string) {
  const read = readList(exampleLists[list]);
  if (!read.ok) throw new Error(list);
  const all = Object.fromEntries(read.value.items.map(({ id }) => [id, { result: 'right' as const }]));
  const content = await inspectionContent(read.value, of, {
    ...all,
    [item]: { result: 'reject', note: 'empty' },
  });
  const [store, clock] = [memoryStore(), clockFrom('2026-05-30T10:00:00+01:00')];
  const inspection = await said(store, ada, clock, 'inspection', content);
  return { store, clock, inspection };
}

/** What a paper finds of the ground with these records. */
async function answered(paper: Json, store: Awaited<ReturnType<typeof rejected>>['store']) {
  const shown = withShown(paper, recorded((await look(store)).entries, [], DAY));
  const read = await outingIn(shown);
  return { shown, outing: read, found: askOrder(read).filter(({ code }) => code === 'ground-amiss') };
}

const paper = (await examplePaper('steam-light')) as Json;
async function outingIn(json: Json): Promise<Outing> {
  const got = await readOuting({ path: 'o', content: JSON.stringify(json) }, async () => undefined);
  if (!got.ok) throw new Error(JSON.stringify(got.problems));
  return got.value;
}

describe('from a list that comes along', () => {
  it('reaches the answer, the crew and what is said of the records, until it is mended', async () => {
    const { store, clock, inspection } = await rejected('first-aid-and-fire', 'box', 'First aid, station');
    const { shown, outing, found } = await answered(paper, store);
    expect(found.map(({ severity }) => severity)).toEqual(['limits']);
    const voice = { system: 'metric', wording: 'uk', outing } as const;
    expect(tellFinding(found[0], voice).what).toBe('Rejected: First aid, station, empty (found 2026-05-30).');
    expect(crewSheet(shown, outing, voice).ground).toEqual(found);
    expect(asked({ store: 'x', asked: true, amiss: 0, ...inForce(outing) })).toContain('1 open defect.');
    await said(store, ada, clock, 'mended', { inspection: inspection.row.hash, item: 'box', what: 'filled' });
    expect((await answered(paper, store)).found).toEqual([]);
  });

  it('the bay is told; gone through of a vehicle it is that vehicle’s, and holds it', async () => {
    const bay = await rejected('storage-and-steaming-bay', 'lifting', 'storage and steaming bay');
    expect((await answered(paper, bay.store)).found.map(({ severity }) => severity)).toEqual(['notes']);
    const [{ name }] = (await outingIn(paper)).train.vehicles;
    const of = await rejected('storage-and-steaming-bay', 'wheels', name);
    const { outing } = await answered(paper, of.store);
    expect(askOrder(outing).map(({ code, severity }) => [code, severity])).toContainEqual([
      'defect-open',
      'forbids',
    ]);
  });

  it('is in a pack of any vehicle, with what was done', async () => {
    const { store, clock, inspection } = await rejected('first-aid-and-fire', 'box', 'First aid, station');
    const mended = await said(store, ada, clock, 'mended', {
      inspection: inspection.row.hash,
      item: 'box',
      what: 'filled',
    });
    const picked = pick((await look(store)).entries, { of: ['Fenwick'] }).map(({ first }) => first.row.hash);
    expect(picked).toEqual([inspection.row.hash, mended.row.hash]);
  });
});
