/** heedway failures: one thing fails; does the train stop, and where? */

import { lookAtFailures } from '../../desk/failures.ts';
import { failureTable } from '../../views/tables/failures.ts';
import { type Command, common, finite, type Options, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { findingsText, paragraphs, tableText } from '../text.ts';

export const failuresCommand: Command = {
  name: 'failures',
  declare: (program, run) => {
    asksRecords(common(program.command('failures <outing>')))
      .description('Does the train stop if a hose, the supply, the driver or a cock fails? Each by itself.')
      .action((path: string, options: Options) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const voice = voiceOf(options, outing);
          const look = lookAtFailures(outing);
          return {
            text: paragraphs([tableText(failureTable(look, voice)), findingsText(look.findings, voice)]),
            json: {
              failures: look.cases.map((c) => ({ ...c, time: finite(c.time) })),
              findings: look.findings,
            },
            exit: look.findings.some((f) => f.severity === 'forbids') ? 20 : 0,
          };
        }, options),
      );
  },
};
