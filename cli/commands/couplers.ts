/** heedway couplers: peak pull and push at every gap, as bands over many runs. */

import { lookAtCouplerLoads, lookAtCouplers } from '../../desk/couplers.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import { couplerScenarios } from '../../engine/questions/couplers/ensemble.ts';
import { couplerPlot, couplerPlotWords } from '../../views/coupler-plot.ts';
import { couplerLoadTables, couplerTable, notRepeatable } from '../../views/tables/couplers.ts';
import { type Command, common, exitOf, UsageFault, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { placeOf, speedOf } from '../open.ts';
import { drawInto, findingsText, paragraphs, tableText, tellFully } from '../text.ts';

export const couplersCommand: Command = {
  name: 'couplers',
  declare: (program, run) => {
    asksRecords(common(program.command('couplers <outing>')))
      .description('Pull and push in the couplings, and how far they swing in curves.')
      .option('--scenario <name>', couplerScenarios.join(', '), 'full-brake')
      .option('--at <chainage>', 'where the head is', '0 m')
      .option('--svg <file>', 'draw the bands along the train into a file')
      .option('--speed <speed>', 'when the brake is applied', '5 mph')
      .action((path, options) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const voice = voiceOf(options, outing);
          const scenario = couplerScenarios.find((s) => s === options.scenario);
          if (!scenario) {
            const expected = couplerScenarios.join(', ');
            throw new UsageFault(`--scenario: found ${options.scenario}; expected ${expected}`);
          }
          const ask = {
            scenario,
            at: placeOf(options.at, '--at', voice),
            speed: speedOf(options.speed, '--speed'),
          };
          const bands = lookAtCouplers(outing, ask);
          const drawn = options.svg
            ? [await drawInto(options.svg, couplerPlot(bands, couplerPlotWords(scenario, voice)))]
            : [];
          const loads = lookAtCouplerLoads(outing);
          return {
            text: paragraphs([
              tableText(couplerTable(bands, voice)),
              notRepeatable,
              ...couplerLoadTables(loads, voice).map(tableText),
              findingsText(loads.findings, voice),
              ...drawn,
            ]),
            json: {
              ...ask,
              gaps: bands,
              loads: loads.data.gaps,
              swings: loads.swings.map((end) => ({ ...end, at: loads.at(end.at) })),
              findings: loads.findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
            },
            exit: exitOf[verdictOf(loads.findings)],
          };
        }, options),
      );
  },
};
