/**
 * Reading files: text to JSON to schema to engine, following references to other files. All problems of all
 * files are gathered; nothing is thrown for what a user can cause.
 *
 * A part of a file may stand inline or as {"file": "path"}, relative to the file that names it.
 */

import type { HostRules, Outing } from '../engine/outing/types.ts';
import type { Line } from '../engine/things/line/types.ts';
import type { Train } from '../engine/things/train/types.ts';
import type { Vehicle } from '../engine/things/vehicle/types.ts';
import { type Checked, checkFile } from './check.ts';
import { amissHere } from './compile/amiss.ts';
import { compileLine } from './compile/line.ts';
import { type Notes, newNotes } from './compile/notes.ts';
import { compileHost, compileOuting, compileTrain } from './compile/outing.ts';
import { compileVehicle } from './compile/vehicle.ts';
import { noteWritten } from './compile/written.ts';
import { type JsonText, MOST_TOLD, readJson, TOO_MANY } from './json.ts';
import { type FieldPath, type FileProblem, fileProblem, show, type Trouble } from './problem.ts';
import type { FileKind, HostFile, LineFile, OutingFile, TrainFile, VehicleFile } from './schema/index.ts';
import type { OutingPart } from './schema/outing-files.ts';
import { decodeText } from './text.ts';

/** A file that is there and cannot be read, or must not be: what was found in its place. */
export interface Unread {
  readonly unread: string;
}

/** Bytes or text of a file by path; undefined: there is none. */
export type Load = (path: string) => Promise<Uint8Array | string | Unread | undefined>;

export interface Entry {
  readonly path: string;
  readonly content: Uint8Array | string;
}

export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** A place in a file where a part stands: the JSON of the part and how to report on it. */
export interface Part {
  readonly json: unknown;
  readonly file: string;
  readonly prefix: FieldPath;
  readonly text: JsonText | undefined;
  /** Files on the way here, to find circles. */
  readonly chain: readonly string[];
}

/** What is gathered on the way through the files. */
export class Reading {
  readonly problems: FileProblem[] = [];
  readonly notes: Notes = newNotes();
  private readonly load: Load;
  /** The file that was asked for: nothing outside its folder is read. */
  private readonly first: string;
  private readonly texts = new Map<string, JsonText | undefined>();

  constructor(load: Load, first: string) {
    this.load = load;
    this.first = first;
  }

  report(part: Part, { path, found, expected }: Trouble): void {
    if (this.problems.length > MOST_TOLD) return;
    if (this.problems.length === MOST_TOLD)
      return void this.problems.push(fileProblem(part.file, { path: [], ...TOO_MANY }));
    const full = [...part.prefix, ...path];
    this.problems.push(fileProblem(part.file, { path: full, found, expected }, part.text?.position(full)));
  }

  /** The whole of a file as a part. */
  open(path: string, content: Uint8Array | string, chain: readonly string[]): Part | undefined {
    const decoded = decodeText(content);
    if (!decoded.ok) {
      this.problems.push(fileProblem(path, decoded.trouble));
      return undefined;
    }
    const text = readJson(decoded.text);
    this.texts.set(path, text);
    const part: Part = { json: text.value, file: path, prefix: [], text, chain: [...chain, path] };
    for (const trouble of text.troubles) {
      this.problems.push(fileProblem(path, trouble, trouble));
    }
    return text.troubles.length > 0 ? undefined : part;
  }

  /** A part that stands inline or in a file of its own. */
  async part(of: Part, path: FieldPath, json: unknown): Promise<Part | undefined> {
    const inline: Part = { ...of, json, prefix: [...of.prefix, ...path] };
    if (json === undefined) {
      this.report(of, { path, found: 'nothing', expected: 'the part itself, or {"file": "path of a file"}' });
      return undefined;
    }
    const reference = fileOf(json);
    if (reference === undefined) return inline;
    const at = [...path, 'file'];
    const target = resolvePath(of.file, reference, this.first);
    if (target === undefined) {
      this.report(of, {
        path: at,
        found: show(reference),
        expected: 'a path within the folder of the first file',
      });
      return undefined;
    }
    if (of.chain.includes(target)) {
      this.report(of, {
        path: at,
        found: `a circle: ${[...of.chain, target].join(' → ')}`,
        expected: 'files that do not refer back to themselves',
      });
      return undefined;
    }
    const content = await this.load(target);
    if (content === undefined) {
      this.report(of, { path: at, found: show(reference), expected: `a file that can be read at ${target}` });
      return undefined;
    }
    if (typeof content === 'object' && 'unread' in content) {
      const found = `${show(reference)}: ${content.unread}`;
      this.report(of, {
        path: at,
        found,
        expected: 'a file that can be read, within the folder of the first file',
      });
      return undefined;
    }
    return this.open(target, content, of.chain);
  }

