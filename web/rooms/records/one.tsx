/** One record whole; of a departure also the answer that it left by, reckoned again. */
import { useSignal } from '@preact/signals';
import type { Entry } from '../../../records/record.ts';
import { clock } from '../../state/records.ts';

export function Whole({ entry }: { readonly entry: Entry }) {
  const said = useSignal<readonly string[]>([]);
  const again = async (): Promise<void> => {
    said.value = ['Reckoning …'];
    const [{ replay }, { tellReplay }] = await Promise.all([
      import('../../../desk/leave/depart.ts'),
      import('../../../desk/leave/tell.ts'),
    ]);
    const made = await replay(entry, clock.program);
    said.value = 'problems' in made ? made.problems.map(({ message }) => message) : tellReplay(made);
  };
  const { body, row } = entry;
  return (
    <>
      {body.kind === 'departure' && (
        <p>
          <button type="button" onClick={() => void again()}>
            Reckon its answer again
          </button>
        </p>
      )}
      <div role="status">
        {said.value.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      <pre class="whole" tabIndex={0} role="region" aria-label="The record as it is kept">
        {JSON.stringify({ ...row, text: body }, undefined, 2)}
      </pre>
    </>
  );
}
