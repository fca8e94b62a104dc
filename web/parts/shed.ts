/**
 * The shed: equipment from which a train is made up. Vehicles of the examples, of the outing, and the
 * reader's own, which are kept in the browser beside the outing.
 */
import { computed, signal } from '@preact/signals';
import type { IDBPDatabase } from 'idb';
import { type FileProblem, readVehicle, writeFile } from '../../papers/index.ts';
import { demo, demoNames } from '../state/demos.ts';
import { type Json, paper, unkept } from '../state/session.ts';
import { NOTHING, openStore, whyShut } from '../state/storage.ts';

export interface ShedVehicle {
  readonly vehicle: Json;
  readonly from: 'this train' | 'an example' | 'your own';
}

const own = signal<readonly Json[]>([]);
const examples = signal<readonly Json[]>([]);

const vehiclesIn = (json: Json): Json[] =>
  (((json['train'] as Json | undefined)?.['vehicles'] as Json[] | undefined) ?? []).map(
    (m) => m['vehicle'] as Json,
  );

/** Your own first; each vehicle once, by all that is written of it. */
export const shed = computed<readonly ShedVehicle[]>(() => {
  const seen = new Set<string>();
  const all = [
    ...own.value.map((vehicle) => ({ vehicle, from: 'your own' as const })),
    ...vehiclesIn(paper.value).map((vehicle) => ({ vehicle, from: 'this train' as const })),
    ...examples.value.map((vehicle) => ({ vehicle, from: 'an example' as const })),
  ];
  return all.filter(({ vehicle }) => {
    const text = writeFile(vehicle);
    if (seen.has(text)) return false;
    seen.add(text);
    return true;
  });
});

const lost = (why: string): void => {
  database = undefined;
  unkept.value = why;
};

let database: Promise<IDBPDatabase> | undefined;
const opened = (): Promise<IDBPDatabase> => {
  database ??= openStore('heedway-shed', 'vehicles', lost);
  return database;
};

/** Other tabs have the same shed. */
const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('heedway-shed') : undefined;
channel?.addEventListener('message', () => void lookIn());

/** Changes that were begun: a look that began before one may answer after it. */
let changes = 0;

/** Changes what is kept, whatever this page has seen of it, in one step: nothing of another tab's is put over. */
async function keep(change: (kept: readonly Json[]) => readonly Json[]): Promise<void> {
  changes++;
  own.value = change(own.value);
  try {
    const step = (await opened()).transaction('vehicles', 'readwrite');
    const kept = (await step.store.get('own')) as Json[] | undefined;
    const next = change(kept ?? []);
    await Promise.all([step.store.put(next, 'own'), step.done]);
    own.value = next;
    channel?.postMessage('changed');
  } catch {
    unkept.value = 'The browser could not keep your vehicles: its storage is full or shut.';
  }
}

async function lookIn(): Promise<void> {
  const began = changes;
  try {
    const kept = ((await (await opened()).get('vehicles', 'own')) as Json[] | undefined) ?? [];
    // What was put there meanwhile is not in it; the change shows all that is kept when it is done.
    if (began === changes) own.value = kept;
  } catch (fault) {
    database = undefined;
    const why = whyShut(fault);
    unkept.value = why === NOTHING ? 'The browser keeps no vehicles here.' : why;
  }
}

/** Open the shed: what the browser kept, and the examples. */
export async function openShed(): Promise<void> {
  await lookIn();
  if (examples.value.length > 0) return;
  const outings = await Promise.all(demoNames.map((d) => demo(d.file)));
  examples.value = outings.flatMap(vehiclesIn);
}

const known = (vehicles: readonly Json[], vehicle: Json): boolean => {
  const text = writeFile(vehicle);
  return vehicles.some((v) => writeFile(v) === text);
};

const withOthers = (kept: readonly Json[], more: readonly Json[]): readonly Json[] => [
  ...kept,
  ...more.filter((v) => !known(kept, v)),
];

/** A vehicle that leaves the train is not lost: it goes to your own, unless the shed has it anyway. */
export function shelter(vehicle: Json): void {
  if (!known([...own.value, ...examples.value], vehicle)) void takeIn([vehicle]);
}

export const discard = (vehicle: Json): Promise<void> => {
  const text = writeFile(vehicle);
  return keep((kept) => kept.filter((v) => writeFile(v) !== text));
};

export const ownVehicles = (): readonly Json[] => own.value;

/** Own vehicles from a file of everything, added to those that are here. */
export const takeIn = (vehicles: readonly Json[]): Promise<void> =>
  keep((kept) => withOthers(kept, vehicles));

/** Vehicle files into the shed; what is wrong with one leaves the others alone. */
export async function importVehicles(files: readonly File[]): Promise<readonly FileProblem[]> {
  const problems: FileProblem[] = [];
  const good: Json[] = [];
  for (const file of files) {
    const content = await file.text();
    const read = await readVehicle({ path: file.name, content });
    if (read.ok) good.push(JSON.parse(content.replace(/^\uFEFF/, '')) as Json);
    else problems.push(...read.problems);
  }
  if (good.length > 0) await takeIn(good);
  return problems;
}
