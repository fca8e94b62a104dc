/** Keeping the session in the browser's own database, beside other tabs that keep it too; if that fails, it says so. */
import { effect, untracked } from '@preact/signals';
import type { IDBPDatabase } from 'idb';
import { demo } from './demos.ts';
import { type Keeper, type Kept, keeper } from './keeper.ts';
import {
  another,
  ask,
  asked,
  type Json,
  openedElsewhere,
  paper,
  readPaper,
  settings,
  sheetOf,
  takeFromElsewhere,
  unkept,
} from './session.ts';
import { type Settings, settingsOf } from './settings.ts';
import { FULL, openStore, whyShut } from './storage.ts';

let database: IDBPDatabase | undefined;
let papers: Keeper<Json> | undefined;

const lost = (why: string): void => {
  database = undefined;
  papers = undefined;
  unkept.value = why;
};

const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('heedway-papers') : undefined;

/** Gives up what is being put by just now. */
let onItsWay: (() => void) | undefined;

/**
 * In one step, so that no other tab comes between. All of it is asked for at once: a page that is left does not live to
 * hear what was there, and its last change is kept all the same.
 */
async function swap(next: Kept<Json>): Promise<Kept<Json>> {
  if (!database) return next;
  const step = database.transaction('session', 'readwrite');
  onItsWay = () => step.abort();
  const looking = keptIn(step.store);
  const putting = [
    step.store.put(next.paper, 'paper'),
    step.store.put(next.revision, 'revision'),
    step.store.put(next.sheet, 'sheet'),
    step.done,
  ];
  const all = Promise.all(putting);
  all.catch(() => {});
  try {
    const there = await looking;
    if (there.revision < next.revision) await all;
    else step.abort();
    return there.revision < next.revision ? next : { ...there, paper: there.paper ?? next.paper };
  } finally {
    onItsWay = undefined;
  }
}

async function keptIn(store: {
  get: (key: string) => Promise<unknown>;
}): Promise<{ readonly revision: number; readonly paper: Json | undefined; readonly sheet: string }> {
  const [paper, revision, sheet] = await Promise.all([
    store.get('paper'),
    store.get('revision'),
    store.get('sheet'),
  ]);
  return {
    revision: typeof revision === 'number' ? revision : 0,
    paper: paper as Json | undefined,
    sheet: typeof sheet === 'string' ? sheet : '',
  };
}

async function keepPaper(): Promise<void> {
  try {
    await papers?.save();
    // What else could not be kept, as the vehicles of the shed, is still to be said.
    if (papers && unkept.value === FULL) unkept.value = '';
  } catch {
    unkept.value = FULL;
  }
}

/**
 * What is still on its way as the page goes is put once more, and concluded at once: a page that is gone never hears what
 * was there, and what nobody concludes is dropped.
 */
function putLast(): void {
  if (!database || !onItsWay) return;
  try {
    // What waits behind a step that nobody concludes is dropped with it.
    onItsWay();
    const step = database.transaction('session', 'readwrite');
    step.done.catch(() => {});
    step.store.put(paper.value, 'paper').catch(() => {});
    step.store.put(sheetOf(paper.value), 'sheet').catch(() => {});
    step.commit();
  } catch {
    // Nobody is left to be told.
  }
}

async function keepSettings(now: Settings): Promise<void> {
  try {
    const step = database?.transaction('session', 'readwrite');
    const put = step?.store.put(now, 'settings');
    step?.commit();
    await Promise.all([put, step?.done]);
  } catch {
    unkept.value = FULL;
  }
}

/** What another tab has kept while this one slept. */
async function catchUp(): Promise<void> {
  try {
    const there = database && (await keptIn(database.transaction('session').store));
    if (there?.paper) papers?.hear({ ...there, paper: there.paper });
  } catch {
    // It is said when something is to be kept.
  }
}

/** A page that is left or put away may never come back: what is being typed is taken as it stands. */
const putAway = (): void => {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement) || !['text', 'date'].includes(field.type)) return;
  // Figures and texts are taken when they change, days when they are left.
  for (const kind of ['change', 'blur']) field.dispatchEvent(new Event(kind));
};
const leave = (): void => {
  putAway();
  putLast();
};
// Before it is left: what is handed to the storage as late as when it goes may not arrive.
addEventListener('beforeunload', leave);
addEventListener('pagehide', leave);
addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') putAway();
  else void catchUp();
});

/** Ask before the page is left while something would be lost. */
addEventListener('beforeunload', (event) => {
  if (unkept.value !== '') event.preventDefault();
});

/** So long is waited for the browser's storage, ms: some never answer, and a blank page helps nobody. */
const STORAGE_WAIT = 2000;

interface Found {
  readonly db: IDBPDatabase;
  readonly kept: Awaited<ReturnType<typeof keptIn>>;
  readonly set: unknown;
}

async function opened(): Promise<Found> {
  const db = await openStore('heedway', 'session', lost);
  const [kept, set] = await Promise.all([
    keptIn(db.transaction('session').store),
    db.get('session', 'settings'),
  ]);
  return { db, kept, set };
}

const tooLate = (): Promise<never> =>
  new Promise((_, refuse) => {
    setTimeout(() => refuse(new Error('no answer')), STORAGE_WAIT);
  });

async function fromStorage(): Promise<Found | undefined> {
  try {
    const found = await Promise.race([opened(), tooLate()]);
    database = found.db;
    settings.value = settingsOf(settings.value, found.set);
    return found;
  } catch (fault) {
    // One that answers later is left alone: it may hold work that this page has not seen.
    unkept.value = whyShut(fault);
    return undefined;
  }
}

/** On the shelf, which is loaded for that alone. */
async function lay(json: Json): Promise<void> {
  const { layBeside } = await import('../parts/shelf.ts');
  await layBeside(json);
}

export async function start(): Promise<void> {
  const found = await fromStorage();
  paper.value = found?.kept.paper ?? (await demo('heavy-air.json'));
  if (found) {
    const { revision, paper: kept = {}, sheet } = found.kept;
    another(paper.value, sheet);
    papers = keeper<Json>(
      {
        paper: () => paper.value,
        sheet: () => sheetOf(paper.value),
        take: takeFromElsewhere,
        follow: ({ paper: theirs, sheet }, left) => {
          if (left) void lay(left);
          openedElsewhere(theirs, sheet, left !== undefined);
        },
        putAside: (theirs) => void lay(theirs),
        tell: (mine) => channel?.postMessage(mine),
      },
      { swap },
      { revision, paper: kept, sheet },
    );
    channel?.addEventListener('message', ({ data }: MessageEvent<Kept<Json>>) => papers?.hear(data));
  }
  await readPaper();
  effect(() => {
    void paper.value;
    untracked(() => void keepPaper());
  });
  effect(() => {
    void keepSettings(settings.value);
    document.documentElement.dataset['theme'] = settings.value.theme;
  });
  effect(() => {
    void paper.value;
    void readPaper();
  });
  effect(() => {
    const now = asked.value;
    untracked(() => ask(now));
  });
}
