/** What goes on paper: the section to be left clear, and sheets to measure by. The makers are loaded when they are asked for. */
import type { Clear } from '../../../desk/clear.ts';
import { fileName } from '../../../desk/file-name.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Voice } from '../../../words/voice.ts';
import { save } from '../../parts/save.ts';

interface Props {
  readonly clear: Clear;
  readonly outing: Outing;
  readonly voice: Voice;
}

const pageOf = ({ system }: Voice): 'letter' | 'a4' => (system === 'imperial' ? 'letter' : 'a4');

async function templates({ clear, outing, voice }: Props, kind: 'pdf' | 'dxf' | 'svg'): Promise<void> {
  const { templateDocument, templatesDxf, templatesPlot } = await import('../../../views/fit/template.ts');
  const name = fileName(outing.line.name, undefined, `left-clear.${kind}`);
  const { gauge } = outing.line;
  if (kind === 'pdf') {
    const { cardPdf } = await import('../card/card-pdf.ts');
    return save(await cardPdf((has) => templateDocument(clear, gauge, pageOf(voice), voice, has)), name);
  }
  if (kind === 'dxf')
    return save(new Blob([templatesDxf(clear, gauge, voice)], { type: 'image/vnd.dxf' }), name);
  const [{ sceneToSvg }, scene] = [
    await import('../../../views/strip/scene.ts'),
    templatesPlot(clear, gauge, voice, 900),
  ];
  if (scene) save(new Blob([sceneToSvg(scene)], { type: 'image/svg+xml' }), name);
}

async function places({ clear, outing, voice }: Props): Promise<void> {
  const { leftClearCsv } = await import('../../../views/fit/left-clear-csv.ts');
  const sheet = leftClearCsv(clear, voice);
  if (sheet !== undefined)
    save(new Blob([sheet], { type: 'text/csv' }), fileName(outing.line.name, undefined, 'left-clear.csv'));
}

async function worksheets({ outing, voice }: Props): Promise<void> {
  const [{ worksheetDocument }, { cardPdf }] = await Promise.all([
    import('../../../views/fit/worksheet.ts'),
    import('../card/card-pdf.ts'),
  ]);
  const ask = { vehicles: outing.train.vehicles, page: pageOf(voice), voice };
  save(
    await cardPdf((has) => worksheetDocument(ask, has)),
    fileName(outing.train.name, undefined, 'worksheets.pdf'),
  );
}

export const TemplateButtons = (props: Props) => (
  <p class="row">
    <button type="button" onClick={() => templates(props, 'pdf')}>
      Sections to scale (PDF)
    </button>
    <button type="button" onClick={() => templates(props, 'dxf')}>
      DXF
    </button>
    <button type="button" onClick={() => templates(props, 'svg')}>
      SVG
    </button>
    <button type="button" onClick={() => places(props)}>
      Place by place (CSV)
    </button>
  </p>
);

export const WorksheetButton = (props: Props) => (
  <p class="row">
    <button type="button" onClick={() => worksheets(props)}>
      Worksheets to measure by (PDF)
    </button>
  </p>
);
