/** Measuring what is assumed, as somebody does it beside the track with a phone. */
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { examplePaper } from '../support/papers.ts';
import { pdfText } from '../support/pdf-text.ts';
import { test } from './demo.ts';
import { answered, barrierFree, example, fits, open, served } from './served.ts';
import { doorTo } from './support/rooms.ts';
import { openFile } from './support/workbench.ts';

const url = served();
const said = (page: Page) => page.getByRole('region', { name: 'What it says' });

/** The example whose cars nobody has measured, with one of them. */
async function oneBorrowed(): Promise<unknown> {
  const paper = await examplePaper('brake-not-measured');
  const train = paper['train'] as { vehicles: object[] };
  const riders = (paper['riders'] as { vehicle: string }[])
    .filter((r) => r.vehicle === 'engine' || r.vehicle === 'car-1')
    .map((r) => ({ ...r, vehicle: r.vehicle.replace('-1', '') }));
  return {
    ...paper,
    riders,
    train: { ...train, vehicles: train.vehicles.map((m, i) => (i === 1 ? { ...m, count: 1 } : m)) },
  };
}

/** A row into the table of that name. */
async function addRow(page: Page, table: string, row: Readonly<Record<string, string>>): Promise<void> {
  for (const [column, text] of Object.entries(row)) {
    const field = page.getByLabel(`${column}, new row of ${table}`);
    if ((await field.evaluate((e) => e.tagName)) === 'SELECT') await field.selectOption(text);
    else await field.fill(text);
    await field.blur();
  }
  await page.getByRole('button', { name: `Add this row to ${table}` }).click();
}

