/** From an empty device a visitor's own train and line to a word: counted, and held against the command line. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { heedwayAlone as heedway } from '../support/cli.ts';
import { pdfText } from '../support/pdf-text.ts';
import { test } from './demo.ts';
import { barrierFree, fits, open, served } from './served.ts';
import { at } from './support/rooms.ts';

const url = served('counted');
/** With counts and remedies. */

const main = (page: Page) => page.locator('main');

/** Everything that a hand does, counted. */
function hands(page: Page) {
  let done = 0;
  const main = page.locator('main');
  return {
    count: () => done,
    press: async (name: string | RegExp): Promise<void> => {
      done++;
      await main.getByRole('button', { name, exact: true }).click();
    },
    write: async (label: string, text: string): Promise<void> => {
      done++;
      await main.getByLabel(label, { exact: true }).fill(text);
    },
    follow: async (name: string): Promise<void> => {
      done++;
      await page.getByRole('link', { name, exact: true }).click();
    },
    onward: async (to: string): Promise<void> => {
      done++;
      await main.locator('.onward').getByRole('button', { name: to, exact: true }).click();
    },
  };
}

/** The one sentence that the command line says of the same replies. */
function told(...flags: string[]): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'new-web-')), 'own');
  const { stdout } = heedway('new', folder, ...flags, '--no-remedies');
  return (stdout.split('\n\n')[0] ?? '').replace(/\s+/g, ' ');
}

test('own battery engine and cars on a line of which one was only told', { tag: '@phone' }, async ({
  page,
}) => {
  await open(page, url(), 'answer');
  const hand = hands(page);
  await hand.follow('New train and line');
  await expect(page.getByText('10 figures more for a first word.')).toBeVisible();
  // Nothing of the example that was open stands above it.
  await expect(page.locator('.head')).not.toContainText('Gala');
  await barrierFree(page, 'engine');
  await hand.press('battery');
  await hand.press('7-1/2 in');
  await hand.write('Its weight', '600');
  await hand.write('How hard it pulls', '150');
  await hand.write('Its brake', '72');
  // What a screw comes to is said where it is chosen; the one that parks beside the one that stops has a place of its own.
  await main(page).getByRole('button', { name: 'by a screw' }).click();
  await expect(main(page)).toContainText('nothing on the engine stops the train: a screw only parks');
  await expect(page.getByLabel('A second brake, to park with', { exact: true })).toHaveCount(0);
  await hand.press('no');
  const parks = main(page).locator('.ask').filter({ hasText: 'A second brake, to park with' });
  await parks.getByRole('button', { name: 'yes', exact: true }).click();
  await expect(parks).toContainText('Until it is pulled it holds nothing');
  await barrierFree(page, 'two brakes');
  await fits(page);
  await hand.write('A second brake, to park with', '40');
  await hand.onward('Cars');
  await hand.write('How many cars, all alike', '2');
  await hand.write('Weight of one, empty', '150');
  await hand.press('none');
  await fits(page);
  await hand.onward('People');
  await fits(page);
  for (let i = 0; i < 4; i++) await hand.press('One more: Adults');
  await hand.onward('Line');
  await hand.write('The worst grade', '2');
  await hand.write('How long it goes on', '200');
  await hand.press('straight');
  await hand.write('How far you can see, at the worst', '100');
  await expect(page.getByText('One figure more for a first word.')).toBeVisible();
  await hand.press('dry');
  const grown = page.getByRole('region', { name: 'The word so far' });
  await expect(grown).toContainText('go within limits', { timeout: 20_000 });
  await barrierFree(page, 'line');
  await fits(page);
  await hand.press('Keep it and look at the whole answer');
  await expect(page.locator('.verdict')).toContainText('go within limits', { timeout: 20_000 });
  expect(hand.count()).toBeLessThanOrEqual(40);

  // Nothing of an example is left, and the terminal says the same.
  await expect(page.locator('.invented')).toHaveCount(0);
  const cli = told(
    ...['--engine', 'battery', '--gauge', '7-1/2 in', '--engine-weight', '600', '--pull', '150'],
    ...[
      '--engine-brake',
      '72',
      '--engine-holds',
      'no',
      '--engine-parks',
      '40',
      '--cars',
      '2',
      '--car-weight',
      '150',
      '--car-brake',
      'none',
      '--adults',
      '4',
    ],
    ...['--grade', '2', '--grade-length', '200', '--curve', 'straight', '--sight', '100', '--rail', 'dry'],
  );
  const [word, sentence] = cli.split(/(?<=GO WITHIN LIMITS) /);
  expect(word).toBe('Battery engine and 2 cars: GO WITHIN LIMITS');
  await expect(page.locator('main .sentence')).toHaveText(sentence, { timeout: 20_000 });
  await expect(main(page)).toContainText(/held by driver\s*[1-9]/);

  // It is a paper like any other: there after a reload, beside a copy, deleted with a way back.
  await page.reload();
  await expect(page.locator('h1')).toHaveText('Battery engine and 2 cars');
  await page.goto(`${url()}#${at.mine}`);
  await page.getByRole('button', { name: 'Copy this one' }).click();
  await expect(page.getByText('Open now: Battery engine and 2 cars 2')).toBeVisible();
  await page.getByRole('button', { name: 'Delete Battery engine and 2 cars', exact: true }).click();
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await page.getByRole('button', { name: 'Open Battery engine and 2 cars', exact: true }).click();
  await expect(page.getByText('Open now: Battery engine and 2 cars', { exact: true })).toBeVisible();
  await barrierFree(page, 'my papers');
});

