/** One figure that is asked for: its field, what was understood, how one comes by it, what not knowing it costs. */
import { useSignal } from '@preact/signals';
import type { Field, FieldKey } from '../../../desk/new/field.ts';
import { fieldOf } from '../../../desk/new/questions.ts';
import { withUnit } from '../../../desk/new/reading.ts';
import { type Lack, tellReply } from '../../../desk/new/say.ts';
import { understoodAs } from '../../../desk/understood.ts';
import { settings } from '../../state/session.ts';
import { growth, replies, reply } from './draft.ts';
import { engineOutline } from './outlines.tsx';

interface Props {
  readonly name: FieldKey;
  readonly lack: Lack;
}

export function Ask({ name, lack }: Props) {
  const field = fieldOf(name);
  const text = replies.value[name] ?? '';
  const told = tellReply(name, text, settings.value.wording);
  const fault = text === '' ? undefined : growth.value.faults.find((f) => f.key === name);
  const open = useSignal(false);
  const id = `new-${name}`;
  const choice = field.form === 'choice';
  const counted = field.form === 'figure' && field.kind === 'count';
  return (
    <div
      class={`ask${fault ? ' amiss' : ''}`}
      {...(choice ? { role: 'group', 'aria-labelledby': `${id}-label` } : {})}
    >
      <div class="asked">
        {choice ? (
          <span class="label" id={`${id}-label`}>
            {lack.label}
          </span>
        ) : (
          <label class="label" for={id} id={`${id}-label`}>
            {lack.label}
          </label>
        )}
        <button
          type="button"
          class="how"
          aria-expanded={open.value}
          aria-label={`How: ${lack.label}`}
          onClick={() => {
            open.value = !open.value;
          }}
        >
          how?
        </button>
      </div>
      {choice ? (
        <Choice id={id} name={name} values={field.values} now={text} />
      ) : counted ? (
        <Counter id={id} name={name} label={lack.label} now={text} />
      ) : (
        <Written id={id} name={name} field={field} now={text} amiss={fault !== undefined} />
      )}
      <p class="under" id={`${id}-told`}>
        {fault ? (
          <span class="wrong">
            found {fault.found}; expected {fault.expected}
          </span>
        ) : (
          told || <span class="echo">{echoed(text, field)}</span>
        )}
      </p>
      {open.value && <p class="guide">{lack.how}</p>}
    </div>
  );
}

/** What was understood, on both shores. */
function echoed(text: string, field: Field): string {
  if (field.form !== 'figure' || field.kind === 'count' || field.several) return '';
  const echo = understoodAs(withUnit(text.trim(), field, settings.value.units), field.kind);
  return echo.ok ? echo.text : '';
}

function Choice({
  id,
  name,
  values,
  now,
}: {
  readonly id: string;
  readonly name: FieldKey;
  readonly values: readonly string[];
  readonly now: string;
}) {
  return (
    <div class={`picks ${values.length <= 3 ? `of${values.length}` : ''}`}>
      {values.map((value, i) => (
        <Pick key={value} id={i === 0 ? id : undefined} name={name} text={value} now={now} />
      ))}
    </div>
  );
}

/** Big − and +; a dash stands where nothing was said, which is not nought. */
function Counter({
  id,
  name,
  label,
  now,
}: {
  readonly id: string;
  readonly name: FieldKey;
  readonly label: string;
  readonly now: string;
}) {
  const count = /^\d+$/.test(now) ? Number(now) : undefined;
  return (
    <div class="counter">
      <button
        type="button"
        aria-label={`One less: ${label}`}
        onClick={() => reply(name, String(Math.max(0, (count ?? 0) - 1)))}
      >
        −
      </button>
      <input
        id={id}
        aria-describedby={`${id}-told`}
        inputmode="numeric"
        autocomplete="off"
        placeholder="–"
        value={now}
        onInput={(e) => reply(name, e.currentTarget.value)}
      />
      <button
        type="button"
        aria-label={`One more: ${label}`}
        onClick={() => reply(name, String((count ?? 0) + 1))}
      >
        +
      </button>
    </div>
  );
}

function Written({
  id,
  name,
  field,
  now,
  amiss,
}: {
  readonly id: string;
  readonly name: FieldKey;
  readonly field: Field;
  readonly now: string;
  readonly amiss: boolean;
}) {
  const metric = settings.value.units === 'metric';
  const unit = field.form === 'figure' ? field.bare?.[metric ? 1 : 0] : undefined;
  const quick = [
    ...(field.usual?.[metric ? 1 : 0] ?? []),
    ...(field.form === 'figure' ? (field.words ?? []) : []),
  ];
  return (
    <>
      <div class="line">
        <input
          id={id}
          value={now}
          placeholder={unit ?? ''}
          autocomplete="off"
          aria-invalid={amiss}
          aria-describedby={`${id}-told`}
          onInput={(e) => reply(name, e.currentTarget.value)}
        />
        {quick.length === 1 && <Pick name={name} text={quick[0]} now={now} />}
      </div>
      {quick.length > 1 && (
        <div class="picks small">
          {quick.map((text) => (
            <Pick key={text} name={name} text={text} now={now} />
          ))}
        </div>
      )}
    </>
  );
}

/** A reply in one tap; once more takes it back: not known. */
const Pick = ({
  id,
  name,
  text,
  now,
}: {
  readonly id?: string | undefined;
  readonly name: FieldKey;
  readonly text: string;
  readonly now: string;
}) => (
  <button
    type="button"
    id={id}
    aria-pressed={now === text}
    onClick={() => reply(name, now === text ? '' : text)}
  >
    {name === 'engine.kind' && engineOutline(text)}
    {text}
  </button>
);
