/** What stands, what is due and what is out: certificates by what and of whom, on a day. */

import { nameKey } from '../papers/compile/named.ts';
import { dayNumber, daysBetween, plusDays } from '../papers/due/day.ts';
import {
  dueAfter,
  goesByUse,
  type Interval,
  lastCounted,
  readInterval,
  type State,
  stateOn,
} from '../papers/due/interval.ts';
import type { Content } from '../papers/record/fields.ts';
import { contentOf, type Standing, standing } from './amended.ts';
import { contentText, type Entry } from './record.ts';
import { trips } from './service.ts';

export type Certificate = Content<'certificate'>;

export interface DueItem {
  readonly certificate: Certificate;
  readonly from: Standing;
  readonly state: State;
  /** Day from which it is reckoned: an earlier one, where it came too soon after that. */
  readonly since: string;
  /** When it should be done again, and the last day on which it stands; absent: by service, or nobody said. */
  readonly due?: string;
  readonly last?: string;
  readonly graceTo?: string;
  readonly serviceLeft?: number;
  /** There are so many left at least: a day of which nobody says that it stood is taken for one of service. */
  readonly atLeast?: true;
  /** Whether it was used since is not recorded here. */
  readonly useUnsaid?: true;
}

/** One for other engines, another gauge or line is another certificate. */
const keyOf = ({ what, of, person, signedFor }: Certificate): string =>
  JSON.stringify([what, of ?? null, person ?? null, signedFor ?? null]);

/** The more is left of it the better: of several, the best counts. */
const worth: readonly State[] = ['not-yet', 'out', 'unknown', 'before-use', 'grace', 'due', 'stands'];

/** Worst first, as a list shows them. */
const order: readonly State[] = ['out', 'unknown', 'before-use', 'grace', 'due', 'not-yet', 'stands'];

/** Of every thing and person the certificate that counts, as it stands on a day. */
export function dueOn(entries: readonly Entry[], day: string): DueItem[] {
  const known: Known = {
    day,
    used: usedBy(entries),
    keptFrom: keptFrom(entries),
    rules: new Map(),
  };
  const groups = new Map<string, { certificate: Certificate; from: Standing }[]>();
  for (const from of thatMayCount(standing(entries, 'certificate'), known)) {
    const certificate = contentOf(from, 'certificate');
    if (!certificate) continue;
    const key = keyOf(certificate);
    const group = groups.get(key);
    if (group) group.push({ certificate, from });
    else groups.set(key, [{ certificate, from }]);
  }
  return [...groups.values()]
    .map((all) => itemOf(all, known))
    .sort(
      (a, b) =>
        order.indexOf(a.state) - order.indexOf(b.state) ||
        (dayNumber(a.last ?? '') ?? Number.MAX_SAFE_INTEGER) -
          (dayNumber(b.last ?? '') ?? Number.MAX_SAFE_INTEGER) ||
        (keyOf(a.certificate) < keyOf(b.certificate) ? -1 : 1),
    );
}

/**
 * Those of which one may be the best. Of a thing that is done every year the last alone, where all that its certificates say of
 * their end is the same: an earlier one never stands longer. What goes by use, or may come too soon, is looked at as a whole.
 */
function thatMayCount(all: readonly Standing[], { day, rules }: Known): readonly Standing[] {
  const things = new Map<string, Map<string, Dated[]>>();
  for (const alike of alikeButForDays(all)) {
    const { what, of, person, signedFor, interval, until } = alike[0].from.content;
    // Names and intervals have no line break in them, and none is empty.
    const limits = signedFor === undefined ? '' : JSON.stringify(signedFor);
    const thing = `${what}\n${of ?? ''}\n${person ?? ''}\n${limits}`;
    const end = `${interval ?? ''}\n${until ?? ''}`;
    const ends = things.get(thing) ?? new Map<string, Dated[]>();
    things.set(thing, ends);
    const known = ends.get(end);
    if (known) for (const one of alike) known.push(one);
    else ends.set(end, alike);
  }
  const plain = ({ from }: Dated): boolean => {
    const { interval } = from.content;
    if (interval === undefined) return true;
    const rule = ruleOf(`${interval}`, rules);
    return rule !== undefined && !goesByUse(rule) && rule.leastBetween === undefined;
  };
  const counting = [...things.values()].flatMap((ends) => {
    const kinds = [...ends.values()];
    return kinds.every(([first]) => plain(first))
      ? kinds.flatMap((alike) => lastOf(alike, day))
      : kinds.flat();
  });
  return counting.sort((a, b) => a.at - b.at).map(({ from }) => from);
}

/** With the day on which it was done. */
interface Dated {
  readonly from: Standing;
  readonly on: string;
  /** Its place among all: of those that are worth the same the first counts. */
  readonly at: number;
}

