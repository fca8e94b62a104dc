/** What the fields of papers are called on the page, and the words of their choices. */
import type { NamedField } from '../../../papers/fields.ts';
import { fieldLabel } from '../../../words/field.ts';
import { trade, type Wording } from '../../../words/voice.ts';

export const fieldWords = ({ about }: NamedField, wording: Wording): string => fieldLabel(about, wording);

/** A value of a list of choices, as words. */
export const choiceWords = (value: string | number, wording: Wording): string =>
  value === 'switch' ? trade(wording, 'switch') : String(value).replace(/-/g, ' ');
