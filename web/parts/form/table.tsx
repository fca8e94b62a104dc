/**
 * A list of plain rows as a table. A new row is written into an empty line and enters the paper whole, so
 * that a half-written row never spoils the answer; it can stand anywhere in the list.
 */
import { useSignal } from '@preact/signals';
import { useContext } from 'preact/hooks';
import type { GroupForm, NamedField } from '../../../papers/fields.ts';
import { type Json, problems, settings } from '../../state/session.ts';
import { Choices } from './choices.ts';
import { FieldChoice } from './field-choice.tsx';
import { HelpList } from './help.tsx';
import { FieldInput } from './inputs.tsx';
import { isGroup, named, type Path } from './path.ts';
import { OnSheet, type Slot, usePaperSlot } from './slot.tsx';
import { fieldWords } from './words.ts';

/** Rows shown at a time. */
const SHOWN = 100;

interface Props {
  readonly rows: readonly unknown[];
  readonly form: GroupForm;
  readonly path: Path;
  /** Singular of what a row is. */
  readonly title: string;
  readonly least: number;
  /** Columns shown even where no row uses them. */
  readonly shown: readonly string[];
}

export function RowTable({ rows, form, path, title, least, shown }: Props) {
  const { wording } = settings.value;
  const { edit } = useContext(OnSheet);
  const more = useSignal<readonly string[]>(shown);
  const draftAt = useSignal<number | null>(null);
  const used = new Set(rows.flatMap((row) => (isGroup(row) ? Object.keys(row) : [])));
  const asked = form.fields.filter((f) => !f.optional || used.has(f.key) || more.value.includes(f.key));
  const columns = asked.length > 0 ? asked : form.fields.slice(0, 3);
  const hidden = form.fields.filter((f) => !columns.includes(f));
  const put = (next: readonly unknown[]): void => edit(path, next);
  const insert = (at: number, row: Json): void => {
    put([...rows.slice(0, at), row, ...rows.slice(at)]);
    draftAt.value = null;
  };
  const at = Math.min(draftAt.value ?? rows.length, rows.length);
  const first = useSignal(0);
  const start = Math.min(first.value, Math.max(0, rows.length - 1));
  const from = start - (start % SHOWN);
  const to = Math.min(rows.length, from + SHOWN);
  const draft = (
    <DraftRow
      key={`draft-${at}-${rows.length}`}
      columns={columns}
      path={path}
      title={title}
      place={at}
      last={rows.length}
      onAdd={(row) => insert(at, row)}
    />
  );
  return (
    <div class="row-table">
      <Pages
        count={rows.length}
        from={from}
        to={to}
        title={title}
        wrong={wrongRow(path, from, to)}
        onFirst={(i) => {
          first.value = i;
        }}
      />
      <table class={columns.length > 4 ? 'rows many' : 'rows'} aria-label={title}>
        <thead>
          <tr>
            <th scope="col">row</th>
            {columns.map((c) => (
              <th key={c.key} scope="col">
                {fieldWords(c, wording)}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.slice(from, to).flatMap((row, k) => {
            const i = from + k;
            return [
              ...(i === at ? [draft] : []),
              <tr key={`${rows.length}-${i}`}>
                <th scope="row">{i + 1}</th>
                {columns.map((c) => (
                  <td key={c.key} data-label={fieldWords(c, wording)}>
                    <Cell field={c} row={row} path={[...path, i, c.key]} number={i + 1} title={title} />
                  </td>
                ))}
                <td class="row-tools">
                  <button
                    type="button"
                    aria-label={`Insert a row above row ${i + 1} of ${title}`}
                    onClick={() => {
                      draftAt.value = i;
                    }}
                  >
                    Insert above
                  </button>
                  <button
                    type="button"
                    disabled={rows.length <= least}
                    aria-label={`Remove row ${i + 1} of ${title}`}
                    onClick={() => put(rows.filter((_, k) => k !== i))}
                  >
                    Remove
                  </button>
                </td>
              </tr>,
            ];
          })}
          {(at >= to || at < from) && draft}
        </tbody>
      </table>
      <HelpList fields={columns} title="What the columns hold" />
      {hidden.length > 0 && (
        <p class="row">
          <label for={`column-${named(path)}`}>
            Add a column to {title}{' '}
            <FieldChoice
              id={`column-${named(path)}`}
              fields={hidden}
              onPick={(key) => {
                more.value = [...more.value, key];
              }}
            />
          </label>
        </p>
      )}
    </div>
  );
}

/** The first row out of sight that a problem names. */
function wrongRow(path: Path, from: number, to: number): number | undefined {
  const start = `${named(path)}[`;
  return problems.value
    .filter((p) => p.path.startsWith(start))
    .map((p) => Number.parseInt(p.path.slice(start.length), 10))
    .find((i) => i < from || i >= to);
}

interface PagesProps {
  readonly count: number;
  readonly from: number;
  readonly to: number;
  readonly title: string;
  readonly wrong: number | undefined;
  readonly onFirst: (row: number) => void;
}

/** A long list a piece at a time: a satellite track has a row every few metres. */
function Pages({ count, from, to, title, wrong, onFirst }: PagesProps) {
  if (count <= SHOWN) return null;
  return (
    <p class="row">
      <button
        type="button"
        disabled={from === 0}
        aria-label={`Earlier rows of ${title}`}
        onClick={() => onFirst(from - SHOWN)}
      >
        Earlier
      </button>
      <span>
        rows {from + 1} to {to} of {count}
      </span>
      <button
        type="button"
        disabled={to >= count}
        aria-label={`Later rows of ${title}`}
        onClick={() => onFirst(to)}
      >
        Later
      </button>
      {wrong !== undefined && (
        <button type="button" class="wrong" onClick={() => onFirst(wrong)}>
          Row {wrong + 1} must be mended
        </button>
      )}
    </p>
  );
}

interface CellProps {
  readonly field: NamedField;
  readonly row: unknown;
  readonly path: Path;
  readonly number: number;
  readonly title: string;
}

function Cell({ field, row, path, number, title }: CellProps) {
  const slot = usePaperSlot(path, {
    label: `${fieldWords(field, settings.value.wording)}, row ${number} of ${title}`,
    labelled: false,
    json: isGroup(row) ? row[field.key] : undefined,
    optional: field.optional,
  });
  return <FieldInput slot={slot} is={field.is} />;
}

interface DraftProps {
  readonly columns: readonly NamedField[];
  readonly path: Path;
  readonly title: string;
  readonly place: number;
  readonly last: number;
  readonly onAdd: (row: Json) => void;
}

function DraftRow({ columns, path, title, place, last, onAdd }: DraftProps) {
  const { wording } = settings.value;
  const row = useSignal<Json>({});
  const asked = useSignal(false);
  const choices = useContext(Choices);
  const lacking = columns.filter((c) => !c.optional && row.value[c.key] === undefined);
  const empty = Object.keys(row.value).length === 0;
  const add = (): void => {
    asked.value = true;
    if (!empty && lacking.length === 0) onAdd(row.value);
  };
  const set = (key: string, value: unknown): void => {
    const next = { ...row.value, [key]: value };
    if (value === undefined || value === '') delete next[key];
    row.value = next;
  };
  return (
    <tr class="draft">
      <th scope="row">new</th>
      {columns.map((c) => {
        const known = choices([...path, place, c.key]);
        const slot: Slot = {
          id: `f-${named(path)}-new-${c.key}`,
          label: `${fieldWords(c, wording)}, new row of ${title}`,
          labelled: false,
          json: row.value[c.key],
          optional: true,
          set: (value) => set(c.key, value),
          ...(known ? { choices: known } : {}),
        };
        return (
          <td key={c.key} data-label={fieldWords(c, wording)}>
            <FieldInput slot={slot} is={c.is} />
          </td>
        );
      })}
      <td class="row-tools">
        <button type="button" class="main" onClick={add} aria-label={`Add this row to ${title}`}>
          {place < last ? `Add above row ${place + 1}` : 'Add row'}
        </button>
        {asked.value && (empty || lacking.length > 0) && (
          <span class="wrong" role="status">
            still to be written:{' '}
            {(lacking.length > 0 ? lacking : columns.slice(0, 2))
              .map((c) => fieldWords(c, wording))
              .join(', ')}
          </span>
        )}
      </td>
    </tr>
  );
}
