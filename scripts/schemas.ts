/** Writes the JSON Schema of every kind of file into docs/schemas. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { schemaTexts } from './pages/schemas.ts';

const folder = new URL('../docs/schemas/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [name, text] of schemaTexts()) writeFileSync(new URL(name, folder), text);
