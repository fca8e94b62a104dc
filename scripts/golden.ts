/** npm run golden: writes the answers down anew. Say in CHANGELOG.md why a line changed. */
import { writeFileSync } from 'node:fs';
import { goldenLines, goldenPath } from '../tests/golden/lines.ts';

writeFileSync(goldenPath, `${(await goldenLines()).join('\n')}\n`);
