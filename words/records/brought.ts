/** What came of a file of records that was brought in, and whose keys they are: the same words wherever it is asked. */
import { type Brought, keyLetters, type Stranger } from '../../records/bring.ts';
import type { StoreFile } from '../../records/file.ts';
import { type Entry, isUnsigned } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';
import { authorName, kindWords } from './record.ts';
import { tellFault } from './verified.ts';

interface Known {
  readonly entries: readonly Entry[];
  readonly names: readonly Named[];
}

/** In fours, as two people read them to each other. */
export const spaced = (letters: string): string => letters.replace(/(.{4})(?=.)/g, '$1 ');

const tellKey = (author: string): string =>
  `${isUnsigned(author) ? 'no key, letters' : 'key'} ${spaced(keyLetters(author))}`;

/** Whoever wrote here, with their keys. @param me who writes on this device */
export const tellAuthors = ({ entries, names }: Known, me: string | undefined): readonly string[] =>
  [...by(entries, ({ body }) => body.author)].map(
    ([author, theirs]) =>
      `${authorName(entries, names, author)}, ${tellKey(author)}: ${countOf(theirs)}${author === me ? ' (this device)' : ''}`,
  );

function by<K>(entries: readonly Entry[], key: (entry: Entry) => K): ReadonlyMap<K, readonly Entry[]> {
  const groups = new Map<K, Entry[]>();
  for (const entry of entries) {
    const group = groups.get(key(entry));
    if (group) group.push(entry);
    else groups.set(key(entry), [entry]);
  }
  return groups;
}

const countOf = ({ length }: readonly Entry[]): string => `${length} ${length === 1 ? 'record' : 'records'}`;

/** Who it is said to be, and what would come in of theirs. @param here what is on this device */
export function tellStranger({ author, fresh }: Stranger, theirs: Known, here: Known): string {
  const name = authorName(theirs.entries, theirs.names, author);
  const kinds = [...by(fresh, ({ body }) => body.kind)].filter(([kind]) => kind !== 'author');
  const list = kinds.map(([kind, { length }]) => `${kindWords[kind]} ${length}`).join(', ');
  const others = new Set(here.entries.map(({ body }) => body.author));
  const namesake = [...others].find(
    (other) => other !== author && authorName(here.entries, here.names, other) === name,
  );
  const warning = namesake === undefined ? '' : `. ${name} has another key here: ${tellKey(namesake)}`;
  return `${name}, ${tellKey(author)}: ${countOf(fresh)}${list === '' ? '' : ` (${list})`}${warning}.`;
}

const ASK =
  'Nothing was taken yet: nothing here vouches for those who wrote this. What they lift, mend or show in date would count. Ask each, not by way of this file, for the letters of their key (heedway records authors; Who wrote, under Records), and take it where they are the same:';

/** @param here what is on this device, now that it has been brought in */
export function tellBrought(brought: Brought, file: StoreFile, here: Known): readonly string[] {
  const theirs = { entries: file.verified.entries, names: file.names };
  switch (brought.how) {
    case 'altered':
      return [
        'Nothing was taken from this file.',
        ...brought.faults.map((fault) => tellFault(fault, theirs, (row) => row + 2)),
      ];
    case 'unknown':
      return [ASK, ...brought.strangers.map((one) => tellStranger(one, theirs, here))];
    case 'taken': {
      const { added, there, removed } = brought.taken;
      return [
        `${added} records added; ${there} were here already${removed === 0 ? '' : `; ${removed} were removed here, and stay so`}.`,
        ...brought.accepted.map((one) => `Accepted from now on: ${tellStranger(one, theirs, theirs)}`),
      ];
    }
  }
}
