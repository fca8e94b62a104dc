/** What goes by service days, beside a calendar that is gone through square by square. */
import { describe, expect, it } from 'vitest';
import { plusDays } from '../../papers/due/day.ts';
import { dueOn } from '../../records/due.ts';
import { look } from '../../records/ledger.ts';
import type { Author, Entry } from '../../records/record.ts';
import { memoryStore } from '../../records/stores/memory.ts';
import { ran } from '../support/certificates.ts';
import { clockFrom, said, unsignedAuthor } from '../support/club-records.ts';
import { runs } from '../support/tier.ts';
import { bestOf, type Card, type Run } from './service-calendar.ts';

/** The calendar's first square. */
const FIRST = '2026-02-20';
const SQUARES = 60;
const day = (square: number): string => plusDays(FIRST, square);

type Chance = (below: number) => number;

/** Whole numbers, the same ones for a seed. */
function chanceOf(seed: number): Chance {
  let at = (seed * 2_654_435_761) >>> 0;
  return (below) => {
    at = (Math.imul(at ^ (at >>> 15), 0x2c1b3c6d) + 0x9e3779b9) >>> 0;
    return Math.floor((((at ^ (at >>> 13)) >>> 0) / 2 ** 32) * below);
  };
}

const keepers = ['ada', 'ben'];
const authors: Readonly<Record<string, Author>> = { ada: unsignedAuthor('aa'), ben: unsignedAuthor('bb') };
const spelled = ['Fenwick', 'FENWICK', ' fenwick '];

interface Diary {
  readonly cards: readonly Card[];
  readonly log: readonly Run[];
}

function diaryOf(seed: number): Diary {
  const chance = chanceOf(seed);
  const one = <T>(of: readonly T[]): T => of[chance(of.length)];
  const cards = Array.from({ length: 1 + (chance(3) === 0 ? 1 : 0) }, (): Card => {
    const done = chance(30);
    return {
      of: 'Fenwick',
      by: one(keepers),
      done,
      service: 1 + chance(one([4, 12, 31])),
      ...(chance(2) === 0 ? { days: 1 + chance(40) } : {}),
      ...(chance(3) === 0 ? { allSince: Math.max(0, done - 5 + chance(30)) } : {}),
    };
  }).map((card) => (card.days !== undefined && chance(2) === 0 ? { ...card, grace: 1 + chance(20) } : card));
  const log = Array.from({ length: chance(14) }, (): Run => {
    const on = chance(SQUARES);
    // Most are written down on their day, some later.
    const written = chance(4) === 0 ? Math.min(SQUARES - 1, on + chance(20)) : on;
    return { of: [chance(6) === 0 ? 'Granite' : one(spelled)], on, by: one(keepers), written };
  });
  return { cards, log };
}

const intervalOf = ({ service, days, grace }: Card): string =>
  [
    `${service} service day${service === 1 ? '' : 's'}`,
    ...(days === undefined ? [] : [`${days} days`]),
    ...(grace === undefined ? [] : [`${grace} days of grace`]),
  ].join(', ');

async function recordsOf({ cards, log }: Diary): Promise<readonly Entry[]> {
  const store = memoryStore();
  for (const card of cards) {
    const clock = clockFrom(`${day(card.done)}T08:00:00Z`);
    const content = {
      what: 'boiler-steam-test',
      of: card.of,
      on: day(card.done),
      interval: intervalOf(card),
      ...(card.allSince === undefined ? {} : { runsKeptSince: day(card.allSince) }),
      by: 'An invented inspector',
    };
    // Who says it anew answers for it, whoever wrote it first.
    const first = (card.done + card.service) % 3 === 0 ? keepers.find((one) => one !== card.by) : undefined;
    const { row } = await said(store, authors[first ?? card.by], clock, 'certificate', content);
    if (first) await said(store, authors[card.by], clock, 'certificate', content, row.hash);
  }
  for (const run of log)
    await ran(store, authors[run.by], day(run.written), run.of[0], `${day(run.on)}T11:00:00+00:00`);
  return (await look(store)).entries;
}

/** Words that were met, so that a survey which looks at nothing is seen. */
const met = new Map<string, number>();

describe('service days beside a calendar on the wall', () => {
  it('are as many, and nobody knows where nobody knows', { timeout: 120_000 }, async () => {
    for (let seed = 1; seed <= runs(300, 4000); seed++) {
      const diary = diaryOf(seed);
      const entries = await recordsOf(diary);
      const chance = chanceOf(seed + 1_000_000);
      for (const today of [chance(SQUARES), chance(SQUARES), SQUARES]) {
        const told = bestOf(diary.cards, diary.log, today);
        const [{ state, serviceLeft, atLeast }] = dueOn(entries, day(today));
        const why = `${seed} on ${today}: ${JSON.stringify(diary)}`;
        expect(state, why).toBe(told.word);
        if (told.left !== undefined && told.word !== 'out') expect(serviceLeft, why).toBe(told.left);
        if (told.word === 'unknown') expect(serviceLeft, why).toBeUndefined();
        // What is left at least is said so; where no square is unknown it is never.
        if (told.more) expect(atLeast, why).toBe(true);
        const word = `${told.word}${told.more ? ', at least' : ''}`;
        met.set(word, (met.get(word) ?? 0) + 1);
      }
    }
    for (const word of [
      'stands',
      'stands, at least',
      'grace',
      'grace, at least',
      'unknown',
      'out',
      'not-yet',
    ])
      expect(met.get(word) ?? 0, word).toBeGreaterThan(0);
  });
});
