/** A daily list on a phone: a tap where it is right, within one hand's reach, and through in three minutes. */
import { expect } from '@playwright/test';
import { test } from './demo.ts';
import { barriers, open, served } from './served.ts';

const url = served();

/** Words read in a minute while one stands at the engine, slower than in a chair; seconds for a tap with a glove. */
const [WORDS, TAP] = [150, 2];

test('a daily steam list is a tap an item, and read and told in three minutes', { tag: '@phone' }, async ({
  page,
}) => {
  await open(page, url(), 'inspect');
  const begin = page.getByRole('button', { name: 'Begin' });
  if (await begin.isVisible()) {
    await page.getByLabel('Who writes on this device').fill('An Invented Person');
    await begin.click();
  }
  await page.getByRole('button', { name: 'Steam engine, daily (example)' }).click();
  const list = page.getByRole('region', { name: 'Steam engine, daily' });
  const items = list.locator('ol > li');
  const keep = list.getByRole('button', { name: 'Record it' });
  const count = await items.count();
  expect(count).toBeGreaterThan(8);
  // What is not said is not right: nothing is recorded until the last.
  await expect(keep).toBeDisabled();
  const rights = await list.getByRole('button', { name: 'right', exact: true }).all();
  expect(rights).toHaveLength(count);
  let taps = 0;
  for (const right of rights) {
    await right.tap();
    taps++;
  }
  await expect(list.getByRole('status')).toHaveText(`${count} of ${count} said.`);
  const least = await list
    .locator('.three button')
    .evaluateAll((all) =>
      Math.min(
        ...all.flatMap((one) => [one.getBoundingClientRect().width, one.getBoundingClientRect().height]),
      ),
    );
  expect(least).toBeGreaterThanOrEqual(44);
  expect(taps / count).toBeLessThanOrEqual(2);
  // What is asked; a drawing that is shut is not read.
  const asked = await list.locator('ol > li > p:first-child').allTextContents();
  expect(asked).toHaveLength(count);
  const words = asked.join(' ').split(/\s+/).length;
  expect((60 * words) / WORDS + TAP * (taps + 1)).toBeLessThanOrEqual(180);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
    page.viewportSize()?.width ?? 0,
  );
  expect(await barriers(page)).toEqual([]);
  await keep.tap();
  await expect(list.getByRole('status')).toContainText('Recorded.');
});

test('a list put away half done is taken up where it was, counts for nothing meanwhile, and is thrown away only when asked twice', {
  tag: '@phone',
}, async ({ page }) => {
  await open(page, url(), 'inspect');
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'Steam engine, daily (example)' }).click();
  const list = page.getByRole('region', { name: 'Steam engine, daily' });
  const of = await list.getByLabel('Of', { exact: true }).inputValue();
  const count = await list.locator('ol > li').count();
  const rights = list.getByRole('button', { name: 'right', exact: true });
  for (const i of [0, 1, 2]) await rights.nth(i).tap();
  await list.getByRole('button', { name: 'REJECTED' }).nth(3).tap();
  // Letter by letter, as a thumb types it.
  await list.getByLabel('What is amiss').pressSequentially('weeps at a stay');
  const buffer = await page.screenshot({ clip: { x: 0, y: 0, width: 60, height: 40 } });
  await list
    .getByLabel('Photo', { exact: true })
    .setInputFiles({ name: 'w.png', mimeType: 'image/png', buffer });
  await expect(list.getByText('Kept with it: 1 kB.')).toBeVisible();

  await page.goto(`${url()}#leave`);
  const unfinished = page.getByRole('region', { name: 'Not finished' });
  await expect(unfinished).toContainText(
    `Not finished: Steam engine, daily, of ${of}: 4 of ${count} said, 1 REJECTED; begun `,
  );
  await expect(unfinished).toContainText('It counts for nothing until it is recorded.');
  await page.reload();
  await unfinished.getByRole('link', { name: 'Take it up again' }).tap();
  await unfinished.getByRole('button', { name: 'Take it up again' }).tap();
  await expect(list.getByRole('status')).toHaveText(`4 of ${count} said.`);
  await expect(list.getByLabel('What is amiss')).toHaveValue('weeps at a stay');
  await expect(list.getByRole('img', { name: /^Photo: / })).toBeVisible();
  expect(await barriers(page)).toEqual([]);

  // One tap throws nothing away, nor two at the same place.
  await list.getByRole('button', { name: 'Throw away what is said so far' }).dblclick();
  await expect(list.getByRole('status')).toHaveText(`4 of ${count} said.`);

  // Done to the end it is a record, and no longer unfinished.
  for (const right of (await rights.all()).slice(4)) await right.tap();
  await list.getByRole('button', { name: 'Record it' }).tap();
  await expect(list.getByRole('status')).toContainText('Recorded.');
  await expect(page.getByText(`${of}: weeps at a stay`)).toBeVisible();
  await page.reload();
  await expect(page.getByRole('region', { name: 'Not mended' })).toBeVisible();
  await expect(unfinished).toHaveCount(0);

  await page.getByRole('button', { name: 'Steam engine, daily (example)' }).click();
  await rights.first().tap();
  await list.getByRole('button', { name: 'Throw away what is said so far' }).click();
  await list.getByRole('button', { name: 'Throw it away' }).click();
  await expect(list.getByRole('status')).toHaveText(`0 of ${count} said.`);
});

