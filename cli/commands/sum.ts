/** heedway sum: one formula at a time, with units as people write them. */
import { answerSum, sums } from '../../desk/sums.ts';
import { kinds } from '../../engine/base/quantity.ts';
import type { Sum } from '../../engine/base/sum.ts';
import { letterOf, lettersOf } from '../../engine/sums/letters.ts';
import { findSum, rangeText } from '../../engine/sums/register.ts';
import { accepted } from '../../units/index.ts';
import { equationText, letterText, otherLetters, symbolWords } from '../../words/sum-letters.ts';
import { sumWords } from '../../words/sums.ts';
import { type Command, common, type Options, UsageFault } from '../command.ts';
import { table } from '../text.ts';

interface SumOptions extends Options {
  readonly list?: boolean;
  readonly help?: boolean;
}

export const sumCommand: Command = {
  name: 'sum',
  declare: (program, run) => {
    common(program.command('sum [id] [inputs...]'))
      .description('Evaluate one formula: heedway sum <id> name=value …; --list shows them all.')
      .helpOption(false)
      .option('--list', 'list the sums')
      .option('-h, --help', 'the equation, symbols, range and source of a sum')
      .action((id: string | undefined, inputs: string[], options: SumOptions) =>
        run(async () => {
          if (options.list || id === undefined) return { text: listText(), json: sums.map(sumJson), exit: 0 };
          const sum = findSum(id);
          if (!sum)
            throw new UsageFault(`sum: found "${id}"; expected one of ${sums.map((s) => s.id).join(', ')}`);
          if (options.help) return { text: sumHelp(sum, options), json: sumJson(sum), exit: 0 };
          return evaluate(sum, inputs, options);
        }, options),
      );
  },
};

async function evaluate(sum: Sum, inputs: readonly string[], options: SumOptions) {
  const written: Record<string, string> = {};
  for (const text of inputs) {
    const at = text.indexOf('=');
    if (at <= 0)
      throw new UsageFault(
        `sum ${sum.id}: found "${text}"; expected name=value, such as ${sumWords[sum.id].example}`,
      );
    written[text.slice(0, at)] = text.slice(at + 1);
  }
  const reply = answerSum(sum.id, written, options.units);
  if (!reply.ok) {
    const lines = reply.faults.map((f) => `${f.symbol}: found ${f.found}; expected ${f.expected}`);
    throw new UsageFault(lines.join('\n'), reply.faults);
  }
  const { id, inputs: si, range, source } = reply.answer;
  const results = reply.answer.results.map(({ symbol, value, unit, si }) => ({ symbol, value, unit, si }));
  const text = [
    ...reply.answer.results.map((r) => `${symbolWords(r.symbol, options.wording)}: ${r.text}`),
    equationText(sum),
    lettersLine(sum, options),
    `Source: ${source}.`,
    ...(sumWords[sum.id].caution ? [sumWords[sum.id].caution] : []),
  ].join('\n');
  return { text, json: { id, inputs: si, results, range, source }, exit: 0 };
}

const listText = (): string => table([['sum', 'answers'], ...sums.map((s) => [s.id, sumWords[s.id].asks])]);

function sumHelp(sum: Sum, options: SumOptions): string {
  const words = sumWords[sum.id];
  return [
    `${words.title}: ${words.asks}`,
    '',
    equationText(sum),
    '',
    table([
      ['letter', 'symbol', 'write', 'range (SI)', 'if left out'],
      ...sum.inputs.map((s) => [
        letterOf(sum, s.symbol),
        s.symbol,
        accepted(s.kind),
        `${rangeText(s)} ${kinds[s.kind]}`,
        s.default === undefined ? 'needed' : `${s.default} ${kinds[s.kind]}`,
      ]),
    ]),
    '',
    `Gives: ${sum.results.map((r) => `${letterOf(sum, r.symbol)} ${symbolWords(r.symbol, options.wording)} (${kinds[r.kind]})`).join(', ')}`,
    ...others(sum, options),
    `Source: ${sum.source}.`,
    ...(words.caution ? [words.caution] : []),
    `Example: heedway sum ${sum.id} ${words.example}`,
  ].join('\n');
}

/** What each letter of the equation is, in the order of its inputs and results. */
const lettersLine = (sum: Sum, { wording }: Options): string =>
  lettersOf(sum)
    .map((letter) => `${letter.letter} ${letterText(letter, wording)}`)
    .join('; ');

const others = (sum: Sum, { wording }: Options): string[] => {
  const list = otherLetters(sum).map((letter) => `${letter.letter} ${letterText(letter, wording)}`);
  return list.length === 0 ? [] : [`Also: ${list.join('; ')}`];
};

const sumJson = (sum: Sum): unknown => ({
  id: sum.id,
  title: sumWords[sum.id].title,
  asks: sumWords[sum.id].asks,
  equation: sum.equation,
  letters: lettersOf(sum).map((letter) => ({ letter: letter.letter, means: letterText(letter) })),
  ...(sum.remark === undefined ? {} : { remark: sum.remark }),
  inputs: sum.inputs.map((s) => ({
    ...s,
    letter: letterOf(sum, s.symbol),
    unit: kinds[s.kind],
    range: rangeText(s),
  })),
  results: sum.results.map((r) => ({ ...r, letter: letterOf(sum, r.symbol), unit: kinds[r.kind] })),
  source: sum.source,
  docs: `docs/sums/${sum.id}.md`,
});
