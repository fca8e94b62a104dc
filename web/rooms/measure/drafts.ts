/** The record that is being written, blank at first. */
import { blankRecord } from '../../../desk/measured/record.ts';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import { type Draft, draftHere, put } from '../../parts/drafts.ts';
import { edited, type Json } from '../../state/session.ts';

export const today = (): string => {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

export const draftOf = (kind: TestKind, rail: string): Draft =>
  draftHere(kind) ?? { record: blankRecord(kind, today(), rail) as Json };

export const write = (
  kind: TestKind,
  draft: Draft,
  path: readonly (string | number)[],
  value: unknown,
): void => put(kind, { ...draft, record: edited(draft.record, path, value) as Json });
