/**
 * The demo, as it is when it is first opened. A page of its own costs two and a half seconds of processor before it has
 * its word, which is more than most journeys take: on a push those which leave behind nothing but what Undo takes back
 * are made one after the other in a page that is kept standing; in full each has its own.
 *
 * Not for a journey that loads the page anew, waits for an empty shelf or shed, or puts something there.
 */
import { test as base, type Page } from '@playwright/test';
import { full } from '../support/tier.ts';

interface Demo {
  /** For a room that is `served()`. */
  readonly demo: Page;
  /** For one that is served whole. */
  readonly counted: Page;
}

type Name = keyof Demo;
type Lend = (name: Name, journey: (page: Page) => Promise<void>) => Promise<void>;

export const test = base.extend<Demo, { lend: Lend }>({
  lend: [
    async ({ browser }, use, { project }) => {
      const { viewport = null, hasTouch = false } = project.use;
      const opened = async (): Promise<Page> =>
        (await browser.newContext({ viewport, hasTouch, serviceWorkers: 'block' })).newPage();
      const standing = new Map<Name, Page>();
      await use(async (name, journey) => {
        const page = standing.get(name) ?? (await opened());
        if (!full) standing.set(name, page);
        await journey(page);
        if (full) return page.context().close();
        await page.emulateMedia({ media: null, colorScheme: null, forcedColors: null, reducedMotion: null });
        if (viewport) await page.setViewportSize(viewport);
      });
      for (const page of standing.values()) await page.context().close();
    },
    { scope: 'worker' },
  ],
  demo: ({ lend }, use) => lend('demo', use),
  counted: ({ lend }, use) => lend('counted', use),
});
