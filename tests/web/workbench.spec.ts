/** Journeys through the workbench as a person makes them. */
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { pdfText } from '../support/pdf-text.ts';
import { full } from '../support/tier.ts';
import { test } from './demo.ts';
import { barrierFreeIn, example, open, openSettled, roomOpen, served, themesOfWalk } from './served.ts';
import { at, openDoor, set } from './support/rooms.ts';

const url = served();
const whole = served('whole');
/** With counts and remedies. */

test('the answer on the demo is there at once, cautions first, no set-up', { tag: '@both' }, async ({
  page,
}) => {
  await page.goto(url());
  await expect(page.getByRole('dialog')).toContainText('come first');
  await page.getByRole('button', { name: 'I have read this' }).click();
  await expect(page.locator('.verdict')).toContainText('go within limits');
  await expect(page.getByRole('slider', { name: /train along the line/ })).toBeVisible();
});

const journeys = [
  ['Steam with light cars', 'go within limits'],
  ['Battery engine, vacuum brakes', 'go within limits'],
  ['Heavy steam, automatic air', 'go within limits'],
  ['Too long on a wet rail', 'hold'],
  ['A brake nobody has measured', 'cannot tell'],
] as const;

// On a push: each word by tests/unit/cli/commands.test.ts, and every room by tests/web/states.spec.ts.
test('every example opens with its word, one after the other, and every room to it', {
  tag: '@full',
}, async ({ demo: page }) => {
  await open(page, url(), 'answer');
  for (const [name, word] of journeys) {
    await test.step(`${name} → ${word}`, async () => {
      await example(page, url(), name);
      await page.goto(`${url()}#answer`);
      await expect(page.locator('.verdict')).toHaveText(new RegExp(`^${word}( looking for remedies)?$`));
      // On a push the rooms of one that may leave are looked through in tests/web/journeys.spec.ts.
      for (const room of full || !word.startsWith('go') ? ['train', 'papers', 'brakes', 'card'] : ['card']) {
        await page.goto(`${url()}#${room}`);
        await roomOpen(page);
        await expect(page.getByRole('alert')).toHaveCount(0);
      }
    });
  }
});

test('the train is moved by keys and by hand, and its stop follows', async ({ demo: page }) => {
  await openSettled(page, url(), 'answer');
  const strip = page.getByRole('slider', { name: /train along the line/ });
  const before = await strip.getAttribute('aria-valuetext');
  await strip.focus();
  for (let i = 0; i < 10; i++) await page.keyboard.press('ArrowRight');
  await expect.poll(() => strip.getAttribute('aria-valuetext')).not.toBe(before);
  const after = await strip.getAttribute('aria-valuetext');
  const box = (await strip.boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.3, box.y + 100);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.6, box.y + 100, { steps: 6 });
  await page.mouse.up();
  await expect.poll(() => strip.getAttribute('aria-valuetext')).not.toBe(after);
  await expect(strip).toHaveAttribute('aria-valuetext', /cautious \d+ ft/);
});

test('a remedy is tried with a tap and undone with a tap', async ({ page }) => {
  await open(page, whole(), 'answer');
  await example(page, whole(), 'Battery engine, vacuum brakes');
  await page.goto(`${whole()}#answer`);
  await page.locator('details.finding').first().locator('summary').click();
  await page
    .getByRole('button', { name: /^Try: / })
    .first()
    .click({ timeout: 60_000 });
  await expect(page.getByRole('heading', { name: /^Trying: / })).toBeVisible();
  await page.getByRole('button', { name: 'Undo this' }).click();
  await expect(page.getByRole('heading', { name: /^Trying: / })).toHaveCount(0);
});

/** The paper as the browser's database holds it. */
const kept = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((done) => {
        const opening = indexedDB.open('heedway');
        opening.onsuccess = () => {
          const { result: db } = opening;
          const reading = db.transaction('session').objectStore('session').get('paper');
          reading.onsuccess = () => {
            db.close();
            done(JSON.stringify(reading.result));
          };
        };
      }),
  );

