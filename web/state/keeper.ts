/**
 * Keeps the paper where other pages keep it too. Nothing is put over what this page has not seen: where another was
 * first, both changes are put together, and tried again. Only changes of one sheet are: two outings are never mixed.
 */
import { merge } from './merge.ts';

export interface Kept<T> {
  /** Grows by one with every change. */
  readonly revision: number;
  readonly paper: T;
  /** Which paper it is, whatever is written on it and however it is called. */
  readonly sheet: string;
}

export interface Store<T> {
  /** In one step: kept, if what is there has the revision that this follows; else what is there. */
  readonly swap: (next: Kept<T>) => Promise<Kept<T>>;
}

interface Desk<T> {
  readonly paper: () => T;
  /** Which sheet lies on the desk. */
  readonly sheet: () => string;
  /** A paper from elsewhere, put together with what stood here; `theirs` where both changed the same. */
  readonly take: (paper: T, theirs?: T) => void;
  /** Another sheet, opened elsewhere; `left`: what had been written here and is not on it. */
  readonly follow: (theirs: Kept<T>, left: T | undefined) => void;
  /** What another page wrote on a sheet that does not lie here. */
  readonly putAside: (paper: T) => void;
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
  let saving = Promise.resolve();
  let busy = false;

  const hear = (theirs: Kept<T>): void => {
    if (theirs.revision <= agreed.revision) return;
    const before = agreed;
    agreed = theirs;
    const mine = desk.paper();
    // What was opened here stands; what was kept elsewhere meanwhile lies beside it.
    if (desk.sheet() !== before.sheet && desk.sheet() !== theirs.sheet) return desk.putAside(theirs.paper);
    if (desk.sheet() !== theirs.sheet) return desk.follow(theirs, mine === before.paper ? undefined : mine);
    // Nothing that both began with: another page has had the sheet in between.
    const from = before.sheet === theirs.sheet ? before.paper : undefined;
    const { paper, clash } = merge(from, mine, theirs.paper);
    if (paper !== mine) desk.take(paper as T, clash ? theirs.paper : undefined);
  };
  const saveAll = async (): Promise<void> => {
    busy = true;
    try {
      while (desk.paper() !== agreed.paper) {
        const mine = { revision: agreed.revision + 1, paper: desk.paper(), sheet: desk.sheet() };
        const there = await store.swap(mine);
        if (there !== mine) hear(there);
        else if (mine.revision > agreed.revision) {
          agreed = mine;
          desk.tell(mine);
        }
      }
    } finally {
      // At once: what is written in the next moment begins anew.
      busy = false;
    }
  };
  return {
    hear,
    save: () => {
      if (!busy) saving = saveAll();
      return saving;
    },
  };
}
