/** The address of a sum with numbers put in, and back: `#sums/gap-time?gap=120%20ft`. */
import { sayFully } from '../../desk/understood.ts';
import { findSum } from '../../engine/sums/register.ts';
import type { System } from '../../units/index.ts';

export function sumLink(id: string, inputs: Readonly<Record<string, number>>, system: System): string {
  const known = findSum(id)?.inputs ?? [];
  const written = known.flatMap((s) => {
    const si = inputs[s.symbol];
    return si === undefined ? [] : [`${s.symbol}=${encodeURIComponent(sayFully(si, s.kind, system))}`];
  });
  return `#sums/${id}${written.length > 0 ? `?${written.join('&')}` : ''}`;
}

export interface SumPlace {
  /** Absent: the list of sums. */
  readonly id?: string;
  /** Symbol → text; absent where the address names none. */
  readonly written?: Readonly<Record<string, string>>;
}

export function readSumLink(hash: string): SumPlace {
  const [, path, query] = /^#sums\/([^?]*)(?:\?(.*))?$/.exec(hash) ?? [];
  const sum = path === undefined ? undefined : findSum(path);
  if (!sum) return {};
  const given = new URLSearchParams(query ?? '');
  const written = Object.fromEntries([...given].filter(([k]) => sum.inputs.some((s) => s.symbol === k)));
  return Object.keys(written).length > 0 ? { id: sum.id, written } : { id: sum.id };
}
