/** Nothing is lost: what happens when the browser cannot keep the work. */
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { examplePaper } from '../support/papers.ts';
import { test } from './demo.ts';
import { barrierFree, example, open, served } from './served.ts';

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
  await test.step('while the work is not kept, leaving the page is asked about', async () => {
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
});

// On a push: a storage that never answers in told.spec.ts.
test('a browser that keeps nothing at all still gives the answer, and says so', { tag: '@full' }, async ({
  page,
}) => {
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
  const alert = (text: string) => page.getByRole('alert').filter({ hasText: text });
  await expect(alert('keeps nothing here')).toBeVisible();
  // The records are kept by the same browser: that they were not asked is told beside.
  await expect(alert('RECORDS NOT ASKED')).toBeVisible();
});

test('two tabs at once: the changes of both are kept', async ({ context, page: a }) => {
  await open(a, url(), 'papers');
  const b = await context.newPage();
  await b.goto(`${url()}#papers`);
  const nameIn = (page: Page) => page.locator('main').getByLabel('name', { exact: true }).first();
  const speedIn = (page: Page) => page.getByLabel('planned speed', { exact: false }).first();
  // The second sleeps while the first writes: it has heard nothing when it writes itself.
  await b.evaluate(() => {
    BroadcastChannel.prototype.postMessage = () => {};
  });
  await a.evaluate(() => {
    BroadcastChannel.prototype.postMessage = () => {};
  });
  await rename(a, 'From the first tab');
  await a.keyboard.press('Tab');
  await speedIn(b).fill('4 mph');
  await b.keyboard.press('Tab');
  await expect(nameIn(b)).toHaveValue('From the first tab');
  await expect(b.getByRole('status').filter({ hasText: 'Changed in another tab' })).toBeVisible();
  await a.reload();
  await expect(nameIn(a)).toHaveValue('From the first tab');
  await expect(speedIn(a)).toHaveValue('4 mph');
});

// On a push: tests/unit/web/shelving.test.ts; a storage that never answers in told.spec.ts.
test('a storage that answers late is told, and what was open before lies on the shelf once it has', {
  tag: '@full',
}, async ({ context, page }) => {
  await open(page, url(), 'papers');
  await rename(page, 'Mine');
  await page.keyboard.press('Tab');
  await page.goto(`${url()}#files`);
  // Another tab is at the shelf, and nobody else comes to it until it is done.
  const other = await context.newPage();
  await other.goto(`${url()}icon.svg`);
  await expect
    .poll(() => other.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name)))
    .toContain('heedway-shelf');
  await other.evaluate(
    () =>
      new Promise<void>((done) => {
        indexedDB.open('heedway-shelf').onsuccess = ({ target }) => {
          const step = (target as IDBOpenDBRequest).result.transaction('papers', 'readwrite');
          const hold = (): void => {
            done();
            if (document.documentElement.dataset['done'] === 'yes') return;
            step.objectStore('papers').get('open').onsuccess = hold;
          };
          hold();
        };
      }),
  );
  await page.reload();
  const slow = page.getByRole('alert').filter({ hasText: 'the storage is slow. Leave the page open.' });
  await page.getByRole('button', { name: 'A busy afternoon after a shower' }).click();
  await expect(slow).toBeVisible();
  // The work goes on meanwhile.
  await expect(page.getByText('Opened A busy afternoon after a shower.')).toBeVisible();
  await other.evaluate(() => {
    document.documentElement.dataset['done'] = 'yes';
  });
  await expect(slow).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Open Mine' })).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'Open Mine' }).click();
  await page.goto(`${url()}#papers`);
  await expect(page.locator('main').getByLabel('name', { exact: true }).first()).toHaveValue('Mine');
});

// On a push: tests/unit/web/keeper.test.ts mixes no two outings, whoever opens what when; a second tab in
// interleaved.spec.ts.
test('another outing that is opened in one tab comes to the other, which keeps what was written there', {
  tag: '@full',
}, async ({ context, page: a }) => {
  await open(a, url(), 'papers');
  await rename(a, 'Mine');
  await a.keyboard.press('Tab');
  const b = await context.newPage();
  await b.goto(`${url()}#papers`);
  const name = (p: Page) => p.locator('main').getByLabel('name', { exact: true }).first();
  await expect(name(b)).toHaveValue('Mine');
  // One tab sleeps: what it is told it hears later.
  await b.evaluate(() => {
    BroadcastChannel.prototype.postMessage = () => {};
  });
  await example(b, url(), 'A busy afternoon after a shower');
  await rename(a, 'Mine, later');
  await a.keyboard.press('Tab');
  const notice = a.getByRole('status').filter({ hasText: 'Another outing was opened in another tab' });
  await expect(notice).toBeVisible();
  await expect(name(a)).toHaveValue('Busy afternoon');
  await a.goto(`${url()}#files`);
  // Of each there is the whole, and nothing of the other in it.
  await expect(a.getByRole('button', { name: 'Open Mine, later' })).toBeVisible();
  await a.getByRole('button', { name: 'Open Mine, later' }).click();
  await a.goto(`${url()}#papers`);
  await expect(name(a)).toHaveValue('Mine, later');
  await expect(a.locator('.verdict')).toContainText('go within limits');
});

