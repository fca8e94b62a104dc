/** What changed, in three lines: what is told, before, now. */
import { standing } from '../../desk/figures.ts';
import { speech, told, undo } from '../state/session.ts';
import { since } from '../state/since.ts';
import { Standings } from './standings.tsx';

export function Changed() {
  if (!since.value) return null;
  const now = told.value && standing(told.value, speech.value);
  const was = standing(since.value, speech.value);
  return (
    <section class="changed" aria-label="What changed">
      <Standings
        rows={[
          ['before', was, 'before'],
          ['now', now, 'now'],
        ]}
        besides={was}
        waiting="…"
      />
      <button type="button" onClick={undo}>
        Put it back
      </button>
    </section>
  );
}
