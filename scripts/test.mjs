// npm test: installs what is missing, builds, checks, runs every test; the last line counts them all.
//   npm test            the push tier: every promise, each on few cases
//   npm run test:full   the full tier: the same promises on many cases, every page at both sizes
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { bin, findBrowser, installPackages, root, run, runBeside } from './tools.mjs';

const tier = process.argv.includes('--full') ? 'full' : 'push';
const began = Date.now();

installPackages();
const total = { passed: 0, failed: 0, skipped: 0 };
const add = (part) => {
  for (const key of Object.keys(total)) total[key] += part[key] ?? 0;
};

/** Journeys that failed once and passed when made again. */
const shaky = [];

// Neither needs the other, and neither has work for two processors all the time.
const building = runBeside(process.execPath, ['scripts/build.mjs']);
const { check } = await import('./check.mjs');
add(await check());
add((await building) === 0 ? { passed: 1 } : { failed: 1 });

mkdirSync(join(root, 'test-results'), { recursive: true });
const report = join(root, 'test-results', 'vitest.json');
rmSync(report, { force: true });
const vitest = run(
  bin('vitest'),
  ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
  { env: { TIER: tier } },
);
add(counted(report, vitest.status));

if (existsSync(join(root, 'playwright.config.ts'))) {
  const browser = findBrowser();
  if (browser) {
    const pages = join(root, 'test-results', 'playwright.json');
    rmSync(pages, { force: true });
    const played = run(bin('playwright'), ['test', '--reporter=list,json'], {
      env: { TIER: tier, CHROMIUM: browser, PLAYWRIGHT_JSON_OUTPUT_NAME: pages },
    });
    add(played.status === 0 || existsSync(pages) ? pageCounts(pages, played.status) : { failed: 1 });
  } else {
    console.log('No Chromium here and none could be installed: the browser tests are skipped.');
    add({ skipped: 1 });
  }
}

if (shaky.length > 0) console.log(`\nPassed only at the second try: ${shaky.join(' · ')}`);
const minutes = ((Date.now() - began) / 60_000).toFixed(1);
console.log(`\nThe ${tier} tier ran, in ${minutes} minutes.`);
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);
process.exit(total.failed > 0 ? 1 : 0);

function counted(path, status) {
  if (!existsSync(path)) return { failed: 1 };
  const json = JSON.parse(readFileSync(path, 'utf8'));
  const failed = json.numFailedTests + (status !== 0 && json.numFailedTests === 0 ? 1 : 0);
  return { passed: json.numPassedTests, failed, skipped: json.numPendingTests };
}

function pageCounts(path, status) {
  const { stats, suites } = JSON.parse(readFileSync(path, 'utf8'));
  shaky.push(...flaky(suites));
  const failed = stats.unexpected + (status !== 0 && stats.unexpected === 0 ? 1 : 0);
  return { passed: stats.expected + stats.flaky, failed, skipped: stats.skipped };
}

function flaky(suites) {
  return suites.flatMap(({ specs = [], suites: within = [] }) => [
    ...specs.filter(({ tests }) => tests.some(({ status }) => status === 'flaky')).map(({ title }) => title),
    ...flaky(within),
  ]);
}
