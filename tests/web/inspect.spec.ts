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
