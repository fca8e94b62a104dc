/** Writes the table of fields of every kind of paper into docs/fields. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fieldPages } from '../tests/support/field-pages.ts';

const folder = new URL('../docs/fields/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [name, text] of fieldPages()) writeFileSync(new URL(name, folder), text);
