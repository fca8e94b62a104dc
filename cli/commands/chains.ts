/** heedway chains: does the chain at each gap hold a parted tail, and which size would? */
import { askChain } from '../../desk/builder/chain.ts';
import { chainTable, lookAtChains } from '../../desk/chains.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import { type Command, common, exitOf, type Options, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { findingsText, paragraphs, tableText, taskText, tellFully } from '../text.ts';

interface ChainsOptions extends Options {
  readonly buy?: boolean;
}

export const chainsCommand: Command = {
  name: 'chains',
  declare: (program, run) => {
    asksRecords(common(program.command('chains <outing>')))
      .description('Does the chain at each gap hold a parted tail, and which size would?')
      .option('--buy', 'which chain to buy: one size for every gap, by grade, proved by hanging it')
      .action((path: string, options: ChainsOptions) =>
        run((gate) => (options.buy ? buy(gate, path, options) : chains(gate, path, options)), options),
      );
  },
};

async function chains(gate: Gate, path: string, options: Options) {
  const outing = await gate.outing(path);
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
}

async function buy(gate: Gate, path: string, options: Options) {
  const outing = await gate.outing(path);
  const answer = askChain(outing, voiceOf(options, outing));
  const { buys, said, verdict } = answer;
  return {
    text: taskText(answer),
    json: { buys, verdict: verdict ?? null, said },
    exit: buys.length === 0 || buys.some((b) => b.size !== null && b.fails.length === 0) ? 0 : exitOf.hold,
  };
}
