/**
 * What a record says, as a form with the words of its fields. A module of its own: it asks for the descriptions whole, which the page else does
 * without (`vite.config.ts`).
 */
import { type FieldForm, schemaForm } from '../fields.ts';
import { type Kind, kinds } from './fields.ts';

/** Undefined: of no kind that this program knows. */
export const recordForm = (kind: Kind): FieldForm | undefined => kinds[kind] && schemaForm(kinds[kind]);
