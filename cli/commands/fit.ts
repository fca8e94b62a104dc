/** heedway fit: do these wheels run on this track, do the couplers stay in hold over crests and sags? */
import { lookAtFit } from '../../desk/fit.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import type { Met } from '../../engine/questions/wheels/look.ts';
import { crestsTable, wheelsTable } from '../../views/tables/fit.ts';
import { type Command, common, exitOf, voiceOf } from '../command.ts';
import { openOutingFile } from '../open.ts';
import { findingsText, paragraphs, tableText, tellFully } from '../text.ts';

export const fitCommand: Command = {
  name: 'fit',
  declare: (program, run) => {
    common(program.command('fit <outing>'))
      .description('Wheels against frogs, guard rails and gauge; couplers over crests and sags.')
      .action((path, options) =>
        run(async () => {
          const outing = await openOutingFile(path);
          const voice = voiceOf(options, outing);
          const fit = lookAtFit(outing);
          const placed = <M extends Met>(met: M | null): M | null =>
            met && { ...met, ...inOrder(fit.at(met.from), fit.at(met.to)) };
          return {
            text: paragraphs([
              tableText(wheelsTable(fit, voice)),
              ...(fit.gaps.length > 0 ? [tableText(crestsTable(fit, voice))] : []),
              findingsText(fit.findings, voice),
            ]),
            json: {
              wheelsets: fit.wheelsets.map(({ frog, guard, gauge, tread, floor, ...rest }) => ({
                ...rest,
                frog: placed(frog),
                guard: placed(guard),
                gauge: placed(gauge),
                tread: placed(tread),
                floor: placed(floor),
              })),
              gaps: fit.gaps.map((g) => ({ ...g, at: fit.at(g.at) })),
              findings: fit.findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
            },
            exit: exitOf[verdictOf(fit.findings)],
          };
        }, options),
      );
  },
};

const inOrder = (a: number, b: number) => ({ from: Math.min(a, b), to: Math.max(a, b) });
