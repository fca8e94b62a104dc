/** Records of tests that are being written, one of each test, kept on the device: a phone may be put away between two runs. */
import { signal } from '@preact/signals';
import type { TestKind } from '../../engine/calibrate/tests/index.ts';
import type { Watch } from '../rooms/measure/watch.ts';
import { type Json, unkept } from '../state/session.ts';

export interface Draft {
  readonly record: Json;
  /** The vehicle that is tested by itself. */
  readonly vehicle?: string;
  /** Vehicles that stay behind. */
  readonly without?: readonly string[];
  readonly riders?: boolean;
  /** Taken for the vehicles built alike as well. */
  readonly alike?: boolean;
  readonly watch?: Watch;
}

export type Drafts = Readonly<Record<string, Draft>>;

const KEY = 'heedway-measuring';

function kept(): Drafts {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}');
  } catch {
    return {};
  }
}

const drafts = signal(kept());

/** Undefined: none is being written. */
export const draftHere = (kind: TestKind): Draft | undefined => drafts.value[kind];
export const allDrafts = (): Drafts => drafts.value;

function keep(next: Drafts): void {
  drafts.value = next;
  try {
    localStorage.setItem(KEY, JSON.stringify(next));
  } catch {
    unkept.value = 'The browser could not keep what you measured: save the record as a file.';
  }
}

export function put(kind: TestKind, draft: Draft | undefined): void {
  const { [kind]: _old, ...rest } = drafts.value;
  keep(draft ? { ...rest, [kind]: draft } : rest);
}

/** From a file: those that are being written here stay as they are. */
export const takeDrafts = (others: Drafts): void => keep({ ...others, ...drafts.value });