/** Put together where nothing but that day is another: of thousands that say the same one is read. */
function alikeButForDays(all: readonly Standing[]): Dated[][] {
  const groups: Dated[][] = [];
  const known = new Map<string, Map<string, Dated[]>>();
  for (let at = 0; at < all.length; at++) {
    const from = all[at];
    const text = from.amendments.length === 0 ? contentText(from.first.body) : undefined;
    const day = text === undefined ? undefined : ownDay(text);
    if (text === undefined || day === undefined) {
      groups.push([{ from, on: `${from.content['on']}`, at }]);
      continue;
    }
    const on = text.slice(day, day + DAY);
    const [before, behind] = [text.slice(0, day), text.slice(day + DAY)];
    const byEnd = known.get(before) ?? new Map<string, Dated[]>();
    if (byEnd.size === 0) known.set(before, byEnd);
    const group = byEnd.get(behind);
    if (group) group.push({ from, on, at });
    else {
      const first = [{ from, on, at }];
      byEnd.set(behind, first);
      groups.push(first);
    }
  }
  return groups;
}

/** A bare quotation mark stands in no value of a canonical text: where this stands once, it is the certificate's own. */
const ON = '"on":"';
const DAY = 10;

/** Where the day of a certificate begins in its text; undefined: it is read by itself. */
function ownDay(text: string): number | undefined {
  const at = text.indexOf(ON);
  const begins = at + ON.length;
  const plain = at >= 0 && text[begins + DAY] === '"' && text.indexOf(ON, begins) < 0;
  return plain ? begins : undefined;
}

/** The last that was done by that day, of those that say what a certificate says; none by then: all. */
function lastOf(alike: readonly Dated[], day: string): readonly Dated[] {
  let best: Dated | undefined;
  const before = (a: Dated, b: Dated): boolean => a.on > b.on || (a.on === b.on && a.at < b.at);
  for (const one of alike) if (one.on <= day && (!best || before(one, best))) best = one;
  return best && contentOf(best.from, 'certificate') ? [best] : alike;
}

/** Service days of a thing; undefined: none are recorded. */
type Used = (of: string) => readonly string[] | undefined;

/** What is the same for all of a list. */
interface Known {
  readonly day: string;
  readonly used: Used;
  readonly keptFrom: KeptFrom;
  /** Intervals once read: a club has few. */
  readonly rules: Map<string, Interval | undefined>;
}

function ruleOf(interval: string, rules: Known['rules']): Interval | undefined {
  if (!rules.has(interval)) rules.set(interval, readInterval(interval));
  return rules.get(interval);
}

/** Day on which this author put by a run of a thing for the first time; what it ran before that nobody says is all here. */
type KeptFrom = (of: string, author: string) => string | undefined;

/**
 * By author, for what others recorded of a thing, as its host on a day or before it was sold, says nothing of what it ran at home: records that
 * are put together must not make what nobody kept look as if it had not been. Runs alone: who writes a certificate down does not say that runs are
 * kept as well. By the day on which it was put by: one old run that is written down later does not say that all since then are.
 */
function keptFrom(entries: readonly Entry[]): KeptFrom {
  let days: ReadonlyMap<string, string> | undefined;
  return (of, author) => {
    days ??= firstDays(entries);
    return days.get(keptKey(of, author));
  };
}

const keptKey = (of: string, author: string): string => `${author}\n${nameKey(of)}`;

function firstDays(entries: readonly Entry[]): ReadonlyMap<string, string> {
  const days = new Map<string, string>();
  for (const { departure, left } of trips(entries)) {
    const { author, stored } = departure.first.body;
    const day = stored.slice(0, 10);
    for (const of of [...left.vehicles, left.line]) {
      const key = keptKey(of, author);
      const first = days.get(key);
      if (first === undefined || day < first) days.set(key, day);
    }
  }
  return days;
}

/** Runs are gone through only where something goes by them. */
function usedBy(entries: readonly Entry[]): Used {
  let days: ReadonlyMap<string, readonly string[]> | undefined;
  return (of) => {
    days ??= daysByName(entries);
    return days.get(nameKey(of));
  };
}

/**
 * Of vehicles the days on which they ran, of a line those on which anything ran there. However a name was spelled when it left: a day that
 * is not counted would make a test stand longer.
 */
function daysByName(entries: readonly Entry[]): ReadonlyMap<string, readonly string[]> {
  const all = new Map<string, Set<string>>();
  const add = (of: string, day: string): void => {
    const key = nameKey(of);
    const days = all.get(key);
    if (days) days.add(day);
    else all.set(key, new Set([day]));
  };
  for (const { left, day } of trips(entries)) for (const of of [...left.vehicles, left.line]) add(of, day);
  return new Map([...all].map(([key, days]) => [key, [...days].sort()]));
}

