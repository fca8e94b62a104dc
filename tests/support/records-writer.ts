/** Writes notes into a store until it is killed, and says each that was acknowledged. */
import { writeSync } from 'node:fs';
import { openSqlite } from '../../records/stores/sqlite.ts';
import { author, clockFrom, noted } from './club-records.ts';

const store = await openSqlite(process.argv[2] ?? '');
const [who, clock] = [await author('killed'), clockFrom()];
for (let i = 0; ; i++) {
  const { row } = await noted(store, who, clock, `note ${i} ${'x'.repeat(i % 3000)}`);
  writeSync(1, `${row.hash}\n`);
}
