/** What the symbols and letters of a sum mean. */
import type { Sum } from '../engine/base/sum.ts';
import { constants, type Letter, lettersOf } from '../engine/sums/letters.ts';
import type { Wording } from './voice.ts';

/** A symbol in words: `dead-time` → dead time. */
export const symbolWords = (symbol: string, wording: Wording = 'us'): string =>
  symbol.replace(/-/g, ' ').replace(/\bgrade\b/, wording === 'uk' ? 'gradient' : 'grade');

/** What a letter stands for: `speed, in mph`; `gravity, 9.80665 m/s²`. */
export function letterText({ name, unit }: Letter, wording: Wording = 'us'): string {
  const constant = constants[name];
  const more = constant
    ? `, ${`${Number(constant.value.toPrecision(7))} ${constant.unit}`.trim()}`
    : unit
      ? `, in ${unit}`
      : '';
  return `${symbolWords(name, wording)}${more}`;
}

/** The equation, and what it leaves to words. */
export const equationText = ({ equation, remark }: Sum): string =>
  remark === undefined ? equation : `${equation}  (${remark})`;

/** What stands in the equation besides inputs and results: constants of nature, and steps between. */
export const otherLetters = (sum: Sum): Letter[] =>
  lettersOf(sum).filter(({ stands }) => stands === 'constant' || stands === 'between');
