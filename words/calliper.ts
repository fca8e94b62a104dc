/** Lengths as a calliper reads them: what an eighth of an inch would hide decides whether a wheel strikes. */
import type { StandardKey } from '../engine/outing/types.ts';
import type { FactsOf, FindingCode } from '../engine/questions/findings.ts';
import { printQuantity, type Toward } from '../units/index.ts';
import type { Voice } from './voice.ts';

/** Of a host's sheet, what a calliper reads; the rest a tape. */
const calliperKeys: ReadonlySet<StandardKey> = new Set<StandardKey>([
  'backToBack',
  'backVariation',
  'wheelCheck',
  'flangeThickness',
  'flangeHeight',
  'treadHollow',
  'wheelWidth',
]);

/** Findings whose lengths are read so. */
const codes: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'wheel-strikes-frog',
  'wheelset-binds-at-guard',
  'wheelset-binds-in-gauge',
  'wheel-drops-in',
  'wheels-not-measured',
  'flange-strikes-floor',
  'back-to-back-varies',
  'wheel-diameters-differ',
  'wheel-worn',
  'wheel-wears-out',
  'wheel-lifts-on-hump',
]);

/** Beyond, hundredths of a metre; beyond half of it, tenths of a foot, m. */
const FAR = 10;

/** Findings whose lengths a tape reads, heads and roofs too: nobody stands clear by the foot. */
const taped: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'strikes-structure',
  'rider-strikes-structure',
  'little-room-beside',
]);

/** As a tape or a rule reads it: sixteenths of an inch, beyond a foot or two feet and inches; or whole millimetres. @param si m */
export function tape(si: number, { system }: Pick<Voice, 'system'>, toward: Toward): string {
  const size = Math.abs(si);
  if (system === 'metric')
    return size < FAR
      ? printQuantity(si, 'length', { system, toward, unit: 'mm', digits: 0 })
      : printQuantity(si, 'length', { system, toward, unit: 'm', digits: 2 });
  if (size < FAR / 2) return printQuantity(si, 'length', { system, toward });
  return printQuantity(si, 'length', { system, toward, unit: 'ft', digits: 1 });
}

/** "6.870 in", "174.50 mm". @param si m */
export const calliper = (si: number, { system }: Pick<Voice, 'system'>, toward: Toward): string =>
  system === 'imperial'
    ? printQuantity(si, 'length', { system, toward, unit: 'in', digits: 3 })
    : printQuantity(si, 'length', { system, toward, unit: 'mm', digits: 2 });

/** How the lengths of a finding are read; of the host's sheet by what the limit is for. undefined: as any length. */
export const readBy = ({
  code,
  facts,
}: {
  readonly code: FindingCode;
  readonly facts: object;
}): typeof tape | undefined => {
  if (code === 'standard-refused' || code === 'standard-slow')
    return ofSheet((facts as FactsOf<typeof code>).of);
  if (taped.has(code)) return tape;
  return codes.has(code) ? calliper : undefined;
};

/** A limit of a host's sheet. */
export const ofSheet = (key: StandardKey): typeof tape => (calliperKeys.has(key) ? calliper : tape);
