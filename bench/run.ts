/** All benchmarks, as one table. Times are the quickest of several runs on this machine; only ratios carry over. */

import { run as balance } from './balance.ts';
import { run as clearing } from './clearing.ts';
import { run as coupling } from './coupling.ts';
import { run as evidence } from './evidence.ts';
import { run as fitting } from './fitting.ts';
import { run as parting } from './parting.ts';
import { run as reading } from './reading.ts';
import { run as records } from './records.ts';
import type { BenchRow } from './row.ts';
import { run as seating } from './seating.ts';
import { run as stopping } from './stopping.ts';
import { run as web } from './web.ts';

const rows: BenchRow[] = [
  ...stopping(),
  ...parting(),
  ...coupling(),
  ...balance(),
  ...fitting(),
  ...clearing(),
  ...(await reading()),
  ...(await records()),
  ...(await evidence()),
  ...(await seating()),
  ...(await web()),
];
for (const r of rows) {
  process.stdout.write(
    `${r.work}\n  ours    ${r.ours.padEnd(12)} error ${r.ourError}\n  against ${r.theirs.padEnd(12)} error ${r.theirError}  (${r.against})\n  ratio   ${r.ratio.toFixed(r.ratio < 10 ? 2 : 0)} ×\n`,
  );
}
