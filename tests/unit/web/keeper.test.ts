/** Pages side by side on one storage: whatever a person typed in any of them is kept. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Kept, keeper, type Store } from '../../../web/state/keeper.ts';
import { merge } from '../../../web/state/merge.ts';
import { runs } from '../../support/tier.ts';

type Paper = Readonly<Record<string, unknown>>;

describe('two changes of one paper', () => {
  const from = { name: 'a', day: { rail: 'dry', date: '1' }, riders: [{ w: 1 }, { w: 2 }] };
  it.each([
    [
      'different fields',
      { ...from, name: 'b' },
      { ...from, day: { ...from.day, rail: 'wet' } },
      { ...from, name: 'b', day: { ...from.day, rail: 'wet' } },
    ],
    [
      'different rows',
      { ...from, riders: [{ w: 9 }, { w: 2 }] },
      { ...from, riders: [{ w: 1 }, { w: 8 }] },
      { ...from, riders: [{ w: 9 }, { w: 8 }] },
    ],
    [
      'one left out, one put in',
      { ...from, name: undefined },
      { ...from, extra: 1 },
      { day: from.day, riders: from.riders, extra: 1 },
    ],
    ['the same change', { ...from, name: 'b' }, { ...from, name: 'b' }, { ...from, name: 'b' }],
  ])('%s: both are there', (_what, mine, theirs, both) => {
    expect(JSON.parse(JSON.stringify(merge(from, mine, theirs)))).toEqual({ paper: both, clash: false });
  });

  it('of the same field: mine stands, and it is said', () => {
    expect(merge(from, { ...from, name: 'b' }, { ...from, name: 'c' })).toEqual({
      paper: { ...from, name: 'b' },
      clash: true,
    });
    expect(merge([1], [1, 2], [1, 3]).clash).toBe(true);
  });
});

/** A storage that answers when it likes, and a channel that delivers when it likes. */
function world(pages: number) {
  let there: Kept<Paper> = { revision: 0, paper: {}, sheet: 'first' };
  const waiting: (() => void)[] = [];
  const later = (work: () => void): void => void waiting.push(work);
  const store: Store<Paper> = {
    swap: (next) =>
      new Promise((done) =>
        later(() => {
          // As a transaction of the database: looked at and put in one step, and handed over as a copy.
          const first = next.revision === there.revision + 1;
          if (first) there = structuredClone(next);
          const answer = first ? next : structuredClone(there);
          later(() => done(answer));
        }),
      ),
  };
  const desks = Array.from({ length: pages }, () => ({
    paper: {} as Paper,
    sheet: 'first',
    seen: [] as Paper[],
  }));
  const shelf: Paper[] = [];
  const keepers = desks.map((desk, i) =>
    keeper<Paper>(
      {
        paper: () => desk.paper,
        sheet: () => desk.sheet,
        follow: (theirs, left) => {
          if (left) shelf.push(left);
          desk.paper = theirs.paper;
          desk.sheet = theirs.sheet;
          void keepers[i].save();
        },
        putAside: (theirs) => void shelf.push(theirs),
        take: (paper, theirs) => {
          if (theirs) desk.seen.push(theirs);
          desk.paper = paper;
          void keepers[i].save();
        },
        tell: (kept) => {
          keepers.forEach((other, j) => {
            if (j !== i) later(() => other.hear(structuredClone(kept)));
          });
        },
      },
      store,
      { revision: 0, paper: desk.paper, sheet: 'first' },
    ),
  );
  for (const desk of desks) desk.paper = { ...desk.paper };
  return { desks, keepers, waiting, shelf, there: () => there };
}

const settle = async (waiting: (() => void)[], pick: () => number): Promise<void> => {
  for (let quiet = 0; quiet < 3; ) {
    await Promise.resolve();
    await new Promise((done) => setImmediate(done));
    if (waiting.length === 0) quiet++;
    else {
      quiet = 0;
      waiting.splice(pick() % waiting.length, 1)[0]();
    }
  }
};

it('in whatever order storage and channel answer, no edit of any page is lost, and all pages agree', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.nat(2), fc.nat(5), fc.nat(3)), { maxLength: 12 }),
      fc.infiniteStream(fc.nat(20)),
      async (edits, chance) => {
        const { desks, keepers, waiting, there } = world(3);
        let count = 0;
        for (const [page, , meanwhile] of edits) {
          // Each edit has a field of its own: all of them must be there in the end.
          desks[page].paper = { ...desks[page].paper, [`field ${++count}`]: count };
          void keepers[page].save();
          for (let i = 0; i < meanwhile && waiting.length > 0; i++) {
            waiting.splice(chance.next().value % waiting.length, 1)[0]();
            await Promise.resolve();
          }
        }
        await settle(waiting, () => chance.next().value);
        const all = Object.fromEntries(Array.from({ length: count }, (_, i) => [`field ${i + 1}`, i + 1]));
        expect(there().paper).toEqual(all);
        for (const desk of desks) expect(desk.paper).toEqual(all);
      },
    ),
    { numRuns: runs(60, 1000), seed: 11 },
  );
});

it('where two pages change the same field, one stands everywhere, and the other is handed over to be brought back', async () => {
  const { desks, keepers, waiting, there } = world(2);
  desks[0].paper = { name: 'from A' };
  desks[1].paper = { name: 'from B' };
  for (const k of keepers) void k.save();
  await settle(waiting, () => 0);
  const [stands] = Object.values(there().paper);
  expect(desks.map((d) => d.paper['name'])).toEqual([stands, stands]);
  expect([stands, ...desks.flatMap((d) => d.seen.map((p) => p['name']))].sort()).toEqual([
    'from A',
    'from B',
  ]);
});

it('two outings are never mixed: what is written on each is on the desks or on the shelf, whoever opens what when', async () => {
  const told = { aside: 0 };
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.nat(2), fc.nat(3), fc.nat(3)), { maxLength: 14 }),
      fc.infiniteStream(fc.nat(20)),
      async (steps, chance) => {
        const { desks, keepers, waiting, shelf, there } = world(3);
        let count = 0;
        const written: (readonly [string, string])[] = [];
        for (const [page, what, meanwhile] of steps) {
          const desk = desks[page];
          if (what === 0) {
            // As opening does it: what lay open goes on the shelf.
            shelf.push(desk.paper);
            desk.sheet = `sheet ${++count}`;
            desk.paper = { of: desk.sheet };
          } else {
            const field = `field ${++count}`;
            desk.paper = { ...desk.paper, [field]: desk.sheet };
            written.push([field, desk.sheet]);
          }
          void keepers[page].save();
          for (let i = 0; i < meanwhile && waiting.length > 0; i++) {
            waiting.splice(chance.next().value % waiting.length, 1)[0]();
            await Promise.resolve();
          }
        }
        await settle(waiting, () => chance.next().value);
        for (const desk of desks) {
          expect(desk.paper).toEqual(there().paper);
          expect(desk.sheet).toBe(there().sheet);
        }
        const papers = [there().paper, ...shelf, ...desks.flatMap((d) => d.seen)];
        for (const paper of papers) {
          const { of = 'first', ...fields } = paper;
          expect(Object.values(fields).filter((sheet) => sheet !== of)).toEqual([]);
        }
        for (const [field, sheet] of written) expect(papers.map((p) => p[field])).toContain(sheet);
        if (shelf.length > 0) told.aside++;
      },
    ),
    { numRuns: runs(200, 3000), seed: 12 },
  );
  expect(told.aside).toBeGreaterThan(20);
});
