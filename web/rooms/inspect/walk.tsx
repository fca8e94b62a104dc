/** One list, item by item: a tap where it is right; where it is not, what is amiss. */
import { type Signal, useSignal } from '@preact/signals';
import { inspectionContent, type Looked, lackingIn, resultOf } from '../../../desk/inspect/inspection.ts';
import type { InspectionItem, InspectionList } from '../../../papers/inspection/fields.ts';
import { type Result, results } from '../../../papers/inspection/read.ts';
import type { Photo } from '../../../records/photos.ts';
import { inspectionDrawing } from '../../../views/inspection-drawings.ts';
import { resultWords } from '../../../words/records/record.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Inks } from '../../parts/inks.tsx';
import { keepPhoto, record, saying } from '../../state/records.ts';
import { outing, paper } from '../../state/session.ts';
import { TakePhoto } from './photo.tsx';

type Said = Readonly<Record<string, Looked>>;

/** What a list is likely for, of the outing on the screen. */
function likely({ of }: InspectionList): string {
  const now = outing.value;
  if (!now) return '';
  if (of === 'line') return now.line.name;
  const isEngine = of.includes('engine');
  return now.train.vehicles.find(({ role }) => (role === 'engine') === isEngine)?.name ?? '';
}

export function Walk({ list }: { readonly list: InspectionList }) {
  const said = useSignal<Said>({});
  const of = useSignal(likely(list));
  const told = useSignal('');
  const photos = useSignal<ReadonlyMap<string, Photo>>(new Map());
  const lacking = lackingIn(list, said.value);
  const done = list.items.length - lacking.length;
  const keep = async (): Promise<void> => {
    try {
      const content = await inspectionContent(list, of.value.trim(), said.value);
      // A photo first: a record never names one that is not kept.
      for (const { photo } of content.looked) {
        const taken = photo === undefined ? undefined : photos.value.get(photo);
        if (taken) await keepPhoto(taken);
      }
      const before = paper.value;
      await record({ kind: 'inspection', content });
      said.value = {};
      photos.value = new Map();
      const shown = paper.value !== before;
      told.value = `Recorded.${shown ? ' It stands in the outing now, and the answer follows it.' : ''}`;
    } catch (fault) {
      told.value = saying(fault);
    }
  };
  return (
    <section class="walk" aria-label={list.name}>
      <p class="field">
        <label>
          Of{' '}
          <input
            value={of.value}
            list="looked-at"
            onInput={(e) => {
              of.value = e.currentTarget.value;
            }}
          />
        </label>
        <datalist id="looked-at">
          {outing.value?.train.vehicles.map(({ name }) => (
            <option key={name} value={name} />
          ))}
        </datalist>
      </p>
      <ol>
        {list.items.map((item) => (
          <Item key={item.id} item={item} said={said} photos={photos} />
        ))}
      </ol>
      <button
        type="button"
        class="main leave"
        disabled={lacking.length > 0 || of.value.trim() === ''}
        onClick={() => void keep()}
      >
        Record it
      </button>
      <p role="status">{told.value || `${done} of ${list.items.length} said.`}</p>
      <p>
        <small>Source: {list.source}.</small>
      </p>
    </section>
  );
}

interface ItemProps {
  readonly item: InspectionItem;
  readonly said: Signal<Said>;
  readonly photos: Signal<ReadonlyMap<string, Photo>>;
}

function Item({ item, said, photos }: ItemProps) {
  const looked = said.value[item.id] ?? {};
  const say = (more: Looked): void => {
    said.value = { ...said.value, [item.id]: { ...looked, ...more } };
  };
  const result = resultOf(item, looked);
  const text = (label: string, key: 'value' | 'note', value: string | undefined) => (
    <label>
      {label}{' '}
      <input
        value={value ?? ''}
        onInput={(e) => {
          const typed = e.currentTarget.value.trim();
          const { [key]: _, ...rest } = looked;
          said.value = { ...said.value, [item.id]: typed === '' ? rest : { ...rest, [key]: typed } };
        }}
      />
    </label>
  );
  return (
    <li>
      <p>
        {item.ask}
        {item.how !== undefined && <small> {item.how}</small>}
        {item.by !== undefined && <small> To be judged by: {item.by}.</small>}
      </p>
      {item.drawing !== undefined && (
        <details>
          <summary>How, drawn</summary>
          <figure class="drawn">
            <Inks />
            <Drawing scene={inspectionDrawing(item.drawing, `Drawing: ${item.ask}`)} />
          </figure>
        </details>
      )}
      {item.measured && text('Measured', 'value', looked.value)}
      <p class="three" role="group" aria-label={item.ask}>
        {results.map((one: Result) => (
          <button key={one} type="button" aria-pressed={result === one} onClick={() => say({ result: one })}>
            {resultWords[one]}
          </button>
        ))}
      </p>
      {result !== undefined && result !== 'right' && (
        <p>
          {text('What is amiss', 'note', looked.note)}{' '}
          <TakePhoto
            label="Photo"
            taken={(photo) => {
              if (photo) photos.value = new Map([...photos.value, [photo.hash, photo]]);
              const { photo: _, ...rest } = said.value[item.id] ?? {};
              said.value = { ...said.value, [item.id]: photo ? { ...rest, photo: photo.hash } : rest };
            }}
          />
        </p>
      )}
    </li>
  );
}
