/** All that happened, on the strip and as a list, newest first; with what is to be done about it. */
import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type Incident, incidents, type Measure } from '../../../records/incidents.ts';
import { nameIn } from '../../../records/names.ts';
import { openRestrictions } from '../../../records/restrictions.ts';
import { incidentMarks, incidentStrip } from '../../../views/incident-strip.ts';
import { shortHash, tellContent } from '../../../words/records/record.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { emptied } from '../../parts/emptied.ts';
import { StripInks } from '../../parts/inks.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { Written } from '../../parts/written.tsx';
import { type Kept, person, record, saying } from '../../state/records.ts';
import { outing, told, voice } from '../../state/session.ts';

export function List({ now }: { readonly now: Kept }) {
  const all = incidents(now.entries);
  const open = openRestrictions(now.entries);
  if (all.length + open.length === 0) return null;
  return (
    <section aria-label="All incidents">
      <h2>All that happened, newest first</h2>
      <Strip all={all} open={open} />
      <ol class="records" reversed>
        {[...all]
          .map((incident, i) => ({ incident, number: i + 1 }))
          .reverse()
          .map(({ incident, number }) => (
            <One key={incident.from.first.row.hash} incident={incident} number={number} now={now} />
          ))}
      </ol>
    </section>
  );
}

function Strip({
  all,
  open,
}: {
  readonly all: readonly Incident[];
  readonly open: ReturnType<typeof openRestrictions>;
}) {
  const box = useRef<HTMLDivElement>(null);
  const { value: width } = useWidth(box, 0);
  const [now, speaks] = [outing.value, voice.value];
  const marks = now && speaks ? incidentMarks(now, all, open, speaks) : [];
  const size = { width, height: width < 600 ? 300 : 380, textSize: width < 600 ? 12 : 14 };
  return (
    <div ref={box} class="strip-box">
      {now && speaks && marks.length > 0 && width > 0 && (
        <figure>
          <StripInks />
          <div class="strip still" role="img" aria-label={`What happened on ${now.line.name}`}>
            <Drawing scene={incidentStrip(now, told.value?.answer ?? null, marks, speaks, size)} />
          </div>
          <figcaption>
            {marks.length} of {all.length + open.length} lie on {now.line.name}; numbers as in the lists.
          </figcaption>
        </figure>
      )}
    </div>
  );
}

function One({
  incident,
  number,
  now,
}: {
  readonly incident: Incident;
  readonly number: number;
  readonly now: Kept;
}) {
  const { from, day, measures } = incident;
  const what = tellContent({ kind: 'incident', content: from.content }, now.names);
  return (
    <li value={number}>
      <span>
        <strong>{number}.</strong> {day}: {what}
      </span>
      <small>{shortHash(from.first.row.hash)}</small>
      {measures.length > 0 && (
        <ul class="measures">
          {measures.map((measure) => (
            <Todo key={measure.from.first.row.hash} measure={measure} now={now} />
          ))}
        </ul>
      )}
      <AddMeasure incident={from.first.row.hash} />
    </li>
  );
}

function Todo({ measure: { from, said, done }, now }: { readonly measure: Measure; readonly now: Kept }) {
  const what = useSignal('');
  const fault = useSignal('');
  const who = said.person === undefined ? '' : ` (${nameIn(now.names, said.person)})`;
  const close = async (): Promise<void> => {
    try {
      await record({ kind: 'measured', content: { measure: from.first.row.hash, what: what.value.trim() } });
    } catch (error) {
      fault.value = saying(error);
    }
  };
  if (done)
    return (
      <li>
        Done: {said.what} ({done.what})
      </li>
    );
  return (
    <li>
      <span>
        <strong>Open</strong>
        {said.by === undefined ? '' : ` by ${said.by}`}
        {who}: {said.what}
      </span>
      <span class="written">
        <label>
          What was done{' '}
          <input
            value={what.value}
            onInput={(e) => {
              what.value = e.currentTarget.value;
            }}
          />
        </label>
        <button type="button" disabled={what.value.trim() === ''} onClick={() => void close()}>
          It is done
        </button>
      </span>
      {fault.value !== '' && <p role="alert">{fault.value}</p>}
    </li>
  );
}

function AddMeasure({ incident }: { readonly incident: string }) {
  const [what, by, who] = [useSignal(''), useSignal(''), useSignal('')];
  const fault = useSignal('');
  const add = async (): Promise<void> => {
    const empty = emptied([what, by, who]);
    try {
      const content = {
        incident,
        what: what.value.trim(),
        ...(by.value === '' ? {} : { by: by.value }),
        ...(who.value.trim() === '' ? {} : { person: await person(who.value.trim()) }),
      };
      await record({ kind: 'measure', content });
      empty();
    } catch (error) {
      fault.value = saying(error);
    }
  };
  return (
    <details class="todo">
      <summary>What is to be done about it</summary>
      <Written label="What" value={what} />
      <Written label="By which day" value={by} type="date" />
      <Written label="Who sees to it; the name stands apart" value={who} />
      <button type="button" disabled={what.value.trim() === ''} onClick={() => void add()}>
        Record the measure
      </button>
      {fault.value !== '' && <p role="alert">{fault.value}</p>}
    </details>
  );
}
