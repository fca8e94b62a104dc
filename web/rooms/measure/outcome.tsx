/** What the readings say, the answer before and after, and the one button that writes it into the papers. */
import { useState } from 'preact/hooks';
import { builtAlike } from '../../../desk/measured/alike.ts';
import type { MadeWith } from '../../../desk/measured/record.ts';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import { writtenWords } from '../../../words/measured/applied.ts';
import type { Voice } from '../../../words/voice.ts';
import { type Draft, put } from '../../parts/drafts.ts';
import { Standings } from '../../parts/standings.tsx';
import { Tick } from '../../parts/tick.tsx';
import { change, type Json } from '../../state/session.ts';
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
  const alike = builtAlike(made.outing, made.vehicle);
  const likes = draft.alike ? alike.map(({ id }) => id) : [];
  const reply = useMeasured(begun ? draft.record : undefined, made, { system, wording }, likes);
  const written = reply?.applied?.written.length ?? 0;
  const keep = (next: Json | undefined, words: string): void => {
    if (!next) return;
    say(words);
    put(kind, undefined);
    change(next);
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
      {reply?.applied && alike.length > 0 && (
        <Tick on={draft.alike === true} set={(on) => put(kind, { ...draft, alike: on })}>
          take it for those built alike too, wider and not as measured:{' '}
          {alike.map(({ name }) => name).join(', ')}
        </Tick>
      )}
      {written > 0 && <BeforeAfter reply={reply} />}
      {written > 0 && (
        <p>
          <button
            type="button"
            class="main apply"
            onClick={() => keep(reply?.applied?.paper as Json | undefined, writtenWords(written))}
          >
            Write it into my papers
          </button>{' '}
          Undo takes it out again; or take it back later, under <a href="#measure">All tests</a>.
        </p>
      )}
      {reply?.check && (
        <details class="fold" open={written === 0}>
          <summary>Was the answer right?</summary>
          <div class="inside">
            {reply.check.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
            <button
              type="button"
              onClick={() =>
                keep(reply.check?.paper as Json | undefined, 'Kept as a check; no figure is changed.')
              }
            >
              Keep it as a check alone
            </button>
          </div>
        </details>
      )}
    </section>
  );
}

function BeforeAfter({ reply }: { readonly reply: Said | undefined }) {
  const { was, now, differs, stop } = reply?.stood ?? {};
  if (!was || !now)
    return <p class="before-after">{reply?.last ? '' : 'Asking the outing again with it …'}</p>;
  return (
    <div class="before-after">
      <p class="hero-line">{differs}</p>
      {stop !== undefined && <p>{stop.charAt(0).toUpperCase() + stop.slice(1)}.</p>}
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
