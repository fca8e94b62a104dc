/** An example with its papers changed before they are read. */
import { readFile } from 'node:fs/promises';
import type { Outing } from '../../engine/outing/types.ts';
import { bundleOuting, readOuting } from '../../papers/index.ts';

const examples = new URL('../../examples/', import.meta.url).pathname;

export interface Paper {
  [field: string]: unknown;
}

export interface OutingPaper extends Paper {
  train: { vehicles: { vehicle: VehiclePaper; count?: number }[] };
  riders: { duty?: string; vehicle?: string }[];
}

export interface VehiclePaper extends Paper {
  role: string;
  brakes?: Paper[];
  rear: Paper;
}

export async function changedExample(name: string, change: (paper: OutingPaper) => void): Promise<Outing> {
  const path = `${examples}${name}.json`;
  const bundle = await bundleOuting({ path, content: await readFile(path) }, (p) => readFile(p));
  if (!bundle.ok) throw new Error(JSON.stringify(bundle.problems));
  const paper = structuredClone(bundle.value) as unknown as OutingPaper;
  change(paper);
  const read = await readOuting(
    { path: 'changed.json', content: JSON.stringify(paper) },
    async () => undefined,
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

export const vehiclesOf = (paper: OutingPaper): VehiclePaper[] => paper.train.vehicles.map((m) => m.vehicle);
