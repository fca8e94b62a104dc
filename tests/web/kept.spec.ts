/** Nothing is lost: what happens when the browser cannot keep the work. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { barrierFree, open, served } from './served.ts';

const url = served();

/** From now on the browser's storage is full, until it is told to have room. */
async function fill(page: Page): Promise<void> {
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function full(...args) {
      if (document.documentElement.dataset['room'] === 'yes') return put.apply(this, args);
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
}

const rename = (page: Page, name: string): Promise<void> =>
  page.locator('main').getByLabel('name', { exact: true }).first().fill(name);

test('a full storage is said at once, and everything is handed over as a file', async ({ page }) => {
  await open(page, url(), 'papers');
  await fill(page);
  await rename(page, 'Autumn run');
  await page.keyboard.press('Tab');
  const notice = page.getByRole('alert').filter({ hasText: 'could not keep your work' });
  await expect(notice).toBeVisible();
  await barrierFree(page, 'storage full');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    notice.getByRole('button', { name: 'Save everything as one file' }).click(),
  ]);
  const saved = JSON.parse(readFileSync(await download.path(), 'utf8')) as { name: string };
  expect(saved.name).toBe('Autumn run');
  // The work goes on, and the notice goes when there is room again.
  await expect(page.locator('.verdict')).toContainText('go within limits');
  await page.evaluate(() => {
    document.documentElement.dataset['room'] = 'yes';
  });
  await rename(page, 'Autumn run, again');
  await page.keyboard.press('Tab');
  await expect(notice).toHaveCount(0);
  await page.reload();
  await expect(page.locator('main').getByLabel('name', { exact: true }).first()).toHaveValue(
    'Autumn run, again',
  );
});

test('while the work is not kept, leaving the page is asked about', async ({ page }) => {
  await open(page, url(), 'papers');
  await fill(page);
  await rename(page, 'Autumn run');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('alert').filter({ hasText: 'could not keep' })).toBeVisible();
  const asked = new Promise<string>((done) => {
    page.once('dialog', (dialog) => {
      void dialog.dismiss().then(() => done(dialog.type()));
    });
  });
  await page.close({ runBeforeUnload: true });
  expect(await asked).toBe('beforeunload');
  // Stayed: the work is still there.
  await expect(page.locator('main').getByLabel('name', { exact: true }).first()).toHaveValue('Autumn run');
});

test('a browser that keeps nothing at all still gives the answer, and says so', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', {
      value: {
        open: () => {
          throw new DOMException('shut', 'SecurityError');
        },
      },
    });
  });
  await open(page, url(), 'answer');
  await expect(page.locator('.verdict')).toContainText('go within limits');
  await expect(page.getByRole('alert')).toContainText('keeps nothing here');
});
