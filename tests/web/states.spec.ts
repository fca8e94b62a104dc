/**
 * Every room on a small phone, in every way of looking at it: one walk through all doors in one page. Text in drawings
 * large enough, nothing sticks out sideways, nothing that axe finds; in the dark, at 400 % zoom, with wider spacing of letters, in
 * the device's own few colours, and 4K wide.
 */
import { expect, type Page } from '@playwright/test';
import { full } from '../support/tier.ts';
import { test } from './demo.ts';
import { answered, barriers, example, open, roomOpen, served } from './served.ts';
import { at } from './support/rooms.ts';

const url = served('counted');

const everyRoom: readonly string[] = [
  at.answer,
  at.card,
  at.train,
  at.people,
  at.line,
  at.mine,
  'new',
  'tools',
  'builder/cylinder',
  'builder/seat',
  'builder/chain',
  'brakes',
  'balance',
  'couplers',
  'fit',
  'parting',
  'crew',
  'board',
  'incident',
  'evidence',
  'records',
  'leave',
  'due',
  'inspect',
  'sums',
  'sums/grade-force',
  'sums/overturning-speed',
  'sums/child-weight',
];

/** The room is there, and what it reckons has been told. */
async function enter(page: Page, room: string): Promise<void> {
  await page.goto(`${url()}#${room}`);
  await roomOpen(page);
  await expect(page.getByText(/^(Reckoning|Opening) …$/)).toHaveCount(0, { timeout: 60_000 });
}

/** What sticks out of the page sideways, and text that is cut off in what may not scroll. */
const cut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const root = document.documentElement;
    const over =
      root.scrollWidth > root.clientWidth ? [`page ${root.scrollWidth} > ${root.clientWidth}`] : [];
    const held = [
      ...document.querySelectorAll<HTMLElement>('button, a, th, label, summary, .verdict, .three li'),
    ]
      .filter((e) => e.checkVisibility() && !e.classList.contains('unseen') && !e.classList.contains('skip'))
      .filter((e) => ['hidden', 'clip'].includes(getComputedStyle(e).overflowX))
      .filter((e) => e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1);
    return [...over, ...held.map((e) => `cut off: ${e.textContent?.slice(0, 40)}`)];
  });

/** Text of drawings that is shown smaller than 12 px. */
const small = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<SVGTextElement>('svg text')].flatMap((text) => {
      const svg = text.ownerSVGElement;
      if (!svg?.checkVisibility() || svg.viewBox.baseVal === null) return [];
      const scale = svg.getBoundingClientRect().width / (svg.viewBox.baseVal.width || 1);
      const size = Number.parseFloat(getComputedStyle(text).fontSize) * scale;
      return size > 0 && size < 11.9 ? [`${text.textContent} ${size.toFixed(1)} px`] : [];
    }),
  );

/** What is found once the page is at rest: drawings take a new width a moment after the screen has it. */
async function atRest(
  page: Page,
  find: (page: Page) => Promise<readonly string[]>,
): Promise<readonly string[]> {
  let found: readonly string[] = [];
  await expect
    .poll(
      async () => {
        found = await find(page);
        return found.length;
      },
      { timeout: 3000 },
    )
    .toBe(0)
    .catch(() => undefined);
  return found;
}

/** Some of what was found there, each with where it was. */
const some = (where: string, found: readonly string[]): readonly string[] =>
  found.slice(0, 4).map((what) => `${where}: ${what}`);

