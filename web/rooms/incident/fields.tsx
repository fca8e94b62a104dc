/** Fields as wide as a thumb needs, one below the other. */
import type { Signal } from '@preact/signals';

interface Field {
  readonly label: string;
  readonly value: Signal<string>;
}

export const Chosen = ({
  label,
  value,
  of,
}: Field & { readonly of: readonly (readonly [value: string, word: string])[] }) => (
  <p class="asked">
    <label>
      {label}{' '}
      <select
        value={value.value}
        onChange={(e) => {
          value.value = e.currentTarget.value;
        }}
      >
        {of.map(([one, word]) => (
          <option key={one} value={one}>
            {word}
          </option>
        ))}
      </select>
    </label>
  </p>
);

/** What somebody wrote of each, nothing of what was left empty. */
export const written = <K extends string>(
  fields: Readonly<Record<K, Signal<string>>>,
): Partial<Record<K, string>> =>
  Object.fromEntries(
    (Object.entries(fields) as [K, Signal<string>][])
      .map(([key, { value }]) => [key, value.trim()] as const)
      .filter(([, text]) => text !== ''),
  ) as Partial<Record<K, string>>;
