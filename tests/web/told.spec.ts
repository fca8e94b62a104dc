/**
 * No screen and no paper says a word of another train than the one that it stands beside: while the answer is
 * reckoned, when the papers cannot be read, when whoever reckons is silent or dead, when something is tried.
 */
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { heedwayAlone as heedway } from '../support/cli.ts';
import { examplePaper, manyPlaces, withCars } from '../support/papers.ts';
import { type PdfText, pdfText } from '../support/pdf-text.ts';
import { test } from './demo.ts';
import { barrierFree, example, fits, open, openFindings, openSettled, served, settled } from './served.ts';

const url = served();
const whole = served('whole');
/** With counts and remedies. */

const WORD = /go|hold|cannot tell/i;
const word = (page: Page) => page.locator('.verdict');

/** Workers answer only while the page is told that they may; a dead one dies at its next question. */
async function tameWorkers(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const mood = (): string => document.documentElement.dataset['worker'] ?? '';
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function tamed(this: Worker, message: unknown) {
      if (mood() === 'deaf') return;
      if (mood() === 'dies') {
        setTimeout(() => this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' })));
        return;
      }
      postMessage.call(this, message);
    };
  });
}

const mood = (page: Page, now: '' | 'deaf' | 'dies'): Promise<void> =>
  page.evaluate((is) => {
    document.documentElement.dataset['worker'] = is;
  }, now);

async function openPaper(page: Page, paper: unknown, name = 'outing.json'): Promise<void> {
  await page.goto(`${page.url().split('#')[0]}#files`);
  const buffer = Buffer.from(JSON.stringify(paper));
  await page.getByLabel('Open a file').setInputFiles({ name, mimeType: 'application/json', buffer });
  await expect(page.getByText(`Opened ${name}`)).toBeVisible();
}

async function savedPdf(page: Page): Promise<PdfText & { readonly name: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as PDF, half-letter' }).click(),
  ]);
  return { name: download.suggestedFilename(), ...pdfText(readFileSync(await download.path())) };
}

const printedPdf = async (page: Page): Promise<number> =>
  (await page.pdf({ preferCSSPageSize: true })).toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

/** No card, no word, nothing to print it with; on paper likewise. */
async function nothingSaid(page: Page, why: RegExp): Promise<void> {
  for (const room of ['answer', 'card']) {
    await page.goto(`${url()}#${room}`);
    await expect(word(page)).toHaveText(why);
    await expect(word(page)).not.toHaveText(WORD);
    await expect(page.locator('.card, details.finding, .speeds')).toHaveCount(0);
  }
  await expect(page.getByRole('button', { name: 'Print' })).toBeDisabled();
  for (const paper of ['half-letter', 'A5'])
    await expect(page.getByRole('button', { name: `Save as PDF, ${paper}` })).toBeDisabled();
  await page.emulateMedia({ media: 'print' });
  await expect(word(page)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'No running card' })).toBeVisible();
  await page.emulateMedia({ media: 'screen' });
}

test('a new outing under reckoning has no word and no card', async ({ page }) => {
  await tameWorkers(page);
  await open(page, url(), 'card');
  await expect(page.locator('.card h1')).toHaveText('GO WITHIN LIMITS');
  await mood(page, 'deaf');
  await example(page, url(), 'Too long on a wet rail');
  await nothingSaid(page, /^reckoning/);
  await barrierFree(page, 'reckoning');
  await page.goto(`${url()}#answer`);
  await expect(page.getByRole('heading', { name: 'Too long on a wet rail' })).toBeVisible();
  await test.step('nor has the strip of a line that is edited the limits of the line before', async () => {
    await mood(page, '');
    await example(page, url(), 'Steam with light cars');
    await page.goto(`${url()}#papers`);
    await page.getByRole('button', { name: 'Line', exact: true }).click();
    await expect(page.locator('.strip .limit')).toHaveCount(1);
    await mood(page, 'deaf');
    const name = page.locator('.paper').getByLabel('name', { exact: true }).first();
    await name.fill('Another line');
    await name.press('Tab');
    await expect(page.getByRole('slider', { name: /train along the line/ }).locator('.rail')).toHaveCount(1);
    await expect(page.locator('.strip .limit')).toHaveCount(0);
  });
});

test('papers that cannot be read have no word on screen or paper, and say which field', async ({
  demo: page,
}) => {
  await open(page, url(), 'papers');
  const field = page.getByLabel('planned speed');
  await field.fill('70000');
  await field.press('Tab');
  await nothingSaid(page, /^cannot be read: the field planned speed$/);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByText('The papers cannot be read')).toBeVisible();
  await page.emulateMedia({ media: 'screen' });
  for (const room of ['brakes', 'balance', 'couplers', 'parting']) {
    await page.goto(`${url()}#${room}`);
    await expect(page.locator('main')).toContainText('nothing is said here until it can');
    await expect(page.locator('main h1')).toBeHidden();
  }
  // From any room there is a way to the field.
  const way = page.getByRole('alert').filter({ hasText: 'the field planned speed: found' });
  await way.getByRole('button', { name: 'Go to it' }).click();
  await expect(page.getByLabel('planned speed')).toBeFocused();
  await expect(page.getByLabel('planned speed')).toBeInViewport();
  // Into the paper in which it stands, whichever was open there.
  await page.getByRole('button', { name: 'Line', exact: true }).click();
  await way.getByRole('button', { name: 'Go to it' }).click();
  await expect(page.getByLabel('planned speed')).toBeFocused();
});

