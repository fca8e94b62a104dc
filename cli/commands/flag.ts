/** heedway flag: how far behind a stopped train a flagman must stand. */
import { flagTable, lookAtFlag } from '../../desk/flag.ts';
import { type Command, common, UsageFault, voiceOf } from '../command.ts';
import { openOutingFile, quantityOf } from '../open.ts';
import { tableText } from '../text.ts';

export const flagCommand: Command = {
  name: 'flag',
  declare: (program, run) => {
    common(program.command('flag <outing>'))
      .description('How far behind a stopped train a flag must stand, all along the line or at one place.')
      .option('--rear <chainage>', 'where the rear of the stopped train is')
      .action((path, options) =>
        run(async () => {
          const outing = await openOutingFile(path);
          const rear = options.rear === undefined ? undefined : quantityOf(options.rear, 'length', '--rear');
          if (rear !== undefined && (rear < 0 || rear > outing.line.length)) {
            throw new UsageFault(`--rear: found ${options.rear}; expected a place on the line`);
          }
          const places = lookAtFlag(outing, rear);
          return { text: tableText(flagTable(places, voiceOf(options, outing))), json: { places }, exit: 0 };
        }, options),
      );
  },
};
