/** The pages of the sums, made from the register and its words; examples are evaluated as the page is made. */
import { answerSum } from '../../desk/sums.ts';
import { kinds } from '../../engine/base/quantity.ts';
import type { Sum } from '../../engine/base/sum.ts';
import { type Letter, lettersOf } from '../../engine/sums/letters.ts';
import { rangeText, sums } from '../../engine/sums/register.ts';
import { accepted } from '../../units/index.ts';
import { letterText, otherLetters, symbolWords } from '../../words/sum-letters.ts';
import { sumWords } from '../../words/sums.ts';

/** "speed=7mph grade=-2.6%" → { speed: '7mph', grade: '-2.6%' } */
export const exampleInputs = (example: string): Record<string, string> =>
  Object.fromEntries(example.split(' ').map((part) => part.split(/=(.*)/s).slice(0, 2) as [string, string]));

export function sumPages(): [string, string][] {
  return [['README.md', listPage()], ...sums.map((sum): [string, string] => [`${sum.id}.md`, sumPage(sum)])];
}

const listPage = (): string =>
  [
    '# Sums',
    '',
    'Every public formula, one page each. Made by `npm run sums-docs`; a test keeps the pages up to date.',
    '',
    '| sum | answers |',
    '|---|---|',
    ...sums.map((s) => `| [${s.id}](${s.id}.md) | ${sumWords[s.id].asks} |`),
    '',
  ].join('\n');

function sumPage(sum: Sum): string {
  const words = sumWords[sum.id];
  const reply = answerSum(sum.id, exampleInputs(words.example), 'imperial');
  if (!reply.ok) throw new Error(`${sum.id}: ${JSON.stringify(reply.faults)}`);
  const letters = new Map(lettersOf(sum).map((letter) => [letter.name, letter]));
  const others = otherLetters(sum);
  const named = (symbol: string): string => {
    const letter = letters.get(symbol) as Letter;
    return `${letter.letter} | ${letterText(letter)}`;
  };
  return [
    `# ${words.title}`,
    '',
    words.asks,
    '',
    '```',
    ...sum.equation.split(';  '),
    '```',
    '',
    ...(sum.remark === undefined ? [] : [`${sum.remark}.`, '']),
    '| letter | what | symbol | write | range (SI) | if left out |',
    '|---|---|---|---|---|---|',
    ...sum.inputs.map(
      (s) =>
        `| ${named(s.symbol)} | \`${s.symbol}\` | ${accepted(s.kind)} | ${rangeText(s)} ${kinds[s.kind]} | ${s.default === undefined ? 'needed' : `${s.default} ${kinds[s.kind]}`} |`,
    ),
    '',
    '| letter | gives | SI |',
    '|---|---|---|',
    ...sum.results.map((r) => `| ${named(r.symbol)} | ${kinds[r.kind]} |`),
    '',
    ...(others.length === 0
      ? []
      : [`Also ${others.map((l) => `${l.letter} ${letterText(l)}`).join('; ')}.`, '']),
    'Out of range is an error, never a number.',
    '',
    `Source: ${sum.source}.`,
    ...(words.caution ? ['', `Caution: ${words.caution}`] : []),
    '',
    '```sh',
    `heedway sum ${sum.id} ${words.example}`,
    '```',
    '',
    ...reply.answer.results.map((r) => `- ${symbolWords(r.symbol)}: ${r.text}`),
    '',
  ].join('\n');
}
