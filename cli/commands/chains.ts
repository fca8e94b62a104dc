/** heedway chains: does the chain at each gap hold a parted tail, and which size would? */
import { chainTable, lookAtChains } from '../../desk/chains.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import { type Command, common, exitOf, voiceOf } from '../command.ts';
import { openOutingFile } from '../open.ts';
import { findingsText, paragraphs, tableText, tellFully } from '../text.ts';

export const chainsCommand: Command = {
  name: 'chains',
  declare: (program, run) => {
    common(program.command('chains <outing>'))
      .description('Does the chain at each gap hold a parted tail, and which size would?')
      .action((path, options) =>
        run(async () => {
          const outing = await openOutingFile(path);
          const voice = voiceOf(options, outing);
          const view = lookAtChains(outing);
          return {
            text: paragraphs([tableText(chainTable(view, voice)), findingsText(view.findings, voice)]),
            json: {
              gaps: view.rows,
              findings: view.findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
            },
            exit: exitOf[verdictOf(view.findings)],
          };
        }, options),
      );
  },
};
