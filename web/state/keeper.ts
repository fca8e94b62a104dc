/**
 * Keeps the paper where other pages keep it too. Nothing is put over what this page has not seen: where another was
 * first, both changes are put together, and tried again.
 */
import { merge } from './merge.ts';

export interface Kept<T> {
  /** Grows by one with every change. */
  readonly revision: number;
  readonly paper: T;
}

export interface Store<T> {
  /** In one step: kept, if what is there has the revision that this follows; else what is there. */
  readonly swap: (next: Kept<T>) => Promise<Kept<T>>;
}

interface Desk<T> {
  readonly paper: () => T;
  /** A paper from elsewhere, put together with what stood here; `theirs` where both changed the same. */
  readonly take: (paper: T, theirs?: T) => void;
  /** What was kept here is told to other pages. */
  readonly tell: (kept: Kept<T>) => void;
}

export interface Keeper<T> {
  /** Keep what is on the desk; done when it is. */
  readonly save: () => Promise<void>;
  /** Another page has kept this. */
  readonly hear: (theirs: Kept<T>) => void;
}

export function keeper<T>(desk: Desk<T>, store: Store<T>, begin: Kept<T>): Keeper<T> {
  /** The last that this page and the storage agreed upon. */
  let agreed = begin;
  let saving: Promise<void> | undefined;

  const hear = (theirs: Kept<T>): void => {
    if (theirs.revision <= agreed.revision) return;
    const { paper, clash } = merge(agreed.paper, desk.paper(), theirs.paper);
    agreed = theirs;
    if (paper !== desk.paper()) desk.take(paper as T, clash ? theirs.paper : undefined);
  };
  const saveAll = async (): Promise<void> => {
    while (desk.paper() !== agreed.paper) {
      const mine = { revision: agreed.revision + 1, paper: desk.paper() };
      const there = await store.swap(mine);
      if (there !== mine) hear(there);
      else {
        agreed = mine;
        desk.tell(mine);
      }
    }
  };
  return {
    hear,
    save: () => {
      saving ??= saveAll().finally(() => {
        saving = undefined;
      });
      return saving;
    },
  };
}
