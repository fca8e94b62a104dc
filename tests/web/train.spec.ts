/** Making up a train by mouse, touch and keys; riders to seats; the shed. */
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { test } from './demo.ts';
import { barrierFreeIn, fits, open, openSettled, served, themes } from './served.ts';
import { at as rooms } from './support/rooms.ts';

const url = served();
const counted = served('counted');
/** With counts and remedies. */
const example = (path: string): string =>
  readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');

/** Names of the vehicles in the yard, front first. */
const order = async (page: Page): Promise<string[]> =>
  (
    await page
      .locator('[data-vehicle]')
      .evaluateAll((all) => all.map((e) => e.getAttribute('aria-label') ?? ''))
  ).map((label) => label.split(',')[0]);

const vehicle = (page: Page, name: string): Locator =>
  page
    .locator('[data-vehicle]')
    .filter({ has: page.locator('svg') })
    .and(page.getByLabel(new RegExp(`^${name}, place`)));

async function middle(of: Locator): Promise<{ x: number; y: number }> {
  await of.scrollIntoViewIfNeeded();
  const box = await of.boundingBox();
  if (!box) throw new Error('not on the page');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function carry(page: Page, from: Locator, to: { x: number; y: number }): Promise<void> {
  const start = await middle(from);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move((start.x + to.x) / 2, (start.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
}

const whole = ['Granite', 'Air car 1', 'Air car 2', 'Air car 3', 'Air car 4', 'Air car 5'];

test('a vehicle is carried to another place, and undo brings it back', { tag: '@both' }, async ({
  counted: page,
}) => {
  await openSettled(page, counted(), 'train');
  expect(await order(page)).toEqual(whole);
  // Both places are read on a page that has come to rest.
  await expect(page.locator('.counts-bar')).not.toContainText('…');
  await vehicle(page, 'Air car 1').scrollIntoViewIfNeeded();
  const to = await vehicle(page, 'Air car 3').boundingBox();
  if (!to) throw new Error('no car');
  await carry(page, vehicle(page, 'Air car 1'), { x: to.x + to.width - 4, y: to.y + to.height / 2 });
  await expect
    .poll(() => order(page))
    .toEqual(['Granite', 'Air car 2', 'Air car 3', 'Air car 1', 'Air car 4', 'Air car 5']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => order(page)).toEqual(whole);
});

test('a tap elsewhere, at once after a carry, is a tap', async ({ demo: page }) => {
  await openSettled(page, url(), 'train');
  await vehicle(page, 'Air car 4').focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => order(page)).not.toEqual(whole);
  const moved = await order(page);
  await vehicle(page, 'Air car 1').scrollIntoViewIfNeeded();
  const from = await middle(vehicle(page, 'Air car 1'));
  const to = await middle(vehicle(page, 'Air car 3'));
  await page.evaluate(
    ([a, b]) => {
      const fire = (type: string, { x, y }: { x: number; y: number }): void => {
        const at = document.elementFromPoint(x, y) ?? document.body;
        const more = { bubbles: true, button: 0, isPrimary: true, pointerId: 1, clientX: x, clientY: y };
        at.dispatchEvent(new PointerEvent(type, more));
      };
      fire('pointerdown', a);
      fire('pointermove', { x: (a.x + b.x) / 2, y: a.y });
      fire('pointermove', b);
      fire('pointerup', b);
      const undo = [...document.querySelectorAll('button')].find((e) => e.textContent === 'Undo');
      undo?.click();
    },
    [from, to] as const,
  );
  await expect.poll(() => order(page)).toEqual(moved);
});

// On a push: left behind by keys below; riders wait in tests/unit/web/make-up.test.ts.
test('carried out of the yard it is left behind, and its riders wait', { tag: '@full' }, async ({
  demo: page,
}) => {
  await openSettled(page, url(), 'train');
  await test.step('Escape puts a carried vehicle back', async () => {
    const from = await middle(vehicle(page, 'Air car 1'));
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 40, from.y + 200, { steps: 5 });
    await expect(page.locator('.ghost')).toHaveText('Air car 1');
    await page.keyboard.press('Escape');
    await expect(page.locator('.ghost')).toHaveCount(0);
    await page.mouse.up();
    expect(await order(page)).toEqual(whole);
  });
  const yard = page.locator('[data-yard]');
  await yard.evaluate((e) => e.scrollIntoView({ block: 'center' }));
  const box = await yard.boundingBox();
  if (!box) throw new Error('no yard');
  await carry(page, vehicle(page, 'Air car 2'), { x: box.x + 60, y: box.y + box.height + 130 });
  await expect.poll(() => order(page)).not.toContain('Air car 2');
  await page.goto(`${url()}#${rooms.people}`);
  await expect(page.getByRole('region', { name: 'On the platform' }).getByRole('button')).toHaveCount(4);
});

test('by keys alone: moved, taken up and put down, left behind, undone', async ({ demo: page }) => {
  await open(page, url(), 'train');
  await vehicle(page, 'Air car 1').focus();
  await page.keyboard.press('ArrowRight');
  await expect
    .poll(() => order(page))
    .toEqual(['Granite', 'Air car 2', 'Air car 1', 'Air car 3', 'Air car 4', 'Air car 5']);
  await expect(vehicle(page, 'Air car 1')).toBeFocused();
  await page.keyboard.press('End');
  await expect
    .poll(() => order(page))
    .toEqual(['Granite', 'Air car 2', 'Air car 3', 'Air car 4', 'Air car 5', 'Air car 1']);
  await expect(vehicle(page, 'Air car 1')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Air car 1 is taken up.')).toBeVisible();
  const first = page.getByRole('button', { name: 'Put Air car 1 at place 2' });
  await first.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => order(page)).toEqual(whole);
  await vehicle(page, 'Air car 5').focus();
  await page.keyboard.press('Delete');
  await expect.poll(() => order(page)).toEqual(whole.slice(0, 5));
  await page.getByRole('button', { name: 'Undo' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => order(page)).toEqual(whole);
  await test.step('tapped vehicle, tapped place', async () => {
    await vehicle(page, 'Air car 5').click();
    await page.getByRole('button', { name: 'Put Air car 5 at place 2' }).click();
    await expect
      .poll(() => order(page))
      .toEqual(['Granite', 'Air car 5', 'Air car 1', 'Air car 2', 'Air car 3', 'Air car 4']);
  });
});

// On a push: by tap in workbench.spec.ts; who sits where in tests/unit/web/make-up.test.ts.
test('riders by keys alone: seated, moved, let off', { tag: '@full' }, async ({ demo: page }) => {
  await open(page, url(), rooms.people);
  const seat = (car: number) => page.getByRole('button', { name: new RegExp(`^Seat 4 of Air car ${car}:`) });
  await seat(2).focus();
  await page.keyboard.press('Enter');
  await expect(seat(2)).not.toHaveAccessibleName(/empty/);
  await expect(seat(2)).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: /Rider in hand/ })).toBeVisible();
  await seat(3).focus();
  await page.keyboard.press('Enter');
  await expect(seat(2)).toHaveAccessibleName(/empty/);
  await expect(seat(3)).not.toHaveAccessibleName(/empty/);
  await page.keyboard.press('Delete');
  await expect(seat(3)).toHaveAccessibleName(/empty/);
  await test.step('a rider is carried to another seat, and changes places on a taken one', async () => {
    const seat = (n: number) => page.getByRole('button', { name: new RegExp(`^Seat ${n} of Air car 2:`) });
    const who = async (n: number): Promise<string> =>
      (await seat(n).getAttribute('aria-label'))?.split(': ')[1] ?? '';
    const [one, two] = [await who(1), await who(2)];
    // Away from the edge, where the page moves along.
    await seat(1).evaluate((e) => e.scrollIntoView({ block: 'center' }));
    await carry(page, seat(1), await middle(seat(4)));
    await expect.poll(() => who(4)).toBe(one);
    await expect.poll(() => who(1)).toBe('empty');
    await carry(page, seat(4), await middle(seat(2)));
    await expect.poll(() => who(2)).toBe(one);
    await expect.poll(() => who(4)).toBe(two);
  });
});

