/** The papers as a person writes them: echoes, faults beside the field, rows, surveys, keys alone. */
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { barrierFreeIn, fits, open, served, themes } from './served.ts';
import { at, vehicleFields } from './support/rooms.ts';

const url = served();

async function paper(page: Page, title: string): Promise<void> {
  await open(page, url(), 'papers');
  const part = page.getByRole('button', { name: title, exact: true });
  await part.click();
  await expect(part).toHaveAttribute('aria-pressed', 'true');
}

/** Unfold a part of the paper where a small screen begins with it folded. */
async function unfold(page: Page, title: RegExp): Promise<Locator> {
  const fold = page
    .locator('details.fold')
    .filter({ has: page.locator('summary', { hasText: title }) })
    .last();
  if (!(await fold.evaluate((d: HTMLDetailsElement) => d.open)))
    await fold.locator('summary').first().click();
  return fold;
}

test('what is absent can be added: a field, a block, a rule; each one step to undo', {
  tag: '@both',
}, async ({ demo: page }) => {
  await paper(page, 'The day');
  await page.getByLabel('rail state').selectOption('wet');
  const conditions = await unfold(page, /^conditions/);
  await conditions.getByLabel('Add a field').selectOption('crosswind');
  await conditions.getByLabel('crosswind').fill('20 mph');
  await conditions.getByLabel('crosswind').press('Tab');
  await expect(conditions.locator('.echo').filter({ hasText: '32.187 km/h' })).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByLabel('rail state')).toHaveValue('wet');
  const rules = page.getByRole('button', { name: "Host's rules" });
  await rules.click();
  await expect(rules).toHaveAttribute('aria-pressed', 'true');
  await page.getByLabel('Add a rule').selectOption('mostRidersPerCar');
  await page.getByLabel('value', { exact: true }).fill('4');
  await page.getByLabel('value', { exact: true }).press('Tab');
  await expect(page.getByRole('button', { name: 'Add this rule' })).toBeDisabled();
  await page.getByLabel('where it is written', { exact: true }).fill('Rule 4.4');
  await page.getByRole('button', { name: 'Add this rule' }).click();
  await expect(page.getByLabel('source of most riders on a car')).toHaveValue('Rule 4.4');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByLabel('source of most riders on a car')).toHaveCount(0);
});

test('what is typed the moment a field appears stays', async ({ demo: page }) => {
  await paper(page, "Host's rules");
  const kept = await page.evaluate(async () => {
    const choice = document.querySelector<HTMLSelectElement>('#new-rule');
    if (!choice) return 'no choice';
    choice.value = 'mostRidersPerCar';
    choice.dispatchEvent(new Event('change', { bubbles: true }));
    // Drawn, but not yet painted.
    await new Promise((go) => setTimeout(go, 0));
    const field = document.querySelector<HTMLInputElement>('#new-rule-value');
    if (!field) return 'no field';
    field.value = '4';
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    await new Promise((go) => setTimeout(go, 200));
    return field.value;
  });
  expect(kept).toBe('4');
});

