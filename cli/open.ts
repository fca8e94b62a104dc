/** Opening files for commands: limits, clear faults, nothing thrown at the user. */
import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Kind } from '../engine/base/quantity.ts';
import type { Outing } from '../engine/outing/types.ts';
import {
  bundleOuting,
  type Entry,
  type FileProblem,
  type Load,
  readOuting,
  tellProblem,
} from '../papers/index.ts';
import { parseQuantity } from '../units/index.ts';
import { chainage, type Voice } from '../words/voice.ts';
import { UsageFault } from './command.ts';

/** No file of ours is larger. */
const LARGEST = 8 * 1024 * 1024;

export async function openFile(path: string): Promise<Entry> {
  const info = await stat(path).catch(() => undefined);
  if (!info) throw new UsageFault(`${path}: found no such file; expected a file that can be read`);
  if (info.isDirectory()) throw new UsageFault(`${path}: found a folder; expected a file`);
  if (info.size > LARGEST) {
    const found = (info.size / 1024 / 1024).toFixed(1);
    throw new UsageFault(
      `${path}: found a file of ${found} MB; expected at most ${LARGEST / 1024 / 1024} MB`,
    );
  }
  return { path, content: await readFile(path) };
}

/** Files that an outing refers to, from the disk. */
export const loadFromDisk: Load = async (path) => {
  const info = await stat(path).catch(() => undefined);
  if (!info?.isFile() || info.size > LARGEST) return undefined;
  return readFile(path).catch(() => undefined);
};

export async function openOutingFile(path: string): Promise<Outing> {
  const entry = await openFile(path);
  const read = await readOuting({ ...entry, path: resolve(path) }, loadFromDisk);
  if (read.ok) return read.value;
  const here = `${process.cwd()}/`;
  const problems = read.problems.map((p) => ({
    ...p,
    file: p.file.startsWith(here) ? p.file.slice(here.length) : p.file,
  }));
  throw refusal(problems);
}

/** The outing's file with all that it refers to put in, as it was written. */
export const bundleFile = async (path: string): ReturnType<typeof bundleOuting> =>
  bundleOuting({ path: resolve(path), content: await readFile(path) }, loadFromDisk);

/** What is wrong with a file, a line for each problem. */
export const refusal = (problems: readonly FileProblem[]): UsageFault =>
  new UsageFault(problems.map(tellProblem).join('\n'), problems);

/** A quantity given on the command line. */
export function quantityOf(text: string, kind: Kind, name: string): number {
  const read = parseQuantity(text, kind, name);
  if (!read.ok) throw new UsageFault(read.problem.message, [read.problem]);
  return read.si;
}

/** A speed from standing up, m/s. */
export function speedOf(text: string, name: string): number {
  const speed = quantityOf(text, 'speed', name);
  if (speed >= 0) return speed;
  throw new UsageFault(`${name}: found ${text}; expected a speed that is not negative`);
}

/** A place on the line of the outing, m. */
export function placeOf(text: string, name: string, voice: Voice): number {
  const at = quantityOf(text, 'length', name);
  const { length } = voice.outing.line;
  if (at >= 0 && at <= length) return at;
  throw new UsageFault(`${name}: found ${text}; expected a place from 0 to ${chainage(voice, length)}`);
}
