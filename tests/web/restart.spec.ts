/** With the server stopped and the browser closed and started again, the whole job goes on. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, expect } from '@playwright/test';
import { pdfText } from '../support/pdf-text.ts';
import { full } from '../support/tier.ts';
import { test } from './demo.ts';
import { open, serveOnce } from './served.ts';

test('the browser is started anew with the server gone: the work and the rooms are there', async ({
  launchOptions,
  viewport,
}) => {
  const home = mkdtempSync(join(tmpdir(), 'browser-'));
  const options = { ...launchOptions, viewport, serviceWorkers: 'allow' } as const;
  const server = await serveOnce();
  const first = await chromium.launchPersistentContext(home, options);
  const page = await first.newPage();
  await open(page, server.url, 'papers');
  await page.locator('main').getByLabel('name', { exact: true }).first().fill('Before the restart');
  await page.keyboard.press('Tab');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await first.close();
  await server.close();

  const second = await chromium.launchPersistentContext(home, options);
  const again = await second.newPage();
  await expect(fetch(server.url)).rejects.toThrow();
  await again.goto(`${server.url}#answer`);
  await expect(again.getByRole('heading', { name: 'Before the restart' })).toBeVisible();
  await expect(again.locator('.verdict')).toContainText('go within limits');
  const late = ['train', 'parting', 'sums', 'card', 'files'];
  for (const room of full ? [...late, 'papers', 'brakes', 'balance', 'couplers'] : late) {
    await again.goto(`${server.url}#${room}`);
    await expect(again.locator('main')).not.toContainText('Opening');
    await expect(again.locator('main h1').first()).toBeVisible();
  }
  await test.step('and the card is a PDF', async () => {
    await again.goto(`${server.url}#card`);
    const coming = again.waitForEvent('download');
    await again.getByRole('button', { name: 'Save as PDF, A5' }).click();
    expect(pdfText(readFileSync(await (await coming).path())).pages).toBeLessThanOrEqual(2);
  });
  await second.close();
  rmSync(home, { recursive: true, force: true });
});
