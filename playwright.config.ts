import { existsSync } from 'node:fs';
import { defineConfig } from '@playwright/test';
import { full } from './tests/support/tier.ts';

const chromium = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
  (p) => p && existsSync(p),
);

/** What does not hang on the size of the screen: on a push it is tried once, at the desk. */
const once = ['card', 'kept', 'restart', 'size', 'version'].map((name) => `**/${name}.spec.ts`);

/** Journeys in real Chromium, at a desk and on a phone, two side by side. */
export default defineConfig({
  testDir: 'tests/web',
  testMatch: '**/*.spec.ts',
  workers: 2,
  timeout: 60_000,
  reporter: 'list',
  use: {
    browserName: 'chromium',
    launchOptions: {
      ...(chromium ? { executablePath: chromium } : {}),
      args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
    },
  },
  projects: [
    { name: 'desk', use: { viewport: { width: 1280, height: 900 } } },
    {
      name: 'phone',
      testIgnore: full ? [] : once,
      use: { viewport: { width: 360, height: 740 }, hasTouch: true },
    },
  ],
});
