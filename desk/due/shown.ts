/**
 * What is recorded, shown to the host of an outing: the certificates of its vehicles and people and of the club, as they
 * were written, put into its paper. Whether they stand on its day is reckoned from the paper like everything else.
 */
import { type DueItem, dueOn } from '../../records/due.ts';
import { type Derailed, derailed } from '../../records/incidents.ts';
import { type Inspected, inspectedOn, type OpenDefect, openDefects } from '../../records/inspections.ts';
import { nameIn } from '../../records/names.ts';
import type { Entry } from '../../records/record.ts';
import { type OpenRestriction, openRestrictions } from '../../records/restrictions.ts';
import type { Named } from '../../records/store.ts';
import { offTheRails } from '../../words/records/incident.ts';
import { namesIn } from '../names-in.ts';
import { recordedTurns, type TurnsOf, withHours } from './hours.ts';

type Json = Readonly<Record<string, unknown>>;

/** Of what nobody can tell how long it stands, nothing is said. */
function certificate(
  { certificate: { what, of, person, by }, from, since, state, last, graceTo, serviceLeft }: DueItem,
  names: readonly Named[],
): Json {
  const whose = of ?? (person === undefined ? undefined : nameIn(names, person));
  const signedFor = from.content['signedFor'];
  const ends = state === 'unknown' ? {} : { until: last, graceTo, serviceLeft };
  return {
    what,
    ...(whose === undefined ? {} : { of: whose }),
    on: since,
    ...Object.fromEntries(Object.entries(ends).filter(([, end]) => end !== undefined)),
    ...(signedFor === undefined ? {} : { signedFor }),
    by,
    record: from.first.row.hash,
  };
}

/** By whoever went through it, where that name is known here: a name that was struck out is nobody's. */
function inspection({ of, record, person }: Inspected, names: readonly Named[], day: string): Json {
  const by = names.find((one) => one.person === person)?.name;
  return { what: 'inspection', of, on: day, until: day, ...(by ? { by } : {}), record };
}

const defect = ({
  inspection: { first },
  of,
  ground,
  item,
  what,
  rejects,
  invented,
  since,
}: OpenDefect): Json => ({
  of,
  ...(ground === undefined ? {} : { ground }),
  what: what.replace(/\s+/g, ' ').slice(0, MOST_LETTERS),
  rejects,
  ...(invented ? { invented } : {}),
  since,
  record: `${first.row.hash} ${item}`,
});

const notGoneThrough = (one: Derailed): Json => ({
  of: one.of,
  what: offTheRails(one),
  rejects: true,
  since: one.since,
  record: one.incident.from.first.row.hash,
});

/** As it was written: the paper reads its figures itself. */
function restriction({ from: { first, content }, since }: OpenRestriction): Json {
  const { line, because: _, ...said } = content;
  return { of: line, ...said, since, record: first.row.hash };
}

/** As a paper takes it. */
const MOST_LETTERS = 500;

/**
 * What is recorded now takes the place of what these records said before: one that was said anew stands as it was said
 * last, and what is mended is gone. What was written by hand stays, and what another device's records say: these know
 * nothing of its being lifted.
 */
function renewed(
  paper: Json,
  key: 'shown' | 'defects' | 'restrictions',
  of: Recorded,
  now: readonly Json[],
): Json {
  const before = (paper[key] ?? []) as readonly Json[];
  const ours = ({ record }: Json): boolean =>
    typeof record === 'string' && of.known.has(record.split(' ')[0]);
  const next = [...before.filter((one) => !ours(one)), ...now];
  if (JSON.stringify(next) === JSON.stringify(before)) return paper;
  const { [key]: _, ...rest } = paper;
  return next.length === 0 ? rest : { ...rest, [key]: next };
}

/** What is recorded of anybody and anything, as it stands on a day; made once for any number of papers. */
export interface Recorded {
  readonly shown: readonly Json[];
  readonly defects: readonly Json[];
  readonly turns: readonly TurnsOf[];
  readonly restrictions: readonly Json[];
  /** Every record here by its hash. */
  readonly known: ReadonlySet<string>;
}

/** @param day of the outing: what its own date says, else today */
export const recorded = (entries: readonly Entry[], names: readonly Named[], day: string): Recorded => ({
  shown: [
    ...dueOn(entries, day).map((item) => certificate(item, names)),
    ...inspectedOn(entries, day).map((one) => inspection(one, names, day)),
  ],
  defects: [...openDefects(entries).map(defect), ...derailed(entries).map(notGoneThrough)],
  turns: recordedTurns(entries, names),
  restrictions: openRestrictions(entries).map(restriction),
  known: new Set(entries.map(({ row }) => row.hash)),
});

/** Who gave it goes along only to a host that asks; of one whose paper is not read yet nobody can tell. */
function asTold(shown: readonly Json[], { host }: Json): readonly Json[] {
  const inDate = (host as Json | undefined)?.['inDate'];
  const asks = Array.isArray(inDate) && inDate.some((rule: Json) => rule['by'] !== undefined);
  return asks || typeof host === 'string' ? shown : shown.map(({ by: _, ...rest }) => rest);
}

/** What is of no vehicle or person of this outing, nor of its line or the club, is no matter of it. */
export function withShown(written: Json, all: Recorded): Json {
  const { shown, defects, turns, restrictions } = all;
  const paper = withHours(written, turns);
  const { isVehicle, isLine, isAboard, isCrew } = namesIn(paper);
  const here = ({ of }: Json): boolean =>
    of === undefined || [isVehicle, isLine, isAboard, isCrew].some((is) => is(of as string));
  const first = renewed(
    renewed(paper, 'shown', all, asTold(shown.filter(here), paper)),
    'defects',
    all,
    // What is on the ground is of no train, and of each.
    defects.filter((one) => one['ground'] !== undefined || here(one)),
  );
  return renewed(first, 'restrictions', all, restrictions.filter(here));
}
