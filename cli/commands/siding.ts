/** heedway siding: where does the train stand clear, and which of two trains fits which road. */
import { lookAtTracksOf, usableOf } from '../../desk/siding.ts';
import { roadsPlot } from '../../views/fit/roads-plot.ts';
import { sceneToSvg } from '../../views/strip/scene.ts';
import { passingTable, roadsTable, turnoutsTable, waysTables } from '../../views/tables/siding.ts';
import { type Command, common, type Options, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { findingsText, paragraphs, tableText, tellFully } from '../text.ts';
import { writeOut } from '../write.ts';

interface SidingOptions extends Options {
  readonly other?: string;
  readonly svg?: string;
}

const NONE =
  'The line states no tracks: nothing is measured. See docs/siding.md for what a tape tells; sidings that were taped across stand in `heedway clear`.';

export const sidingCommand: Command = {
  name: 'siding',
  declare: (program, run) => {
    asksRecords(common(program.command('siding <outing>')))
      .description(
        'Where the train stands clear in loops and sidings while another passes, and whether it fits.',
      )
      .option('--other <outing>', 'the outing of the train that passes; of its line nothing is taken')
      .option('--svg <file>', 'draw each road with its points, marks and the train in it')
      .action((path: string, options: SidingOptions) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const other = options.other === undefined ? undefined : await gate.outing(options.other);
          const voice = voiceOf(options, outing);
          const sidings = lookAtTracksOf(outing, other);
          const tables = sidings.standing.flatMap((train) => [
            roadsTable(sidings, train, voice),
            ...(train.look.roads.length > 0 ? [passingTable(sidings, train, voice)] : []),
          ]);
          const scene = roadsPlot(sidings, sidings.standing[0], voice);
          if (options.svg !== undefined && scene) await writeOut(options.svg, sceneToSvg(scene));
          return {
            text:
              sidings.joints.length === 0
                ? NONE
                : paragraphs([
                    ...[...tables, ...waysTables(sidings), turnoutsTable(sidings, voice)].map(tableText),
                    ...(options.svg === undefined
                      ? []
                      : [
                          scene
                            ? `The roads drawn into ${options.svg}`
                            : 'Nothing is drawn: no road is laid.',
                        ]),
                    findingsText(sidings.findings, voice),
                  ]),
            json: {
              standing: sidings.standing.map(({ look, ...train }) => ({
                ...train,
                without: look.without,
                margin: look.margin,
                roads: look.roads.map((road) => ({
                  ...road,
                  track: road.track.name,
                  usable: usableOf(road),
                  fits: usableOf(road) >= train.length,
                })),
                untold: look.untold.map(({ track, lacks }) => ({ track: track.name, lacks: lacks ?? null })),
              })),
              ways: sidings.ways,
              findings: sidings.findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
              turnouts: sidings.joints.map(({ track, joint, ...rest }) => ({
                ...joint,
                ...rest,
                track: track.name,
              })),
            },
            exit: 0,
          };
        }, options),
      );
  },
};
