/** What an answer was reckoned with: program, kind of files, and assumed values. */
import { createHash } from 'node:crypto';
import { defaultRows } from '../data/index.ts';
import about from '../package.json' with { type: 'json' };
import { VERSION } from '../papers/index.ts';

export const program: string = about.version;

export const versions = {
  program,
  schema: VERSION,
  /** Changes with any assumed value, its bounds or its source. */
  data: createHash('sha256').update(JSON.stringify(defaultRows)).digest('hex').slice(0, 12),
} as const;
