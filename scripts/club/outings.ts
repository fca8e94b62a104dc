/** The outings of the invented club's year: of no day, so that each is reckoned once. */
import { type Ready, readyToLeave } from '../../desk/leave/depart.ts';
import type { Json } from '../../desk/leave/nameless.ts';
import { examplePaper } from '../../tests/support/papers.ts';
import type { Club } from './year.ts';

const papers = { steam: 'steam-light', battery: 'battery-vacuum' } as const;

export const SEED = 20250601;
export const clubPath = new URL('../../examples/club/year.jsonl', import.meta.url).pathname;

/** Reckons each outing once. */
export function reckoning(): Club['ready'] {
  const made = new Map<string, Promise<Ready>>();
  return (train) => {
    const known = made.get(train) ?? ready(train);
    made.set(train, known);
    return known;
  };
}

export async function paperOf(train: keyof typeof papers): Promise<Json> {
  const { date: _, ...paper } = await examplePaper(papers[train]);
  return paper;
}

async function ready(train: keyof typeof papers): Promise<Ready> {
  const made = await readyToLeave(await paperOf(train), { system: 'imperial', wording: 'us' });
  if ('problems' in made) throw new Error(JSON.stringify(made.problems));
  return made;
}