// On a push: applied and taken back in tests/unit/cli/measure.test.ts; the form in the journey of a record below.
test('what cannot be told is measured, applied, undone and taken back', { tag: '@full' }, async ({
  page,
}) => {
  await open(page, url(), 'answer');
  await openFile(page, await oneBorrowed(), 'borrowed.json');
  await doorTo(page, 'answer').click();
  const word = page.locator('.verdict');
  await expect(word).toHaveText(/^cannot tell/);
  await page.getByRole('link', { name: 'How, with a form' }).first().click();
  await expect(page).toHaveURL(/#measure\/brake-pull$/);
  await expect(page.getByRole('list', { name: 'Safety' })).toBeVisible();
  await page.getByLabel('Which vehicle').selectOption('Borrowed car');
  await page.getByLabel('gear').selectOption({ index: 1 });
  await addRow(page, 'pulls', { force: '61 lbf', way: 'forward' });
  await expect(said(page)).toContainText('too few');
  for (const [force, way] of [
    ['64 lbf', 'reverse'],
    ['60 lbf', 'forward'],
    ['65 lbf', 'reverse'],
  ] as const)
    await addRow(page, 'pulls', { force, way });
  await expect(said(page)).toContainText(/Full retarding force: .* lbf, 95 times in a hundred between/);
  await expect(said(page)).toContainText(/cannot tell → /);
  await barrierFree(page, 'measure');
  await fits(page);
  await page.getByRole('button', { name: 'Write it into my papers' }).click();
  await answered(page);
  await expect(word).not.toHaveText(/^cannot tell/);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(word).toHaveText(/^cannot tell/);
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect(word).not.toHaveText(/^cannot tell/);
  await page.getByRole('link', { name: 'All tests' }).first().click();
  await page.getByRole('button', { name: /^Take back pull against the brake of Borrowed car, / }).click();
  await expect(page.getByText('is taken back')).toBeVisible();
  await expect(word).toHaveText(/^cannot tell/);
  await barrierFree(page, 'tests');
});

// On a push: asleep and opened anew in tests/unit/web/watch.test.ts.
test('a coast-down by the stopwatch, the phone asleep in between', { tag: '@full' }, async ({ page }) => {
  await page.clock.install({ time: new Date('2026-05-17T10:00:00') });
  await page.goto(`${url()}#answer`);
  await page.getByRole('button', { name: 'I have read this' }).dispatchEvent('click');
  await page.clock.runFor(2000);
  await page.evaluate(() => {
    location.hash = 'measure/coast-down';
  });
  await page.clock.runFor(1000);
  // Its clock goes on by itself too: a press falls between two looks at it.
  const clock = (): Promise<number> => page.evaluate(() => Date.now() / 1000);
  const beforeStart = await clock();
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await page.clock.runFor(4000);
  await page.getByRole('button', { name: 'Mark 1' }).click();
  const first = await clock();
  // Put away: no timer runs, and the page is thrown out meanwhile.
  await page.clock.fastForward(4300);
  await page.reload();
  // What the browser keeps must have answered first: by this clock it would be late at once.
  await expect(page.getByRole('button', { name: 'Mark 2' })).toBeVisible();
  await page.clock.runFor(2000);
  const beforeSecond = await clock();
  await page.getByRole('button', { name: 'Mark 2' }).click();
  await page.clock.runFor(5000);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  const stopped = await clock();
  const laps = page.locator('.laps li');
  await expect(laps).toHaveText([/^\d+\.\d\d s$/, /^\d+\.\d\d s$/, /^\d+\.\d\d s$/]);
  const said = await laps.allTextContents();
  const [one, two, three] = said.map(Number.parseFloat);
  const within = (lap: number, least: number, most: number): void => {
    expect(lap).toBeGreaterThanOrEqual(least - 0.01);
    expect(lap).toBeLessThanOrEqual(most + 0.01);
  };
  within(one, 4, first - beforeStart);
  within(two - one, 4.3 + 2, stopped - 5 - beforeStart - 4);
  within(three - two, 5, stopped - beforeSecond);
  await page.getByRole('button', { name: 'Put these into the form' }).click();
  await expect(page.getByLabel('time, row 1 of marks')).toHaveValue(said[0]);
  await barrierFree(page, 'stopwatch');
});

test('a record is brought in, and what it says stands as the command line says it', async ({
  demo: page,
}) => {
  await open(page, url(), 'answer');
  await example(page, url(), 'Battery engine, vacuum brakes');
  await page.goto(`${url()}#measure/tilt`);
  const record = JSON.parse(readFileSync(new URL('../../examples/tests/tilt.json', import.meta.url), 'utf8'));
  await page.getByLabel('Bring in a record, or readings as CSV').setInputFiles({
    name: 'tilt.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(record)),
  });
  await expect(said(page)).toContainText(
    'Height of the centre of gravity above the rail: 9 in, 95 times in a hundred',
  );
  await page.getByRole('textbox', { name: 'stop', exact: true }).fill('0.6 in');
  await expect(said(page)).toContainText('holds the vehicle up');
  await page.getByLabel('Bring in a record, or readings as CSV').setInputFiles({
    name: 'tilts.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('side,angle,colour\nleft,23,red\n'),
  });
  await expect(page.getByText(/found "colour"; expected each once of side, angle/)).toBeVisible();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Sheet to write on, as a PDF' }).click();
  const { text } = pdfText(readFileSync(await (await saving).path()));
  expect(text).toContain('Never with anybody on it');
  await page.getByRole('button', { name: 'Begin anew' }).click();
  await expect(said(page)).toContainText('Nothing yet');
});

// On a push: tests/unit/calibrate/level.test.ts.
test('the phone as a level: none, then set both ways round, and read', { tag: '@full' }, async ({
  demo: page,
}) => {
  await open(page, url(), 'answer');
  await page.goto(`${url()}#measure/tilt`);
  const level = page.getByRole('region', { name: 'Tilt by the phone' });
  await level.getByRole('button', { name: 'Use this phone as a level' }).click();
  await expect(level).toContainText('gives no tilt');
  const lie = (tilt: number): Promise<void> =>
    page.evaluate((degrees) => {
      const a = (degrees * Math.PI) / 180;
      for (let i = 0; i < 25; i++)
        dispatchEvent(
          new DeviceMotionEvent('devicemotion', {
            accelerationIncludingGravity: { x: 9.81 * Math.sin(a), y: 0, z: 9.81 * Math.cos(a) },
          }),
        );
    }, tilt);
  // On a floor that falls 1°, first one way in its own axes, then the other.
  const setLevel = level.getByRole('button', { name: 'Set level', exact: true });
  const asks = level.getByRole('button', { name: 'Use this phone as a level' });
  await expect(async () => {
    if (await asks.isVisible()) await asks.click();
    await lie(1);
    await expect(setLevel).toBeEnabled({ timeout: 300 });
  }).toPass({ timeout: 20_000 });
  await setLevel.click();
  await lie(-1);
  await level.getByRole('button', { name: 'Set level, turned round' }).click();
  await lie(23.4);
  await expect(level.getByRole('timer')).toHaveText('23.4°');
  await level.getByRole('button', { name: 'Take: to the left' }).click();
  await expect(page.getByLabel('angle, row 1 of tilts')).toHaveValue('23.4°');
  await lie(178);
  await expect(level.getByRole('timer')).toHaveText('upside down');
  await barrierFree(page, 'level');
});

// On a push: tests/unit/calibrate/logs.test.ts and level.test.ts.
test('the phone feels a stop', { tag: '@full' }, async ({ demo: page }) => {
  await open(page, url(), 'answer');
  await example(page, url(), 'Battery engine, vacuum brakes');
  await page.goto(`${url()}#measure/stop-test`);
  await page.getByText('From a track or a log of a phone').click();
  await page.getByLabel('Where the front stood').fill('320 ft');
  const phone = page.getByRole('region', { name: 'This phone as a decelerometer' });
  /** What it feels: so many seconds of each, fifty looks a second, up to now and then from now on, the brake put on now. */
  const feels = (
    before: readonly (readonly [slows: number, seconds: number])[],
    after: typeof before = [],
  ): Promise<void> =>
    page.evaluate(
      ([led, follows]) => {
        const now = performance.now();
        const look = (slows: number, at: number): void => {
          const acceleration = { x: slows, y: 0, z: 9.81 };
          const one = new DeviceMotionEvent('devicemotion', { accelerationIncludingGravity: acceleration });
          Object.defineProperty(one, 'timeStamp', { value: at });
          dispatchEvent(one);
        };
        let at = now - led.reduce((sum, [, seconds]) => sum + 1000 * seconds, 0);
        const all = (parts: typeof led): void => {
          for (const [slows, seconds] of parts)
            for (let i = 0; i < 50 * seconds; i++, at += 20) look(slows, at);
        };
        all(led);
        if (follows.length === 0) return;
        const brake = [...document.querySelectorAll('button')].find((b) => b.textContent === 'Brake now');
        brake?.click();
        all(follows);
      },
      [before, after] as const,
    );
  const setLevel = phone.getByRole('button', { name: 'Set level', exact: true });
  const asks = phone.getByRole('button', { name: 'Let this phone feel the stop' });
  await expect(async () => {
    // Who feels nothing for two seconds is taken to have no such sense, and asked again.
    if (await asks.isVisible()) await asks.click();
    await feels([[0, 1]]);
    await expect(setLevel).toBeEnabled({ timeout: 300 });
  }).toPass({ timeout: 20_000 });
  await setLevel.click();
  await phone.getByRole('button', { name: 'Set level, turned round' }).click();
  await phone.getByRole('button', { name: 'Record' }).click();
  await expect(phone.getByRole('button', { name: 'Brake now' })).toBeEnabled();
  await feels(
    [[0, 0.1]],
    [
      [-0.8, 2],
      [0, 3],
    ],
  );
  await phone.getByRole('button', { name: 'It stands: end' }).click();
  await expect(page.getByText(/From 320 ft at 3\.\d mph: at rest at 3[23]\d ft after \d/)).toBeVisible();
  await expect(page.getByLabel('rest at, row 1 of stops')).toHaveValue(/ m$/);
  await barrierFree(page, 'decelerometer');
});

// On a push: held against the papers, published and read again in tests/unit/cli/measure.test.ts.
test('a stop test as a check, kept, published and read again', { tag: '@full' }, async ({ page }) => {
  await open(page, url(), 'answer');
  await example(page, url(), 'Battery engine, vacuum brakes');
  await page.goto(`${url()}#measure/stop-test`);
  const file = (name: string, mimeType: string) => ({
    name: name.replace(/.*\//, ''),
    mimeType,
    buffer: readFileSync(new URL(`../../examples/${name}`, import.meta.url)),
  });
  await page
    .getByLabel('Bring in a record, or readings as CSV')
    .setInputFiles(file('tests/stop-test.json', 'application/json'));
  const check = page.getByText('Was the answer right?');
  await check.click();
  await expect(said(page)).toContainText('12 of 12 stops were no longer than the careful figure');
  await page.getByText('From a track or a log of a phone').click();
  await page.getByLabel('Where the front stood').fill('320 ft');
  await page.getByLabel('Second of the log: brake put on').fill('6');
  await page.getByLabel('Take the log').setInputFiles(file('logs/stop-speeds.csv', 'text/csv'));
  await expect(page.getByText('at rest at 353 ft after 5.5 s')).toBeVisible();
  await expect(said(page)).toContainText('13 of 13 stops were no longer than the careful figure');
  await fits(page);
  await barrierFree(page, 'check');
  await page.getByRole('button', { name: 'Keep it as a check alone' }).click();
  await page.getByRole('link', { name: 'All tests' }).first().click();
  const kept = page.getByRole('region', { name: 'Measured' });
  await expect(kept).toContainText('14 days old; a check alone');
  await expect(kept).toContainText('13 stops of 1 test: none was longer');
  await kept.getByText('Data sheets: publish').click();
  const saving = page.waitForEvent('download');
  await kept.getByRole('button', { name: 'Data sheet without names, as CSV' }).click();
  const sheet = readFileSync(await (await saving).path());
  expect(sheet.toString()).not.toContain('Bracken');
  await kept
    .getByLabel('Read data sheets')
    .setInputFiles({ name: 's.csv', mimeType: 'text/csv', buffer: sheet });
  await expect(kept).toContainText('13 rows are invented');
  await fits(page);
  await barrierFree(page, 'kept');
});
