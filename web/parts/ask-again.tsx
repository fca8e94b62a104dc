/** What cannot be undone is asked for twice: what goes and what stays is told between, and a second tap at the same place keeps all. */
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

interface Props {
  /** On the first button. */
  readonly what: string;
  /** On the one that does it. */
  readonly sure: string;
  readonly keep: string;
  readonly disabled?: boolean;
  readonly does: () => void;
  /** What it does, as it is told before. */
  readonly children: ComponentChildren;
}

export function AskAgain({ what, sure, keep, disabled = false, does, children }: Props) {
  const asked = useSignal(false);
  const stay = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (asked.value) stay.current?.focus();
  }, [asked.value]);
  if (!asked.value)
    return (
      <button
        type="button"
        class="quiet"
        disabled={disabled}
        onClick={() => {
          asked.value = true;
        }}
      >
        {what}
      </button>
    );
  return (
    <div class="ask-again" role="alertdialog" aria-label={what}>
      <button
        type="button"
        ref={stay}
        onClick={() => {
          asked.value = false;
        }}
      >
        {keep}
      </button>
      {children}
      <button
        type="button"
        class="for-good"
        onClick={() => {
          asked.value = false;
          does();
        }}
      >
        {sure}
      </button>
    </div>
  );
}
