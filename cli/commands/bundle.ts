/** heedway bundle: an outing with all its files as one file. */
import { writeFile as writeText } from '../../papers/index.ts';
import { type Command, common, type Options } from '../command.ts';
import { bundleFile, openOutingFile, refusal } from '../open.ts';
import { writeOut } from '../write.ts';

export const bundleCommand: Command = {
  name: 'bundle',
  declare: (program, run) => {
    common(program.command('bundle <outing>'))
      .description('Put an outing and all files that it refers to into one file.')
      .option('--out <file>', 'write it here')
      .action((path: string, options: Options & { out?: string }) =>
        run(async () => {
          await openOutingFile(path);
          const read = await bundleFile(path);
          if (!read.ok) throw refusal(read.problems);
          const text = writeText(read.value);
          if (options.out) await writeOut(options.out, text);
          return { text: options.out ? `Written into ${options.out}` : text, json: read.value, exit: 0 };
        }, options),
      );
  },
};
