/** What changed, at the foot of a room in which papers are written: a line, and on a tap the whole. */
import { standing, tellDifference } from '../../desk/figures.ts';
import { busy, speech, told } from '../state/session.ts';
import { since } from '../state/since.ts';
import { Changed } from './changed.tsx';

export function ChangedBar() {
  const before = since.value;
  if (!before) return null;
  const now = told.value;
  return (
    <details class="changed-bar no-print">
      <summary>
        <span class="before-now">
          {now
            ? `${tellDifference(standing(before, speech.value), standing(now, speech.value))}${busy.value ? ' …' : ''}`
            : `before: ${standing(before, speech.value).word}`}
        </span>
      </summary>
      <Changed />
    </details>
  );
}
