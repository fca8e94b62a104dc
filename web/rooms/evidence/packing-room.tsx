/** Evidence: what was recorded, for an insurer, an inspector or a host, as one PDF that can be checked. */
import '../../look/rooms.css';
import '../records/records.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { PackPaper } from '../../../views/evidence/document.ts';
import { packDone, packWords } from '../../../words/records/evidence.ts';
import { save } from '../../parts/save.ts';
import { Written } from '../../parts/written.tsx';
import { barred, kept, openRecords } from '../../state/records.ts';
import { told } from '../../state/session.ts';

export function Room() {
  useEffect(() => void openRecords(), []);
  const count = kept.value?.entries.length ?? 0;
  return (
    <>
      <h1>Evidence pack</h1>
      {barred.value !== '' && (
        <p class="notice" role="alert">
          {barred.value}
        </p>
      )}
      <p>{packWords.about}</p>
      {kept.value && count === 0 && (
        <p>
          Nothing is recorded here yet: <a href="#records">records</a> are made or brought in first.
        </p>
      )}
      {count > 0 && <Ask />}
    </>
  );
}

const papers: readonly (readonly [PackPaper, string])[] = [
  ['letter', 'Letter'],
  ['a4', 'A4'],
];

function Ask() {
  const [from, to, of] = [useSignal(''), useSignal(''), useSignal('')];
  const [names, outing] = [useSignal(false), useSignal(false)];
  const paper = useSignal<PackPaper>('letter');
  const busy = useSignal(false);
  const said = useSignal('');
  const day = (text: string): string | undefined => (text === '' ? undefined : text);
  const say = async (words: string): Promise<void> => {
    said.value = words;
    // It is drawn before the page is busy.
    await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)));
  };
  const make = async (): Promise<void> => {
    busy.value = true;
    const those = of.value.split(',').flatMap((name) => name.trim() || []);
    try {
      const { makePack } = await import('./packing.ts');
      const { pack, pdf } = await makePack(
        {
          wanted: { from: day(from.value), to: day(to.value), of: those.length === 0 ? undefined : those },
          names: names.value,
          outing: outing.value,
          paper: paper.value,
        },
        say,
      );
      save(pdf, 'evidence.pdf');
      said.value = packDone(pack.count, 'evidence.pdf', pack.faults);
    } catch (fault) {
      said.value = `No pack was made: ${fault instanceof Error ? fault.message : String(fault)}.`;
    }
    busy.value = false;
  };
  const field = (label: string, value: typeof from, more: object = {}) => (
    <Written as="field" label={label} value={value} {...more} />
  );
  const tick = (label: string, value: typeof names) => (
    <label class="tick">
      <input
        type="checkbox"
        checked={value.value}
        onChange={(e) => {
          value.value = e.currentTarget.checked;
        }}
      />
      {label}
    </label>
  );
  return (
    <section aria-label="What goes in">
      {field('First day; empty: from the first record', from, { type: 'date' })}
      {field('Last day; empty: to the last', to, { type: 'date' })}
      {field('Of these vehicles or this line alone, with commas', of)}
      <p class="row">
        {told.value &&
          tick(`with the answer, sheets and measurements of ${told.value.asked.outing.name}`, outing)}
        {tick('with the names of persons', names)}
        <label>
          Paper{' '}
          <select
            value={paper.value}
            onChange={(e) => {
              paper.value = e.currentTarget.value as PackPaper;
            }}
          >
            {papers.map(([id, name]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </p>
      <p class="row">
        <button type="button" class="main" disabled={busy.value} onClick={() => void make()}>
          Save the pack as PDF
        </button>
      </p>
      <p role="status">{said.value}</p>
    </section>
  );
}
