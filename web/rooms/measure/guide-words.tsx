/** How a test is made: safety always in sight, the rest folded once one knows it. */
import type { Guide } from '../../../desk/measured/guide.ts';

export const GuideWords = ({ guide }: { readonly guide: Guide }) => (
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
      </div>
    </details>
  </>
);
