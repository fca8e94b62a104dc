/** A figure as people write it: what was understood stands under it, how sure it is beside it. */
import { useSignal } from '@preact/signals';
import { understoodAs } from '../../../desk/understood.ts';
import type { Kind } from '../../../engine/base/quantity.ts';
import { type Json, typed } from '../../state/session.ts';
import { isGroup } from './path.ts';
import { Choice, Text } from './plain.tsx';
import { name, problemAt, type Slot, useTyped, Wrong } from './slot.tsx';

/** The text of a written quantity, plain or with its spread. */
export function writtenText(json: unknown): string {
  if (json === undefined || json === null) return '';
  if (!isGroup(json)) return String(json);
  const { value, unit } = json;
  return typeof value === 'number' && typeof unit === 'string' ? `${value} ${unit}` : String(value ?? '');
}

/** The long form with every figure as text, so that it needs no unit beside it. */
function loosened(json: Json): Json {
  const { unit, ...rest } = json;
  const text = (v: unknown): unknown =>
    typeof v === 'number' && typeof unit === 'string' ? `${v} ${unit}` : v;
  return Object.fromEntries(
    Object.entries(rest).map(([k, v]) => [k, k === 'value' || k === 'low' || k === 'high' ? text(v) : v]),
  );
}

/** The quantity with a new text for its value; a plain number stays one. */
function rewritten(json: unknown, text: string): unknown {
  if (isGroup(json)) return { ...loosened(json), value: text };
  return typeof json === 'number' && text !== '' && Number.isFinite(Number(text)) ? Number(text) : text;
}

interface FigureProps {
  readonly slot: Slot;
  readonly kind: Kind;
  readonly spread: boolean;
}

export function Figure({ slot, kind, spread }: FigureProps) {
  const kept = writtenText(slot.json);
  const written = (now: string): unknown =>
    now === '' && slot.optional ? undefined : rewritten(slot.json, now);
  const text = useTyped(kept, (now) => now.trim() !== '' && writtenText(written(now.trim())) === kept);
  const sure = useSignal(false);
  const echo = text.value.trim() === '' ? undefined : understoodAs(text.value, kind);
  const fault = echo && !echo.ok ? echo : problemAt(slot.path);
  const commit = (): void => {
    const now = text.value.trim();
    typed();
    if (writtenText(written(now)) !== kept) slot.set(written(now));
  };
  /** What is understood is kept at once: nobody waits for a field to be left before they put the phone away. */
  const follow = (now: string): void => {
    text.value = now;
    if (now.trim() !== '' && now.trim() !== kept && understoodAs(now, kind).ok)
      slot.setTyping?.(written(now.trim()));
  };
  return (
    <span class="figure">
      <span class="written">
        <input
          id={slot.id}
          {...name(slot)}
          value={text.value}
          autocomplete="off"
          size={Math.max(7, text.value.length)}
          aria-invalid={fault !== undefined}
          aria-describedby={`${slot.id}-told`}
          onInput={(e) => follow(e.currentTarget.value)}
          onChange={commit}
        />
        {spread && slot.path && kept !== '' && (
          <button
            type="button"
            class="sure"
            aria-expanded={sure.value}
            aria-label={`How sure: ${slot.label}`}
            onClick={() => {
              sure.value = !sure.value;
            }}
          >
            {isGroup(slot.json) ? 'how sure' : '± how sure'}
          </button>
        )}
      </span>
      {fault ? (
        <Wrong id={slot.id} fault={fault} />
      ) : (
        <small class="echo" id={`${slot.id}-told`}>
          {echo?.ok && kind !== 'count' ? `${echo.text}${boundsOf(slot.json, kind)}` : ''}
        </small>
      )}
      {sure.value && <Sure slot={slot} kind={kind} />}
    </span>
  );
}

function boundsOf(json: unknown, kind: Kind): string {
  if (!isGroup(json)) return '';
  const { low, high, how } = loosened(json);
  const said = (v: unknown): string => {
    const echo = understoodAs(String(v ?? ''), kind);
    return echo.ok ? echo.text.slice(2) : '?';
  };
  const range =
    low === undefined && high === undefined
      ? ''
      : `, from ${said(low ?? json['value'])} to ${said(high ?? json['value'])}`;
  return `${range}${typeof how === 'string' ? `, ${how}` : ''}`;
}

/** Bounds, how it is known, source and day of a quantity. */
function Sure({ slot, kind }: { readonly slot: Slot; readonly kind: Kind }) {
  const long: Json = isGroup(slot.json) ? loosened(slot.json) : { value: slot.json };
  const put = (key: string, value: unknown): void => {
    const next: Json = { ...long, [key]: value };
    if (value === undefined) delete next[key];
    slot.set(Object.keys(next).length === 1 ? next['value'] : next);
  };
  const part = (key: string, label: string): Slot => ({
    id: `${slot.id}-${key}`,
    label: `${slot.label}: ${label}`,
    labelled: true,
    json: long[key],
    optional: true,
    set: (value) => put(key, value),
  });
  return (
    <span class="spread">
      {(['low', 'high'] as const).map((key) => (
        <label key={key} for={`${slot.id}-${key}`}>
          {key === 'low' ? 'at least' : 'at most'}
          <Figure slot={part(key, key)} kind={kind} spread={false} />
        </label>
      ))}
      <label for={`${slot.id}-how`}>
        known as <Choice slot={part('how', 'how')} values={['measured', 'stated', 'assumed']} />
      </label>
      <label for={`${slot.id}-source`}>
        source <Text slot={part('source', 'source')} />
      </label>
      <label for={`${slot.id}-date`}>
        day <Text slot={part('date', 'date')} />
      </label>
    </span>
  );
}
