/** How many ride: one more or one fewer of a kind, on the seats that are free. */
import { signal } from '@preact/signals';
import { aboard, kindWords, oneFewer, oneMore, type PeopleKind, peopleKinds } from '../../desk/day.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { change, paper, problems } from '../state/session.ts';

const kind = signal<PeopleKind>('adult');

export function People({ outing }: { readonly outing: Outing }) {
  const [one] = kindWords[kind.value];
  // As read: while the papers cannot be, nobody comes or goes.
  const rests = problems.value.length > 0;
  const more = rests ? undefined : oneMore(paper.value, outing, kind.value);
  const fewer = rests ? undefined : oneFewer(paper.value, outing, kind.value);
  const count = aboard(outing).length;
  return (
    <div class="people" role="group" aria-label="People on the cars">
      <button
        type="button"
        aria-label={`One ${one} fewer`}
        disabled={!fewer}
        onClick={() => fewer && change(fewer)}
      >
        −
      </button>
      <output>
        <b>{count}</b> aboard
      </output>
      <button
        type="button"
        aria-label={`One ${one} more`}
        disabled={!more}
        onClick={() => more && change(more)}
      >
        +
      </button>
      <select
        aria-label="Who comes or goes"
        value={kind.value}
        onChange={(e) => {
          kind.value = e.currentTarget.value as PeopleKind;
        }}
      >
        {peopleKinds.map((k) => (
          <option key={k} value={k}>
            {kindWords[k][0]}
          </option>
        ))}
      </select>
    </div>
  );
}
