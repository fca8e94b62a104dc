/** What is amiss on the ground, from the file of the outing to the word, beside a safety officer's table. */
import { describe, expect, it } from 'vitest';
import { answerOnly } from '../../engine/answer/answer.ts';
import { askOrder } from '../../engine/questions/order/ask.ts';
import { readOuting } from '../../papers/index.ts';
import { examplePaper } from '../support/papers.ts';
import { runs } from '../support/tier.ts';
import { type Line, officers, together, type Word } from './ground-table.ts';

type Json = Readonly<Record<string, unknown>>;

const things: Readonly<Record<string, string>> = {
  'first aid and fire': 'first-aid-and-fire',
  'the bay': 'storage-and-bay',
};
const severities: Readonly<Record<string, Word>> = { forbids: 'holds', limits: 'limited', notes: 'told' };

const train = (await examplePaper('steam-light')) as Json;
const riders = train['riders'] as readonly Json[];
const crew: readonly Json[] = riders
  .filter(({ duty }) => duty === 'driver')
  .concat(riders.slice(-1).map((one) => ({ ...one, name: 'Guard', duty: 'guard' })));

const rulesOf = ({ thing, book }: Pick<Line, 'thing' | 'book'>): readonly Json[] =>
  book === 'nothing'
    ? []
    : book.split(' and ').map((rejected) => ({ what: things[thing], rejected, source: `rule on ${thing}` }));

/** The book says one thing of each, and the same people ride, whatever is amiss. */
async function outingOf(
  lines: readonly Line[],
  aboard: string,
  books: readonly Pick<Line, 'thing' | 'book'>[],
) {
  const paper = {
    ...train,
    riders: aboard === 'riders' ? riders : crew,
    host: { ...(train['host'] as Json), ground: books.flatMap(rulesOf) },
    defects: lines.map(({ thing, found }, i) => ({
      of: `${thing}, ${i}`,
      ground: things[thing],
      what: `no. ${i} empty`,
      rejects: found === 'rejected',
      since: '2026-05-30',
    })),
  };
  const read = await readOuting({ path: 'o', content: JSON.stringify(paper) }, async () => undefined);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('a safety officer’s table', () => {
  it('has every case once', () => {
    expect(new Set(officers.map(({ expected: _, ...of }) => JSON.stringify(of))).size).toBe(40);
    expect(officers).toHaveLength(2 * 2 * 2 * 5);
  });

  it.each(officers)('$thing $found, $aboard aboard, the book says $book: $expected', async (line) => {
    const outing = await outingOf([line], line.aboard, [line]);
    const found = askOrder(outing).filter(({ code }) => code === 'ground-amiss');
    expect(found.map(({ severity }) => severities[severity])).toEqual([line.expected]);
    expect(found[0].source).toBe(
      line.book === 'nothing' ? 'common practice, no source' : `rule on ${line.thing}`,
    );
  });
});

describe('several at once', () => {
  it('each as if it were alone; the train does what the hardest asks', { timeout: 120_000 }, async () => {
    let at = 20_261_128;
    const chance = (below: number): number => {
      at = (Math.imul(at, 1_103_515_245) + 12_345) & 0x7fffffff;
      return Math.floor((at / 2 ** 31) * below);
    };
    const words = new Set<string>();
    for (let i = 0; i < runs(120, 1200); i++) {
      const aboard = chance(2) === 0 ? 'riders' : 'crew';
      const books = Object.keys(things).map((thing) => ({
        thing,
        book: ['nothing', 'hold', 'limits', 'told', 'told and hold'][chance(5)],
      }));
      const could = officers.filter(
        (one) =>
          one.aboard === aboard && books.some(({ thing, book }) => one.thing === thing && one.book === book),
      );
      const lines = Array.from({ length: chance(5) }, () => could[chance(could.length)]);
      const outing = await outingOf(lines, aboard, books);
      const found = askOrder(outing).filter(({ code }) => code === 'ground-amiss');
      const why = JSON.stringify({ aboard, books, lines });
      expect(found.map(({ severity }) => severities[severity]).sort(), why).toEqual(
        lines.map(({ expected }) => expected).sort(),
      );
      const word = together(lines);
      words.add(word);
      // The train is limited in itself, and holds for nothing else. A whole answer takes its time.
      if (i % 12 === 0) expect(answerOnly(outing).verdict, why).toBe(word === 'holds' ? 'hold' : 'limits');
    }
    expect([...words].sort()).toEqual(['holds', 'limited', 'told']);
  });
});
