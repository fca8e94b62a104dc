/** Lists that are being gone through, and the host's own lists, kept on the device: a phone may be put away at any item. */
import { signal } from '@preact/signals';
import { type Unfinished, unfinishedIn } from '../../desk/inspect/unfinished.ts';
import type { InspectionList } from '../../papers/inspection/fields.ts';
import { readList } from '../../papers/inspection/read.ts';
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

function keep(key: string, value: unknown): void {
  try {
    localStorage.setItem(key, JSON.stringify(value));
  } catch {
    unkept.value =
      'The browser could not keep the list that you are going through: record it before you leave this page.';
  }
}

// Another tab goes through a list of its own: neither is put over the other.
globalThis.addEventListener?.('storage', (event) => {
  const { key } = event as StorageEvent;
  if (key === BEGUN || key === null) begun.value = begunHere();
  if (key === LISTS || key === null) ownLists.value = listsHere();
});

export const begunOf = (id: string): Unfinished | undefined => begun.value.find((one) => one.id === id);

/** Undefined: there is nothing left to finish. */
export function putBegun(id: string, unfinished: Unfinished | undefined): void {
  const others = begun.value.filter((one) => one.id !== id);
  begun.value = unfinished ? [...others, unfinished] : others;
  keep(BEGUN, begun.value);
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
