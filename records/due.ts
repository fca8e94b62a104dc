/** What stands, what is due and what is out: certificates by what and of whom, on a day. */
import { dayNumber } from '../papers/due/day.ts';
import { dueAfter, lastCounted, readInterval, type State, stateOn } from '../papers/due/interval.ts';
import { checkContent } from '../papers/record/check.ts';
import type { Content } from '../papers/record/fields.ts';
import { type Standing, standing } from './amended.ts';
import type { Entry } from './record.ts';
import { service, trips } from './service.ts';

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
  const used = new Map(service(trips(entries)).map(({ vehicle, days }) => [vehicle, days]));
  const groups = new Map<string, { certificate: Certificate; from: Standing }[]>();
  for (const from of standing(entries, 'certificate')) {
    const read = checkContent('certificate', from.content);
    if (!read.ok) continue;
    const key = keyOf(read.value);
    groups.set(key, [...(groups.get(key) ?? []), { certificate: read.value, from }]);
  }
  return [...groups.values()]
    .map((all) => itemOf(all, day, used))
    .sort(
      (a, b) =>
        order.indexOf(a.state) - order.indexOf(b.state) ||
        (dayNumber(a.last ?? '') ?? Number.MAX_SAFE_INTEGER) -
          (dayNumber(b.last ?? '') ?? Number.MAX_SAFE_INTEGER) ||
        (keyOf(a.certificate) < keyOf(b.certificate) ? -1 : 1),
    );
}

function itemOf(
  all: readonly { readonly certificate: Certificate; readonly from: Standing }[],
  day: string,
  used: ReadonlyMap<string, readonly string[]>,
): DueItem {
  const items = all.map(({ certificate, from }) => ({ from, ...stands(certificate, all, day, used) }));
  // The best of them counts: one that is out takes nothing from another that stands.
  const better = (a: DueItem, b: DueItem): boolean =>
    worth.indexOf(a.state) > worth.indexOf(b.state) ||
    (a.state === b.state && (a.last ?? '9999') > (b.last ?? '9999'));
  return items.reduce((a, b) => (better(b, a) ? b : a));
}

function stands(
  certificate: Certificate,
  all: readonly { readonly certificate: Certificate }[],
  day: string,
  used: ReadonlyMap<string, readonly string[]>,
): Omit<DueItem, 'from'> {
  const { on, until, interval, of } = certificate;
  const days = of === undefined ? undefined : used.get(of);
  const use = days ? { days } : {};
  const rule = interval === undefined ? undefined : readInterval(interval);
  const done = all.map((one) => one.certificate.on).filter((other) => other <= day);
  // One that came too soon after another counts for nothing.
  const counted = rule && rule.leastBetween !== undefined && on <= day ? (lastCounted(rule, done) ?? on) : on;
  const ruled = rule && { state: stateOn(rule, counted, day, use), ...dueAfter(rule, counted, day, use) };
  const said = until === undefined ? undefined : fixed(on, until, day);
  if (ruled && said) return { certificate, since: counted, ...sooner(ruled, said) };
  const one: Part = ruled ?? said ?? { state: on > day ? 'not-yet' : 'unknown' };
  return { certificate, since: counted, ...one };
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
  };
}