function itemOf(
  all: readonly { readonly certificate: Certificate; readonly from: Standing }[],
  known: Known,
): DueItem {
  const { day } = known;
  const done = all.map(({ certificate }) => certificate.on).filter((on) => on <= day);
  const items = all.map(({ certificate, from }) => ({
    from,
    ...stands(certificate, authorOf(from), done, known),
  }));
  // The best of them counts: one that is out takes nothing from another that stands, nor one of which less is left.
  const better = (a: DueItem, b: DueItem): boolean => {
    if (a.state !== b.state) return worth.indexOf(a.state) > worth.indexOf(b.state);
    const [ends, others] = [a.last ?? '9999', b.last ?? '9999'];
    return ends > others || (ends === others && (a.serviceLeft ?? 0) > (b.serviceLeft ?? 0));
  };
  return items.reduce((a, b) => (better(b, a) ? b : a));
}

/** Whoever wrote what stands. */
const authorOf = ({ first, amendments }: Standing): string => (amendments.at(-1) ?? first).body.author;

/** @param author of the certificate @param done days on which it was done, by any of them */
function stands(
  certificate: Certificate,
  author: string,
  done: readonly string[],
  { day, used, keptFrom, rules }: Known,
): Omit<DueItem, 'from'> {
  const { on, until, interval, of, runsKeptSince } = certificate;
  const rule = interval === undefined ? undefined : ruleOf(interval, rules);
  // One that came too soon after another counts for nothing.
  const counted = rule && rule.leastBetween !== undefined && on <= day ? (lastCounted(rule, done) ?? on) : on;
  const byUse = of !== undefined && rule !== undefined && goesByUse(rule);
  // Whoever says that all runs are here says so of none as well.
  const none = runsKeptSince === undefined || runsKeptSince > day ? undefined : [];
  const days = byUse ? (used(of) ?? none) : undefined;
  const kept = byUse && rule.serviceDays !== undefined ? (runsKeptSince ?? keptFrom(of, author)) : undefined;
  const ruled = rule && byRule(rule, counted, day, { days, kept });
  const said = until === undefined ? undefined : fixed(on, until, day);
  if (ruled && said) return { certificate, since: counted, ...sooner(ruled, said) };
  const one: Part = ruled ?? said ?? { state: on > day ? 'not-yet' : 'unknown' };
  return { certificate, since: counted, ...one };
}

interface Kept {
  /** Days on which it was in service, as far as anybody recorded them; undefined: nobody did. */
  readonly days: readonly string[] | undefined;
  /** From which on its keeper records them; undefined: never. */
  readonly kept: string | undefined;
}

/** How it stands by its rule, with what is known of its use. */
function byRule(rule: Interval, counted: string, day: string, { days, kept }: Kept): Part {
  const standing = (use: readonly string[] | undefined): Part => {
    const known = use ? { days: use } : {};
    return { state: stateOn(rule, counted, day, known), ...dueAfter(rule, counted, day, known) };
  };
  const asKnown = standing(days);
  const useUnsaid = asKnown.state === 'before-use' && !days ? ({ useUnsaid: true } as const) : {};
  const all = days !== undefined && kept !== undefined && counted >= kept;
  // Too many of those that are known are too many.
  if (rule.serviceDays === undefined || all || asKnown.state === 'out' || asKnown.state === 'not-yet')
    return { ...asKnown, ...useUnsaid };
  const from = days && kept !== undefined && kept < day ? kept : day;
  const unsaid = Math.max(0, daysBetween(counted, from));
  if (unsaid < rule.serviceDays) {
    const every = Array.from({ length: unsaid }, (_, i) => plusDays(counted, i));
    const careful = standing([...every, ...(days ?? [])]);
    if (careful.state !== 'out') return { ...careful, ...(unsaid === 0 ? {} : { atLeast: true }) };
  }
  const { serviceLeft: _, ...rest } = asKnown;
  return { ...rest, state: 'unknown' };
}

const fixed = (on: string, until: string, day: string): { state: State; due: string; last: string } => ({
  state: on > day ? 'not-yet' : day > until ? 'out' : 'stands',
  due: until,
  last: until,
});

type Part = Omit<DueItem, 'from' | 'certificate' | 'since'>;

/** Both must stand. */
function sooner(a: Part, b: Part): Part {
  const [worse] = order.indexOf(a.state) <= order.indexOf(b.state) ? [a] : [b];
  const least = (x?: string, y?: string): { readonly day?: string } => {
    const day = x === undefined ? y : y === undefined ? x : x < y ? x : y;
    return day === undefined ? {} : { day };
  };
  const [due, last] = [least(a.due, b.due).day, least(a.last, b.last).day];
  return {
    state: worse.state,
    ...(due === undefined ? {} : { due }),
    ...(last === undefined ? {} : { last }),
    ...(a.serviceLeft === undefined ? {} : { serviceLeft: a.serviceLeft }),
    ...(a.atLeast ? { atLeast: a.atLeast } : {}),
    ...(a.useUnsaid ? { useUnsaid: a.useUnsaid } : {}),
  };
}
