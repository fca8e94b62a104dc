/** Going through a list: what a record of it says, and what is lacking before it can be one. */
import type { InspectionItem, InspectionList } from '../../papers/inspection/fields.ts';
import { judged, type Result } from '../../papers/inspection/read.ts';
import type { Content } from '../../papers/record/fields.ts';
import { canonical } from '../../records/canonical.ts';
import { sha256 } from '../../records/hash.ts';

/** What somebody says of an item. */
export interface Looked {
  /** Absent where a figure says it. */
  readonly result?: Result;
  readonly value?: string;
  readonly note?: string;
  /** Hash of a photo that is kept beside the records. */
  readonly photo?: string;
}

/** An item that is not said, or whose figure says nothing. */
export type Lacking = { readonly item: InspectionItem; readonly why: 'not-said' | 'no-figure' | 'no-note' };

const worse: readonly Result[] = ['right', 'limit', 'reject'];

/** By its figure and by what is said, the worse of both; undefined: it is not said. */
export function resultOf({ measured }: InspectionItem, { result, value }: Looked): Result | undefined {
  const byFigure = measured && value !== undefined ? judged(measured, value) : undefined;
  if (measured && byFigure === undefined) return result === 'reject' ? 'reject' : undefined;
  if (byFigure === undefined || result === undefined) return byFigure ?? result;
  return worse[Math.max(worse.indexOf(byFigure), worse.indexOf(result))];
}

/** That it is amiss is said by a band of an example list alone, whose figures are invented. */
function byInvented(
  { example }: InspectionList,
  { measured }: InspectionItem,
  { result, value }: Looked,
): boolean {
  if (!example || !measured || value === undefined) return false;
  const byFigure = judged(measured, value);
  return byFigure !== undefined && worse.indexOf(byFigure) > worse.indexOf(result ?? 'right');
}

export function lackingIn(list: InspectionList, said: Readonly<Record<string, Looked>>): Lacking[] {
  return list.items.flatMap((item): Lacking[] => {
    const looked = said[item.id] ?? {};
    const result = resultOf(item, looked);
    if (result === undefined)
      return [{ item, why: item.measured && looked.value !== undefined ? 'no-figure' : 'not-said' }];
    // Whoever mends it has to know what is amiss.
    const told = looked.note !== undefined || looked.value !== undefined;
    return result === 'right' || told ? [] : [{ item, why: 'no-note' }];
  });
}

/** @throws RangeError where something is lacking: silence is never right */
export async function inspectionContent(
  list: InspectionList,
  of: string,
  said: Readonly<Record<string, Looked>>,
): Promise<Content<'inspection'>> {
  if (lackingIn(list, said).length > 0) throw new RangeError('an inspection that is not whole');
  return {
    list: list.name,
    listHash: await sha256(canonical(list)),
    when: list.when,
    of,
    ...(list.ground === undefined ? {} : { ground: list.ground }),
    looked: list.items.map((item) => {
      const { value, note, photo } = said[item.id] ?? {};
      return {
        item: item.id,
        ask: item.ask,
        result: resultOf(item, said[item.id] ?? {}) ?? 'reject',
        ...(value === undefined ? {} : { value }),
        ...(note === undefined ? {} : { note }),
        ...(byInvented(list, item, said[item.id] ?? {}) ? { invented: true } : {}),
        ...(photo === undefined ? {} : { photo }),
      };
    }),
  };
}
