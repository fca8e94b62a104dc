/** A pack of hundreds of pages: of how many years it is made, what is promised of it, and how it is made. */
import { cardPdf } from '../../cli/card-pdf.ts';
import { evidencePack } from '../../desk/evidence/pack.ts';
import type { Verified } from '../../records/verify.ts';
import { packDocument } from '../../views/evidence/document.ts';

/** Years of an invented club; pages that must come of them; seconds of processor that are promised. */
export const [YEARS, PAGES, SECONDS] = [14, 200, 20];

/** @param told hears how far it is, of 1 */
export async function largePack(looked: Verified, told?: (share: number) => void) {
  const before = process.cpuUsage();
  const pack = await evidencePack({
    looked,
    names: [],
    wanted: {},
    speech: { system: 'imperial', wording: 'us' },
    made: { at: '2026-05-31T12:00:00+00:00', program: '0.0.0' },
  });
  const pdf = await cardPdf((has) => packDocument(pack, 'a4', has), told);
  const { user, system } = process.cpuUsage(before);
  return { pack, pdf, took: (user + system) / 1e6 };
}
