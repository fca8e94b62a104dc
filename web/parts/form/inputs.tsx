/** One field of a paper, by what its schema says that it holds. */
import type { FieldForm } from '../../../papers/fields.ts';
import { Figure } from './figure.tsx';
import { Choice, Text, WordList, Yes } from './plain.tsx';
import type { Slot } from './slot.tsx';

export function FieldInput({ slot, is }: { readonly slot: Slot; readonly is: FieldForm }) {
  if (is.form === 'figure') return <Figure slot={slot} kind={is.kind} spread={is.spread} />;
  if (is.form === 'choice') return <Choice slot={slot} values={is.values} />;
  if (is.form === 'yes') return <Yes slot={slot} />;
  if (slot.choices) return <Choice slot={slot} values={slot.choices} />;
  if (is.form === 'list') return <WordList slot={slot} entry={is.entry} />;
  return <Text slot={slot} />;
}
