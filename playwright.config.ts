import { existsSync } from 'node:fs';
import { defineConfig } from '@playwright/test';
import { full } from './tests/support/tier.ts';

const chromium = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
  (p) => p && existsSync(p),
);

/**
 * On a push each journey is made once: at the desk, unless its tag says otherwise. What hangs on the size of the
 * screen is tagged @both, and made where there is least room; @phone is made at the phone. In full all are made at
 * both sizes, but for a finger (@touch), which only the phone has. What a cheaper test holds on a push is @full, and
 * says which test that is.
 */
const atDesk = full ? { grepInvert: /@touch/ } : { grepInvert: /@touch|@phone|@both|@full/ };
const onPhone = full ? {} : { grep: /@touch|@phone|@both/, grepInvert: /@full/ };

/** Journeys in real Chromium, at a desk and on a phone, two side by side. No wait hangs on a quick machine. */
export default defineConfig({
  testDir: 'tests/web',
  testMatch: '**/*.spec.ts',
  workers: 2,
  fullyParallel: true,
  timeout: 120_000,
  // Whoever passes only at the second try is named in the last lines: a fault in waiting, of the page or of the journey.
  retries: 1,
  // Sittings by the hundred share the machine with whatever else it does.
  expect: { timeout: process.env.SITTINGS ? 90_000 : 20_000 },
  reporter: 'list',
  use: {
    browserName: 'chromium',
    // What waits longer for its button waits for none: told, instead of two minutes of silence.
    actionTimeout: 45_000,
    // It fetches all that works without a network: for those alone who try that.
    serviceWorkers: 'block',
    launchOptions: {
      ...(chromium ? { executablePath: chromium } : {}),
      args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
    },
  },
  projects: [
    { name: 'desk', ...atDesk, use: { viewport: { width: 1280, height: 900 } } },
    {
      name: 'phone',
      ...onPhone,
      use: { viewport: { width: 360, height: 740 }, hasTouch: true },
    },
  ],
});
