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

// On a push: both sizes in tests/unit/cli/card.test.ts; the page makes one in restart.spec.ts and new.spec.ts.
test('is saved as a PDF of at most two sides, in both sizes, by the page itself', { tag: '@full' }, async ({
  demo: page,
}) => {
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

test('of a train that may not leave: what is not to be run by says so once, over all that it covers', async ({
  demo: page,
}) => {
  const stays = 'Not to be run by: it may not leave.';
  await open(page, url(), 'answer');
  await expect(page.locator('.driving')).not.toContainText('Not to be run by');
  await page.getByRole('radio', { name: 'greasy', exact: true }).check();
  await expect(page.locator('.verdict')).toHaveText('hold');
  // Its own strip, drawn anew: that of the rail before waits, dimmed.
  await expect(page.locator('.strip:not(.waits)')).toBeVisible();
  await expect(page.locator('.strip > svg').getByText(stays, { exact: true })).toHaveCount(1);
  // No gap behind a train that does not run, beside the train nor in what is read of it.
  await expect(page.locator('.strip-tools output')).toContainText('cautious');
  await expect(page.locator('.strip-tools output')).not.toContainText('gap');
  await expect(page.locator('.strip .over')).not.toContainText('gap');
  const driving = page.locator('.driving');
  await expect(driving.getByText(stays)).toHaveCount(1);
  expect(await above(page, '.driving', stays, '.zones, h3')).toBe(true);
  await page.goto(`${url()}#card`);
  await expect(page.locator('.card h1')).toHaveText('HOLD');
  for (const media of ['screen', 'print'] as const) {
    await page.emulateMedia({ media });
    await expect(page.locator('.card').getByText(stays)).toHaveCount(1);
    expect(await above(page, '.card', stays, '.strip:not(.card-plan .strip), table, h2')).toBe(true);
  }
});

/** Whether what is said there stands higher on the page than everything that it covers, of which there is some. */
const above = (page: Page, within: string, said: string, covered: string): Promise<boolean> =>
  page
    .locator(within)
    .getByText(said)
    .evaluate(
      (line, [root, below]) => {
        const all = [...(line.closest(root)?.querySelectorAll(below) ?? [])];
        const foot = line.getBoundingClientRect().bottom;
        return all.length > 1 && all.every((one) => one.getBoundingClientRect().top >= foot - 1);
      },
      [within, covered] as const,
    );

// On a push: the officer’s journey in new.spec.ts has both cards in one file; tests/unit/desk/same-day.test.ts.
test('several trains of a day on one line: one is shown, the cards of all go into one file', {
  tag: '@full',
}, async ({ page }) => {
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
