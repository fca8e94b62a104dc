/** heedway clear: does the train clear what stands beside and over the line, and what must be left clear for it? */
import { lookAtClear } from '../../desk/clear.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import { clearPlot } from '../../views/clear-plot.ts';
import { sceneToSvg } from '../../views/strip/scene.ts';
import { curvesTable, sidingsTable, structuresTable } from '../../views/tables/clear.ts';
import { type Command, common, exitOf, type Options, voiceOf } from '../command.ts';
import { openOutingFile } from '../open.ts';
import { findingsText, paragraphs, tableText, tellFully } from '../text.ts';
import { writeOut } from '../write.ts';

interface ClearOptions extends Options {
  readonly svg?: string;
}

const NOT_DRAWN = 'Nothing is drawn: no vehicle of this train has a width and a height measured.';

export const clearCommand: Command = {
  name: 'clear',
  declare: (program, run) => {
    common(program.command('clear <outing>'))
      .description('What stands beside and over the line against this train; what it must be left clear.')
      .option('--svg <file>', 'draw how far it reaches into a file')
      .action((path: string, options: ClearOptions) =>
        run(async () => {
          const outing = await openOutingFile(path);
          const voice = voiceOf(options, outing);
          const clear = lookAtClear(outing);
          const scene = clearPlot(clear, voice, 900);
          if (options.svg !== undefined && scene) await writeOut(options.svg, sceneToSvg(scene));
          const drawn = options.svg === undefined ? [] : [scene ? `Drawn into ${options.svg}` : NOT_DRAWN];
          const inOrder = (a: number, b: number) => ({ from: Math.min(a, b), to: Math.max(a, b) });
          return {
            text: paragraphs([
              tableText(structuresTable(clear, voice)),
              tableText(curvesTable(clear, voice)),
              ...(clear.sidings.length > 0 ? [tableText(sidingsTable(clear, voice))] : []),
              findingsText(clear.findings, voice),
              ...drawn,
            ]),
            json: {
              nearest: clear.nearest.map(({ structure, ...rest }) => ({
                ...rest,
                structure: structure.name,
                ...inOrder(clear.at(structure.from), clear.at(structure.to)),
              })),
              straight: clear.straight ?? null,
              curves: clear.curves.map((c) => ({ ...c, ...inOrder(clear.at(c.from), clear.at(c.to)) })),
              sidings: clear.sidings.map(({ siding, clear: room, ...rest }) => ({
                ...rest,
                siding: siding.name,
                clear: room && inOrder(clear.at(room.from), clear.at(room.to)),
              })),
              findings: clear.findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
            },
            exit: exitOf[verdictOf(clear.findings)],
          };
        }, options),
      );
  },
};
