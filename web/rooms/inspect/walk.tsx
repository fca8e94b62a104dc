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
import { canonical } from '../../../records/canonical.ts';
import { inspectionDrawing } from '../../../views/inspection-drawings.ts';
import { tellBands } from '../../../words/records/bands.ts';
import { resultWords } from '../../../words/records/record.ts';
import { ELSEWHERE, NOT_RECORDED, OF_ANOTHER_DAY } from '../../../words/records/unfinished.ts';
import { AskAgain } from '../../parts/ask-again.tsx';
import { Drawing } from '../../parts/drawing.tsx';
import { Inks } from '../../parts/inks.tsx';
import { begunOf, changeBegun } from '../../parts/inspecting.ts';
import { clock, dropPhoto, record, saying } from '../../state/records.ts';
import { outing, paper } from '../../state/session.ts';
import { TakePhoto } from './photo.tsx';

/** No item is called so. */
const WHOLE = ' ';

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
  /** What another tab said otherwise: an item, or the whole of it. */
  const elsewhere = useSignal('');
  const unfinished = begunOf(id);
  const said = unfinished ? stillSaid(list, unfinished, today()) : {};
  const of = unfinished?.of ?? named.value;
  const { said: done, of: items } = progressOf(list, said);
  /** @param what an item, or the whole of it */
  const change = (
    what: string,
    ...how: Parameters<typeof changeBegun> extends [string, ...infer R] ? R : never
  ) => {
    told.value = '';
    elsewhere.value = changeBegun(id, ...how) ? '' : what;
    return elsewhere.value === '';
  };
  const withSaid = (before: Unfinished | undefined, next: Said, of: string): Unfinished | undefined => {
    const begun = before && isOfToday(before, today()) ? before.begun : clock.now();
    return Object.keys(next).length === 0 ? undefined : { id, list, of, said: next, begun };
  };
  const say = (item: string, looked: Looked): void => {
    change(
      item,
      (one) => one?.said[item],
      (one) => {
        const { [item]: _, ...rest } = one ? stillSaid(list, one, today()) : {};
        const next = Object.keys(looked).length === 0 ? rest : { ...rest, [item]: looked };
        named.value = one?.of ?? of;
        return withSaid(one, next, named.value);
      },
    );
  };
  const keep = async (): Promise<void> => {
    try {
      // Said anew from what stands at this moment: the page may have lain open overnight.
      const anew = (one: Unfinished | undefined) =>
        one && withSaid(one, stillSaid(list, one, today()), one.of);
      // And nothing that another tab said is recorded unseen.
      if (!change(WHOLE, (one) => one, anew)) return;
      const now = begunOf(id);
      const whole = asSaid(now?.said ?? {});
      if (lackingIn(list, whole).length > 0) return;
      const content = await inspectionContent(list, of.trim(), whole);
      const before = paper.value;
      await record({ kind: 'inspection', content });
      // What is said of it while it was recorded stays to be recorded.
      change(
        WHOLE,
        () => null,
        (one) => (canonical(one ?? null) === canonical(now ?? null) ? undefined : one),
      );
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
              if (unfinished)
                change(
                  WHOLE,
                  (one) => one?.of,
                  (one) => one && { ...one, of: typed },
                );
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
            elsewhere={elsewhere.value === item.id}
            say={(looked) => say(item.id, looked)}
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
      {elsewhere.value === WHOLE && (
        <p class="notice" role="alert">
          {ELSEWHERE}
        </p>
      )}
      <p role="status">{told.value || `${done} of ${items} said.`}</p>
      {unfinished && (
        <Unrecorded
          drop={() => {
            const gone = Object.values(unfinished.said);
            if (
              change(
                WHOLE,
                (one) => one,
                () => undefined,
              )
            )
              for (const { photo } of gone) if (photo !== undefined) void dropPhoto(photo);
          }}
        />
      )}
      <p>
        <small>Source: {list.source}.</small>
      </p>
    </section>
  );
}

/** What is said so far, and how one is rid of it. */
function Unrecorded({ drop }: { readonly drop: () => void }) {
  return (
    <div>
      <p>
        <small>{NOT_RECORDED}</small>
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
  /** Another tab said otherwise than was seen here. */
  readonly elsewhere: boolean;
  readonly say: (looked: Looked) => void;
}

function Item({ item, looked, elsewhere, say }: ItemProps) {
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
        {item.measured && <small> By its figure: {tellBands(item.measured)}.</small>}
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
      {elsewhere && (
        <p class="notice" role="alert">
          {ELSEWHERE}
        </p>
      )}
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
