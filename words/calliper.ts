/** Lengths as a calliper reads them: what an eighth of an inch would hide decides whether a wheel strikes. */
import type { FindingCode } from '../engine/questions/findings.ts';
import { printQuantity, type Toward } from '../units/index.ts';
import type { Voice } from './voice.ts';

/** Findings whose lengths are read so. */
export const byCalliper: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'wheel-strikes-frog',
  'wheelset-binds-at-guard',
  'wheelset-binds-in-gauge',
  'wheel-drops-in',
  'flange-strikes-floor',
  'back-to-back-varies',
  'wheel-diameters-differ',
  'wheel-worn',
  'wheel-wears-out',
  'wheel-lifts-on-hump',
  'standard-refused',
  'standard-slow',
]);

/** As a tape or a rule reads it: sixteenths of an inch or whole millimetres; beyond a foot or two, feet and inches. @param si m */
export const tape = (si: number, { system }: Pick<Voice, 'system'>, toward: Toward): string =>
  printQuantity(si, 'length', { system, toward });

/** "6.870 in", "174.50 mm". @param si m */
export const calliper = (si: number, { system }: Pick<Voice, 'system'>, toward: Toward): string =>
  system === 'imperial'
    ? printQuantity(si, 'length', { system, toward, unit: 'in', digits: 3 })
    : printQuantity(si, 'length', { system, toward, unit: 'mm', digits: 2 });
