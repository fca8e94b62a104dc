/** What a field is and how one comes by it: under the field when its question mark is pressed. */
import type { Signal } from '@preact/signals';
import type { NamedField } from '../../../papers/fields.ts';
import { fieldHelp } from '../../../words/field.ts';
import { settings } from '../../state/session.ts';
import { fieldWords } from './words.ts';

const words = ({ about, is }: NamedField): string =>
  fieldHelp(about, is, settings.value.units, settings.value.wording);

export const HelpText = ({ field }: { readonly field: NamedField }) => (
  <p class="help-text">{words(field)}</p>
);

interface MarkProps {
  readonly field: NamedField;
  readonly open: Signal<boolean>;
}

export const HelpMark = ({ field, open }: MarkProps) => (
  <button
    type="button"
    class="help-mark"
    aria-expanded={open.value}
    onClick={() => {
      open.value = !open.value;
    }}
  >
    ?<span class="unseen"> about {fieldWords(field, settings.value.wording)}</span>
  </button>
);

interface ListProps {
  readonly fields: readonly NamedField[];
  /** "What the columns hold" */
  readonly title: string;
}

/** The columns of a table, or the rules of a host, explained one after the other. */
export function HelpList({ fields, title }: ListProps) {
  return (
    <details class="help">
      <summary>{title}</summary>
      <dl>
        {fields.map((field) => (
          <div key={field.key}>
            <dt>{fieldWords(field, settings.value.wording)}</dt>
            <dd>{words(field)}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
