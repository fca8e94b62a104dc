/** heedway card: the running cards of one or several trains as a PDF on A5 or half-letter. */
import { type Told, telling } from '../../desk/asked.ts';
import { cardFile } from '../../desk/card.ts';
import type { Handed } from '../../desk/outing-code.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import { cardMade, MOST_CARDS } from '../../views/card-made.ts';
import { type CardOnPaper, cardDocument, type Paper } from '../../views/card-paper.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, exitOf, type Options, UsageFault } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { program } from '../versions.ts';
import { writeOut } from '../write.ts';

interface CardOptions extends Options {
  readonly pdf?: string;
  readonly paper: string;
}

export const cardCommand: Command = {
  name: 'card',
  declare: (program, run) => {
    asksRecords(common(program.command('card <outing...>')))
      .description('The running card: paper to take along, as a PDF; several trains of a day in one file.')
      .option('--pdf <file>', 'write the card here; else named after the outing and its day')
      .option('--paper <paper>', 'a5 or half-letter', 'half-letter')
      .action((paths: string[], options: CardOptions) => run((gate) => card(gate, paths, options), options));
  },
};

interface Made extends CardOnPaper {
  readonly told: Told;
}

async function card(gate: Gate, paths: readonly string[], options: CardOptions) {
  if (options.paper !== 'a5' && options.paper !== 'half-letter') {
    throw new UsageFault(`--paper: found ${options.paper}; expected a5 or half-letter`);
  }
  if (paths.length > MOST_CARDS)
    throw new UsageFault(`found ${paths.length} outings; expected at most ${MOST_CARDS}`);
  const made: Made[] = [];
  for (const path of paths) made.push(await madeOf(gate, path, options));
  const [{ told }] = made;
  const pdf = options.pdf ?? cardFile(told, made.length > 1 ? 'cards.pdf' : 'card.pdf');
  await writeOut(pdf, await cardPdf((has) => cardDocument(made, options.paper as Paper, has)));
  const each = made.map((one) => ({
    ...one.card,
    pdf,
    code: one.handed?.codes.length === 1 ? one.handed.codes[0] : null,
    codes: one.handed?.codes ?? [],
    link: one.handed ? `#${one.handed.fragment}` : null,
  }));
  return {
    text: made.map((one) => said(one, pdf, made.length > 1)).join('\n'),
    json: each.length === 1 ? each[0] : each,
    exit: Math.max(...made.map((one) => exitOf[one.told.answer.verdict])),
  };
}

async function madeOf(gate: Gate, path: string, options: CardOptions): Promise<Made> {
  const asked = await gate.asked(path);
  const told = telling(asked, { id: asked.id, answer: answerOuting(asked.outing, { remedies: false }) });
  if (!told) throw new Error('an answer to another outing');
  const speech = { system: options.units, wording: options.wording };
  return { told, ...cardMade(told, speech, program, gate.silence(path)) };
}

function said({ card, handed }: Made, pdf: string, several: boolean): string {
  const tried = card.tried.length === 0 ? '' : ` Tried: ${card.tried.join('; ')}.`;
  const invented = card.invented === '' ? '' : ` It is ${card.invented}.`;
  const of = several ? ` of ${card.title}` : '';
  return `Running card${of} written into ${pdf}: ${card.verdict}.${tried}${invented}${largeWords(handed)}`;
}

const largeWords = (handed: Handed | undefined): string =>
  (handed?.codes.length ?? 0) > 0 ? '' : ' The outing is too large for a QR code.';
