/** The built workbench served on loopback, and opened past its cautions. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { full } from '../support/tier.ts';

interface Served {
  readonly url: string;
  readonly close: () => Promise<void>;
}

export const { serve } = (await import('../../scripts/serve.mjs' as string)) as {
  serve: (folder: string, port: number) => Promise<Served>;
};
export const folder = process.env.WEB_BUILD ?? new URL('../../dist/web', import.meta.url).pathname;

/** What the worker loads when it has given the word: counts and remedies. */
const MORE = /import\([^()]*complete-[^()]*\)(\.then\([^()]*\))?/;

type How = 'brief' | 'counted' | 'whole';

/** What is loaded in its place: nothing, or what counts the cars on the rail of the day and seeks no remedies. */
const LESS = {
  brief: () => 'Promise.resolve({stages:function*(){}})',
  counted: (whole: string) =>
    `${whole}.then(({stages})=>({stages:(of,how,first)=>stages(of,{...how,counts:'today',remedies:false},first)}))`,
};

const builds = new Map<How, string>();
/** The build, but its worker has done when it has given the word, or the counts of today. */
function lessened(how: keyof typeof LESS): string {
  const before = builds.get(how);
  if (before) return before;
  const made = mkdtempSync(join(tmpdir(), `${how}-`));
  process.once('exit', () => rmSync(made, { recursive: true, force: true }));
  cpSync(folder, made, { recursive: true });
  const worker = join(
    made,
    'assets',
    readdirSync(join(made, 'assets')).find((f) => /^worker-.*\.js$/.test(f)) ?? '',
  );
  const text = readFileSync(worker, 'utf8');
  if (!MORE.test(text)) throw new Error('the worker no longer loads what follows the word as it did');
  writeFileSync(worker, text.replace(MORE, LESS[how]));
  builds.set(how, made);
  return made;
}

/** On a push lessened so, in full as it was built. */
export const buildFor = (how: How): string => (full || how === 'whole' ? folder : lessened(how));

/** A server that the test itself stops. */
export const serveOnce = (): Promise<Served> => serve(buildFor('brief'), 0);

const servers = new Map<How, Promise<Served>>();

/**
 * The address of a server that stands as long as the worker does. Counts and remedies, which come after the word, take
 * most of a processor while a journey goes on that looks at neither: on a push remedies are sought for `whole` ones alone,
 * and cars counted for `counted` ones, on the rail of the day.
 */
export function served(how: How = 'brief'): () => string {
  let url = '';
  test.beforeAll(async () => {
    const server = servers.get(how) ?? serve(buildFor(how), 0);
    servers.set(how, server);
    ({ url } = await server);
  });
  return () => url;
}

/** The outing on the screen has its word. */
export const answered = (page: Page): Promise<void> =>
  expect(page.locator('.verdict:not(.none)')).toHaveCount(1, { timeout: 30_000 });

/** Counts, remedies and the ladder, which come after the word, are there too: nothing moves on the page any more. */
export const settled = (page: Page): Promise<void> =>
  expect(page.locator('.verdict.none, .busy, .ladder[aria-busy="true"]')).toHaveCount(0, { timeout: 60_000 });

/** The room, opened past the cautions, with the word of the demo. */
export async function open(page: Page, url: string, room: string): Promise<void> {
  const there = page.url().startsWith(url);
  if (there) await putBack(page);
  await page.goto(`${url}#${room}`);
  // Pressed by a finger once, in the first journey of the workbench; here only passed by.
  if (!there) await page.getByRole('button', { name: 'I have read this' }).dispatchEvent('click');
  await answered(page);
}

