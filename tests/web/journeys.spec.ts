/**
 * Whole journeys, one for each train that may go: answered, driven along the strip, the rail made wet, the rooms
 * looked through, the work saved, and the file answered by the command line in the same words. And one without
 * ever touching a pointer.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { type BrowserContextOptions, expect, type Locator, type Page } from '@playwright/test';
import { heedwayAlone as heedway } from '../support/cli.ts';
import { full, runs } from '../support/tier.ts';
import { test } from './demo.ts';
import { answered, fits, open, roomOpen, served } from './served.ts';
import { doorTo } from './support/rooms.ts';

const url = served();
const whole = served('whole');

interface Told {
  readonly answer: string;
  readonly findings: readonly { readonly severity: string; readonly words: { readonly what: string } }[];
  readonly cars: unknown;
}

const toldBy = (file: string): Told =>
  JSON.parse(heedway('check', file, '--no-remedies', '--json').stdout) as Told;

/** The answer on the screen is the command line's, finding by finding. */
async function sameAs(page: Page, told: Told): Promise<void> {
  await page.goto(`${url()}#answer`);
  await answered(page);
  await expect(page.locator('.verdict')).toHaveText(new RegExp(`^${told.answer}( looking for remedies)?$`));
  await expect(page.locator('details.finding').first()).toBeVisible();
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

const trains = [
  ['Steam with light cars', 'steam-light.json'],
  ['Heavy steam, automatic air', 'heavy-air.json'],
  ['Battery engine, vacuum brakes', 'battery-vacuum.json'],
] as const;
// On a push the lightest alone, at the desk and on the phone; in full all.
for (const [name, file] of trains.slice(0, runs(1, trains.length))) {
  const tag = file === 'steam-light.json' ? '@both' : '@desk';
  test(`${name}: from the answer to a file that answers alike`, { tag }, async ({ page, browser }, info) => {
    test.setTimeout(240_000);
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
      await expect.poll(cautious).toBeGreaterThan(0);
    }
    const slow = await cautious();
    await page.getByLabel('Speed of the train').press('End');
    await expect.poll(cautious).toBeGreaterThan(slow);

    // A wet rail, by the field of the day.
    await page.goto(`${url()}#papers`);
    await page.getByLabel('rail state').selectOption('wet');
    await answered(page);
    const wet = await saved(page);
    const copy = info.outputPath('wet.json');
    writeFileSync(copy, readFileSync(wet));
    const told = toldBy(copy);
    await sameAs(page, told);

    // Every room has something to say about it, and nothing sticks out.
    // On a push all rooms are walked through in tests/web/states.spec.ts.
    for (const room of full ? ['train', 'brakes', 'balance', 'couplers', 'parting', 'card'] : ['card']) {
      await page.goto(`${url()}#${room}`);
      await roomOpen(page);
      await expect(page.getByRole('alert')).toHaveCount(0);
      await fits(page);
    }
    await expect(page.locator('.card h1')).toHaveText(told.answer.toUpperCase());

    // The saved file opens elsewhere, and answers alike there: on a push opened again in tests/web/files.spec.ts.
    if (!full) return;
    const other = await (await browser.newContext(info.project.use as BrowserContextOptions)).newPage();
    await open(other, url(), 'files');
    await other.getByLabel('Open a file').setInputFiles(copy);
    await expect(other.getByText(/^Opened wet\.json/)).toBeVisible();
    await sameAs(other, told);
    expect(readFileSync(await saved(other))).toEqual(readFileSync(copy));
    await other.context().close();
  });
}

// On a push: by keys alone in papers.spec.ts, train.spec.ts and balance.spec.ts.
test('the whole job by keys alone', { tag: '@full' }, async ({ page }) => {
  test.setTimeout(240_000);
  /** Wait until it is there and can be used, as a person does; then Tab on until it has the focus, and shows it. */
  const tabTo = async (goal: Locator): Promise<void> => {
    await expect(goal).toBeEnabled({ timeout: 60_000 });
    const ring = (e: Element): string => {
      const { outlineStyle, outlineWidth } = getComputedStyle(e);
      if (!e.isConnected) return 'drawn anew';
      if (e !== document.activeElement) return 'elsewhere';
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0 ? 'seen' : 'not seen';
    };
    // Sought by its name once, not at each stroke.
    let there = await goal.elementHandle();
    for (let i = 0; i < 150; i++) {
      await page.keyboard.press('Tab');
      let now = await there?.evaluate(ring);
      if (now === 'drawn anew') {
        there = await goal.elementHandle();
        now = await there?.evaluate(ring);
      }
      if (now === 'elsewhere') continue;
      expect(now, `the focus on ${goal}`).toBe('seen');
      return;
    }
    throw new Error(`no way by Tab to ${goal}`);
  };
  const button = (name: string | RegExp): Locator => page.getByRole('button', { name }).first();
  await page.goto(whole());
  await expect(page.getByRole('dialog')).toBeVisible();
  await tabTo(button('I have read this'));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.locator('.verdict')).toContainText('go within limits');

  const openExample = async (title: string): Promise<void> => {
    await tabTo(doorTo(page, 'mine'));
    await page.keyboard.press('Enter');
    await tabTo(button(title));
    await page.keyboard.press('Enter');
    await expect(page.getByText(`Opened ${title}.`)).toBeVisible();
    await tabTo(doorTo(page, 'answer'));
    await page.keyboard.press('Enter');
  };
  // A finding is opened, its remedy tried and undone.
  await openExample('Battery engine, vacuum brakes');
  await tabTo(page.locator('details.finding summary').first());
  await page.keyboard.press('Enter');
  await tabTo(button(/^Try: /));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /^Trying: / })).toBeVisible();
  await tabTo(button('Undo this'));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /^Trying: / })).toHaveCount(0);

  await openExample('Heavy steam, automatic air');
  // The train along the strip.
  const strip = page.getByRole('slider', { name: /train along the line/ });
  const before = await strip.getAttribute('aria-valuetext');
  await tabTo(strip);
  await page.keyboard.press('End');
  await expect.poll(() => strip.getAttribute('aria-valuetext')).not.toBe(before);

  // A car is left behind and comes back by undo.
  await tabTo(doorTo(page, 'train'));
  await page.keyboard.press('Enter');
  await tabTo(page.getByLabel(/^Air car 5, place/));
  await page.keyboard.press('Delete');
  await expect(page.getByLabel(/^Air car 5, place/)).toHaveCount(0);
  await tabTo(page.getByRole('button', { name: 'Undo', exact: true }));
  await page.keyboard.press('Enter');
  await expect(page.getByLabel(/^Air car 5, place/)).toHaveCount(1);

  // A field of the day.
  await tabTo(doorTo(page, 'line'));
  await page.keyboard.press('Enter');
  await tabTo(page.getByLabel('planned speed'));
  await page.keyboard.press('Control+A');
  await page.keyboard.type('5 mph');
  await page.keyboard.press('Tab');
  await expect(page.getByLabel('planned speed')).toHaveValue('5 mph');

  // And the card.
  await tabTo(doorTo(page, 'answer'));
  await page.keyboard.press('Enter');
  await tabTo(page.getByRole('link', { name: 'Running card' }));
  await page.keyboard.press('Enter');
  await tabTo(button('Save as PDF, A5'));
  const coming = page.waitForEvent('download');
  await page.keyboard.press('Enter');
  expect((await coming).suggestedFilename()).toBe('gala-2026-05-31-card.pdf');
});
