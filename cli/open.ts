/** Opening files for commands: limits, clear faults, nothing thrown at the user. */
import { realpath } from 'node:fs/promises';
import { dirname, resolve, sep } from 'node:path';
import { carried } from '../desk/carried.ts';
import type { Kind } from '../engine/base/quantity.ts';
import type { HostRules, Outing } from '../engine/outing/types.ts';
import {
  bundleOuting,
  type Entry,
  type FileProblem,
  type Load,
  readHost,
  readOuting,
  tellProblem,
} from '../papers/index.ts';
import { readJson } from '../papers/json.ts';
import { decodeText } from '../papers/text.ts';
import { parseQuantity } from '../units/index.ts';
import { chainage, type Voice } from '../words/voice.ts';
import { UsageFault } from './command.ts';
import { contentOf, reasonOf } from './file.ts';

/** The words of a running card's code, or a link that somebody shared, in place of a file. */
export const isCode = (text: string): boolean => /^\s*HEEDWAY:\d|#code=/.test(text);

/** What stands for it where the name of a file would. */
export const THE_CODE = 'the code';

/** @param most bytes that a file of the kind has */
export async function openFile(path: string, most?: number): Promise<Entry> {
  if (isCode(path))
    return { path: THE_CODE, content: await outingOf(THE_CODE, new TextEncoder().encode(path)) };
  const content = await contentOf(path, most);
  if ('bytes' in content) return { path, content: await outingOf(path, content.bytes) };
  throw new UsageFault(`${path}: found ${content.unread}; expected ${content.expected}`);
}

/** The outing that a code, a link or the PDF of a card carries; any other file as it is. */
async function outingOf(path: string, bytes: Uint8Array): Promise<Uint8Array> {
  const inside = await carried(bytes);
  if (!inside) return bytes;
  if ('fault' in inside) throw new UsageFault(`${path}: ${inside.fault}`);
  if (inside.length > 1)
    throw new UsageFault(
      `${path}: found the cards of ${inside.length} trains; expected one: open it in the workbench`,
    );
  return inside[0];
}

const within = (folder: string, path: string): boolean =>
  path.startsWith(folder.endsWith(sep) ? folder : folder + sep);

/** Files that an outing refers to, from the disk: none that a link leads to outside the folder of the first. */
const loadBeside =
  (first: string): Load =>
  async (path) => {
    try {
      const [home, real] = await Promise.all([realpath(dirname(first)), realpath(path)]);
      if (!within(home, real)) return { unread: 'a link that leads out of the folder of the first file' };
      const content = await contentOf(real);
      return 'bytes' in content ? content.bytes : { unread: content.unread };
    } catch (error) {
      return { unread: reasonOf(error) };
    }
  };

/** What a JSON file holds; undefined: it is none. */
export async function jsonIn(path: string): Promise<unknown> {
  const text = decodeText((await openFile(path)).content);
  return text.ok ? readJson(text.text).value : undefined;
}

/** An entry by its whole path, with how the files beside it are read. */
export function fromDisk({ path, content }: Entry): { readonly entry: Entry; readonly load: Load } {
  const whole = resolve(path);
  return { entry: { path: whole, content }, load: loadBeside(whole) };
}

export async function openOutingFile(path: string): Promise<Outing> {
  const { entry, load } = fromDisk(await openFile(path));
  const read = await readOuting(entry, load);
  if (read.ok) return read.value;
  throw refusal(fromHere(read.problems));
}

export async function openHostFile(path: string): Promise<HostRules> {
  const read = await readHost(fromDisk(await openFile(path)).entry);
  if (read.ok) return read.value;
  throw refusal(fromHere(read.problems));
}

/** Files by how somebody who stands here would name them. */
function fromHere(problems: readonly FileProblem[]): FileProblem[] {
  const here = `${process.cwd()}/`;
  return problems.map((p) => ({
    ...p,
    file: p.file.startsWith(here) ? p.file.slice(here.length) : p.file,
  }));
}

/** The outing's file with all that it refers to put in, as it was written. */
export async function bundleFile(path: string): ReturnType<typeof bundleOuting> {
  const { entry, load } = fromDisk(await openFile(path));
  return bundleOuting(entry, load);
}

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
