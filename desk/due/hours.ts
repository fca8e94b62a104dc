/**
 * Hours of duty from records, written into an outing's crew as they will be when it is over. What somebody wrote by hand
 * stays; what came from records is written anew as a whole.
 */
import type { Hours } from '../../engine/things/duty.ts';
import { slug } from '../../papers/compile/line.ts';
import { nameIn } from '../../records/names.ts';
import type { Entry } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';
import { type Counting, hoursAt, type Turn, turns } from '../../records/turns.ts';
import { parseQuantity, printQuantity } from '../../units/index.ts';

type Json = Readonly<Record<string, unknown>>;

export interface TurnsOf {
  readonly name: string;
  readonly turns: readonly Turn[];
}

export const recordedTurns = (entries: readonly Entry[], names: readonly Named[]): readonly TurnsOf[] =>
  [...turns(entries)].map(([person, all]) => ({ name: nameIn(names, person), turns: all }));

interface WrittenMember extends Json {
  readonly name: string;
  readonly hours?: Json;
}

const listOf = <T>(json: unknown): readonly T[] => (json ?? []) as readonly T[];

/** @param paper an outing's with all parts in it */
export function withHours(paper: Json, recorded: readonly TurnsOf[]): Json {
  const before = listOf<WrittenMember>(paper['crew']);
  const known = new Set(before.map(({ name }) => slug(name)));
  const working = listOf<Json>(paper['riders'])
    .filter(({ duty }) => duty === 'driver' || duty === 'guard')
    .map(({ name }): WrittenMember => ({ name: name as string }))
    .filter(({ name }) => !known.has(slug(name)));
  const renewed = [...before, ...working].flatMap((member): WrittenMember[] => {
    const next = ofMember(member, paper, recorded);
    // Of whoever works and is recorded nowhere there is nothing to write.
    return before.includes(member) || next.hours ? [next] : [];
  });
  if (JSON.stringify(renewed) === JSON.stringify(before)) return paper;
  return { ...paper, crew: renewed };
}

function ofMember(member: WrittenMember, paper: Json, recorded: readonly TurnsOf[]): WrittenMember {
  const { hours: was, ...rest } = member;
  if (was && was['record'] === undefined) return member;
  const mine = recorded.find(({ name }) => slug(name) === slug(member.name))?.turns ?? [];
  const back = paper['back'];
  const hours = typeof back === 'string' ? hoursAt(mine, back, countingOf(paper)) : undefined;
  if (!hours) return rest;
  const driving = was?.['driving'];
  return {
    ...rest,
    hours: {
      ...written(hours),
      ...(driving === undefined ? {} : { driving }),
      record: mine[mine.length - 1].record,
    },
  };
}

/** Against whoever is tired: what was worked is rounded up, what was rested down. */
const written = ({ days, ...times }: Hours): Json => ({
  ...Object.fromEntries(
    Object.entries(times).map(([key, si]) => [
      key,
      printQuantity(si, 'time', { system: 'metric', toward: key === 'rest' ? 'down' : 'up' }),
    ]),
  ),
  ...(days === undefined ? {} : { days }),
});

function countingOf(paper: Json): Counting {
  const host = (paper['host'] ?? {}) as Readonly<Record<string, { readonly value?: unknown } | undefined>>;
  const least = parseQuantity(`${host['leastBreak']?.value ?? ''}`, 'time');
  const free = Number(host['freeDays']?.value);
  return {
    ...(least.ok ? { leastBreak: least.si } : {}),
    ...(Number.isFinite(free) && free >= 1 ? { freeDays: free } : {}),
  };
}
