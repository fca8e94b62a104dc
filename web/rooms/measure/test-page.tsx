/** One test: its guide, with what it is made, its stopwatch, its form, and what comes of the readings. */
import { useMemo, useState } from 'preact/hooks';
import { single } from '../../../desk/make-up.ts';
import { guideOf, readingsForm } from '../../../desk/measured/guide.ts';
import { type MadeWith, ofThatName } from '../../../desk/measured/record.ts';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import { type FieldForm, fileForm } from '../../../papers/fields.ts';
import { writeFile } from '../../../papers/index.ts';
import { type Draft, put } from '../../parts/drafts.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { Choices } from '../../parts/form/choices.ts';
import { Group } from '../../parts/form/group.tsx';
import type { Path } from '../../parts/form/path.ts';
import { OnSheet } from '../../parts/form/slot.tsx';
import { saveJson } from '../../parts/save.ts';
import { type Json, paper } from '../../state/session.ts';
import { broughtIn } from './bring.ts';
import { draftOf, write } from './drafts.ts';
import { FromLog } from './from-log.tsx';
import { GuideWords } from './guide-words.tsx';
import { Level } from './level.tsx';
import { MadeOf } from './made-of.tsx';
import type { MeasureProps } from './measure-room.tsx';
import { Outcome } from './outcome.tsx';
import { Stopwatch } from './stopwatch.tsx';

export function TestPage({ kind, outing, voice }: MeasureProps & { readonly kind: TestKind }) {
  const { system, wording } = voice;
  const guide = useMemo(() => guideOf(kind, { system, wording }), [kind, system, wording]);
  const [said, say] = useState('');
  const now = (): Draft => draftOf(kind, outing.conditions.railState);
  const draft = now();
  const set = (next: Draft): void => put(kind, next);
  const made = madeWith(draft);
  const edit = (path: Path, value: unknown): void => write(kind, draft, path, value);
  return (
    <>
      <p>
        <a href="#measure">All tests</a>
      </p>
      <h1>{guide.name}</h1>
      <GuideWords guide={guide} wording={wording} />
      {guide.with !== 'nothing' && <MadeOf guide={guide} draft={draft} vehicle={made.vehicle} set={set} />}
      <Stopwatch kind={kind} draft={draft} set={set} />
      <FromLog kind={kind} now={now} outing={outing} voice={voice} set={set} />
      {kind === 'tilt' && <Level draft={draft} set={set} />}
      <h2>What was read</h2>
      <OnSheet.Provider value={{ edit, editTyping: edit, open: true }}>
        <Choices.Provider value={(path) => (path.join() === 'test,gear' ? brakesOf(made) : undefined)}>
          <div class="paper readings">
            <Group
              json={draft.record['test']}
              form={readingsForm(kind)}
              path={['test']}
              always={guide.kind === 'coast-down' ? ['passes'] : []}
              columns={columnsOf(readingsForm(kind))}
            />
          </div>
          <details class="fold">
            <summary>Who, when, where, with what</summary>
            <div class="inside paper">
              <Group
                json={draft.record}
                form={fileForm('test')}
                path={[]}
                without={['outing', 'vehicle', 'test', 'instead', 'invented', 'tests']}
                always={['by', 'where', 'rail', 'weather']}
              />
            </div>
          </details>
        </Choices.Provider>
      </OnSheet.Provider>
      <Outcome kind={kind} draft={draft} made={made} voice={voice} />
      <div class="row keep-record">
        <button type="button" onClick={() => saveJson(writeFile(draft.record), `${kind}.json`)}>
          Save the record as a file
        </button>
        <FilePick
          label="Bring in a record, or readings as CSV"
          accept=".json,.csv,application/json,text/csv"
          take={async ([file]) => {
            const brought = await broughtIn(file, kind, () => now().record);
            say('record' in brought ? '' : brought.fault);
            if ('record' in brought) set({ ...now(), record: brought.record });
          }}
        />
        <button type="button" class="quiet" onClick={() => put(kind, undefined)}>
          Begin anew
        </button>
      </div>
      <p class="wrong" role="status">
        {said}
      </p>
    </>
  );
}

/** Where two readings are possible and neither must be, both are offered. */
function columnsOf(form: FieldForm): string[] {
  if (form.form === 'list') return columnsOf(form.entry);
  if (form.form !== 'group') return [];
  return form.fields.flatMap((f) =>
    ['time', 'speed', 'full', 'first'].includes(f.key) ? [f.key] : columnsOf(f.is),
  );
}

function madeWith({ record, vehicle, without = [], riders }: Draft): MadeWith {
  const all = single(paper.value).map(({ id }) => `${id}`);
  // One that was chosen in another outing is none of this; one that the record names is.
  const named = ofThatName(paper.value, record);
  const one =
    vehicle !== undefined && all.includes(vehicle) ? vehicle : named.length === 1 ? named[0] : undefined;
  return {
    outing: paper.value,
    ...(one === undefined ? {} : { vehicle: one }),
    ...(without.length > 0 ? { part: all.filter((id) => !without.includes(id)) } : {}),
    riders: riders === true,
  };
}

function brakesOf({ outing, vehicle }: MadeWith): readonly string[] {
  const one = single(outing as Json).find(({ id }) => id === vehicle)?.vehicle;
  const brakes = (one?.['brakes'] ?? []) as readonly { readonly name?: string; readonly kind: string }[];
  return brakes.map((b) => b.name ?? b.kind);
}
