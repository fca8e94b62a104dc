/** The workbench by what a person sees of it: where a thing stands is said here alone. */
import { expect, type Locator, type Page } from '@playwright/test';

const CAUTIONS = 'I have read this';

/** Rooms in which a thing is done. */
const ROOM = { files: 'files', papers: 'papers', card: 'card', answer: 'answer' } as const;

export async function goTo(page: Page, room: keyof typeof ROOM): Promise<void> {
  await page.evaluate(async (to) => {
    if (location.hash === `#${to}`) return;
    // The page hears of it first, and draws before this goes on.
    const heard = new Promise<void>((on) =>
      addEventListener('hashchange', () => setTimeout(on), { once: true }),
    );
    location.hash = to;
    await heard;
  }, ROOM[room]);
  await expect(page.locator('main')).not.toContainText('Opening …');
}

/** The word, or why there is none. */
export const word = (page: Page): Locator => page.locator('.verdict');

/** The page with its work read, past the cautions where they are shown. */
export async function enter(page: Page, url: string, room: keyof typeof ROOM): Promise<void> {
  await page.goto(`${url}#${ROOM[room]}`);
  await expect(word(page)).toBeVisible();
  const read = page.getByRole('button', { name: CAUTIONS });
  if (await read.isVisible()) await read.dispatchEvent('click');
}

export async function openFile(page: Page, paper: unknown, name: string): Promise<void> {
  await goTo(page, 'files');
  const buffer = Buffer.from(JSON.stringify(paper));
  await page
    .getByLabel('Open a file', { exact: true })
    .setInputFiles({ name, mimeType: 'application/json', buffer });
  await expect(page.getByText(`Opened ${name}`)).toBeVisible();
}

export async function openExample(page: Page, title: string): Promise<void> {
  await goTo(page, 'files');
  await page.getByRole('button', { name: title }).click();
  await expect(page.getByText(`Opened ${title}.`)).toBeVisible();
}

const written = (page: Page, label: string): Locator =>
  page
    .locator('main')
    .getByLabel(label, { exact: label === 'name' })
    .first();

/** Typed, and left by the tabulator. */
async function write(page: Page, label: string, text: string): Promise<void> {
  await goTo(page, 'papers');
  await written(page, label).fill(text);
  await page.keyboard.press('Tab');
}

export const rename = (page: Page, name: string): Promise<void> => write(page, 'name', name);
export const planSpeed = (page: Page, speed: string): Promise<void> => write(page, 'planned speed', speed);

export async function setRail(page: Page, state: string): Promise<void> {
  await goTo(page, 'papers');
  await written(page, 'rail state').selectOption(state);
}

/** Tries the first change that is offered, if one is before long. */
export async function tryFirst(page: Page): Promise<boolean> {
  await goTo(page, 'answer');
  const finding = page.locator('details.finding').first();
  const offered = page.getByRole('button', { name: /^Try: / }).first();
  try {
    await finding.locator('summary').click({ timeout: 1500 });
    await offered.click({ timeout: 1500 });
    return true;
  } catch {
    return false;
  }
}

interface Printed {
  /** As large on the card. */
  readonly word: string;
  /** The file of the outing that the card is of. */
  readonly file: string;
}

/** What the page hands over as a file is caught in it, letter by letter, and goes to no folder of downloads. */
export const catchFiles = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const made = URL.createObjectURL;
    const caught: Promise<string>[] = [];
    Object.assign(window, { caught });
    URL.createObjectURL = (file: Blob) => {
      caught.push(file.text());
      return made(file);
    };
    const { click } = HTMLAnchorElement.prototype;
    HTMLAnchorElement.prototype.click = function kept(this: HTMLAnchorElement) {
      if (!this.download) click.call(this);
    };
  });
};

/**
 * The card that would be printed at this moment, with its file; undefined where there is none to print. For a page whose
 * files are caught.
 */
export async function printed(page: Page): Promise<Printed | undefined> {
  await goTo(page, 'card');
  const paper = await page.evaluate(async () => {
    const card = document.querySelector('.card');
    const save = [...document.querySelectorAll('button')].find(
      (button) => button.textContent === "Save the card's file",
    );
    if (!card || !save) return undefined;
    const { caught } = window as unknown as { caught: Promise<string>[] };
    const before = caught.length;
    // Both in one step: nothing comes between.
    const big = card.querySelector('h1')?.textContent ?? '';
    save.click();
    for (let i = 0; i < 600 && caught.length === before; i++)
      await new Promise((on) => setTimeout(on, i < 20 ? 5 : 100));
    return { word: big.toLowerCase(), file: await caught[before] };
  });
  if (paper && paper.file === undefined) throw new Error('a card without a file');
  return paper;
}

/** What the browser keeps, as it lies there. */
export const keptIn = (page: Page, database: string, store: string, key: string): Promise<unknown> =>
  page.evaluate(
    ([name, from, what]) =>
      new Promise<unknown>((done, failed) => {
        const asked = indexedDB.open(name);
        asked.onerror = () => failed(asked.error);
        asked.onsuccess = () => {
          const db = asked.result;
          if (!db.objectStoreNames.contains(from)) {
            db.close();
            done(undefined);
            return;
          }
          const got = db.transaction(from).objectStore(from).get(what);
          got.onsuccess = () => {
            db.close();
            done(got.result);
          };
        };
      }),
    [database, store, key] as const,
  );

/** Whoever reckons dies over the next question, for as long as the page is in that mood. */
export const mortalWorkers = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function tamed(this: Worker, message: unknown) {
      if (document.documentElement.dataset['worker'] === 'dies')
        setTimeout(() => this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' })));
      else postMessage.call(this, message);
    };
  });
};

export const workersDie = (page: Page, die: boolean): Promise<void> =>
  page.evaluate((now) => {
    document.documentElement.dataset['worker'] = now ? 'dies' : '';
  }, die);