  check<K extends OutingPart>(kind: K, part: Part) {
    return this.checked(kind, part, checkFile(kind, part.json));
  }

  /** What came of a part that was checked: reported, or noted as written. */
  checked<T>(kind: FileKind, part: Part, checked: Checked<T>): T | undefined {
    if (checked.ok) {
      noteWritten(kind, part.json, this.notes);
      return checked.value;
    }
    for (const trouble of checked.troubles) this.report(part, trouble);
    return undefined;
  }

  /** Run a compile step; its troubles are reported at the part. */
  compile<T>(part: Part, step: (notes: Notes) => T): T {
    const notes: Notes = { assumptions: this.notes.assumptions, troubles: [] };
    const made = step(notes);
    for (const trouble of notes.troubles) this.report(part, trouble);
    return made;
  }
}

const fileOf = (json: unknown): string | undefined => {
  if (typeof json !== 'object' || json === null || !('file' in json)) return undefined;
  const { file } = json as { file: unknown };
  return typeof file === 'string' ? file : undefined;
};

const foldersOf = (file: string): string[] =>
  file
    .split('/')
    .slice(0, -1)
    .filter((part) => part !== '' && part !== '.');

/**
 * Path of a reference from the file that makes it; undefined where it is absolute, or leads out of the folder of the
 * first file.
 */
export function resolvePath(from: string, reference: string, first: string): string | undefined {
  if (/^([a-z]+:|\/|\\)/i.test(reference)) return undefined;
  const parts = foldersOf(from);
  const home = foldersOf(first);
  for (const part of reference.split(/[\\/]/)) {
    if (part === '' || part === '.') continue;
    if (part !== '..') parts.push(part);
    else if (parts.length > home.length) parts.pop();
    else return undefined;
  }
  return (from.startsWith('/') ? '/' : '') + parts.join('/');
}

/** Reads a file as what `read` makes of it. */
export async function run<T>(
  entry: Entry,
  load: Load,
  read: (reading: Reading, part: Part) => Promise<T | undefined>,
): Promise<Read<T>> {
  const reading = new Reading(load, entry.path);
  const part = reading.open(entry.path, entry.content, []);
  const value = part && (await read(reading, part));
  return reading.problems.length > 0 || value === undefined
    ? { ok: false, problems: reading.problems }
    : { ok: true, value };
}

async function lineFrom(reading: Reading, part: Part): Promise<{ file: LineFile; line: Line } | undefined> {
  const file = reading.check('line', part);
  if (!file || !(await keptTestsRead(reading, part, file.tests))) return undefined;
  const line = reading.compile(part, (notes) => compileLine(file, notes));
  if (!file.tracks) return { file, line };
  // Few lines have any: fetched for those alone.
  const { tracksOf } = await import('./compile/tracks.ts');
  const tracks = reading.compile(part, (notes) => tracksOf(file, line, notes));
  return { file, line: { ...line, tracks } };
}

/** The outing over the whole of its line, or over a route over its tracks. */
async function runOver(
  reading: Reading,
  part: Part,
  file: OutingFile,
  parts: { readonly line: Line; readonly train: Train; readonly host: HostRules },
): Promise<Outing> {
  const { line, train } = parts;
  const amiss = reading.compile(part, (notes) => amissHere(file, line, train, notes));
  const compiled = (over: Line, as: Train): Outing => ({
    ...reading.compile(part, (notes) => compileOuting(file, over, as, parts.host, notes)),
    ...amiss,
  });
  if (!file.route) {
    if (file.move !== undefined)
      reading.report(part, {
        path: ['move'],
        found: 'a move without a route',
        expected: '"route" beside it',
      });
    return compiled(line, train);
  }
  const { alongMove, routeOver } = await import('./compile/route.ts');
  const moves = reading.compile(part, (notes) => routeOver(file, line, train, notes));
  if (moves.length === 0) return compiled(line, train);
  return alongMove((file.move ?? 1) - 1, moves, line, train, compiled);
}

export async function vehicleFrom(reading: Reading, part: Part): Promise<VehicleFile | undefined> {
  const file = reading.check('vehicle', part);
  return file && (await keptTestsRead(reading, part, file.tests)) ? file : undefined;
}

/** Tests that a paper keeps: nothing is reckoned from them, but what is kept can be read again. Few papers keep any. */
async function keptTestsRead(reading: Reading, of: Part, tests: readonly unknown[] = []): Promise<boolean> {
  if (tests.length === 0) return true;
  const { checkTest } = await import('./test/check.ts');
  const known = reading.problems.length;
  tests.forEach((json, i) => {
    reading.checked('test', { ...of, json, prefix: [...of.prefix, 'tests', i] }, checkTest(json));
  });
  return reading.problems.length === known;
}

