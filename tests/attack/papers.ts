/** Outings from which changed ones are made: the examples, and one with all that can be said of a line that is not as usual. */
import { examplePaper } from '../support/papers.ts';

export type Json = Readonly<Record<string, unknown>>;

const box = (half: string, top: string): Json[] => [
  { across: '0 m', height: '0.05 m' },
  { across: half, height: '0.05 m' },
  { across: half, height: top },
  { across: '0 m', height: top },
];

/** Restrictions and defects of the line, a certificate, an outline that the host asks for, and vehicles drawn within it. */
function restricted(paper: Json): Json {
  const [line, train, host] = ['line', 'train', 'host'].map((part) => paper[part] as Json);
  const of = line['name'];
  const members = (train['vehicles'] as Json[]).map((member) => ({
    ...member,
    vehicle: { ...(member['vehicle'] as Json), section: box('0.3 m', '1.2 m') },
  }));
  return {
    ...paper,
    host: {
      ...host,
      profiles: [{ gauge: line['gauge'], points: box('0.5 m', '2 m'), source: 'an invented drawing' }],
    },
    train: { ...train, vehicles: members },
    restrictions: [{ of, from: '20 ft', to: '60 ft', speed: '2 mph', why: 'soft bank', since: '2026-05-01' }],
    defects: [{ of, what: 'a chipped rail', rejects: false, since: '2026-05-20' }],
    shown: [{ what: 'insurance', on: '2026-01-01', until: '2026-12-31', by: 'an invented insurer' }],
  };
}

const named = (names: readonly string[]): Promise<Json[]> => Promise.all(names.map(examplePaper));

export const papers: readonly Json[] = [
  ...(await named(['steam-light', 'heavy-air', 'battery-vacuum', 'brake-not-measured', 'too-long-wet'])),
  ...(await named(['late-turn', 'two-roads', 'over-the-loop', 'visit-fits', 'busy-afternoon'])),
  restricted(await examplePaper('visit-fits')),
];

/** People at work by the host's rules. */
export const withCrew = papers[5];
/** Without tracks to go over, or anybody's hours: whatever is planted in one of these is looked at. */
export const plainPapers = papers.slice(0, 5);

export const vehicles: readonly Json[] = papers.flatMap((paper) =>
  ((paper['train'] as Json)['vehicles'] as Json[]).map((member) => member['vehicle'] as Json),
);
