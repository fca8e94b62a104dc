/** The crew on a phone: somebody takes over by a tap and the word follows; what is said by a tap; the board as riders read it. */
import { expect } from '@playwright/test';
import { test } from './demo.ts';
import { barriers, open, served } from './served.ts';
import { openExample, word } from './support/workbench.ts';

const url = served();

test('whoever is over is relieved by a tap, and the board is printed without the word', {
  tag: '@both',
}, async ({ demo: page }) => {
  await open(page, url(), 'mine');
  await openExample(page, 'A driver at it for too long');
  await page.evaluate(() => {
    location.hash = 'crew';
  });
  const amiss = page.getByRole('region', { name: 'In the way' });
  await expect(amiss).toContainText('on duty for 10 h 30 min');
  await expect(word(page)).toContainText('hold');
  await page.getByRole('button', { name: 'Let B. Rowan drive in place of A. Larch' }).click();
  await expect(page.getByText('Nothing about the crew holds this train.')).toBeVisible();
  // Nobody has said that the new driver tried a stop.
  await expect(word(page)).toContainText('cannot tell');
  await page
    .getByRole('group', { name: 'B. Rowan: Fit to work' })
    .getByRole('button', { name: 'no' })
    .click();
  await expect(amiss).toContainText('B. Rowan does not feel fit to work today.');
  expect(await barriers(page)).toEqual([]);

  await page.getByRole('link', { name: 'Riders’ board' }).click();
  await expect(page.getByText('Before you ride')).toBeVisible();
  expect(await barriers(page)).toEqual([]);
  await page.emulateMedia({ media: 'print' });
  await expect(word(page)).toBeHidden();
  await expect(page.getByText('Read aloud before leaving')).toBeVisible();
});

// On a push: turns that were recorded in tests/unit/crew/command.test.ts.
test('who signs on sees since when, and since when there is a break', { tag: '@full' }, async ({ page }) => {
  await open(page, url(), 'due');
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await page.getByRole('button', { name: 'Begin' }).click();
  await expect(page.getByRole('region', { name: 'A certificate' })).toBeVisible();
  await page.goto(`${url()}#crew`);
  const one = page.getByRole('region', { name: 'Who works this train' }).getByRole('listitem').first();
  await one.getByLabel('Free since').fill('2020-05-30T18:00');
  await one.getByRole('button', { name: 'Signs on' }).click();
  await expect(one.getByRole('status')).toHaveText(/^Signed on \d{4}-\d\d-\d\d at \d\d:\d\d\.$/);
  await one.getByRole('button', { name: 'Has a break' }).click();
  await expect(one.getByRole('status')).toHaveText(/, in a break since \d\d:\d\d\.$/);
  await one.getByRole('button', { name: 'Is back from a break' }).click();
  await expect(one.getByRole('status')).toHaveText(/ at \d\d:\d\d\.$/);
  await one.getByRole('button', { name: 'Signs off' }).click();
  await expect(one.getByRole('status')).toHaveText(/, signed off at \d\d:\d\d\.$/);
  expect(await barriers(page)).toEqual([]);
  // Somebody without a name: the papers cannot be read, and nothing is said of a crew by those of before.
  const holds = page.getByText('Nothing about the crew holds this train.');
  await expect(holds).toBeVisible();
  await page.getByRole('button', { name: 'Add one to crew' }).click();
  await expect(holds).toHaveCount(0);
  await expect(page.getByText(/: nothing is said here until it can\.$/)).toBeVisible();
});
