/** A pack of hundreds of pages: told how far it is all the way, in the time that somebody waits for it, and every page there. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { clubYears } from '../../support/club-years.ts';
import { largePack, PAGES, SECONDS, YEARS } from '../../support/large-pack.ts';
import { pdfText } from '../../support/pdf-text.ts';
import { full } from '../../support/tier.ts';

/** By another program than wrote them, where it is here. */
function counted(pdf: Buffer): number | undefined {
  const at = join(mkdtempSync(join(tmpdir(), 'large-')), 'pack.pdf');
  writeFileSync(at, pdf);
  const { stdout } = spawnSync('pdfinfo', [at], { encoding: 'utf8' });
  const [, pages] = /^Pages:\s+(\d+)/m.exec(stdout ?? '') ?? [];
  return pages === undefined ? undefined : Number(pages);
}

// In full alone (on a push: pack.test.ts, a year). Seconds of processor, which a busy machine does not lengthen as it does the clock.
it.runIf(full)(`${PAGES} pages in ${SECONDS} s, with how far it is`, async () => {
  const looked = await clubYears(YEARS);
  const shares: number[] = [];
  const { pack, pdf, took } = await largePack(looked, (share) => shares.push(share));
  const { pages, boxes, text } = pdfText(pdf);
  expect(pages).toBeGreaterThanOrEqual(PAGES);
  expect([boxes, pack.count]).toEqual([0, looked.entries.length]);
  expect(counted(pdf) ?? pages).toBe(pages);
  // Every record is told by its hash, on whichever page.
  expect(looked.entries.filter(({ row }) => !text.includes(row.hash))).toEqual([]);
  expect(took).toBeLessThanOrEqual(SECONDS);
  expect([shares.at(-1), [...shares].sort((a, b) => a - b)]).toEqual([1, shares]);
  expect(Math.max(...shares.slice(1).map((share, i) => share - shares[i]))).toBeLessThan(0.2);
});
