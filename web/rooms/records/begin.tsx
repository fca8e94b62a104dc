/** Who writes on this device: asked once, before the first record. */
import { useSignal } from '@preact/signals';
import { beginRecords, saying } from '../../state/records.ts';

export function Begin() {
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
      <p>
        Records are kept on this device, signed with a key that never leaves it. One device, one person:
        whoever records here is named once. The name stands apart from the records, and can be struck out.
      </p>
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
      {said.value !== '' && <p role="alert">{said.value}</p>}
    </section>
  );
}
