/** heedway flag: how far behind a stopped train a flagman must stand. */
import { flagTable, lookAtFlag } from '../../desk/flag.ts';
import { type Command, common, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { placeOf } from '../open.ts';
import { tableText } from '../text.ts';

export const flagCommand: Command = {
  name: 'flag',
  declare: (program, run) => {
    asksRecords(common(program.command('flag <outing>')))
      .description('How far behind a stopped train a flag must stand, all along the line or at one place.')
      .option('--rear <chainage>', 'where the rear of the stopped train is')
      .action((path, options) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const voice = voiceOf(options, outing);
          const rear = options.rear === undefined ? undefined : placeOf(options.rear, '--rear', voice);
          const places = lookAtFlag(outing, rear);
          return { text: tableText(flagTable(places, voice)), json: { places }, exit: 0 };
        }, options),
      );
  },
};
