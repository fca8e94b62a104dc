/** A pack of hundreds of pages: told how far it is all the way, in the time that somebody waits for it, and every page there. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { cardPdf } from '../../../cli/card-pdf.ts';
import { evidencePack } from '../../../desk/evidence/pack.ts';
import { packDocument } from '../../../views/evidence/document.ts';
import { clubYears } from '../../support/club-years.ts';
import { pdfText } from '../../support/pdf-text.ts';
import { full } from '../../support/tier.ts';

/** In full alone (on a push: pack.test.ts, a year). Seconds of processor, which a busy machine does not lengthen as it does the clock. */
const [YEARS, PAGES, SECONDS] = [14, 200, 20];

/** By another program than wrote them, where it is here. */
function counted(pdf: Buffer): number | undefined {
  const at = join(mkdtempSync(join(tmpdir(), 'large-')), 'pack.pdf');
  writeFileSync(at, pdf);
  const { stdout } = spawnSync('pdfinfo', [at], { encoding: 'utf8' });
  const [, pages] = /^Pages:\s+(\d+)/m.exec(stdout ?? '') ?? [];
  return pages === undefined ? undefined : Number(pages);
}

it.runIf(full)(`${PAGES} pages in ${SECONDS} s, with how far it is`, async () => {
  const looked = await clubYears(YEARS);
  const before = process.cpuUsage();
  const shares: number[] = [];
  const pack = await evidencePack({
    looked,
    names: [],
    wanted: {},
    speech: { system: 'imperial', wording: 'us' },
    made: { at: '2026-05-31T12:00:00+00:00', program: '0.0.0' },
  });
  const pdf = await cardPdf(
    (has) => packDocument(pack, 'a4', has),
    (share) => shares.push(share),
  );
  const { user, system } = process.cpuUsage(before);
  const { pages, boxes, text } = pdfText(pdf);
  expect(pages).toBeGreaterThanOrEqual(PAGES);
  expect([boxes, pack.count]).toEqual([0, looked.entries.length]);
  expect(counted(pdf) ?? pages).toBe(pages);
  // Every record is told by its hash, on whichever page.
  expect(looked.entries.filter(({ row }) => !text.includes(row.hash))).toEqual([]);
  expect((user + system) / 1e6).toBeLessThanOrEqual(SECONDS);
  expect([shares.at(-1), [...shares].sort((a, b) => a - b)]).toEqual([1, shares]);
  expect(Math.max(...shares.slice(1).map((share, i) => share - shares[i]))).toBeLessThan(0.2);
});
