import { existsSync } from 'node:fs';
import { defineConfig } from '@playwright/test';

const chromium = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
  (p) => p && existsSync(p),
);

/** Journeys in real Chromium, at a desk and on a phone. */
export default defineConfig({
  testDir: 'tests/web',
  testMatch: '**/*.spec.ts',
  workers: 1,
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
    { name: 'phone', use: { viewport: { width: 360, height: 740 }, hasTouch: true } },
  ],
});
