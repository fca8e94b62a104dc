/** Whatever a browser kept of how things are shown: what no version knows is shown as at first, and never without a word. */
import { expect, it } from 'vitest';
import { type Settings, settingsOf } from '../../../web/state/settings.ts';

const now: Settings = { units: 'metric', wording: 'uk', theme: 'dark', cautioned: true };

it.each([
  [{ units: 'furlongs' }, { units: 'imperial' }],
  [{ units: null }, { units: 'imperial' }],
  [{ wording: 'broad' }, { wording: 'us' }],
  [{ theme: {} }, { theme: 'auto' }],
  [{ cautioned: 'yes' }, { cautioned: false }],
  [{ more: 1, units: 'imperial' }, { units: 'imperial' }],
] as [object, Partial<Settings>][])('%j', (set, shown) => {
  expect(settingsOf(now, set)).toEqual({ ...now, ...shown });
});

it.each([undefined, null, 'x', 7, []])('nothing that can be read (%j) changes nothing', (set) => {
  expect(settingsOf(now, set)).toEqual(now);
});
