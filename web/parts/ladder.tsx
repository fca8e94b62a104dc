/**
 * The way to the best word, step by step: a first one soon, better ones while one reads. Each step can be tried, and
 * what is tried written into the papers.
 */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Asked } from '../../desk/asked.ts';
import { tellLadder } from '../../desk/ladder.ts';
import { testAsked } from '../../desk/measured/which.ts';
import type { Ladder as Found } from '../../engine/answer/ladder.ts';
import type { Change } from '../../engine/outing/change.ts';
import type { LadderAsk, LadderReply } from '../laddering.ts';
import { busy, speech, tryOut } from '../state/session.ts';
import { aside } from './aside.ts';

interface State {
  /** Identity of the outing that it is for. */
  readonly id: string;
  readonly ladder: Found | null;
  readonly last: boolean;
}

/**
 * Looked for when the answer is whole, so that neither waits for the other. Who may leave within limits is asked first
 * whether to look: it takes a phone's battery.
 */
export function Ladder({ asked, leaves }: { readonly asked: Asked; readonly leaves: boolean }) {
  const state = useSignal<State | null>(null);
  const wanted = useSignal('');
  const idle = leaves && wanted.value !== asked.id;
  const ready = !busy.value && !idle;
  useEffect(() => {
    if (!ready) return undefined;
    state.value = { id: asked.id, ladder: null, last: false };
    return looking(asked, (reply) => {
      const now = state.value;
      if (now?.id === asked.id)
        state.value = { ...now, ladder: reply.ladder ?? now.ladder, last: reply.last };
    });
  }, [asked.id, ready]);
  if (idle)
    return (
      <section class="ladder" aria-label="What to do">
        <h2>What to do</h2>
        <button
          type="button"
          onClick={() => {
            wanted.value = asked.id;
          }}
        >
          Look for a way to go without limits
        </button>
      </section>
    );
  const now = state.value?.id === asked.id ? state.value : null;
  const found = now?.ladder;
  return (
    <section class="ladder" aria-label="What to do" aria-busy={!now?.last}>
      <h2>What to do</h2>
      {found && <Steps ladder={found} asked={asked} />}
      {!now?.last && <p>Looking for a {found ? 'shorter ' : ''}way …</p>}
      {now?.last && !found && <p>No way was looked for here.</p>}
    </section>
  );
}

function Steps({ ladder, asked }: { readonly ladder: Found; readonly asked: Asked }) {
  const { measure, lead, steps, stays, left } = tellLadder(ladder, { ...speech.value, outing: asked.outing });
  return (
    <>
      {measure.length > 0 && (
        <>
          <p>First:</p>
          <ol>
            {measure.map(({ what, field }) => {
              const test = testAsked(field);
              return (
                <li key={what}>
                  {what} {test && <a href={`#measure/${test}`}>How, with a form</a>}
                </li>
              );
            })}
          </ol>
        </>
      )}
      <p>
        {lead}
        {steps.length > 0 ? ':' : '.'}
      </p>
      <ol start={measure.length + 1}>
        {steps.map(({ what, word }, i) => (
          <li key={what}>
            {what} <small>(then: {word})</small>{' '}
            <button type="button" onClick={() => void climb(ladder, i + 1)}>
              {i === 0 ? 'Try this' : `Try these ${i + 1}`}
            </button>
          </li>
        ))}
      </ol>
      {left.length > 0 && (
        <details>
          <summary>{stays}</summary>
          <ul>
            {left.map(({ what, mind }) => (
              <li key={what}>
                {what} {mind !== '' && <strong>{mind}</strong>}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** The first steps as one change, so that one tap undoes them. */
async function climb({ steps }: Found, count: number): Promise<void> {
  const changes = steps
    .slice(0, count)
    .flatMap(({ change }): readonly Change[] => (change.kind === 'together' ? change.changes : [change]));
  await tryOut(changes.length === 1 ? changes[0] : { kind: 'together', changes });
  scrollTo({ top: 0 });
}

/** @returns what stops it. Without workers nothing is looked for: the page would stand still. */
const looking = ({ outing }: Asked, hear: (reply: LadderReply) => void): (() => void) =>
  aside({ ladder: outing } satisfies LadderAsk, hear, () => hear({ last: true }));
