/** Lists that are being gone through, and the host's own lists, kept on the device: a phone may be put away at any item. */
import { signal } from '@preact/signals';
import { type Unfinished, unfinishedIn } from '../../desk/inspect/unfinished.ts';
import type { InspectionList } from '../../papers/inspection/fields.ts';
import { readList } from '../../papers/inspection/read.ts';
import { canonical } from '../../records/canonical.ts';
import { unkept } from '../state/session.ts';

const [BEGUN, LISTS] = ['heedway-inspecting', 'heedway-own-lists'];

/** What cannot be read is left where it is, and none of it is shown. */
function keptIn(key: string): readonly unknown[] {
  try {
    const json: unknown = JSON.parse(localStorage.getItem(key) ?? '[]');
    return Array.isArray(json) ? json : [];
  } catch {
    return [];
  }
}

function begunHere(): readonly Unfinished[] {
  return keptIn(BEGUN).flatMap((json) => {
    const list = readList((json as { readonly list?: unknown } | null)?.list);
    return list.ok ? (unfinishedIn(json, list.value) ?? []) : [];
  });
}

const listsHere = (): readonly InspectionList[] =>
  keptIn(LISTS).flatMap((json) => {
    const read = readList(json);
    return read.ok ? [read.value] : [];
  });

/** In the order in which they were begun. */
export const begun = signal(begunHere());
export const ownLists = signal(listsHere());

/** What is on the screen is more than what is kept. */
let behind = false;

function keep(key: string, value: unknown): void {
  try {
    localStorage.setItem(key, JSON.stringify(value));
    if (key === BEGUN) behind = false;
  } catch {
    if (key === BEGUN) behind = true;
    unkept.value =
      'The browser could not keep the list that you are going through: record it before you leave this page.';
  }
}

// What another tab says is shown in this one.
globalThis.addEventListener?.('storage', (event) => {
  const { key } = event as StorageEvent;
  if (key === BEGUN || key === null) begun.value = begunHere();
  if (key === LISTS || key === null) ownLists.value = listsHere();
});

export const begunOf = (id: string): Unfinished | undefined => begun.value.find((one) => one.id === id);

/**
 * Changes one list by what is kept of it at this moment, whatever this tab has seen: what another tab kept meanwhile stays.
 *
 * @param part what the change is over @param change undefined: there is nothing left to finish
 * @returns false: another tab said otherwise of that part, which this one shows now, and nothing is changed: nobody's tap goes unseen
 */
export function changeBegun(
  id: string,
  part: (one: Unfinished | undefined) => unknown,
  change: (one: Unfinished | undefined) => Unfinished | undefined,
): boolean {
  const seen = begunOf(id);
  if (!behind) begun.value = begunHere();
  const now = begunOf(id);
  if (canonical(part(now) ?? null) !== canonical(part(seen) ?? null)) return false;
  const others = begun.value.filter((one) => one.id !== id);
  const next = change(now);
  begun.value = next ? [...others, next] : others;
  keep(BEGUN, begun.value);
  return true;
}

/** One of that name before is no longer asked by. */
export function putOwnList(list: InspectionList): void {
  ownLists.value = [...ownLists.value.filter(({ name }) => name !== list.name), list];
  keep(LISTS, ownLists.value);
}

export function dropOwnList({ name }: InspectionList): void {
  ownLists.value = ownLists.value.filter((one) => one.name !== name);
  keep(LISTS, ownLists.value);
}
