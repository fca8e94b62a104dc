/**
 * Migrations: how a file of an older version becomes one of the newest. Numbered, append-only; each takes
 * plain JSON of version n to version n + 1. Files are migrated as they are read and never rewritten.
 */
import type { FileKind } from '../schema/index.ts';

type Json = Record<string, unknown>;

export interface Migration {
  readonly kind: FileKind;
  /** From this version to the next. */
  readonly from: number;
  readonly change: (file: Json) => Json;
}

/** Version 0 is the trial format: lines called their survey points `points`, vehicles their mass `weight`. */
export const migrations: readonly Migration[] = [
  { kind: 'line', from: 0, change: (file) => renamed(file, 'points', 'profile') },
  { kind: 'vehicle', from: 0, change: (file) => renamed(file, 'weight', 'tare') },
  { kind: 'train', from: 0, change: (file) => file },
  { kind: 'host', from: 0, change: (file) => file },
  { kind: 'outing', from: 0, change: (file) => file },
  { kind: 'test', from: 0, change: (file) => file },
];

function renamed(file: Json, before: string, after: string): Json {
  return Object.fromEntries(
    Object.entries(file).map(([key, value]) => [key === before ? after : key, value]),
  );
}

/** The file at the newest version. Versions that no migration starts from are left for the caller to refuse. */
export function migrate(kind: FileKind, file: Json, newest: number): Json {
  let now = file;
  for (let version = Number(file['version']); version < newest; version++) {
    const step = migrations.find((m) => m.kind === kind && m.from === version);
    if (!step) return now;
    now = { ...step.change(now), version: version + 1 };
  }
  return now;
}
