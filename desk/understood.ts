/**
 * What was understood of a written quantity, said back in the units of both shores of the Atlantic, with
 * more digits than a result would get: a slip of the pen is seen before it is reckoned with.
 */
import type { Kind } from '../engine/base/quantity.ts';
import { parseQuantity, printQuantity, type System, type Toward } from '../units/index.ts';

export type Understood =
  | { readonly ok: true; readonly si: number; readonly text: string }
  | { readonly ok: false; readonly found: string; readonly expected: string };

interface Form {
  readonly unit?: string;
  readonly digits: number;
}

/** Below this a length is said in inches and millimetres, m. */
const SMALL = 0.6;

function form(si: number, kind: Kind, system: System): Form | undefined {
  if (kind !== 'length') return undefined;
  const small = Math.abs(si) < SMALL;
  if (system === 'imperial') return small ? { unit: 'in', digits: 4 } : { unit: 'ft', digits: 3 };
  return small ? { unit: 'mm', digits: 1 } : { unit: 'm', digits: 3 };
}

/** Figures behind the point for so many figures in all. */
const digitsFor = (printed: string, figures: number): number => {
  const size = Math.abs(Number.parseFloat(printed));
  return size > 0 ? Math.min(9, Math.max(0, figures - 1 - Math.floor(Math.log10(size)))) : 0;
};

const trimmed = (text: string): string => text.replace(/(\.\d*?)0+(?=\D|$)/, '$1').replace(/\.(?=\D|$)/, '');

/** About five figures, without noughts at the end. */
export function said(si: number, kind: Kind, system: System, toward: Toward = 'nearest'): string {
  const chosen = form(si, kind, system);
  const unit = chosen?.unit ? { unit: chosen.unit } : {};
  const digits = chosen?.digits ?? digitsFor(printQuantity(si, kind, { system, digits: 9, ...unit }), 5);
  return trimmed(printQuantity(si, kind, { system, digits, toward, ...unit }));
}

/** Six figures, to be read again as the same. */
export function sayFully(si: number, kind: Kind, system: System): string {
  const chosen = form(si, kind, system);
  const unit = chosen?.unit ? { unit: chosen.unit } : {};
  const digits = digitsFor(printQuantity(si, kind, { system, digits: 9, ...unit }), 6);
  return trimmed(printQuantity(si, kind, { system, digits, ...unit }));
}

export function sayBoth(si: number, kind: Kind): string {
  if (kind === 'grade')
    return si === 0
      ? 'level'
      : `${said(si, kind, 'metric')} · ${si < 0 ? '-' : ''}1 in ${Number((1 / Math.abs(si)).toFixed(1))}`;
  if (kind === 'ratio') return `${said(si, kind, 'metric')} · ${Number((si * 100).toFixed(3))} %`;
  const [imperial, metric] = [said(si, kind, 'imperial'), said(si, kind, 'metric')];
  return imperial === metric ? imperial : `${imperial} · ${metric}`;
}

/** Read a text as a field of the kind would be read, and say it back. */
export function understoodAs(text: string, kind: Kind): Understood {
  const read = parseQuantity(text, kind);
  return read.ok
    ? { ok: true, si: read.si, text: `= ${sayBoth(read.si, kind)}` }
    : { ok: false, found: read.problem.found, expected: read.problem.expected };
}
