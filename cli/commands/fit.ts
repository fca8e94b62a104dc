/** heedway fit: wheels on this track, couplers over crests and sags, every vehicle against a host's sheet. */
import { Option } from 'commander';
import { lookAtFit, lookAtSheet } from '../../desk/fit.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import type { Met } from '../../engine/questions/wheels/look.ts';
import { sectionPlot } from '../../views/fit/section-plot.ts';
import { wheelPlot } from '../../views/fit/wheel-plot.ts';
import { type WorksheetPage, worksheetDocument } from '../../views/fit/worksheet.ts';
import { sceneToSvg } from '../../views/strip/scene.ts';
import {
  crestsTable,
  humpsTable,
  pitchTable,
  sectionsTable,
  sheetsTable,
  sheetTable,
  verticalTable,
  wearTable,
  wheelsTable,
} from '../../views/tables/fit.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, exitOf, type Options, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { openHostFile } from '../open.ts';
import { findingsText, paragraphs, tableText, tellFully } from '../text.ts';
import { writeOut } from '../write.ts';

interface FitOptions extends Options {
  readonly against?: readonly string[];
  readonly svg?: string;
  readonly wheels?: string;
  readonly worksheets?: string;
  readonly page?: WorksheetPage;
}

const NOT_DRAWN = 'Nothing is drawn: the host has no profile for this gauge, or no vehicle is measured.';

const NO_WHEELS = 'No wheel is drawn: of none are flange thickness, flange height and width measured.';

export const fitCommand: Command = {
  name: 'fit',
  declare: (program, run) => {
    asksRecords(common(program.command('fit <outing>')))
      .description(
        'Wheels against frogs, guard rails and gauge; couplers over crests and sags; the host’s sheet.',
      )
      .option('--against <host...>', 'sheets of other hosts to compare with')
      .option('--svg <file>', 'draw each section within the host’s profile into a file')
      .option('--wheels <file>', 'draw each wheel as measured over the host’s sheet into a file')
      .option('--worksheets <file>', 'a PDF to measure by: a box for every reading of each vehicle')
      .addOption(new Option('--page <size>', 'page of the PDF').choices(['letter', 'a4']).default('letter'))
      .action((path: string, options: FitOptions) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const voice = voiceOf(options, outing);
          const fit = lookAtFit(outing);
          const sheets = await Promise.all(
            (options.against ?? []).map(async (file) => lookAtSheet(outing, await openHostFile(file))),
          );
          const scene = sectionPlot(fit.sections, voice, 900);
          if (options.svg !== undefined && scene) await writeOut(options.svg, sceneToSvg(scene));
          const drawn = options.svg === undefined ? [] : [scene ? `Drawn into ${options.svg}` : NOT_DRAWN];
          if (options.wheels !== undefined) {
            const wheels = wheelPlot(outing.train.vehicles, outing.host.standards, voice, 900);
            if (wheels) await writeOut(options.wheels, sceneToSvg(wheels));
            drawn.push(wheels ? `Wheels drawn into ${options.wheels}` : NO_WHEELS);
          }
          if (options.worksheets !== undefined) {
            const ask = { vehicles: outing.train.vehicles, page: options.page ?? 'letter', voice } as const;
            await writeOut(options.worksheets, await cardPdf((has) => worksheetDocument(ask, has)));
            drawn.push(
              `Worksheets of ${outing.train.vehicles.length} vehicles written into ${options.worksheets}`,
            );
          }
          const placed = <M extends Met>(met: M | null): M | null =>
            met && { ...met, ...inOrder(fit.at(met.from), fit.at(met.to)) };
          return {
            text: paragraphs([
              tableText(wheelsTable(fit, voice)),
              ...(fit.wear.length > 0 ? [tableText(wearTable(fit, voice))] : []),
              ...(fit.gaps.length > 0 ? [tableText(crestsTable(fit, voice))] : []),
              ...(fit.pitches.length > 0 ? [tableText(pitchTable(fit, voice))] : []),
              tableText(humpsTable(fit, voice)),
              tableText(verticalTable(fit, voice)),
              ...(fit.sections.length > 0 ? [tableText(sectionsTable(fit.sections, voice))] : []),
              ...(fit.standards.length > 0
                ? [tableText(sheetTable(outing.host.name, fit.standards, voice))]
                : []),
              ...sheets.map((s) => tableText(sheetTable(s.host, s.compared, voice))),
              ...(sheets.length > 1 ? [tableText(sheetsTable(sheets, voice))] : []),
              findingsText(fit.findings, voice),
              ...drawn,
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
              pitches: fit.pitches.map((p) => ({ ...p, at: fit.at(p.at) })),
              humps: fit.humps.map(({ most, ...of }) => ({
                ...of,
                parts: of.parts.map((p) => ({ ...p, at: fit.at(p.at) })),
                groups: of.groups.map((g) => ({ ...g, at: fit.at(g.at) })),
                most: most && { ...most, at: fit.at(most.at) },
              })),
              needs: fit.needs,
              vertical: {
                ...fit.vertical,
                curves: fit.vertical.curves.map((c) => ({ ...c, at: fit.at(c.at) })),
              },
              wear: fit.wear,
              sections: fit.sections,
              standards: fit.standards,
              sheets,
              findings: fit.findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
            },
            exit: exitOf[verdictOf(fit.findings)],
          };
        }, options),
      );
  },
};

const inOrder = (a: number, b: number) => ({ from: Math.min(a, b), to: Math.max(a, b) });
