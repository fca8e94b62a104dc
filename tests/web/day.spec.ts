/** The steward's day: rain, dark, people; what changed beside what was; one person moved; nothing jumps under a finger. */
import { expect, type Page } from '@playwright/test';
import { heedwayAlone as heedway } from '../support/cli.ts';
import { full } from '../support/tier.ts';
import { test } from './demo.ts';
import { answered, barrierFree, barrierFreeIn, fits, open, openSettled, served, themes } from './served.ts';
import { at } from './support/rooms.ts';

const url = served();
const whole = served('counted');
/** With counts and remedies. */

const rail = (page: Page, name: string) => page.getByRole('radio', { name, exact: true });
const changed = (page: Page) => page.getByRole('region', { name: 'What changed' });
const sentence = (page: Page) => page.locator('.sentence');

/** The one sentence that the command line says of an example under the same flags. */
const told = (...flags: string[]): string => {
  const { stdout } = heedway('check', 'examples/heavy-air.json', '--no-remedies', ...flags);
  const after = stdout.split('\n\n')[1] ?? '';
  return after.slice(after.indexOf('\n') + 1).replace(/\s+/g, ' ');
};

test('rain: word, figures and sentence follow the dial, as the command line has them; and are put back', {
  tag: '@both',
}, async ({ counted: page }) => {
  await openSettled(page, whole(), at.answer);
  const dry = (await sentence(page).textContent()) ?? '';
  const dial = await page.locator('.dial').boundingBox();
  await rail(page, 'greasy').check();
  await expect(page.locator('.verdict')).toContainText('hold');
  await expect(sentence(page)).toHaveText(told('--rail', 'greasy'));
  // What is pressed has not moved under the finger.
  expect((await page.locator('.dial').boundingBox())?.y).toBe(dial?.y);
  const [before, now] = [changed(page).locator('tr.before'), changed(page).locator('tr.now')];
  await expect(before).toContainText('go within limits');
  await expect(before).toContainText('7 mph, 4 mph');
  await expect(now).toContainText('hold');
  await expect(now).toContainText('none');
  await fits(page);
  await changed(page).getByRole('button', { name: 'Put it back' }).click();
  await expect(rail(page, 'dry')).toBeChecked();
  await expect(sentence(page)).toHaveText(dry);
  await expect(changed(page)).toHaveCount(0);
});

// On a push: tests/unit/desk/day.test.ts, and in figures tests/unit/outing/sanded.test.ts.
test('sanding goes with whatever rail there is, and never makes a damp one dry', { tag: '@full' }, async ({
  counted: page,
}) => {
  await openSettled(page, whole(), at.answer);
  const sanding = page.getByRole('button', { name: 'sand', exact: true });
  await rail(page, 'damp').check();
  await sanding.click();
  await expect(sanding).toHaveAttribute('aria-pressed', 'true');
  await expect(rail(page, 'damp')).toBeChecked();
  await expect(sentence(page)).toHaveText(told('--rail', 'damp-sanded'));
  await expect(page.locator('main')).toContainText('rail damp, sanded');
  await rail(page, 'wet').check();
  await expect(sanding).toHaveAttribute('aria-pressed', 'true');
  await expect(sentence(page)).toHaveText(told('--rail', 'wet-sanded'));
  await sanding.click();
  await expect(sentence(page)).toHaveText(told('--rail', 'wet'));
});

