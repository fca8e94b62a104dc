/**
 * Hours of duty from records, written into an outing's crew as they will be when it is over. What somebody wrote by hand
 * stays; what came from records is written anew as a whole.
 */
import type { Hours } from '../../engine/things/duty.ts';
import { slug } from '../../papers/compile/line.ts';
import { type Drive, drivenIn, drives } from '../../records/driving.ts';
import { nameIn } from '../../records/names.ts';
import type { Entry } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';
import { type Counting, hoursAt, type Turn, turns } from '../../records/turns.ts';
import { parseQuantity, printQuantity } from '../../units/index.ts';

type Json = Readonly<Record<string, unknown>>;

export interface TurnsOf {
  readonly name: string;
  readonly turns: readonly Turn[];
  readonly drives?: readonly Drive[];
}

/** Of each by name: the same person has another reference on every device. */
export function recordedTurns(entries: readonly Entry[], names: readonly Named[]): readonly TurnsOf[] {
  const called = new Map<string, string>();
  const same = (person: string): string => {
    const name = nameIn(names, person);
    const key = slug(name);
    if (!called.has(key)) called.set(key, name);
    return key;
  };
  const all = turns(entries, same);
  const drove = all.size === 0 ? new Map<string, readonly Drive[]>() : drives(entries, same);
  return [...all].map(([key, mine]) => {
    return { name: called.get(key) ?? key, turns: mine, drives: drove.get(key) ?? [] };
  });
}

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
  const of = recorded.find(({ name }) => slug(name) === slug(member.name));
  const mine = of?.turns ?? [];
  const [leaves, back] = [paper['leaves'], paper['back']];
  const hours = typeof back === 'string' ? hoursAt(mine, back, countingOf(paper)) : undefined;
  if (!hours) return rest;
  const { on, offset, record } = mine[mine.length - 1];
  const at = (time: unknown): number => Date.parse(`${time}:00${offset}`);
  const byHand = `${was?.['record']}`.endsWith(DRIVEN) ? undefined : was?.['driving'];
  const driving = byHand === undefined ? drivenIn(of?.drives ?? [], on, at(leaves), at(back)) : undefined;
  return {
    ...rest,
    hours: {
      ...written({ ...hours, ...(driving === undefined ? {} : { driving }) }),
      ...(byHand === undefined ? {} : { driving: byHand }),
      record: driving === undefined ? record : `${record}${DRIVEN}`,
    },
  };
}

/** Behind the record of the turn, where time at the handles was not written by hand. */
const DRIVEN = ' and departures';

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
