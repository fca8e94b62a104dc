/** The room of balance: lean by drag and by keys, seats taken and undone, both measurements; no barrier. */
import { expect, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { barrierFreeIn, fits, open, openSettled, served, themesOfWalk } from './served.ts';

const url = served();

async function balance(page: Page, opened = open): Promise<void> {
  await opened(page, url(), 'balance');
  await expect(page.locator('.section-drawing svg')).toBeVisible();
}

const state = (page: Page) => page.locator('.section-view figcaption');
const left = async (page: Page): Promise<number> =>
  Number((await state(page).textContent())?.match(/(\d+) %/)?.[1]);

test('a rider leans by keys: the margin falls, a wheel lifts, upright again', async ({ demo: page }) => {
  await balance(page);
  await page.locator('.which select').selectOption({ index: 1 });
  await page.getByRole('button', { name: 'Standing' }).click();
  const upright = await left(page);
  const slider = page.getByLabel('Lean, left to right');
  await slider.focus();
  for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowRight');
  await expect.poll(() => left(page)).toBeLessThan(upright);
  await page.getByLabel('Who leans').selectOption('all riders');
  await page.keyboard.press('Tab');
  await slider.fill('0.4');
  await expect(state(page)).toContainText(/a wheel lifts|goes over/);
  await page.getByRole('button', { name: 'Upright' }).click();
  await expect.poll(() => left(page)).toBe(upright);
  await test.step('a faster curve leaves less on the inner wheels', async () => {
    await page.getByRole('button', { name: 'Worst place' }).click();
    const slow = await left(page);
    await page.getByLabel('Speed', { exact: true }).fill('5');
    await expect.poll(() => left(page)).toBeLessThan(slow);
  });
});

test('the shoulders are dragged', { tag: '@both' }, async ({ demo: page }) => {
  await balance(page, openSettled);
  await page.getByLabel('Who leans').selectOption('all riders');
  const upright = await left(page);
  const drawing = page.locator('.section-drawing');
  await drawing.scrollIntoViewIfNeeded();
  const box = (await drawing.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height * 0.3);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 90, box.y + box.height * 0.3, { steps: 6 });
  await page.mouse.up();
  await expect.poll(() => left(page)).not.toBe(upright);
  await expect(page.getByText(/Lean of the centre of gravity: .* to the right/)).toBeVisible();
});

// On a push found and taken in tests/web/day.spec.ts, and proven in tests/unit/balance/seating.test.ts.
test('seats are found, proven, taken and undone', { tag: '@full' }, async ({ demo: page }) => {
  await balance(page);
  await page.getByLabel('no matter where they sit now').check();
  await page.getByRole('button', { name: 'Find the seating' }).click();
  await expect(page.getByText(/The worst car keeps/)).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Take these seats' }).click();
  await expect(page.getByText('Taken: they sit so.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

// On a push: tests/unit/desk/what-if.test.ts, and both tests in tests/unit/balance/commands.test.ts.
test('what would help follows what is written, and both measurements; wrong input is told at its field', {
  tag: '@full',
}, async ({ demo: page }) => {
  await balance(page);
  await expect(page.locator('.what-helps')).toContainText('a wheel lifts at');
  await page.getByLabel(/centre of gravity shifts/).fill('4-1/2');
  await expect(page.locator('#lean-by-told')).toContainText('expected');
  await page.getByLabel(/centre of gravity shifts/).fill('1 in');
  await expect(page.locator('#lean-by-told')).toContainText('25.4 mm');
  await expect(page.locator('.what-helps')).toContainText('No ballast is needed');
  await test.step('a tilt test is judged, written into the vehicle, and undone', async () => {
    const form = page.locator('.tilt-form');
    await form.getByLabel('the first wheel lifts at').fill('80 pounds');
    await expect(page.locator('#tilt-angle-told')).toContainText('expected');
    await form.getByLabel('the first wheel lifts at').fill('20 deg');
    await expect(form).toContainText('Centre of gravity');
    await form.getByRole('button', { name: 'Write it into the vehicle' }).click();
    await expect(form).toContainText('Written.');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  });
  await test.step('a block test is accepted, and rejected', async () => {
    const form = page.locator('.block-form');
    await form.getByLabel('height of the block').fill('1 in');
    await expect(form).toContainText('Accept');
    await form.getByLabel('height of the block').fill('1/8 in');
    await form.getByLabel('another wheel could be turned').check();
    await expect(form).toContainText('Do not accept');
    await form.getByLabel(/before, if weighed/).fill('60 lb');
    await expect(form.getByRole('alert')).toContainText('Both weights are expected');
  });
});

for (const { theme, tag } of themesOfWalk) {
  test(`no barrier that axe can find, and nothing sticks out, ${theme}`, { tag }, async ({ demo: page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await balance(page);
    await fits(page);
    await barrierFreeIn(theme, page, 'balance');
  });
}
