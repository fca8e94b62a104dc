/**
 * A store as one file: a line of canonical JSON for its head, then one for each record in their order, then one for each
 * name, if names go along. The same set is the same file, byte for byte; the head seals the rest.
 */
import { canonical, isCanonical } from './canonical.ts';
import { sha256, sha256Of } from './hash.ts';
import { personOf } from './names.ts';
import { fromBase64, type Photo, photoFaults, toBase64 } from './photos.ts';
import type { Row } from './record.ts';
import type { Named } from './store.ts';
import { type Depth, type Fault, inOrder, type Newest, newestOf, type Verified, verify } from './verify.ts';

interface FileHead {
  readonly heedway: 'records';
  readonly version: 1;
  readonly records: number;
  readonly names: number;
  /** Absent: none. */
  readonly photos?: number;
  readonly newest: readonly Newest[];
  /** SHA-256 of the whole file, but for itself. */
  readonly seal: string;
}

const sealOf = (head: Omit<FileHead, 'seal'>, lines: readonly string[]): Promise<string> =>
  sha256([canonical(head), ...lines].join('\n'));

const lineOf = ({ text, hash, signature }: Row): string =>
  canonical({ body: JSON.parse(text), hash, ...(signature === undefined ? {} : { signature }) });

/** @param verified rows that are as they were written: no other goes out @param names none, if they stay at home */
export async function storeFile(
  { entries }: Pick<Verified, 'entries'>,
  names: readonly Named[] = [],
  photos: readonly Photo[] = [],
): Promise<string> {
  const records = inOrder(entries).map(({ row }) => lineOf(row));
  const named = [...names]
    .sort((a, b) => (a.person < b.person ? -1 : 1))
    .map(({ person, salt, name }) => canonical({ name, person, salt }));
  const pictures = [...photos]
    .sort((a, b) => (a.hash < b.hash ? -1 : 1))
    .map(({ hash, bytes }) => canonical({ jpeg: toBase64(bytes), photo: hash }));
  const lines = [...records, ...named, ...pictures];
  const newest = newestOf(entries).sort((a, b) => (a.author + a.hash < b.author + b.hash ? -1 : 1));
  const head: Omit<FileHead, 'seal'> = {
    heedway: 'records',
    version: 1,
    records: records.length,
    names: named.length,
    ...(pictures.length === 0 ? {} : { photos: pictures.length }),
    newest,
  };
  const sealed: FileHead = { ...head, seal: await sealOf(head, lines) };
  return `${[canonical(sealed), ...lines].join('\n')}\n`;
}

export type FileFault =
  | Fault
  /** The file's first line is not as it was written, or does not fit the rest. */
  | { readonly what: 'head' }
  /** A line of a name that is not as it was written. */
  | { readonly what: 'name'; readonly row: number }
  /** A line of a photo whose bytes are not those of its hash. */
  | { readonly what: 'photo'; readonly row: number };

export interface StoreFile {
  readonly verified: Omit<Verified, 'faults'>;
  readonly names: readonly Named[];
  readonly photos: readonly Photo[];
  /** By the lines: record n is on line n + 2. */
  readonly faults: readonly FileFault[];
}

/** Whether bytes begin as such a file does. */
export const isStoreFile = (bytes: Uint8Array): boolean =>
  new TextDecoder().decode(bytes.subarray(0, 2000)).includes('"heedway":"records"');

/** Octets: no record and no name is a line as short as this. */
const SHORTEST = 100;

const NONE: StoreFile['verified'] = { entries: [], forks: [], unsigned: 0, unchecked: 0, vouched: 0 };

