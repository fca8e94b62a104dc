/** A parsed file against its schema: the SI output, or every trouble in it at once. */
import type * as z from 'zod/mini';
import { MOST_TOLD } from './json.ts';
import { migrate } from './migrations/index.ts';
import { type FieldPath, show, type Trouble } from './problem.ts';
import type { FileKind } from './schema/index.ts';
import { type OutingPart, outingFiles, VERSION } from './schema/outing-files.ts';
import { type Definition, inner } from './schema/shape.ts';

export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly troubles: Trouble[] };

export const checkFile = <K extends OutingPart>(
  kind: K,
  json: unknown,
): Checked<z.output<(typeof outingFiles)[K]>> =>
  checkAs(kind, outingFiles[kind], json) as Checked<z.output<(typeof outingFiles)[K]>>;

/** A file of a kind against its schema. */
export function checkAs<S extends z.ZodMiniType>(
  kind: FileKind,
  schema: S,
  json: unknown,
): Checked<z.output<S>> {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return wrong(
      [],
      show(json),
      `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind} file: a group of fields that begins with "heedway": "${kind}"`,
    );
  }
  const file = json as Record<string, unknown>;
  if (file['heedway'] !== kind) return wrong(['heedway'], show(file['heedway']), `"${kind}"`);
  const version = file['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return wrong(['version'], show(version), `the version of the file's format, ${VERSION}`);
  }
  if (version > VERSION)
    return wrong(['version'], String(version), `at most ${VERSION}: this file was made by a newer Heedway`);
  return checkAgainst(schema, migrate(kind, file, VERSION), file);
}

/** @param written what a person sees of it, where it is not the same */
export function checkAgainst<S extends z.ZodMiniType>(
  schema: S,
  json: unknown,
  written = json,
): Checked<z.output<S>> {
  const result = schema.safeParse(json);
  if (result.success) return { ok: true, value: result.data as z.output<S> };
  return {
    ok: false,
    troubles: result.error.issues
      .slice(0, MOST_TOLD + 1)
      .flatMap((issue) => troublesOf(issue as Issue, written, schema)),
  };
}

const wrong = (path: FieldPath, found: string, expected: string): { ok: false; troubles: Trouble[] } => ({
  ok: false,
  troubles: [{ path, found, expected }],
});

interface Issue {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
  readonly keys?: readonly string[];
  readonly values?: readonly unknown[];
  readonly expected?: string;
  readonly params?: { readonly found: string; readonly expected: string };
  readonly minimum?: number;
  readonly maximum?: number;
  readonly origin?: string;
  readonly errors?: readonly (readonly Issue[])[];
}

const typeNames: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a group of fields',
  // Of what stands in a paper whole: a vehicle of a train, a line of an outing.
  nonoptional: 'it there, or {"file": "path of a file"}',
};

function troublesOf(issue: Issue, file: unknown, schema: unknown): Trouble[] {
  const found = show(valueAt(file, issue.path));
  if (issue.params)
    return [
      {
        path: issue.path,
        found: missing(file, issue.path) ?? issue.params.found,
        expected: issue.params.expected,
      },
    ];
  switch (issue.code) {
    case 'unrecognized_keys':
      return (issue.keys ?? []).slice(0, MOST_TOLD + 1).map((key) => ({
        path: [...issue.path, key],
        found: `the unknown field ${show(key)}`,
        expected: nearest(key, keysAt(schema, issue.path)),
      }));
    case 'invalid_value':
      return [{ path: issue.path, found, expected: (issue.values ?? []).map((v) => show(v)).join(' or ') }];
    case 'too_small':
      return [
        {
          path: issue.path,
          found,
          expected: `at least ${issue.minimum}${issue.origin === 'array' ? ' entries' : ''}`,
        },
      ];
    case 'too_big':
      return [
        {
          path: issue.path,
          found,
          expected: `at most ${issue.maximum}${issue.origin === 'array' ? ' entries' : ' letters'}`,
        },
      ];
    case 'invalid_type':
      return [
        {
          path: issue.path,
          found,
          expected: typeNames[issue.expected ?? ''] ?? issue.expected ?? 'something else',
        },
      ];
    case 'invalid_format':
      return [{ path: issue.path, found, expected: issue.message }];
    default:
      return [
        {
          path: issue.path,
          found,
          expected: issue.code === 'invalid_union' ? unionWords(issue) : issue.message,
        },
      ];
  }
}

const unionWords = (issue: Issue): string => {
  const values = (issue.errors ?? []).flat().flatMap((e) => e.values ?? []);
  return values.length > 0 ? values.map((v) => show(v)).join(' or ') : '"kind": "steam" or "kind": "drawbar"';
};

const missing = (file: unknown, path: FieldPath): string | undefined =>
  valueAt(file, path) === undefined ? 'nothing' : undefined;

function valueAt(file: unknown, path: FieldPath): unknown {
  let at = file;
  for (const part of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Record<string | number, unknown>)[part];
  }
  return at;
}

/** Fields that the schema knows at a path. */
function keysAt(schema: unknown, path: FieldPath): string[] {
  let at = schema as Definition | undefined;
  for (const part of path) {
    at = inner(at);
    at = typeof part === 'number' ? at?.def.element : at?.def.shape?.[part];
  }
  return Object.keys(inner(at)?.def.shape ?? {});
}

/** Letters of the longest field that anybody could have meant. */
const LONGEST_NAME = 40;

/** What the writer may have meant: the closest known field, else all of them. */
function nearest(key: string, known: readonly string[]): string {
  const near = key.length <= LONGEST_NAME ? known : [];
  const close = near
    .map((k) => ({ k, d: distance(key.toLowerCase(), k.toLowerCase()) }))
    .sort((a, b) => a.d - b.d)[0];
  if (close && close.d <= Math.max(2, key.length / 3)) return `perhaps "${close.k}"`;
  return known.length > 0 ? `one of ${known.join(', ')}` : 'no such field here';
}

/** Number of letters to put in, take out or change (Levenshtein). */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
    }
    row = next;
  }
  return row[b.length];
}
