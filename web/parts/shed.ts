/**
 * The shed: equipment from which a train is made up. Vehicles of the examples, of the outing, and the
 * reader's own, which are kept in the browser beside the outing.
 */
import { computed, signal } from '@preact/signals';
import { type IDBPDatabase, openDB } from 'idb';
import { type FileProblem, readVehicle, writeFile } from '../../papers/index.ts';
import { demo, demoNames } from '../state/demos.ts';
import { type Json, paper, unkept } from '../state/session.ts';

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

let database: Promise<IDBPDatabase> | undefined;
const opened = (): Promise<IDBPDatabase> => {
  database ??= openDB('heedway-shed', 1, { upgrade: (db) => void db.createObjectStore('vehicles') });
  return database;
};

async function keep(vehicles: readonly Json[]): Promise<void> {
  own.value = vehicles;
  try {
    await (await opened()).put('vehicles', vehicles, 'own');
  } catch {
    unkept.value = 'The browser could not keep your vehicles: its storage is full or shut.';
  }
}

/** Open the shed: what the browser kept, and the examples. */
export async function openShed(): Promise<void> {
  try {
    own.value = ((await (await opened()).get('vehicles', 'own')) as Json[] | undefined) ?? [];
  } catch {
    unkept.value = 'The browser keeps no vehicles here.';
  }
  if (examples.value.length > 0) return;
  const outings = await Promise.all(demoNames.map((d) => demo(d.file)));
  examples.value = outings.flatMap(vehiclesIn);
}

const known = (vehicles: readonly Json[], vehicle: Json): boolean => {
  const text = writeFile(vehicle);
  return vehicles.some((v) => writeFile(v) === text);
};

/** A vehicle that leaves the train is not lost: it goes to your own, unless the shed has it anyway. */
export function shelter(vehicle: Json): void {
  if (!known([...own.value, ...examples.value], vehicle)) void keep([...own.value, vehicle]);
}

export const discard = (vehicle: Json): Promise<void> => keep(own.value.filter((v) => v !== vehicle));

export const ownVehicles = (): readonly Json[] => own.value;

/** Own vehicles from a file of everything, added to those that are here. */
export const takeIn = (vehicles: readonly Json[]): Promise<void> =>
  keep([...own.value, ...vehicles.filter((v) => !known(own.value, v))]);

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
