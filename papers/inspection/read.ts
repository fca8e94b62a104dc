/** Reading a list, and judging a figure by its bands. */
import type { Kind } from '../../engine/base/quantity.ts';
import { parseQuantity } from '../../units/index.ts';
import { checkAgainst } from '../check.ts';
import { show, type Trouble } from '../problem.ts';
import { type InspectionItem, type InspectionList, listSchema } from './fields.ts';

export type ReadList =
  | { readonly ok: true; readonly value: InspectionList }
  | { readonly ok: false; readonly troubles: readonly Trouble[] };

export function readList(json: unknown): ReadList {
  const read = checkAgainst(listSchema, json);
  if (!read.ok) return read;
  const troubles = [...repeated(read.value), ...read.value.items.flatMap(bandTroubles)];
  return troubles.length > 0 ? { ok: false, troubles } : read;
}

const repeated = ({ items }: InspectionList): Trouble[] =>
  items.flatMap(({ id }, i) =>
    items.findIndex((other) => other.id === id) === i
      ? []
      : [{ path: ['items', i, 'id'], found: show(id), expected: 'an id that no other item has' }],
  );

/** Figures of bands are of their kind, and what is right lies within the limit. */
function bandTroubles({ measured }: InspectionItem, i: number): Trouble[] {
  if (!measured) return [];
  const { kind, right, limit } = measured;
  const troubles = (['right', 'limit'] as const).flatMap((which) =>
    (['from', 'to'] as const).flatMap((end): Trouble[] => {
      const text = measured[which]?.[end];
      if (text === undefined) return [];
      const read = parseQuantity(text, kind);
      return read.ok
        ? []
        : [
            {
              path: ['items', i, 'measured', which, end],
              found: show(text),
              expected: read.problem.expected,
            },
          ];
    }),
  );
  if (troubles.length > 0) return troubles;
  const [inner, outer] = [bounds(right, kind), limit && bounds(limit, kind)];
  const path = ['items', i, 'measured'];
  if (inner.from > inner.to)
    return [{ path, found: 'a band that ends before it begins', expected: 'from ≤ to' }];
  return outer && (outer.from > inner.from || outer.to < inner.to)
    ? [{ path, found: 'a limit within what is right', expected: 'a limit that is wider than what is right' }]
    : [];
}

interface Bounds {
  readonly from: number;
  readonly to: number;
}

function bounds({ from, to }: { readonly from?: string; readonly to?: string }, kind: Kind): Bounds {
  const si = (text: string | undefined, none: number): number => {
    const read = text === undefined ? undefined : parseQuantity(text, kind);
    return read?.ok ? read.si : none;
  };
  return { from: si(from, Number.NEGATIVE_INFINITY), to: si(to, Number.POSITIVE_INFINITY) };
}

export const results = ['right', 'limit', 'reject'] as const;
export type Result = (typeof results)[number];

/** @param value as it was written; undefined: it is no figure of that kind */
export function judged(
  { kind, right, limit }: NonNullable<InspectionItem['measured']>,
  value: string,
): Result | undefined {
  const read = parseQuantity(value, kind);
  if (!read.ok) return undefined;
  const within = (band: Bounds): boolean => read.si >= band.from && read.si <= band.to;
  if (within(bounds(right, kind))) return 'right';
  return limit && within(bounds(limit, kind)) ? 'limit' : 'reject';
}