test('a rider is let off and put back; undo and redo; nothing is lost by a reload', async ({ page }) => {
  await open(page, url(), at.people);
  const seat = page.getByRole('button', { name: 'Seat 1 of Air car 1: Rider 1' });
  const before = await kept(page);
  await seat.click();
  await page.getByRole('button', { name: 'Let off' }).click();
  const empty = page.getByRole('button', { name: 'Seat 1 of Air car 1: empty' });
  await expect(empty).toBeVisible();
  await expect.poll(() => kept(page)).not.toBe(before);
  await page.reload();
  await expect(empty).toBeVisible();
  await empty.click();
  await expect(page.getByRole('button', { name: /Seat 1 of Air car 1: Rider/ })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(empty).toBeVisible();
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect(empty).toHaveCount(0);
});

test('a wrong field says what is expected beside it, and there is no word until it is mended', async ({
  demo: page,
}) => {
  await open(page, url(), 'papers');
  const field = page.getByLabel('planned speed');
  await field.fill('7 psi');
  await field.press('Tab');
  await expect(page.locator('.wrong').first()).toContainText('a speed such as');
  await expect(page.locator('.verdict')).toHaveText('cannot be read: the field planned speed');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('.wrong')).toHaveCount(0);
  await expect(page.locator('.verdict')).toContainText('go within limits');
});

test('the strip is saved as a drawing that stands alone, and as a picture', async ({ demo: page }) => {
  await open(page, url(), 'answer');
  const saved = async (button: string): Promise<Buffer> => {
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: button }).click();
    return readFileSync(await (await coming).path());
  };
  const drawing = (await saved('Save drawing')).toString('utf8');
  expect(drawing).toContain('http://www.w3.org/2000/svg');
  expect(drawing).toMatch(/fill="#[0-9a-f]{6}"/);
  expect(drawing).not.toContain('var(--');
  const picture = await saved('Save picture');
  expect(picture.subarray(1, 4).toString('latin1')).toBe('PNG');
  const width = picture.readUInt32BE(16);
  const shown = await page
    .locator('.strip')
    .first()
    .evaluate((box) => box.clientWidth);
  expect(Math.abs(width - shown * 2)).toBeLessThan(8);
  // Blank paper of that size packs into far less.
  expect(picture.length).toBeGreaterThan(20_000);
  await test.step('units and wording switch everywhere at once', async () => {
    await set(page, 'Units', 'metric');
    await expect(page.getByRole('slider', { name: /train along the line/ })).toHaveAttribute(
      'aria-valuetext',
      /km\/h/,
    );
    await set(page, 'Words', 'uk');
    await expect(page.locator('.strip')).toContainText('gradients drawn');
  });
});

test('the card prints on at most two sides', async ({ demo: page }) => {
  await open(page, url(), 'card');
  await expect(page.getByAltText(/Code that carries/)).toBeVisible();
  const pdf = (await page.pdf({ format: 'A5', preferCSSPageSize: true })).toString('latin1');
  const sides = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  expect(sides).toBeGreaterThan(0);
  expect(sides).toBeLessThanOrEqual(2);
});

test.describe('without a network', () => {
  test.use({ serviceWorkers: 'allow' });

  // On a push: tests/web/restart.spec.ts does it after a restart of the whole browser.
  test('works with the server gone, after a restart of the page, and makes the PDF of its card', {
    tag: '@full',
  }, async ({ page, context }) => {
    await open(page, whole(), 'answer');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await context.setOffline(true);
    const gone = await context.newPage();
    await gone.goto(`${whole()}#answer`);
    await expect(gone.locator('.verdict')).toContainText('go within limits');
    // On a push the rooms are entered without a server in tests/web/restart.spec.ts.
    for (const room of full ? ['train', 'papers', 'brakes', 'balance', 'parting', 'sums', 'files'] : []) {
      await gone.goto(`${whole()}#${room}`);
      await expect(gone.locator('main h1').first()).toBeVisible();
    }
    await gone.goto(`${whole()}#card`);
    const coming = gone.waitForEvent('download');
    await gone.getByRole('button', { name: 'Save as PDF, A5' }).click();
    expect(pdfText(readFileSync(await (await coming).path())).pages).toBeLessThanOrEqual(2);
    await context.setOffline(false);
  });
});

