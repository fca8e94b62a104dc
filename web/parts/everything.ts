/**
 * Everything that the reader has here as one file: the outing alone, or, where there are vehicles of their own
 * in the shed or tests that are being written, all in one wrapper. Written byte for byte alike for the same contents.
 */

import { type OpenTried, openTriedFile } from '../../desk/trying.ts';
import { type FileProblem, type Read, readOuting, readVehicle, writeFile } from '../../papers/index.ts';
import { readJson } from '../../papers/json.ts';
import { type FieldPath, fileProblem, show } from '../../papers/problem.ts';
import { decodeText } from '../../papers/text.ts';
import { isTried } from '../../papers/tried.ts';
import type { Json } from '../state/session.ts';
import type { Draft, Drafts } from './drafts.ts';

export interface Everything {
  /** The file of an outing, or of one with what is tried on it. */
  readonly outing: Json;
  readonly vehicles: readonly Json[];
  /** Records that are being written, by kind of test. */
  readonly drafts?: Drafts;
}

/** As read, with what is tried on the outing. */
export interface OpenEverything extends Everything {
  readonly tried?: OpenTried;
}

const WRAPPER = 'everything';
const VERSION = 1;

export function writeEverything({ outing, vehicles, drafts = {} }: Everything): string {
  const begun = Object.keys(drafts).length > 0;
  return vehicles.length === 0 && !begun
    ? writeFile(outing)
    : writeFile({ heedway: WRAPPER, version: VERSION, outing, vehicles, ...(begun ? { drafts } : {}) });
}

const nothing = async (): Promise<undefined> => undefined;

/** An outing file, with or without what is tried, or a file of everything; every problem in it with its place. */
export async function readEverything(
  content: Uint8Array | string,
  name: string,
): Promise<Read<OpenEverything>> {
  const decoded = decodeText(content);
  if (!decoded.ok) return { ok: false, problems: [fileProblem(name, decoded.trouble)] };
  const text = readJson(decoded.text);
  const json = text.value as Json | undefined;
  if (text.troubles.length > 0 || json?.['heedway'] !== WRAPPER) {
    if (isTried(json) && text.troubles.length === 0) return readTriedPart(json, name);
    const read = await readOuting({ path: name, content }, nothing);
    return read.ok ? { ok: true, value: { outing: json as Json, vehicles: [] } } : read;
  }
  const placed = (path: FieldPath, found: string, expected: string): FileProblem =>
    fileProblem(name, { path, found, expected }, text.position(path));
  const odd = Object.keys(json).find(
    (k) => !['heedway', 'version', 'outing', 'vehicles', 'drafts'].includes(k),
  );
  const problems: FileProblem[] = [];
  if (odd) problems.push(placed([odd], `the unknown field "${odd}"`, 'outing, vehicles and drafts'));
  if (json['version'] !== VERSION)
    problems.push(
      placed(['version'], show(json['version']), `${VERSION}: a newer Heedway may have made this file`),
    );
  if (!Array.isArray(json['vehicles'])) problems.push(placed(['vehicles'], 'no list', 'a list of vehicles'));
  const drafts = draftsIn(json['drafts']);
  if (!drafts)
    problems.push(placed(['drafts'], show(json['drafts']), 'records of tests, each under its kind'));
  if (problems.length > 0) return { ok: false, problems };
  const vehicles = json['vehicles'] as Json[];
  const tried = isTried(json['outing']) ? await readTriedPart(json['outing'], name) : undefined;
  if (tried && !tried.ok) problems.push(...tried.problems);
  const parts = [
    ...(tried ? [] : [{ path: ['outing'], json: json['outing'], read: readOuting }]),
    ...vehicles.map((vehicle, i) => ({ path: ['vehicles', i], json: vehicle, read: readVehicle })),
  ];
  for (const part of parts) {
    const entry = { path: name, content: JSON.stringify(part.json ?? null) };
    const read: Read<unknown> = await part.read(entry, nothing);
    if (!read.ok)
      problems.push(
        ...read.problems.map((p) => placed([...part.path, ...fieldsOf(p.path)], p.found, p.expected)),
      );
  }
  return problems.length > 0
    ? { ok: false, problems }
    : {
        ok: true,
        value: {
          outing: json['outing'] as Json,
          vehicles,
          ...(drafts && Object.keys(drafts).length > 0 ? { drafts } : {}),
          ...(tried?.ok ? { tried: tried.value.tried } : {}),
        },
      };
}

/** Each a record of its kind, however far it is written; undefined: something else. */
function draftsIn(json: unknown = {}): Drafts | undefined {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return undefined;
  const drafts = Object.entries(json as Record<string, Partial<Draft> | null>);
  const sound = ([kind, draft]: (typeof drafts)[number]): boolean =>
    /^[a-z-]+$/.test(kind) &&
    draft?.record?.['heedway'] === 'test' &&
    (draft.record['test'] as Json | undefined)?.['kind'] === kind;
  if (!drafts.every(sound)) return undefined;
  // How long a stopwatch ran on another device says nothing here.
  return Object.fromEntries(
    drafts.map(([kind, draft]) => {
      const { record, vehicle, without, riders, alike } = draft as Draft;
      return [
        kind,
        {
          record,
          ...(typeof vehicle === 'string' ? { vehicle } : {}),
          ...(Array.isArray(without) ? { without: without.map(String) } : {}),
          ...(riders === true ? { riders } : {}),
          ...(alike === true ? { alike } : {}),
        },
      ];
    }),
  );
}

async function readTriedPart(
  json: Json,
  name: string,
): Promise<Read<OpenEverything & { readonly tried: OpenTried }>> {
  const read = await openTriedFile(json, name, nothing);
  return read.ok ? { ok: true, value: { outing: json, vehicles: [], tried: read.value } } : read;
}

/** `curves[2].radius` → `['curves', 2, 'radius']` */
const fieldsOf = (path: string): FieldPath =>
  [...path.matchAll(/\[(\d+)\]|\["([^"]*)"\]|([^.[\]]+)/g)].map(([, index, quoted, plain]) =>
    index === undefined ? (quoted ?? plain) : Number(index),
  );
