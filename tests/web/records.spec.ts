/** Records in the browser: a train leaves and arrives with one hand, and what was recorded stands whatever comes. */
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { examplePaper } from '../support/papers.ts';
import { test } from './demo.ts';
import { barriers, open, roomOpen, served } from './served.ts';

const url = served();

const begin = async (page: Page): Promise<void> => {
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await page.getByRole('button', { name: 'Begin' }).click();
};

// On a push: tests/unit/records/command.test.ts leaves, arrives and tells what was altered; merged in
// tests/unit/records/stores.test.ts.
test('a train leaves, the page is loaded anew, it arrives; the records go to another device and verify', {
  tag: '@full',
}, async ({ page, browser }) => {
  await open(page, url(), 'leave');
  await begin(page);
  const leaves = page.getByRole('button', { name: 'It leaves', exact: true });
  await expect(leaves).toBeDisabled();
  await page.getByRole('button', { name: 'The outing is of today' }).click();
  const checks = page.locator('.check');
  await expect(checks).toHaveCount(4);
  for (const check of await checks.all()) await check.click();
  expect(await barriers(page)).toEqual([]);
  await leaves.click();
  await expect(page.getByRole('status').filter({ hasText: 'left. Recorded as' })).toBeVisible();
  // Its vehicles are out: none of them leaves again.
  await expect(leaves).toBeDisabled();

  await page.reload();
  await page.getByText('How far, how many, what happened').click();
  await page.getByLabel('Distance, all laps together').fill('1.5 mile');
  await page.getByLabel('Riders carried, all laps together').fill('12');
  await page.getByRole('button', { name: 'It has arrived' }).click();
  await expect(page.getByText('12 riders carried.')).toBeVisible();
  await expect(page.getByRole('row', { name: /^Granite 1 1 1\.5 mile/ })).toBeVisible();

  await page.goto(`${url()}#records`);
  await expect(page.getByText('3 records, all as they were written')).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save all records as one file' }).click(),
  ]);
  const file = readFileSync(await download.path());
  expect(file.toString()).not.toContain('Invented Person');

  const elsewhere = await (await browser.newContext()).newPage();
  await open(elsewhere, url(), 'records');
  await roomOpen(elsewhere);
  const bring = (buffer: Buffer): Promise<void> =>
    elsewhere
      .getByLabel('Bring records in')
      .setInputFiles({ name: 'r.jsonl', mimeType: 'application/json', buffer });
  await bring(Buffer.from(file.toString().replace('1.5 mile', '9.5 mile')));
  await expect(elsewhere.getByText('Nothing was taken from this file.')).toBeVisible();
  await expect(elsewhere.getByText(/^line 4: record .* was altered/)).toBeVisible();
  await bring(file);
  await expect(
    elsewhere.getByText(/^person .*, key .*: 3 records \(departure 1, arrival 1\)\.$/),
  ).toBeVisible();
  const take = elsewhere.getByRole('button', { name: 'Take them in' });
  await expect(take).toBeDisabled();
  await elsewhere.getByLabel(/ is theirs$/).check();
  await take.click();
  await expect(elsewhere.getByText('3 records added; 0 were here already.')).toBeVisible();
  await expect(elsewhere.getByText('3 records, all as they were written')).toBeVisible();

  // Somebody reaches into the browser's own database.
  await elsewhere.evaluate(
    () =>
      new Promise<void>((done, failed) => {
        const ask = indexedDB.open('heedway-records');
        ask.onerror = failed;
        ask.onsuccess = () => {
          const step = ask.result.transaction('records', 'readwrite');
          const all = step.objectStore('records').getAll();
          all.onsuccess = () => {
            const row = all.result.find((r: { text: string }) => r.text.includes('1.5 mile'));
            step.objectStore('records').put({ ...row, text: row.text.replace('1.5 mile', '8.5 mile') });
          };
          step.oncomplete = () => done();
        };
      }),
  );
  await elsewhere.reload();
  await expect(elsewhere.getByText(/number 3 .* was altered/)).toBeVisible();
  await elsewhere.context().close();
});