test('rows: added whole, put in between, taken out; a half-written one spoils nothing', async ({
  demo: page,
}) => {
  await paper(page, 'Line');
  await unfold(page, /^speed limits/);
  const table = page.getByRole('table', { name: 'speed limits' });
  await table.getByLabel('from, new row of speed limits').fill('100 ft');
  await table.getByLabel('from, new row of speed limits').press('Tab');
  await page.getByRole('button', { name: 'Add this row to speed limits' }).click();
  await expect(table.locator('.wrong')).toContainText('still to be written: to, speed, why, source');
  await expect(page.locator('.notice')).toHaveCount(0);
  for (const [column, text] of [
    ['to', '200 ft'],
    ['speed', '5 mph'],
    ['why', 'crossing'],
    ['source', 'by the board'],
  ]) {
    await table.getByLabel(`${column}, new row of speed limits`).fill(text);
    await table.getByLabel(`${column}, new row of speed limits`).press('Tab');
  }
  await page.getByRole('button', { name: 'Add this row to speed limits' }).click();
  await expect(page.getByLabel('why, row 2 of speed limits')).toHaveValue('crossing');
  await expect(page.locator('.notice')).toHaveCount(0);
  await unfold(page, /^profile/);
  await page.getByRole('button', { name: 'Insert a row above row 3 of profile' }).click();
  await page.getByLabel('at, new row of profile').fill('500 ft');
  await page.getByLabel('at, new row of profile').press('Tab');
  await page.getByLabel('height, new row of profile').fill('3 ft 7 in');
  await page.getByLabel('height, new row of profile').press('Tab');
  await page.getByRole('button', { name: 'Add this row to profile' }).click();
  await expect(page.getByLabel('height, row 3 of profile')).toHaveValue('3 ft 7 in');
  await page.getByRole('button', { name: 'Remove row 3 of profile' }).click();
  await expect(page.getByLabel('height, row 3 of profile')).toHaveValue('8.4 ft');
  await test.step('a list that the paper lacks altogether takes its first row', async () => {
    await unfold(page, /^sight distances/);
    for (let n = 2; n > 0; n--)
      await page.getByRole('button', { name: `Remove row ${n} of sight distances` }).click();
    await expect(page.locator('summary', { hasText: 'sight distances (0)' })).toBeVisible();
    for (const [column, text] of [
      ['from', '300 ft'],
      ['to', '400 ft'],
      ['distance', '150 ft'],
    ]) {
      await page.getByLabel(`${column}, new row of sight distances`).fill(text);
      await page.getByLabel(`${column}, new row of sight distances`).press('Tab');
    }
    await page.getByRole('button', { name: 'Add this row to sight distances' }).click();
    await expect(page.getByLabel('distance, row 1 of sight distances')).toHaveValue('150 ft');
  });
  await test.step('a row out of order tells so at the row, and there is no word until it is mended', async () => {
    await unfold(page, /^profile/);
    const at = page.getByLabel('at, row 3 of profile');
    await at.fill('100 ft');
    await at.press('Tab');
    await expect(page.locator('[id="f-line.profile[2].at-told"]')).toContainText('the point before');
    await expect(page.locator('.verdict')).toHaveText(/^cannot be read: the field .*profile 3$/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.locator('[id="f-line.profile[2].at-told"]')).toHaveText('= 900 ft · 274.32 m');
  });
  await test.step('a field says back what it understood, in both systems, while it is written', async () => {
    const gauge = page.getByLabel('gauge', { exact: true });
    await gauge.fill('7-1/2 in');
    await expect(page.locator('[id="f-line.gauge-told"]')).toHaveText('= 7.5 in · 190.5 mm');
    await gauge.fill('7-1/2');
    await expect(page.locator('[id="f-line.gauge-told"]')).toContainText(
      'found "7-1/2"; expected a length such as',
    );
    await page.keyboard.press('Escape');
    await gauge.fill('7-1/4 in');
    await gauge.press('Tab');
    await expect(page.locator('[id="f-line.gauge-told"]')).toHaveText('= 7.25 in · 184.2 mm');
  });
});

test('how sure a figure is: bounds and source beside it', async ({ demo: page }) => {
  await open(page, url(), at.train);
  await vehicleFields(page, /^Air car 1, place/);
  await expect(page.locator('.echo').filter({ hasText: '= 260 lb · 117.93 kg, from 257 lb' })).toBeVisible();
  await page.getByRole('button', { name: 'How sure: tare' }).click();
  await page.getByLabel('at most').fill('270 lb');
  await page.getByLabel('at most').press('Tab');
  await expect(page.locator('.echo').filter({ hasText: 'to 270 lb' })).toBeVisible();
  await page.getByLabel('at most').fill('250 lb');
  await page.getByLabel('at most').press('Tab');
  await expect(page.locator('.paper .wrong').first()).toContainText('low ≤ value ≤ high');
});

const survey = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

// On a push: tests/unit/files/survey.test.ts; one is refused on the page in workbench.spec.ts.
test('a broken survey tells row, column and what is expected; the line stays; mended, it is read', {
  tag: '@full',
}, async ({ demo: page }) => {
  await paper(page, 'Line');
  await page.locator('summary', { hasText: 'Take a line from a survey' }).click();
  const choose = page.getByLabel('CSV or GPX');
  await choose.setInputFiles(survey('b.csv', 'Chainage (ft),Height (ft)\n0,0\n50,x\n40,1\n'));
  const alert = page.getByRole('alert');
  await expect(alert).toContainText(
    'row 3, column 2 (b.csv:3:2): height: found "x"; expected a length such as',
  );
  await expect(page.getByLabel('name', { exact: true }).first()).toHaveValue('Larkfield Hollow');
  await choose.setInputFiles(survey('b.csv', 'Chainage,Height (ft)\n0,0\n'));
  await expect(page.getByRole('region', { name: 'Feet or metres?' })).toBeVisible();
  await choose.setInputFiles({
    name: 'b.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from([0x80, 0xff, 0x81]),
  });
  await expect(alert).toContainText('bytes that are not text');
  await choose.setInputFiles(survey('b.csv', 'Chainage (ft),Height (ft)\n0,0\n50,1\n'));
  await expect(page.getByRole('button', { name: 'Take this line' })).toBeVisible();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await expect(page.getByLabel('name', { exact: true }).first()).toHaveValue('Larkfield Hollow');
  await test.step('a survey is looked at before it is taken, and undone in one step', async () => {
    const file = readFileSync(new URL('../../examples/surveys/branch.csv', import.meta.url), 'utf8');
    await page.getByLabel('CSV or GPX').setInputFiles(survey('branch.csv', file));
    const look = page.getByRole('region', { name: 'The line that was read' });
    await expect(look).toContainText('400 ft end to end, 5 heights, 1 curve, 3 places');
    await expect(look.locator('svg')).toBeVisible();
    await expect(look).toContainText('Taken as point-to-point');
    await expect(page.getByLabel('name', { exact: true }).first()).toHaveValue('Larkfield Hollow');
    await page.getByRole('button', { name: 'Take this line' }).click();
    await expect(page.getByLabel('name', { exact: true }).first()).toHaveValue('branch');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByLabel('name', { exact: true }).first()).toHaveValue('Larkfield Hollow');
  });
  await test.step('a satellite track is looked at too', async () => {
    await page
      .getByLabel('CSV or GPX')
      .setInputFiles(new URL('../../examples/surveys/branch.gpx', import.meta.url).pathname);
    await expect(page.getByText('Satellite heights are poor')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Take this line' })).toBeVisible();
  });
});

