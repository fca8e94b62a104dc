/** npm run golden: writes the answers, and what each code finds, down anew. Say in CHANGELOG.md why a line changed. */
import { writeFileSync } from 'node:fs';
import { goldenLines, goldenPath } from '../tests/golden/lines.ts';
import { bundled } from '../tests/support/bundled.ts';

const { ownCodes, found } =
  await bundled<typeof import('../tests/support/makers/index.ts')>('makers/index.ts');
const codes = new URL('../tests/meta/every-code.txt', import.meta.url).pathname;
writeFileSync(codes, `${ownCodes.flatMap(found).join('\n')}\n`);
writeFileSync(goldenPath, `${(await goldenLines()).join('\n')}\n`);