/** All that was written on a page is taken back, and all that was chosen: it shows the demo as it was first opened. */
async function putBack(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const drawn = (): Promise<unknown> => new Promise((on) => requestAnimationFrame(() => setTimeout(on)));
    location.hash = 'tools';
    await drawn();
    const undo = [...document.querySelectorAll<HTMLButtonElement>('.head button')].find(
      (button) => button.textContent?.trim() === 'Undo',
    );
    while (undo?.disabled === false) {
      undo.click();
      await drawn();
    }
    for (const choice of document.querySelectorAll<HTMLSelectElement>('.settings select')) {
      choice.selectedIndex = 0;
      choice.dispatchEvent(new Event('change', { bubbles: true }));
    }
    await drawn();
    // Which of the papers was looked at last is remembered as long as the page stands.
    location.hash = 'line';
  });
  await page.getByRole('button', { name: 'The day', exact: true }).dispatchEvent('click');
  await expect(page.locator('.head .of')).toHaveText('Gala');
}

/** As `open`, and come to rest: for who reads places on the page, or waits for what is told last. */
export async function openSettled(page: Page, url: string, room: string): Promise<void> {
  await open(page, url, room);
  await settled(page);
}

/** On a push dark on the phone, and its colours in the light too; in full both at both sizes. */
export const themes = full
  ? ([
      { theme: 'light', tag: '@desk' },
      { theme: 'dark', tag: '@phone' },
    ] as const)
  : ([{ theme: 'dark', tag: '@phone' }] as const);

/** Of a room as it is opened: on a push it is looked at in the walk through every room (tests/web/states.spec.ts). */
export const themesOfWalk = full ? themes : [];

/** The room has been loaded and stands there. */
export async function roomOpen(page: Page): Promise<void> {
  await expect(page.locator('main')).not.toContainText('Opening …');
  await expect(page.locator('main h1').first()).toBeVisible();
}

/** A finding's reasons, sum and remedies are there when it is open. */
export async function openFindings(page: Page): Promise<void> {
  await page.locator('details.finding').first().waitFor({ timeout: 60_000 });
  // From the last on: what is opened is no longer among those that are counted.
  for (const closed of (await page.locator('details.finding:not([open]) > summary').all()).reverse())
    if (await closed.isVisible()) await closed.click();
}

/** One of the invented examples, opened in the room of files. */
export async function example(page: Page, url: string, title: string): Promise<void> {
  await page.goto(`${url}#files`);
  await page.getByRole('button', { name: title }).click();
  await expect(page.getByText(`Opened ${title}.`)).toBeVisible();
}

/** What axe finds on what is shown; with `rules`, of those alone. */
export async function barriers(page: Page, rules?: string[]): Promise<readonly string[]> {
  // Read once for each document: it is half a megabyte.
  const there = await page.evaluate(() => 'axe' in window);
  const axe = new AxeBuilder({ page, ...(there ? { axeSource: ';' } : {}) })
    // Nothing here is framed: so it needs no second page to gather what the frames found.
    .setLegacyMode()
    // What is as it should be need not be told, element by element.
    .options({ resultTypes: ['violations'] });
  const { violations } = await (rules ? axe.withRules(rules) : axe).analyze();
  return violations.map((v) => `${v.id} ${v.nodes[0]?.target}`);
}

/** No barrier that axe can find on what is shown. */
export const barrierFree = (page: Page, what: string): Promise<void> => noBarrier(page, what);

/** The same where the theme is chosen: where one alone is opened, of the other the colours, all that it changes. */
export async function barrierFreeIn(theme: 'light' | 'dark', page: Page, what: string): Promise<void> {
  await noBarrier(page, what);
  if (full) return;
  const other = theme === 'light' ? 'dark' : 'light';
  await page.emulateMedia({ colorScheme: other });
  await noBarrier(page, `${what}, ${other}`, ['color-contrast']);
  await page.emulateMedia({ colorScheme: theme });
}

async function noBarrier(page: Page, what: string, rules?: string[]): Promise<void> {
  expect((await barriers(page, rules)).map((found) => `${what}: ${found}`)).toEqual([]);
}

/** Nothing sticks out of the page sideways. */
export async function fits(page: Page): Promise<void> {
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
}
