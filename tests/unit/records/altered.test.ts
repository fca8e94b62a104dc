/** Whatever is changed in a store is found, and where: bytes of its file, its rows, and rows that are gone. */
import { describe, expect, it } from 'vitest';
import { canonical } from '../../../records/canonical.ts';
import { readStoreFile, storeFile } from '../../../records/file.ts';
import { sha256, signed } from '../../../records/hash.ts';
import { look } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import { type Head, type Row, written } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { sha256 as sha256Now } from '../../../records/stores/sqlite-crypto.ts';
import { newestOf, verify } from '../../../records/verify.ts';
import { author, clockFrom, noted, unsignedAuthor } from '../../support/club-records.ts';
import { runs } from '../../support/tier.ts';

const clock = clockFrom();
const store = memoryStore();
const [ada, ben] = [await author('shed'), await author('gate')];
for (let i = 0; i < 6; i++) {
  await noted(store, ada, clock, `engine looked over, day ${i}`);
  await noted(store, ben, clock, `gate opened ${'🚂'.repeat(i)}`);
}
await noted(store, unsignedAuthor(), clock, 'by one who has no key');
await personNamed(store, 'An Invented Person');
const whole = await look(store);
const text = await storeFile(whole, await store.names());
const bytes = new TextEncoder().encode(text);

/** The same chances every time. */
function chances(seed: number): () => number {
  let at = seed;
  return () => {
    at = (Math.imul(at, 1664525) + 1013904223) >>> 0;
    return at / 2 ** 32;
  };
}

describe('a store’s file', () => {
  it('is as it was written', async () => {
    const read = await readStoreFile(bytes);
    expect(read.faults).toEqual([]);
    expect(read.verified.entries).toHaveLength(13);
    expect(read.verified.unsigned).toBe(1);
    expect(read.names).toEqual(await store.names());
    expect(await storeFile(read.verified, read.names)).toBe(text);
  });

  it('any one byte changed is found, and in which record', async () => {
    const chance = chances(20260501);
    const starts = [0, ...[...bytes.keys()].filter((i) => bytes[i - 1] === 10)];
    for (let n = 0; n < runs(150, 10_000); n++) {
      const at = Math.floor(chance() * bytes.length);
      const changed = bytes.slice();
      changed[at] = (bytes[at] + 1 + Math.floor(chance() * 255)) % 256;
      const { faults } = await readStoreFile(changed);
      const line = starts.findLastIndex((start) => start <= at);
      const where = `byte ${at}, ${bytes[at]} to ${changed[at]}, line ${line + 1}`;
      expect(faults.length, where).toBeGreaterThan(0);
      // The first line is the head's, the last the name's; what stands between is a record's, by its number.
      if (line === 0) expect(faults[0].what, where).toMatch(/head|missing|newest/);
      else if (line === 14)
        expect(
          faults.map((f) => f.what),
          where,
        ).toContain('name');
      else
        expect(
          faults.some((f) => 'row' in f && f.row === line - 1),
          `${where}: ${JSON.stringify(faults)}`,
        ).toBe(true);
    }
  });

  it.each(['\n', '{"person":1}\n', `${JSON.stringify({ body: {}, hash: 'a'.repeat(64) })}\n`])(
    'megabytes of %j are refused in the time of reading them',
    async (line) => {
      const size = runs(1e6, 8e6);
      const { user, system } = process.cpuUsage();
      const { faults } = await readStoreFile(
        new TextEncoder().encode(line.repeat(Math.ceil(size / line.length))),
      );
      const took = process.cpuUsage({ user, system });
      expect(faults.length).toBeGreaterThan(0);
      expect((took.user + took.system) / size).toBeLessThan(0.5);
    },
  );

  it('a byte more or fewer is found', async () => {
    for (const cut of [
      bytes.slice(0, -1),
      bytes.slice(1),
      bytes.slice(0, 700),
      new Uint8Array([...bytes, 10]),
    ])
      expect((await readStoreFile(cut)).faults.length).toBeGreaterThan(0);
  });
});

const rows = await store.rows();
const newest = await store.newest();
const without = (i: number): Row[] => rows.filter((_, j) => j !== i);

