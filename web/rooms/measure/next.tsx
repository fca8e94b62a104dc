/** What to measure next, looked for when it is asked: it takes a phone's battery. */
import { useEffect, useState } from 'preact/hooks';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import { worthWords } from '../../../words/measured/worth.ts';
import type { MeasureAsk, MeasureReply } from '../../measuring.ts';
import { aside } from '../../parts/aside.ts';
import type { MeasureProps } from './measure-room.tsx';

interface Line {
  readonly kind: TestKind;
  readonly words: string;
}

export function Next({ outing, voice: { system, wording } }: MeasureProps) {
  const [of, ask] = useState<MeasureProps['outing']>();
  const [lines, setLines] = useState<readonly Line[]>([]);
  const [done, setDone] = useState(false);
  const wanted = of === outing;
  useEffect(() => {
    if (!wanted) return undefined;
    setLines([]);
    setDone(false);
    const hear = ({ worth, last }: MeasureReply): void => {
      if (worth)
        setLines((now) => [...now, { kind: worth.kind, words: worthWords(worth, { system, wording }) }]);
      if (last) setDone(true);
    };
    return aside<MeasureReply>({ measure: 'next', outing } satisfies MeasureAsk, hear, () => setDone(true));
  }, [wanted, outing, system, wording]);
  if (!wanted)
    return (
      <p>
        <button type="button" class="main" onClick={() => ask(outing)}>
          What would change my answer most?
        </button>
      </p>
    );
  return (
    <section class="next" aria-label="What to measure next" aria-busy={!done}>
      <h2>What would change the answer</h2>
      <ol>
        {lines.map(({ kind, words }) => (
          <li key={words}>
            <a href={`#measure/${kind}`}>{words}</a>
          </li>
        ))}
      </ol>
      {!done && <p role="status">Answering as each test might find it …</p>}
      {done && lines.length === 0 && <p>Nothing that a test here would tell is assumed.</p>}
    </section>
  );
}
