/** A box to tick before its words, as high as a thumb needs. */
import type { ComponentChildren } from 'preact';

interface Props {
  readonly on: boolean;
  readonly set: (on: boolean) => void;
  readonly children: ComponentChildren;
}

export function Tick({ on, set, children }: Props) {
  return (
    <label class="tick">
      <input type="checkbox" checked={on} onChange={(e) => set(e.currentTarget.checked)} />
      {children}
    </label>
  );
}
