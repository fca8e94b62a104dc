/** What striking a name out does, told before it is done. */
/** @param records of that person, named in them or written */
export const tellStriking = (name: string, records: number, isMe: boolean): readonly string[] => [
  `${name}: to be struck out for good. It cannot be undone, and no file that is brought in brings the name back here.`,
  `What goes: the name, and with it who is meant by ${records === 1 ? 'the 1 record' : `the ${records} records`} of that person. What is due, signed for or on duty is no longer told by that name.`,
  'What stays: every record, as it was written, and all verifies; what was typed into notes and incidents, where the name may stand too; files that were saved with names before, and other devices.',
  ...(isMe
    ? ['Whoever writes on this device would be struck out: what is recorded here later has no name either.']
    : []),
];
