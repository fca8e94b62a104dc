/** What to measure next, looked for when it is asked: it takes a phone's battery. */
import { useEffect, useState } from 'preact/hooks';
import { type Told, worthMore } from '../../../desk/measured/next.ts';
import { longestOf } from '../../../desk/measured/stop-parts.ts';
import { type CarefulStop, longWords } from '../../../words/measured/stop-parts.ts';
import { type Worth, worthLines } from '../../../words/measured/worth.ts';
import type { MeasureAsk, MeasureReply } from '../../measuring.ts';
import { aside } from '../../parts/aside.ts';
import { told as answered } from '../../state/session.ts';
import type { MeasureProps } from './measure-room.tsx';

interface Heard {
  readonly stop?: CarefulStop;
  readonly worths: readonly Worth[];
}

const nothing: Heard = { worths: [] };

const and = (heard: Heard, told: Told): Heard =>
  'stop' in told
    ? { ...heard, stop: told.stop }
    : { ...heard, worths: Object.assign([...heard.worths], { [told.at]: told.worth }) };

export function Next({ outing, voice: { system, wording } }: MeasureProps) {
  const [of, look] = useState<MeasureProps['outing']>();
  const [heard, setHeard] = useState(nothing);
  const [done, setDone] = useState(false);
  const wanted = of === outing;
  useEffect(() => {
    if (!wanted) return undefined;
    setHeard(nothing);
    setDone(false);
    const hear = ({ told, last }: MeasureReply): void => {
      if (told) setHeard((now) => and(now, told));
      if (last) setDone(true);
    };
    // The page has its answer already, if the outing was not changed this moment.
    const longest = longestOf(answered.peek()?.answer.speeds ?? null, outing.plannedSpeed);
    const ask = { measure: 'next', outing, ...(longest ? { longest } : {}) } satisfies MeasureAsk;
    return aside<MeasureReply>(ask, hear, () => setDone(true));
  }, [wanted, outing]);
  if (!wanted)
    return (
      <p>
        <button type="button" class="main" onClick={() => look(outing)}>
          What would change my answer most?
        </button>
      </p>
    );
  const { told, hardly } = worthLines([...heard.worths].sort(worthMore), { system, wording });
  const long = heard.stop && longWords(heard.stop, { system, wording });
  return (
    <section class="next" aria-label="What to measure next" aria-busy={!done}>
      <h2>What would change the answer</h2>
      <ol>
        {told.map(({ worth, words }) => (
          <li key={`${worth.kind} ${worth.of}`}>
            <a href={`#measure/${worth.kind}`}>{words}</a>
          </li>
        ))}
      </ol>
      {hardly !== undefined && <p>{hardly}</p>}
      {!done && <p role="status">Answering as each test might find it …</p>}
      {done && heard.worths.length === 0 && <p>Nothing that a test here would tell is assumed.</p>}
      {long && (
        <>
          <h2>What makes a stop long</h2>
          <p>{long.what}</p>
          <ul>
            {long.parts.map((part) => (
              <li key={part}>{part}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
