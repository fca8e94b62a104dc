/**
 * Whole journeys, one for each train that may go: answered, driven along the strip, the rail made wet, the rooms
 * looked through, the work saved, and the file answered by the command line in the same words. And one without
 * ever touching a pointer.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { heedway } from '../support/cli.ts';
import { fits, open, served } from './served.ts';

const url = served();

interface Told {
  readonly answer: string;
  readonly findings: readonly { readonly severity: string; readonly words: { readonly what: string } }[];
  readonly cars: unknown;
}

const toldBy = (file: string): Told => JSON.parse(heedway('check', file, '--json').stdout) as Told;

const settled = async (page: Page): Promise<void> => {
  await expect(page.locator('.verdict.none, .busy')).toHaveCount(0, { timeout: 30_000 });
};

/** The answer on the screen is the command line's, finding by finding. */
async function sameAs(page: Page, told: Told): Promise<void> {
  await page.goto(`${url()}#answer`);
  await settled(page);
  await expect(page.locator('.verdict')).toHaveText(told.answer);
  const worst = await page.locator('details.finding summary').allTextContents();
  const others = await page.locator('details.finding .others li').allTextContents();
  const expected = told.findings.filter((f) => f.severity !== 'assumed').map((f) => f.words.what);
  const named = worst.map((text) =>
    text.replace(/^\s*\d+\s*(Near: )?/, '').replace(/ \(Worst of \d+\.\)$/, ''),
  );
  // Findings of several vehicles stand under the worst of them.
  expect([...named, ...others].map((text) => text.trim()).sort()).toEqual([...expected].sort());
  expect(named[0]?.trim()).toBe(expected[0]);
}

async function saved(page: Page): Promise<string> {
  await page.goto(`${url()}#files`);
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save everything as one file' }).click();
  return (await coming).path();
}

for (const [name, file] of [
  ['Steam with light cars', 'steam-light.json'],
  ['Battery engine, vacuum brakes', 'battery-vacuum.json'],
  ['Heavy steam, automatic air', 'heavy-air.json'],
] as const) {
  test(`${name}: from the answer to a file that answers alike`, async ({ page, browser }, info) => {
    test.setTimeout(150_000);
    await open(page, url(), 'files');
    await page.getByRole('button', { name }).click();
    await expect(page.getByText(`Opened ${name}.`)).toBeVisible();
    await sameAs(page, toldBy(`examples/${file}`));

    // Along the strip: stops are told at every place, and none is shorter for a higher speed.
    const strip = page.getByRole('slider', { name: /train along the line/ });
    const cautious = async (): Promise<number> =>
      Number(/cautious (\d+) ft/.exec((await strip.getAttribute('aria-valuetext')) ?? '')?.[1]);
    await strip.focus();
    await page.keyboard.press('Home');
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 5; j++) await page.keyboard.press('Shift+ArrowRight');
      expect(await cautious()).toBeGreaterThan(0);
    }
    const slow = await cautious();
    await page.getByLabel('Speed of the train').press('End');
    await expect.poll(cautious).toBeGreaterThan(slow);

    // A wet rail, by the field of the day.
    await page.goto(`${url()}#papers`);
    await page.getByLabel('rail state').selectOption('wet');
    await settled(page);
    const wet = await saved(page);
    const copy = info.outputPath('wet.json');
    writeFileSync(copy, readFileSync(wet));
    const told = toldBy(copy);
    await sameAs(page, told);

    // Every room has something to say about it, and nothing sticks out.
    for (const room of ['train', 'brakes', 'balance', 'couplers', 'parting', 'card']) {
      await page.goto(`${url()}#${room}`);
      await expect(page.locator('main')).not.toContainText('Opening');
      await expect(page.locator('main h1').first()).toBeVisible();
      await expect(page.getByRole('alert')).toHaveCount(0);
      await fits(page);
    }
    await expect(page.locator('.card h1')).toHaveText(told.answer.toUpperCase());

    // The saved file opens elsewhere, and answers alike there.
    const other = await (await browser.newContext({ ...info.project.use })).newPage();
    await open(other, url(), 'files');
    await other.getByLabel('Open a file').setInputFiles(copy);
    await expect(other.getByText(/^Opened wet\.json/)).toBeVisible();
    await sameAs(other, told);
    expect(readFileSync(await saved(other))).toEqual(readFileSync(copy));
    await other.context().close();
  });
}

test('the whole job by keys alone', async ({ page }) => {
  test.setTimeout(120_000);
  const focused = (): Promise<string> =>
    page.evaluate(() => {
      const e = document.activeElement as HTMLElement | null;
      const label = (e as HTMLInputElement | null)?.labels?.[0]?.textContent;
      return (e?.getAttribute('aria-label') ?? label ?? e?.textContent ?? '').trim();
    });
  /** Tab on until what has the focus is called so, and can be seen to have it. */
  const tabTo = async (name: RegExp): Promise<void> => {
    for (let i = 0; i < 120; i++) {
      await page.keyboard.press('Tab');
      if (!name.test(await focused())) continue;
      const ring = await page.evaluate(() => {
        const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement as Element);
        return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0;
      });
      expect(ring, `the focus shows on ${name}`).toBe(true);
      return;
    }
    throw new Error(`no way by Tab to ${name}`);
  };
  await page.goto(url());
  await expect(page.getByRole('dialog')).toBeVisible();
  await tabTo(/^I have read this$/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.locator('.verdict')).toContainText('go within limits');
  await settled(page);

  // A finding is opened, its remedy tried and undone.
  await tabTo(/^\d+ The engine may fail/);
  await page.keyboard.press('Enter');
  await tabTo(/^Try: /);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /^Trying: / })).toBeVisible();
  await tabTo(/^Undo this$/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /^Trying: / })).toHaveCount(0);

  // The train along the strip.
  const strip = page.getByRole('slider', { name: /train along the line/ });
  const before = await strip.getAttribute('aria-valuetext');
  await tabTo(/^The train along the line/);
  await page.keyboard.press('End');
  expect(await strip.getAttribute('aria-valuetext')).not.toBe(before);

  // A car is left behind and comes back by undo.
  await tabTo(/^Train and riders$/);
  await page.keyboard.press('Enter');
  await tabTo(/^Air car 5, place/);
  await page.keyboard.press('Delete');
  await expect(page.getByLabel(/^Air car 5, place/)).toHaveCount(0);
  await tabTo(/^Undo$/);
  await page.keyboard.press('Enter');
  await expect(page.getByLabel(/^Air car 5, place/)).toHaveCount(1);

  // A field of the day.
  await tabTo(/^Line, rules, day$/);
  await page.keyboard.press('Enter');
  await tabTo(/^planned speed/);
  await page.keyboard.press('Control+A');
  await page.keyboard.type('5 mph');
  await page.keyboard.press('Tab');
  await expect(page.getByLabel('planned speed')).toHaveValue('5 mph');

  // And the card.
  await tabTo(/^Running card$/);
  await page.keyboard.press('Enter');
  await tabTo(/^Save as PDF, A5$/);
  const coming = page.waitForEvent('download');
  await page.keyboard.press('Enter');
  expect((await coming).suggestedFilename()).toBe('gala-2026-05-31-card.pdf');
});
