/** What is amiss and not mended; closed by saying what was done. */
import { type Signal, useSignal } from '@preact/signals';
import { derailed } from '../../../records/incidents.ts';
import { type OpenDefect, openDefects } from '../../../records/inspections.ts';
import { tellInvented } from '../../../words/invented-limit.ts';
import { offTheRails } from '../../../words/records/incident.ts';
import { NOTHING_OPEN, tellMended } from '../../../words/records/mended.ts';
import { resultWords } from '../../../words/records/record.ts';
import { type Kept, record, saying } from '../../state/records.ts';
import { PhotoHere } from './photo.tsx';

export function Defects({ now }: { readonly now: Kept }) {
  const open = openDefects(now.entries);
  const off = derailed(now.entries);
  const mended = useSignal('');
  if (open.length + off.length === 0 && mended.value === '') return null;
  return (
    <section aria-label="Not mended">
      <h2>Not mended</h2>
      {open.length + off.length === 0 && <p>{NOTHING_OPEN}</p>}
      <ul class="records">
        {off.map((one) => (
          <li key={`${one.incident.from.first.row.hash} ${one.of}`}>
            <strong>{resultWords.reject}</strong> {one.of}: {offTheRails(one)} ({one.since})
          </li>
        ))}
        {open.map((defect) => (
          <Defect
            key={`${defect.inspection.first.row.hash} ${defect.item}`}
            defect={defect}
            mended={mended}
          />
        ))}
      </ul>
      <p role="status">{mended.value}</p>
    </section>
  );
}

interface Open {
  readonly defect: OpenDefect;
  /** It is gone from the list when it is mended: so it is said under it. */
  readonly mended: Signal<string>;
}

function Defect({ defect, mended }: Open) {
  const { inspection, of, item, what, rejects, invented, since, photo } = defect;
  const done = useSignal('');
  const fault = useSignal('');
  const mend = async (): Promise<void> => {
    try {
      const content = { inspection: inspection.first.row.hash, item, what: done.value.trim() };
      const { row } = await record({ kind: 'mended', content });
      mended.value = tellMended(of, what, row.hash);
    } catch (error) {
      fault.value = saying(error);
    }
  };
  return (
    <li>
      <span>
        <strong>{rejects ? resultWords.reject : resultWords.limit}</strong> {of}: {what} (found {since})
        {tellInvented(invented)}
      </span>
      {photo !== undefined && <PhotoHere hash={photo} of={`${of}, ${what}`} />}
      <span class="written">
        <label>
          What was done{' '}
          <input
            value={done.value}
            onInput={(e) => {
              done.value = e.currentTarget.value;
            }}
          />
        </label>
        <button type="button" disabled={done.value.trim() === ''} onClick={() => void mend()}>
          It is mended
        </button>
      </span>
      {fault.value !== '' && <p role="alert">{fault.value}</p>}
    </li>
  );
}
