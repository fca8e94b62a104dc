/** One field of a paper: takes what people write, says back what it understood, and what is wrong beside it. */
import { type Signal, useSignal } from '@preact/signals';
import type { TargetedEvent } from 'preact';
import { useEffect } from 'preact/hooks';
import { echoOf } from '../../../desk/echo.ts';
import type { Kind } from '../../../engine/quantity.ts';
import type { FieldForm } from '../../../files/fields.ts';
import { problems, settings } from '../../state/session.ts';
import { isGroup, type Json, named, type Path } from './path.ts';
import { choiceWords } from './words.ts';

/** A field anywhere: its value, and what to do with a new one; `undefined` takes it out. */
export interface Slot {
  readonly id: string;
  readonly label: string;
  /** The label stands on the page under the same id; else it is given to the reader of the page alone. */
  readonly labelled: boolean;
  readonly json: unknown;
  readonly optional: boolean;
  readonly set: (value: unknown) => void;
  /** Where it lies in the paper; absent for a row that is not in it yet. */
  readonly path?: Path;
  /** Values to choose from where the rest of the paper tells them, as the seats of a car. */
  readonly choices?: readonly string[];
}

const name = (slot: Slot) => (slot.labelled ? {} : { 'aria-label': slot.label });

function problemAt(path: Path | undefined): { found: string; expected: string } | undefined {
  if (!path) return undefined;
  const at = named(path);
  return problems.value.find((p) => p.path === at || p.path.startsWith(`${at}.`));
}

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

export function FieldInput({ slot, is }: { readonly slot: Slot; readonly is: FieldForm }) {
  if (is.form === 'figure') return <Figure slot={slot} kind={is.kind} spread={is.spread} />;
  if (is.form === 'choice') return <Choice slot={slot} values={is.values} />;
  if (is.form === 'yes') return <Yes slot={slot} />;
  if (slot.choices) return <Choice slot={slot} values={slot.choices} />;
  if (is.form === 'list') return <WordList slot={slot} entry={is.entry} />;
  return <Text slot={slot} />;
}

function Wrong({ id, fault }: { readonly id: string; readonly fault: { found: string; expected: string } }) {
  return (
    <span class="wrong" id={`${id}-told`}>
      found {fault.found}; expected {fault.expected}
    </span>
  );
}

interface FigureProps {
  readonly slot: Slot;
  readonly kind: Kind;
  readonly spread: boolean;
}

function Figure({ slot, kind, spread }: FigureProps) {
  const kept = writtenText(slot.json);
  const text = useTyped(kept);
  const sure = useSignal(false);
  const echo = text.value.trim() === '' ? undefined : echoOf(text.value, kind);
  const fault = echo && !echo.ok ? echo : problemAt(slot.path);
  const commit = (): void => {
    const now = text.value.trim();
    if (now === kept) return;
    slot.set(now === '' && slot.optional ? undefined : rewritten(slot.json, now));
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
          onInput={(e) => {
            text.value = e.currentTarget.value;
          }}
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
    const echo = echoOf(String(v ?? ''), kind);
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

function Choice({ slot, values }: { readonly slot: Slot; readonly values: readonly (string | number)[] }) {
  const { wording } = settings.value;
  const now = slot.json === undefined ? '' : String(slot.json);
  const odd = now !== '' && !values.some((v) => String(v) === now);
  const fault = problemAt(slot.path);
  return (
    <span class="figure">
      <select
        id={slot.id}
        {...name(slot)}
        value={now}
        aria-invalid={fault !== undefined}
        onChange={(e) => {
          const text = e.currentTarget.value;
          slot.set(text === '' ? undefined : values.find((v) => String(v) === text));
        }}
      >
        {(slot.optional || now === '') && <option value="">not given</option>}
        {odd && <option value={now}>{now}</option>}
        {values.map((v) => (
          <option key={v} value={String(v)}>
            {choiceWords(v, wording)}
          </option>
        ))}
      </select>
      {fault && <Wrong id={slot.id} fault={fault} />}
    </span>
  );
}

function Yes({ slot }: { readonly slot: Slot }) {
  if (!slot.optional)
    return (
      <input
        id={slot.id}
        type="checkbox"
        {...name(slot)}
        checked={slot.json === true}
        onChange={(e) => slot.set(e.currentTarget.checked)}
      />
    );
  const now = slot.json === undefined ? '' : slot.json === true ? 'yes' : 'no';
  return (
    <select
      id={slot.id}
      {...name(slot)}
      value={now}
      onChange={(e) => {
        const said = e.currentTarget.value;
        slot.set(said === '' ? undefined : said === 'yes');
      }}
    >
      <option value="">not given</option>
      <option value="yes">yes</option>
      <option value="no">no</option>
    </select>
  );
}

/** What is being typed into a field: kept apart, so that an answer that arrives meanwhile does not wipe it. */
export function useTyped(kept: string): Signal<string> {
  const text = useSignal(kept);
  useEffect(() => {
    text.value = kept;
  }, [kept]);
  return text;
}

function Text({ slot }: { readonly slot: Slot }) {
  const kept = slot.json === undefined ? '' : String(slot.json);
  const text = useTyped(kept);
  const fault = problemAt(slot.path);
  const take = (): void => {
    const now = text.value;
    if (now !== kept) slot.set(now.trim() === '' && slot.optional ? undefined : now);
  };
  const shared = {
    id: slot.id,
    ...name(slot),
    value: text.value,
    'aria-invalid': fault !== undefined,
    'aria-describedby': fault ? `${slot.id}-told` : undefined,
    onInput: (e: TargetedEvent<HTMLInputElement>) => {
      text.value = e.currentTarget.value;
    },
  };
  return (
    <span class="figure">
      {slot.id.endsWith('date') ? (
        // Taken when left: on the way a half-typed year is a day too.
        <input type="date" {...shared} onBlur={take} />
      ) : (
        <input
          {...shared}
          size={Math.min(40, Math.max(10, kept.length))}
          autocomplete="off"
          onChange={take}
        />
      )}
      {fault && <Wrong id={slot.id} fault={fault} />}
    </span>
  );
}

/** A list of words: boxes to tick where the words are known, else one line with commas. */
function WordList({ slot, entry }: { readonly slot: Slot; readonly entry: FieldForm }) {
  const now = Array.isArray(slot.json) ? (slot.json as unknown[]).map(String) : [];
  const put = (next: readonly string[]): void => slot.set(next.length === 0 ? undefined : next);
  const known = slot.choices ?? (entry.form === 'choice' ? entry.values.map(String) : undefined);
  if (!known) {
    return (
      <Text
        slot={{
          ...slot,
          json: slot.json === undefined ? undefined : now.join(', '),
          set: (text) =>
            put(
              String(text ?? '')
                .split(',')
                .map((t) => t.trim())
                .filter((t) => t !== ''),
            ),
        }}
      />
    );
  }
  const all = [...new Set([...known, ...now])];
  return (
    <fieldset class="ticks" id={slot.id} aria-label={slot.label}>
      {all.map((word) => (
        <label key={word}>
          <input
            type="checkbox"
            checked={now.includes(word)}
            onChange={(e) =>
              put(
                e.currentTarget.checked
                  ? all.filter((w) => w === word || now.includes(w))
                  : now.filter((w) => w !== word),
              )
            }
          />
          {choiceWords(word, settings.value.wording)}
        </label>
      ))}
    </fieldset>
  );
}
