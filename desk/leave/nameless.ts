/**
 * An outing's paper as a record keeps it: all that its answer is reckoned from, and nobody's name. Riders and groups
 * are numbered, the same name with the same number; remarks and kept tests, from which nothing is reckoned, stay out.
 */

import { slug } from '../../papers/compile/line.ts';
import { age } from '../../papers/schema/age.ts';
import { namesIn } from '../names-in.ts';

export type Json = Readonly<Record<string, unknown>>;

const apart: ReadonlySet<string> = new Set(['note', 'tests']);

/** In every paper of which it is made. */
function withoutRemarks(json: unknown): unknown {
  if (Array.isArray(json)) return json.map(withoutRemarks);
  if (typeof json !== 'object' || json === null) return json;
  const isPaper = 'heedway' in json;
  return Object.fromEntries(
    Object.entries(json)
      .filter(([key]) => !(isPaper && apart.has(key)))
      .map(([key, part]) => [key, withoutRemarks(part)]),
  );
}

/** The first is 1, and so on; one that was met before, by the same letters as the papers are read, is the same again. */
function numbers(word: string): (name: string) => string {
  const known = new Map<string, string>();
  return (name) => {
    const given = known.get(slug(name)) ?? `${word} ${known.size + 1}`;
    known.set(slug(name), given);
    return given;
  };
}

/** From here on nothing hangs on how old anybody is. */
const GROWN = 18;
const ages = age();

/** Rules of a host that ask for an age. */
const ageRules = [
  'youngestRider',
  'youngestDriver',
  'youngestGuard',
  'youngestLookout',
  'drivesAlone',
] as const;

/** Of grown people the group, not the age, whether they ride or work; where a host asks for older ones, from there on. */
function ageGroup(paper: Json): <T extends Json>(one: T) => T {
  const host = (paper['host'] ?? {}) as Readonly<Record<string, { readonly value?: unknown } | undefined>>;
  const asked = ageRules.map((rule) => ages.safeParse(host[rule]?.value));
  const from = Math.max(GROWN, ...asked.map((read) => (read.success ? read.data : 0)));
  return (one) => {
    const read = ages.safeParse(one['age']);
    return read.success && read.data > from ? { ...one, age: from } : one;
  };
}

interface WrittenRider extends Json {
  readonly name: string;
  readonly group?: string;
  readonly heldBy?: string;
}

interface WrittenShown extends Json {
  readonly of?: string;
}

interface WrittenCrew extends Json {
  readonly name: string;
  readonly looksOutAt?: string;
}

/** @param paper an outing's with all parts in it */
export function nameless(paper: Json): Json {
  const bare = withoutRemarks(paper) as Json;
  const riders = (bare['riders'] ?? []) as readonly WrittenRider[];
  const shown = (bare['shown'] ?? []) as readonly WrittenShown[];
  const [person, group] = [numbers('person'), numbers('group')];
  const grouped = ageGroup(bare);
  const numbered = riders.map(({ name, group: of, heldBy, ...rest }) => ({
    ...grouped(rest),
    name: person(name),
    ...(of === undefined ? {} : { group: group(of) }),
    ...(heldBy === undefined ? {} : { heldBy: person(heldBy) }),
  }));
  const of = namesIn(bare);
  // Whoever stands by did not work this train.
  const crew = ((bare['crew'] ?? []) as readonly WrittenCrew[]).filter(
    ({ name, looksOutAt }) => looksOutAt !== undefined || of.isAboard(name),
  );
  const looking = new Set(crew.map(({ name }) => slug(name)));
  const atWork = (name: string): boolean => of.isAboard(name) || looking.has(slug(name));
  // Of a vehicle, of the club, or of somebody aboard; another person's is no matter of this outing.
  const kept = shown.flatMap(({ by: _whose, ...one }: WrittenShown): WrittenShown[] => {
    if (one.of === undefined || of.isVehicle(one.of)) return [one];
    return atWork(one.of) ? [{ ...one, of: person(one.of) }] : [];
  });
  return {
    ...bare,
    ...(bare['riders'] === undefined ? {} : { riders: numbered }),
    ...(bare['crew'] === undefined
      ? {}
      : { crew: crew.map((one) => ({ ...grouped(one), name: person(one.name) })) }),
    ...(bare['shown'] === undefined ? {} : { shown: kept }),
  };
}
