/** How a test is made: safety always in sight, the rest folded once one knows it. */
import type { Guide } from '../../../desk/measured/guide.ts';
import type { System } from '../../../units/index.ts';
import { testPicture } from '../../../views/measured/pictures.ts';
import type { Wording } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Inks } from '../../parts/inks.tsx';
import { save } from '../../parts/save.ts';
import { settings } from '../../state/session.ts';

interface Props {
  readonly guide: Guide;
  readonly wording: Wording;
}

async function sheet(guide: Guide, wording: Wording, units: System): Promise<void> {
  const [{ sheetDocument }, { cardPdf }] = await Promise.all([
    import('../../../views/measured/sheet.ts'),
    import('../card/card-pdf.ts'),
  ]);
  const paper = units === 'imperial' ? 'half-letter' : 'a5';
  save(await cardPdf((has) => sheetDocument(guide, paper, wording, has)), `${guide.kind}.pdf`);
}

export const GuideWords = ({ guide, wording }: Props) => (
  <>
    <p class="what">
      {guide.what} About {guide.minutes} minutes, with {guide.needs}.
    </p>
    {guide.safety.length > 0 && (
      <ul class="safety" aria-label="Safety">
        {guide.safety.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    )}
    <details class="fold" open>
      <summary>How</summary>
      <div class="inside how">
        <figure class="drawn test-picture">
          <Inks />
          <Drawing scene={testPicture(guide.picture, `Picture: ${guide.name}`)} />
        </figure>
        <h2>Needed</h2>
        <ul>
          {guide.tools.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <h2>Steps</h2>
        <ol>
          {guide.steps.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
        <button type="button" onClick={() => void sheet(guide, wording, settings.value.units)}>
          Sheet to write on, as a PDF
        </button>
      </div>
    </details>
  </>
);
