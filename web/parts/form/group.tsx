/** A part of a paper as a form made from its schema: what is there, and what could be added. */
import { useSignal } from '@preact/signals';
import { useContext } from 'preact/hooks';
import type { FieldForm, GroupForm, NamedField } from '../../../papers/fields.ts';
import { type Json, settings } from '../../state/session.ts';
import { FieldChoice } from './field-choice.tsx';
import { HelpMark, HelpText } from './help.tsx';
import { FieldInput } from './inputs.tsx';
import { isGroup, named, type Path } from './path.ts';
import { OnSheet, type Slot, usePaperSlot } from './slot.tsx';
import { RowTable } from './table.tsx';
import { fieldWords } from './words.ts';

/** Papers of their own are written in their own rooms. */
const ofPapers = (form: FieldForm): boolean =>
  form.form === 'part' || (form.form === 'list' && form.entry.form === 'part');

interface GroupProps {
  readonly json: unknown;
  readonly form: GroupForm;
  readonly path: Path;
  /** Keys that this form leaves to others. */
  readonly without?: readonly string[];
  /** Keys shown even where the paper has nothing there. */
  readonly always?: readonly string[];
  /** Columns that a list shows even where no row uses them. */
  readonly columns?: readonly string[];
}

export function Group({ json, form, path, without = [], always = [], columns = [] }: GroupProps) {
  const added = useSignal<readonly string[]>([]);
  const group: Json = isGroup(json) ? json : {};
  const fields = form.fields.filter((f) => !ofPapers(f.is) && !without.includes(f.key));
  const there = (f: NamedField): boolean =>
    !f.optional || group[f.key] !== undefined || added.value.includes(f.key) || always.includes(f.key);
  const absent = fields.filter((f) => !there(f));
  return (
    <>
      {fields.filter(there).map((f) => (
        <Entry key={f.key} field={f} json={group[f.key]} path={[...path, f.key]} columns={columns} />
      ))}
      {absent.length > 0 && (
        <p class="field add-field">
          <label for={`add-${named(path)}`}>Add a field</label>
          <FieldChoice
            id={`add-${named(path)}`}
            fields={absent}
            onPick={(key) => {
              added.value = [...added.value, key];
            }}
          />
        </p>
      )}
    </>
  );
}

interface EntryProps {
  readonly field: NamedField;
  readonly json: unknown;
  readonly path: Path;
  readonly columns?: readonly string[];
}

/** A small screen begins with everything folded: a line's tables are metres long on it. */
const roomy = (): boolean => matchMedia('(min-width: 700px)').matches;

/** Rows that a table can hold: no groups or lists of groups inside. */
const flat = (form: FieldForm): form is GroupForm =>
  form.form === 'group' &&
  form.fields.every((f) => !['group', 'oneOf', 'part'].includes(f.is.form) && f.is.form !== 'list');

function Entry({ field, json, path, columns = [] }: EntryProps) {
  const { is } = field;
  const { edit } = useContext(OnSheet);
  const title = fieldWords(field, settings.value.wording);
  if (is.form === 'group') {
    return (
      <Fold
        title={title}
        open={path.length <= 2}
        remove={field.optional ? () => edit(path, undefined) : undefined}
      >
        <HelpText field={field} />
        <Group json={json} form={is} path={path} />
      </Fold>
    );
  }
  if (is.form === 'oneOf') return <OneOf field={field} json={json} path={path} />;
  if (is.form === 'list' && is.entry.form === 'group') {
    const rows = Array.isArray(json) ? (json as unknown[]) : [];
    return (
      <Fold title={`${title} (${rows.length})`} open={path.length === 1 || (path.length === 2 && roomy())}>
        <HelpText field={field} />
        {flat(is.entry) ? (
          <RowTable rows={rows} form={is.entry} path={path} title={title} least={is.least} shown={columns} />
        ) : (
          <Groups rows={rows} form={is.entry} path={path} title={title} least={is.least} />
        )}
      </Fold>
    );
  }
  return <Line field={field} json={json} path={path} />;
}

interface FoldProps {
  readonly title: string;
  readonly open: boolean;
  readonly remove?: (() => void) | undefined;
  readonly children: preact.ComponentChildren;
}

function Fold({ title, open, remove, children }: FoldProps) {
  const sheet = useContext(OnSheet);
  return (
    <details open={open || sheet.open} class="fold">
      <summary>{title}</summary>
      <div class="inside">
        {children}
        {remove && (
          <p>
            <button type="button" class="quiet" onClick={remove}>
              Take out {title}
            </button>
          </p>
        )}
      </div>
    </details>
  );
}

/** A field with its label before it. */
function Line({ field, json, path }: EntryProps) {
  const help = useSignal(false);
  const label = fieldWords(field, settings.value.wording);
  const slot = usePaperSlot(path, { label, labelled: true, json, optional: field.optional });
  return (
    <div class="field">
      <span class="named">
        <label for={slot.id}>{label}</label>
        <HelpMark field={field} open={help} />
      </span>
      <FieldInput slot={slot} is={field.is} />
      {help.value && <HelpText field={field} />}
    </div>
  );
}

/** One of several groups: the word that chooses, then its fields. */
function OneOf({ field, json, path }: EntryProps) {
  const { is } = field;
  const { edit } = useContext(OnSheet);
  if (is.form !== 'oneOf') return null;
  const title = fieldWords(field, settings.value.wording);
  const tag = isGroup(json) ? String(json[is.by]) : '';
  const chosen = is.groups.find((g) => g.tag === tag);
  const slot: Slot = {
    id: `f-${named(path)}`,
    label: `${is.by} of ${title}`,
    labelled: true,
    json: tag === '' ? undefined : tag,
    optional: field.optional,
    set: (value) => edit(path, value === undefined ? undefined : { [is.by]: value }),
  };
  return (
    <Fold title={title} open={false}>
      <HelpText field={field} />
      <div class="field">
        <label for={slot.id}>{slot.label}</label>
        <FieldInput slot={slot} is={{ form: 'choice', values: is.groups.map((g) => g.tag) }} />
      </div>
      {chosen && chosen.is.form === 'group' && <Group json={json} form={chosen.is} path={path} />}
    </Fold>
  );
}

/** What a new group begins with: the first of every choice, the rest to be written. */
function blank(form: FieldForm): unknown {
  if (form.form === 'group')
    return Object.fromEntries(form.fields.filter((f) => !f.optional).map((f) => [f.key, blank(f.is)]));
  if (form.form === 'choice') return form.values[0];
  if (form.form === 'yes') return false;
  return form.form === 'list' ? [] : '';
}

interface GroupsProps {
  readonly rows: readonly unknown[];
  readonly form: GroupForm;
  readonly path: Path;
  readonly title: string;
  readonly least: number;
}

/** A list of groups too deep for a table: one after another. */
function Groups({ rows, form, path, title, least }: GroupsProps) {
  const { edit } = useContext(OnSheet);
  const call = (row: unknown, i: number): string =>
    isGroup(row) ? String(row['name'] ?? row['kind'] ?? i + 1) : String(i + 1);
  return (
    <>
      {rows.map((row, i) => (
        <Fold
          key={`${rows.length}-${i}`}
          title={call(row, i)}
          open={false}
          remove={
            rows.length > least
              ? () =>
                  edit(
                    path,
                    rows.filter((_, k) => k !== i),
                  )
              : undefined
          }
        >
          <Group json={row} form={form} path={[...path, i]} />
        </Fold>
      ))}
      <p>
        <button type="button" onClick={() => edit(path, [...rows, blank(form)])}>
          Add one to {title}
        </button>
      </p>
    </>
  );
}