describe('rows of a store', () => {
  it('each that is gone is named', async () => {
    for (const [i, { hash }] of rows.entries()) {
      const { faults } = await verify(without(i), newest);
      expect(faults.map((f) => [f.what, f.hash])).toContainEqual(['missing', hash]);
    }
  });

  it('what the store says of who wrote last is held against the records', async () => {
    const [one] = newest;
    for (const wrong of [
      { ...one, author: 'f'.repeat(64) },
      { ...one, number: 99 },
    ])
      expect((await verify(rows, [wrong])).faults).toEqual([{ what: 'newest', ...wrong }]);
  });

  it('one that follows is what tells of the one before it, where the store does not say what is newest', async () => {
    const lost = whole.entries.find(({ body }) => body.author === ben.name && body.number === 3);
    const { faults } = await verify(rows.filter((row) => row !== lost?.row));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ what: 'missing', author: ben.name, number: 3 });
  });

  it('a text put together anew with its hash is not what its author signed', async () => {
    const clumsy = { ...rows[0], text: rows[0].text.replace('day 0', 'day 9') };
    expect((await verify([clumsy])).faults[0]).toMatchObject({ what: 'altered', hash: rows[0].hash });
    // What names it does not miss it as well.
    expect((await verify([clumsy, ...without(0)], newest)).faults).toHaveLength(1);
    const { sha256 } = await import('../../../records/hash.ts');
    const cunning = { ...clumsy, hash: await sha256(clumsy.text) };
    expect((await verify([cunning])).faults[0]).toMatchObject({ what: 'signature', hash: cunning.hash });
    // And the one after it misses what it names.
    const { faults } = await verify([cunning, ...without(0)], newest);
    expect(faults.map((f) => f.what).sort()).toEqual(['missing', 'signature']);
  });

  it('a signature that is taken away, or another’s, is found', async () => {
    const { signature: _, ...bare } = rows[0];
    expect((await verify([bare])).faults[0]?.what).toBe('signature');
    const other = { ...rows[0], signature: rows[1].signature ?? '' };
    expect((await verify([other])).faults[0]?.what).toBe('signature');
  });

  it('what an author without a key wrote is said to be unsigned, never to be signed', async () => {
    const unsigned = rows.filter(({ signature }) => signature === undefined);
    expect(await verify(unsigned)).toMatchObject({ faults: [], unsigned: 1 });
    const forged = { ...unsigned[0], signature: rows[0].signature ?? '' };
    expect((await verify([forged])).faults[0]?.what).toBe('signature');
  });

  it('a record that another says anew, and that is not there, is missed', async () => {
    const [here, cy] = [memoryStore(), await author()];
    const { said } = await import('../../support/club-records.ts');
    const first = whole.entries[0].row.hash;
    await said(here, cy, clock, 'note', { text: 'not so' }, first);
    expect((await verify(await here.rows())).faults).toMatchObject([{ what: 'missing', hash: first }]);
    expect((await verify([...(await here.rows()), ...rows], newest)).faults).toEqual([]);
  });

  it('a record of another author, or a wrong number, in the chain is found', async () => {
    const after = newestOf(whole.entries).find((n) => n.author === ben.name);
    const row = await written(
      { kind: 'note', content: { text: 'x' }, said: clock.now() },
      ada,
      after,
      clock.now(),
      '0.0.0',
    );
    const { faults } = await verify([...rows, row]);
    expect(faults).toMatchObject([{ what: 'order', row: rows.length, hash: row.hash }]);
  });
});

describe('a look along the chain', () => {
  const rows = whole.entries.map(({ row }) => row);
  const chained = (those: readonly Row[]) => verify(those, newestOf(whole.entries), { depth: 'chain' });
  const forgedText = (row: Row): string => row.text.replace('looked over', 'all in order');
  const forge = async (row: Row): Promise<Row> => {
    const text = forgedText(row);
    return { ...row, text, hash: await sha256(text) };
  };
  const ofAda = rows.filter(({ text }) => text.includes('looked over'));

  it('finds all as the whole look does, where nothing is amiss', async () => {
    const { entries, faults } = await chained(rows);
    expect([entries, faults]).toEqual([whole.entries, []]);
  });

  it.each([0, 2, 5])('what was altered or forged at %i is found, and counts for nothing', async (at) => {
    const target = ofAda[at];
    const others = rows.filter((row) => row !== target);
    for (const one of [{ ...target, text: forgedText(target) }, await forge(target)]) {
      const { entries, faults } = await chained([...others, one]);
      expect(faults.length).toBeGreaterThan(0);
      expect(entries.some(({ row }) => row.text === one.text)).toBe(false);
    }
    expect((await chained(others)).faults).not.toEqual([]);
  });

  it('what says other than its kind does counts for nothing, and is told', async () => {
    const after = newestOf(whole.entries).find((head) => head.author === ada.name);
    const said = { kind: 'restriction', content: { line: 'x', why: 'from a newer program' } } as const;
    const odd = await written({ ...said, said: clock.now() }, ada, after, clock.now(), '9.0.0');
    const { entries, faults } = await chained([...rows, odd]);
    expect(faults).toMatchObject([{ what: 'content', hash: odd.hash }]);
    expect(entries).toEqual(whole.entries);
  });

  it('a forged branch vouches for nothing of itself', async () => {
    const first = await forge(ofAda[3]);
    const second: Row = await (async () => {
      const body = JSON.parse(ofAda[4].text);
      const text = canonical({ ...body, previous: first.hash });
      return { ...ofAda[4], text, hash: await sha256(text) };
    })();
    const { entries, faults } = await chained([...rows, first, second]);
    expect(faults.filter(({ what }) => what === 'signature')).toHaveLength(2);
    expect(entries).toHaveLength(rows.length);
  });

  it('one whose signature is none counts for nothing in a whole look either', async () => {
    const forged = await forge(ofAda[5]);
    const { entries } = await verify([...rows, forged]);
    expect(entries).toHaveLength(rows.length);
  });
});

