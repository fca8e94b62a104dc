/** Inspect: a list gone through with one thumb, what is amiss, and what was mended. */
import '../../look/rooms.css';
import '../records/records.css';
import './inspect.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { exampleLists } from '../../../data/inspection-lists/index.ts';
import type { Unfinished } from '../../../desk/inspect/unfinished.ts';
import type { InspectionList } from '../../../papers/inspection/fields.ts';
import { readList } from '../../../papers/inspection/read.ts';
import { readJson } from '../../../papers/json.ts';
import { printPath } from '../../../papers/problem.ts';
import { AskAgain } from '../../parts/ask-again.tsx';
import { FilePick } from '../../parts/file-pick.tsx';
import { begun, dropOwnList, ownLists, putOwnList } from '../../parts/inspecting.ts';
import { barred, kept, openRecords } from '../../state/records.ts';
import { outing } from '../../state/session.ts';
import { Begin } from '../records/begin.tsx';
import { Defects } from './defects.tsx';
import { Unfinished as Unfinisheds } from './unfinished.tsx';
import { Walk } from './walk.tsx';

const examples: readonly InspectionList[] = Object.values(exampleLists).flatMap((json) => {
  const read = readList(json);
  return read.ok ? [read.value] : [];
});

/** What a list is likely for, of the outing on the screen. */
function likely({ of, example }: InspectionList): string {
  const now = outing.value;
  if (!now) return '';
  if (of === 'line') return now.line.name;
  // What is of no vehicle is of itself: a bay, a first aid box.
  if (example && !/engine|car$|vehicle/.test(of)) return of;
  const isEngine = of.includes('engine');
  return now.train.vehicles.find(({ role }) => (role === 'engine') === isEngine)?.name ?? '';
}

interface Chosen {
  readonly list: InspectionList;
  readonly id: string;
  readonly likely: string;
}

const isSame = (a: InspectionList, b: InspectionList): boolean =>
  a.name === b.name && (a.example === true) === (b.example === true);

/** One that was begun of the same thing is taken up; else a new one. */
function opened(list: InspectionList): Chosen {
  const of = likely(list);
  const before = begun.value.find((one) => isSame(one.list, list) && one.of.trim() === of);
  return { list, id: before?.id ?? crypto.randomUUID(), likely: of };
}

export function Room() {
  useEffect(() => void openRecords(), []);
  const chosen = useSignal<Chosen | null>(null);
  const fault = useSignal('');
  const now = kept.value;
  const all = [...ownLists.value, ...examples];
  const open = (list: InspectionList): void => {
    chosen.value = opened(list);
  };
  const bring = async ([file]: readonly File[]): Promise<void> => {
    const read = readList(readJson(await file.text()).value);
    fault.value = read.ok
      ? ''
      : read.troubles
          .slice(0, 3)
          .map(({ path, found, expected }) => `${printPath(path)}: found ${found}; expected ${expected}`)
          .join('. ');
    if (!read.ok) return;
    putOwnList(read.value);
    open(read.value);
  };
  // The host's list of today asks, where there is one of that name; else as it was asked.
  const takeUp = ({ id, list, of }: Unfinished): void => {
    chosen.value = { id, likely: of, list: all.find((one) => isSame(one, list)) ?? list };
  };
  return (
    <>
      <h1>Inspect</h1>
      {barred.value !== '' && (
        <p class="notice" role="alert">
          {barred.value}
        </p>
      )}
      {now && !now.me && (
        <Begin what="Go through a list item by item. What is rejected holds the train until somebody says what was done." />
      )}
      {now?.me && (
        <Unfinisheds all={begun.value.filter(({ id }) => id !== chosen.value?.id)} takeUp={takeUp} />
      )}
      {now?.me && (
        <section aria-label="Lists">
          <p class="row">
            {all.map((list) => (
              <button
                key={`${list.name}${list.example === true}`}
                type="button"
                aria-pressed={chosen.value !== null && isSame(chosen.value.list, list)}
                onClick={() => open(list)}
              >
                {list.name}
                {list.example === true && ' (example)'}
              </button>
            ))}
            <FilePick label="The host’s own list" accept=".json,application/json" take={bring} />
          </p>
          {fault.value !== '' && <p role="alert">This is no list: {fault.value}.</p>}
        </section>
      )}
      {now?.me && chosen.value && <Walk key={chosen.value.id} {...chosen.value} />}
      {now?.me && chosen.value && ownLists.value.includes(chosen.value.list) && (
        <Own
          list={chosen.value.list}
          gone={() => {
            chosen.value = null;
          }}
        />
      )}
      {now && <Defects now={now} />}
    </>
  );
}

/** The host's own list stays on the device until somebody takes it off. */
function Own({ list, gone }: { readonly list: InspectionList; readonly gone: () => void }) {
  return (
    <AskAgain
      what="Take this list off this device"
      sure={`Take ${list.name} off`}
      keep="Keep the list"
      does={() => {
        dropOwnList(list);
        gone();
      }}
    >
      <p>What was recorded by it stays. The list comes back by its file alone.</p>
    </AskAgain>
  );
}
