/** Figures as a paper holds them, in the units of whoever writes it. */

import { SHAPE_SOURCE } from '../../data/shapes.ts';
import { FOOT, INCH, MPH, POUND_FORCE } from '../../engine/base/constants.ts';
import type { System } from '../../units/index.ts';

export type Json = Record<string, unknown>;

/** Below this a length is written in inches or millimetres, m. */
const SMALL = 0.6;

const rounded = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(3));

/** A length to half an inch or 10 mm, or to a tenth of a foot or 10 mm. */
export function lengthText(m: number, system: System): string {
  if (system === 'metric')
    return Math.abs(m) < SMALL ? `${rounded(m * 1000, 10)} mm` : `${rounded(m, 0.01)} m`;
  return Math.abs(m) < SMALL ? `${rounded(m / INCH, 0.5)} in` : `${rounded(m / FOOT, 0.1)} ft`;
}

/** A force rounded down. */
export const forceText = (n: number, system: System): string =>
  system === 'metric' ? `${Math.floor(n)} N` : `${Math.floor(n / POUND_FORCE)} lbf`;

export const speedText = (v: number, system: System): string =>
  system === 'metric' ? `${rounded(v * 3.6, 0.1)} km/h` : `${rounded(v / MPH, 0.1)} mph`;

/** A speed rounded up to a whole mile or kilometer an hour. */
export const wholeSpeedText = (v: number, system: System): string =>
  system === 'metric' ? `${Math.ceil(v * 3.6 - TINY)} km/h` : `${Math.ceil(v / MPH - TINY)} mph`;

const TINY = 1e-9;

/** Along the line: every place is a sum of such whole steps, so that what ends with the line does not stick out. */
export interface Chain {
  /** m → steps of a tenth of a foot or of a metre */
  readonly steps: (m: number) => number;
  readonly text: (steps: number) => string;
}

export const chainIn = (system: System): Chain => ({
  steps: (m) => Math.round((m / (system === 'metric' ? 1 : FOOT)) * 10),
  text: (steps) => `${(steps / 10).toFixed(1)} ${system === 'metric' ? 'm' : 'ft'}`,
});

/** What nobody measured, written down as such. */
export const assumedAs = (value: string, source = SHAPE_SOURCE): Json => ({ value, how: 'assumed', source });

export const assumedLength = (m: number, system: System): Json => assumedAs(lengthText(m, system));
