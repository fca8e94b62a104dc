/** The built workbench served on loopback, and opened past its cautions. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';

interface Served {
  readonly url: string;
  readonly close: () => Promise<void>;
}

export const { serve } = (await import('../../scripts/serve.mjs' as string)) as {
  serve: (folder: string, port: number) => Promise<Served>;
};
export const folder = process.env.WEB_BUILD ?? new URL('../../dist/web', import.meta.url).pathname;

/** A server that the test itself stops. */
export const serveOnce = (): Promise<Served> => serve(folder, 0);

/** Serves for the whole file; gives the address. */
export function served(): () => string {
  let server: Served | undefined;
  test.beforeAll(async () => {
    server = await serve(folder, 0);
  });
  test.afterAll(() => server?.close().catch(() => undefined));
  return () => server?.url ?? '';
}

export async function open(page: Page, url: string, room: string): Promise<void> {
  await page.goto(`${url}#${room}`);
  await page.getByRole('button', { name: 'I have read this' }).click();
  // Remedies come a moment after the answer: nothing moves on the page any more.
  await expect(page.locator('.verdict.none, .busy')).toHaveCount(0, { timeout: 20_000 });
}

/** One of the invented examples, opened in the room of files. */
export async function example(page: Page, url: string, title: string): Promise<void> {
  await page.goto(`${url}#files`);
  await page.getByRole('button', { name: title }).click();
  await expect(page.getByText(`Opened ${title}.`)).toBeVisible();
}

/** No barrier that axe can find on what is shown. */
export async function barrierFree(page: Page, what: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map((v) => `${what}: ${v.id} ${v.nodes[0]?.target}`)).toEqual([]);
}

/** Nothing sticks out of the page sideways. */
export async function fits(page: Page): Promise<void> {
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
}
