/** Inspections: what was found amiss and is not mended, and which were gone through on a day. */
import type { GroundKind } from '../engine/things/in-date.ts';
import type { Content } from '../papers/record/fields.ts';
import { contentOf, type Standing, standing } from './amended.ts';
import { dayOf, type Entry } from './record.ts';

export interface OpenDefect {
  readonly inspection: Standing;
  readonly of: string;
  /** Absent: of a vehicle or a line. */
  readonly ground?: GroundKind;
  readonly item: string;
  readonly what: string;
  readonly rejects: boolean;
  /** By a figure of an example list, which is nobody's limit. */
  readonly invented?: true;
  /** Day on which it was found. */
  readonly since: string;
  /** Hash of a photo of it. */
  readonly photo?: string;
}

type Inspection = Content<'inspection'>;

const inspections = (entries: readonly Entry[]): { readonly from: Standing; readonly said: Inspection }[] =>
  standing(entries, 'inspection').flatMap((from) => {
    const said = contentOf(from, 'inspection');
    return said ? [{ from, said }] : [];
  });

const keyOf = (hash: string, item: string): string => `${hash} ${item}`;

/** A later inspection in which it is right closes nothing: only a record that says what was done does. */
export function openDefects(entries: readonly Entry[]): OpenDefect[] {
  const mended = new Set(
    standing(entries, 'mended').flatMap((one) => {
      const said = contentOf(one, 'mended');
      return said ? [keyOf(said.inspection, said.item)] : [];
    }),
  );
  return inspections(entries).flatMap(({ from, said }) => {
    const { hash } = from.first.row;
    return said.looked
      .filter(({ item, result }) => result !== 'right' && !mended.has(keyOf(hash, item)))
      .map(({ item, ask, note, value, result, invented, photo }) => ({
        inspection: from,
        of: said.of,
        ...(said.ground === undefined ? {} : { ground: said.ground }),
        item,
        what: `${note ?? ask}${value === undefined ? '' : ` (${value})`}`,
        rejects: result === 'reject',
        ...(invented ? { invented } : {}),
        since: dayOf(from.first.body),
        ...(photo === undefined ? {} : { photo }),
      }));
  });
}

export interface Inspected {
  readonly of: string;
  /** Hash of the record. */
  readonly record: string;
  /** Who wrote what stands: whoever said it anew, if anybody did. Absent: nothing says whose that hand is. */
  readonly person?: string;
}

/** Daily and before use, gone through on that day. */
export function inspectedOn(entries: readonly Entry[], day: string): readonly Inspected[] {
  const persons = personsOf(entries);
  return inspections(entries)
    .filter(({ from, said }) => dayOf(from.first.body) === day && ['daily', 'before-use'].includes(said.when))
    .map(({ from: { first, amendments }, said }) => {
      const person = persons.get((amendments.at(-1) ?? first).body.author);
      return { of: said.of, record: first.row.hash, ...(person === undefined ? {} : { person }) };
    });
}

/** By author, whom each says that he or she is. */
const personsOf = (entries: readonly Entry[]): ReadonlyMap<string, string> =>
  new Map(
    standing(entries, 'author').flatMap((one) => {
      const said = contentOf(one, 'author');
      return said ? [[one.first.body.author, said.person] as const] : [];
    }),
  );