test('a list of yesterday is no list of today: what was right is looked at again, what was amiss stays', {
  tag: '@phone',
}, async ({ page }) => {
  await open(page, url(), 'inspect');
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'Steam engine, daily (example)' }).click();
  const list = page.getByRole('region', { name: 'Steam engine, daily' });
  const rights = list.getByRole('button', { name: 'right', exact: true });
  const count = await rights.count();
  for (const right of (await rights.all()).slice(1)) await right.tap();
  await list.getByRole('button', { name: 'REJECTED' }).first().tap();
  await list.getByLabel('What is amiss').fill('glass leaks');
  await expect(list.getByRole('button', { name: 'Record it' })).toBeEnabled();
  // Overnight, by what the browser keeps.
  await page.evaluate(() => {
    const [one] = JSON.parse(localStorage.getItem('heedway-inspecting') ?? '[]');
    localStorage.setItem(
      'heedway-inspecting',
      JSON.stringify([{ ...one, begun: '2020-05-30T08:12:00+00:00' }]),
    );
  });
  await page.reload();
  await expect(
    page.getByText(/1 of \d+ said, 1 REJECTED; begun 2020-05-30 08:12\. What was right then/),
  ).toBeVisible();
  await page.getByRole('button', { name: 'Take it up again' }).tap();
  await expect(list.getByText('Begun on another day')).toBeVisible();
  await expect(list.getByRole('button', { name: 'Record it' })).toBeDisabled();
  await expect(list.getByLabel('What is amiss')).toHaveValue('glass leaks');
  await expect(list.getByRole('status')).toHaveText(`1 of ${count} said.`);
});

test('the host’s own list stays on the device, and goes only when asked twice', { tag: '@phone' }, async ({
  page,
}) => {
  await open(page, url(), 'inspect');
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await page.getByRole('button', { name: 'Begin' }).click();
  const own = {
    heedway: 'inspection-list',
    version: 1,
    name: 'Our own engine',
    when: 'daily',
    of: 'engine',
    source: 'rule 1',
    items: [{ id: 'wheels', ask: 'Wheels tight on their axles' }],
  };
  await page.getByLabel('The host’s own list').setInputFiles({
    name: 'own.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(own)),
  });
  await expect(page.getByRole('region', { name: 'Our own engine' })).toBeVisible();
  await page.reload();
  const button = page.getByRole('button', { name: 'Our own engine', exact: true });
  await button.tap();
  await page.getByRole('button', { name: 'Take this list off this device' }).tap();
  await page.getByRole('button', { name: 'Keep the list' }).tap();
  await expect(button).toBeVisible();
  await page.getByRole('button', { name: 'Take this list off this device' }).tap();
  await page.getByRole('button', { name: 'Take Our own engine off' }).tap();
  await expect(button).toHaveCount(0);
});