/** Everything, with one vehicle of that name. */
async function withVehicle() {
  const outing = await examplePaper('steam-light');
  const [engine] = (outing['train'] as { vehicles: { vehicle: object }[] }).vehicles;
  return (name: string) => ({
    name: 'all.json',
    mimeType: 'application/json',
    buffer: Buffer.from(
      JSON.stringify({ heedway: 'everything', version: 1, outing, vehicles: [{ ...engine.vehicle, name }] }),
    ),
  });
}

// On a push: two tabs at one shed below.
test('what is put into the shed before it was looked into stays there', { tag: '@full' }, async ({
  page,
}) => {
  const LATE = 4000;
  // What is read of it alone comes late, however soon it was asked for.
  await page.addInitScript((late) => {
    const heard = IDBRequest.prototype.addEventListener;
    IDBRequest.prototype.addEventListener = function (
      this: IDBRequest,
      kind: string,
      then: EventListenerOrEventListenerObject,
      how?: boolean | AddEventListenerOptions,
    ): void {
      const looks = (this.source as IDBObjectStore | null)?.name === 'vehicles';
      const slow = kind === 'success' && looks && this.transaction?.mode === 'readonly';
      const told = (event: Event): void => void setTimeout(() => (then as EventListener)(event), late);
      heard.call(this, kind, slow ? told : then, how);
    };
  }, LATE);
  const file = await withVehicle();
  const asked = Date.now();
  await open(page, url(), 'files');
  await page.getByLabel('Open a file').setInputFiles(file('Mine'));
  await expect(page.getByText('your own 1 vehicle')).toBeVisible();
  await page.waitForTimeout(Math.max(0, LATE + 1500 - (Date.now() - asked)) + LATE);
  await expect(page.getByText('your own 1 vehicle')).toBeVisible();
});

test('own vehicles that two tabs put into the shed are all there', async ({ context, page: a }) => {
  const file = await withVehicle();
  await open(a, url(), 'files');
  const b = await context.newPage();
  await b.goto(`${url()}#files`);
  for (const page of [a, b])
    await page.evaluate(() => {
      BroadcastChannel.prototype.postMessage = () => {};
    });
  await b.getByLabel('Open a file').setInputFiles(file('From the second'));
  await expect(b.getByText('your own 1 vehicle')).toBeVisible();
  // The first has seen an empty shed.
  await a.getByLabel('Open a file').setInputFiles(file('From the first'));
  await expect(a.getByText('your own 2 vehicles')).toBeVisible();
});

test('a store that a newer Heedway has made is left alone, and that is said; a newer one is let in', async ({
  page,
  context,
}) => {
  await open(page, url(), 'papers');
  await rename(page, 'Kept before');
  await page.keyboard.press('Tab');
  const newer = await context.newPage();
  await newer.goto(`${url()}icon.svg`);
  // The page that is open makes room at once, and says so.
  await newer.evaluate(
    () =>
      new Promise<void>((done, failed) => {
        const asked = indexedDB.open('heedway', 2);
        asked.onblocked = () => failed(new Error('blocked'));
        asked.onsuccess = () => {
          asked.result.close();
          done();
        };
      }),
  );
  await expect(
    page.getByRole('alert').filter({ hasText: 'A newer Heedway is open in another tab' }),
  ).toBeVisible();
  await page.reload();
  await expect(
    page.getByRole('alert').filter({ hasText: 'A newer Heedway has kept work here' }),
  ).toBeVisible();
  await expect(page.locator('.verdict')).toContainText('go within limits');
  const kept = await newer.evaluate(
    () =>
      new Promise<string>((done) => {
        indexedDB.open('heedway').onsuccess = (e) => {
          const db = (e.target as IDBOpenDBRequest).result;
          db.transaction('session').objectStore('session').get('paper').onsuccess = (g) =>
            done((g.target as IDBRequest<{ name: string }>).result.name);
        };
      }),
  );
  expect(kept).toBe('Kept before');
});
