/** The papers behind the answer: the day, the line, the host's rules, every vehicle; each field as people write it. */
import { useSignal } from '@preact/signals';
import { change, edit, edited, type Json, paper, problems } from '../../state/session.ts';
import { StripView } from '../answer/strip-view.tsx';

const parts = [
  {
    id: 'day',
    title: 'The day',
    path: [] as string[],
    only: ['name', 'date', 'direction', 'plannedSpeed', 'conditions', 'following', 'agreedLimits'],
  },
  { id: 'line', title: 'Line', path: ['line'] },
  { id: 'host', title: "Host's rules", path: ['host'] },
  { id: 'vehicles', title: 'Vehicles', path: ['train', 'vehicles'] },
  { id: 'riders', title: 'Riders', path: ['riders'] },
] as const;

export function Room() {
  const open = useSignal<string>('day');
  const part = parts.find((p) => p.id === open.value) ?? parts[0];
  const json = part.path.reduce<unknown>((at, key) => (at as Json | undefined)?.[key], paper.value);
  const shown =
    'only' in part
      ? Object.fromEntries(part.only.filter((k) => k in (json as Json)).map((k) => [k, (json as Json)[k]]))
      : json;
  return (
    <>
      <h1>Line, rules, day</h1>
      <p>Write figures as you would: 12 ft 6 in, 3/4 in, 1 in 80, 2 %, 20 inHg, 60 psi, 7 mph, 10 km/h.</p>
      <p class="row" role="group" aria-label="Papers">
        {parts.map((p) => (
          <button
            type="button"
            key={p.id}
            aria-pressed={open.value === p.id}
            onClick={() => {
              open.value = p.id;
            }}
          >
            {p.title}
          </button>
        ))}
      </p>
      {open.value === 'line' && <StripView />}
      <section class="paper">
        <Fields json={shown} path={[...part.path]} />
      </section>
    </>
  );
}

/** `['line', 'curves', 0]` → line.curves[0], as problems name it. */
const named = (path: readonly (string | number)[]): string =>
  path.reduce<string>(
    (text, p) => (typeof p === 'number' ? `${text}[${p}]` : text === '' ? p : `${text}.${p}`),
    '',
  );

const words = (key: string | number): string =>
  String(key)
    .replace(/([A-Z])/g, ' $1')
    .toLowerCase();

interface Props {
  readonly json: unknown;
  readonly path: readonly (string | number)[];
}

function Fields({ json, path }: Props) {
  if (Array.isArray(json)) return <Rows json={json} path={path} />;
  return (
    <>
      {Object.entries((json as Json) ?? {})
        .filter(([key]) => key !== 'heedway' && key !== 'version')
        .map(([key, value]) => (
          <Entry key={key} name={words(key)} json={value} path={[...path, key]} />
        ))}
    </>
  );
}

function Entry({ name, json, path }: Props & { readonly name: string }) {
  if (typeof json === 'object' && json !== null) {
    const closed = path.length > 2;
    return (
      <details open={!closed}>
        <summary>{name}</summary>
        <div class="inside">
          <Fields json={json} path={path} />
        </div>
      </details>
    );
  }
  return <Field name={name} json={json} path={path} />;
}

function Field({ name, json, path }: Props & { readonly name: string }) {
  const id = `f-${named(path)}`;
  const wrong = problems.value.find((p) => p.path === named(path));
  const set = (text: string): void => {
    const value =
      typeof json === 'number'
        ? text.trim() !== '' && Number.isFinite(Number(text))
          ? Number(text)
          : text
        : text;
    if (value !== json) edit(path, value);
  };
  return (
    <p class="field">
      <label for={id}>{name}</label>
      {typeof json === 'boolean' ? (
        <input id={id} type="checkbox" checked={json} onChange={(e) => edit(path, e.currentTarget.checked)} />
      ) : (
        <input
          id={id}
          value={String(json)}
          aria-invalid={wrong !== undefined}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={(e) => set(e.currentTarget.value)}
        />
      )}
      {wrong && (
        <span class="wrong" id={`${id}-wrong`}>
          found {wrong.found}; expected {wrong.expected}
        </span>
      )}
    </p>
  );
}

/** A list: rows of plain fields as a table, else one group after another. */
function Rows({
  json,
  path,
}: {
  readonly json: readonly unknown[];
  readonly path: readonly (string | number)[];
}) {
  const add = (): void =>
    change(edited(paper.value, [...path, json.length], structuredClone(json[json.length - 1])) as Json);
  const remove = (i: number): void => change(edited(paper.value, [...path, i], undefined) as Json);
  const flat = json.every(
    (row) =>
      typeof row === 'object' && row !== null && Object.values(row).every((x) => typeof x !== 'object'),
  );
  if (!flat) {
    return (
      <>
        {json.map((row, i) => (
          <Entry
            key={i}
            name={String(
              (row as Json | null)?.['name'] ??
                ((row as Json | null)?.['vehicle'] as Json | undefined)?.['name'] ??
                i + 1,
            )}
            json={row}
            path={[...path, i]}
          />
        ))}
      </>
    );
  }
  const columns = [...new Set(json.flatMap((row) => Object.keys(row as Json)))];
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label={named(path)}>
      <table class="rows">
        <thead>
          <tr>
            {columns.map((c) => (
              <th key={c}>{words(c)}</th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {json.map((row, i) => (
            <tr key={i}>
              {columns.map((c) => (
                <td key={c}>
                  <Cell json={(row as Json)[c]} path={[...path, i, c]} />
                </td>
              ))}
              <td>
                <button type="button" aria-label={`Remove row ${i + 1}`} onClick={() => remove(i)}>
                  Remove
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {json.length > 0 && (
        <button type="button" onClick={add}>
          Add a row
        </button>
      )}
    </div>
  );
}

function Cell({ json, path }: Props) {
  const at = named(path);
  const wrong = problems.value.find((p) => p.path === at || at.startsWith(`${p.path}.`));
  if (typeof json === 'boolean') {
    return (
      <input
        type="checkbox"
        aria-label={at}
        checked={json}
        onChange={(e) => edit(path, e.currentTarget.checked || undefined)}
      />
    );
  }
  return (
    <>
      <input
        aria-label={at}
        value={json === undefined ? '' : String(json)}
        aria-invalid={wrong !== undefined}
        size={Math.max(7, String(json ?? '').length)}
        onChange={(e) => edit(path, e.currentTarget.value.trim() === '' ? undefined : e.currentTarget.value)}
      />
      {wrong && <span class="wrong">{wrong.expected}</span>}
    </>
  );
}