for (const { theme, tag } of themesOfWalk) {
  test(`no barrier that axe can find, ${theme}`, { tag }, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, url(), 'answer');
    // The other rooms are looked at in their own files.
    for (const room of ['answer', 'brakes', 'card']) {
      await page.goto(`${url()}#${room}`);
      await roomOpen(page);
      await barrierFreeIn(theme, page, room);
    }
  });
}

test('word and doors stay in sight, however far down; the door of the open room is marked', {
  tag: '@both',
}, async ({ demo: page }) => {
  await open(page, url(), at.card);
  for (const [room, door] of [
    [at.card, 'Answer'],
    [at.people, 'Train'],
    ['balance', 'Tools'],
    ['sums', 'Tools'],
    ['new', 'Papers'],
  ] as const) {
    await page.goto(`${url()}#${room}`);
    await expect(openDoor(page)).toHaveText(door);
    await roomOpen(page);
    await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
    await expect(openDoor(page)).toBeInViewport({ ratio: 1 });
    if (room !== 'new') await expect(page.locator('.verdict')).toBeInViewport({ ratio: 1 });
  }
  // What stands above the content is small.
  const head = await page.locator('.head').boundingBox();
  expect(head!.height).toBeLessThanOrEqual(110);
});

test('addresses of before lead to where the rooms are now', async ({ demo: page }) => {
  await open(page, url(), 'papers');
  await expect(page.getByRole('heading', { name: 'Line and rules' })).toBeVisible();
  expect(new URL(page.url()).hash).toBe('#line');
  await page.goto(`${url()}#files`);
  await expect(page.getByRole('heading', { name: 'My papers' })).toBeVisible();
  expect(new URL(page.url()).hash).toBe('#mine');
  // The way back leads to where one was, not to the old address.
  await page.goBack();
  await expect(page.getByRole('heading', { name: 'Line and rules' })).toBeVisible();
  await page.goto(`${url()}#sums/stopping-distance`);
  await expect(page.locator('.result')).toContainText('distance');
  await test.step('a broken survey shows its row and changes nothing', async () => {
    await page.goto(`${url()}#files`);
    await page.getByLabel('CSV or GPX').setInputFiles({
      name: 'bad.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('Chainage (ft),Height (ft)\n0,0\n0,1\n50,x\n'),
    });
    await expect(page.getByRole('alert')).toContainText('bad.csv:3:1');
    await expect(page.getByRole('alert')).toContainText('Nothing was changed');
  });
});

test('on paper the answer is dark on white with its word and its sums, though the screen is dark', async ({
  demo: page,
}) => {
  await open(page, url(), 'answer');
  for (const dark of ['the device', 'the choice'] as const)
    await test.step(`dark by ${dark}`, async () => {
      await page.emulateMedia({ media: 'screen' });
      await page.emulateMedia({ colorScheme: dark === 'the device' ? 'dark' : 'light' });
      if (dark === 'the choice') await set(page, 'Light', 'dark');
      await expect(page.locator('.strip .paper')).toBeVisible();
      await page.emulateMedia({ media: 'print', colorScheme: dark === 'the device' ? 'dark' : 'light' });
      const light = (color: string): number =>
        (color.match(/[\d.]+/g) ?? []).slice(0, 3).reduce((sum, n) => sum + Number(n), 0) / 3;
      const [ink, sheet, drawn] = await page.evaluate(() => [
        getComputedStyle(document.querySelector('main h1') as Element).color,
        getComputedStyle(document.body).backgroundColor,
        getComputedStyle(document.querySelector('.strip .paper') as Element).fill,
      ]);
      expect(light(ink)).toBeLessThan(80);
      expect(light(sheet)).toBe(255);
      expect(light(drawn)).toBe(255);
      await expect(page.locator('.verdict')).toBeVisible();
      await expect(page.locator('footer')).toBeVisible();
      await expect(page.locator('nav')).toBeHidden();
      await expect(page.getByRole('button', { name: 'Save drawing' })).toBeHidden();
      // Closed on the screen, open on paper.
      await expect(page.locator('details.finding').first().getByText('how sure')).toBeVisible();
    });
});
