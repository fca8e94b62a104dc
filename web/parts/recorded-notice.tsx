/** What is recorded here and does not stand in the outing: one press puts it in. */
import { showToHost, unshown } from '../state/shown.ts';

export function RecordedNotice() {
  if (!unshown.value) return null;
  return (
    <section class="notice" role="status">
      <p>Something is recorded here of this outing’s vehicles, people or line that it does not say.</p>
      <button type="button" onClick={() => showToHost()}>
        Put what is recorded into the outing
      </button>
    </section>
  );
}