async function trainFrom(
  reading: Reading,
  part: Part,
): Promise<{ file: TrainFile; vehicles: VehicleFile[]; train: Train } | undefined> {
  const file = reading.check('train', part);
  if (!file) return undefined;
  const vehicles: VehicleFile[] = [];
  for (const [i, member] of file.vehicles.entries()) {
    const at = await reading.part(part, ['vehicles', i, 'vehicle'], member.vehicle);
    const vehicle = at && (await vehicleFrom(reading, at));
    if (!at || !vehicle) continue;
    // Troubles inside the vehicle are reported at the vehicle's own file.
    reading.compile(at, (notes) =>
      compileVehicle(vehicle, `${i}`, vehicle.name, { assumptions: [], troubles: notes.troubles }),
    );
    vehicles.push(vehicle);
  }
  if (vehicles.length < file.vehicles.length) return undefined;
  const quiet = reading.problems.length;
  const train = reading.compile(part, (notes) => {
    const own: Notes = { assumptions: notes.assumptions, troubles: [] };
    const made = compileTrain(file, vehicles, own);
    notes.troubles.push(
      ...own.troubles.filter((t) => t.path[0] === 'vehicles' || t.path[0] === 'pipeBrokenAfter'),
    );
    return made;
  });
  return reading.problems.length > quiet ? undefined : { file, vehicles, train };
}

const hostFrom = (reading: Reading, part: Part): { file: HostFile; host: HostRules } | undefined => {
  const file = reading.check('host', part);
  return file && { file, host: reading.compile(part, (notes) => compileHost(file, notes)) };
};

export async function outingFrom(reading: Reading, part: Part): Promise<Outing | undefined> {
  const file: OutingFile | undefined = reading.check('outing', part);
  const raw = part.json as Record<string, unknown> | null;
  const at = (key: string) =>
    reading.part(part, [key], raw && typeof raw === 'object' ? raw[key] : undefined);
  const linePart = await at('line');
  const line = linePart && (await lineFrom(reading, linePart));
  const trainPart = await at('train');
  const train = trainPart && (await trainFrom(reading, trainPart));
  const hostPart = await at('host');
  const host = hostPart && hostFrom(reading, hostPart);
  const read = file && (await keptTestsRead(reading, part, file.tests));
  if (!file || !read || !line || !train || !host) return undefined;
  return runOver(reading, part, file, { line: line.line, train: train.train, host: host.host });
}

const none: Load = async () => undefined;

export const readOuting = (entry: Entry, load: Load): Promise<Read<Outing>> => run(entry, load, outingFrom);

export const readLine = (entry: Entry): Promise<Read<Line>> =>
  run(entry, none, async (reading, part) => (await lineFrom(reading, part))?.line);

export const readVehicle = (entry: Entry): Promise<Read<Vehicle>> =>
  run(entry, none, async (reading, part) => {
    const file = await vehicleFrom(reading, part);
    return file && reading.compile(part, (notes) => compileVehicle(file, 'vehicle', file.name, notes));
  });

export const readTrain = (entry: Entry, load: Load): Promise<Read<Train>> =>
  run(entry, load, async (reading, part) => (await trainFrom(reading, part))?.train);

export const readHost = (entry: Entry): Promise<Read<HostRules>> =>
  run(entry, none, async (reading, part) => hostFrom(reading, part)?.host);

/** An outing's files as one file with everything inline: for another phone, for keeping. Plain JSON. */
export async function bundleOuting(entry: Entry, load: Load): Promise<Read<Record<string, unknown>>> {
  return run(entry, load, async (reading, part) => {
    const outing = await outingFrom(reading, part);
    if (!outing) return undefined;
    return inlined(reading, part) as Promise<Record<string, unknown>>;
  });
}

async function inlined(reading: Reading, part: Part): Promise<unknown> {
  const walk = async (json: unknown, path: FieldPath, of: Part): Promise<unknown> => {
    if (Array.isArray(json)) return Promise.all(json.map((item, i) => walk(item, [...path, i], of)));
    if (typeof json !== 'object' || json === null) return json;
    if (fileOf(json) !== undefined) {
      const target = await reading.part(of, path, json);
      return target ? walk(target.json, [], target) : json;
    }
    const entries = await Promise.all(
      Object.entries(json).map(async ([key, value]) => [key, await walk(value, [...path, key], of)] as const),
    );
    return Object.fromEntries(entries);
  };
  return walk(part.json, [], part);
}
