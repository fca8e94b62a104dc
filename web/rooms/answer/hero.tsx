/** The answer for whoever stands at the throttle: three figures, one sentence; and which outing it is about. */
import { sentence } from '../../../desk/sentence.ts';
import { tellLight, tellRails } from '../../../words/rails.ts';
import type { Voice } from '../../../words/voice.ts';
import { figured } from '../../parts/figured.ts';
import { noWord } from '../../parts/no-word.ts';
import { paper, told } from '../../state/session.ts';
import { Three } from './three.tsx';

/** The sentence; while there is none, why. */
export function Hero({ voice }: { readonly voice: Voice }) {
  const now = told.value;
  const words = now ? sentence(now.answer, voice) : noWord();
  return (
    <>
      <Three told={now} />
      <p class="sentence">{figured(words).map((part, i) => (i % 2 === 1 ? <b key={i}>{part}</b> : part))}</p>
    </>
  );
}

/** Which outing it is about, and what one does with its answer. */
export function About({ voice }: { readonly voice: Voice }) {
  const { outing } = voice;
  return (
    <section class="about">
      <h1>{outing.name}</h1>
      <p>
        {outing.train.name} on {outing.line.name}, rail {tellRails(voice)}, {tellLight(voice)}
        {outing.direction === 'reverse' ? ', run in reverse' : ''}
      </p>
      <p class="row">
        <a class="button" href="#card">
          Running card
        </a>
        <a class="button" href="#leave">
          Leave
        </a>
        {paper.value['invented'] === true && (
          <a class="button main" href="#new">
            New train and line
          </a>
        )}
      </p>
    </section>
  );
}
