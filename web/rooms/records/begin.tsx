/** Who writes on this device: asked once, before the first record. */
import { useSignal } from '@preact/signals';
import { beginRecords, saying } from '../../state/records.ts';

const NOBODY = 'Say who writes on this device first.';

/** @param what one does in the room, in a sentence */
export function Begin({ what }: { readonly what: string }) {
  const busy = useSignal(false);
  const said = useSignal('');
  const begin = async (name: string): Promise<void> => {
    if (busy.value) return;
    busy.value = true;
    said.value = '';
    try {
      if (name === '') said.value = NOBODY;
      else await beginRecords(name);
    } catch (fault) {
      said.value = saying(fault);
    } finally {
      busy.value = false;
    }
  };
  return (
    <section aria-label="Who writes here">
      <p>{what}</p>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          // What stands in the field: a browser that fills it in by itself may tell nobody.
          void begin(`${new FormData(e.currentTarget).get('who') ?? ''}`.trim());
        }}
      >
        <p class="field">
          <label for="who-writes">Who writes on this device</label>
          <span class="written">
            <input id="who-writes" name="who" autocomplete="name" />
            <button type="submit" class="main">
              Begin
            </button>
          </span>
        </p>
      </form>
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
