/**
 * The shelf: outings of the reader's own side by side, by name, and the train that is being begun. Kept in a database
 * of its own; the outing that is open is kept by the session, and comes here when another one is opened.
 */
import { signal } from '@preact/signals';
import { type IDBPDatabase, openDB } from 'idb';
import { tellInvented } from '../../desk/invented.ts';
import type { Replies } from '../../desk/new/field.ts';
import type { Brought } from '../../desk/new/make.ts';
import { change, type Json, paper, unkept } from '../state/session.ts';

export interface Draft {
  readonly replies: Replies;
  readonly brought: Brought;
}

export const shelf = signal<readonly Json[]>([]);
/** What was taken off last, so that it can be put back. */
export const takenOff = signal<Json | null>(null);

const NOT_KEPT = 'The browser could not keep your papers: its storage is full or shut.';

let database: Promise<IDBPDatabase> | undefined;
const opened = (): Promise<IDBPDatabase> => {
  database ??= openDB('heedway-shelf', 1, { upgrade: (db) => void db.createObjectStore('papers') });
  return database;
};

async function kept(key: string): Promise<unknown> {
  try {
    return await (await opened()).get('papers', key);
  } catch {
    unkept.value = NOT_KEPT;
    return undefined;
  }
}

async function keep(key: string, value: unknown): Promise<void> {
  try {
    await (await opened()).put('papers', value, key);
  } catch {
    unkept.value = NOT_KEPT;
  }
}

export const keepDraft = (draft: Draft): Promise<void> => keep('draft', draft);
export const keptDraft = async (): Promise<Draft | undefined> => (await kept('draft')) as Draft | undefined;

const nameOf = (json: Json): string => String(json['name']);

function put(papers: readonly Json[]): Promise<void> {
  shelf.value = papers;
  return keep('outings', papers);
}

export async function openShelf(): Promise<void> {
  shelf.value = ((await kept('outings')) as Json[] | undefined) ?? [];
}

/** An example as it lies in the room of files; a copy of it has a place of its own here. */
const isExample = (json: Json): boolean =>
  json['invented'] === true && !shelf.value.some((p) => nameOf(p) === nameOf(json));

/** The paper onto the shelf, in the place of one of the same name. */
const shelved = (papers: readonly Json[], json: Json): Json[] =>
  papers.some((p) => nameOf(p) === nameOf(json))
    ? papers.map((p) => (nameOf(p) === nameOf(json) ? json : p))
    : [...papers, json];

/** Opens a paper of one's own; the one that is open is put on the shelf, unless it is an example. */
export async function openOwn(json: Json): Promise<void> {
  await openShelf();
  const before = isExample(paper.value) ? shelf.value : shelved(shelf.value, paper.value);
  await put(shelved(before, json));
  change(json);
}

/** A name that no paper on the shelf has. */
export function freeName(name: string): string {
  const taken = new Set([...shelf.value, paper.value].map(nameOf));
  let n = 2;
  if (!taken.has(name)) return name;
  while (taken.has(`${name} ${n}`)) n++;
  return `${name} ${n}`;
}

/** The same once more under another name: to change it and keep both. */
export const copied = (json: Json): Promise<void> =>
  put([...shelf.value, { ...json, name: freeName(nameOf(json)) }]);

/** A copy of the open one, which is opened: the one before lies on the shelf. */
export async function copyOpen(): Promise<void> {
  await openShelf();
  await openOwn({ ...paper.value, name: freeName(nameOf(paper.value)) });
}

export async function takeOff(json: Json): Promise<void> {
  takenOff.value = json;
  await put(shelf.value.filter((p) => nameOf(p) !== nameOf(json)));
}

export async function putBack(): Promise<void> {
  const json = takenOff.value;
  takenOff.value = null;
  if (json) await put(shelved(shelf.value, json));
}

/** The line under a paper's name: what runs where. */
export function aboutPaper(json: Json): string {
  const part = (key: string): string => String((json[key] as Json | undefined)?.['name'] ?? '?');
  const invented = tellInvented(json);
  return `${part('train')} on ${part('line')}${invented === '' ? '' : ` (${invented})`}`;
}
