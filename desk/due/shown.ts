/**
 * What is recorded, shown to the host of an outing: the certificates of its vehicles and people and of the club, as they
 * were written, put into its paper. Whether they stand on its day is reckoned from the paper like everything else.
 */
import { type DueItem, dueOn } from '../../records/due.ts';
import { inspectedOn, openDefects } from '../../records/inspections.ts';
import { nameIn } from '../../records/names.ts';
import type { Entry } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';

type Json = Readonly<Record<string, unknown>>;

/** Of what nobody can tell how long it stands, nothing is said. */
function written(
  { certificate, since, state, last, graceTo, serviceLeft }: DueItem,
  names: readonly Named[],
): Json {
  const { what, of, person } = certificate;
  const whose = of ?? (person === undefined ? undefined : nameIn(names, person));
  const ends = state === 'unknown' ? {} : { until: last, graceTo, serviceLeft };
  return {
    what,
    ...(whose === undefined ? {} : { of: whose }),
    on: since,
    ...Object.fromEntries(Object.entries(ends).filter(([, end]) => end !== undefined)),
  };
}

/** @param day of the outing: what its own date says, else today */
export function withShown(
  paper: Json,
  entries: readonly Entry[],
  names: readonly Named[],
  day: string,
): Json {
  const inspected = inspectedOn(entries, day).map((of) => ({ what: 'inspection', of, on: day, until: day }));
  const shown = [...dueOn(entries, day).map((item) => written(item, names)), ...inspected];
  // What was written into the paper by hand stays: of several the best counts.
  const byHand = (paper['shown'] ?? []) as readonly Json[];
  const fresh = shown.filter((one) => !byHand.some((other) => JSON.stringify(other) === JSON.stringify(one)));
  const next = fresh.length === 0 ? paper : { ...paper, shown: [...byHand, ...fresh] };
  return withDefects(next, entries);
}

/** What is open now takes the place of what was: one that is mended is gone. Those written by hand stay. */
function withDefects(paper: Json, entries: readonly Entry[]): Json {
  const before = (paper['defects'] ?? []) as readonly Json[];
  const open = openDefects(entries).map(({ inspection, of, item, what, rejects, since }) => ({
    of,
    what: oneLine(what),
    rejects,
    since,
    record: `${inspection.first.row.hash} ${item}`,
  }));
  const next = [...before.filter((one) => one['record'] === undefined), ...open];
  if (JSON.stringify(next) === JSON.stringify(before)) return paper;
  const { defects: _, ...rest } = paper;
  return next.length === 0 ? rest : { ...rest, defects: next };
}

/** As a paper takes it. */
const oneLine = (text: string): string => text.replace(/\s+/g, ' ').slice(0, 500);
