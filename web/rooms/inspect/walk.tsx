/** One list, item by item: a tap where it is right; where it is not, what is amiss. What is said is kept as it is said. */
import { useSignal } from '@preact/signals';
import { inspectionContent, type Looked, lackingIn, resultOf } from '../../../desk/inspect/inspection.ts';
import {
  asSaid,
  isOfToday,
  progressOf,
  type Said,
  stillSaid,
  type Unfinished,
} from '../../../desk/inspect/unfinished.ts';
import type { InspectionItem, InspectionList } from '../../../papers/inspection/fields.ts';
import { type Result, results } from '../../../papers/inspection/read.ts';
import { inspectionDrawing } from '../../../views/inspection-drawings.ts';
import { resultWords } from '../../../words/records/record.ts';
import { OF_ANOTHER_DAY } from '../../../words/records/unfinished.ts';
import { AskAgain } from '../../parts/ask-again.tsx';
import { Drawing } from '../../parts/drawing.tsx';
import { Inks } from '../../parts/inks.tsx';
import { begunOf, putBegun } from '../../parts/inspecting.ts';
import { clock, dropPhoto, record, saying } from '../../state/records.ts';
import { outing, paper } from '../../state/session.ts';
import { TakePhoto } from './photo.tsx';

const today = (): string => clock.now().slice(0, 10);

interface Props {
  readonly list: InspectionList;
  /** Which walk it is, begun or not. */
  readonly id: string;
  /** What it is likely of, where nobody said. */
  readonly likely: string;
}

export function Walk({ list, id, likely }: Props) {
  const named = useSignal(likely);
  const told = useSignal('');
  const unfinished = begunOf(id);
  const said = unfinished ? stillSaid(list, unfinished, today()) : {};
  const of = unfinished?.of ?? named.value;
  const { said: done, of: items } = progressOf(list, said);
  const put = (next: Said, of: string): void => {
    told.value = '';
    const begun = unfinished && isOfToday(unfinished, today()) ? unfinished.begun : clock.now();
    putBegun(id, Object.keys(next).length === 0 ? undefined : { id, list, of, said: next, begun });
    named.value = of;
  };
  const keep = async (): Promise<void> => {
    try {
      // Said anew from what stands at this moment: the page may have lain open overnight.
      const now = begunOf(id);
      const whole = asSaid(now ? stillSaid(list, now, today()) : {});
      if (lackingIn(list, whole).length > 0) return put(whole, of);
      const content = await inspectionContent(list, of.trim(), whole);
      const before = paper.value;
      await record({ kind: 'inspection', content });
      putBegun(id, undefined);
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
            value={of}
            list="looked-at"
            onInput={(e) => {
              const typed = e.currentTarget.value;
              named.value = typed;
              if (unfinished) put(said, typed);
            }}
          />
        </label>
        <datalist id="looked-at">
          {outing.value?.train.vehicles.map(({ name }) => (
            <option key={name} value={name} />
          ))}
        </datalist>
      </p>
      {unfinished && !isOfToday(unfinished, today()) && <p class="notice">{OF_ANOTHER_DAY}</p>}
      <ol>
        {list.items.map((item) => (
          <Item
            key={item.id}
            item={item}
            looked={said[item.id] ?? {}}
            say={(looked) => {
              const { [item.id]: _, ...rest } = said;
              put(Object.keys(looked).length === 0 ? rest : { ...rest, [item.id]: looked }, of);
            }}
          />
        ))}
      </ol>
      <button
        type="button"
        class="main leave"
        disabled={done < items || of.trim() === ''}
        onClick={() => void keep()}
      >
        Record it
      </button>
      <p role="status">{told.value || `${done} of ${items} said.`}</p>
      {unfinished && <Unrecorded unfinished={unfinished} />}
      <p>
        <small>Source: {list.source}.</small>
      </p>
    </section>
  );
}

/** What is said so far, and how one is rid of it. */
function Unrecorded({ unfinished: { id, said } }: { readonly unfinished: Unfinished }) {
  const drop = (): void => {
    putBegun(id, undefined);
    for (const { photo } of Object.values(said)) if (photo !== undefined) void dropPhoto(photo);
  };
  return (
    <div>
      <p>
        <small>
          What is said so far is kept on this device alone, and counts for nothing until it is recorded.
        </small>
      </p>
      <AskAgain
        what="Throw away what is said so far"
        sure="Throw it away"
        keep="Keep what is said"
        does={drop}
      >
        <p>It was not recorded, and cannot be brought back.</p>
      </AskAgain>
    </div>
  );
}

interface ItemProps {
  readonly item: InspectionItem;
  readonly looked: Looked;
  readonly say: (looked: Looked) => void;
}

function Item({ item, looked, say }: ItemProps) {
  const result = resultOf(item, asSaid({ it: looked })['it']);
  const text = (label: string, key: 'value' | 'note', value: string | undefined) => (
    <label>
      {label}{' '}
      <input
        value={value ?? ''}
        onInput={(e) => {
          const typed = e.currentTarget.value;
          const { [key]: _, ...rest } = looked;
          say(typed === '' ? rest : { ...rest, [key]: typed });
        }}
      />
    </label>
  );
  const { photo: _photo, ...bare } = looked;
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
          <button
            key={one}
            type="button"
            aria-pressed={result === one}
            onClick={() => say({ ...looked, result: one })}
          >
            {resultWords[one]}
          </button>
        ))}
      </p>
      {result !== undefined && result !== 'right' && (
        <p>
          {text('What is amiss', 'note', looked.note)}{' '}
          <TakePhoto
            label="Photo"
            of={item.ask}
            hash={looked.photo}
            taken={(photo) => {
              if (looked.photo !== undefined && looked.photo !== photo) void dropPhoto(looked.photo);
              say(photo === undefined ? bare : { ...bare, photo });
            }}
          />
        </p>
      )}
    </li>
  );
}
