/**
 * The session: one outing as plain JSON with its history, the way it is shown, what is being tried, and the
 * answer that a worker gives. Kept in the browser's own database; if that fails, it says so.
 */

import { computed, effect, signal } from '@preact/signals';
import { type IDBPDatabase, openDB } from 'idb';
import type { Answer } from '../../engine/answer/types.ts';
import type { Change } from '../../engine/outing/change.ts';
import type { TimedOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { type FileProblem, readOuting } from '../../papers/index.ts';
import type { System } from '../../units/index.ts';
import type { Voice, Wording } from '../../words/voice.ts';
import type { Ask, Reply } from '../worker.ts';
import { demo } from './demos.ts';

export type Json = Record<string, unknown>;
export type Theme = 'auto' | 'light' | 'dark';

export interface Settings {
  readonly units: System;
  readonly wording: Wording;
  readonly theme: Theme;
  readonly cautioned: boolean;
}

export const paper = signal<Json>({});
const past = signal<readonly Json[]>([]);
const future = signal<readonly Json[]>([]);
export const settings = signal<Settings>({
  units: 'imperial',
  wording: 'us',
  theme: 'auto',
  cautioned: false,
});
export const problems = signal<readonly FileProblem[]>([]);
export const outing = signal<Outing | null>(null);

/** A change being tried on top of the outing, undone with a tap. */
export interface Trial {
  readonly change: Change;
  readonly from: Outing;
  readonly to: Outing;
}

export const trials = signal<readonly Trial[]>([]);
export const answer = signal<Answer | null>(null);
export const before = signal<Answer | null>(null);
/** The outing being tried with the times of its brakes, as the worker reckons them. */
export const timed = signal<TimedOuting | null>(null);
export const busy = signal(false);
/** Why there is no answer to what was asked last. */
export const fault = signal('');
/** What the browser could not keep, and so would be lost. */
export const unkept = signal('');

export const tried = computed<Outing | null>(() => trials.value[trials.value.length - 1]?.to ?? outing.value);
export const voice = computed<Voice | null>(() =>
  tried.value ? { system: settings.value.units, wording: settings.value.wording, outing: tried.value } : null,
);
export const canUndo = computed(() => past.value.length > 0);
export const canRedo = computed(() => future.value.length > 0);

/** What makes changes is loaded with the first of them: the answer does not need it. */
export async function tryOut(change: Change): Promise<void> {
  const from = tried.value;
  const { applyChange } = await import('../../engine/outing/change.ts');
  if (from && from === tried.value)
    trials.value = [...trials.value, { change, from, to: applyChange(from, change) }];
}

export const undoTrial = (): void => {
  trials.value = trials.value.slice(0, -1);
};

const MOST_STEPS = 200;

/** Change the paper; the step can be undone. */
export function change(next: Json): void {
  past.value = [...past.value.slice(-MOST_STEPS), paper.value];
  future.value = [];
  paper.value = next;
  trials.value = [];
}

export function undo(): void {
  const last = past.value[past.value.length - 1];
  if (!last) return;
  future.value = [paper.value, ...future.value];
  past.value = past.value.slice(0, -1);
  paper.value = last;
  trials.value = [];
}

export function redo(): void {
  const [next, ...rest] = future.value;
  if (!next) return;
  past.value = [...past.value, paper.value];
  future.value = rest;
  paper.value = next;
  trials.value = [];
}

/** The paper with the value at a path replaced; `undefined` removes it. */
export function edited(json: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(json)) {
    const copy = [...json];
    if (rest.length === 0 && value === undefined) copy.splice(Number(key), 1);
    else copy[Number(key)] = edited(copy[Number(key)], rest, value);
    return copy;
  }
  const copy: Json = { ...((json as Json | undefined) ?? {}) };
  const next = edited(copy[key], rest, value);
  if (next === undefined) delete copy[key];
  else copy[key] = next;
  return copy;
}

export const edit = (path: readonly (string | number)[], value: unknown): void =>
  change(edited(paper.value, path, value) as Json);

// ---- reading and answering

const worker = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' });
let asked = 0;

worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => {
  if (data.id !== asked) return;
  if (data.fault) fault.value = data.fault;
  if (data.timed) timed.value = data.timed;
  if (data.answer) {
    // Until this answer's counts are there, the last ones stay in sight.
    const { cars } = data.answer;
    const shown = cars.length > 0 ? data.answer : { ...data.answer, cars: answer.value?.cars ?? [] };
    answer.value = shown;
    if (trials.value.length === 0) before.value = shown;
  }
  busy.value = !data.last;
});

worker.addEventListener('error', () => {
  busy.value = false;
  fault.value = 'The check has stopped. Load the page again; your work is kept.';
});

let reading: Json | undefined;

/** Each paper is read once: a new outing, even an equal one, is answered anew. */
async function readPaper(): Promise<void> {
  const json = paper.value;
  if (json === reading) return;
  reading = json;
  const read = await readOuting({ path: 'outing', content: JSON.stringify(json) }, async () => undefined);
  if (paper.value !== json) return;
  problems.value = read.ok ? [] : read.problems;
  if (read.ok) outing.value = read.value;
}

function ask(): void {
  if (!tried.value) return;
  asked++;
  busy.value = true;
  fault.value = '';
  worker.postMessage({ id: asked, outing: tried.value } satisfies Ask);
}

// ---- keeping

let database: IDBPDatabase | undefined;

const FULL = 'The browser could not keep your work: its storage is full or shut.';

async function keep(key: string, value: unknown): Promise<void> {
  try {
    await database?.put('session', value, key);
    // What else could not be kept, as the vehicles of the shed, is still to be said.
    if (database && key === 'paper' && unkept.value === FULL) unkept.value = '';
  } catch {
    unkept.value = FULL;
  }
}

/** Ask before the page is left while something would be lost. */
addEventListener('beforeunload', (event) => {
  if (unkept.value !== '') event.preventDefault();
});

export async function start(): Promise<void> {
  try {
    database = await openDB('heedway', 1, { upgrade: (db) => void db.createObjectStore('session') });
    const [kept, set] = await Promise.all([
      database.get('session', 'paper'),
      database.get('session', 'settings'),
    ]);
    if (set) settings.value = { ...settings.value, ...(set as Settings) };
    paper.value = (kept as Json | undefined) ?? (await demo('heavy-air.json'));
  } catch {
    unkept.value = 'The browser keeps nothing here.';
    paper.value = await demo('heavy-air.json');
  }
  await readPaper();
  effect(() => {
    void keep('paper', paper.value);
  });
  effect(() => {
    void keep('settings', settings.value);
    document.documentElement.dataset['theme'] = settings.value.theme;
  });
  effect(() => {
    void paper.value;
    void readPaper();
  });
  effect(() => {
    void tried.value;
    ask();
  });
}
