/** The room of fit: the train dragged along its line, its figures those of the command line. */
import { expect, test } from '@playwright/test';
import { openAsked } from '../../cli/open-asked.ts';
import { lookAtClear } from '../../desk/clear.ts';
import { standings } from '../../desk/stood.ts';
import { stoodTable } from '../../views/tables/clear.ts';
import { fits, served } from './served.ts';
import { enter, openExample } from './support/workbench.ts';

const url = served();
const FILE = new URL('../../examples/visit-fits.json', import.meta.url).pathname;

// On a push: the same table in tests/unit/cli/clear.test.ts and tests/unit/clearance/stood.test.ts.
test('the train is stood anywhere on the line: drawn there, and told as on the command line', {
  tag: '@full',
}, async ({ page }) => {
  await enter(page, url(), 'papers');
  await openExample(page, 'A visitor and a lamp post');
  await page.goto(`${url()}/#fit`);
  const along = page.getByLabel(/^Front of the train at/);
  await expect(page.getByRole('img', { name: /^The train with its front at/ })).toContainText(
    'Lamp post: strikes',
  );
  const outing = (await openAsked(FILE)).outing;
  const stands = standings(outing, lookAtClear(outing));
  for (const place of [55, 70.1]) {
    await along.fill(String(place));
    const told = stoodTable(stands.stand(Number(await along.inputValue())), {
      system: 'imperial',
      wording: 'us',
      outing,
    });
    const table = page.getByRole('region', { name: told.title });
    for (const [i, row] of told.rows.entries())
      await expect(table.getByRole('row').nth(i + 1)).toHaveText(row.join(''));
  }
  await along.press('Home');
  await expect(page.getByRole('img', { name: /^The train with its front at 26 ft/ })).toBeVisible();
  await fits(page);
});