test('one more, one fewer, after dark: each a step of its own', async ({ demo: page }) => {
  await open(page, url(), at.answer);
  const people = page.getByRole('group', { name: 'People on the cars' });
  await expect(people).toContainText('16 aboard');
  await people.getByLabel('Who comes or goes').selectOption('heavy adult');
  await expect(people.getByRole('button', { name: 'One heavy adult fewer' })).toBeDisabled();
  await people.getByRole('button', { name: 'One heavy adult more' }).click();
  await expect(people).toContainText('17 aboard');
  await answered(page);
  await expect(changed(page)).toBeVisible();
  await people.getByRole('button', { name: 'One heavy adult fewer' }).click();
  await expect(people).toContainText('16 aboard');
  await page.getByRole('button', { name: 'dark', exact: true }).click();
  await expect(page.getByRole('button', { name: 'dark', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', { name: 'dark', exact: true })).toHaveAttribute(
    'aria-pressed',
    'false',
  );
});

test('two heavy adults and rain in six actions; who sets it is named, and one move helps', async ({
  demo: page,
}) => {
  await open(page, url(), at.people);
  let actions = 0;
  const act = async (doing: Promise<unknown>): Promise<void> => {
    actions++;
    await doing;
  };
  const people = page.getByRole('group', { name: 'People on the cars' });
  const more = people.getByRole('button', { name: 'One heavy adult more' });
  await act(page.getByLabel('Who comes or goes').selectOption('heavy adult'));
  await act(more.click());
  await expect(people).toContainText('17 aboard');
  await act(more.click());
  await expect(people).toContainText('18 aboard');
  const margins = page.getByRole('region', { name: 'What each car keeps' });
  await expect(margins).toContainText(/Air car \d sets it/);
  await act(margins.getByRole('button', { name: /^Move just this one: / }).click());
  await expect(margins.locator('.sets')).toContainText(/%/);
  await act(page.getByRole('link', { name: 'Answer', exact: true }).click());
  await act(rail(page, 'wet').check());
  await answered(page);
  await expect(changed(page).locator('tr.now .word')).toHaveText(/go|hold|cannot tell/);
  expect(actions).toBeLessThanOrEqual(6);
});

test('a move is tried first: marked beside the word, its result beside it, and the papers as they were', async ({
  demo: page,
}) => {
  await openSettled(page, url(), at.people);
  const margins = page.getByRole('region', { name: 'What each car keeps' });
  const before = await margins.textContent();
  await margins.getByRole('button', { name: 'Try it first' }).click();
  await expect(page.locator('.verdict .tried')).toContainText(/move .* to seat/);
  const trying = page.getByRole('region', { name: 'Trying' });
  await expect(trying.locator('tbody tr').first()).toContainText(/go within limits.*go within limits/);
  // Kept in the answer, and nothing of it in the papers.
  expect(await margins.textContent()).toBe(before);
  await page.goto(`${url()}#${at.answer}`);
  await expect(trying).toBeVisible();
  await trying.getByRole('button', { name: 'Write it into my papers' }).click();
  await expect(trying).toHaveCount(0);
  await page.goto(`${url()}#${at.people}`);
  await expect(margins).not.toHaveText(before ?? '');
});

test('an edit of the line says at the foot what it changed, and is put back there', async ({
  demo: page,
}) => {
  await openSettled(page, url(), at.line);
  await page.getByRole('button', { name: "Host's rules" }).click();
  const bar = page.locator('.changed-bar');
  await expect(bar).toHaveCount(0);
  const speed = page.getByRole('table', { name: 'rules' }).getByRole('textbox', { name: /speed/i }).first();
  const was = await speed.inputValue();
  // Letter by letter is one step, beside what stood before the first of them.
  await speed.fill('');
  await speed.pressSequentially('5 mph');
  await expect(bar.locator('summary')).toContainText(/7 mph, 4 mph → 5 mph, 4 mph/);
  await bar.locator('summary').click();
  await barrierFree(page, 'what changed');
  await bar.getByRole('button', { name: 'Put it back' }).click();
  await expect(speed).toHaveValue(was);
  await expect(bar).toHaveCount(0);
});

// On a push: tests/unit/seating/moved.test.ts; a move is made alone above.
test('one of the moves of the found seating is made alone, and the rest stay offered', {
  tag: '@full',
}, async ({ demo: page }) => {
  await open(page, url(), at.people);
  await page.getByRole('button', { name: 'Find the seating' }).click();
  const moves = page.locator('.moves li');
  await expect(moves.first()).toBeVisible({ timeout: 60_000 });
  const count = await moves.count();
  await moves
    .first()
    .getByRole('button', { name: /^Move just/ })
    .click();
  await expect(moves).toHaveCount(count - 1);
  // Kept while another room is looked at.
  await page.goto(`${url()}#${at.answer}`);
  await page.goto(`${url()}#${at.people}`);
  await expect(moves).toHaveCount(count - 1);
  await page.getByRole('button', { name: 'Take these seats' }).click();
  await expect(page.getByText('Taken: they sit so.')).toBeVisible();
});

for (const { theme, tag } of themes) {
  // On a push: every room in both themes in tests/web/states.spec.ts, what changed in the journey of the line
  // above.
  test(`no barrier that axe can find once the day has changed, ${theme}`, { tag: [tag, '@full'] }, async ({
    counted: page,
  }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, whole(), at.answer);
    await rail(page, 'greasy').check();
    await answered(page);
    await expect(changed(page)).toBeVisible();
    await page.locator('.settings summary').click();
    await barrierFreeIn(theme, page, 'the day changed, settings open');
    // On a push the others are looked at in the walk through every room (tests/web/states.spec.ts).
    for (const room of full ? [at.people, at.line, at.mine, 'tools', 'new'] : [at.line]) {
      await page.goto(`${whole()}#${room}`);
      await expect(page.locator('main h1').first()).toBeAttached();
      await barrierFreeIn(theme, page, room);
      await fits(page);
    }
  });
}
