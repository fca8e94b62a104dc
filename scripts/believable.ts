/** Writes docs/believable.md. */
import { writeFileSync } from 'node:fs';
import { believablePage } from './pages/believable.ts';

writeFileSync(new URL('../docs/believable.md', import.meta.url), await believablePage());
