/** heedway bundle: an outing with all its files as one file. */
import { writeFile as writeText } from '../../papers/index.ts';
import { type Command, common, type Options } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { writeOut } from '../write.ts';

export const bundleCommand: Command = {
  name: 'bundle',
  declare: (program, run) => {
    asksRecords(common(program.command('bundle <outing>')))
      .description('Put an outing and all files that it refers to into one file.')
      .option('--out <file>', 'write it here')
      .action((path: string, options: Options & { out?: string }) =>
        run(async (gate) => {
          const { paper } = await gate.untried(path);
          const text = writeText(paper);
          if (options.out) await writeOut(options.out, text);
          return options.out
            ? { text: `Written into ${options.out}`, json: paper, exit: 0 }
            : { text, json: paper, exit: 0, bare: true };
        }, options),
      );
  },
};
