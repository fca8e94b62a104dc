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
