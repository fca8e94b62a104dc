/** Tilt by the phone's own sense of weight: asked for on a tap, set level both ways round, read when it is held still. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type Felt, levelOf, steady, tiltFrom } from '../../../desk/measured/level.ts';
import type { Draft } from '../../parts/drafts.ts';
import type { Json } from '../../state/session.ts';

interface Props {
  readonly draft: Draft;
  readonly set: (draft: Draft) => void;
}

/** iOS asks its owner; others have no such word. */
type Asking = { readonly requestPermission?: () => Promise<string> };

/** Looks that one reading is the mean of, and how long none may come before there is no such sense, ms. */
const LOOKS = 20;
const SILENT = 2000;

type State = 'off' | 'asked' | 'on' | 'none' | 'refused';

const words: Readonly<Record<State, string>> = {
  off: '',
  asked: 'Looking for the tilt …',
  on: '',
  none: 'This device gives no tilt: use a plumb line and a protractor, and write the angle below.',
  refused:
    'The browser was not allowed to feel the tilt: allow it in its settings, or write the angle below.',
};

export function Level({ draft, set }: Props) {
  const [state, go] = useState<State>('off');
  const looks = useRef<Felt[]>([]);
  const [now, feel] = useState<Felt>();
  const [once, setOnce] = useState<Felt>();
  const [turned, setTurned] = useState<Felt>();
  const listening = state === 'asked' || state === 'on';
  useEffect(() => {
    if (!listening) return undefined;
    const hear = ({ accelerationIncludingGravity: g }: DeviceMotionEvent): void => {
      if (g?.x == null || g.y == null || g.z == null || Math.hypot(g.x, g.y, g.z) === 0) return;
      looks.current = [...looks.current.slice(1 - LOOKS), [g.x, g.y, g.z]];
      go('on');
      feel(looks.current.length < LOOKS ? undefined : steady(looks.current));
    };
    const silent = setTimeout(() => {
      if (looks.current.length === 0) go('none');
    }, SILENT);
    addEventListener('devicemotion', hear);
    return () => {
      clearTimeout(silent);
      removeEventListener('devicemotion', hear);
    };
  }, [listening]);
  const start = async (): Promise<void> => {
    if (!('DeviceMotionEvent' in globalThis)) return go('none');
    const { requestPermission } = DeviceMotionEvent as unknown as Asking;
    const answer = requestPermission ? await requestPermission().catch(() => 'denied') : 'granted';
    go(answer === 'granted' ? 'asked' : 'refused');
  };
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
