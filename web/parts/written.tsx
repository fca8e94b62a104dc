/** A field that is written into, with its label over or beside it. */
import type { Signal } from '@preact/signals';

interface Props {
  readonly label: string;
  readonly value: Signal<string>;
  /** `asked`: one below the other, as wide as a thumb needs. */
  readonly as?: 'asked' | 'field';
  readonly [attribute: string]: unknown;
}

export const Written = ({ label, value, as = 'asked', ...more }: Props) => (
  <p class={as}>
    <label>
      {label}{' '}
      <input
        value={value.value}
        onInput={(e) => {
          value.value = e.currentTarget.value;
        }}
        {...more}
      />
    </label>
  </p>
);
