/** What to do until it may leave: found, tried, written into the papers. */
import { expect } from '@playwright/test';
import { test } from './demo.ts';
import { example, open, served, settled } from './served.ts';

const url = served('whole');

// On a push: each step and its word in tests/unit/answer/ladder.test.ts and laws/promises.test.ts; a try is a tap
// in workbench.spec.ts.
test('a ladder is found, tried with a tap and written into the papers', { tag: '@full' }, async ({
  counted: page,
}) => {
  await open(page, url(), 'answer');
  await example(page, url(), 'A busy afternoon after a shower');
  await page.goto(`${url()}#answer`);
  const ladder = page.getByRole('region', { name: 'What to do' });
  const steps = ladder.getByRole('listitem').filter({ has: page.getByRole('button') });
  await expect(steps.first()).toContainText('fasten safety chains between all vehicles', { timeout: 90_000 });
  await expect(ladder).toHaveAttribute('aria-busy', 'false', { timeout: 90_000 });
  await expect(steps.last()).toContainText('(then: go within limits)');
  await steps.last().getByRole('button').click();
  await expect(page.getByRole('heading', { name: /^Trying: / })).toBeVisible();
  await expect(page.locator('.verdict')).toHaveText(/^go within limits/, { timeout: 60_000 });
  await page.getByRole('button', { name: 'Write it into my papers' }).click();
  await expect(page.getByRole('heading', { name: /^Trying: / })).toHaveCount(0);
  await settled(page);
  await expect(page.locator('.verdict')).toHaveText(/^go within limits$/);
});
