/** Everything out and in as one file: byte for byte the same, and nothing lost by a broken one. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { barrierFree, fits, open, served } from './served.ts';

const url = served();
const light = readFileSync(new URL('../../examples/vehicles/light-car.json', import.meta.url), 'utf8');

async function saved(page: Page): Promise<Buffer> {
  await page.goto(`${url()}#files`);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save everything as one file' }).click(),
  ]);
  return readFileSync(await download.path());
}

const bring = (page: Page, name: string, buffer: Buffer): Promise<void> =>
  page.getByLabel('Open a file').setInputFiles({ name, mimeType: 'application/json', buffer });

test('saved, opened elsewhere and saved again it is the same, byte for byte', async ({ page, browser }) => {
  await open(page, url(), 'train');
  await page.getByLabel('Bring in vehicle files').setInputFiles({
    name: 'van.json',
    mimeType: 'application/json',
    buffer: Buffer.from(light.replace('"Light car"', '"Parcel van"')),
  });
  await page.getByRole('button', { name: 'Add Parcel van at the rear' }).click();
  await page.getByRole('button', { name: 'Move Air car 1 back' }).click();
  const first = await saved(page);
  expect(first.toString()).toContain('Parcel van');
  const elsewhere = await (await browser.newContext()).newPage();
  await open(elsewhere, url(), 'files');
  await bring(elsewhere, 'outing.json', first);
  await expect(elsewhere.getByText('Opened outing.json, with 1 vehicle for the shed.')).toBeVisible();
  const second = await saved(elsewhere);
  expect(second.equals(first)).toBe(true);
  await elsewhere.reload();
  expect((await saved(elsewhere)).equals(first)).toBe(true);
  await elsewhere.context().close();
});

test('an outing alone is saved as an outing file, the same after opening', async ({ page }) => {
  await open(page, url(), 'files');
  const first = await saved(page);
  expect(JSON.parse(first.toString()).heedway).toBe('outing');
  await page.getByRole('button', { name: 'Steam with light cars' }).click();
  await bring(page, 'gala.json', first);
  await expect(page.getByText('Opened gala.json.')).toBeVisible();
  expect((await saved(page)).equals(first)).toBe(true);
});

test('a broken file says what and where, and nothing is lost', async ({ page }) => {
  await open(page, url(), 'files');
  const before = await saved(page);
  const text = before.toString();
  const alert = page.getByRole('alert');
  await bring(page, 'cut.json', Buffer.from(text.slice(0, text.length / 2)));
  await expect(alert).toContainText(/cut\.json:\d+:\d+: .*expected/);
  await bring(page, 'wrong.json', Buffer.from(text.replace('"6 mph"', '"6 psi"')));
  await expect(alert).toContainText(
    /wrong\.json:\d+:\d+: plannedSpeed: found "6 psi"; expected a speed such as/,
  );
  const both = {
    heedway: 'everything',
    version: 1,
    outing: JSON.parse(text),
    vehicles: [{ ...JSON.parse(light), tare: 'heavy' }],
  };
  await bring(page, 'both.json', Buffer.from(JSON.stringify(both, null, 1)));
  await expect(alert).toContainText(
    /both\.json:\d+:\d+: vehicles\[0\]\.tare: found "heavy"; expected a mass such as/,
  );
  await bring(page, 'bytes.json', Buffer.from([0xff, 0xd8, 0x00, 0x12, 0x80]));
  await expect(alert).toContainText('Nothing was changed');
  expect((await saved(page)).equals(before)).toBe(true);
});

for (const theme of ['light', 'dark'] as const) {
  test(`no barrier that axe can find, and nothing sticks out, ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, url(), 'files');
    await bring(page, 'bad.json', Buffer.from('{'));
    await expect(page.getByRole('alert')).toBeVisible();
    await fits(page);
    await barrierFree(page, 'files');
  });
}
