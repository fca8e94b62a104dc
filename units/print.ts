/**
 * Printing SI figures for people, imperial or metric, rounded toward the side that is asked for.
 *
 * `toward: 'up'` never prints less than the figure, `'down'` never more: a stopping distance goes up, a
 * permitted speed down.
 */
import { INCH } from '../engine/base/constants.ts';
import type { Kind } from '../engine/base/quantity.ts';
import { findUnit } from './factors.ts';

export type System = 'imperial' | 'metric';
export type Toward = 'up' | 'down' | 'nearest';

export interface PrintOptions {
  readonly system: System;
  readonly toward?: Toward;
  /** Digits behind the point. */
  readonly digits?: number;
  /** A unit of the kind; `ft in` for feet and inches, `1 in n` for grades. */
  readonly unit?: string;
}

interface Form {
  readonly unit: string;
  readonly digits: number;
}

const form = (unit: string, digits: number): Form => ({ unit, digits });

const forms: Readonly<Record<Kind, Readonly<Record<System, Form>>>> = {
  length: { imperial: form('ft', 0), metric: form('m', 1) },
  area: { imperial: form('in²', 2), metric: form('cm²', 1) },
  volume: { imperial: form('in³', 0), metric: form('l', 2) },
  speed: { imperial: form('mph', 1), metric: form('km/h', 1) },
  acceleration: { imperial: form('ft/s²', 2), metric: form('m/s²', 2) },
  time: { imperial: form('s', 1), metric: form('s', 1) },
  mass: { imperial: form('lb', 0), metric: form('kg', 0) },
  force: { imperial: form('lbf', 0), metric: form('N', 0) },
  pressure: { imperial: form('psia', 2), metric: form('kPa', 1) },
  gaugePressure: { imperial: form('psi', 1), metric: form('kPa', 0) },
  vacuum: { imperial: form('inHg', 1), metric: form('kPa', 1) },
  grade: { imperial: form('%', 2), metric: form('%', 2) },
  angle: { imperial: form('°', 1), metric: form('°', 1) },
  curvature: { imperial: form('1/ft', 4), metric: form('1/m', 4) },
  ratio: { imperial: form('', 3), metric: form('', 3) },
  count: { imperial: form('', 0), metric: form('', 0) },
  specificForce: { imperial: form('lb/short ton', 1), metric: form('N/kN', 1) },
  energy: { imperial: form('ft·lbf', 0), metric: form('J', 0) },
  power: { imperial: form('hp', 2), metric: form('kW', 2) },
  stiffness: { imperial: form('lbf/in', 0), metric: form('kN/m', 1) },
  flow: { imperial: form('cfm', 2), metric: form('l/s', 2) },
  temperature: { imperial: form('°F', 0), metric: form('°C', 0) },
  stress: { imperial: form('psi', 0), metric: form('MPa', 1) },
  twist: { imperial: form('mm/m', 2), metric: form('mm/m', 2) },
  momentum: { imperial: form('lbf·s', 1), metric: form('N·s', 1) },
  moment: { imperial: form('lbf·ft', 1), metric: form('N·m', 1) },
};

/** Lengths below this print in inches with a fraction, and up to FEET_AND_INCHES in feet and inches. */
const INCHES_BELOW = 0.6;
const FEET_AND_INCHES_BELOW = 6;
/** From here on nobody counts tenths of a second, s. */
const TENTHS_BELOW = 10;

/** Print an SI figure with its unit. Not finite: in words. */
export function printQuantity(si: number, kind: Kind, options: PrintOptions): string {
  if (Number.isNaN(si)) return 'not known';
  if (!Number.isFinite(si)) return si > 0 ? 'without end' : 'without end (negative)';
  const toward = options.toward ?? 'nearest';
  if (kind === 'length' && options.digits === undefined) {
    const special = lengthForm(si, options, toward);
    if (special !== undefined) return special;
  }
  if (kind === 'time' && si >= 3600 && options.unit === undefined && options.digits === undefined)
    return hoursAndMinutes(si, toward);
  if (kind === 'grade' && options.unit === '1 in n') return gradeOneIn(si, toward);
  const chosen = forms[kind][options.system];
  const unit = options.unit ?? chosen.unit;
  const digits =
    options.digits ?? (options.unit ? 3 : kind === 'time' && si >= TENTHS_BELOW ? 0 : chosen.digits);
  return withUnit(roundToward(toUnit(si, kind, unit), digits, toward), digits, unit);
}

