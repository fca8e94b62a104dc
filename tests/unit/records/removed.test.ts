/** How long records are kept: what has ended goes, its hash stays, all verifies; and nothing goes that an answer hangs on. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Kind } from '../../../papers/record/fields.ts';
import { about, allNamed, standsIn, typedIn } from '../../../records/about.ts';
import { ended } from '../../../records/ended.ts';
import { readStoreFile, storeFile } from '../../../records/file.ts';
import { look, take } from '../../../records/ledger.ts';
import { personNamed, personOf } from '../../../records/names.ts';
import type { Author, Entry, Json } from '../../../records/record.ts';
import { remove } from '../../../records/remove.ts';
import { goneOf, removalsIn } from '../../../records/removed.ts';
import type { Store } from '../../../records/store.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { newestOf } from '../../../records/verify.ts';
import { tellStriking, tellTyped } from '../../../words/records/striking.ts';
import { tellFault, tellWhole } from '../../../words/records/verified.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { departure } from '../../support/incidents.ts';

let store: Store;
let ada: Author;
const on = (day: string) => clockFrom(`${day}T10:00:00Z`);
const say = (day: string, kind: Kind, content: Json, amends?: string): Promise<Entry> =>
  said(store, ada, on(day), kind, content, amends);
const rule = (kind: string, keep: string) =>
  say('2020-01-01', 'retention', { kind, keep, source: 'club rule 9' });
const end = async (today: string): Promise<readonly string[]> =>
  ended((await look(store)).entries, today)
    .map(({ kind }) => kind)
    .sort();
const note = (day: string, text = 'x') => say(day, 'note', { text });
const left = (day: string, vehicles = ['Engine']) =>
  say(day, 'departure', departure({ day, vehicles }).content);

beforeEach(async () => {
  store = memoryStore();
  ada = await author();
});

describe('what has ended', () => {
  it('is kept to its last day, that day included; without a rule for ever', async () => {
    await note('2024-03-01');
    expect(await end('2099-01-01')).toEqual([]);
    await rule('note', '1 year');
    expect(await end('2025-03-01')).toEqual([]);
    expect(await end('2025-03-02')).toEqual(['note']);
    // The newest rule counts.
    await rule('note', '5 years');
    expect(await end('2025-03-02')).toEqual([]);
  });
  it('goes with all that says it anew and all that closes it, and not before the last of them has ended', async () => {
    await rule('incident', '1 year');
    await rule('note', '1 year');
    const first = await note('2024-03-01');
    await say('2024-09-01', 'note', { text: 'y' }, first.row.hash);
    expect(await end('2025-08-31')).toEqual([]);
    expect(await end('2025-09-02')).toEqual(['note', 'note']);
    const fell = await say('2024-01-01', 'incident', { what: 'fall', facts: 'slipped' });
    const todo = await say('2024-01-02', 'measure', { incident: fell.row.hash, what: 'grit' });
    await say('2024-02-01', 'measured', { measure: todo.row.hash, what: 'gritted' });
    expect(await end('2025-02-01')).toEqual([]);
    expect(await end('2025-02-02')).toEqual(['incident', 'measure', 'measured']);
  });
});

it('a removal on the last day, by whatever program, is none; on the day after it is one', async () => {
  const kept = await rule('note', '1 year');
  const gone = goneOf(await note('2024-03-01'), '2024-03-01', kept.row.hash);
  const early = await say('2025-03-01', 'removal', { removed: [gone] });
  expect(removalsIn([kept, early])).toMatchObject({ gone: new Map(), wrong: [early] });
  const due = await say('2025-03-02', 'removal', { removed: [gone] });
  expect(removalsIn([kept, due])).toMatchObject({ gone: new Map([[gone.hash, gone]]), wrong: [] });
});

describe('what an answer still hangs on stays, whatever its age', () => {
  const late = '2099-01-01';
  it('a limit that is not lifted, and the incident that it comes from', async () => {
    await rule('restriction', '1 day');
    await rule('incident', '1 day');
    const seen = await say('2024-01-01', 'incident', { what: 'track-defect', facts: 'frog wide' });
    const limit = { line: 'L', from: '1 m', to: '2 m', why: 'frog', because: seen.row.hash };
    const set = await say('2024-01-01', 'restriction', limit);
    expect(await end(late)).toEqual([]);
    await say('2024-02-01', 'lifted', { restriction: set.row.hash, why: 'new frog' });
    expect(await end(late)).toEqual(['incident', 'lifted', 'restriction']);
  });
  it('an incident with a measure that is open, and a defect that is not mended', async () => {
    await rule('incident', '1 day');
    await rule('inspection', '1 day');
    const fell = await say('2024-01-01', 'incident', { what: 'fall', facts: 'slipped' });
    await say('2024-01-01', 'measure', { incident: fell.row.hash, what: 'grit' });
    const looked = [{ item: 'glass', ask: 'clear?', result: 'reject', note: 'blows' }];
    const list = { list: 'l', listHash: '0'.repeat(64), when: 'daily', of: 'Engine', looked };
    const found = await say('2024-01-01', 'inspection', list);
    expect(await end(late)).toEqual([]);
    await say('2024-01-02', 'mended', { inspection: found.row.hash, item: 'glass', what: 'packed' });
    expect(await end(late)).toEqual(['inspection', 'mended']);
  });
  it('a train that is out, one that an incident names, and days of service that a test counts', async () => {
    await rule('departure', '1 day');
    await rule('certificate', '1 day');
    const out = await left('2024-01-01');
    expect(await end(late)).toEqual([]);
    const back = (of: Entry) => say('2024-01-05', 'arrival', { departure: of.row.hash });
    await back(out);
    expect(await end(late)).toEqual(['arrival', 'departure']);
    await say('2024-01-05', 'incident', { what: 'fall', facts: 'slipped', departure: out.row.hash });
    expect(await end(late)).toEqual([]);
    const [counted, other] = [await left('2024-03-01'), await left('2024-03-01', ['Car'])];
    await back(counted);
    await back(other);
    await say('2024-02-01', 'certificate', {
      what: 'boiler-steam-test',
      of: 'Engine',
      on: '2024-02-01',
      interval: '31 service days',
      by: 'x',
    });
    // That of the car alone goes.
    expect(await end('2024-06-01')).toEqual(['arrival', 'departure']);
  });
  it('turns of duty of two months, from which hours of a week and days in a row are counted', async () => {
    await rule('turn', '1 day');
    const { person } = await personNamed(store, 'A Driver');
    await say('2026-03-01', 'turn', { person, what: 'on' });
    await say('2026-03-01', 'turn', { person, what: 'off' });
    expect(await end('2026-05-02')).toEqual([]);
    expect(await end('2026-05-03')).toEqual(['turn', 'turn']);
  });
  it('a certificate that stands; one that is out goes', async () => {
    await rule('certificate', '1 month');
    await say('2024-02-01', 'certificate', {
      what: 'insurance',
      on: '2024-02-01',
      until: '2024-12-31',
      by: 'x',
    });
    expect(await end('2024-12-31')).toEqual([]);
    expect(await end('2025-01-01')).toEqual(['certificate']);
  });
});

describe('removed', () => {
  const [today, secret] = ['2026-01-01', 'a remark of somebody'];
  async function cleared(): Promise<Entry> {
    const gone = await note('2024-03-01', secret);
    await note('2025-12-01', 'new');
    await rule('note', '1 year');
    const done = await remove(store, ada, on(today));
    expect(done).toMatchObject({ ok: true, gone: [{ hash: gone.row.hash, number: 1, kind: 'note' }] });
    return gone;
  }

  it('its content is gone, its hash stands, the chain verifies, and it is told apart from what is missing', async () => {
    const gone = await cleared();
    expect(JSON.stringify(await store.rows())).not.toContain(secret);
    const whole = await look(store);
    expect(whole.faults).toEqual([]);
    expect(tellWhole(whole, 0).join(' ')).toMatch(/1 more was removed on purpose.*\(1 note\)/);
    // The same gap without a record of its removal is missing.
    const others = (await store.rows()).filter(({ text }) => !text.includes('"kind":"removal"'));
    const bare = memoryStore();
    await bare.take(others, [], 0);
    expect((await look(bare)).faults).toMatchObject([{ what: 'missing', hash: gone.row.hash }]);
    // And one more that is taken out is found as ever.
    const [, kept] = whole.entries;
    await store.remove([kept.row.hash]);
    expect((await look(store)).faults).toMatchObject([{ what: 'missing', hash: kept.row.hash }]);
  });
  it('by a record that its author did not sign, what is gone is missing', async () => {
    const gone = await cleared();
    const rows = await store.rows();
    const signature = rows.find(({ text }) => text.includes('"kind":"note"'))?.signature ?? '';
    const forged = memoryStore();
    await forged.take(
      rows.map((row) => (row.text.includes('"kind":"removal"') ? { ...row, signature } : row)),
      [],
      0,
    );
    const { faults } = await look(forged);
    expect(faults.map(({ what }) => what).sort()).toEqual(['missing', 'signature']);
    expect(faults).toContainEqual(expect.objectContaining({ what: 'missing', hash: gone.row.hash }));
  });
  it('goes out as a file that verifies, and does not come back from another device', async () => {
    const elsewhere = memoryStore();
    const before = await note('2024-02-01', 'first');
    await take(elsewhere, await store.rows());
    await rule('note', '1 year');
    await remove(store, ada, on(today));
    const file = await readStoreFile(new TextEncoder().encode(await storeFile(await look(store))));
    expect(file.faults).toEqual([]);
    expect(await take(store, await elsewhere.rows())).toEqual({ added: 0, there: 0, removed: 1 });
    expect(JSON.stringify(await store.rows())).not.toContain(before.row.text);
    // There it stays until that device removes it by the same rule.
    await take(elsewhere, await store.rows());
    expect((await look(elsewhere)).faults).toEqual([]);
    expect((await look(elsewhere)).forks).toEqual([]);
    expect(await remove(elsewhere, await author('other'), on(today))).toMatchObject({
      gone: [{}],
      entries: [],
    });
    expect((await look(elsewhere)).faults).toEqual([]);
  });
  it('an author’s newest too; and whoever wrote it goes on writing', async () => {
    const bo = await author('other');
    await rule('note', '1 year');
    await said(store, bo, on('2024-03-01'), 'note', { text: 'old' });
    await remove(store, ada, on(today));
    expect((await look(store)).faults).toEqual([]);
    const copy = memoryStore();
    await take(copy, await store.rows());
    expect((await look(copy)).faults).toEqual([]);
    await said(store, bo, on('2026-02-01'), 'note', { text: 'new' });
    expect(await look(store)).toMatchObject({ faults: [], forks: [] });
  });
  it('one branch stays one: what stood before it is not taken for its author’s newest', async () => {
    await rule('note', '1 year');
    await note('2024-03-01');
    await note('2025-12-01');
    await remove(store, ada, on(today));
    const { entries } = await look(store);
    expect(newestOf(entries).map(({ number }) => number)).toEqual([4]);
    // Nor is a removed newest forgotten: what would be cut off with it is missed.
    const bo = await author('other');
    const old = await said(store, bo, on('2024-03-01'), 'note', { text: 'old' });
    await remove(store, ada, on(today));
    expect(newestOf((await look(store)).entries).map(({ hash }) => hash)).toContain(old.row.hash);
  });
  it.each([
    ['too early', '2025-03-01', 'note'],
    ['of another kind than its rule', '2020-03-01', 'departure'],
  ])('%s it is a fault, and the record is missing', async (_, day, kind) => {
    const gone = await note('2025-03-01');
    const { row } = await rule('note', '1 year');
    const { hash } = gone.row;
    const one = { hash, author: ada.name, number: 1, kind, day, under: row.hash };
    const forged = await said(store, ada, on('2026-01-01'), 'removal', { removed: [one] });
    await store.remove([hash]);
    const { faults, entries } = await look(store);
    expect(faults.map(({ what }) => what).sort()).toEqual(['missing', 'removal']);
    const told = faults.map((fault) => tellFault(fault, { entries, names: [] })).join('\n');
    expect(told).toContain(`record ${forged.row.hash.slice(0, 8)}`);
    expect(told).toContain('removes what no rule lets it remove');
  });
  it('with another number than it had it does not fit the chain', async () => {
    const gone = await note('2024-03-01');
    await note('2024-03-02');
    const { row } = await rule('note', '1 year');
    const one = {
      hash: gone.row.hash,
      author: ada.name,
      number: 7,
      kind: 'note',
      day: '2024-03-01',
      under: row.hash,
    };
    await said(store, ada, on('2026-01-01'), 'removal', { removed: [one] });
    await store.remove([gone.row.hash]);
    expect((await look(store)).faults.map(({ what }) => what).sort()).toEqual(['order', 'removal']);
  });
  it('from a store in which something is amiss nothing is removed; stopped half-way it is done again', async () => {
    const gone = await note('2024-03-01', secret);
    await rule('note', '1 year');
    const half: Store = { ...store, remove: async () => Promise.reject(new Error('killed')) };
    await expect(remove(half, ada, on(today))).rejects.toThrow('killed');
    expect((await look(store)).faults).toEqual([]);
    const again = await remove(store, ada, on(today));
    expect(again).toMatchObject({ gone: [{ hash: gone.row.hash }], entries: [] });
    expect(JSON.stringify(await store.rows())).not.toContain(secret);
    await store.remove([(await look(store)).entries[0].row.hash]);
    expect(await remove(store, ada, on(today))).toEqual({ ok: false, faults: expect.any(Number) });
  });
});

describe('a person', () => {
  it('all about one is given out: the name, where it is named, what it wrote; nothing of others', async () => {
    const named = await personNamed(store, 'An Invented Person');
    const other = await personNamed(store, 'Another');
    await say('2024-01-01', 'author', { person: named.person });
    await note('2024-01-02');
    const bo = await author('other');
    const saw = { what: 'fall', facts: 'slipped', saw: [named.person, other.person] };
    await said(store, bo, on('2024-01-03'), 'incident', saw);
    await said(store, bo, on('2024-01-03'), 'note', { text: 'no matter of hers' });
    const all = about([named], (await look(store)).entries);
    expect(all.name).toBe('An Invented Person');
    expect(all.records.map(({ kind, why }) => [kind, why])).toEqual([
      ['author', 'named in it'],
      ['note', 'wrote it'],
      ['incident', 'named in it'],
    ]);
    expect(about([other], (await look(store)).entries).records.map(({ kind }) => kind)).toEqual(['incident']);
    // Struck out, the records stay and verify, and nothing in them tells who it was.
    await store.strike(named.person);
    expect((await look(store)).faults).toEqual([]);
    expect(JSON.stringify([await store.rows(), await store.names()])).not.toContain('An Invented Person');
  });
  it('where the name itself was typed is told before it is struck out, however it is cased and spaced', async () => {
    const named = await personNamed(store, 'Al Larch');
    const typed = [
      await note('2024-01-01', 'relieved by AL  LARCH at the hut'),
      await say('2024-01-02', 'departure', {
        ...departure({ day: '2024-01-02' }).content,
        against: 'Al Larch said so',
      }),
    ];
    for (const text of ['Al Larches grow by the hut', 'ral larch', 'Al']) await note('2024-01-03', text);
    const { entries } = await look(store);
    expect(typedIn('Al Larch', entries).map(({ row }) => row.hash)).toEqual(typed.map(({ row }) => row.hash));
    expect(about([named], entries).records.map(({ why }) => why)).toEqual(['typed in it', 'typed in it']);
    const [said] = tellTyped('Al Larch', typed);
    for (const { row } of typed) expect(said).toContain(row.hash.slice(0, 8));
    expect(tellTyped('Al Larch', [])).toEqual([]);
    // A word of ours is nobody's name.
    expect(typedIn('Driver', entries)).toEqual([]);
  });
  it('of a departure neither paper nor riders go along', async () => {
    const named = await personNamed(store, 'A Driver');
    const { content } = departure({ day: '2024-01-01' });
    await say('2024-01-01', 'departure', { ...content, crew: [{ duty: 'driver', person: named.person }] });
    const [{ content: given }] = about([named], (await look(store)).entries).records;
    expect(Object.keys(given)).not.toContain('paper');
    expect(Object.keys(given)).toContain('crew');
  });
  it('whose name a host, a line or a vehicle has in the paper of a departure is told, with what it stands in', async () => {
    const named = await personNamed(store, 'Al Larch');
    const { content } = departure({ day: '2024-01-01' });
    const paper = {
      host: { name: 'Al Larch’s garden line' },
      riders: [{ name: 'person 1', duty: 'driver' }],
    };
    const left = await say('2024-01-01', 'departure', { ...content, paper });
    const { entries } = await look(store);
    expect(typedIn('Al Larch', entries).map(({ row }) => row.hash)).toEqual([left.row.hash]);
    expect(typedIn('Driver', entries)).toEqual([]);
    const [one] = about([named], entries).records;
    expect(one).toMatchObject({ why: 'typed in it', typed: ['Al Larch’s garden line'] });
    expect(JSON.stringify(one)).not.toContain('person 1');
  });
  it('papers keep whom somebody typed there: of the one that is open it is told', () => {
    const paper = { riders: [{ name: 'Al  LARCH', duty: 'driver' }] };
    expect(standsIn(paper, 'Al Larch')).toBe(true);
    expect(standsIn(paper, 'Al')).toBe(true);
    expect(standsIn(paper, 'Larches')).toBe(false);
    expect(standsIn(paper, 'driver')).toBe(false);
    const told = (open: boolean): string => tellStriking('Al Larch', 2, [], false, open).join(' ');
    for (const open of [true, false]) expect(told(open)).toContain('and papers: an outing, or a list');
    expect(told(true)).toContain('Al Larch stands in the outing that is open here');
    expect(told(false)).not.toContain('open here');
  });
  it('two devices that were put together know one name twice: all about it is of both', async () => {
    const first = await personNamed(store, 'Al Larch');
    const salt = '00'.repeat(16);
    const second = { person: await personOf('al  larch', salt), salt, name: 'al  larch' };
    await store.name(second);
    await say('2024-01-01', 'author', { person: first.person });
    const bo = await author('other');
    await said(store, bo, on('2024-01-02'), 'author', { person: second.person });
    await said(store, bo, on('2024-01-03'), 'note', { text: 'points oiled' });
    const all = allNamed('Al Larch', await store.names());
    expect(all.map(({ person }) => person).sort()).toEqual([first.person, second.person].sort());
    expect(about(all, (await look(store)).entries).records.map(({ kind }) => kind)).toEqual([
      'author',
      'author',
      'note',
    ]);
    expect(allNamed('Al', await store.names())).toEqual([]);
  });
});
