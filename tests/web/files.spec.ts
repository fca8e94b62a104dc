/** Everything out and in as one file: byte for byte the same, and nothing lost by a broken one. */
import { readFileSync } from 'node:fs';
import { type BrowserContextOptions, expect, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { barrierFreeIn, fits, open, served, themes } from './served.ts';

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

// On a push: saved, opened and saved again below, byte for byte.
test('saved, opened elsewhere and saved again it is the same, byte for byte', { tag: '@full' }, async ({
  page,
  browser,
}) => {
  await open(page, url(), 'train');
  await page.getByLabel('Bring in vehicle files').setInputFiles({
    name: 'van.json',
    mimeType: 'application/json',
    buffer: Buffer.from(light.replace('"Light car"', '"Parcel van"')),
  });
  await page.getByRole('button', { name: 'Add Parcel van at the rear' }).click();
  await page.getByLabel(/^Air car 1, place/).click();
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
  await expect(page.getByText('Opened Steam with light cars.')).toBeVisible();
  await bring(page, 'gala.json', first);
  await expect(page.getByText('Opened gala.json.')).toBeVisible();
  expect((await saved(page)).equals(first)).toBe(true);
  await test.step('a broken file says what and where, and nothing is lost', async () => {
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
});

for (const { theme, tag } of themes) {
  // On a push: the room in both themes in tests/web/states.spec.ts.
  test(`no barrier that axe can find, and nothing sticks out, ${theme}`, { tag: [tag, '@full'] }, async ({
    demo: page,
  }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, url(), 'files');
    await bring(page, 'bad.json', Buffer.from('{'));
    await expect(page.getByRole('alert')).toBeVisible();
    await fits(page);
    await barrierFreeIn(theme, page, 'files');
  });
}

/** The card's code as a picture of so many px a side, a little turned and grey, as a photograph is. */
async function photograph(page: Page, side: number): Promise<Buffer> {
  await page.goto(`${url()}#card`);
  const code = page.getByAltText(/Code that carries/);
  await expect(code).toBeVisible();
  const taken = await code.evaluate(async (img: HTMLImageElement, px) => {
    await img.decode();
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = px;
    const context = canvas.getContext('2d') as CanvasRenderingContext2D;
    context.fillStyle = '#b8b2a4';
    context.fillRect(0, 0, px, px);
    context.translate(px / 2, px / 2);
    context.rotate(0.03);
    context.globalAlpha = 0.9;
    context.drawImage(img, -0.42 * px, -0.42 * px, 0.84 * px, 0.84 * px);
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1];
  }, side);
  return Buffer.from(taken, 'base64');
}

const show = (page: Page, name: string, buffer: Buffer, mimeType = 'image/jpeg'): Promise<void> =>
  page.getByLabel('or a photograph of it').setInputFiles({ name, mimeType, buffer });

// On a push: a photograph is read in handed.spec.ts, and rooms open with no network in restart.spec.ts.
test(
  'a photograph of the card opens the outing on another phone, with no network',
  { tag: '@full' },
  async ({ page, browser }, info) => {
    await open(page, url(), 'papers');
    await page.locator('main').getByLabel('name', { exact: true }).first().fill('From a photograph');
    await page.keyboard.press('Tab');
    const photo = await photograph(page, 1800);
    const context = await browser.newContext({
      ...(info.project.use as BrowserContextOptions),
      serviceWorkers: 'allow',
    });
    const other = await context.newPage();
    await open(other, url(), 'files');
    await other.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await context.setOffline(true);
    await other.reload();
    await show(other, 'card.jpg', photo);
    await expect(other.getByText('Opened code.')).toBeVisible({ timeout: 60_000 });
    await other.goto(`${url()}#answer`);
    await expect(other.getByRole('heading', { name: 'From a photograph' })).toBeVisible();
    await context.close();
  },
);

// On a push: refused in words by tests/unit/cli/handed.test.ts; a broken file changes nothing above.
test('a picture without a code, and a file that is no picture, say so and change nothing', {
  tag: '@full',
}, async ({ page }) => {
  await open(page, url(), 'files');
  const blank = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = 300;
    return canvas.toDataURL('image/png').split(',')[1];
  });
  await show(page, 'wall.png', Buffer.from(blank, 'base64'), 'image/png');
  await expect(page.getByText('No code was found in the picture')).toBeVisible();
  await show(page, 'notes.jpg', Buffer.from('not a picture'));
  await expect(page.getByText('notes.jpg cannot be read as a picture.')).toBeVisible();
  await page.goto(`${url()}#answer`);
  await expect(page.locator('.verdict')).toContainText('go within limits');
});
