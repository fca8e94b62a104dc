/** What striking a name out does, told before it is done. */
import type { Entry } from '../../records/record.ts';
import { kindWords, shortHash } from './record.ts';

/** Where the name itself was typed; nothing where it was not. */
export const tellTyped = (name: string, typed: readonly Entry[]): readonly string[] =>
  typed.length === 0
    ? []
    : [
        `${name} stands in what was typed into ${typed.map(({ body, row }) => `${shortHash(row.hash)} (${kindWords[body.kind]}, ${body.said.slice(0, 10)})`).join(', ')}. No record can be changed: the name stays there until the time of that record has ended and it is removed.`,
      ];

/** Where a name stands that no record has. */
export const IN_PAPERS =
  'an outing, or a list that is not finished, names whom somebody typed there until that is changed';

/**
 * @param open the outing that is on the screen has the name
 * @param records of that person, named in them or written */
export const tellStriking = (
  name: string,
  records: number,
  typed: readonly Entry[],
  isMe: boolean,
  open: boolean,
): readonly string[] => [
  `${name}: to be struck out for good. It cannot be undone, and no file that is brought in brings the name back here.`,
  `What goes: the name, and with it who is meant by ${records === 1 ? 'the 1 record' : `the ${records} records`} of that person. What is due, signed for or on duty is no longer told by that name.`,
  `What stays: every record, as it was written, and all verifies; files that were saved with names before, other devices, and papers: ${IN_PAPERS}.`,
  ...(open ? [`${name} stands in the outing that is open here: take the name out there too.`] : []),
  ...tellTyped(name, typed),
  ...(isMe
    ? ['Whoever writes on this device would be struck out: what is recorded here later has no name either.']
    : []),
];