/** As a stranger would: a text of one's own, with its hash, and a signature that nobody's key made. */
const forgedFrom = async (row: Row, change: Record<string, unknown>): Promise<Row> => {
  const text = canonical({ ...JSON.parse(row.text), ...change });
  return { text, hash: await sha256(text), signature: 'ab'.repeat(64) };
};

describe.each(['whole', 'chain'] as const)('what vouches for a signature (%s)', (depth) => {
  const rows = whole.entries.map(({ row }) => row);
  const ofAda = rows.filter(({ text }) => text.includes('looked over'));
  const looked = (those: readonly Row[]) => verify(those, newestOf(whole.entries), { depth });

  it('is the record that follows: the last of each author alone is looked at', async () => {
    const asked: string[] = [];
    const { vouched, faults } = await verify(rows, newest, {
      depth,
      signature: async (text) => {
        asked.push(text);
        return 'right';
      },
    });
    expect([vouched, faults]).toEqual([10, []]);
    expect(asked.sort()).toEqual(
      [ofAda[5].text, rows.findLast(({ text }) => text.includes('gate'))?.text].sort(),
    );
    expect((await verify(rows, newest, { depth: 'each' })).vouched).toBe(0);
  });

  it.each([0, 2, 4, 5])('one that was altered at %i is found, and no other is blamed', async (at) => {
    const [target] = [ofAda[at]];
    const signature = `${(target.signature ?? '')[0] === '0' ? '1' : '0'}${target.signature?.slice(1)}`;
    const { faults, entries } = await looked(
      rows.map((row) => (row === target ? { ...row, signature } : row)),
    );
    expect(faults).toMatchObject([{ what: 'signature', hash: target.hash }]);
    expect(entries).toHaveLength(rows.length - 1);
  });

  it('vouches for nothing that was altered with it: a whole branch of a stranger’s', async () => {
    const first = await forgedFrom(ofAda[3], { content: { text: 'all in order' } });
    const second = await forgedFrom(ofAda[4], { previous: first.hash, previousSignature: first.signature });
    const third = await forgedFrom(ofAda[5], { previous: second.hash, previousSignature: second.signature });
    const { faults, entries, vouched } = await looked([...rows, first, second, third]);
    expect(faults.filter(({ what }) => what === 'signature').map(({ hash }) => hash)).toEqual([
      first.hash,
      second.hash,
      third.hash,
    ]);
    expect(entries).toHaveLength(rows.length);
    expect(vouched).toBe(0);
  });

  it('is not another author’s record, nor one that names another signature', async () => {
    const last = newestOf(whole.entries).find(({ author: who }) => who === ben.name);
    const odd = await written(
      { kind: 'note', content: { text: 'x' }, said: clock.now() },
      ben,
      last && { ...last, signature: 'cd'.repeat(64) },
      clock.now(),
      '0.0.0',
    );
    const { faults, vouched } = await verify([...rows, odd], [], { depth });
    expect([faults, vouched]).toEqual([[], 10]);
  });

  it('is nobody else’s key, and nothing that is itself amiss: a stranger’s record stands by neither', async () => {
    const forged = await forgedFrom(ofAda[5], { content: { text: 'all in order' } });
    const named = { previous: forged.hash, previousSignature: forged.signature, number: 7 };
    // Of somebody whose key is known here; and one of the same author that is no right record and so has no signature that is looked at.
    const text = canonical({ ...JSON.parse(ofAda[5].text), ...named, author: ben.name });
    const byBen = {
      text,
      hash: await sha256(text),
      signature: await signed(text, ben.keys?.sign as CryptoKey),
    };
    const amiss = await forgedFrom(ofAda[5], { ...named, content: {} });
    for (const behind of [byBen, amiss]) {
      const { faults, entries } = await looked([...rows, forged, behind]);
      expect(faults).toContainEqual(expect.objectContaining({ what: 'signature', hash: forged.hash }));
      expect(entries.some(({ row }) => row === forged)).toBe(false);
    }
  });

  it('is missing where records were written without: each is looked at', async () => {
    const bare: Row[] = [];
    let head: Head | undefined;
    for (let i = 0; i < 4; i++) {
      const row = await written(
        { kind: 'note', content: { text: `${i}` }, said: clock.now() },
        ada,
        head,
        clock.now(),
        '0.0.0',
      );
      bare.push(row);
      head = { number: i + 1, hash: row.hash };
    }
    expect(await verify(bare, [], { depth })).toMatchObject({ faults: [], vouched: 0 });
    const wrong = bare.map((row, i) => (i === 1 ? { ...row, signature: bare[0].signature ?? '' } : row));
    expect((await verify(wrong, [], { depth })).faults).toMatchObject([{ what: 'signature', row: 1 }]);
  });
});

