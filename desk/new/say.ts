/** What is missing of one's own train and line, in words: the same on the page and on the terminal. */
import type { Verdict } from '../../engine/questions/finding.ts';
import { inWording, type Wording } from '../../words/voice.ts';
import type { FieldKey } from './field.ts';
import type { Growth } from './make.ts';
import { fieldOf, type Question, questions } from './questions.ts';
import { isUnmeasured } from './reading.ts';

export interface Lack {
  readonly key: FieldKey;
  readonly question: Question;
  readonly label: string;
  /** With its question in front, for a list of them all. */
  readonly named: string;
  readonly how: string;
  readonly cost: string;
  readonly flag: string;
  /** In sight, not among what one may know besides. */
  readonly front: boolean;
}

export function lackOf(key: FieldKey, wording: Wording): Lack {
  const { label, how, cost, flag, need, front } = fieldOf(key);
  const { id: question, title } = questions.find(({ id }) => key.startsWith(`${id}.`)) ?? questions[0];
  const said = (text: string): string => inWording(text, wording);
  return {
    key,
    question,
    label: said(label),
    named: `${title}: ${said(label).toLowerCase()}`,
    how: said(how),
    cost: said(cost),
    flag,
    front: need !== 'more' || front === true,
  };
}

/** What stands under a reply: what not knowing it costs, or what the choice comes to where one may not expect it. */
export function tellReply(key: FieldKey, text: string, wording: Wording): string {
  const field = fieldOf(key);
  if (text.trim() === '' || isUnmeasured(text, field)) return inWording(field.cost, wording);
  return inWording((field.form === 'choice' && field.comesTo?.[text]) || '', wording);
}

/** While something is missing there is no word, whatever the rest comes to. */
export const newWord = ({ missing, faults }: Growth, verdict: Verdict | undefined): Verdict =>
  missing.length > 0 || faults.length > 0 || verdict === undefined ? 'unknown' : verdict;

/** "Two figures more for a first word." */
export function tellMissing({ missing, faults }: Growth): string {
  if (faults.length > 0) return 'Something cannot be read.';
  const n = missing.length;
  if (n === 0) return '';
  const few = ['One figure', 'Two figures', 'Three figures'][n - 1] ?? `${n} figures`;
  return `${few} more for a first word.`;
}
