// Pictures of the running workbench. Needs npm run build first.
//   node scripts/screenshots.mjs <folder> [rooms]   every room at three widths, light and dark
//   node scripts/screenshots.mjs readme             the one that stands in the README
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { serve } from './serve.mjs';
import { findBrowser, root } from './tools.mjs';

const sizes = { phone: [360, 780], tablet: [820, 1100], desktop: [1440, 1000] };
const everyRoom =
  'answer,train,train/people,line,tools,builder,brakes,balance,couplers,parting,sums,card,mine,new';

const { url, close } = await serve(join(root, 'dist', 'web'), 0);
const browser = await chromium.launch({
  executablePath: findBrowser(),
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
});
if (process.argv[2] === 'readme') await forReadme();
else
  await everyPicture(process.argv[2] ?? join(root, 'test-results', 'pictures'), process.argv[3] ?? everyRoom);
await browser.close();
await close();

async function opened(width, height, theme) {
  const page = await browser.newPage({ viewport: { width, height }, colorScheme: theme });
  page.on('pageerror', (e) => console.log(width, theme, 'ERROR', e.message));
  page.on('console', (m) => m.type() === 'error' && console.log(width, theme, 'console', m.text()));
  await page.goto(url);
  await page.getByRole('button', { name: 'I have read this' }).click();
  return page;
}

async function everyPicture(folder, rooms) {
  mkdirSync(folder, { recursive: true });
  for (const [size, [width, height]] of Object.entries(sizes)) {
    for (const theme of ['light', 'dark']) {
      const page = await opened(width, height, theme);
      for (const room of rooms.split(',')) {
        await page.goto(`${url}#${room}`);
        await page.waitForTimeout(700);
        await page.screenshot({
          path: join(folder, `${room.replace('/', '-')}-${size}-${theme}.png`),
          fullPage: size !== 'desktop' || room !== 'line',
        });
      }
      await page.close();
    }
  }
}

/** The train on the fall, its stopping reach before it, under the word. */
async function forReadme() {
  const page = await opened(1280, 980, 'light');
  await page.waitForFunction(() => !document.querySelector('.verdict.none, .busy'));
  const strip = page.getByRole('slider', { name: /train along the line/ });
  await strip.focus();
  await page.keyboard.press('Home');
  for (let i = 0; i < 11; i++) await page.keyboard.press('Shift+ArrowRight');
  await page.evaluate(() => {
    document.activeElement?.blur();
    scrollTo(0, 0);
  });
  await page.waitForTimeout(400);
  await page.screenshot({ path: join(root, 'docs', 'images', 'workbench.png') });
}
