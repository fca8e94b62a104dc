/** The rooms by the names that journeys use: where one is called otherwise, it is called otherwise here alone. */
import { expect, type Locator, type Page } from '@playwright/test';

/** Addresses. */
export const at = {
  answer: 'answer',
  card: 'card',
  train: 'train',
  people: 'train/people',
  line: 'line',
  mine: 'mine',
} as const;

/** Words on the doors. */
export const door = {
  answer: 'Answer',
  train: 'Train',
  line: 'Line',
  tools: 'Tools',
  mine: 'Papers',
} as const;

export const doorTo = (page: Page, to: keyof typeof door): Locator =>
  page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: door[to], exact: true });

export const openDoor = (page: Page): Locator =>
  page.getByRole('navigation', { name: 'Rooms' }).locator('[aria-current]');

/** Units, words and light lie behind one mark. */
export async function set(page: Page, which: 'Units' | 'Words' | 'Light', to: string): Promise<void> {
  const settings = page.locator('.settings');
  await settings.locator('summary').click();
  await settings.getByLabel(which).selectOption(to);
  await page.keyboard.press('Escape');
  await expect(settings.getByLabel(which)).toBeHidden();
}

/** The fields of a vehicle of the train that is open. */
export async function vehicleFields(page: Page, name: RegExp): Promise<Locator> {
  await page.getByLabel(name).first().click();
  return page.getByRole('region', { name: /^Figures of / });
}
