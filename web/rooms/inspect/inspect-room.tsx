/** Inspect: a list gone through with one thumb, what is amiss, and what was mended. */
import '../../look/rooms.css';
import '../records/records.css';
import './inspect.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { exampleLists } from '../../../data/inspection-lists/index.ts';
import type { InspectionList } from '../../../papers/inspection/fields.ts';
import { readList } from '../../../papers/inspection/read.ts';
import { readJson } from '../../../papers/json.ts';
import { printPath } from '../../../papers/problem.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { barred, kept, openRecords } from '../../state/records.ts';
import { Begin } from '../records/begin.tsx';
import { Defects } from './defects.tsx';
import { Walk } from './walk.tsx';

const examples: readonly InspectionList[] = Object.values(exampleLists).flatMap((json) => {
  const read = readList(json);
  return read.ok ? [read.value] : [];
});

export function Room() {
  useEffect(() => void openRecords(), []);
  const own = useSignal<readonly InspectionList[]>([]);
  const chosen = useSignal<InspectionList | null>(null);
  const fault = useSignal('');
  const now = kept.value;
  const bring = async ([file]: readonly File[]): Promise<void> => {
    const read = readList(readJson(await file.text()).value);
    fault.value = read.ok
      ? ''
      : read.troubles
          .slice(0, 3)
          .map(({ path, found, expected }) => `${printPath(path)}: found ${found}; expected ${expected}`)
          .join('. ');
    if (!read.ok) return;
    own.value = [...own.value, read.value];
    chosen.value = read.value;
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
        <section aria-label="Lists">
          <p class="row">
            {[...own.value, ...examples].map((list) => (
              <button
                key={list.name}
                type="button"
                aria-pressed={chosen.value === list}
                onClick={() => {
                  chosen.value = list;
                }}
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
      {now?.me && chosen.value && <Walk key={chosen.value.name} list={chosen.value} />}
      {now && <Defects now={now} />}
    </>
  );
}
