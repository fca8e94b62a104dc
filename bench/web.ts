/**
 * The workbench in a real browser: from opening the page to the answer, the check in its worker, and the
 * script of each frame while the train is dragged along the strip. Against one frame of 16 ms, and the second
 * and tenth of a second that a person waits without noticing. Needs `npm run build`.
 */
import { chromium, type Page } from '@playwright/test';
import type { BenchRow } from './row.ts';

interface Tools {
  serve: (folder: string, port: number) => Promise<{ url: string; close: () => Promise<void> }>;
  findBrowser: () => string | undefined;
}

const MOVES = 160;

async function tools(): Promise<Tools> {
  const from = (file: string): Promise<unknown> =>
    import(new URL(`../scripts/${file}`, import.meta.url).href);
  return { ...((await from('serve.mjs')) as Tools), ...((await from('tools.mjs')) as Tools) };
}

export async function run(): Promise<BenchRow[]> {
  const { serve, findBrowser } = await tools();
  const served = await serve(new URL('../dist/web', import.meta.url).pathname, 0);
  const executablePath = findBrowser();
  const browser = await chromium.launch({
    ...(executablePath ? { executablePath } : {}),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    const first = await untilAnswer(page, served.url);
    const again = await untilAnswer(page, served.url);
    return [
      row(
        'from opening the page to the answer on the demo',
        again,
        1000,
        `first time ${first.toFixed(0)} ms`,
      ),
      await drag(page),
      await dragStood(page, served.url),
    ];
  } finally {
    await browser.close();
    await served.close();
  }
}

async function untilAnswer(page: Page, url: string): Promise<number> {
  const start = performance.now();
  await page.goto(url);
  await page.waitForFunction(() => {
    const told = document.querySelector('[role=status]')?.textContent ?? '…';
    return !told.startsWith('…');
  });
  return performance.now() - start;
}

/** Script and layout of each frame, by the browser's own count, while the mouse carries the train along. */
async function drag(page: Page): Promise<BenchRow> {
  const read = page.getByRole('button', { name: 'I have read this' });
  if (await read.isVisible()) await read.click();
  await page.waitForFunction(() => !document.querySelector('.busy'));
  const box = await page.locator('.strip').first().boundingBox();
  if (!box) throw new Error('the strip is not on the page');
  await page.mouse.move(box.x + 80, box.y + box.height / 2);
  await page.mouse.down();
  const frames = await framesOf(page, (share) =>
    page.mouse.move(box.x + 80 + (box.width - 160) * share, box.y + box.height / 2),
  );
  await page.mouse.up();
  return told('a frame of dragging the train', frames);
}

/** The same while the train is stood along its line where it is asked whether it fits: placed, drawn and told anew each time. */
async function dragStood(page: Page, url: string): Promise<BenchRow> {
  await page.goto(`${url}/#fit`);
  const along = page.getByLabel(/^Front of the train at/);
  const [from, to] = await along.evaluate((input: HTMLInputElement) => [
    Number(input.min),
    Number(input.max),
  ]);
  const frames = await framesOf(page, (share) =>
    along.fill(String(Math.round(10 * (from + (to - from) * share)) / 10)),
  );
  return told('a frame of standing the train along its line, drawn from above', frames);
}

/** ms of script for each move, through the two frames after it. */
async function framesOf(page: Page, move: (share: number) => Promise<void>): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const spent = async (): Promise<number> => {
    const { metrics } = await session.send('Performance.getMetrics');
    return (metrics.find((m) => m.name === 'ScriptDuration')?.value ?? 0) * 1000;
  };
  const frames: number[] = [];
  for (let i = 0; i < MOVES; i++) {
    const before = await spent();
    await move(i / MOVES);
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    frames.push((await spent()) - before);
  }
  return frames.sort((a, b) => a - b);
}

function told(work: string, frames: readonly number[]): BenchRow {
  const at = (q: number): number => frames[Math.floor(q * (frames.length - 1))];
  return row(
    `${work}, ${MOVES} moves: script, 95th percentile`,
    at(0.95),
    16,
    `median ${at(0.5).toFixed(1)} ms, most ${at(1).toFixed(1)} ms`,
  );
}

const row = (work: string, ours: number, wanted: number, spread: string): BenchRow => ({
  work,
  ours: `${ours.toFixed(1)} ms`,
  against: 'what a person does not notice',
  theirs: `${wanted} ms`,
  ratio: wanted / ours,
  ourError: spread,
  theirError: '–',
});
