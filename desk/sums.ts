/** Evaluating a sum from what people write, with results in their units. */

import { kinds } from '../engine/base/quantity.ts';
import type { Sum, SumSymbol } from '../engine/base/sum.ts';
import { evaluateSum, findSum, rangeText, sums } from '../engine/sums/register.ts';
import { accepted, parseQuantity, printQuantity, type System, type Toward } from '../units/index.ts';

export { sums };

export interface SumFault {
  readonly symbol: string;
  readonly found: string;
  readonly expected: string;
}

export interface SumAnswer {
  readonly id: string;
  /** SI. */
  readonly inputs: Readonly<Record<string, number>>;
  readonly results: readonly { symbol: string; value: number; unit: string; si: number; text: string }[];
  readonly range: Readonly<Record<string, string>>;
  readonly source: string;
}

export type SumReply =
  | { readonly ok: true; readonly answer: SumAnswer }
  | { readonly ok: false; readonly faults: readonly SumFault[] };

/** `1in80` and `3long_ton` as typed without spaces on a command line. */
const loosen = (text: string): string => text.replace(/_/g, ' ').replace(/^([+-]?[\d.]+)in(\d)/, '$1 in $2');

/** @param written symbol → text as people write it */
export function answerSum(id: string, written: Readonly<Record<string, string>>, system: System): SumReply {
  const sum = findSum(id);
  if (!sum)
    return {
      ok: false,
      faults: [{ symbol: id, found: 'no such sum', expected: `one of ${sums.map((s) => s.id).join(', ')}` }],
    };
  const given: Record<string, number> = {};
  const faults: SumFault[] = [];
  for (const [symbol, text] of Object.entries(written)) {
    const known = sum.inputs.find((s) => s.symbol === symbol);
    if (!known) {
      faults.push({
        symbol,
        found: 'an unknown symbol',
        expected: sum.inputs.map((s) => s.symbol).join(', '),
      });
      continue;
    }
    const read = readInput(known, loosen(text));
    if (typeof read === 'number') given[symbol] = read;
    else faults.push(read);
  }
  if (faults.length > 0) return { ok: false, faults };
  const outcome = evaluateSum(sum, given);
  if (!outcome.ok) return { ok: false, faults: outcome.problems.map((p) => inUnits(sum, p, system)) };
  return { ok: true, answer: answerOf(sum, given, outcome.values, system) };
}

function readInput(known: SumSymbol, text: string): number | SumFault {
  // A count that need not be whole (an age in months) and ratios are plain numbers.
  if (known.kind === 'count' && /^[\d.]+$/.test(text)) return Number(text);
  const read = parseQuantity(text, known.kind, known.symbol);
  return read.ok
    ? read.si
    : { symbol: known.symbol, found: read.problem.found, expected: read.problem.expected };
}

/** The range of a symbol in the reader's units, rounded inward; empty where any value will do. */
export function rangeWords(symbol: SumSymbol, system: System): string {
  const print = (si: number, toward: Toward): string => printQuantity(si, symbol.kind, { system, toward });
  const bounds = [
    symbol.low === undefined ? '' : `${symbol.open ? 'more than' : 'at least'} ${print(symbol.low, 'up')}`,
    symbol.high === undefined ? '' : `at most ${print(symbol.high, 'down')}`,
  ];
  return bounds.filter((b) => b !== '').join(', ');
}

/** A range fault said in the reader's units beside SI. */
export function inUnits(sum: Sum, fault: SumFault, system: System): SumFault {
  const symbol = sum.inputs.find((s) => s.symbol === fault.symbol);
  if (!symbol) return fault;
  const value = Number(fault.found);
  const found =
    Number.isFinite(value) && fault.found !== ''
      ? printQuantity(value, symbol.kind, { system })
      : fault.found;
  const range = rangeWords(symbol, system);
  const said = fault.expected === rangeText(symbol) && range !== '' ? range : fault.expected;
  return { symbol: fault.symbol, found, expected: fault.found === 'nothing' ? accepted(symbol.kind) : said };
}

function answerOf(
  sum: Sum,
  given: Record<string, number>,
  values: Readonly<Record<string, number>>,
  system: System,
): SumAnswer {
  const inputs = Object.fromEntries(
    sum.inputs.flatMap((s) => {
      const si = given[s.symbol] ?? s.default;
      return si === undefined ? [] : [[s.symbol, si]];
    }),
  );
  return {
    id: sum.id,
    inputs,
    results: sum.results.map(({ symbol, kind }) => {
      const si = values[symbol];
      const text = printQuantity(si, kind, { system, digits: digitsFor(si, kind, system) });
      const [, value, unit] = /^(-?[\d.]+)\s*(.*)$/.exec(text) ?? ['', `${si}`, kinds[kind]];
      return { symbol, value: Number(value), unit, si, text };
    }),
    range: Object.fromEntries(sum.inputs.map((s) => [s.symbol, `${rangeText(s)} ${kinds[s.kind]}`])),
    source: sum.source,
  };
}

/** Enough digits for five significant figures: a sum is looked at closely. */
function digitsFor(si: number, kind: Sum['results'][number]['kind'], system: System): number {
  const shown = Math.abs(Number.parseFloat(printQuantity(si, kind, { system, digits: 6 })));
  if (!(shown > 0)) return 2;
  return Math.min(6, Math.max(0, 4 - Math.floor(Math.log10(shown))));
}