/** @param depth `each` at the door: what comes in is looked at for itself, whoever vouches for it */
export async function readStoreFile(bytes: Uint8Array, depth: Depth = 'each'): Promise<StoreFile> {
  // Millions of lines of nothing are told at once, and not read one by one.
  if (endsIn(bytes) > 1 + bytes.length / SHORTEST)
    return { verified: NONE, names: [], photos: [], faults: [{ what: 'head' }] };
  const lines = linesIn(bytes);
  const head = headIn(lines[0]);
  const rest = lines.slice(1);
  const isPhoto = (line: string): boolean => line.startsWith('{"jpeg":"');
  const count = head?.records ?? rest.filter((line) => !line.includes('"person":') && !isPhoto(line)).length;
  const pictured = head ? (head.photos ?? 0) : rest.filter(isPhoto).length;
  const from = Math.max(count, rest.length - pictured);
  const rows = rest.slice(0, count).map(rowIn);
  const verified = await verify(rows, head?.newest ?? [], { depth });
  const named = await Promise.all(rest.slice(count, from).map(nameIn));
  const names = named.filter((one) => one !== undefined);
  const pictures = await Promise.all(rest.slice(from).map(photoIn));
  const photos = pictures.filter((one) => one !== undefined);
  const there = new Map(photos.map(({ hash, bytes }) => [hash, bytes]));
  const fits =
    head !== undefined &&
    rest.length === head.records + head.names + pictured &&
    (await sealOf(unsealed(head), rest)) === head.seal;
  const inside: FileFault[] = [
    ...verified.faults,
    ...named.flatMap((one, i): FileFault[] => (one ? [] : [{ what: 'name', row: count + i }])),
    ...pictures.flatMap((one, i): FileFault[] => (one ? [] : [{ what: 'photo', row: from + i }])),
    ...(await photoFaults(verified.entries, async (hash) => there.get(hash))),
  ];
  // A seal that a broken line breaks says no more than that line does.
  const faults = fits || (head && inside.length > 0) ? inside : [{ what: 'head' } as const, ...inside];
  return { verified, names, photos, faults };
}

const unsealed = ({ seal: _, ...head }: FileHead): Omit<FileHead, 'seal'> => head;

const [exact, lenient] = [true, false].map((fatal) => new TextDecoder('utf-8', { ignoreBOM: true, fatal }));

/** A text whose bytes are not those of any text is no line that this program wrote. */
function lineIn(bytes: Uint8Array): string {
  try {
    return exact.decode(bytes);
  } catch {
    return `${lenient.decode(bytes)}\u0000`;
  }
}

const NEWLINE = 10;

/** How many lines end in it. */
function endsIn(bytes: Uint8Array): number {
  let ends = 0;
  for (const byte of bytes) if (byte === NEWLINE) ends++;
  return ends;
}

/** Lines by their bytes. */
function linesIn(bytes: Uint8Array): string[] {
  const lines: string[] = [];
  for (let from = 0; from < bytes.length; ) {
    const end = bytes.indexOf(NEWLINE, from);
    const to = end < 0 ? bytes.length : end;
    const text = lineIn(bytes.subarray(from, to));
    // The last line ends too.
    lines.push(end >= 0 ? text : `${text}\u0000`);
    from = to + 1;
  }
  return lines;
}

const isNewest = (one: unknown): boolean => {
  const { author, hash, number } = (one ?? {}) as Partial<Newest>;
  return typeof author === 'string' && typeof hash === 'string' && Number.isSafeInteger(number);
};

function headIn(line: string | undefined): FileHead | undefined {
  try {
    const json = JSON.parse(line ?? '') as FileHead;
    const right =
      isCanonical(line ?? '', json) &&
      json.heedway === 'records' &&
      json.version === 1 &&
      [json.records, json.names, json.photos ?? 0].every((n) => Number.isSafeInteger(n) && n >= 0) &&
      Array.isArray(json.newest) &&
      json.newest.every(isNewest);
    return right ? json : undefined;
  } catch {
    return undefined;
  }
}

/** A line that is none keeps its place, and is found altered there. */
function rowIn(line: string): Row {
  try {
    const json = JSON.parse(line) as { body: unknown; hash: string; signature?: string };
    const { body, hash, signature, ...other } = json;
    if (isCanonical(line, json) && typeof hash === 'string' && Object.keys(other).length === 0)
      return {
        text: canonical(body),
        hash,
        ...(signature === undefined ? {} : { signature: `${signature}` }),
      };
  } catch {
    // Told as altered.
  }
  return { text: line, hash: '' };
}

async function nameIn(line: string): Promise<Named | undefined> {
  try {
    const { name, person, salt, ...other } = JSON.parse(line) as Named;
    const right =
      canonical({ name, person, salt }) === line &&
      Object.keys(other).length === 0 &&
      typeof name === 'string' &&
      (await personOf(name, salt)) === person;
    return right ? { name, person, salt } : undefined;
  } catch {
    return undefined;
  }
}

async function photoIn(line: string): Promise<Photo | undefined> {
  try {
    const { jpeg, photo, ...other } = JSON.parse(line) as { readonly jpeg: string; readonly photo: string };
    const bytes = fromBase64(jpeg);
    const right =
      bytes !== undefined &&
      Object.keys(other).length === 0 &&
      canonical({ jpeg, photo }) === line &&
      (await sha256Of(bytes)) === photo;
    return right ? { hash: photo, bytes } : undefined;
  } catch {
    return undefined;
  }
}