// On a push: a row that must be mended is told above; long files in tests/unit/files/sizes.test.ts.
test('a long survey shows a hundred rows at a time, and leads to the row that must be mended', {
  tag: '@full',
}, async ({ demo: page }) => {
  await paper(page, 'Line');
  await page.locator('summary', { hasText: 'Take a line from a survey' }).click();
  const rows = Array.from({ length: 230 }, (_, i) => `${i * 5},${(i % 7) / 10}`);
  await page
    .getByLabel('CSV or GPX')
    .setInputFiles(survey('long.csv', `Chainage (ft),Height (ft)\n${rows.join('\n')}\n`));
  await page.getByRole('button', { name: 'Take this line' }).click();
  await unfold(page, /^profile/);
  await expect(page.getByText('rows 1 to 100 of 230')).toBeVisible();
  await page.getByRole('button', { name: 'Later rows of profile' }).click();
  await page.getByRole('button', { name: 'Later rows of profile' }).click();
  await page.getByLabel('at, row 230 of profile').fill('1 ft');
  await page.getByLabel('at, row 230 of profile').press('Tab');
  await page.getByRole('button', { name: 'Earlier rows of profile' }).click();
  await page.getByRole('button', { name: 'Row 230 must be mended' }).click();
  await expect(page.getByLabel('at, row 230 of profile')).toHaveAttribute('aria-invalid', 'true');
});

test('by keys alone: from the top of the page to a curve of another radius, and back', async ({
  demo: page,
}) => {
  await open(page, url(), 'papers');
  const reach = async (goal: Locator, key = 'Tab'): Promise<void> => {
    await expect(goal).toBeEnabled();
    for (let i = 0; i < 150; i++) {
      if (await goal.evaluate((e) => e === document.activeElement)) return;
      await page.keyboard.press(key);
    }
    throw new Error('not reached by the keyboard');
  };
  await reach(page.getByRole('button', { name: 'Line', exact: true }));
  await page.keyboard.press('Enter');
  const curves = page.locator('summary', { hasText: /^curves/ });
  await reach(curves);
  if ((await curves.evaluate((s) => (s.parentElement as HTMLDetailsElement).open)) === false)
    await page.keyboard.press('Enter');
  const radius = page.getByLabel('radius, row 1 of curves');
  await reach(radius);
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('100 ft');
  await page.keyboard.press('Tab');
  await expect(page.locator('[id="f-line.curves[0].radius-told"]')).toHaveText('= 100 ft · 30.48 m');
  await reach(page.getByRole('button', { name: 'Undo' }), 'Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(radius).toHaveValue('90 ft');
});

for (const { theme, tag } of themes) {
  // On a push: the room in both themes in tests/web/states.spec.ts.
  test(`no barrier that axe can find, and nothing sticks out, ${theme}`, { tag: [tag, '@full'] }, async ({
    demo: page,
  }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, url(), 'papers');
    for (const title of ['The day', 'Line', "Host's rules"]) {
      const button = page.getByRole('button', { name: title, exact: true });
      await button.click();
      await expect(button).toHaveAttribute('aria-pressed', 'true');
      await page.locator('details.fold').evaluateAll((all) => {
        for (const fold of all as HTMLDetailsElement[]) fold.open = true;
      });
      await fits(page);
      await barrierFreeIn(theme, page, title);
    }
  });
}
