/** What a phone must load before the answer is on its screen, and what the whole app weighs. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect } from '@playwright/test';
import { test } from './demo.ts';
import { folder, served } from './served.ts';

const url = served('counted');

test.use({ serviceWorkers: 'allow' });

const KB = 1000;
/** ms by which each script is held back. */
const LATE = 1000;
const zipped = (file: string): number => gzipSync(readFileSync(file)).length;

/** What is asked since has grown it; 100 is where it has to come back to. */
const MOST_FIRST = 195 * KB;

test('script of the first screen, worker included, is at most 195 kB', async ({ page, context }) => {
  const arrived: { readonly file: string; readonly at: number }[] = [];
  // Each script comes late, so that one which is asked for just before the word, and which the word does
  // not wait for, comes after it: the order of a millisecond decides nothing.
  await context.route('**/*.js', async (route) => {
    await new Promise((ready) => setTimeout(ready, LATE));
    // The service worker fetches what lies ahead for use without a network; the screen does not wait for it.
    if (!route.request().serviceWorker())
      arrived.push({ file: new URL(route.request().url()).pathname.slice(1), at: Date.now() });
    await route.continue();
  });
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'serviceWorker', { value: undefined });
    // When the word is there: what is fetched after it, nobody waits for.
    new MutationObserver(() => {
      const { dataset } = document.documentElement;
      if (/go|hold|cannot tell/.test(document.querySelector('.verdict')?.textContent ?? ''))
        dataset['word'] ??= `${Date.now()}`;
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
  await page.goto(url());
  await expect(page.locator('.verdict')).toHaveText(/^(go|hold|cannot tell)/);
  const word = Number(await page.evaluate(() => document.documentElement.dataset['word']));
  expect(word).toBeGreaterThan(0);
  const scripts = new Set(arrived.filter(({ at }) => at <= word).map(({ file }) => file));
  const sizes = [...scripts].map((s) => [s, zipped(join(folder, s))] as const);
  const total = sizes.reduce((sum, [, size]) => sum + size, 0);
  expect(scripts.size).toBeGreaterThan(2);
  expect([...scripts].some((s) => s.includes('worker'))).toBe(true);
  expect(total, sizes.map(([s, size]) => `${s} ${size}`).join('\n')).toBeLessThanOrEqual(MOST_FIRST);
});

test('all script but the solver and other lazy libraries is at most 874 kB', () => {
  const all = readdirSync(join(folder, 'assets')).filter(
    (f) =>
      f.endsWith('.js') &&
      !/^(highs|pdfmake|survey-worker|pack-worker|building|measuring|packing|crew-room|board-room|incident-room|inspect-room)/.test(
        f,
      ),
  );
  const total = all.reduce((sum, f) => sum + zipped(join(folder, 'assets', f)), 0);
  expect(all.length).toBeGreaterThan(5);
  expect(total).toBeLessThanOrEqual(874 * KB);
});
