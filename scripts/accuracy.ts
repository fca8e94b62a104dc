/** Writes docs/accuracy.md from the same measurer that the tests use. */
import { writeFileSync } from 'node:fs';
import { accuracyPage } from './pages/accuracy.ts';

writeFileSync(new URL('../docs/accuracy.md', import.meta.url), accuracyPage());
