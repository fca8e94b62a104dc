/** Fields of words: one of a choice, yes or no, a text, a list of words. */
import type { TargetedEvent } from 'preact';
import type { FieldForm } from '../../../papers/fields.ts';
import { settings } from '../../state/session.ts';
import { name, problemAt, type Slot, useTyped, Wrong } from './slot.tsx';
import { choiceWords } from './words.ts';

export function Choice({
  slot,
  values,
}: {
  readonly slot: Slot;
  readonly values: readonly (string | number)[];
}) {
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

export function Yes({ slot }: { readonly slot: Slot }) {
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

export function Text({ slot }: { readonly slot: Slot }) {
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
      // Of what is no paper yet: a button that waits for it is not waited for by a tap beside the field first.
      if (!slot.path) slot.setTyping?.(text.value);
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
export function WordList({ slot, entry }: { readonly slot: Slot; readonly entry: FieldForm }) {
  const now = Array.isArray(slot.json) ? (slot.json as unknown[]).map(String) : [];
  const put = (next: readonly string[]): void => slot.set(next.length === 0 ? undefined : next);
  const known = slot.choices ?? (entry.form === 'choice' ? entry.values.map(String) : undefined);
  if (!known) {
    const { setTyping: _, ...whole } = slot;
    return (
      <Text
        slot={{
          ...whole,
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
