/** Incidents with one hand: what was seen, the line shut because of it, and lifted again. */
import { expect } from '@playwright/test';
import { test } from './demo.ts';
import { barriers, open, served } from './served.ts';

const url = served();

// On a push: tests/unit/records/incident-command.test.ts.
test('what happened shuts the line, the answer holds at once; lifted with a reason it goes again', {
  tag: '@full',
}, async ({ page }) => {
  await open(page, url(), 'incident');
  const word = page.locator('.verdict');
  await page.getByLabel('Who writes on this device').fill('An Invented Person');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'track defect' }).click();
  await page.getByLabel('What was seen, in its order').fill('Ties washed bare; the ganger was careless');
  await expect(page.getByText('“careless” says whose doing it was')).toBeVisible();
  await page.getByLabel('What was seen, in its order').fill('Ties washed bare');
  await page.getByLabel('Or along the line, by its boards').fill('380 ft');
  await page.getByText('Vehicle and wheel, speed').click();
  await page.getByLabel('When; now, if nothing is said').fill('2020-05-30T14:10');
  await page.getByRole('button', { name: 'Record it', exact: true }).click();
  await expect(page.getByText('1 of 1 lie on Larkfield Hollow')).toBeVisible();

  await page.getByLabel('From, by its boards').fill('350 ft');
  await page.getByLabel('To', { exact: true }).fill('9999 ft');
  await page.getByLabel('Why, as drivers are told it').fill('washed out');
  const shut = page.getByRole('button', { name: /^(Shut it|Make it slow)$/ });
  // Neither shut nor a speed: nothing to record.
  await expect(shut).toBeDisabled();
  await page.getByLabel('Shut to every train').check();
  await shut.click();
  await expect(page.getByText('beyond the end of Larkfield Hollow')).toBeVisible();
  await page.getByLabel('To', { exact: true }).fill('420 ft');
  await shut.click();
  await expect(word).toHaveText(/^hold/);
  expect(await barriers(page)).toEqual([]);
  const width = page.viewportSize()?.width;
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width ?? 0);

  await page.getByLabel('Why it need not be any more').fill('bank rebuilt, walked');
  await page.getByRole('button', { name: 'Lift it' }).click();
  await expect(word).toHaveText(/^go within limits/);

  // Years later its time has ended: it goes, and the rest verifies.
  await page.goto(`${url()}#records`);
  await page.getByText('How long records are kept').click();
  await page.getByLabel('Records of kind').selectOption('incident');
  await page.getByLabel('Are kept for').fill('3 years');
  await page.getByLabel('By which rule').fill('club rule 9');
  await page.getByRole('button', { name: 'Record how long' }).click();
  await page.getByRole('button', { name: 'Remove what has reached its end, for good' }).click();
  await page.getByRole('button', { name: /^Remove (that record|those \d+ records) for good$/ }).click();
  await expect(page.getByText('5 records, all as they were written')).toBeVisible();
  await expect(page.getByText(/^1 more was removed on purpose.*\(1 incident\)/)).toBeVisible();
});
