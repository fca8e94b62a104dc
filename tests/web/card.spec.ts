/** The running card as a PDF made in the browser. */
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { pdfText } from '../support/pdf-text.ts';
import { test } from './demo.ts';
import { barrierFree, open, served } from './served.ts';

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

test('is saved as a PDF of at most two sides, in both sizes, by the page itself', async ({ demo: page }) => {
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

test('several trains of a day on one line: one is shown, the cards of all go into one file', async ({
  page,
}) => {
  await open(page, url(), 'mine');
  await page.getByRole('button', { name: 'Copy this one' }).click();
  await expect(page.getByText('Open now: Gala 2')).toBeVisible();
  await page.goto(`${url()}#answer`);
  await page.getByRole('radio', { name: 'wet', exact: true }).check();
  // An example lies in its own place: two copies are two papers of one's own.
  await page.goto(`${url()}#mine`);
  await page.getByRole('button', { name: 'Copy this one' }).click();
  await page.goto(`${url()}#answer`);
  const also = page.getByRole('navigation', { name: 'Also today on this line' });
  await expect(also.getByRole('button')).toHaveCount(1);
  await also.getByRole('button', { name: /Gala 2/ }).click();
  await expect(also.getByRole('button', { name: /Gala 2 2/ })).toBeVisible();
  await also.getByRole('link', { name: 'Cards of all' }).click();
  await page.getByRole('checkbox', { name: /Gala 2 2/ }).check();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as PDF, A5' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/cards\.pdf$/);
  const { text } = pdfText(readFileSync(await download.path()));
  expect(text).toContain('Gala 2');
  expect(text).toContain('Gala 2 2');
  await barrierFree(page, 'cards of a day');
});
