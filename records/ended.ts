/**
 * Which records have reached the end of their time. A record goes with all that says it anew and all that closes it, so that nothing old
 * comes to life again; and nothing goes that an answer still hangs on.
 */

import { daysBetween } from '../papers/due/day.ts';
import { readInterval } from '../papers/due/interval.ts';
import { checkContent } from '../papers/record/check.ts';
import type { RemovableKind } from '../papers/record/kept-fields.ts';
import { dueOn } from './due.ts';
import { derailed, incidents, openMeasures } from './incidents.ts';
import { openDefects } from './inspections.ts';
import { dayOf, type Entry } from './record.ts';
import { type Gone, goneOf, keptTo, openerOf } from './removed.ts';
import { openRestrictions } from './restrictions.ts';
import { trips } from './service.ts';

export interface Rule {
  readonly kind: RemovableKind;
  readonly keep: string;
  readonly source: string;
  /** Hash of the record that says so. */
  readonly hash: string;
}

/** The newest rule of each kind; a kind that has none is kept. */
export function rules(entries: readonly Entry[]): ReadonlyMap<RemovableKind, Rule> {
  const found = new Map<RemovableKind, Rule>();
  for (const { body, row } of entries) {
    const read = body.kind === 'retention' ? checkContent('retention', body.content) : undefined;
    if (read?.ok) found.set(read.value.kind, { ...read.value, hash: row.hash });
  }
  return found;
}

/** What each closes or says anew: fields of contents that name another record, and `amends`. */
const named = ({ body: { kind, content, amends } }: Entry): string | undefined => {
  if (amends !== undefined) return amends;
  const field = (
    {
      arrival: 'departure',
      mended: 'inspection',
      measure: 'incident',
      measured: 'measure',
      lifted: 'restriction',
    } as Record<string, string>
  )[kind];
  return field === undefined ? undefined : `${content[field]}`;
};

/** Records that go together, by the hash of the one that the others follow. */
function units(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  const byHash = new Map(entries.map((entry) => [entry.row.hash, entry]));
  const rootOf = (entry: Entry): Entry => {
    let at = entry;
    for (let next = named(at); next !== undefined; next = named(at)) {
      const before = byHash.get(next);
      if (!before) return at;
      at = before;
    }
    return at;
  };
  const found = new Map<string, Entry[]>();
  for (const entry of entries) {
    const { hash } = rootOf(entry).row;
    const list = found.get(hash);
    if (list) list.push(entry);
    else found.set(hash, [entry]);
  }
  return found;
}

/** Of so many days turns of duty are counted: no limit looks farther back. */
const TURNS_COUNTED = 62;

/** Hashes of records that something still hangs on, whatever their age. */
function needed(entries: readonly Entry[], today: string): ReadonlySet<string> {
  const limits = openRestrictions(entries);
  const happened = incidents(entries);
  const ran = trips(entries);
  const due = dueOn(entries, today).filter(({ state }) => state !== 'out');
  const byService = due.filter(({ certificate: { interval } }) =>
    interval === undefined ? false : readInterval(interval)?.serviceDays !== undefined,
  );
  const counted = ran.filter(({ left, day }) =>
    byService.some(
      ({ certificate: { of }, since }) => of !== undefined && left.vehicles.includes(of) && day >= since,
    ),
  );
  const spaced = new Set(
    due
      .filter(
        ({ certificate: { interval } }) =>
          interval !== undefined && readInterval(interval)?.leastBetween !== undefined,
      )
      .map(({ certificate }) => keyOf(certificate)),
  );
  return new Set([
    ...openDefects(entries).map(({ inspection }) => inspection.first.row.hash),
    ...limits.flatMap(({ from, said }) => [
      from.first.row.hash,
      ...(said.because === undefined ? [] : [said.because]),
    ]),
    ...derailed(entries).map(({ incident }) => incident.from.first.row.hash),
    ...openMeasures(happened).map(({ incident }) => incident.from.first.row.hash),
    ...ran.filter(({ arrival }) => !arrival).map(({ departure }) => departure.first.row.hash),
    // Days of service are counted from departures: with fewer of them a test would seem to stand longer.
    ...counted.map(({ departure }) => departure.first.row.hash),
    ...due.map(({ from }) => from.first.row.hash),
    // What came too soon after another counts for nothing, as long as that other is known.
    ...entries
      .filter(({ body: { kind, content } }) => kind === 'certificate' && spaced.has(keyOf(content)))
      .map(({ row }) => row.hash),
    // Hours of a week or a month, and days in a row, are counted from turns of duty.
    ...entries
      .filter(({ body }) => body.kind === 'turn' && daysBetween(dayOf(body), today) <= TURNS_COUNTED)
      .map(({ row }) => row.hash),
    // The crew, riders and rail of an incident stand in its departure.
    ...happened.flatMap(({ said: { departure } }) => departure ?? []),
  ]);
}

const keyOf = ({
  what,
  of,
  person,
}: {
  readonly what?: unknown;
  readonly of?: unknown;
  readonly person?: unknown;
}): string => JSON.stringify([what, of ?? null, person ?? null]);

/** What may be removed today; of each as much as stays. */
export function ended(entries: readonly Entry[], today: string): Gone[] {
  const now = rules(entries);
  const open = needed(entries, today);
  return [...units(entries).values()].flatMap((unit) => {
    const kind = openerOf[unit[0].body.kind];
    const rule = kind === undefined ? undefined : now.get(kind);
    if (!rule || unit.some(({ row }) => open.has(row.hash))) return [];
    const day =
      unit
        .map(({ body }) => dayOf(body))
        .sort()
        .at(-1) ?? today;
    const last = keptTo(rule.keep, day);
    return last !== undefined && last < today ? unit.map((entry) => goneOf(entry, day, rule.hash)) : [];
  });
}
