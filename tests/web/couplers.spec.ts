/** The room of couplers and chains: scenarios, a chain tried and undone; no barrier. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';

interface Served {
  url: string;
  close: () => Promise<void>;
}

const { serve } = (await import('../../scripts/serve.mjs' as string)) as {
  serve: (folder: string, port: number) => Promise<Served>;
};
const folder = process.env['WEB_BUILD'] ?? new URL('../../dist/web', import.meta.url).pathname;
let served: Served;

test.beforeAll(async () => {
  served = await serve(folder, 0);
});
test.afterAll(() => served.close().catch(() => undefined));

async function open(page: Page): Promise<void> {
  await page.goto(`${served.url}#couplers`);
  await page.getByRole('button', { name: 'I have read this' }).click();
  await expect(page.getByRole('table', { name: /Peak forces/ })).toBeVisible();
}

const peaks = (page: Page) => page.getByRole('table', { name: /Peak forces/ });

test('another scenario gives other forces, drawn and in a table', async ({ page }) => {
  await open(page);
  const before = await peaks(page).textContent();
  await page.getByLabel('Scenario').selectOption('starting with the throttle opened quickly');
  await expect(page.getByRole('img', { name: /Pull and push, starting/ })).toBeVisible();
  await expect(peaks(page)).not.toHaveText(before ?? '');
  await expect(page.getByLabel('Speed', { exact: true })).toBeDisabled();
  await expect(page.getByText('A single peak through slack is not repeatable')).toBeVisible();
});

test('a chain is tried on a gap, and the trial undone', async ({ page }) => {
  await open(page);
  const chains = page.getByRole('table', { name: /Chains, should the train part/ });
  await expect(chains).toContainText('too weak');
  const before = await chains.textContent();
  await page.locator('.chain-tried select').nth(1).selectOption({ label: 'grade 30, 1/4 in' });
  await page.getByRole('button', { name: 'Try it in the answer' }).click();
  await expect(chains).not.toHaveText(before ?? '');
  await page.getByRole('button', { name: 'Undo the trial' }).click();
  await expect(chains).toHaveText(before ?? '');
});

test('units follow the switch; nothing sticks out', async ({ page }) => {
  await open(page);
  await page.getByLabel('Units').selectOption('metric');
  await expect(peaks(page)).toContainText(' N');
  await expect(peaks(page)).not.toContainText('lbf');
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
});

for (const theme of ['light', 'dark'] as const) {
  test(`no barrier that axe can find, ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map((v) => `${v.id} ${v.nodes[0]?.target}`)).toEqual([]);
  });
}
