/** What a record says against the schema of its kind. */
import { type Checked, checkAgainst } from '../check.ts';
import { type Content, type Kind, kinds } from './fields.ts';

export const checkContent = <K extends Kind>(kind: K, json: unknown): Checked<Content<K>> =>
  checkAgainst(kinds[kind], json) as Checked<Content<K>>;
