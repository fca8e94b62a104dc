/**
 * The shelf: outings of the reader's own side by side, by name, and the train that is being begun. Kept in a database
 * of its own; the outing that is open is kept by the session, and comes here when another one is opened.
 */
import { signal } from '@preact/signals';
import type { IDBPDatabase } from 'idb';
import { tellInvented } from '../../desk/invented.ts';
import type { Replies } from '../../desk/new/field.ts';
import type { Brought } from '../../desk/new/make.ts';
import { demo, demoNames } from '../state/demos.ts';
import { another, change, type Json, paper, unkept } from '../state/session.ts';
import { beside, freeAmong, lies, makeRoom, nameOf, putAway, type Shelved } from '../state/shelving.ts';
import { openStore } from '../state/storage.ts';

export interface Draft {
  readonly replies: Replies;
  readonly brought: Brought;
}

const shelved = signal<Shelved<Json>>({ papers: [] });
/** What was taken off last, so that it can be put back. */
export const takenOff = signal<Json | null>(null);

/** All but the open one. */
export const others = (): readonly Json[] =>
  shelved.value.papers.filter((p) => nameOf(p) !== shelved.value.open);

const NOT_YET = 'What was open before is not kept yet: the storage is slow. Leave the page open.';
const NOT_KEPT = 'The browser could not keep your papers: its storage is full or shut.';

const lost = (why: string): void => {
  database = undefined;
  unkept.value = why;
};

let database: Promise<IDBPDatabase> | undefined;
const opened = (): Promise<IDBPDatabase> => {
  database ??= openStore('heedway-shelf', 'papers', lost);
  return database;
};

/** Other tabs have the same shelf. */
const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('heedway-shelf') : undefined;
channel?.addEventListener('message', () => void openShelf());

export async function keepDraft(draft: Draft): Promise<void> {
  try {
    await (await opened()).put('papers', draft, 'draft');
  } catch {
    unkept.value = NOT_KEPT;
  }
}

export async function keptDraft(): Promise<Draft | undefined> {
  try {
    return (await (await opened()).get('papers', 'draft')) as Draft | undefined;
  } catch {
    unkept.value = NOT_KEPT;
    return undefined;
  }
}

async function keptIn(store: { get: (key: string) => Promise<unknown> }): Promise<Shelved<Json>> {
  const [papers, open] = await Promise.all([store.get('outings'), store.get('open')]);
  return {
    papers: Array.isArray(papers) ? (papers as Json[]) : [],
    open: typeof open === 'string' ? open : undefined,
  };
}

/** So long is waited for a storage before the work goes on without, and that is told, ms: some never answer; one that has, will. */
const PATIENCE = { unheard: 2000, heard: 30_000 };
let heard = false;

/** Changes what lies there, whatever this page has seen of it, in one step: nothing of another tab's is put over. */
async function keep(next: (kept: Shelved<Json>) => Shelved<Json>): Promise<void> {
  shelved.value = next(shelved.value);
  let done = false;
  const keeping = async (): Promise<void> => {
    try {
      const step = (await opened()).transaction('papers', 'readwrite');
      const now = next(await keptIn(step.store));
      const { papers, open } = now;
      await Promise.all([step.store.put(papers, 'outings'), step.store.put(open, 'open'), step.done]);
      shelved.value = now;
      heard = true;
      if (unkept.value === NOT_YET) unkept.value = '';
      channel?.postMessage('changed');
    } catch {
      unkept.value = NOT_KEPT;
    }
    done = true;
  };
  const waiting = new Promise<void>((goOn) =>
    setTimeout(
      () => {
        if (!done && unkept.value === '') unkept.value = NOT_YET;
        goOn();
      },
      heard ? PATIENCE.heard : PATIENCE.unheard,
    ),
  );
  await Promise.race([keeping(), waiting]);
}

export async function openShelf(): Promise<void> {
  try {
    shelved.value = await keptIn((await opened()).transaction('papers').store);
    heard = true;
  } catch {
    // What is said of the paper that is open matters more.
    if (unkept.value === '') unkept.value = NOT_KEPT;
  }
}

/** An example as it came: it lies in its own place and need not lie here. */
async function isExample(json: Json): Promise<boolean> {
  if (json['invented'] !== true) return false;
  return lies(await Promise.all(demoNames.map((d) => demo(d.file))), json);
}

/** The open paper put on the shelf, unless it is an example as it came. */
async function clear(): Promise<(kept: Shelved<Json>) => Shelved<Json>> {
  const open = paper.value;
  if (await isExample(open)) return ({ papers }) => ({ papers });
  return (kept) => ({ papers: putAway(kept, open) });
}

/** Opens a paper of one's own, which lies on the shelf from now on. */
export async function openOwn(json: Json): Promise<void> {
  const cleared = await clear();
  let open = json;
  await keep((kept) => {
    const { papers } = cleared(kept);
    open = lies(papers, json) ? json : { ...json, name: freeAmong(nameOf(json), papers) };
    return { papers: beside(papers, open), open: nameOf(open) };
  });
  another(open);
  change(open);
}

/** What was written, and lies on no desk any more, beside the others. */
export async function layBeside(json: Json): Promise<void> {
  if (await isExample(json)) return;
  await keep((kept) => ({ ...kept, papers: beside(kept.papers, json) }));
}

/**
 * What is opened from elsewhere, a file, a code or an example: what was open goes on the shelf first.
 * @param open opens it
 */
export async function openBeside(json: Json, open: () => void): Promise<void> {
  const cleared = await clear();
  await keep((kept) => ({ papers: makeRoom(cleared(kept).papers, json) }));
  another(json);
  open();
}

/** A name that no paper on the shelf has, nor the open one. */
export const freeName = (name: string): string => freeAmong(name, [...shelved.value.papers, paper.value]);

/** The same once more under another name: to change it and keep both. */
export const copied = (json: Json): Promise<void> =>
  keep((kept) => ({
    ...kept,
    papers: beside(kept.papers, { ...json, name: freeAmong(nameOf(json), [...kept.papers, paper.value]) }),
  }));

/** A copy of the open one, which is opened: the one before lies on the shelf. */
export async function copyOpen(): Promise<void> {
  await openShelf();
  await openOwn({ ...paper.value, name: freeName(nameOf(paper.value)) });
}

export async function takeOff(json: Json): Promise<void> {
  takenOff.value = json;
  await keep((kept) => ({ ...kept, papers: kept.papers.filter((p) => nameOf(p) !== nameOf(json)) }));
}

export async function putBack(): Promise<void> {
  const json = takenOff.value;
  takenOff.value = null;
  if (json) await keep((kept) => ({ ...kept, papers: beside(kept.papers, json) }));
}

/** The line under a paper's name: what runs where. */
export function aboutPaper(json: Json): string {
  const part = (key: string): string => String((json[key] as Json | undefined)?.['name'] ?? '?');
  const invented = tellInvented(json);
  return `${part('train')} on ${part('line')}${invented === '' ? '' : ` (${invented})`}`;
}
