/**
 * What a club's safety officer expects of a train while something on the ground is amiss: written down as a table before the
 * program was asked, a line for each case. Nothing is reckoned here.
 */
export type Word = 'holds' | 'limited' | 'told';

/**
 * thing | how it was found | who is on the train | what the host's book says of that thing | what the train does
 *
 * Riders: whoever rides and works nothing. Crew: driver, guard, lookout; nobody else is on the train.
 */
const written = `
first aid and fire | rejected    | riders | nothing       | limited
first aid and fire | rejected    | crew   | nothing       | told
first aid and fire | rejected    | riders | hold          | holds
first aid and fire | rejected    | crew   | hold          | holds
first aid and fire | rejected    | riders | limits        | limited
first aid and fire | rejected    | crew   | limits        | limited
first aid and fire | rejected    | riders | told          | told
first aid and fire | rejected    | crew   | told          | told
first aid and fire | rejected    | riders | told and hold | holds
first aid and fire | rejected    | crew   | told and hold | holds
first aid and fire | to be mended | riders | nothing       | told
first aid and fire | to be mended | crew   | nothing       | told
first aid and fire | to be mended | riders | hold          | told
first aid and fire | to be mended | crew   | hold          | told
first aid and fire | to be mended | riders | limits        | told
first aid and fire | to be mended | crew   | limits        | told
first aid and fire | to be mended | riders | told          | told
first aid and fire | to be mended | crew   | told          | told
first aid and fire | to be mended | riders | told and hold | told
first aid and fire | to be mended | crew   | told and hold | told
the bay            | rejected    | riders | nothing       | told
the bay            | rejected    | crew   | nothing       | told
the bay            | rejected    | riders | hold          | holds
the bay            | rejected    | crew   | hold          | holds
the bay            | rejected    | riders | limits        | limited
the bay            | rejected    | crew   | limits        | limited
the bay            | rejected    | riders | told          | told
the bay            | rejected    | crew   | told          | told
the bay            | rejected    | riders | told and hold | holds
the bay            | rejected    | crew   | told and hold | holds
the bay            | to be mended | riders | nothing       | told
the bay            | to be mended | crew   | nothing       | told
the bay            | to be mended | riders | hold          | told
the bay            | to be mended | crew   | hold          | told
the bay            | to be mended | riders | limits        | told
the bay            | to be mended | crew   | limits        | told
the bay            | to be mended | riders | told          | told
the bay            | to be mended | crew   | told          | told
the bay            | to be mended | riders | told and hold | told
the bay            | to be mended | crew   | told and hold | told
`;

export interface Line {
  readonly thing: string;
  readonly found: string;
  readonly aboard: string;
  readonly book: string;
  readonly expected: Word;
}

export const officers: readonly Line[] = written
  .trim()
  .split('\n')
  .map((line) => {
    const [thing, found, aboard, book, expected] = line.split('|').map((cell) => cell.trim());
    return { thing, found, aboard, book, expected: expected as Word };
  });

/** The word of a train while several things are amiss: the hardest of theirs. */
export function together(lines: readonly Line[]): Word {
  if (lines.some(({ expected }) => expected === 'holds')) return 'holds';
  return lines.some(({ expected }) => expected === 'limited') ? 'limited' : 'told';
}
