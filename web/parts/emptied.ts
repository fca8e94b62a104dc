/** Fields that are emptied once what stood in them is recorded: what is typed meanwhile stays. */
import type { Signal } from '@preact/signals';

/** @returns empties them, called when it is recorded */
export function emptied(fields: readonly Signal<string>[]): () => void {
  const were = fields.map(({ value }) => value);
  return () => {
    for (const [i, field] of fields.entries()) if (field.value === were[i]) field.value = '';
  };
}
