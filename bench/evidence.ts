/** A pack of hundreds of pages for an insurer or inspector, against the time that somebody waits for it. Processor time. */
import { readFileSync } from 'node:fs';
import { clubYears } from '../tests/support/club-years.ts';
import { largePack, PAGES, SECONDS, YEARS } from '../tests/support/large-pack.ts';
import { pdfText } from '../tests/support/pdf-text.ts';
import type { BenchRow } from './row.ts';

export async function run(): Promise<BenchRow[]> {
  const { pdf, took } = await largePack(await clubYears(YEARS, readFileSync('examples/club/year.jsonl')));
  const { pages } = pdfText(pdf);
  return [
    {
      work: `an evidence pack, ${pages} pages`,
      ours: `${took.toFixed(1)} s`,
      against: 'the time that is promised for 200 pages',
      theirs: `${SECONDS} s`,
      ratio: SECONDS / took,
      ourError: pages >= PAGES ? 'none' : 'FEWER PAGES THAN ASKED',
      theirError: 'none',
    },
  ];
}
