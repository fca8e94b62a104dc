/**
 * Turns of duty as people signed on and off, and the hours that come of them at a moment. What records do not cover is
 * absent, never none: a week of which only two days are recorded says nothing of the week.
 */
import type { Hours } from '../engine/things/duty.ts';
import { dayNumber } from '../papers/due/day.ts';
import { checkContent } from '../papers/record/check.ts';
import type { Content } from '../papers/record/fields.ts';
import { standing } from './amended.ts';
import type { Entry } from './record.ts';

/** Of one person; times in ms, days as they were there. */
export interface Turn {
  readonly on: number;
  readonly day: string;
  /** Absent: not signed off. */
  readonly off?: number;
  /** Free since, work elsewhere counted, as was said when signing on. */
  readonly freeSince?: number;
  readonly breaks: readonly { readonly from: number; readonly to?: number }[];
  /** Offset from UTC of the place, as it stands behind a time. */
  readonly offset: string;
  /** The record of signing on. */
  readonly record: string;
}

interface Said {
  readonly at: number;
  readonly text: string;
  readonly content: Content<'turn'>;
  readonly record: string;
}

/**
 * Turns of everybody, by reference to the person, oldest first.
 * @param same what two references to one person have in common: each device salts a name anew
 */
export function turns(
  entries: readonly Entry[],
  same: (person: string) => string = (person) => person,
): ReadonlyMap<string, readonly Turn[]> {
  const said = standing(entries, 'turn').flatMap(({ first, content }): Said[] => {
    const read = checkContent('turn', content);
    const { said: text } = first.body;
    return read.ok ? [{ at: Date.parse(text), text, content: read.value, record: first.row.hash }] : [];
  });
  const of = new Map<string, Turn[]>();
  for (const one of [...said].sort((a, b) => a.at - b.at)) {
    const who = same(one.content.person);
    const mine = of.get(who) ?? [];
    of.set(who, mine);
    const next = after(mine[mine.length - 1], one);
    if (one.content.what === 'on') mine.push(next as Turn);
    else if (next) mine[mine.length - 1] = next;
  }
  return of;
}

/** The turn that is made of the last one by what was said; undefined: off or a break of nobody who is on. */
function after(last: Turn | undefined, { at, text, content, record }: Said): Turn | undefined {
  const { what, freeSince } = content;
  const offset = text.slice(-6);
  if (what === 'on') {
    const free = freeSince === undefined ? {} : { freeSince: Date.parse(`${freeSince}:00${offset}`) };
    return { on: at, day: text.slice(0, 10), breaks: [], offset, record, ...free };
  }
  if (!last || last.off !== undefined) return undefined;
  if (what === 'off') return { ...last, off: at };
  const begun = last.breaks[last.breaks.length - 1];
  if (what === 'break') return { ...last, breaks: [...last.breaks, { from: at }] };
  if (!begun || begun.to !== undefined) return undefined;
  return { ...last, breaks: [...last.breaks.slice(0, -1), { from: begun.from, to: at }] };
}

/** What a host counts by. */
export interface Counting {
  /** s; absent: any break is one. */
  readonly leastBreak?: number;
  /** Free days that end a row of days; absent: one. */
  readonly freeDays?: number;
}

const [HOUR, DAY] = [3_600_000, 86_400_000];

/**
 * @param all turns of one person, oldest first
 * @param back local time at which the outing is over, as 2026-05-31T16:30
 * @returns undefined: not signed on then
 */
export function hoursAt(all: readonly Turn[], back: string, counting: Counting = {}): Hours | undefined {
  const now = all[all.length - 1];
  if (!now || now.off !== undefined) return undefined;
  const end = Date.parse(`${back}:00${now.offset}`);
  if (!(end > now.on)) return undefined;
  const before = all.slice(0, -1);
  return dropAbsent({
    onDuty: (end - now.on) / 1000,
    sinceBreak: (end - lastBreak(now, end, counting)) / 1000,
    ...restBefore(now, before[before.length - 1]),
    inDay: within(all, end - DAY, end),
    inWeek: within(all, end - 7 * DAY, end),
    days: daysInARow(all, back.slice(0, 10), counting),
  });
}

