/** A record in a line: what it is, by whom, when. */
import type { Content, Kind } from '../../papers/record/fields.ts';
import type { Standing } from '../../records/amended.ts';
import { nameIn } from '../../records/names.ts';
import { type Body, type Entry, isUnsigned } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';
import { shownTime } from '../../records/time.ts';
import type { Turn } from '../../records/turns.ts';
import { tellInDate } from '../in-date.ts';
import { tellInvented } from '../invented-limit.ts';
import { tellVerdict } from '../verdict.ts';
import { holderOf } from './due.ts';
import { tellIncidents } from './incident.ts';

export const kindWords: Readonly<Record<Kind, string>> = {
  author: 'author',
  departure: 'departure',
  arrival: 'arrival',
  certificate: 'certificate',
  inspection: 'inspection',
  mended: 'mended',
  turn: 'turn of duty',
  note: 'note',
  incident: 'incident',
  measure: 'measure',
  measured: 'measure done',
  restriction: 'temporary limit',
  lifted: 'limit lifted',
  retention: 'how long it is kept',
  removal: 'removal',
};

/** What an item is found to be. */
export const resultWords = { right: 'right', limit: 'to be mended', reject: 'REJECTED' } as const;

/** What somebody does of a turn. */
export const turnTold = {
  on: 'signs on',
  off: 'signs off',
  break: 'has a break',
  back: 'is back from a break',
} as const;

/** Time of day of a moment, as clocks showed it there. */
function clockAt(at: number, offset: string): string {
  const [hours, minutes] = offset.slice(1).split(':').map(Number);
  const ahead = (offset.startsWith('-') ? -1 : 1) * (60 * hours + minutes) * 60_000;
  return new Date(at + ahead).toISOString().slice(11, 16);
}

/** How a turn of duty stands: since when, and since when there is a break. */
export function tellTurn({ on, day, off, breaks, offset }: Turn): string {
  const pause = breaks.at(-1);
  const ends =
    off !== undefined
      ? `, signed off at ${clockAt(off, offset)}`
      : pause && pause.to === undefined
        ? `, in a break since ${clockAt(pause.from, offset)}`
        : '';
  return `Signed on ${day} at ${clockAt(on, offset)}${ends}.`;
}

/** As much of a hash as tells records apart. */
export const shortHash = (hash: string): string => hash.slice(0, 8);

type Tell = { readonly [K in Kind]: (content: Content<K>, names: readonly Named[]) => string };

const tell: Tell = {
  author: ({ person }, names) => `${nameIn(names, person)} writes here`,
  departure: ({ outing, word, rail, against }) =>
    `${outing} left: ${tellVerdict(word)}, rail ${rail}${against === undefined ? '' : `, against the word: ${against}`}`,
  arrival: ({ departure, events }) =>
    `arrived, of ${shortHash(departure)}${events === undefined ? '' : `: ${events}`}`,
  certificate: ({ what, of, person, on, until, interval, by, signedFor }, names) =>
    `${tellInDate(what)} of ${holderOf({ of, person }, names)}, ${on}${until === undefined ? '' : ` to ${until}`}${interval === undefined ? '' : ` (${interval})`}${signedFor === undefined ? '' : `, for ${Object.values(signedFor).flat().join(', ')} alone`}, by ${by}`,
  inspection: ({ list, of, looked }) => {
    const amiss = looked.filter(({ result }) => result !== 'right');
    return `${list}, of ${of}: ${amiss.length === 0 ? 'all right' : amiss.map(({ result, ask, note, invented }) => `${resultWords[result]}: ${note ?? ask}${tellInvented(invented)}`).join('; ')}`;
  },
  mended: ({ inspection, item, what }) => `mended, ${item} of ${shortHash(inspection)}: ${what}`,
  turn: ({ person, what, freeSince }, names) =>
    `${nameIn(names, person)} ${turnTold[what]}${freeSince === undefined ? '' : `, free since ${shownTime(freeSince)}`}`,
  note: ({ text }) => text,
  ...tellIncidents,
};

export const tellContent = (
  { kind, content }: Pick<Body, 'kind' | 'content'>,
  names: readonly Named[],
): string => (tell[kind] as (content: unknown, names: readonly Named[]) => string)(content, names);

/** Who an author is: by the record in which they said so. */
export function authorName(entries: readonly Entry[], names: readonly Named[], author: string): string {
  const said = entries.findLast(({ body }) => body.author === author && body.kind === 'author');
  const name = said
    ? nameIn(names, `${said.body.content['person']}`)
    : `author ${shortHash(author.replace(/^\w*:/, ''))}`;
  return isUnsigned(author) ? `${name} (unsigned)` : name;
}

export interface ToldRecord {
  readonly hash: string;
  readonly when: string;
  readonly what: string;
  readonly by: string;
}

export function tellStanding(
  { first, amendments, content }: Standing,
  entries: readonly Entry[],
  names: readonly Named[],
): ToldRecord {
  const { body, row } = first;
  const anew =
    amendments.length === 0
      ? ''
      : ` (said anew ${amendments.length === 1 ? 'once' : `${amendments.length} times`})`;
  return {
    hash: shortHash(row.hash),
    when: shownTime(body.said),
    what: `${tellContent({ kind: body.kind, content }, names)}${anew}`,
    by: authorName(entries, names, body.author),
  };
}
