/** heedway clear: does the train clear what stands beside and over the line, and what must be left clear for it? */
import { Option } from 'commander';
import { type Clear, lookAtClear } from '../../desk/clear.ts';
import { planMarks } from '../../desk/plan-marks.ts';
import { lookAtTracksOf } from '../../desk/siding.ts';
import { type Stood, standings } from '../../desk/stood.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { clearPlot } from '../../views/clear-plot.ts';
import { leftClearCsv } from '../../views/fit/left-clear-csv.ts';
import { stoodPlot } from '../../views/fit/stood-plot.ts';
import { type Page, templateDocument, templatesDxf, templatesPlot } from '../../views/fit/template.ts';
import { markedPlan } from '../../views/plan/svg.ts';
import { NO_PLAN } from '../../views/plan/words.ts';
import { sceneToSvg } from '../../views/strip/scene.ts';
import {
  curvesTable,
  platformsTables,
  sidingsTable,
  stoodTable,
  structuresTable,
} from '../../views/tables/clear.ts';
import { notToldWords } from '../../words/not-told.ts';
import { chainage, type Voice } from '../../words/voice.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, exitOf, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { placeOf } from '../open.ts';
import { findingsText, paragraphs, tableText, tellFully } from '../text.ts';
import { writeOut } from '../write.ts';

interface ClearOptions extends Options {
  readonly svg?: string;
  readonly plan?: string;
  readonly template?: string;
  readonly places?: string;
  readonly at?: string;
  readonly stood?: string;
  readonly page?: Page;
}

async function template(
  file: string,
  { page = 'letter' }: ClearOptions,
  clear: Clear,
  gauge: number,
  voice: Voice,
): Promise<string> {
  const scene = templatesPlot(clear, gauge, voice, 900);
  if (!scene) return notDrawn(clear, voice);
  const kind = /\.(pdf|dxf|svg)$/i.exec(file)?.[1].toLowerCase();
  if (kind === undefined)
    throw new UsageFault(
      `${file}: found no kind of drawing; expected a name that ends in .pdf, .dxf or .svg`,
    );
  if (kind === 'pdf')
    await writeOut(file, await cardPdf((has) => templateDocument(clear, gauge, page, voice, has)));
  else await writeOut(file, kind === 'dxf' ? templatesDxf(clear, gauge, voice) : sceneToSvg(scene));
  return `What must be left clear, section by section, drawn into ${file}`;
}

async function plan(file: string, outing: Outing, clear: Clear, voice: Voice): Promise<string> {
  const scene = markedPlan(outing, planMarks(outing, clear, lookAtTracksOf(outing)), voice);
  if (!scene) return NO_PLAN;
  await writeOut(file, sceneToSvg(scene));
  return `Plan drawn into ${file}`;
}

const stoodJson = ({ at, vehicles }: Stood) => ({
  at,
  vehicles: vehicles.map((v) => v && { name: v.name, ...v.hang }),
});

/** The train stood with its front at one place. */
function stoodAt({ at, stood }: ClearOptions, outing: Outing, clear: Clear, voice: Voice): Stood | undefined {
  if (at === undefined) {
    if (stood !== undefined) throw new UsageFault('--stood: found no place; expected --at with it');
    return undefined;
  }
  const { from, to, stand } = standings(outing, clear);
  const place = placeOf(at, '--at', voice);
  if (place < from || place > to)
    throw new UsageFault(
      `--at: found ${at}; expected ${chainage(voice, from)} to ${chainage(voice, to)}, with the whole train on the line`,
    );
  return stand(place);
}

const notDrawn = ({ notTold }: Clear, voice: Voice): string =>
  `Nothing is drawn. ${notToldWords(notTold, voice)}`;

export const clearCommand: Command = {
  name: 'clear',
  declare: (program, run) => {
    asksRecords(common(program.command('clear <outing>')))
      .description('What stands beside and over the line against this train; what it must be left clear.')
      .option('--svg <file>', 'draw how far it reaches into a file')
      .option(
        '--plan <file>',
        'draw the line from above, with where ends may stand and where least is left, into a file',
      )
      .option(
        '--template <file>',
        'the section to be left clear on straight track, in each curve and anywhere: .pdf to scale, .dxf full size, .svg',
      )
      .option(
        '--places <file>',
        'how far it reaches to the left and to the right, place by place, as a .csv to peg it out by',
      )
      .option('--at <chainage>', 'stand its front there: how far each vehicle hangs over beside the track')
      .option('--stood <file>', 'draw it so from above into a file')
      .addOption(new Option('--page <size>', 'page of a PDF').choices(['letter', 'a4']).default('letter'))
      .action((path: string, options: ClearOptions) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const voice = voiceOf(options, outing);
          const clear = lookAtClear(outing);
          const scene = clearPlot(clear, voice, 900);
          if (options.svg !== undefined && scene) await writeOut(options.svg, sceneToSvg(scene));
          const drawn =
            options.svg === undefined ? [] : [scene ? `Drawn into ${options.svg}` : notDrawn(clear, voice)];
          if (options.plan !== undefined) drawn.push(await plan(options.plan, outing, clear, voice));
          if (options.template !== undefined)
            drawn.push(await template(options.template, options, clear, outing.line.gauge, voice));
          if (options.places !== undefined) {
            const sheet = leftClearCsv(clear, voice);
            if (sheet !== undefined) await writeOut(options.places, sheet);
            drawn.push(
              sheet === undefined ? notDrawn(clear, voice) : `Place by place, written into ${options.places}`,
            );
          }
          const stood = stoodAt(options, outing, clear, voice);
          if (stood && options.stood !== undefined) {
            await writeOut(options.stood, sceneToSvg(stoodPlot(stood, clear, voice, 900)));
            drawn.push(`The train as it stands there, drawn into ${options.stood}`);
          }
          const inOrder = (a: number, b: number) => ({ from: Math.min(a, b), to: Math.max(a, b) });
          return {
            text: paragraphs([
              tableText(structuresTable(clear, voice)),
              ...platformsTables(clear, voice).map(tableText),
              tableText(curvesTable(clear, voice)),
              ...(clear.sidings.length > 0 ? [tableText(sidingsTable(clear, voice))] : []),
              ...(stood ? [tableText(stoodTable(stood, voice))] : []),
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
              notTold: clear.notTold,
              curves: clear.curves.map((c) => ({ ...c, ...inOrder(clear.at(c.from), clear.at(c.to)) })),
              platforms: clear.platforms.map(({ platform, gap, ...rest }) => ({
                ...rest,
                platform: platform.name,
                gap: { ...gap, at: clear.at(gap.at) },
              })),
              sidings: clear.sidings.map(({ siding, clear: room, ...rest }) => ({
                ...rest,
                siding: siding.name,
                clear: room && inOrder(clear.at(room.from), clear.at(room.to)),
              })),
              ...(stood ? { stood: stoodJson(stood) } : {}),
              findings: clear.findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
            },
            exit: exitOf[verdictOf(clear.findings)],
          };
        }, options),
      );
  },
};
