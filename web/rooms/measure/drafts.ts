/** Records that are being written, one of each test, kept on the device: a phone may be put away between two runs. */
import { signal } from '@preact/signals';
import { blankRecord } from '../../../desk/measured/record.ts';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import { edited, type Json, unkept } from '../../state/session.ts';
import type { Watch } from './watch.ts';

export interface Draft {
  readonly record: Json;
  /** The vehicle that is tested by itself. */
  readonly vehicle?: string;
  /** Vehicles that stay behind. */
  readonly without?: readonly string[];
  readonly riders?: boolean;
  readonly watch?: Watch;
}

const KEY = 'heedway-measuring';

function kept(): Readonly<Record<string, Draft>> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}');
  } catch {
    return {};
  }
}

const drafts = signal(kept());

const today = (): string => {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

export const draftOf = (kind: TestKind, rail: string): Draft =>
  drafts.value[kind] ?? { record: blankRecord(kind, today(), rail) as Json };

export function put(kind: TestKind, draft: Draft | undefined): void {
  const { [kind]: _old, ...rest } = drafts.value;
  drafts.value = draft ? { ...rest, [kind]: draft } : rest;
  try {
    localStorage.setItem(KEY, JSON.stringify(drafts.value));
  } catch {
    unkept.value = 'The browser could not keep what you measured: save the record as a file.';
  }
}

export const write = (
  kind: TestKind,
  draft: Draft,
  path: readonly (string | number)[],
  value: unknown,
): void => put(kind, { ...draft, record: edited(draft.record, path, value) as Json });
