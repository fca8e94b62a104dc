/** The builder's questions and the search, as somebody comes to them. */
import { expect } from '@playwright/test';
import { test } from './demo.ts';
import { barrierFree, open, served } from './served.ts';
import { doorTo } from './support/rooms.ts';

const url = served();

test('from the Tools door to a cylinder, a seat and a chain', async ({ demo: page }) => {
  await open(page, url(), 'answer');
  await doorTo(page, 'tools').click();
  await page.getByRole('link', { name: /Which cylinder and lever/ }).click();
  const told = page.locator('.built');
  // Asked first is what is seen where least is: where no cylinder stops in that, it says in what one would.
  await expect(told).toContainText(/In \d+ ft one would do.*Fit each of the \d cars with one cylinder/);
  const [, able] = /In (\d+ ft) one would do/.exec((await told.textContent()) ?? '') ?? [];
  await page.getByRole('textbox', { name: 'Stop in' }).fill(able);
  await expect(told).not.toContainText('No cylinder');
  await expect(told).toContainText(/Fit each of the \d cars with one cylinder of .* bore and a lever of/);
  await page.getByRole('textbox', { name: 'Stop in' }).fill('3 ft');
  await expect(told).toContainText('No cylinder does it');
  await page.getByRole('textbox', { name: 'Stop in' }).fill('3 mph');
  await expect(told.locator('.wrong')).toBeVisible();
  const build = page.getByRole('navigation', { name: 'Build' });
  await build.getByRole('link', { name: 'Seat' }).click();
  await expect(told).toContainText(/Seats of .* may be 18 in above the rail/);
  await page.getByRole('textbox', { name: 'how far' }).fill('9 in');
  await expect(told).toContainText('is low enough');
  await build.getByRole('link', { name: 'Chain' }).click();
  await expect(told).toContainText(/Buy grade \d+/);
  await barrierFree(page, 'builder');
  await test.step('a stroke of / from any room finds what is sought, in the words of either shore', async () => {
    await page.locator('main').press('/');
    await expect(page.getByLabel('What are you looking for?')).toBeFocused();
    await page.keyboard.type('vacuum cilinder');
    const found = page.locator('.found a');
    await expect(found.first()).toContainText('Which cylinder and lever?');
    await barrierFree(page, 'search');
    await page.getByLabel('What are you looking for?').fill('runaway');
    await found.first().click();
    await expect(page).toHaveURL(/#parting/);
  });
});
