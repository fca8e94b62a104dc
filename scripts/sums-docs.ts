/** Writes one page for each sum, and their list, into docs/sums. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { sumPages } from './pages/sum-pages.ts';

const folder = new URL('../docs/sums/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [name, text] of sumPages()) writeFileSync(new URL(name, folder), text);
