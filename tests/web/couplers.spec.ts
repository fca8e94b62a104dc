/** The room of couplers and chains: scenarios, a chain tried and undone; no barrier. */
import { expect, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { barrierFreeIn, fits, open, served, themesOfWalk } from './served.ts';
import { set } from './support/rooms.ts';

const url = served();

async function couplers(page: Page): Promise<void> {
  await open(page, url(), 'couplers');
  await expect(peaks(page)).toBeVisible();
}

const peaks = (page: Page) => page.getByRole('table', { name: /Peak forces/ });

test('another scenario gives other forces, drawn and in a table', async ({ demo: page }) => {
  await couplers(page);
  const before = await peaks(page).textContent();
  await page.getByLabel('What happens').selectOption('starting with the throttle opened quickly');
  await expect(page.getByRole('img', { name: /Pull and push, starting/ })).toBeVisible();
  await expect(peaks(page)).not.toHaveText(before ?? '');
  await expect(page.getByLabel('Speed', { exact: true })).toBeDisabled();
  await expect(page.getByText('A single peak through slack is not repeatable')).toBeVisible();
  await test.step('how far each coupler must swing in curves', async () => {
    const swings = page.getByRole('table', { name: /How far the couplers must swing/ });
    await expect(swings.getByRole('row').nth(1)).toContainText('°');
    await expect(swings).toContainText('where a curve begins or ends');
  });
});

test('a chain is tried on a gap, and the trial undone', async ({ demo: page }) => {
  await couplers(page);
  const chains = page.getByRole('table', { name: /Chains, should the train part/ });
  await expect(chains).toContainText('holds, then replace');
  const before = await chains.textContent();
  await page.locator('.chain-tried select').nth(1).selectOption({ label: 'grade 30, 1/4 in' });
  await page.getByRole('button', { name: 'Try it in the answer' }).click();
  await expect(chains).not.toHaveText(before ?? '');
  await page.getByRole('button', { name: 'Undo the trial' }).click();
  await expect(chains).toHaveText(before ?? '');
});

// On a push units are switched on the strip and where it parts, and tests/web/states.spec.ts sees whether it fits.
test('units follow the switch; nothing sticks out', { tag: '@full' }, async ({ demo: page }) => {
  await couplers(page);
  await set(page, 'Units', 'metric');
  await expect(peaks(page)).toContainText(' N');
  await expect(peaks(page)).not.toContainText('lbf');
  await fits(page);
});

for (const { theme, tag } of themesOfWalk) {
  test(`no barrier that axe can find, ${theme}`, { tag }, async ({ demo: page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await couplers(page);
    await barrierFreeIn(theme, page, 'couplers');
  });
}
