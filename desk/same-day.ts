/** Trains of one day on one line: several outings that belong together, of which one is looked at. */
import { tellInvented } from './invented.ts';

type Json = Readonly<Record<string, unknown>>;

const nameIn = (paper: Json, part: 'line' | 'train'): unknown => (paper[part] as Json | undefined)?.['name'];

/** Those of the papers that run on the same day on the line of the same name; none for a paper without a day. */
export function sameDay<T extends Json>(open: Json, papers: readonly T[]): readonly T[] {
  const [date, line] = [open['date'], nameIn(open, 'line')];
  if (typeof date !== 'string' || date === '' || typeof line !== 'string') return [];
  return papers.filter((p) => p['date'] === date && nameIn(p, 'line') === line && p['name'] !== open['name']);
}

/** As one of several: its own name, its train where that is another, and whether it is invented. */
export function tellTrainOfDay(paper: Json): string {
  const [name, train, invented] = [String(paper['name']), nameIn(paper, 'train'), tellInvented(paper)];
  const of = typeof train === 'string' && train !== name ? `${name}: ${train}` : name;
  return invented === '' ? of : `${of} (${invented})`;
}
