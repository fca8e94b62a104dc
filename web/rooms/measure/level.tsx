/** Tilt by the phone's own sense of weight: asked for on a tap, set level both ways round, read when it is held still. */
import { useState } from 'preact/hooks';
import { type Felt, levelOf, tiltFrom } from '../../../desk/measured/level.ts';
import type { Draft } from '../../parts/drafts.ts';
import type { Json } from '../../state/session.ts';
import { type Feeling, useFelt } from './use-felt.ts';

interface Props {
  readonly draft: Draft;
  readonly set: (draft: Draft) => void;
}

const words: Readonly<Record<Feeling, string>> = {
  off: '',
  asked: 'Looking for the tilt …',
  on: '',
  none: 'This device gives no tilt: use a plumb line and a protractor, and write the angle below.',
  refused:
    'The browser was not allowed to feel the tilt: allow it in its settings, or write the angle below.',
};

export function Level({ draft, set }: Props) {
  const { state, listening, start, now } = useFelt();
  const [once, setOnce] = useState<Felt>();
  const [turned, setTurned] = useState<Felt>();
  const angle = once && now && tiltFrom(levelOf(once, turned), now);
  const take = (side: 'left' | 'right'): void => {
    if (angle === undefined) return;
    const test = draft.record['test'] as Json;
    const tilts = [
      ...((test['tilts'] as unknown[] | undefined) ?? []),
      { side, angle: `${degrees(angle)}°` },
    ];
    set({ ...draft, record: { ...draft.record, test: { ...test, tilts } } });
  };
  return (
    <section class="stopwatch level" aria-label="Tilt by the phone">
      <h2>Tilt by the phone</h2>
      {!listening && (
        <button type="button" onClick={() => void start()}>
          Use this phone as a level
        </button>
      )}
      <p role="status">{words[state]}</p>
      {state === 'on' && (
        <>
          <p>
            Lay it on the floor of the vehicle, all wheels on the rail, and set level. Turn it half round on
            the same spot and set level again: so neither its own back nor the floor counts.
          </p>
          <p class="face" role="timer" aria-label="tilt">
            {tiltWords(once, now, angle)}
          </p>
          <div class="presses level-presses">
            <button type="button" disabled={!now} onClick={() => setOnce(now)}>
              Set level
            </button>
            <button type="button" disabled={!now || !once} onClick={() => setTurned(now)}>
              {turned ? 'Turned round: set' : 'Set level, turned round'}
            </button>
            <button type="button" disabled={angle === undefined || !turned} onClick={() => take('left')}>
              Take: to the left
            </button>
            <button type="button" disabled={angle === undefined || !turned} onClick={() => take('right')}>
              Take: to the right
            </button>
          </div>
        </>
      )}
    </section>
  );
}

const degrees = (rad: number): string => ((rad * 180) / Math.PI).toFixed(1);

function tiltWords(once: Felt | undefined, now: Felt | undefined, angle: number | undefined): string {
  if (!now) return 'hold still …';
  if (!once) return 'set level first';
  return angle === undefined ? 'upside down' : `${degrees(angle)}°`;
}
