/** A written quantity with what was understood of it below, or what is expected instead. */
import { echoOf } from '../../../desk/echo.ts';
import type { Kind } from '../../../engine/quantity.ts';

interface Props {
  readonly id: string;
  readonly label: string;
  readonly kind: Kind;
  readonly value: string;
  readonly onInput: (text: string) => void;
}

export function Written({ id, label, kind, value, onInput }: Props) {
  const echo = value.trim() === '' ? undefined : echoOf(value, kind);
  return (
    <label for={id}>
      {label}
      <input
        id={id}
        value={value}
        aria-invalid={echo?.ok === false}
        aria-describedby={`${id}-told`}
        onInput={(e) => onInput(e.currentTarget.value)}
      />
      <small id={`${id}-told`} class={echo?.ok === false ? 'wrong' : 'echo'}>
        {echo && (echo.ok ? echo.text : `found ${echo.found}; expected ${echo.expected}`)}
      </small>
    </label>
  );
}

/** SI of what was written, or undefined where it cannot be read. */
export function read(text: string, kind: Kind): number | undefined {
  const echo = echoOf(text, kind);
  return echo.ok ? echo.si : undefined;
}