test('a silent worker is said to be silent, is stopped by hand, and started anew; so is a dead one', async ({
  page,
}) => {
  await tameWorkers(page);
  await openSettled(page, url(), 'papers');
  await mood(page, 'deaf');
  await page.getByLabel('rail state').selectOption('wet');
  const notice = page.getByRole('alert').filter({ hasText: 'nothing has been heard of the check' });
  await expect(notice).toBeVisible({ timeout: 30_000 });
  await barrierFree(page, 'silent');
  await notice.getByRole('button', { name: 'Stop it' }).click();
  await nothingSaid(page, /^no answer$/);
  await expect(page.getByRole('alert')).toContainText('Stopped: there is no answer');
  await mood(page, '');
  await page.getByRole('button', { name: 'Ask again' }).click();
  await expect(word(page)).toHaveText(WORD);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await test.step('one that dies takes its word with it, and is started anew', async () => {
    await page.goto(`${url()}#papers`);
    await mood(page, 'dies');
    await page.getByLabel('rail state').selectOption('damp');
    await expect(page.getByRole('alert')).toContainText('The check has stopped over this outing');
    await nothingSaid(page, /^no answer$/);
    await mood(page, '');
    await page.getByRole('button', { name: 'Ask again' }).click();
    await expect(word(page)).toHaveText(WORD);
    await expect(page.getByRole('alert')).toHaveCount(0);
  });
});

// On a push: the silent worker above is stopped and asked anew, and tests/unit/web/in-turn.test.ts keeps the order
// of answers.
test('after a silent worker the next question goes to a new one by itself', { tag: '@full' }, async ({
  page,
}) => {
  await page.addInitScript(() => {
    // The first worker never hears a second question, as one that is caught in a loop.
    const Real = Worker;
    let made = 0;
    window.Worker = class extends Real {
      private readonly mine = ++made;
      private asked = 0;
      override postMessage(message: unknown): void {
        if (this.mine > 1 || ++this.asked === 1) super.postMessage(message);
      }
    } as typeof Worker;
  });
  await openSettled(page, url(), 'papers');
  await page.getByLabel('rail state').selectOption('wet');
  await expect(page.getByRole('alert')).toContainText('nothing has been heard', { timeout: 30_000 });
  await page.getByLabel('rail state').selectOption('damp');
  await expect(word(page)).toHaveText(WORD);
  await expect(page.getByRole('alert')).toHaveCount(0);
});

// On a push: marked on card, PDF and code in tests/unit/cli/card.test.ts, on the screen in workbench.spec.ts and
// day.spec.ts.
test('a trial is marked on screen, card, PDF and code, and its code opens to it', { tag: '@full' }, async ({
  page,
}) => {
  test.setTimeout(120_000);
  await open(page, whole(), 'answer');
  await example(page, whole(), 'Battery engine, vacuum brakes');
  await page.goto(`${whole()}#answer`);
  await settled(page);
  await openFindings(page);
  const finding = page.locator('details.finding').filter({ hasText: 'Try: ' }).first();
  await finding
    .getByRole('button', { name: /^Try: / })
    .first()
    .click();
  await expect(page.locator('.verdict .tried')).toContainText('tried: ');
  await settled(page);
  const change = ((await page.locator('.verdict .tried').textContent()) ?? '').replace(' tried: ', '');
  const said = ((await word(page).textContent()) ?? '').replace(/ tried: .*/, '');
  await page.goto(`${whole()}#card`);
  await expect(page.locator('.card-tried')).toContainText('Tried, not as its papers have it:');
  await expect(page.locator('.card-tried li')).toHaveText([change]);
  await expect(page.getByAltText(/Code that carries/)).toBeVisible();
  const pdf = await savedPdf(page);
  expect(pdf.name).toMatch(/-tried-card\.pdf$/);
  const plain = (text: string): string => text.replace(/[\s-]/g, '');
  expect(plain(pdf.text)).toContain(plain(change));
  expect(pdf.text).toContain('Tried, not as its papers have it:');

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: "Save the card's file" }).click(),
  ]);
  const file = JSON.parse(readFileSync(await download.path(), 'utf8'));
  expect(file.heedway).toBe('tried');
  // The command line gives the word of the card for the card's file.
  const told = JSON.parse(heedway('check', await download.path(), '--no-remedies', '--json').stdout);
  expect(told.tried).toEqual([change]);
  expect(told.answer).toBe(said);

  // Elsewhere it opens to the same word, still marked.
  await example(page, whole(), 'Steam with light cars');
  await expect(page.locator('.verdict .tried')).toHaveCount(0);
  await openPaper(page, file, 'tried.json');
  await expect(page.locator('.verdict .tried')).toHaveText(` tried: ${change}`);
  await settled(page);
  await expect(word(page)).toHaveText(`${said} tried: ${change}`);
  await page.goto(`${whole()}#answer`);
  await page.getByRole('button', { name: 'Undo this' }).click();
  await expect(word(page)).toHaveText('go within limits');
});

