/** A line with two ends: the way back is one tap beside the rail, and says what the command line says of it. */
import { expect, test } from '@playwright/test';
import { heedwayAlone as heedway } from '../support/cli.ts';
import { answered, fits, served } from './served.ts';
import { enter, goTo, openFile } from './support/workbench.ts';

const url = served('counted');
const file = 'examples/two-roads.json';
const told = (...flags: string[]): string => {
  const after = heedway('check', file, '--no-remedies', ...flags).stdout.split('\n\n')[flags.length] ?? '';
  return after.slice(after.indexOf('\n') + 1).replace(/\s+/g, ' ');
};

// On a push: both ways of any line, and the paper that is turned round, in tests/unit/answer/way-back.test.ts.
test('the way back is answered in full, and the way out again', { tag: '@full' }, async ({ page }) => {
  await enter(page, url(), 'answer');
  const back = page.getByRole('button', { name: 'way back', exact: true });
  // The demo's line goes round: there is none.
  await expect(back).toHaveCount(0);
  await openFile(page, JSON.parse(heedway('bundle', file).stdout), 'two-roads.json');
  await goTo(page, 'answer');
  await answered(page);
  const sentence = page.locator('.sentence');
  await expect(sentence).toHaveText(told());
  await expect(back).toHaveAttribute('aria-pressed', 'false');
  await back.click();
  await expect(page.locator('.about')).toContainText('run in reverse');
  await expect(sentence).toHaveText(told('--back'));
  await expect(back).toHaveAttribute('aria-pressed', 'true');
  await fits(page);
  await back.click();
  await expect(sentence).toHaveText(told());
});
