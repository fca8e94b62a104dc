/** Lists that were begun and not recorded: said wherever somebody might think that it was done. */
import {
  type Unfinished as Begun,
  isOfToday,
  progressOf,
  stillSaid,
} from '../../../desk/inspect/unfinished.ts';
import { tellUnfinished } from '../../../words/records/unfinished.ts';
import { clock } from '../../state/kept.ts';

interface Props {
  readonly all: readonly Begun[];
  /** Undefined: it is taken up in another room. */
  readonly takeUp?: (unfinished: Begun) => void;
}

export function Unfinished({ all, takeUp }: Props) {
  if (all.length === 0) return null;
  const today = clock.now().slice(0, 10);
  return (
    <section aria-label="Not finished">
      <ul class="records">
        {all.map((unfinished) => {
          const { id, list, of, begun } = unfinished;
          const { said, of: items, rejected } = progressOf(list, stillSaid(list, unfinished, today));
          const ofToday = isOfToday(unfinished, today);
          return (
            <li key={id}>
              <span>
                {tellUnfinished({ list: list.name, of: of.trim(), said, items, rejected, begun, ofToday })}
              </span>
              {takeUp ? (
                <button type="button" onClick={() => takeUp(unfinished)}>
                  Take it up again
                </button>
              ) : (
                <a href="#inspect">Take it up again</a>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