// On a push: tests/unit/web/make-up.test.ts for who joins; carried to another place above.
test('from the shed: at the rear, and carried between two cars; the counts follow', { tag: '@full' }, async ({
  counted: page,
}) => {
  await openSettled(page, counted(), 'train');
  const counts = page.getByRole('region', { name: /Car counts on dry rail/ });
  await expect(counts).toContainText('5 cars here');
  await expect(counts).toContainText('starts anywhere');
  await page.getByRole('button', { name: 'Add Light car at the rear' }).click();
  await expect.poll(() => order(page)).toEqual([...whole, 'Light car']);
  await expect(counts).toContainText('6 cars here');
  const tile = page.getByRole('button', { name: 'Take up Vacuum car' });
  await tile.scrollIntoViewIfNeeded();
  const at = await vehicle(page, 'Granite').boundingBox();
  if (!at) throw new Error('no engine');
  await carry(page, tile, { x: at.x + at.width - 3, y: at.y + at.height / 2 });
  await expect.poll(() => order(page)).toEqual(['Granite', 'Vacuum car', ...whole.slice(1), 'Light car']);
});

// On a push: by tap in workbench.spec.ts; who sits where in tests/unit/web/make-up.test.ts.
test('seats by tap: a rider by the table, one of known weight; moved, weighed anew, let off', {
  tag: '@full',
}, async ({ demo: page }) => {
  await open(page, url(), rooms.people);
  const seat = (n: number, car = 'Air car 2') =>
    page.getByRole('button', { name: new RegExp(`^Seat ${n} of ${car}:`) });
  await expect(seat(4)).toHaveAccessibleName(/empty/);
  await page.getByLabel('typical').first().selectOption('child');
  await seat(4).click();
  await expect(seat(4)).toHaveAccessibleName(/Rider \d+, 57 lb/);
  await seat(4).click();
  const panel = page.getByRole('region', { name: /Rider in hand/ });
  await panel.getByLabel('weight').fill('12 st 4 lb');
  await expect(panel.locator('.echo')).toHaveText('= 172 lb · 78.018 kg');
  await panel.getByLabel('weight').press('Tab');
  await expect(seat(4)).toHaveAccessibleName(/172 lb/);
  await panel.getByLabel('weight').fill('12 parsecs');
  await expect(panel.locator('.wrong')).toContainText('a mass such as');
  await panel.getByLabel('weight').press('Tab');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await panel.getByLabel('name').fill('Alex');
  await panel.getByLabel('name').press('Tab');
  await expect(seat(4)).toHaveAccessibleName(/Alex, 172 lb/);
  await seat(4, 'Air car 3').click();
  await expect(seat(4, 'Air car 3')).toHaveAccessibleName(/Alex/);
  await expect(seat(4)).toHaveAccessibleName(/empty/);
  await seat(4, 'Air car 3').click();
  await page.getByRole('button', { name: 'Let off' }).click();
  await expect(seat(4, 'Air car 3')).toHaveAccessibleName(/empty/);
});

