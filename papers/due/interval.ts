/**
 * How long something stands, as rules are written: "annually, not to exceed 14 months", "31 service days", "736 days",
 * "3 years, end of month", "weekly, at least 3 days between, or before use if used less than weekly", "1 year, 30 days of
 * grace". Read into a rule and said back; what it means on a day is reckoned here and nowhere else.
 */
import { daysBetween, endOfMonth, plusDays, plusMonths } from './day.ts';

export interface Span {
  readonly count: number;
  readonly of: 'days' | 'months';
}

export interface Interval {
  /** By the calendar; absent: by service alone. */
  readonly every?: Span;
  /** Longest that may lie between, where it is longer than what is usual. */
  readonly most?: Span;
  /** Days on which it was in service. */
  readonly serviceDays?: number;
  /** Fewer days than this after the one before, it counts for nothing. */
  readonly leastBetween?: number;
  /** What is used less often than this many days may wait until just before it is used. */
  readonly beforeUse?: number;
  readonly endOfMonth?: true;
  /** Days after the last one on which it still stands, with a warning. */
  readonly grace?: number;
}

const named: Readonly<Record<string, Span>> = {
  daily: { count: 1, of: 'days' },
  weekly: { count: 7, of: 'days' },
  monthly: { count: 1, of: 'months' },
  quarterly: { count: 3, of: 'months' },
  annually: { count: 12, of: 'months' },
  yearly: { count: 12, of: 'months' },
};

const units: Readonly<Record<string, Span>> = {
  day: { count: 1, of: 'days' },
  week: { count: 7, of: 'days' },
  month: { count: 1, of: 'months' },
  year: { count: 12, of: 'months' },
};

export const EXPECTED =
  'an interval such as "annually, not to exceed 14 months", "31 service days", "736 days", "3 years, end of month", "weekly, or before use if used less than weekly" or "1 year, 30 days of grace"';

/** Longest of any interval: beyond it nobody means it. */
const MOST_COUNT = 40_000;

function span(text: string): Span | undefined {
  const word = named[text];
  if (word) return word;
  const [, digits, unit] = /^(\d{1,3}(?:,\d{3})+|\d{1,5}) (day|week|month|year)s?$/.exec(text) ?? [];
  if (digits === undefined || unit === undefined) return undefined;
  const count = Number(digits.replaceAll(',', '')) * units[unit].count;
  return count > 0 && count <= MOST_COUNT ? { count, of: units[unit].of } : undefined;
}

type Part = Partial<Interval>;

/** Before use, if used less often than the rule's own span: mere *or before use*. */
const AS_OFTEN = 0;

const inDays = ({ count, of }: Span): number => (of === 'days' ? count : 31 * count);

const whole = (text: string | undefined): number | undefined => {
  const count = Number(text?.replaceAll(',', ''));
  return Number.isInteger(count) && count > 0 && count <= MOST_COUNT ? count : undefined;
};

/** One part of a rule, between commas. */
function partOf(text: string): Part | undefined {
  const plain = span(text.replace(/^every /, ''));
  if (plain) return { every: plain };
  const most = span(/^not (?:to exceed|more than) (.*)$/.exec(text)?.[1] ?? '');
  if (most) return { most };
  const service = whole(/^([\d,]+) service days?$/.exec(text)?.[1]);
  if (service !== undefined) return { serviceDays: service };
  const between = whole(/^at least (\d+) days? between$/.exec(text)?.[1]);
  if (between !== undefined) return { leastBetween: between };
  if (/^(?:or )?before use$/.test(text)) return { beforeUse: AS_OFTEN };
  const used = named[/^(?:or )?before use if used less than (daily|weekly|monthly)$/.exec(text)?.[1] ?? ''];
  if (used) return { beforeUse: inDays(used) };
  if (/^(?:to the )?end of (?:the )?month$/.test(text)) return { endOfMonth: true };
  const grace = whole(/^(\d+) days? of grace$/.exec(text)?.[1]);
  return grace === undefined ? undefined : { grace };
}

