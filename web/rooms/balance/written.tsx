/** A written quantity with what was understood of it below, or what is expected instead. */
import { useState } from 'preact/hooks';
import { understoodAs } from '../../../desk/understood.ts';
import type { Kind } from '../../../engine/base/quantity.ts';
import { Told } from '../../parts/form/slot.tsx';

interface Entry {
  readonly kind: Kind;
  readonly text: string;
  readonly set: (text: string) => void;
  /** SI of what is written, or undefined where it cannot be read. */
  readonly si: number | undefined;
}

export function useWritten(kind: Kind, first = ''): Entry {
  const [text, set] = useState(first);
  const echo = understoodAs(text, kind);
  return { kind, text, set, si: echo.ok ? echo.si : undefined };
}

interface Props {
  readonly id: string;
  readonly label: string;
  readonly entry: Entry;
}

export function Written({ id, label, entry: { kind, text, set } }: Props) {
  const echo = text.trim() === '' ? undefined : understoodAs(text, kind);
  return (
    <label for={id}>
      {label}
      <input
        id={id}
        value={text}
        aria-invalid={echo?.ok === false}
        aria-describedby={`${id}-told`}
        onInput={(e) => set(e.currentTarget.value)}
      />
      <Told id={id} echo={echo} />
    </label>
  );
}
