/** What every field has in common: its place, its label, what is wrong with it, what is being typed. */
import { type Signal, useSignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext, useLayoutEffect } from 'preact/hooks';
import type { Understood } from '../../../desk/understood.ts';
import { edit, editTyping, problems } from '../../state/session.ts';
import { Choices } from './choices.ts';
import { named, type Path } from './path.ts';

/** A field anywhere: its value, and what to do with a new one; `undefined` takes it out. */
export interface Slot {
  readonly id: string;
  readonly label: string;
  /** The label stands on the page under the same id; else it is given to the reader of the page alone. */
  readonly labelled: boolean;
  readonly json: unknown;
  readonly optional: boolean;
  readonly set: (value: unknown) => void;
  /** The same while it is being typed, where it can be taken without waiting for the field to be left. */
  readonly setTyping?: (value: unknown) => void;
  /** Where it lies in the paper; absent for a row that is not in it yet. */
  readonly path?: Path;
  /** Values to choose from where the rest of the paper tells them, as the seats of a car. */
  readonly choices?: readonly string[];
}

/** The paper on which a form writes: the outing's, unless a room lays another one there. */
export interface Sheet {
  readonly edit: (path: Path, value: unknown) => void;
  readonly editTyping: (path: Path, value: unknown) => void;
  /** Nothing in it is folded up. */
  readonly open: boolean;
}
export const OnSheet = createContext<Sheet>({ edit, editTyping, open: false });

/** The slot of a field of the paper that is open, with what the rest of the paper offers for it. */
export function usePaperSlot(
  path: Path,
  field: Pick<Slot, 'label' | 'labelled' | 'json' | 'optional'>,
): Slot {
  const choices = useContext(Choices)(path);
  const sheet = useContext(OnSheet);
  return {
    ...field,
    id: `f-${named(path)}`,
    set: (value) => sheet.edit(path, value),
    setTyping: (value) => sheet.editTyping(path, value),
    path,
    ...(choices ? { choices } : {}),
  };
}

export const name = (slot: Slot) => (slot.labelled ? {} : { 'aria-label': slot.label });

export function problemAt(path: Path | undefined): { found: string; expected: string } | undefined {
  if (!path) return undefined;
  const at = named(path);
  return problems.value.find((p) => p.path === at || p.path.startsWith(`${at}.`));
}

export function Wrong({
  id,
  fault,
}: {
  readonly id: string;
  readonly fault: { found: string; expected: string };
}) {
  return (
    <span class="wrong" id={`${id}-told`}>
      found {fault.found}; expected {fault.expected}
    </span>
  );
}

/** What was understood of what is being written, or what is expected instead. */
export function Told({ id, echo }: { readonly id: string; readonly echo: Understood | undefined }) {
  return (
    <small id={`${id}-told`} class={echo?.ok === false ? 'wrong' : 'echo'}>
      {echo && (echo.ok ? echo.text : `found ${echo.found}; expected ${echo.expected}`)}
    </small>
  );
}

/**
 * What is being typed into a field: kept apart, so that an answer that arrives meanwhile does not wipe it.
 *
 * @param means whether what is typed says what is kept already, in other letters
 */
export function useTyped(kept: string, means?: (text: string) => boolean): Signal<string> {
  const text = useSignal(kept);
  // With the drawing itself: after the paint it would wipe what a quick hand has written by then.
  useLayoutEffect(() => {
    if (!means?.(text.value)) text.value = kept;
  }, [kept]);
  return text;
}
