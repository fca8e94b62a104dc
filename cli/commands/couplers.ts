/** heedway couplers: peak pull and push at every gap, as bands over many runs. */
import { writeFile } from 'node:fs/promises';
import { couplerPlot } from '../../desk/coupler-plot.ts';
import {
  couplerLoadTables,
  couplerTable,
  lookAtCouplerLoads,
  lookAtCouplers,
  notRepeatable,
} from '../../desk/couplers.ts';
import { sceneToSvg } from '../../desk/strip/scene.ts';
import { couplerScenarios } from '../../engine/coupling/ensemble.ts';
import { verdictOf } from '../../engine/finding/make.ts';
import { tellFinding } from '../../words/finding.ts';
import { couplerScenarioWords } from '../../words/findings/couplers.ts';
import { say } from '../../words/voice.ts';
import { type Command, common, exitOf, UsageFault, voiceOf } from '../command.ts';
import { openOutingFile, quantityOf } from '../open.ts';
import { tableText } from './brakes.ts';

export const couplersCommand: Command = {
  name: 'couplers',
  declare: (program, run) => {
    common(program.command('couplers <outing>'))
      .description('Peak pull and push in the couplings: starting, braking; bands over many runs.')
      .option('--scenario <name>', couplerScenarios.join(', '), 'full-brake')
      .option('--at <chainage>', 'where the head is', '0 m')
      .option('--svg <file>', 'draw the bands along the train into a file')
      .option('--speed <speed>', 'when the brake is applied', '5 mph')
      .action((path, options) =>
        run(async () => {
          const outing = await openOutingFile(path);
          const voice = voiceOf(options, outing);
          const scenario = couplerScenarios.find((s) => s === options.scenario);
          if (!scenario) {
            const expected = couplerScenarios.join(', ');
            throw new UsageFault(`--scenario: found ${options.scenario}; expected ${expected}`);
          }
          const ask = {
            scenario,
            at: quantityOf(options.at, 'length', '--at'),
            speed: quantityOf(options.speed, 'speed', '--speed'),
          };
          const bands = lookAtCouplers(outing, ask);
          if (options.svg) {
            const scene = couplerPlot(bands, {
              title: `Pull and push, ${couplerScenarioWords[scenario]}`,
              behind: (gap) => `behind ${outing.train.vehicles[gap].name}`,
              force: (si) => say(voice, { si, kind: 'force' }, 'up'),
            });
            await writeFile(options.svg, sceneToSvg(scene));
          }
          const loads = lookAtCouplerLoads(outing);
          const told = loads.findings.map((f) => ({ ...f, words: tellFinding(f, voice) }));
          return {
            text: [
              `${tableText(couplerTable(bands, voice))}\n\n${notRepeatable}`,
              ...couplerLoadTables(loads, voice).map(tableText),
              ...told.map((f) => `${f.words.what}\n   ${f.words.why}`),
            ].join('\n\n'),
            json: { ...ask, gaps: bands, loads: loads.data.gaps, findings: told },
            exit: exitOf[verdictOf(loads.findings)],
          };
        }, options),
      );
  },
};
