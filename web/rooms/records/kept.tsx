/** How long records are kept, what has reached its end, and taking that out for good. */
import { useSignal } from '@preact/signals';
import { type RemovableKind, removableKinds } from '../../../papers/record/kept-fields.ts';
import { ended, rules } from '../../../records/ended.ts';
import { tellEnded, tellRules } from '../../../words/records/kept.ts';
import { kindWords } from '../../../words/records/record.ts';
import { AskAgain } from '../../parts/ask-again.tsx';
import { clock, type Kept, record, removeEnded, saying } from '../../state/records.ts';

export function HowLong({ now }: { readonly now: Kept }) {
  const kind = useSignal<RemovableKind>('departure');
  const [keep, source, said] = [useSignal(''), useSignal(''), useSignal('')];
  const gone = ended(now.entries, clock.now().slice(0, 10));
  const doing = (what: () => Promise<string>) => async (): Promise<void> => {
    try {
      said.value = await what();
    } catch (fault) {
      said.value = saying(fault);
    }
  };
  const set = doing(async () => {
    const content = { kind: kind.value, keep: keep.value.trim(), source: source.value.trim() };
    await record({ kind: 'retention', content });
    return 'Recorded. Nothing goes before it is removed.';
  });
  const take = doing(async () => {
    const count = await removeEnded();
    return `${count} removed for good. Files that were saved before still have them.`;
  });
  const field = (label: string, value: typeof keep, placeholder: string) => (
    <p class="field">
      <label>
        {label}{' '}
        <input
          value={value.value}
          placeholder={placeholder}
          onInput={(e) => {
            value.value = e.currentTarget.value;
          }}
        />
      </label>
    </p>
  );
  return (
    <details>
      <summary>How long records are kept</summary>
      <ul>
        {tellRules(rules(now.entries)).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {tellEnded(gone).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <AskAgain
        what="Remove what has reached its end, for good"
        sure={`Remove ${gone.length === 1 ? 'that record' : `those ${gone.length} records`} for good`}
        keep="Keep them all"
        disabled={gone.length === 0 || now.faults.length > 0}
        does={() => void take()}
      >
        <p>
          It cannot be undone. Their places in the chain stay and verify; files that were saved before still
          have them.
        </p>
      </AskAgain>
      <p class="field">
        <label>
          Records of kind{' '}
          <select
            value={kind.value}
            onChange={(e) => {
              kind.value = e.currentTarget.value as RemovableKind;
            }}
          >
            {removableKinds.map((one) => (
              <option key={one} value={one}>
                {kindWords[one]}
              </option>
            ))}
          </select>
        </label>
      </p>
      {field('Are kept for', keep, '3 years')}
      {field('By which rule', source, 'club rule 9')}
      <button
        type="button"
        disabled={keep.value.trim() === '' || source.value.trim() === ''}
        onClick={() => void set()}
      >
        Record how long
      </button>
      <p role="status">{said.value}</p>
    </details>
  );
}