// On a push: all on the card, side by side, in tests/unit/cli/card.test.ts.
test('fourteen stations, each braked for, are all on the card, on the screen and on paper', {
  tag: '@full',
}, async ({ page }) => {
  await open(page, url(), 'answer');
  await openPaper(page, await manyPlaces());
  await page.goto(`${url()}#card`);
  const card = page.locator('.card');
  for (let i = 1; i <= 14; i++) {
    await expect(
      card
        .locator('p')
        .filter({ hasText: `brake for the stop at Station ${i}` })
        .first(),
    ).toBeVisible();
  }
  await fits(page);
  // On A5 the seats and the plan go on to a third.
  expect(await printedPdf(page)).toBe(3);
  const pdf = await savedPdf(page);
  for (let i = 1; i <= 14; i++) expect(pdf.text).toContain(`brake for the stop at Station ${i} `);
  expect(pdf.pages).toBe(3);
});

// On a push held of the same PDF by tests/unit/cli/card.test.ts.
test('a name in letters that the paper cannot print is said by its seat', { tag: '@full' }, async ({
  page,
}) => {
  await open(page, url(), 'answer');
  const rider = { name: '王小明', typical: 'man', vehicle: 'car-1', seat: '2' };
  await openPaper(page, await withCars(2, [rider]));
  await page.goto(`${url()}#card`);
  await expect(page.locator('.card-seats')).toContainText('王小明');
  const pdf = await savedPdf(page);
  expect(pdf.boxes).toBe(0);
  // The foot of the first side may lie between.
  expect(pdf.text).toMatch(
    /seat 2: name in letters that this paper cannot print: see (\S.*1 of 2 )?the screen/,
  );
});

// On a push: on paper in tests/unit/cli/card.test.ts, and tests/web/states.spec.ts sees whether anything sticks
// out.
test('names of two hundred letters and sixty vehicles stay on the screen', { tag: '@full' }, async ({
  page,
}) => {
  test.setTimeout(120_000);
  await open(page, url(), 'answer');
  const long = (letter: string): string => letter.repeat(200);
  const rider = { name: long('R'), typical: 'man', vehicle: 'car-1', seat: '1' };
  const paper = await withCars(59, [rider], { name: long('V') });
  await openPaper(page, { ...paper, name: long('N') });
  await page.goto(`${url()}#card`);
  await expect(page.locator('.card h1')).toHaveText(WORD, { timeout: 60_000 });
  await fits(page);
  await expect(page.locator('.card-seats dt')).toHaveCount(60);
  await page.goto(`${url()}#answer`);
  await fits(page);
});

test('what is echoed as understood is kept, though the field was never left', async ({ page }) => {
  await open(page, url(), 'papers');
  const field = page.getByLabel('planned speed');
  await field.fill('');
  await field.pressSequentially('3 mph');
  await expect(page.getByText('= 3 mph', { exact: false }).first()).toBeVisible();
  await page.reload();
  await expect(field).toHaveValue('3 mph');
  // One step to undo, not one for each letter.
  await field.fill('');
  await field.pressSequentially('4.25 mph');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(field).toHaveValue('3 mph');
  await test.step('a text that is being typed is kept when the page goes away', async () => {
    const name = page.locator('main').getByLabel('name', { exact: true }).first();
    await name.fill('');
    await name.pressSequentially('Half a name');
    // On a slow machine the page is gone before it hears of its storage.
    const machine = await page.context().newCDPSession(page);
    await machine.send('Emulation.setCPUThrottlingRate', { rate: 20 });
    await page.reload();
    await machine.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    await expect(name).toHaveValue('Half a name');
  });
});

test('a browser whose storage never answers shows the page and says that nothing is kept', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', { value: { open: () => new EventTarget() } });
  });
  await page.goto(url());
  await expect(word(page)).toContainText('go within limits', { timeout: 30_000 });
  await expect(page.getByRole('alert').filter({ hasText: 'Until it can' })).toBeVisible();
  // What may be recorded here could not be asked, and the answer says so.
  await expect(page.getByText('RECORDS NOT ASKED')).toBeVisible();
});

// On a push: what the page then does itself in tests/unit/web/reckoning.test.ts.
test('a browser without workers gets its answer', { tag: '@full' }, async ({ page }) => {
  await page.addInitScript(() => {
    delete (window as { Worker?: unknown }).Worker;
  });
  await openSettled(page, url(), 'answer');
  await expect(word(page)).toHaveText('go within limits');
  await example(page, url(), 'Too long on a wet rail');
  await expect(word(page)).toHaveText(/^hold/, { timeout: 60_000 });
  const paper = await examplePaper('steam-light');
  await openPaper(page, paper);
  await expect(word(page)).toHaveText('go within limits', { timeout: 60_000 });
});