// On a push: tests/unit/new/four-questions.test.ts and own-lines.test.ts.
test('own steam engine on the host’s line; what is not known is asked in place', { tag: '@full' }, async ({
  page,
}) => {
  await open(page, url(), 'answer');
  const hand = hands(page);
  await hand.follow('New train and line');
  await hand.press('steam');
  await hand.press('7-1/4 in');
  await hand.write('Its weight', '900 lb');
  await hand.write('Its brake', '90');
  await hand.onward('Cars');
  await hand.press('One more: How many cars, all alike');
  await hand.write('Weight of one, empty', '200');
  await hand.onward('People');
  await hand.press('One more: Adults');
  await hand.press('One more: Children');
  await hand.onward('Line');
  await page.getByText("The host's file or code, or a survey").click();
  await page
    .locator('input[type=file]')
    .setInputFiles(new URL('../../examples/lines/larkfield-hollow.json', import.meta.url).pathname);
  await expect(page.getByText('Larkfield Hollow').first()).toBeVisible();
  await hand.press('wet');
  const grown = page.getByRole('region', { name: 'The word so far' });
  await expect(grown).toContainText('cannot tell yet');
  await expect(grown.getByRole('button', { name: 'Engine: how hard it pulls' })).toBeVisible();
  // What was begun is not lost with the page.
  await page.reload();
  await expect(page.getByText('One figure more for a first word.')).toBeVisible();
  await page.locator('.steps').getByRole('button', { name: 'Line' }).click();
  await hand.press('Keep it and look at the whole answer');
  await expect(page.locator('.verdict')).toContainText(/hold|cannot tell/, { timeout: 20_000 });
  // The example's line is marked wherever it is shown.
  await expect(page.locator('.invented')).toHaveText('with invented parts: Larkfield Hollow');
  const asks = page.locator('.finding.unknown').filter({ hasText: 'how hard' });
  await asks.getByLabel('How hard it pulls').fill('130');
  await page.keyboard.press('Tab');
  await expect(page.getByText('Nobody has said how hard')).toHaveCount(0, { timeout: 20_000 });
  expect(hand.count()).toBeLessThanOrEqual(38);
});

// On a push: tests/unit/new/routes.test.ts and tests/unit/files/survey.test.ts; a survey is read in the officer’s
// journey below.
test('a survey that does not name its unit is asked, and says what it found', { tag: '@full' }, async ({
  page,
}) => {
  await open(page, url(), 'answer');
  const hand = hands(page);
  await hand.follow('New train and line');
  await hand.press('5 in');
  await page.locator('.steps').getByRole('button', { name: 'Cars' }).click();
  await hand.write('How many cars, all alike', '2');
  await hand.write('Seats on one', '4');
  await hand.onward('People');
  // The driver sits on the first car at this gauge. Who finds no seat is told at the tap that was one too many.
  await hand.write('Adults', '7');
  const seats = page.getByRole('status').filter({ hasText: 'seats' });
  await expect(seats).toHaveCount(0);
  await hand.press('One more: Adults');
  await expect(seats).toContainText(
    '8 ride, and there are 7 seats (2 cars of 4, one taken by the driver): 1 finds none.',
  );
  await barrierFree(page, 'more people than seats');
  await fits(page);
  await hand.press('To the cars');
  await expect(page.getByLabel('How many cars, all alike', { exact: true })).toBeFocused();
  await page.locator('.steps').getByRole('button', { name: 'Line' }).click();
  await page.getByText("The host's file or code, or a survey").click();
  const rows = 'Chainage,Height\n0,0\n100,1\n200,2.1\n300,1\n400,0.2\n';
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'orchard.csv', mimeType: 'text/csv', buffer: Buffer.from(rows) });
  await expect(page.getByText('The header of orchard.csv does not say: feet or metres?')).toBeVisible();
  await barrierFree(page, 'feet or metres');
  await hand.press('Feet');
  await expect(page.getByText('400 ft end to end, 5 heights, 0 curves, 0 places.')).toBeVisible();
  await expect(page.getByText('Read 5 rows with at, height.')).toBeVisible();
  // What it cannot know is answered in place, and taken back there.
  await hand.press('It is a loop');
  await expect(page.getByText('400 ft round, 5 heights, 0 curves, 0 places.')).toBeVisible();
  await expect(page.getByText(/m of height misclosure/)).toBeVisible();
  await barrierFree(page, 'a survey with its advice');
  await hand.press('It runs from end to end');
  await expect(page.getByText('400 ft end to end, 5 heights, 0 curves, 0 places.')).toBeVisible();
  await fits(page);
  // What was found is still said when the page is opened anew.
  await page.reload();
  await page.locator('.steps').getByRole('button', { name: 'Line' }).click();
  await expect(page.getByText('400 ft end to end, 5 heights, 0 curves, 0 places.')).toBeVisible();
});

