/** How everything is shown, as it is kept. */
import type { System } from '../../units/index.ts';
import type { Wording } from '../../words/voice.ts';

export type Theme = 'auto' | 'light' | 'dark';

export interface Settings {
  readonly units: System;
  readonly wording: Wording;
  readonly theme: Theme;
  readonly cautioned: boolean;
}

/** Settings of another version may know words that this one does not. */
export function settingsOf(now: Settings, set: unknown): Settings {
  const { units, wording, theme, cautioned } = {
    ...now,
    ...(set as Partial<Settings> | undefined),
  };
  const one = <T>(value: T, ...known: T[]): T => (known.includes(value) ? value : known[0]);
  return {
    units: one(units, 'imperial', 'metric'),
    wording: one(wording, 'us', 'uk'),
    theme: one(theme, 'auto', 'light', 'dark'),
    cautioned: cautioned === true,
  };
}
