/** One field to choose of those that could be added. */
import type { NamedField } from '../../../papers/fields.ts';
import { settings } from '../../state/session.ts';
import { fieldWords } from './words.ts';

interface Props {
  readonly id: string;
  /** Key that is chosen; none where a choice is carried out at once. */
  readonly chosen?: string;
  readonly fields: readonly NamedField[];
  readonly onPick: (key: string) => void;
}

export function FieldChoice({ id, chosen = '', fields, onPick }: Props) {
  return (
    <select
      id={id}
      value={chosen}
      onChange={(e) => {
        onPick(e.currentTarget.value);
        // Until it is drawn anew it shows what was chosen before.
        e.currentTarget.value = chosen;
      }}
    >
      <option value="">choose …</option>
      {fields.map((f) => (
        <option key={f.key} value={f.key}>
          {fieldWords(f, settings.value.wording)}
        </option>
      ))}
    </select>
  );
}