test('while an outing is reckoned Leave says so, and not that there is no answer', async ({ browser }) => {
  const page = await (await browser.newContext()).newPage();
  // The worker that gives the word never comes.
  await page.route(/\/worker-[^/]*\.js$/, () => undefined);
  await page.goto(`${url()}#leave`);
  await page.getByRole('button', { name: 'I have read this' }).dispatchEvent('click');
  await begin(page);
  await expect(page.getByRole('main').getByText('reckoning …')).toBeVisible();
  await expect(page.getByText('There is no answer')).toHaveCount(0);
  await page.context().close();
});

// On a push: tests/unit/records/due.test.ts and left-out.test.ts, and tests/unit/cli/records-at-hand.test.ts for
// the answer.
test('a host asks for a boiler test: nobody can tell, then it holds, then it is in order; and the days go into a calendar', {
  tag: '@full',
}, async ({ page }) => {
  const paper = await examplePaper('steam-light');
  const inDate = [{ what: 'boiler-hydraulic-test', of: 'engine', source: 'rule 4' }];
  const asking = { ...paper, host: { ...(paper['host'] as object), inDate } };
  const openAsking = async (): Promise<void> => {
    await page.getByLabel('Open a file').setInputFiles({
      name: 'asking.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(asking)),
    });
  };
  await open(page, url(), 'mine');
  await openAsking();
  const word = page.locator('.verdict');
  await expect(word).toHaveText(/^cannot tell/);
  await page.goto(`${url()}#due`);
  await begin(page);
  await expect(
    page.getByText('Nobody has shown that it stands: boiler hydraulic test, of Fenwick.'),
  ).toBeVisible();
  const record = async (on: string): Promise<void> => {
    await page.getByRole('combobox', { name: 'What' }).selectOption('boiler-hydraulic-test');
    await page.getByLabel('Of which vehicle or thing').fill('Fenwick');
    await page.getByLabel('Done, or begins').fill(on);
    await page.getByLabel('How long it stands').fill('3 years');
    await page.getByLabel('By whom').fill('An invented inspector');
    await page.getByRole('button', { name: 'Record the certificate' }).click();
    await expect(page.getByText('Recorded: boiler hydraulic test.')).toBeVisible();
  };
  await record('2023-05-30');
  await expect(word).toHaveText(/^hold/);
  await expect(page.getByText('which stood to 2026-05-30')).toBeVisible();
  expect(await barriers(page)).toEqual([]);
  await record('2024-05-31');
  await expect(word).toHaveText(/^go within limits/);
  await expect(page.getByText('Yes:')).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the days for a calendar' }).click(),
  ]);
  expect(readFileSync(await download.path(), 'utf8')).toContain('DTSTART;VALUE=DATE:20270531');

  // And an engine that is rejected holds it, until somebody says what was done.
  await page.goto(`${url()}#inspect`);
  await page.getByRole('button', { name: 'Steam engine, daily (example)' }).click();
  await expect(page.getByLabel('Of', { exact: true })).toHaveValue('Fenwick');
  for (const right of await page.getByRole('button', { name: 'right', exact: true }).all())
    await right.click();
  await page
    .getByRole('group', { name: /^No leak/ })
    .getByRole('button', { name: 'REJECTED' })
    .click();
  const keep = page.getByRole('button', { name: 'Record it' });
  await expect(keep).toBeDisabled();
  await page.getByLabel('What is amiss').fill('firebox weeps');
  const buffer = await page.screenshot({ clip: { x: 0, y: 0, width: 60, height: 40 } });
  await page
    .getByLabel('Photo', { exact: true })
    .setInputFiles({ name: 'weeps.png', mimeType: 'image/png', buffer });
  await expect(page.getByText('Kept with it: 1 kB.')).toBeVisible();
  expect(await barriers(page)).toEqual([]);
  await keep.click();
  await expect(word).toHaveText(/^hold/);
  await expect(page.getByRole('img', { name: 'Photo: Fenwick, firebox weeps' })).toBeVisible();
  // Another outing of the same engine, which knows nothing of it, holds by itself; and no undoing takes it out.
  await page.goto(`${url()}#mine`);
  await openAsking();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.reload();
  await expect(word).toHaveText(/^hold/);
  await page.goto(`${url()}#inspect`);
  await page.getByLabel('What was done').fill('stay renewed');
  await page.getByRole('button', { name: 'It is mended' }).click();
  // It is gone from the list at once: what became of it is said.
  await expect(
    page.getByRole('status').filter({ hasText: /^Mended: Fenwick, firebox weeps\. Recorded as / }),
  ).toBeVisible();
  await expect(word).toHaveText(/^go within limits/);
});

