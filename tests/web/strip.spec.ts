/** The strip as it is set in a real browser: large enough to read, nothing over another; and the run along it. */
import { expect, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { open, served, themes } from './served.ts';

const url = served();

interface Lettering {
  readonly small: readonly string[];
  readonly over: readonly string[];
  readonly count: number;
}

/** Texts of all strips on the page that are smaller than 12 px as shown, and pairs that lie on each other. */
const lettering = (page: Page): Promise<Lettering> =>
  page.evaluate(() => {
    const texts = [...document.querySelectorAll('.strip svg text')].map((text) => {
      const box = text.getBoundingClientRect();
      const svg = (text as SVGTextElement).ownerSVGElement!;
      const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
      const size = Number.parseFloat(getComputedStyle(text).fontSize) * scale;
      // A line of text is taller than its letters.
      const slack = box.height * 0.15;
      return {
        said: text.textContent,
        size,
        x0: box.left,
        x1: box.right,
        y0: box.top + slack,
        y1: box.bottom - slack,
      };
    });
    const over = texts.flatMap((a, i) =>
      texts
        .slice(i + 1)
        .filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
        .map((b) => `${a.said} / ${b.said}`),
    );
    return {
      small: texts.filter((t) => t.size < 11.99).map((t) => `${t.said} ${t.size}`),
      over,
      count: texts.length,
    };
  });

for (const { theme, tag } of themes) {
  test(`on the strip all words can be read, wherever the train stands, ${theme}`, { tag }, async ({
    demo: page,
  }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, url(), 'answer');
    const strip = page.getByRole('slider', { name: /train along the line/ });
    await expect(strip).toHaveAttribute('aria-valuetext', /cautious \d+ ft/);
    await strip.focus();
    for (const key of ['Home', 'End', 'ArrowLeft', '+', '+', '+']) {
      await page.keyboard.press(key);
      const { small, over, count } = await lettering(page);
      expect(count).toBeGreaterThan(8);
      expect(small).toEqual([]);
      expect(over).toEqual([]);
    }
    await page.screenshot({ path: `test-results/strip-${theme}.png`, fullPage: false });
  });
}

test('the run says when to brake, and stops where one takes the train in hand', async ({ demo: page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page, url(), 'answer');
  const strip = page.getByRole('slider', { name: /train along the line/ });
  const next = page.getByRole('button', { name: 'Next thing to do' });
  await expect
    .poll(async () => {
      const was = await strip.getAttribute('aria-valuetext');
      await next.click();
      // Drawn a moment after it is pressed: only then it is seen what is to be done there.
      await expect(strip).not.toHaveAttribute('aria-valuetext', was ?? '');
      return page.locator('.brake-now').count();
    })
    .toBe(1);
  await expect(page.locator('.brake-now')).toContainText(/Brake now: (down to|stop)/);
  // Played without motion it still goes on.
  const before = await strip.getAttribute('aria-valuetext');
  await page.getByRole('button', { name: 'Play the run' }).click();
  await expect.poll(() => strip.getAttribute('aria-valuetext')).not.toBe(before);
  await strip.focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('button', { name: 'Play the run' })).toBeVisible();
});
