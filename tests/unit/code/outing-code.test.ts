/** An outing as a code or a link: it comes back letter by letter, is small, and nothing broken is taken for one. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { encode } from 'uqr';
import { describe, expect, it } from 'vitest';
import { asking } from '../../../desk/asked.ts';
import { packed, unpacked } from '../../../desk/code/pack.ts';
import { handed, looksLikeCode, MOST_QR_LETTERS, outingIn } from '../../../desk/outing-code.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { readOuting } from '../../../papers/index.ts';
import { chanceOf, changedJson } from '../../attack/mutate.ts';
import { firstCode } from '../../support/first-code.ts';
import { examplePaper, manyPlaces, withCars } from '../../support/papers.ts';
import { runs } from '../../support/tier.ts';

const examples = [
  'heavy-air',
  'steam-light',
  'battery-vacuum',
  'too-long-wet',
  'brake-not-measured',
  'busy-afternoon',
];

const text = (found: Awaited<ReturnType<typeof outingIn>>): string => {
  if ('fault' in found) throw new Error(found.fault);
  return new TextDecoder().decode(found);
};

describe('a code', () => {
  it.each(examples)('of %s is one square of at most version 20, and opens to the same text', async (name) => {
    const paper = await examplePaper(name);
    const made = handed(paper);
    expect(made?.codes).toHaveLength(1);
    const [code] = made?.codes ?? [];
    expect(code.length).toBeLessThanOrEqual(MOST_QR_LETTERS);
    expect((encode(code, { ecc: 'L', border: 0 }).size - 17) / 4).toBeLessThanOrEqual(20);
    expect(text(await outingIn(code))).toBe(JSON.stringify(paper));
    expect(text(await outingIn(`https://example.org/page/#${made?.fragment}`))).toBe(JSON.stringify(paper));
  });

  it('opens to the same outing and the same answer', async () => {
    const paper = await examplePaper('steam-light');
    const back = text(await outingIn(handed(paper)?.codes[0] ?? ''));
    const read = async (content: string) => {
      const got = await readOuting({ path: 'x', content }, async () => undefined);
      if (!got.ok) throw new Error('not read');
      return asking({}, got.value);
    };
    const [one, other] = [await read(JSON.stringify(paper)), await read(back)];
    expect(other.id).toBe(one.id);
    const quick = { remedies: false, counts: false } as const;
    expect(JSON.stringify(answerOuting(other.outing, quick))).toBe(
      JSON.stringify(answerOuting(one.outing, quick)),
    );
  });

  it('carries whatever a paper holds: changed at random, odd letters, odd figures, unknown fields', async () => {
    const count = runs(8, 40);
    for (let seed = 1; seed <= count; seed++) {
      const paper = changedJson(await examplePaper(examples[seed % examples.length]), chanceOf(seed));
      const bytes = packed(paper);
      if (bytes) expect(JSON.stringify(unpacked(bytes))).toBe(JSON.stringify(paper));
    }
    const odd = {
      '': null,
      é: '😀\u0000\u0001\u2028',
      __proto__x: [[], {}, [[]]],
      n: [0, 1e-7, 1e21, -3.5, 123456789.125],
      t: ' 12 ft ',
    };
    expect(JSON.stringify(unpacked(packed(odd) ?? new Uint8Array()))).toBe(JSON.stringify(odd));
    const own = JSON.parse('{"__proto__":{"a":1},"constructor":2}');
    expect(JSON.stringify(unpacked(packed(own) ?? new Uint8Array()))).toBe(JSON.stringify(own));
  });

  it('in several squares is read in any order, and says which is lacking', async () => {
    const paper = {
      ...(await manyPlaces()),
      note: Array.from({ length: 700 }, (_, i) => ((i * 7919) % 9973).toString(36)).join(' '),
    };
    const made = handed(paper);
    const codes = made?.codes ?? [];
    expect(codes.length).toBeGreaterThan(1);
    for (const code of codes) expect(code.length).toBeLessThanOrEqual(MOST_QR_LETTERS);
    const other = [...codes].reverse();
    expect(text(await outingIn(other.join('\n')))).toBe(JSON.stringify(paper));
    expect(text(await outingIn(other.map((code) => code.trimEnd()).join(' \n')))).toBe(JSON.stringify(paper));
    expect(await outingIn(codes[0])).toEqual({
      fault: expect.stringMatching(/read 2( and 3)? of \d as well/),
    });
    const strange = handed({ ...paper, name: 'another' })?.codes ?? [];
    expect(await outingIn([codes[0], ...strange.slice(1)].join('\n'))).toHaveProperty('fault');
  });

  it('of before is read as ever', async () => {
    const json = JSON.stringify(await examplePaper('steam-light'));
    expect(text(await outingIn(firstCode(json)))).toBe(json);
  });

  it('with any letter wrong, or cut anywhere, opens nothing', async () => {
    const [code] = handed(await examplePaper('steam-light'))?.codes ?? [];
    const count = runs(6, 60);
    for (let i = 0; i < count; i++) {
      const at = 10 + Math.floor(((code.length - 10) * i) / count);
      const wrong = code[at] === '7' ? '8' : '7';
      expect(await outingIn(code.slice(0, at) + wrong + code.slice(at + 1))).toHaveProperty('fault');
      expect(await outingIn(code.slice(0, at))).toHaveProperty('fault');
    }
  });

  it('that says "the same again" without end is refused at once', () => {
    const started = performance.now();
    const bomb = {
      a: Array.from({ length: 400 }, () => ({
        b: Array.from({ length: 300 }, () => ({ c: ['x'.repeat(20)] })),
      })),
    };
    expect(packed(bomb)).toBeUndefined();
    for (let seed = 0; seed < 4; seed++)
      unpacked(Uint8Array.from({ length: 14_000 }, (_, i) => Math.imul(i + 1, 2654435761 + seed) >>> 24));
    expect(performance.now() - started).toBeLessThan(20_000);
  });

  it('too large for squares has none, and is still a link', async () => {
    const made = handed(
      await withCars(
        40,
        Array.from({ length: 400 }, (_, i) => ({ name: `${(i * 7919) % 9973}`, typical: 'adult' })),
      ),
    );
    expect(made?.fragment).toMatch(/^code=/);
  });

  it('is told from other text', () => {
    expect(looksLikeCode('HEEDWAY:2:ABC')).toBe(true);
    expect(looksLikeCode('HEEDWAY:1:ABC')).toBe(true);
    expect(looksLikeCode('https://a.example/#code=AbC_-')).toBe(true);
    expect(looksLikeCode('{"heedway":"outing"}')).toBe(false);
  });
});

describe('what both sides know', () => {
  /** Codes lie on paper: with another primer or other odds none of them would be read. */
  it('never changes', async () => {
    const primer = readFileSync(new URL('../../../data/code-primer.json', import.meta.url), 'utf8');
    const hash = createHash('sha256')
      .update(JSON.stringify(JSON.parse(primer)))
      .digest('hex');
    expect(hash.slice(0, 16)).toBe('27fce4b4ba7ccfb5');
    const bytes = packed({
      heedway: 'outing',
      version: 1,
      name: 'A',
      line: { gauge: '7-1/4 in', more: [1, 2.5] },
    });
    expect(Buffer.from(bytes ?? []).toString('hex')).toBe('468c6c2c05c9ba42b9294fe3cb76833908c189cbcd711832');
  });

  it('names nobody of the examples', () => {
    const primer = readFileSync(new URL('../../../data/code-primer.json', import.meta.url), 'utf8');
    for (const name of ['Larkfield', 'Hollow', 'Granite', 'Fenwick', 'Bracken', 'Gala'])
      expect(primer).not.toContain(name);
  });
});