/** Side by side, so that neither is what is waited for last. */
const half = Math.ceil(everyRoom.length / 2);
for (const rooms of [everyRoom.slice(0, half), everyRoom.slice(half)])
  test(`every room can be read on the smallest screen, however it is looked at: ${rooms[0]} to ${rooms[rooms.length - 1]}`, {
    tag: '@phone',
  }, async ({ counted: page }) => {
    test.setTimeout(240_000);
    const faults: string[] = [];
    const note = (where: string, found: readonly string[]): void => {
      faults.push(...some(where, found));
    };
    await open(page, url(), at.answer);
    for (const [i, room] of rooms.entries()) {
      await page.setViewportSize({ width: 360, height: 740 });
      await enter(page, room);
      note(room, [...(await barriers(page)), ...(await atRest(page, cut)), ...(await atRest(page, small))]);
      await page.emulateMedia({ colorScheme: 'dark' });
      note(`${room} in the dark`, await barriers(page, ['color-contrast']));
      await page.emulateMedia({ colorScheme: 'light' });
      // As wide as a screen of 1280 px at 400 %.
      await page.setViewportSize({ width: 320, height: 256 });
      note(`${room} at 400 %`, await atRest(page, cut));
      const wider = await page.addStyleTag({
        content:
          '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }',
      });
      await page.setViewportSize({ width: 360, height: 740 });
      note(`${room}, wider spacing`, await atRest(page, cut));
      await wider.evaluate((style) => (style as HTMLStyleElement).remove());
      // On a push one room is looked at 4K wide and the next on paper, the card among them; in full each is both.
      if (full || i % 2 === 0) {
        await page.setViewportSize({ width: 3840, height: 2160 });
        note(`${room} on 4K`, await atRest(page, cut));
      }
      if (full || i % 2 === 1) {
        await page.setViewportSize({ width: 700, height: 1000 });
        await page.emulateMedia({ media: 'print' });
        note(`${room} on paper`, await atRest(page, cut));
        await page.emulateMedia({ media: 'screen' });
      }
    }
    expect(faults).toEqual([]);
  });

test('so can the answer that it may not leave, that it cannot be told, and a field that cannot be read', {
  tag: '@phone',
}, async ({ counted: page }) => {
  const faults: string[] = [];
  const note = (where: string, found: readonly string[]): void => {
    faults.push(...some(where, found));
  };
  await open(page, url(), at.answer);
  for (const title of ['Too long on a wet rail', 'A brake nobody has measured']) {
    await example(page, url(), title);
    await enter(page, at.answer);
    await answered(page);
    note(title, [...(await barriers(page)), ...(await atRest(page, cut)), ...(await atRest(page, small))]);
  }
  await enter(page, at.line);
  await page.getByLabel('planned speed').fill('70000');
  await page.getByLabel('planned speed').press('Tab');
  await expect(page.locator('.verdict')).toContainText('cannot be read');
  note('a field that cannot be read', [...(await barriers(page)), ...(await atRest(page, cut))]);
  expect(faults).toEqual([]);
});

test('in the few colours of the device the open door, the bars and what is chosen still stand out', {
  tag: '@phone',
}, async ({ counted: page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await open(page, url(), at.people);
  const edge = (name: string): Promise<string> =>
    page
      .getByRole('navigation', { name: 'Rooms' })
      .getByRole('link', { name, exact: true })
      .evaluate((e) => getComputedStyle(e).borderTopColor);
  expect(await edge('Train')).not.toBe(await edge('Line'));
  const [bar, ground] = await page
    .locator('.margins .bar span')
    .first()
    .evaluate((e) => [e, document.body].map((one) => getComputedStyle(one).backgroundColor));
  expect(bar).not.toBe(ground);
  expect(bar).not.toBe('rgba(0, 0, 0, 0)');
  await enter(page, at.answer);
  const [on, off] = await page
    .locator('.dial span')
    .evaluateAll((all) => all.slice(0, 2).map((e) => getComputedStyle(e).backgroundColor));
  expect(on).not.toBe(off);
  expect(await barriers(page)).toEqual([]);
});

test('the card is white paper in the dark too, its strip and all', { tag: '@phone' }, async ({
  counted: page,
}) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await open(page, url(), at.card);
  const drawn = page.locator('.card .strip svg :is(.paper, .earth, .rail, .strong)');
  // The card waits until the records of this device have been asked.
  await expect(drawn.nth(4)).toBeAttached();
  const inks = (): Promise<readonly string[]> =>
    drawn.evaluateAll((all) => all.map((e) => `${getComputedStyle(e).fill} ${getComputedStyle(e).stroke}`));
  const light = await inks();
  expect(light.length).toBeGreaterThan(4);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await inks()).toEqual(light);
});
