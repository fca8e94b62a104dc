/** What a look at a store found, in words: which record, and what is amiss with it. */
import type { Kind } from '../../papers/record/fields.ts';
import type { FileFault } from '../../records/file.ts';
import type { Body, Entry } from '../../records/record.ts';
import { removalsIn } from '../../records/removed.ts';
import type { Named } from '../../records/store.ts';
import { shownTime } from '../../records/time.ts';
import type { Fork, Verified } from '../../records/verify.ts';
import { authorName, kindWords, shortHash } from './record.ts';

interface Known {
  readonly entries: readonly Entry[];
  readonly names: readonly Named[];
}

const which = (body: Body | undefined, hash: string, { entries, names }: Known): string =>
  body === undefined
    ? `record ${hash === '' ? 'of no hash' : shortHash(hash)}`
    : `record ${shortHash(hash)}, number ${body.number} of ${authorName(entries, names, body.author)} (${kindWords[body.kind]}, ${shownTime(body.said)})`;

/** @param line where its line stands in a file; in a store there are none */
export function tellFault(fault: FileFault, known: Known, line?: (row: number) => number): string {
  const at = 'row' in fault && line ? `line ${line(fault.row)}: ` : '';
  const by = (author: string): string =>
    author === '' ? '' : ` of ${authorName(known.entries, known.names, author)}`;
  switch (fault.what) {
    case 'altered':
      return `${at}${which(fault.body, fault.hash, known)} was altered: its text is not what was written.`;
    case 'signature':
      return `${at}${which(fault.body, fault.hash, known)} is not signed by its author.`;
    case 'content':
      return `${at}${which(fault.body, fault.hash, known)} says what no record of its kind says.`;
    case 'order':
      return `${at}${which(fault.body, fault.hash, known)} does not follow the record that it names.`;
    case 'removal':
      return `${at}${which(fault.body, fault.hash, known)} removes what no rule lets it remove, or too early.`;
    case 'newest':
      return `the newest record${by(fault.author)} is said to be ${shortHash(fault.hash)}, number ${fault.number}, and is not.`;
    case 'missing': {
      const number = fault.number === undefined ? '' : `, number ${fault.number}${by(fault.author)}`;
      const named = fault.namedBy === '' ? 'it was the newest' : `${shortHash(fault.namedBy)} names it`;
      return `record ${shortHash(fault.hash)}${number} is missing: ${named}.`;
    }
    case 'head':
      return 'line 1: the head of the file does not fit what follows: something was altered, added or taken away.';
    case 'name':
      return `${at}a name was altered.`;
    case 'photo':
      return `${at}a photo was altered.`;
    case 'photo-altered':
      return `photo ${shortHash(fault.hash)} was altered: it is not the one that record ${shortHash(fault.namedBy)} names.`;
    case 'photo-missing':
      return `photo ${shortHash(fault.hash)} is missing: record ${shortHash(fault.namedBy)} names it.`;
  }
}

export const tellFork = ({ author, after, hashes }: Fork, { entries, names }: Known): string =>
  `Two branches of ${authorName(entries, names, author)} follow ${after === '' ? 'nothing' : shortHash(after)}: ${hashes
    .map(shortHash)
    .join(', ')}. A copy of this device's store was written into apart; nothing is lost, and both count.`;

/** Gaps that are none: taken out because their time had ended, and said so. */
function tellRemoved(entries: readonly Entry[]): readonly string[] {
  const { gone } = removalsIn(entries);
  if (gone.size === 0) return [];
  const kinds = new Map<string, number>();
  for (const { kind } of gone.values()) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const list = [...kinds].map(([kind, count]) => `${count} ${kindWords[kind as Kind] ?? kind}`).join(', ');
  return [
    `${gone.size} more ${gone.size === 1 ? 'was' : 'were'} removed on purpose, since the time for which they are kept had ended (${list}): hash and place in the chain stand, and who removed them when.`,
  ];
}

/** The first line: how many, and whether all is as it was written. */
export function tellWhole(
  { entries, unsigned, unchecked, vouched }: Omit<Verified, 'faults'>,
  faults: number,
): readonly string[] {
  const count = `${entries.length} ${entries.length === 1 ? 'record' : 'records'}`;
  const whole =
    faults === 0
      ? `${count}, all as they were written; none is missing between two.`
      : `${count} can be read; ${faults} ${faults === 1 ? 'thing is' : 'things are'} amiss:`;
  return [
    whole,
    ...(vouched === 0
      ? []
      : [
          `${vouched} of the signatures ${vouched === 1 ? 'is vouched for by the record that follows it' : 'are vouched for by the records that follow them'}; the others were checked by themselves.`,
        ]),
    ...tellRemoved(entries),
    ...(unsigned === 0
      ? []
      : [
          `${unsigned} of them unsigned: their authors' devices had no Ed25519. Whoever changes such a record and all after it is not found out by this store alone.`,
        ]),
    ...(unchecked === 0
      ? []
      : [`${unchecked} signatures could not be checked here: this platform has no Ed25519.`]),
  ];
}
