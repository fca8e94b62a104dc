/**
 * The demo, as it is when it is first opened. A page of its own costs two and a half seconds of processor before it has
 * its word, which is more than most journeys take: on a push those which leave behind nothing but what Undo takes back
 * are made one after the other in a page that is kept standing; in full each has its own.
 *
 * Not for a journey that loads the page anew, waits for an empty shelf or shed, or puts something there.
 */
import { test as base, type Page } from '@playwright/test';
import { full } from '../support/tier.ts';

type Ready = (name: 'demo' | 'counted') => Promise<Page>;

interface Demo {
  /** For a room that is `served()`. */
  readonly demo: Page;
  /** For one that is served whole. */
  readonly counted: Page;
}

export const test = base.extend<Demo, { standing: Ready }>({
  standing: [
    async ({ browser }, use, { project }) => {
      const { viewport = null, hasTouch = false } = project.use;
      const context = await browser.newContext({ viewport, hasTouch, serviceWorkers: 'block' });
      const pages = new Map<string, Page>();
      await use(async (name) => {
        const page = full ? await context.newPage() : (pages.get(name) ?? (await context.newPage()));
        pages.set(name, page);
        return page;
      });
      await context.close();
    },
    { scope: 'worker' },
  ],
  demo: async ({ standing }, use, { project }) => lent(await standing('demo'), project.use.viewport, use),
  counted: async ({ standing }, use, { project }) =>
    lent(await standing('counted'), project.use.viewport, use),
});

async function lent(
  page: Page,
  viewport: { width: number; height: number } | null | undefined,
  use: (page: Page) => Promise<void>,
): Promise<void> {
  await use(page);
  await page.emulateMedia({ media: null, colorScheme: null, forcedColors: null, reducedMotion: null });
  if (viewport) await page.setViewportSize(viewport);
}
