/** heedway card: the running card as a PDF on A5 or half-letter. */
import { deflateRawSync } from 'node:zlib';
import { type Asked, fileOf, telling } from '../../desk/asked.ts';
import { cardFile, runningCard } from '../../desk/card.ts';
import { MOST_QR_LETTERS, toCode } from '../../desk/outing-code.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import { cardDocument, type Paper } from '../../views/card-paper.ts';
import { cardStrip } from '../../views/card-strip.ts';
import { sceneToSvg } from '../../views/strip/scene.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, exitOf, type Options, UsageFault } from '../command.ts';
import { openAsked } from '../open-asked.ts';
import { writeOut } from '../write.ts';

interface CardOptions extends Options {
  readonly pdf?: string;
  readonly paper: string;
}

export const cardCommand: Command = {
  name: 'card',
  declare: (program, run) => {
    common(program.command('card <outing>'))
      .description('The running card: paper to take along, as a PDF.')
      .option('--pdf <file>', 'write the card here; else named after the outing and its day')
      .option('--paper <paper>', 'a5 or half-letter', 'half-letter')
      .action((path: string, options: CardOptions) => run(() => card(path, options), options));
  },
};

async function card(path: string, options: CardOptions) {
  if (options.paper !== 'a5' && options.paper !== 'half-letter') {
    throw new UsageFault(`--paper: found ${options.paper}; expected a5 or half-letter`);
  }
  const asked = await openAsked(path);
  const told = telling(asked, { id: asked.id, answer: answerOuting(asked.outing, { remedies: false }) });
  if (!told) throw new Error('an answer to another outing');
  const speech = { system: options.units, wording: options.wording };
  const data = runningCard(told, speech);
  const strip = sceneToSvg(cardStrip(told, speech));
  const code = codeOf(asked);
  const pdf = options.pdf ?? cardFile(told, 'card.pdf');
  await writeOut(pdf, await cardPdf((has) => cardDocument(data, strip, code, options.paper as Paper, has)));
  const tried = data.tried.length === 0 ? '' : ` Tried: ${data.tried.join('; ')}.`;
  const invented = data.invented === '' ? '' : ` It is ${data.invented}.`;
  const large = code ? '' : ' The outing is too large for a QR code.';
  return {
    text: `Running card written into ${pdf}: ${data.verdict}.${tried}${invented}${large}`,
    json: { ...data, pdf, code: code ?? null },
    exit: exitOf[told.answer.verdict],
  };
}

/** The outing with all its files, and with what is tried on it, as one line; undefined where no QR code holds it. */
function codeOf(asked: Asked): string | undefined {
  const code = toCode(deflateRawSync(JSON.stringify(fileOf(asked)), { level: 9 }));
  return code.length <= MOST_QR_LETTERS ? code : undefined;
}