const dropAbsent = (hours: { readonly [K in keyof Hours]: Hours[K] | undefined }): Hours =>
  Object.fromEntries(Object.entries(hours).filter(([, value]) => value !== undefined));

/** One that is not over yet is none; a shorter one neither. */
function lastBreak({ on, breaks }: Turn, end: number, { leastBreak = 0 }: Counting): number {
  const ends = breaks.flatMap(({ from, to }) =>
    to !== undefined && to <= end && to - from >= leastBreak * 1000 ? [to] : [],
  );
  return Math.max(on, ...ends);
}

/** From whichever is later: the end of the last turn, or since when he or she said to be free. */
function restBefore({ on, freeSince }: Turn, last: Turn | undefined): Pick<Hours, 'rest' | 'turnBefore'> {
  const ends = [freeSince, last?.off].filter((end) => end !== undefined);
  const worked = freeSince !== undefined && last?.off !== undefined && freeSince > last.off;
  return {
    ...(ends.length === 0 ? {} : { rest: Math.max(0, on - Math.max(...ends)) / 1000 }),
    ...(last?.off === undefined || worked ? {} : { turnBefore: (last.off - last.on) / 1000 }),
  };
}

/** On duty between two moments; unknown where records begin later, a turn was not signed off, or there was other work. */
function within(all: readonly Turn[], from: number, to: number): number | undefined {
  const [first] = all;
  if ((first.freeSince ?? first.on) > from) return undefined;
  let sum = 0;
  for (const [i, { on, off, freeSince }] of all.entries()) {
    const [last, before] = [i === all.length - 1, all[i - 1]];
    const elsewhere = freeSince !== undefined && before?.off !== undefined && freeSince > before.off;
    if (elsewhere && freeSince > from) return undefined;
    if (!last && off === undefined && all[i + 1].on > from) return undefined;
    sum += Math.max(0, Math.min(last ? to : (off ?? on), to) - Math.max(on, from));
  }
  return sum / 1000;
}

/** Calendar days from the first of the row; unknown where records begin within it. */
function daysInARow(all: readonly Turn[], today: string, { freeDays = 1 }: Counting): number | undefined {
  const end = dayNumber(today);
  if (end === undefined) return undefined;
  const days = [...new Set(all.map(({ day }) => dayNumber(day) ?? end))].sort((a, b) => b - a);
  let first = end;
  for (const day of days) {
    if (first - day - 1 >= freeDays) return end - first + 1;
    first = Math.min(first, day);
  }
  // Nobody worked before that, as far as was said when first signing on.
  const { freeSince, on } = all[0];
  return freeSince !== undefined && on - freeSince >= freeDays * DAY + 24 * HOUR
    ? end - first + 1
    : undefined;
}

/** Why it cannot be said now, in words; undefined: it can. @param at ms */
export function refused(
  what: Content<'turn'>['what'],
  mine: readonly Turn[],
  at: number,
): string | undefined {
  const last = mine[mine.length - 1];
  const on = last !== undefined && last.off === undefined;
  const begun = last?.breaks[last.breaks.length - 1];
  const resting = on && begun !== undefined && begun.to === undefined;
  const newest = last && Math.max(last.on, last.off ?? 0, begun?.to ?? begun?.from ?? 0);
  if (newest !== undefined && at < newest)
    return 'found a time before what was said last; expected a later one';
  if (what === 'on') return on ? 'found signed on already; expected off first' : undefined;
  if (!on) return 'found not signed on; expected on first';
  if (what === 'break') return resting ? 'found a break that is not over; expected back first' : undefined;
  return what === 'back' && !resting ? 'found no break; expected one first' : undefined;
}
