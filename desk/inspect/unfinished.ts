/**
 * A list that was begun and not recorded: kept apart from the records, it is no inspection; but what is rejected on it keeps its train
 * from leaving. What was right on another day is not right today; what was amiss is not forgotten by waiting.
 */

import { sameName } from '../../papers/compile/named.ts';
import type { InspectionItem, InspectionList } from '../../papers/inspection/fields.ts';
import { canonical } from '../../records/canonical.ts';
import { type Looked, lackingIn, resultOf } from './inspection.ts';

export type Said = Readonly<Record<string, Looked>>;

export interface Unfinished {
  readonly id: string;
  /** As it was asked: the host may have another by now. */
  readonly list: InspectionList;
  readonly of: string;
  readonly said: Said;
  /** Local time at which the first of it was said. */
  readonly begun: string;
}

/** What is gone through for a day, or for one use, says nothing of another day. */
const OF_A_DAY: readonly InspectionList['when'][] = ['daily', 'before-use'];

/** Whether what was right when it was begun may still be said to be so. */
export const isOfToday = ({ list, begun }: Unfinished, today: string): boolean =>
  !OF_A_DAY.includes(list.when) || begun.slice(0, 10) === today;

/**
 * What of it still stands. @param list as it is asked now: of an item that is asked otherwise nothing was said
 * @param today a day, as 2026-05-31
 */
export function stillSaid(list: InspectionList, unfinished: Unfinished, today: string): Said {
  const whole = isOfToday(unfinished, today);
  const before = new Map(unfinished.list.items.map((item) => [item.id, item]));
  return Object.fromEntries(
    list.items.flatMap((item) => {
      const looked = unfinished.said[item.id];
      const was = before.get(item.id);
      if (!looked || !was || canonical(was) !== canonical(item)) return [];
      return whole || isAmiss(item, looked) ? [[item.id, looked]] : [];
    }),
  );
}

function isAmiss(item: InspectionItem, looked: Looked): boolean {
  const result = resultOf(item, looked);
  return (
    looked.note !== undefined || looked.photo !== undefined || (result !== undefined && result !== 'right')
  );
}

export interface Progress {
  readonly said: number;
  readonly of: number;
  /** What is rejected so far: in no record yet, but who leaves is told of it (`rejectedOf`). */
  readonly rejected: number;
}

export function progressOf(list: InspectionList, typed: Said): Progress {
  const said = asSaid(typed);
  return {
    said: list.items.length - lackingIn(list, said).length,
    of: list.items.length,
    rejected: list.items.filter((item) => resultOf(item, said[item.id] ?? {}) === 'reject').length,
  };
}

/**
 * Lists on which something of these is rejected and that nobody recorded: whoever saw it has not said it where it counts, and the train
 * waits for that. One that names nothing yet may be of any of them.
 *
 * @param things names of vehicles and line
 */
export const rejectedOf = (
  all: readonly Unfinished[],
  things: readonly string[],
  today: string,
): { readonly list: string; readonly of: string }[] =>
  all.flatMap((one) => {
    const of = one.of.trim();
    const concerns = of === '' || things.some((name) => sameName(name, of));
    const { rejected } = progressOf(one.list, stillSaid(one.list, one, today));
    return concerns && rejected > 0 ? [{ list: one.list.name, of }] : [];
  });

/** As it is recorded: blanks at the ends of what was typed are no part of it, and blanks alone are nothing. */
export const asSaid = (said: Said): Said =>
  Object.fromEntries(
    Object.entries(said).map(([item, { value, note, ...rest }]) => [
      item,
      { ...rest, ...typed('value', value), ...typed('note', note) },
    ]),
  );

const typed = (key: 'value' | 'note', text: string | undefined): Looked => {
  const bare = text?.trim() ?? '';
  return bare === '' ? {} : { [key]: bare };
};

/** Of what a browser kept; undefined: it is none, and nothing can be made of it. @param list read anew */
export function unfinishedIn(json: unknown, list: InspectionList): Unfinished | undefined {
  const { id, of, begun, said } = (json ?? {}) as Readonly<Record<string, unknown>>;
  const sound =
    typeof id === 'string' &&
    typeof of === 'string' &&
    typeof begun === 'string' &&
    /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(begun) &&
    typeof said === 'object' &&
    said !== null &&
    Object.values(said).every(isLooked);
  return sound ? { id, list, of, begun, said: said as Said } : undefined;
}

const KEYS = ['result', 'value', 'note', 'photo'];
const isLooked = (looked: unknown): boolean =>
  typeof looked === 'object' &&
  looked !== null &&
  Object.entries(looked).every(
    ([key, value]) =>
      KEYS.includes(key) &&
      typeof value === 'string' &&
      (key !== 'result' || ['right', 'limit', 'reject'].includes(value)),
  );
