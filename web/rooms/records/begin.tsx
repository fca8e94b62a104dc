/** Who writes on this device: asked once, before the first record. */
import { useSignal } from '@preact/signals';
import { beginRecords, saying } from '../../state/records.ts';

/** @param what one does in the room, in a sentence */
export function Begin({ what }: { readonly what: string }) {
  const name = useSignal('');
  const said = useSignal('');
  const begin = async (): Promise<void> => {
    try {
      await beginRecords(name.value.trim());
    } catch (fault) {
      said.value = saying(fault);
    }
  };
  return (
    <section aria-label="Who writes here">
      <p>{what}</p>
      <p class="field">
        <label for="who-writes">Who writes on this device</label>
        <span class="written">
          <input
            id="who-writes"
            value={name.value}
            onInput={(e) => {
              name.value = e.currentTarget.value;
            }}
          />
          <button type="button" class="main" disabled={name.value.trim() === ''} onClick={() => void begin()}>
            Begin
          </button>
        </span>
      </p>
      <p>
        <small>
          Said once on this device, and no more than that: the name stands apart and can be struck out; the
          records are signed with a key that never leaves it.
        </small>
      </p>
      {said.value !== '' && <p role="alert">{said.value}</p>}
    </section>
  );
}
