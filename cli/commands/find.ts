/** heedway find: which command, sum, field or word is meant, by the trade's words, US or UK. */
import type { Entry } from '../../desk/find/entries.ts';
import { find } from '../../desk/find/find.ts';
import { type Command, common, type Options } from '../command.ts';

export const findCommand: Command = {
  name: 'find',
  declare: (program, run) => {
    common(program.command('find <words...>'))
      .description(
        "Find the command, sum, field or word that is meant, by the trade's words, US or UK; a slip is forgiven.",
      )
      .action((words: readonly string[], options: Options) =>
        run(async () => {
          const found = find(words.join(' '), options.wording);
          return {
            text:
              found.length === 0 ? 'Nothing is like that. Try one word of it.' : found.map(tell).join('\n'),
            json: { found },
            exit: found.length === 0 ? 20 : 0,
          };
        }, options),
      );
  },
};

const tell = ({ title, tells, command }: Entry): string =>
  `${title.replace(/([^?.])$/, '$1:')} ${tells}${command === '' ? '' : `\n   ${command}`}`;
