/** The sums: found by words, worked with units, refused out of range, opened from a finding with its numbers. */
import { expect, type Page } from '@playwright/test';
import { sums } from '../../desk/sums.ts';
import { lettersIn } from '../support/equation.ts';
import { test } from './demo.ts';
import {
  barrierFree,
  barrierFreeIn,
  fits,
  open,
  openFindings,
  roomOpen,
  served,
  themesOfWalk,
} from './served.ts';

const url = served();

// On a push: letters in tests/unit/sums/letters.test.ts, figures in tests/truth/sums/sums.test.ts.
test('every sum opens on its example with a result, and shows its equation and source', {
  tag: '@full',
}, async ({ demo: page }) => {
  await open(page, url(), 'sums');
  await test.step('found by words', async () => {
    const list = page.getByRole('region', { name: 'All sums' });
    await expect(list.getByRole('link')).toHaveCount(sums.length);
    await page.getByLabel('Find by words').fill('vacuum chamber');
    await expect(list.getByRole('link')).toHaveCount(1);
    await list.getByRole('link').click();
    await expect(page.getByRole('heading', { level: 2 })).toContainText(/vacuum/i);
    await expect(page.locator('.result strong').first()).toBeVisible();
  });
  for (const { id, equation, source } of sums) {
    await page.evaluate((next) => {
      location.hash = `sums/${next}`;
    }, id);
    await expect(page.locator('.equation')).toHaveText(equation.replaceAll(';  ', ''));
    // Every letter of it stands beside a field, a result or a constant.
    const shown = await page.locator('.sum .letter').allTextContents();
    expect(shown.sort()).toEqual(lettersIn(equation).sort());
    await expect(page.locator('.result')).not.toContainText('No result');
    await expect(page.locator('.result strong').first()).toBeVisible();
    await expect(page.getByText(`Source: ${source}.`)).toBeVisible();
  }
});

test('a field says back what it understood; out of range is told at its field', async ({ demo: page }) => {
  await open(page, url(), 'sums/grade-force');
  const grade = page.getByLabel('grade', { exact: true });
  await grade.fill('1 in 80');
  await expect(page.locator('#s-grade-told')).toHaveText('= 1.25 % · 1 in 80');
  // 20 lb for each short ton and per cent: 2000 lb on 1.25 % pull 25 lb.
  await page.getByLabel('mass', { exact: true }).fill('2000 lb');
  await expect(page.locator('.result strong').first()).toHaveText(/^25(\.0+)? lbf$/);
  await grade.fill('40 %');
  await expect(page.locator('#s-grade-told')).toContainText('expected at least -15.00 %, at most 15.00 %');
  await expect(grade).toHaveAttribute('aria-invalid', 'true');
  await expect(page.locator('.result')).toContainText('No result');
  await test.step('a unit of another kind is refused', async () => {
    await page.goto(`${url()}#sums/stopping-distance`);
    await expect(page.locator('.result')).toContainText('distance');
    await page.getByLabel('speed', { exact: true }).fill('7 psi');
    await expect(page.locator('.result')).toContainText('No result');
  });
});

// On a push: tests/unit/cli/commands.test.ts, and its link in tests/unit/web/sum-link.test.ts.
test('an opened finding shows its equation with the numbers put in', { tag: '@full' }, async ({
  demo: page,
}) => {
  await open(page, url(), 'papers');
  await page.getByLabel('rail state').selectOption('greasy');
  await page.goto(`${url()}#answer`);
  const finding = page.locator('details.finding', { hasText: 'F = µ·N' });
  await openFindings(page);
  await finding.first().waitFor({ timeout: 60_000 });
  const sum = finding.first().locator('.sum-of');
  await expect(sum).toBeVisible();
  const [, adhesion, load, force] =
    /F = µ·N.*adhesion µ = ([\d.]+), load N = ([\d.]+) lbf.*force F = ([\d.]+) lbf/s.exec(
      (await sum.textContent()) ?? '',
    ) ?? [];
  // Worked by hand from what is shown, within its last digits.
  expect(Math.abs(Number(adhesion) * Number(load) - Number(force))).toBeLessThan(0.02);
  await fits(page);
  await barrierFree(page, 'finding');
  await test.step('it opens its sum with the numbers put in', async () => {
    const link = page.locator('a[href*="#sums/"]').first();
    await link.waitFor({ state: 'attached', timeout: 60_000 });
    const address = (await link.getAttribute('href')) ?? '';
    expect(address).toContain('?');
    await page.evaluate((to) => {
      location.hash = to;
    }, address);
    await expect(page.getByText('With the figures of the finding')).toBeVisible();
    const [first] = [...new URLSearchParams(address.split('?')[1])];
    await expect(page.locator(`#s-${first[0]}`)).toHaveValue(first[1]);
  });
});

const pages = ['sums', 'sums/stopping-distance', 'sums/overturning-speed', 'sums/child-weight'];

async function look(page: Page, theme: 'light' | 'dark', room: string): Promise<void> {
  await page.goto(`${url()}#${room}`);
  await roomOpen(page);
  await expect(
    page
      .locator('main')
      .getByRole('heading', { level: room === 'sums' ? 1 : 2 })
      .first(),
  ).toBeVisible();
  await fits(page);
  await barrierFreeIn(theme, page, room);
}

for (const { theme, tag } of themesOfWalk) {
  test(`no barrier that axe can find, and nothing sticks out, ${theme}`, { tag }, async ({ demo: page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, url(), 'sums');
    for (const room of pages) await look(page, theme, room);
  });
}
