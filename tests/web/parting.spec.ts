/** The room of a train that parts: chosen by fields and by tap, played, told in words; no barrier. */
import { expect, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { barrierFree, barrierFreeIn, example, fits, open, served, settled, themes } from './served.ts';
import { set } from './support/rooms.ts';

const url = served();

async function parting(page: Page, of?: string): Promise<void> {
  await open(page, url(), 'parting');
  if (of) {
    await example(page, url(), of);
    await page.goto(`${url()}#parting`);
  }
  await expect(page.getByRole('heading', { name: 'If it parts' })).toBeVisible();
}

const told = (page: Page) => page.locator('.told');

test('the worst case is there at once: gap, place, and what becomes of the tail', async ({ demo: page }) => {
  await parting(page, 'Too long on a wet rail');
  await expect(page.locator('.findings li').first()).toContainText('the safety chain holds at each');
  await expect(told(page)).toContainText('goes over in a curve');
  await expect(page.getByRole('table', { name: /share of the line/ })).toContainText(
    'meets the following train',
  );
  await test.step('another gap and another place by the fields; standing; as chained', async () => {
    const before = await told(page).textContent();
    await page.getByLabel('Parted').selectOption({ label: 'behind Light car 1' });
    await expect(told(page)).toContainText('Parts behind Light car 1');
    await page.getByLabel(/Head of the train at/).fill('100');
    await expect(told(page)).not.toHaveText(before ?? '');
    await page.getByLabel('while it stands').check();
    await expect(told(page)).toContainText('running 0.0 mph');
    await page.getByLabel('Parted').selectOption({ label: 'behind Light car 5' });
    await page.getByLabel('as if no chain were hung').uncheck();
    await expect(told(page)).toContainText('The chain holds: the train stays whole.');
    const chained = await told(page).textContent();
    await page.getByRole('button', { name: 'Worst case' }).click();
    await expect(told(page)).not.toHaveText(chained ?? '');
    await expect(told(page)).toContainText(/rolls|runs|goes over/);
  });
  await test.step('units follow the switch; the flag opens with its table', async () => {
    await set(page, 'Units', 'metric');
    await expect(told(page)).toContainText('km/h');
    await expect(told(page)).not.toContainText('mph');
    await page.getByText('How far behind a stopped train').click();
    await expect(page.getByRole('table', { name: /A flag behind/ })).toContainText('sees the train itself');
  });
});

test('a tap on the map parts the train there', { tag: '@both' }, async ({ demo: page }) => {
  await parting(page, 'Too long on a wet rail');
  await settled(page);
  const map = page.locator('.parting-map .map');
  const box = (await map.boundingBox())!;
  await map.click({ position: { x: box.width * 0.5, y: 20 } });
  await expect(told(page)).toContainText('Parts behind Fenwick');
  const at = Number(await page.getByLabel(/Head of the train at/).inputValue());
  await map.click({ position: { x: box.width * 0.8, y: box.height * 0.75 } });
  await expect
    .poll(async () => Number(await page.getByLabel(/Head of the train at/).inputValue()))
    .toBeGreaterThan(at + 100);
  await expect(told(page)).toContainText('Parts behind Fenwick');
});

test('it plays, pauses, and can be drawn along', async ({ demo: page }) => {
  await parting(page, 'Too long on a wet rail');
  const halves = page.locator('.parting-map .over');
  const first = await halves.innerHTML();
  await page.getByLabel('Pace').selectOption('16 times as fast');
  await page.getByRole('button', { name: 'Play' }).click();
  await expect.poll(() => halves.innerHTML()).not.toBe(first);
  await expect(page.getByRole('button', { name: 'Play' })).toBeVisible({ timeout: 60_000 });
  const last = await halves.innerHTML();
  await page.getByLabel(/^Time/).fill('1');
  await expect.poll(() => halves.innerHTML()).not.toBe(last);
  await page.getByRole('button', { name: 'Closer' }).click();
  await expect(page.getByRole('button', { name: 'Whole line' })).toBeVisible();
});

for (const { theme, tag } of themes) {
  // On a push: the room in both themes in tests/web/states.spec.ts.
  test(`no barrier that axe can find, and nothing sticks out, ${theme}`, { tag: [tag, '@full'] }, async ({
    demo: page,
  }) => {
    await page.emulateMedia({ colorScheme: theme });
    await parting(page, 'Too long on a wet rail');
    await fits(page);
    await page.getByText('How far behind a stopped train').click();
    await barrierFreeIn(theme, page, 'parting');
  });
}

// On a push: tests/unit/failures/failures.test.ts.
test('one thing fails: opened, the table says of each whether the train stops', { tag: '@full' }, async ({
  demo: page,
}) => {
  await parting(page);
  await page.getByText('If one thing fails').first().click();
  const table = page.getByRole('table', { name: /If one thing fails at its worst place/ });
  await expect(table.getByRole('row', { name: /hose or cable off/ })).toContainText('stops and stays');
  await expect(table.getByRole('row', { name: /nobody at the handle/ })).toContainText(
    'goes over in a curve',
  );
  await barrierFree(page, 'single failures');
});