test('the officer’s job: a line and rules of one’s own, two trains of a day on it, both cards in one file', {
  tag: '@phone',
}, async ({ page }) => {
  test.setTimeout(180_000);
  await open(page, url(), 'answer');
  const hand = hands(page);
  const train = async (kind: string, weight: string, line: () => Promise<void>): Promise<void> => {
    await hand.press(kind);
    await hand.press('7-1/4 in');
    await hand.write('Its weight', weight);
    await hand.write('How hard it pulls', '120');
    await hand.write('Its brake', '90');
    await hand.onward('Cars');
    await hand.write('How many cars, all alike', '2');
    await hand.write('Weight of one, empty', '150');
    await hand.press('none');
    await hand.onward('People');
    await hand.write('Adults', '4');
    await hand.onward('Line');
    await line();
    await hand.press('dry');
    await hand.press('Keep it and look at the whole answer');
    await expect(page.locator('.verdict')).toContainText(/go|hold/, { timeout: 30_000 });
    await page.goto(`${url()}#line/day`);
    await hand.write('date', '2026-06-07');
  };
  await hand.follow('New train and line');
  await page.locator('.steps').getByRole('button', { name: 'Line' }).click();
  // An example that is open is not a line of one's own.
  await expect(page.getByText('On which line?')).toBeVisible();
  await expect(page.getByText('On a line of my papers')).toHaveCount(0);
  await page.locator('.steps').getByRole('button', { name: 'Engine' }).click();
  await train('battery', '600', async () => {
    await page.getByText("The host's file or code, or a survey").click();
    const rows =
      'Chainage (ft),Height (ft),Radius (ft),Hand\n0,0,,\n100,0.5,80,left\n200,1.1,80,left\n300,1,,\n400,0.2,,\n';
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'orchard.csv', mimeType: 'text/csv', buffer: Buffer.from(rows) });
    await expect(page.getByText('400 ft end to end')).toBeVisible();
    await hand.write('How far you can see, at the worst', '100');
  });
  await page.goto(`${url()}#line/host`);
  await page.getByLabel('Add a rule').selectOption('mostRidersPerCar');
  await hand.write('value', '3');
  await page.getByLabel('where it is written', { exact: true }).pressSequentially('Rule 4.4');
  // One tap, straight from the field: where it lands is where the finger came down.
  const add = await page.getByRole('button', { name: 'Add this rule' }).boundingBox();
  await page.mouse.click((add?.x ?? 0) + 20, (add?.y ?? 0) + 20);
  await expect(page.getByLabel('source of most riders on a car')).toHaveValue('Rule 4.4');

  await page.goto(`${url()}#new`);
  await train('petrol', '520', async () => {
    await barrierFree(page, 'a line of my papers');
    await hand.press('orchard');
    await fits(page);
    // What was said of it for the first train is not asked again.
    await expect(page.getByLabel('How far you can see, at the worst')).toHaveCount(0);
  });
  // Its rules came along with the line.
  await page.goto(`${url()}#line/host`);
  await expect(page.getByLabel('source of most riders on a car')).toHaveValue('Rule 4.4');
  await page.goto(`${url()}#card`);
  await page.getByRole('checkbox', { name: /Battery engine and 2 cars/ }).check();
  const [pdf] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as PDF, A5' }).click(),
  ]);
  const { text } = pdfText(readFileSync(await pdf.path()));
  expect(text).toContain('Battery engine and 2 cars · 2026-06-07');
  expect(text).toContain('Petrol engine and 2 cars · 2026-06-07');
  // Whoever is handed the file is told the same on the terminal.
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: "Save the card's file" }).click(),
  ]);
  const checked = heedway('check', await file.path(), '--no-remedies').stdout.replace(/\s+/g, ' ');
  await page.goto(`${url()}#answer`);
  const sentence = await page.locator('main .sentence').textContent();
  expect(sentence).toMatch(/; at most \d+ cars/);
  expect(checked).toContain(sentence);
  expect(hand.count()).toBeLessThanOrEqual(50);
});