test('a rider is moved with a finger', { tag: '@touch' }, async ({ demo: page }) => {
  await openSettled(page, url(), rooms.people);
  const seat = (n: number) => page.getByRole('button', { name: new RegExp(`^Seat ${n} of Air car 2:`) });
  const name = (await seat(1).getAttribute('aria-label'))?.split(': ')[1];
  const [from, to] = [await middle(seat(1)), await middle(seat(4))];
  const client = await page.context().newCDPSession(page);
  const touch = (type: string, x?: number, y?: number) =>
    client.send('Input.dispatchTouchEvent', {
      type: type as 'touchStart',
      touchPoints: x === undefined ? [] : [{ x, y: y ?? 0 }],
    });
  await touch('touchStart', from.x, from.y);
  for (let i = 1; i <= 6; i++)
    await touch('touchMove', from.x + ((to.x - from.x) * i) / 6, from.y + ((to.y - from.y) * i) / 6);
  await touch('touchEnd');
  await expect(seat(4)).toHaveAccessibleName(new RegExp(name ?? '?'));
});

// On a push: two tabs at one shed in kept.spec.ts, a broken file in files.spec.ts.
test('a vehicle file comes into the shed and stays there; a broken one says what and where', {
  tag: '@full',
}, async ({ page }) => {
  await open(page, url(), 'train');
  const own = JSON.parse(example('vehicles/light-car.json'));
  own.name = 'Parcel van';
  const files = page.getByLabel('Bring in vehicle files');
  await files.setInputFiles([
    { name: 'van.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(own, null, 2)) },
    {
      name: 'bad.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify({ ...own, length: '7 psi' }, null, 2)),
    },
  ]);
  await expect(page.getByRole('alert')).toContainText(/bad\.json:\d+:\d+: length: found "7 psi"/);
  await expect(page.getByRole('button', { name: 'Take up Parcel van' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('button', { name: 'Take up Parcel van' })).toBeVisible();
  await page.getByRole('button', { name: 'Add Parcel van at the rear' }).click();
  await expect.poll(() => order(page)).toContain('Parcel van');
});

test('everything fits the screen; what a thumb must hit is large enough', { tag: '@both' }, async ({
  counted: page,
}) => {
  await open(page, counted(), rooms.train);
  await expect(page.getByRole('button', { name: 'Take up Bracken' })).toBeVisible();
  for (const room of [rooms.train, rooms.people]) {
    await page.goto(`${counted()}#${room}`);
    await fits(page);
    const small = await page
      .locator(
        'main button:visible, main select:visible, main input:not([type=checkbox]):visible, main label.tick:visible',
      )
      .evaluateAll((all) =>
        all
          .map((e) => ({
            name: e.getAttribute('aria-label') ?? e.textContent,
            box: e.getBoundingClientRect(),
          }))
          .filter(({ box }) => box.height < 43.5 || box.width < 43.5)
          .map(({ name, box }) => `${name} ${box.width.toFixed(0)}×${box.height.toFixed(0)}`),
      );
    expect(small).toEqual([]);
  }
  await page.goto(`${counted()}#${rooms.train}`);
  await page.mouse.wheel(0, 900);
  await expect(page.getByRole('region', { name: 'Car counts on dry rail' })).toBeInViewport();
});

test('a vehicle is edited where it is drawn; of several alike one is made different', async ({
  demo: page,
}) => {
  await open(page, url(), rooms.train);
  await vehicle(page, 'Air car 2').click();
  const fields = page.getByRole('region', { name: 'Figures of Air car 2' });
  await expect(fields).toContainText('Written once for all 5 alike');
  await fields.getByRole('button', { name: 'Only this one' }).click();
  await expect(fields).not.toContainText('Written once');
  await fields.getByLabel('tare', { exact: true }).fill('262 lb');
  await fields.getByLabel('tare', { exact: true }).press('Tab');
  await vehicle(page, 'Air car 3').click();
  const next = page.getByRole('region', { name: 'Figures of Air car 3' });
  await expect(next.getByLabel('tare', { exact: true })).not.toHaveValue('262 lb');
});

for (const { theme, tag } of themes) {
  // On a push: the room in both themes in tests/web/states.spec.ts.
  test(`no barrier that axe can find, ${theme}`, { tag: [tag, '@full'] }, async ({ counted: page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, counted(), rooms.train);
    await expect(page.getByRole('button', { name: 'Take up Bracken' })).toBeVisible();
    await barrierFreeIn(theme, page, 'train');
    await vehicle(page, 'Air car 2').click();
    await barrierFreeIn(theme, page, 'train with a vehicle taken up');
    await page.goto(`${counted()}#${rooms.people}`);
    await page.getByRole('button', { name: /^Seat 2 of Air car 2:/ }).click();
    await barrierFreeIn(theme, page, 'people with a rider in hand');
  });
}
