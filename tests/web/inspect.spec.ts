/** A daily list on a phone: a tap where it is right, within one hand's reach, and through in three minutes. */
import { expect, type Locator, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { barriers, open, served } from './served.ts';

const url = served();

/** Words read in a minute while one stands at the engine, slower than in a chair; seconds for a tap with a glove. */
const [WORDS, TAP] = [150, 2];

/** Who writes here is said, where nobody has said it. */
async function begin(page: Page): Promise<void> {
  await open(page, url(), 'inspect');
  const button = page.getByRole('button', { name: 'Begin' });
  await expect(button.or(page.getByRole('region', { name: 'Lists' }))).toBeVisible();
  if (!(await button.isVisible())) return;
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await button.click();
}

// On a push: whoever writes is said in every journey of records.
test('a name that the browser filled in by itself begins; none is asked for, and said', {
  tag: '@full',
}, async ({ page }) => {
  await open(page, url(), 'inspect');
  const begins = page.getByRole('region', { name: 'Who writes here' });
  await begins.getByRole('button', { name: 'Begin' }).click();
  await expect(begins.getByRole('alert')).toHaveText('Say who writes on this device first.');
  // As a browser does that fills in, or brings back what stood there: no event tells of it.
  await begins.getByLabel('Who writes on this device').evaluate((field: HTMLInputElement) => {
    field.value = 'An Invented Person';
  });
  // Twice, as an impatient thumb does: one begins, and once.
  await begins.getByRole('button', { name: 'Begin' }).dblclick();
  await expect(page.getByRole('region', { name: 'Lists' })).toBeVisible();
  await page.goto(`${url()}#records`);
  await expect(page.getByText('1 record, all as they were written')).toBeVisible();
});

/** The daily list of a steam engine, opened. */
async function atList(page: Page): Promise<Locator> {
  await begin(page);
  await page.getByRole('button', { name: 'Steam engine, daily (example)' }).click();
  return page.getByRole('region', { name: 'Steam engine, daily' });
}

// On a push: two taps an item and three minutes in tests/unit/records/inspect.test.ts.
test('a daily steam list is a tap an item, and read and told in three minutes', {
  tag: ['@touch', '@full'],
}, async ({ page }) => {
  const list = await atList(page);
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

test('a list put away half done is taken up where it was, is no inspection meanwhile, and is thrown away only when asked twice', {
  tag: '@touch',
}, async ({ page }) => {
  const list = await atList(page);
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
  await expect(unfinished).toContainText(
    'Not recorded yet: no inspection until then, but what is rejected keeps its train from leaving.',
  );
  await test.step('and what is rejected on it keeps the train from leaving', async () => {
    const leaving = page.getByRole('region', { name: 'It leaves' });
    const why = leaving.getByText(
      `something is rejected on a list that is not recorded (Steam engine, daily, of ${of})`,
    );
    await expect(why).toBeVisible();
    // Whatever is pressed: that it leaves can be recorded with its reason alone.
    for (const check of await leaving.locator('button.check').all()) await check.tap();
    await expect(leaving.getByRole('button', { name: 'It leaves', exact: true })).toBeDisabled();
    await expect(why).toBeVisible();
  });
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

// On a push: tests/unit/records/unfinished.test.ts.
test('a list of yesterday is no list of today: what was right is looked at again, what was amiss stays', {
  tag: ['@touch', '@full'],
}, async ({ page }) => {
  const list = await atList(page);
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

// On a push: thrown away only when asked twice above; lists are read in tests/unit/records/inspect.test.ts.
test('the host’s own list stays on the device, and goes only when asked twice', {
  tag: ['@touch', '@full'],
}, async ({ page }) => {
  await begin(page);
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

// On a push: tests/unit/records/unfinished.test.ts for what was said otherwise; two tabs at once in kept.spec.ts.
test('two tabs at one list: what is said in either stands in both, and what was said otherwise is told and not put over', {
  tag: ['@touch', '@full'],
}, async ({ page: a, context }) => {
  const first = await atList(a);
  const said = (list: Locator, i: number, what: string) =>
    list.locator('ol > li').nth(i).getByRole('button', { name: what, exact: true });
  await said(first, 0, 'right').tap();
  const b = await context.newPage();
  // It sleeps: what the other tab keeps it hears of no earlier than it says something itself.
  await b.addInitScript(() =>
    globalThis.addEventListener('storage', (event) => event.stopImmediatePropagation(), true),
  );
  await b.goto(`${url()}#inspect`);
  await b.getByRole('button', { name: 'Take it up again' }).tap();
  const second = b.getByRole('region', { name: 'Steam engine, daily' });
  const count = await second.locator('ol > li').count();
  const elsewhere = second.getByRole('alert').filter({ hasText: 'Another tab said otherwise' });

  await said(first, 1, 'right').tap();
  await said(second, 2, 'right').tap();
  for (const list of [first, second])
    await expect(list.getByRole('status')).toHaveText(`3 of ${count} said.`);

  await said(first, 3, 'REJECTED').tap();
  await first.getByLabel('What is amiss').pressSequentially('weeps');
  await said(second, 3, 'right').tap();
  await expect(elsewhere).toBeVisible();
  await expect(said(second, 3, 'REJECTED')).toHaveAttribute('aria-pressed', 'true');
  await expect(second.getByLabel('What is amiss')).toHaveValue('weeps');
  expect(await barriers(b)).toEqual([]);
  // Said again, with the other's in sight, it is meant.
  await said(second, 3, 'to be mended').tap();
  await expect(elsewhere).toHaveCount(0);
  await expect(said(first, 3, 'to be mended')).toHaveAttribute('aria-pressed', 'true');

  await test.step('nothing that the other tab said is recorded or thrown away unseen', async () => {
    for (let i = 4; i < count; i++) await said(second, i, 'right').tap();
    await said(first, 5, 'REJECTED').tap();
    await first.locator('ol > li').nth(5).getByLabel('What is amiss').fill('cracked');
    await second.getByRole('button', { name: 'Record it' }).tap();
    await expect(elsewhere).toBeVisible();
    await expect(said(second, 5, 'REJECTED')).toHaveAttribute('aria-pressed', 'true');
    await said(first, 6, 'REJECTED').tap();
    await second.getByRole('button', { name: 'Throw away what is said so far' }).click();
    await second.getByRole('button', { name: 'Throw it away' }).click();
    await expect(elsewhere).toBeVisible();
    await expect(said(second, 6, 'REJECTED')).toHaveAttribute('aria-pressed', 'true');
    await said(second, 6, 'right').tap();
    await second.getByRole('button', { name: 'Record it' }).tap();
    await expect(second.getByRole('status')).toContainText('Recorded.');
    await expect(first.getByRole('status')).toHaveText(`0 of ${count} said.`);
  });
});