/** Of an hour or more nobody counts seconds. */
function hoursAndMinutes(si: number, toward: Toward): string {
  const minutes = roundToward(si / 60, 0, toward);
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

function toUnit(si: number, kind: Kind, name: string): number {
  if (name === '') return si;
  const unit = findUnit(kind, name);
  if (!unit) throw new RangeError(`no unit ${name} of ${kind}`);
  return (si - (unit.offset ?? 0)) / unit.factor;
}

/** A figure within this share of a step of a printable one counts as it. */
const SAME = 1e-9;

export function roundToward(value: number, digits: number, toward: Toward): number {
  const scale = 10 ** digits;
  const scaled = value * scale;
  const near = Math.round(scaled);
  if (Math.abs(scaled - near) <= SAME * Math.max(1, Math.abs(scaled))) return near / scale;
  const rounded = toward === 'up' ? Math.ceil(scaled) : toward === 'down' ? Math.floor(scaled) : near;
  return rounded / scale;
}

const grouped = (value: number, digits: number): string => (Object.is(value, -0) ? 0 : value).toFixed(digits);

function withUnit(value: number, digits: number, unit: string): string {
  const number = grouped(value, digits);
  if (unit === '') return digits > 0 ? number.replace(/0+$/, '').replace(/\.$/, '') : number;
  return unit === '°' ? `${number}°` : `${number} ${unit}`;
}

function lengthForm(si: number, { system, unit }: PrintOptions, toward: Toward): string | undefined {
  const size = Math.abs(si);
  if (system === 'metric' && unit === undefined) {
    return size < INCHES_BELOW ? withUnit(roundToward(si * 1000, 0, toward), 0, 'mm') : undefined;
  }
  if (unit === 'in' || (unit === undefined && size < INCHES_BELOW)) return inches(si, toward);
  if (unit === 'ft in' || (unit === undefined && size < FEET_AND_INCHES_BELOW))
    return feetAndInches(si, toward);
  return undefined;
}

/** Sixteenths of an inch, rounded toward. */
const sixteenths = (si: number, toward: Toward): number => roundToward(si / (INCH / 16), 0, toward);

/** 71 → 4-7/16 */
function mixed(n: number): string {
  const whole = Math.floor(n / 16);
  let [over, under] = [n % 16, 16];
  if (over === 0) return `${whole}`;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return whole === 0 ? `${over}/${under}` : `${whole}-${over}/${under}`;
}

function inches(si: number, toward: Toward): string {
  const n = sixteenths(si, toward);
  return `${n < 0 ? '-' : ''}${mixed(Math.abs(n))} in`;
}

function feetAndInches(si: number, toward: Toward): string {
  const n = sixteenths(si, toward);
  const size = Math.abs(n);
  const feet = Math.floor(size / 192);
  const rest = size % 192;
  const sign = n < 0 ? '-' : '';
  if (feet === 0) return `${sign}${mixed(rest)} in`;
  return rest === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${mixed(rest)} in`;
}

/** Toward `up` means steeper: 1 in 38.4 prints as 1 in 38. */
function gradeOneIn(si: number, toward: Toward): string {
  if (si === 0) return 'level';
  const n = 1 / Math.abs(si);
  const steeper = toward === 'nearest' ? 'nearest' : toward === 'up' ? 'down' : 'up';
  const digits = n < 20 ? 1 : 0;
  return `${si < 0 ? '-' : ''}1 in ${roundToward(n, digits, steeper)}`;
}