describe('what a stranger put at an author’s end', () => {
  it.each(['whole', 'chain'] as const)(
    'is not vouched for by what its author writes behind it (%s)',
    async (depth) => {
      const here = memoryStore();
      const cy = await author();
      const right = await noted(here, cy, clock, 'line walked');
      const body = {
        ...right.body,
        number: 2,
        previous: right.row.hash,
        previousSignature: right.row.signature,
      };
      const forged = await forgedFrom(right.row, { ...body, content: { text: 'line open again' } });
      await here.add(
        forged,
        { author: cy.name, number: 2, hash: forged.hash },
        { number: 1, hash: right.row.hash },
      );
      const after = await noted(here, cy, clock, 'next day');
      expect(after.body).toMatchObject({ number: 3, previous: forged.hash });
      expect(after.body.previousSignature).toBeUndefined();
      await noted(here, cy, clock, 'and the next');
      const { faults, entries } = await look(here, depth);
      expect(faults).toMatchObject([{ what: 'signature', hash: forged.hash }]);
      expect(entries.map(({ body: { content } }) => content['text'])).toEqual([
        'line walked',
        'next day',
        'and the next',
      ]);
    },
  );
});

describe('what this same program wrote', () => {
  const rows = whole.entries.map(({ row }) => row);
  const chained = (those: readonly Row[], program: string) =>
    verify(those, [], { depth: 'chain', hash: sha256Now, program });

  it('is read when it is asked for, and is the same then', async () => {
    const { entries, faults } = await chained(rows, '0.0.0');
    expect(faults).toEqual([]);
    expect(JSON.parse(JSON.stringify(entries))).toEqual(JSON.parse(JSON.stringify(whole.entries)));
    expect(entries.map(({ body }) => body.content)).toEqual(whole.entries.map(({ body }) => body.content));
    expect(entries.every(({ body, row }) => canonical(JSON.parse(JSON.stringify(body))) === row.text)).toBe(
      true,
    );
  });

  it('was held against its kind, but not what another wrote', async () => {
    const said = { kind: 'restriction', content: { line: 'x', why: 'from a newer program' } } as const;
    const odd = await written(
      { ...said, said: clock.now() },
      await author(),
      undefined,
      clock.now(),
      '9.0.0',
    );
    expect((await chained([...rows, odd], '0.0.0')).faults).toMatchObject([
      { what: 'content', hash: odd.hash },
    ]);
    expect((await verify([odd], [])).faults).toMatchObject([{ what: 'content', hash: odd.hash }]);
  });

  it('is looked at as ever where its text is not plainly one', async () => {
    const [row] = rows;
    for (const text of [
      row.text.replace('"heedway":"record"', '"heedway":"record","kin":"x"'),
      row.text.replace('"version":1', '"version":2'),
      row.text.replace('"kind":"note"', '"kind":"constructor"'),
      row.text.replace(/"number":\d+/, '"number":0'),
      row.text.replace(/"stored":"[^"]*"/, '"stored":"yesterday"'),
    ]) {
      expect(text).not.toBe(row.text);
      const { faults, entries } = await chained([{ ...row, text, hash: sha256Now(text) }], '0.0.0');
      expect(faults.length).toBeGreaterThan(0);
      expect(entries).toEqual([]);
    }
  });
});
