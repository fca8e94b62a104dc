// Pictures of the running workbench: node scripts/screenshots.mjs <folder>. Needs npm run build first.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { serve } from './serve.mjs';
import { findBrowser, root } from './tools.mjs';

const folder = process.argv[2] ?? join(root, 'test-results', 'pictures');
mkdirSync(folder, { recursive: true });
const { url, close } = await serve(join(root, 'dist', 'web'), 0);
const browser = await chromium.launch({
  executablePath: findBrowser(),
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
});
const sizes = { phone: [360, 780], tablet: [820, 1100], desktop: [1440, 1000] };
const rooms = (process.argv[3] ?? 'answer,train,papers,brakes,balance,couplers,parting,sums,card,files').split(',');
for (const [size, [width, height]] of Object.entries(sizes)) {
  for (const theme of ['light', 'dark']) {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme: theme });
    page.on('pageerror', (e) => console.log(size, theme, 'ERROR', e.message));
    page.on('console', (m) => m.type() === 'error' && console.log(size, theme, 'console', m.text()));
    await page.goto(url);
    await page.getByRole('button', { name: 'I have read this' }).click();
    for (const room of rooms) {
      await page.goto(`${url}#${room}`);
      await page.waitForTimeout(700);
      await page.screenshot({
        path: join(folder, `${room}-${size}-${theme}.png`),
        fullPage: size !== 'desktop' || room !== 'papers',
      });
    }
    await page.close();
  }
}
await browser.close();
await close();
