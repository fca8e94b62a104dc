/** heedway ladder: the shortest set of changes that leads to the best word, step by step. */

import { paperAfter, tellLadder } from '../../desk/ladder.ts';
import { tellTrials } from '../../desk/tell-trials.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import { bestLadder, type Ladder } from '../../engine/answer/ladder.ts';
import { writeFile } from '../../papers/index.ts';
import { tellVerdict } from '../../words/verdict.ts';
import type { Voice } from '../../words/voice.ts';
import { type Command, common, exitOf, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { progressOn } from '../progress.ts';
import { wrap } from '../screen.ts';
import { writeOut } from '../write.ts';

interface LadderOptions extends Options {
  readonly out?: string;
  readonly steps?: string;
}

export const ladderCommand: Command = {
  name: 'ladder',
  declare: (program, run) => {
    asksRecords(common(program.command('ladder <outing>')))
      .description('What to change, step by step, until it may leave: the word after each step.')
      .option('--steps <n>', 'only so many steps are written; all, if nothing is said')
      .option('--out <file>', 'write the outing with the steps done, all its files in one')
      .action((path: string, options: LadderOptions) =>
        run(async (gate) => {
          const asked = await gate.asked(path);
          const { outing } = asked;
          if (options.out && asked.trials.length > 0)
            throw new UsageFault(
              `${path}: found changes that are tried; expected an outing, to write its steps into`,
            );
          const progress = progressOn(process.stderr);
          const ladder = bestLadder(inquire(outing), (n) => progress.say(`${n} changes tried`));
          progress.end();
          const steps = stepsOf(options, ladder);
          if (options.out)
            await writeOut(options.out, writeFile(paperAfter(asked.paper, outing, ladder, steps)));
          const voice = voiceOf(options, outing);
          const told = tellLadder(ladder, voice);
          return {
            text: [
              ...ladderText(ladder, voice, tellTrials(asked, voice)),
              ...(options.out
                ? ['', `Written into ${options.out}, ${steps} of ${ladder.steps.length} steps done`]
                : []),
            ].join('\n'),
            json: { outing: outing.name, ...ladder, words: told },
            exit: exitOf[ladder.from],
          };
        }, options),
      );
  },
};

function stepsOf({ steps }: LadderOptions, ladder: Ladder): number {
  if (steps === undefined) return ladder.steps.length;
  const n = Number(steps);
  if (Number.isInteger(n) && n >= 0 && n <= ladder.steps.length) return n;
  throw new UsageFault(`--steps: found ${steps}; expected a number from 0 to ${ladder.steps.length}`);
}

function ladderText(ladder: Ladder, voice: Voice, tried: readonly string[]): string[] {
  const { measure, lead, steps, stays, left } = tellLadder(ladder, voice);
  return [
    `${voice.outing.name}: ${tellVerdict(ladder.from).toUpperCase()}`,
    ...tried.map((change) => `  tried: ${change}`),
    ...(measure.length > 0 ? ['First:'] : []),
    ...measure.flatMap(({ what }, i) => wrap(`  ${i + 1}. ${what}`, '     ')),
    `${lead}${steps.length > 0 ? ':' : '.'}`,
    ...steps.flatMap(({ what, word }, i) =>
      wrap(`  ${measure.length + i + 1}. ${what} (then: ${word})`, '     '),
    ),
    ...(left.length > 0 ? [stays] : []),
    ...left.flatMap(({ what, mind }) => wrap(`  - ${what}${mind === '' ? '' : ` ${mind}`}`, '    ')),
  ];
}
