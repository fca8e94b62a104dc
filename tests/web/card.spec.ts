/** The running card as a PDF made in the browser, with and without a network. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { open, served } from './served.ts';

const url = served();

async function savedPdf(page: Page, paper: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: `Save as PDF, ${paper}` }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('gala-2026-05-31-card.pdf');
  return readFileSync(await download.path()).toString('latin1');
}

const pages = (pdf: string): number => pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
const size = (pdf: string): number[] =>
  (/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? []).slice(1).map((n) => Math.round(Number(n)));

test('is saved as a PDF of at most two sides, in both sizes, by the page itself', async ({ page }) => {
  await open(page, url(), 'card');
  for (const [paper, points] of [
    ['half-letter', [396, 612]],
    ['A5', [420, 595]],
  ] as const) {
    const pdf = await savedPdf(page, paper);
    expect(pdf.startsWith('%PDF-')).toBe(true);
    expect(pages(pdf)).toBeGreaterThan(0);
    expect(pages(pdf)).toBeLessThanOrEqual(2);
    expect(size(pdf)).toEqual(points);
    await expect(page.getByText('Saved as gala-2026-05-31-card.pdf')).toBeVisible();
  }
});

test.describe('without a network', () => {
  test.use({ serviceWorkers: 'allow' });

  test('is saved as a PDF with the network gone', async ({ page, context }) => {
    await open(page, url(), 'answer');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await context.setOffline(true);
    await page.goto(`${url()}#card`);
    await page.reload();
    expect(pages(await savedPdf(page, 'A5'))).toBeLessThanOrEqual(2);
  });
});