// On a push: two windows at one store in tests/unit/records/killed.test.ts and stores.test.ts.
test('two tabs that record at once make one chain, and neither loses a record', { tag: '@full' }, async ({
  page,
}) => {
  await open(page, url(), 'records');
  await begin(page);
  await expect(page.getByText('1 record, all as')).toBeVisible();
  const other = await page.context().newPage();
  await other.goto(`${url()}#records`);
  const notes = async (tab: Page, of: string): Promise<void> => {
    for (let i = 0; i < 8; i++) {
      await tab.getByLabel('A note', { exact: true }).last().fill(`${of}${i}`);
      await tab.getByRole('button', { name: 'Record it' }).click();
      await expect(tab.getByLabel('A note', { exact: true }).last()).toHaveValue('');
    }
  };
  await Promise.all([notes(page, 'a'), notes(other, 'b')]);
  for (const tab of [page, other]) {
    await expect(tab.getByText('17 records, all as they were written; none is missing')).toBeVisible();
    for (const of of ['a', 'b'])
      for (let i = 0; i < 8; i++)
        await expect(tab.locator('.records').getByText(`${of}${i}`, { exact: true })).toBeVisible();
    await expect(tab.getByText('Two branches')).toHaveCount(0);
  }
});

// On a push: what goes and what stays in tests/unit/records/stores.test.ts; asked twice in
// tests/web/inspect.spec.ts.
test('a name is struck out only when asked twice, with what goes and what stays', { tag: '@full' }, async ({
  page,
}) => {
  await open(page, url(), 'records');
  await begin(page);
  await page.getByText('Names, which stand apart from the records').click();
  const strike = page.getByRole('button', { name: 'Strike An Invented Person out', exact: true });
  const asked = page.getByRole('alertdialog', { name: 'Strike An Invented Person out' });
  // Two taps at one place are a slip of the hand.
  await strike.dblclick();
  await expect(page.getByRole('button', { name: 'Save all about An Invented Person' })).toBeVisible();
  await asked.getByRole('button', { name: 'Keep An Invented Person' }).click();
  await strike.click();
  await expect(asked).toContainText('It cannot be undone');
  await expect(asked).toContainText('What goes: the name, and with it who is meant by the 1 record');
  await expect(asked).toContainText('What stays: every record, as it was written, and all verifies');
  await expect(asked).toContainText('Whoever writes on this device would be struck out');
  await expect(asked).toContainText('and papers: an outing, or a list that is not finished, names whom');
  await expect(asked).not.toContainText('stands in the outing that is open here');
  await expect(asked.getByRole('button', { name: 'Keep An Invented Person' })).toBeFocused();
  expect(await barriers(page)).toEqual([]);
  await test.step('another device knows the same name: both are struck out at once', async () => {
    await page.evaluate(
      () =>
        new Promise<void>((done, failed) => {
          const ask = indexedDB.open('heedway-records');
          ask.onerror = failed;
          ask.onsuccess = () => {
            const step = ask.result.transaction('names', 'readwrite');
            step
              .objectStore('names')
              .put({ person: 'ab'.repeat(32), salt: '00'.repeat(16), name: 'an invented  person' });
            step.oncomplete = () => done();
          };
        }),
    );
    await page.reload();
    await page.getByText('Names, which stand apart from the records').click();
    await expect(page.getByRole('button', { name: /^Save all about an invented/i })).toHaveCount(1);
    await page.getByRole('button', { name: /^Strike an invented/i }).click();
  });
  await page.getByRole('button', { name: /^Strike an invented +person out for good/i }).click();
  await expect(page.getByText(/an invented +person/i)).toHaveCount(0);
  await expect(page.getByText('1 record, all as they were written')).toBeVisible();
});
