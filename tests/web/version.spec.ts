/** A newer version: told, taken with one tap, in every tab at once, with the work kept; and when one may leave the signal. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { test } from './demo.ts';
import { buildFor, open, serve } from './served.ts';

test.use({ serviceWorkers: 'allow' });

function change(folder: string, file: string, from: string | RegExp, to: string): void {
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  expect(text).toMatch(from);
  writeFileSync(path, text.replace(from, to));
}

test('while not all of it is put by, one is told to stay in reach', async ({ page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'built-'));
  cpSync(buildFor('brief'), folder, { recursive: true });
  change(folder, 'sw.js', /url:"notices\.txt"/, 'url:"nowhere.txt"');
  const server = await serve(folder, 0);
  await page.goto(server.url);
  await expect(page.locator('footer')).toContainText(
    'Stay in reach of a network: this browser has not put Heedway by.',
  );
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

// On a push: taken over in tests/unit/web/take-over.test.ts; its work is kept in restart.spec.ts.
test('a newer version waits to be taken, and is then taken by every tab, with the work', {
  tag: '@full',
}, async ({ context, page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'built-'));
  cpSync(buildFor('brief'), folder, { recursive: true });
  const server = await serve(folder, 0);
  await open(page, server.url, 'papers');
  await expect(page.locator('footer')).toContainText('Ready for no signal.', { timeout: 60_000 });
  // From here on under its offline copy.
  await page.reload();
  const name = page.locator('main').getByLabel('name', { exact: true }).first();
  await name.fill('Before the new version');
  const other = await context.newPage();
  await other.goto(`${server.url}#files`);
  await expect(other.locator('main h1')).toBeVisible();

  change(folder, 'index.html', '<title>Heedway', '<title>Newer Heedway');
  change(folder, 'sw.js', /(url:"index\.html",revision:")\w+/, '$1newer');
  await page.evaluate(() =>
    navigator.serviceWorker
      .getRegistration()
      .then((r) => r?.update())
      .then(() => undefined),
  );
  const told = page.getByRole('status').filter({ hasText: 'A new version of Heedway is here' });
  await expect(told).toBeVisible();
  await expect(page).toHaveTitle('Heedway');
  await told.getByRole('button', { name: 'Take it now' }).click();
  await expect(page).toHaveTitle('Newer Heedway');
  await expect(other).toHaveTitle('Newer Heedway');
  await expect(name).toHaveValue('Before the new version');
  await expect(told).toHaveCount(0);
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});
