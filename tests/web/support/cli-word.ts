/** The word of `heedway check` for a file, by the command line's own reading, without its counts and remedies. */
import { openAsked } from '../../../cli/open-asked.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { tellVerdict } from '../../../words/verdict.ts';

export const cliWord = async (path: string): Promise<string> =>
  tellVerdict(answerOnly((await openAsked(path)).outing).verdict);
