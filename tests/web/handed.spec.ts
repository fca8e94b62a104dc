/** What is handed over: a link, the card's PDF, a photograph, a code before the camera; and the one door for all of it. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { encode } from 'uqr';
import { handed } from '../../desk/outing-code.ts';
import { examplePaper } from '../support/papers.ts';
import { test } from './demo.ts';
import { answered, open, served } from './served.ts';

const url = served();
const example = (path: string): Buffer => readFileSync(new URL(`../../examples/${path}`, import.meta.url));
const bring = (page: Page, name: string, buffer: Buffer, mimeType = 'application/json'): Promise<void> =>
  page.getByLabel('Open a file', { exact: true }).setInputFiles({ name, mimeType, buffer });

test('a link opens the page with its outing; what was open lies on the shelf', async ({ page }) => {
  const made = handed({ ...(await examplePaper('steam-light')), name: 'By link' });
  await open(page, url(), 'answer');
  await page.goto(`${url()}#code`.replace('#code', `#${made?.fragment}`));
  await expect(page.getByRole('heading', { name: 'By link' })).toBeVisible();
  await expect(page.getByText('Opened from a link: Fenwick with two light cars')).toBeVisible();
  expect(page.url()).toMatch(/#answer$/);
  const notice = page.getByText('Opened from a link');
  await test.step('where a train is begun neither its word, nor its colour, nor the link is told', async () => {
    const colour = (): Promise<string> =>
      page.locator('.head').evaluate((head) => getComputedStyle(head).backgroundColor);
    await answered(page);
    const ofWord = await colour();
    await page.goto(`${url()}#new`);
    await expect(page.getByRole('heading', { name: 'What pulls?' })).toBeVisible();
    await expect(notice).toHaveCount(0);
    await expect(page.locator('.head')).not.toContainText('By link');
    await page.mouse.move(0, 400);
    await expect.poll(colour).not.toBe(ofWord);
    await page.goto(`${url()}#answer`);
    await expect(notice).toBeVisible();
    await expect.poll(colour).toBe(ofWord);
  });
  await test.step('it is told of no other outing: taken back, or opened', async () => {
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByRole('heading', { name: 'Gala' })).toBeVisible();
    await expect(notice).toHaveCount(0);
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect(page.getByRole('heading', { name: 'By link' })).toBeVisible();
    await expect(notice).toHaveCount(0);
  });
  await page.goto(`${url()}#code=${made?.fragment.slice(5, 60)}`);
  await expect(page.getByText('The link could not be opened')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'By link' })).toBeVisible();
});

// On a push: a PDF, a code and a link open alike in tests/unit/cli/handed.test.ts.
test('the link that is copied from the card is that of its outing', { tag: '@full' }, async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await open(page, url(), 'card');
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.getByText('The link is copied')).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  expect(link).toBe(`${url()}#${handed(await examplePaper('heavy-air'))?.fragment}`);
  await test.step('the PDF of a card opens its outing again', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as PDF, A5' }).click(),
    ]);
    const pdf = readFileSync(await download.path());
    await page.goto(`${url()}#mine`);
    await page.getByRole('button', { name: 'Steam with light cars' }).click();
    await bring(page, 'card.pdf', pdf, 'application/pdf');
    await expect(
      page.getByText('Opened card.pdf. Granite with five air cars on Larkfield Hollow'),
    ).toBeVisible();
    await bring(page, 'other.pdf', Buffer.from('%PDF-1.4 nothing'), 'application/pdf');
    await expect(page.getByText('This PDF carries no outing')).toBeVisible();
  });
});

test('a line that is dropped anywhere says what it is and asks first', async ({ demo: page }) => {
  await open(page, url(), 'answer');
  const line = { ...JSON.parse(example('lines/larkfield-hollow.json').toString()), name: 'Other line' };
  const data = await page.evaluateHandle((text) => {
    const carried = new DataTransfer();
    carried.items.add(new File([text], 'line.json', { type: 'application/json' }));
    return carried;
  }, JSON.stringify(line));
  await page.dispatchEvent('main', 'drop', { dataTransfer: data });
  await expect(page.getByText('line.json is a line: Other line.')).toBeVisible();
  await page.getByRole('button', { name: 'Take Other line into Gala' }).click();
  await expect(page.getByText('Gala now has Other line')).toBeVisible();
  await test.step('a survey whose header does not say is asked: feet or metres?', async () => {
    await page.goto(`${url()}#mine`);
    await bring(page, 'levels.csv', Buffer.from('Chainage,Height\n0,0\n100,1\n200,1.5\n'), 'text/csv');
    await page.getByRole('button', { name: 'Feet', exact: true }).click();
    await expect(page.getByText(/^200 ft end to end/)).toBeVisible();
  });
});

test('where the camera is refused, it is said, and what else there is', async ({ page }) => {
  await page.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', 'NotAllowedError'));
  });
  await open(page, url(), 'mine');
  await page.getByRole('button', { name: 'Read a code with the camera' }).click();
  await expect(page.getByText('The camera was refused')).toBeVisible();
  await page.getByRole('button', { name: 'Stop the camera' }).click();
  await expect(page.getByLabel('What the camera sees')).toBeHidden();
});

/** A film of one picture: the code on grey, as a camera sees it. */
async function film(): Promise<string> {
  const [code] = handed({ ...(await examplePaper('steam-light')), name: 'By camera' })?.codes ?? [];
  const qr = encode(code, { ecc: 'L', border: 4 });
  const [width, height] = [1280, 720];
  const scale = Math.floor(height / qr.size);
  const grey = Buffer.alloc(width * height, 180);
  for (let y = 0; y < qr.size * scale; y++)
    for (let x = 0; x < qr.size * scale; x++)
      grey[y * width + x + 200] = qr.data[Math.floor(y / scale)][Math.floor(x / scale)] ? 40 : 215;
  const colour = Buffer.alloc((width * height) / 2, 128);
  const path = join(mkdtempSync(join(tmpdir(), 'film-')), 'code.y4m');
  const frame = Buffer.concat([Buffer.from('FRAME\n'), grey, colour]);
  writeFileSync(
    path,
    Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420\n`), frame, frame]),
  );
  return path;
}

test('a code before the camera opens its outing, and the camera is let go', async ({
  playwright,
  browserName,
}, info) => {
  test.skip(browserName !== 'chromium', 'only Chromium plays a film as its camera');
  const { launchOptions } = info.project.use;
  const browser = await playwright.chromium.launch({
    ...launchOptions,
    args: [
      ...(launchOptions?.args ?? []),
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-video-capture=${await film()}`,
    ],
  });
  const page = await browser.newPage();
  await open(page, url(), 'mine');
  await page.getByRole('button', { name: 'Read a code with the camera' }).click();
  await expect(page.getByText('Opened code. Fenwick with two light cars')).toBeVisible({ timeout: 20_000 });
  await expect(page.getByLabel('What the camera sees')).toBeHidden();
  await browser.close();
});

/** A photograph of the card as large as it is read: turned by a fifth of a right angle, blurred, on a grey table. */
test('a photograph that is turned, blurred and small is read', async ({ page }) => {
  await open(page, url(), 'card');
  const code = page.getByAltText(/Code that carries/);
  await expect(code).toBeVisible();
  const taken = await code.evaluate(async (img: HTMLImageElement) => {
    await img.decode();
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = 640;
    const context = canvas.getContext('2d') as CanvasRenderingContext2D;
    context.fillStyle = '#b8b2a4';
    context.fillRect(0, 0, 640, 640);
    context.translate(320, 320);
    context.rotate((20 * Math.PI) / 180);
    context.filter = 'blur(0.8px)';
    context.globalAlpha = 0.85;
    context.drawImage(img, -230, -230, 460, 460);
    return canvas.toDataURL('image/jpeg', 0.85).split(',')[1];
  });
  await page.goto(`${url()}#mine`);
  await bring(page, 'card.jpg', Buffer.from(taken, 'base64'), 'image/jpeg');
  await expect(page.getByText('Opened code. Granite with five air cars')).toBeVisible({ timeout: 30_000 });
});
