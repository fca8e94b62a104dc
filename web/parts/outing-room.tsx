/** A room about the outing that is open, with what is being tried on it; nothing of another is ever shown. */
import type { ComponentType } from 'preact';
import type { Outing } from '../../engine/outing/types.ts';
import type { Voice } from '../../words/voice.ts';
import { asked, problems, tried, voice } from '../state/session.ts';
import { noWord } from './no-word.ts';

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
}

/** What a room of couplings says of a vehicle by itself. */
interface Alone {
  readonly title: string;
  readonly words: string;
}

export const outingRoom = (View: ComponentType<Props>, alone?: Alone) =>
  function Room() {
    const outing = tried.value;
    if (!outing || !voice.value) return null;
    if (alone && outing.train.vehicles.length < 2) {
      return (
        <section>
          <h1>{alone.title}</h1>
          <p>{alone.words}</p>
        </section>
      );
    }
    const unread = problems.value.length > 0;
    // Out of sight, not taken away: what is typed there stays. For the blink of a reading its room is kept.
    const away = asked.value ? {} : unread ? { display: 'none' } : { visibility: 'hidden' };
    return (
      <>
        {unread && <p>{noWord()}: nothing is said here until it can.</p>}
        <div style={away}>
          <View outing={outing} voice={voice.value} />
        </div>
      </>
    );
  };
