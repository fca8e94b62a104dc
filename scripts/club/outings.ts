/** The outings of the invented club's year: of no day, so that each is reckoned once. */
import { readFileSync } from 'node:fs';
import { type Ready, readyToLeave } from '../../desk/leave/depart.ts';
import type { Json } from '../../desk/leave/nameless.ts';
import { examplePaper } from '../../tests/support/papers.ts';
import { type Club, people, TO } from './year.ts';

const papers = { steam: 'steam-light', battery: 'battery-vacuum' } as const;

export const SEED = 20250601;
export const clubPath = new URL('../../examples/club/year.jsonl', import.meta.url).pathname;

export const sundayPath = new URL('../../examples/club/sunday.json', import.meta.url).pathname;

/** The last day of the year, at a host that asks for what must be in date: by itself it cannot tell, with the records it can. */
export async function sundayText(): Promise<string> {
  const paper = await examplePaper(papers.steam);
  const host = new URL('../../examples/hosts/larkfield-in-date.json', import.meta.url);
  const riders = (paper['riders'] as Json[]).map((rider) =>
    rider['duty'] === 'driver' ? { ...rider, name: people.shed } : rider,
  );
  const sunday = {
    ...paper,
    name: 'Sunday steam, in order',
    date: TO,
    host: JSON.parse(readFileSync(host, 'utf8')),
    riders,
  };
  return `${JSON.stringify(sunday, undefined, 2)}\n`;
}

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
