/** A pack of hundreds of pages for an insurer or inspector, against the time that somebody waits for it. Processor time. */
import { readFileSync } from 'node:fs';
import { cardPdf } from '../cli/card-pdf.ts';
import { evidencePack } from '../desk/evidence/pack.ts';
import { clubYears } from '../tests/support/club-years.ts';
import { pdfText } from '../tests/support/pdf-text.ts';
import { packDocument } from '../views/evidence/document.ts';
import type { BenchRow } from './row.ts';

/** Years of an invented club; pages that must come of them; seconds that are promised. */
const [YEARS, PAGES, SECONDS] = [14, 200, 20];

export async function run(): Promise<BenchRow[]> {
  const looked = await clubYears(YEARS, readFileSync('examples/club/year.jsonl'));
  const before = process.cpuUsage();
  const pack = await evidencePack({
    looked,
    names: [],
    wanted: {},
    speech: { system: 'imperial', wording: 'us' },
    made: { at: '2026-05-31T12:00:00+00:00', program: '0.0.0' },
  });
  const pdf = await cardPdf((has) => packDocument(pack, 'a4', has));
  const { user, system } = process.cpuUsage(before);
  const took = (user + system) / 1e6;
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
