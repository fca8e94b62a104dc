/** What the readings say, the answer before and after, and the one button that writes it into the papers. */
import { useState } from 'preact/hooks';
import type { MadeWith } from '../../../desk/measured/record.ts';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import { writtenWords } from '../../../words/measured/applied.ts';
import type { Voice } from '../../../words/voice.ts';
import { Standings } from '../../parts/standings.tsx';
import { change, type Json } from '../../state/session.ts';
import { type Draft, put } from './drafts.ts';
import { type Said, useMeasured } from './use-measured.ts';

const TOLD = 5;

interface Props {
  readonly kind: TestKind;
  readonly draft: Draft;
  readonly made: MadeWith;
  readonly voice: Voice;
}

export function Outcome({ kind, draft, made, voice: { system, wording } }: Props) {
  const [said, say] = useState('');
  // Of a blank sheet there is nothing to say.
  const begun = Object.keys(draft.record['test'] as Json).some((key) => key !== 'kind' && key !== 'rail');
  const reply = useMeasured(begun ? draft.record : undefined, made, { system, wording });
  const written = reply?.applied?.written.length ?? 0;
  const apply = (): void => {
    const next = reply?.applied?.paper;
    if (!next) return;
    say(writtenWords(written));
    put(kind, undefined);
    change(next as Json);
  };
  return (
    <section class="outcome" aria-label="What it says">
      <h2>What it says</h2>
      <div role="status">
        {!begun && <p>{said === '' ? 'Nothing yet: write down what was read.' : said}</p>}
        {begun && !reply && <p>Reckoning …</p>}
        {reply?.fault !== undefined && <p class="wrong">{reply.fault}</p>}
        {reply?.unread && (
          <>
            <p>Still to be written or mended:</p>
            <ul>
              {reply.unread.slice(0, TOLD).map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
        {reply?.lines?.map((line, i) => (
          <p key={line} class={i === 0 ? 'hero-line' : ''}>
            {line}
          </p>
        ))}
        {reply?.left?.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      {written > 0 && <BeforeAfter reply={reply} />}
      {written > 0 && (
        <p>
          <button type="button" class="main apply" onClick={apply}>
            Write it into my papers
          </button>{' '}
          Undo takes it out again; or take it back later, under <a href="#measure">All tests</a>.
        </p>
      )}
    </section>
  );
}

function BeforeAfter({ reply }: { readonly reply: Said | undefined }) {
  const { was, now, differs } = reply?.stood ?? {};
  if (!was || !now)
    return <p class="before-after">{reply?.last ? '' : 'Asking the outing again with it …'}</p>;
  return (
    <div class="before-after">
      <p class="hero-line">{differs}</p>
      <section class="scroll" tabIndex={0} aria-label="Without it and with it">
        <Standings
          rows={[
            ['without it', was],
            ['with it', now],
          ]}
        />
      </section>
    </div>
  );
}
