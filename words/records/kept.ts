/** How long records are kept and what has reached its end, in words. */
import { type RemovableKind, removableKinds } from '../../papers/record/kept-fields.ts';
import type { Rule } from '../../records/ended.ts';
import type { Gone } from '../../records/removed.ts';
import { kindWords } from './record.ts';

export const tellRules = (now: ReadonlyMap<RemovableKind, Rule>): string[] =>
  removableKinds.map((kind) => {
    const rule = now.get(kind);
    return `${kindWords[kind]}: ${rule ? `${rule.keep} (${rule.source})` : 'kept; nobody has said how long'}`;
  });

/** "3 have reached their end: 2 departure, 1 arrival." */
export function tellEnded(gone: readonly Gone[]): string[] {
  if (gone.length === 0)
    return ['Nothing has reached its end. What an answer still hangs on stays, whatever its age.'];
  const kinds = new Map<string, number>();
  for (const { kind } of gone) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const list = [...kinds].map(([kind, count]) => `${count} ${kindWords[kind as RemovableKind]}`).join(', ');
  return [
    `${gone.length} ${gone.length === 1 ? 'has' : 'have'} reached the end of the time for which they are kept: ${list}.`,
  ];
}
