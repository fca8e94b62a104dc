/** Records in the browser survive what comes, and what was recorded goes out as a pack that can be checked. */
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { pdfText } from '../support/pdf-text.ts';
import { runs } from '../support/tier.ts';
import { test } from './demo.ts';
import { barriers, open, served } from './served.ts';

const url = served();

// On a push: tests/unit/evidence/pack.test.ts and tests/unit/records/brought.test.ts.
test('a year of records is brought in and goes out as a pack', { tag: '@full' }, async ({ page }) => {
  await open(page, url(), 'records');
  await page
    .getByLabel('Bring records in')
    .setInputFiles(new URL('../../examples/club/year.jsonl', import.meta.url).pathname);
  await expect(page.getByLabel(/ is theirs$/)).toHaveCount(3);
  for (const key of await page.getByLabel(/ is theirs$/).all()) await key.check();
  await page.getByRole('button', { name: 'Take them in' }).click();
  await expect(page.getByText('records added; 0 were here already.')).toBeVisible();
  await page.getByRole('link', { name: 'Evidence pack' }).click();
  await page.getByLabel('First day').fill('2026-05-01');
  await page.getByLabel(/^with the answer, sheets and measurements of/).check();
  await page.getByLabel('Of these vehicles').fill('Fenwick');
  expect(await barriers(page)).toEqual([]);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the pack as PDF' }).click(),
  ]);
  await expect(page.getByText('written into evidence.pdf; of the store, all as they were')).toBeVisible();
  const { text, pages, boxes } = pdfText(readFileSync(await download.path()));
  for (const words of ['Evidence pack: Fenwick', 'Contents', 'How sure', 'boiler steam test', 'sha256sum'])
    expect(text).toContain(words);
  expect([pages > 8, boxes]).toEqual([true, 0]);
});

// On a push: kinds without a page too in tests/unit/evidence/pack.test.ts.
test('of all that one’s own club recorded, kinds without a page too', { tag: '@full' }, async ({ page }) => {
  await open(page, url(), 'records');
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('textbox', { name: 'A note' }).fill('gate painted');
  await page.getByRole('button', { name: 'Record it' }).click();
  await expect(page.getByText('2 records, all as they were written')).toBeVisible();
  await page.getByRole('link', { name: 'Evidence pack' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the pack as PDF' }).click(),
  ]);
  const { text, boxes } = pdfText(readFileSync(await download.path()));
  expect(text).toContain('gate painted');
  expect(boxes).toBe(0);
});

/** Writes notes as fast as the page lets it, and says each that was acknowledged; never ends by itself. */
async function writing(page: Page, acknowledged: string[]): Promise<void> {
  await page.exposeFunction('acknowledged', (hash: string) => acknowledged.push(hash));
  await page.evaluate(() => {
    const find = (what: string): HTMLElement | null =>
      document.querySelector(`section[aria-label="A note"] ${what}`);
    const press = (): void => {
      const input = find('input') as HTMLInputElement | null;
      if (!input) return;
      input.value = `note ${performance.now()}`;
      input.dispatchEvent(new Event('input', { bubbles: true }));
      requestAnimationFrame(() => find('button')?.click());
    };
    let before = '';
    new MutationObserver(() => {
      const [hash] = /\b[0-9a-f]{8}\b/.exec(find('[role="status"]')?.textContent ?? '') ?? [];
      const fresh = hash !== undefined && hash !== before;
      if (fresh) (globalThis as unknown as { acknowledged: (hash: string) => void }).acknowledged(hash);
      before = hash ?? before;
      // A room that was drawn anew has lost what was typed.
      if (fresh || (find('input') as HTMLInputElement | null)?.value === '') press();
    }).observe(document.body, { childList: true, characterData: true, subtree: true });
    press();
  });
}

// On a push: tests/unit/records/killed.test.ts; a full storage in kept.spec.ts.
test('without room it says so; killed while it writes, all that was acknowledged is there', {
  tag: '@full',
}, async ({ context }) => {
  test.setTimeout(runs(120_000, 3_600_000));
  let page = await context.newPage();
  const browser = await context.newCDPSession(page);
  const origin = new URL(url()).origin;
  await browser.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await open(page, url(), 'records');
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  const begin = page.getByRole('button', { name: 'Begin' });
  await begin.click();
  await expect(page.getByText('The browser’s storage is full: nothing was recorded.')).toBeVisible();
  await browser.send('Storage.overrideQuotaForOrigin', { origin });
  // Nothing of it stands in the way of beginning again.
  await begin.click();
  await expect(page.getByText('1 record, all as they were written')).toBeVisible();

  const acknowledged: string[] = [];
  for (let n = 0; n < runs(1, 100); n++) {
    const wanted = acknowledged.length + 1 + ((n * 7) % 5);
    await expect(page.getByRole('region', { name: 'A note' })).toBeVisible();
    await writing(page, acknowledged);
    await expect.poll(() => acknowledged.length, { intervals: [5] }).toBeGreaterThanOrEqual(wanted);
    const died = page.waitForEvent('crash');
    void (await context.newCDPSession(page)).send('Page.crash').catch(() => undefined);
    await died;
    void page.close().catch(() => undefined);
    page = await context.newPage();
    await page.goto(`${url()}#records`);
  }
  await expect(page.getByText(/^\d+ records, all as they were written; none is missing/)).toBeVisible();
  const there = await page.evaluate(
    () =>
      new Promise<string[]>((done, failed) => {
        const ask = indexedDB.open('heedway-records');
        ask.onerror = failed;
        ask.onsuccess = () => {
          const keys = ask.result.transaction('records').objectStore('records').getAllKeys();
          keys.onsuccess = () => done(keys.result.map((hash) => `${hash}`.slice(0, 8)));
        };
      }),
  );
  expect(acknowledged.filter((hash) => !there.includes(hash))).toEqual([]);
});
