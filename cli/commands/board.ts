/** heedway board: what riders are told, as a board to print and half a minute to read aloud. */
import { ridersBoard, tellAloud } from '../../desk/board.ts';
import { fileName } from '../../desk/file-name.ts';
import { type BoardPaper, boardDocument, boardPaperNames, footOf } from '../../views/board-paper.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, type Options, UsageFault } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { writeOut } from '../write.ts';

interface BoardOptions extends Options {
  readonly pdf?: string | true;
  readonly paper: string;
}

export const boardCommand: Command = {
  name: 'board',
  declare: (program, run) => {
    asksRecords(common(program.command('board <outing>')))
      .description('The riders’ board: what riders are told in the host’s words, and half a minute to read.')
      .option('--pdf [file]', 'write the board as a PDF; without a name, named after the host')
      .option('--paper <paper>', 'a4 or letter', 'letter')
      .action((path: string, options: BoardOptions) => run((gate) => board(gate, path, options), options));
  },
};

async function board(gate: Gate, path: string, options: BoardOptions) {
  const { paper, pdf } = options;
  if (!(paper in boardPaperNames)) throw new UsageFault(`--paper: found ${paper}; expected a4 or letter`);
  const asked = await gate.asked(path);
  const made = ridersBoard(asked.paper, asked.outing.host, { system: options.units });
  const file = pdf === true ? fileName(made.title, undefined, 'board.pdf') : pdf;
  if (file !== undefined)
    await writeOut(file, await cardPdf((has) => boardDocument(made, paper as BoardPaper, has)));
  return {
    text: [
      `${made.title}: before you ride`,
      ...[...made.lines, ...made.sky].map((line) => `- ${line}`),
      '',
      `Read aloud (${tellAloud(made.aloud)})`,
      made.aloud.text,
      '',
      footOf(made),
      ...(file === undefined ? [] : [`Written into ${file}.`]),
    ].join('\n'),
    json: { ...made, pdf: file ?? null },
    exit: 0,
  };
}