/** Undefined: it is no rule that can be followed. */
export function readInterval(text: string): Interval | undefined {
  // Not the comma of 1,472.
  const parts = text
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .split(/,(?!\d{3}\b) ?/);
  let rule: Interval = {};
  for (const part of parts) {
    const read = partOf(part);
    // Said twice it is no rule.
    if (!read || Object.keys(read).some((key) => key in rule)) return undefined;
    rule = { ...rule, ...read };
  }
  const soundly = rule.every !== undefined || rule.serviceDays !== undefined;
  const calendar = rule.most !== undefined || rule.endOfMonth || rule.beforeUse !== undefined;
  if (!soundly || (calendar && rule.every === undefined)) return undefined;
  return rule.beforeUse === AS_OFTEN && rule.every ? { ...rule, beforeUse: inDays(rule.every) } : rule;
}

const plus = (day: string, { count, of }: Span): string =>
  of === 'days' ? plusDays(day, count) : plusMonths(day, count);

/** Whether the days of its use matter. */
export const goesByUse = ({ serviceDays, beforeUse }: Interval): boolean =>
  serviceDays !== undefined || beforeUse !== undefined;

/** What is known of the thing's use. */
export interface Use {
  /** Days on which it was in service; undefined: nobody keeps them. */
  readonly days?: readonly string[];
}

export interface Due {
  /** When it should be done again; absent: by service alone. */
  readonly due?: string;
  /** Last day on which it stands, grace not counted; absent: by service alone. */
  readonly last?: string;
  /** With grace. */
  readonly graceTo?: string;
  /** Service days that are left, that of the day asked about among them; absent: not by service, or not known. */
  readonly serviceLeft?: number;
}

/** @param on day on which it was done last @param day asked about */
export function dueAfter(rule: Interval, on: string, day: string, use: Use): Due {
  const { every, most, serviceDays, endOfMonth: toEnd, grace } = rule;
  const rounded = (of: string): string => (toEnd ? endOfMonth(of) : of);
  const due = every && rounded(plus(on, every));
  const last = most ? rounded(plus(on, most)) : due;
  // The day on which it was done counts too: it may have run afterwards.
  const gone =
    serviceDays === undefined
      ? undefined
      : use.days && new Set(use.days.filter((d) => d >= on && d < day)).size;
  return {
    ...(due === undefined ? {} : { due }),
    ...(last === undefined ? {} : { last }),
    ...(last === undefined || grace === undefined ? {} : { graceTo: plusDays(last, grace) }),
    ...(serviceDays === undefined || gone === undefined
      ? {}
      : { serviceLeft: Math.max(0, serviceDays - gone) }),
  };
}

/** `before-use`: nobody says that it was in use, and it is to be done before it is. `unknown`: its service days are not kept. */
export type State = 'stands' | 'due' | 'grace' | 'before-use' | 'out' | 'unknown' | 'not-yet';

/** How it stands on a day. */
export function stateOn(rule: Interval, on: string, day: string, use: Use): State {
  if (on > day) return 'not-yet';
  const { due, last, graceTo, serviceLeft } = dueAfter(rule, on, day, use);
  if (last !== undefined && day > last) {
    if (graceTo !== undefined && day <= graceTo) return serviceLeft === 0 ? 'out' : 'grace';
    return rule.beforeUse !== undefined && restedFor(rule.beforeUse, day, use) ? 'before-use' : 'out';
  }
  if (rule.serviceDays !== undefined && serviceLeft === undefined) return 'unknown';
  if (serviceLeft === 0) return 'out';
  return due !== undefined && day > due ? 'due' : 'stands';
}

/** Not used for longer than that, as far as anybody says: either way it is to be done before it is used. */
const restedFor = (days: number, day: string, { days: used }: Use): boolean =>
  !used?.some((d) => d < day && daysBetween(d, day) <= days);

/** Of several times that it was done, the day of the last that counts: one too soon after another that counts does not. */
export function lastCounted({ leastBetween }: Interval, done: readonly string[]): string | undefined {
  let counted: string | undefined;
  for (const on of [...done].sort())
    if (counted === undefined || leastBetween === undefined || daysBetween(counted, on) > leastBetween)
      counted = on;
  return counted;
}
