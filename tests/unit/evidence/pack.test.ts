/** The evidence pack: what goes in, what it says of itself, and that common tools check it as it says they do. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { cardPdf } from '../../../cli/card-pdf.ts';
import { fieldRows } from '../../../desk/evidence/fields.ts';
import { type Asked, evidencePack, type Pack, recorded } from '../../../desk/evidence/pack.ts';
import { packed } from '../../../desk/evidence/pick.ts';
import { answered } from '../../../desk/leave/answered.ts';
import { nameless } from '../../../desk/leave/nameless.ts';
import { schemaForm } from '../../../papers/fields.ts';
import { kinds } from '../../../papers/record/fields.ts';
import { readStoreFile } from '../../../records/file.ts';
import { verify } from '../../../records/verify.ts';
import { packDocument } from '../../../views/evidence/document.ts';
import { verifyLines } from '../../../words/records/evidence.ts';
import { examplePaper } from '../../support/papers.ts';
import { pdfText } from '../../support/pdf-text.ts';

const read = await readStoreFile(readFileSync(new URL('../../../examples/club/year.jsonl', import.meta.url)));
const looked = { ...read.verified, faults: [] };
const speech = { system: 'imperial', wording: 'us' } as const;
const made = { at: '2026-05-31T12:00:00+00:00', program: '0.0.0' };
const asked: Asked = { looked, names: [], wanted: {}, speech, made };
const whole = await evidencePack({ ...asked, names: read.names });
const wordsOf = ({ cover, sections }: Pick<Pack, 'cover' | 'sections'>): string =>
  JSON.stringify([cover, sections]);
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('what goes into a pack', () => {
  it('all of a store, each record in its file and in the table of hashes', async () => {
    expect(whole.count).toBe(looked.entries.length);
    const { faults, verified } = await readStoreFile(bytesOf(whole.records));
    expect([faults, verified.entries.length]).toEqual([[], whole.count]);
    const words = wordsOf(whole);
    expect(looked.entries.filter(({ row }) => !words.includes(row.hash))).toEqual([]);
  });

  it('of a span, with the certificates of before that stood in it', async () => {
    const pack = await evidencePack({ ...asked, wanted: { from: '2025-08-01', to: '2025-08-31' } });
    const { entries } = (await readStoreFile(bytesOf(pack.records))).verified;
    const days = entries
      .filter(({ body }) => body.kind === 'departure')
      .map(({ body }) => body.said.slice(0, 7));
    expect(new Set(days)).toEqual(new Set(['2025-08']));
    expect(entries.some(({ body }) => body.kind === 'certificate' && body.said < '2025-08')).toBe(true);
    expect(entries.every(({ body }) => body.said < '2025-09')).toBe(true);
  });

  it('of one vehicle: what names it, what names that, who worked it, and what is the club’s', async () => {
    const pack = await evidencePack({ ...asked, wanted: { of: ['Fenwick'] } });
    const { entries } = (await readStoreFile(bytesOf(pack.records))).verified;
    const there = new Map(entries.map(({ row, body }) => [row.hash, body]));
    const of = (kind: string) => [...there.values()].filter((body) => body.kind === kind);
    expect(new Set(of('inspection').map(({ content }) => content['of']))).toEqual(new Set(['Fenwick']));
    const left = of('departure').map(({ content }) => content['vehicles'] as string[]);
    expect([left.length > 0, left.every((those) => those.includes('Fenwick'))]).toEqual([true, true]);
    expect(of('arrival')).toHaveLength(left.length);
    expect(of('mended').every(({ content }) => there.has(`${content['inspection']}`))).toBe(true);
    const certified = new Set(of('certificate').map(({ content }) => content['what']));
    expect([...certified].sort()).toEqual([
      'boiler-external-look',
      'boiler-hydraulic-test',
      'boiler-steam-test',
      'brake-test',
      'driver-competence',
      'first-aid',
      'insurance',
    ]);
  });

  it('nobody’s name, unless they go along', async () => {
    const without = wordsOf(await evidencePack(asked));
    for (const { name } of read.names) {
      expect(without).not.toContain(name);
      expect(wordsOf(whole)).toContain(name);
    }
    expect(without).toMatch(/person [0-9a-f]{8}/);
  });

  it('what is amiss stands on its first page', async () => {
    const rows = looked.entries.map(({ row }, i) =>
      i === 9 ? { ...row, text: row.text.replace('2', '3') } : row,
    );
    const pack = await evidencePack({ ...asked, looked: await verify(rows) });
    expect(pack.faults).toBeGreaterThan(0);
    expect(JSON.stringify(pack.cover)).toContain('was altered');
  });

  it('a kind that no page describes is printed field by field, and so is what no schema does', () => {
    const all = packed(looked.entries, {}, 'us', read.names);
    const sections = recorded(all, {});
    expect(sections.map(({ title }) => title)).toContain('Mended');
    const words = JSON.stringify(sections);
    expect(words).toContain('"label":"what was done","value":"gland packed anew, blown through twice"');
    expect(words).toContain('loose at the dome');
    const rows = fieldRows({ speed: '4 mph', who: [{ saw: true }] }, undefined, all.reading);
    expect(rows.map(({ label, value }) => `${label}=${value}`)).toEqual(['speed=4 mph', 'who 1=', 'saw=yes']);
    const described = fieldRows({ text: 'x' }, schemaForm(kinds.note), all.reading);
    expect(described).toEqual([{ label: 'text', value: 'x', depth: 0 }]);
    // What it was before where it was, not by the alphabet.
    const happened = { at: '12 ft', facts: 'seen', more: 'x', what: 'burn' };
    const told = fieldRows(happened, schemaForm(kinds.incident), all.reading).map(({ value }) => value);
    expect(told).toEqual(['burn', 'seen', '12 ft', 'x']);
  });

  it('a paper that left with vehicles which are no list has no sheets of theirs', async () => {
    const entries = looked.entries.map((entry) => {
      if (entry.body.kind !== 'departure') return entry;
      const paper = { ...(entry.body.content['paper'] as object), train: { vehicles: { a: 1 } } };
      return { ...entry, body: { ...entry.body, content: { ...entry.body.content, paper } } };
    });
    expect(entries.some(({ body }) => body.kind === 'departure')).toBe(true);
    const pack = await evidencePack({ ...asked, looked: { ...looked, entries } });
    expect(pack.count).toBe(entries.length);
  });

  it('nothing at all makes a pack that says so', async () => {
    const pack = await evidencePack({ ...asked, looked: { ...looked, entries: [] } });
    expect([pack.count, wordsOf(pack).includes('Nothing is recorded')]).toEqual([0, true]);
  });
});

const steam = await examplePaper('steam-light');
const reckoned = await answered(nameless(steam), speech);
if ('problems' in reckoned) throw new Error('an example that cannot be read');
const printed = await evidencePack({
  ...asked,
  wanted: { from: '2026-05-01' },
  outing: { answered: reckoned, paper: steam, invented: 'an invented example' },
});
const shares: number[] = [];
const pdf = await cardPdf(
  (has) => packDocument(printed, 'letter', has),
  (share) => shares.push(share),
);
const raw = pdf.toString('latin1');

describe('on paper', () => {
  it('says all its sections, in letters that its face has, on the paper', () => {
    const { text, boxes, right, width, pages, sizes } = pdfText(pdf);
    for (const { title } of printed.sections) expect(text.split(title).length, title).toBeGreaterThan(2);
    for (const words of [
      'GO WITHIN LIMITS',
      'lift: How far may people lean',
      'How sure',
      'weighed in the workshop',
    ])
      expect(text).toContain(words);
    expect([boxes, right < width - 30, pages > 10, Math.min(...sizes) >= 7]).toEqual([0, true, true, true]);
    // A hash is copied whole.
    expect(printed.sections.length > 0 && /SHA-256 of the answer: [0-9a-f]{64}/.test(text)).toBe(true);
    expect([shares.at(-1), shares.length > 100]).toEqual([1, true]);
  });

  it('is marked as PDF/A-3b, with its fonts, colours and records inside and nothing that acts', () => {
    const streams = [...raw.matchAll(/stream\n/g)].map(({ index }) => {
      try {
        return inflateSync(pdf.subarray(index + 7)).toString('utf8');
      } catch {
        return pdf.subarray(index + 7, pdf.indexOf('endstream', index)).toString('utf8');
      }
    });
    const xmp = streams.find((stream) => stream.includes('pdfaid:part')) ?? '';
    expect(xmp).toContain('<pdfaid:part>3</pdfaid:part>');
    expect(xmp).toContain('<pdfaid:conformance>B</pdfaid:conformance>');
    for (const mark of [
      '%PDF-1.7',
      '/GTS_PDFA1',
      '/AFRelationship /Source',
      '/EmbeddedFile',
      '/FontFile2',
      '/Lang',
    ])
      expect(raw).toContain(mark);
    expect(raw).toMatch(/\/ID \[/);
    for (const not of ['/JavaScript', '/Encrypt', '/Launch']) expect(raw).not.toContain(not);
    expect(streams).toContain(printed.records);
    // Every link of the contents is printed.
    const links = raw.match(/\/Subtype \/Link[\s\S]*?endobj/g) ?? [];
    expect(links.filter((link) => !link.includes('/F 4'))).toEqual([]);
    expect(links.length).toBeGreaterThanOrEqual(printed.sections.length);
  });

  it('made anew at the same moment it is the same file', async () => {
    const again = await cardPdf((has) => packDocument(printed, 'letter', has));
    expect(again.equals(pdf)).toBe(true);
  });
});

const openssl = spawnSync('openssl', ['version']).stdout?.toString() ?? '';

describe.skipIf(!/OpenSSL [3-9]/.test(openssl))('checked with common tools, as it says', () => {
  const folder = mkdtempSync(join(tmpdir(), 'evidence-'));
  const run = (records: string) => {
    writeFileSync(join(folder, 'records.jsonl'), records);
    return spawnSync('bash', ['-e', '-c', verifyLines.join('\n')], { cwd: folder, encoding: 'utf8' });
  };

  it('a record that is as it was written', () => {
    const { status, stdout, stderr } = run(whole.records);
    expect([status, stdout], stderr).toEqual([0, expect.stringMatching(/body: OK[\s\S]*Signature Verified/)]);
  });

  it('one that was altered, or signed by nobody', () => {
    const [head, first, ...rest] = whole.records.split('\n');
    const at = (line: string): string => [head, line, ...rest].join('\n');
    const hash = run(at(first.replace('"number":1', '"number":2')));
    expect([hash.status, hash.stdout]).toEqual([1, expect.stringContaining('FAILED')]);
    const [, signature] = /"signature":"(\w)/.exec(first) ?? [];
    const signed = run(at(first.replace(/"signature":"\w/, `"signature":"${signature === '0' ? '1' : '0'}`)));
    expect(signed.status).not.toBe(0);
    expect(signed.stdout).toContain('body: OK');
  });
});
