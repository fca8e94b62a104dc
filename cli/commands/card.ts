/** heedway card: the running card as a PDF, one side of A5 or half-letter. */
import { deflateRawSync } from 'node:zlib';
import { runningCard } from '../../desk/card.ts';
import { MOST_QR_LETTERS, toCode } from '../../desk/outing-code.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import { cardDocument, type Paper } from '../../views/card-paper.ts';
import { stripSvg } from '../../views/strip/svg.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, exitOf, type Options, UsageFault, voiceOf } from '../command.ts';
import { bundleFile, openOutingFile } from '../open.ts';
import { writeOut } from '../write.ts';

interface CardOptions extends Options {
  readonly pdf: string;
  readonly paper: string;
}

export const cardCommand: Command = {
  name: 'card',
  declare: (program, run) => {
    common(program.command('card <outing>'))
      .description('The running card: one side of paper to take along, as a PDF.')
      .option('--pdf <file>', 'write the card here', 'running-card.pdf')
      .option('--paper <paper>', 'a5 or half-letter', 'half-letter')
      .action((path: string, options: CardOptions) => run(() => card(path, options), options));
  },
};

async function card(path: string, options: CardOptions) {
  if (options.paper !== 'a5' && options.paper !== 'half-letter') {
    throw new UsageFault(`--paper: found ${options.paper}; expected a5 or half-letter`);
  }
  const outing = await openOutingFile(path);
  const answer = answerOuting(outing, { remedies: false });
  const voice = voiceOf(options, outing);
  const data = runningCard(outing, answer, voice);
  const strip = stripSvg(outing, answer, voice, 860, 270);
  const code = await codeOf(path);
  await writeOut(options.pdf, await cardPdf(cardDocument(data, strip, code, options.paper as Paper)));
  return {
    text: `Running card written into ${options.pdf}: ${data.verdict}.${code ? '' : ' The outing is too large for a QR code.'}`,
    json: { ...data, pdf: options.pdf, code: code ?? null },
    exit: exitOf[answer.verdict],
  };
}

/** The outing with all its files as one line; undefined where no QR code holds it. */
async function codeOf(path: string): Promise<string | undefined> {
  const bundle = await bundleFile(path);
  if (!bundle.ok) return undefined;
  const code = toCode(deflateRawSync(JSON.stringify(bundle.value), { level: 9 }));
  return code.length <= MOST_QR_LETTERS ? code : undefined;
}
