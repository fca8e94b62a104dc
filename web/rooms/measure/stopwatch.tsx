/** A stopwatch for a gloved thumb: by the moments of its presses, so that a screen that sleeps loses nothing. */
import { useEffect, useState } from 'preact/hooks';
import { timedBy, withLaps } from '../../../desk/measured/laps.ts';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import type { Draft } from '../../parts/drafts.ts';
import type { Json } from '../../state/session.ts';
import {
  between,
  laps,
  marked,
  type Press,
  running,
  started,
  still,
  stopped,
  type Watch,
  withoutLast,
} from './watch.ts';

interface Props {
  readonly kind: TestKind;
  readonly draft: Draft;
  readonly set: (draft: Draft) => void;
}

/** When the finger came down, not when the page found time for it. */
const pressOf = (e: Event): Press => ({
  page: e.timeStamp,
  day: Date.now() - (performance.now() - e.timeStamp),
  of: performance.timeOrigin,
});

const nowPress = (): Press => ({ page: performance.now(), day: Date.now(), of: performance.timeOrigin });

export function Stopwatch({ kind, draft, set }: Props) {
  const words = timedBy(kind);
  if (words === undefined) return null;
  const { watch = still } = draft;
  const keep = (next: Watch): void => set({ ...draft, watch: next });
  const on = running(watch);
  const times = laps(watch);
  // As the finger comes down: a click comes when it is lifted.
  const press = (act: (press: Press) => Watch) => ({
    onPointerDown: (e: PointerEvent) => {
      if (e.button === 0) keep(act(pressOf(e)));
    },
    // By keys, and by whatever presses for a person.
    onClick: (e: MouseEvent) => {
      if (e.detail === 0) keep(act(pressOf(e)));
    },
  });
  return (
    <section class="stopwatch" aria-label="Stopwatch">
      <h2>Stopwatch</h2>
      <p>{words}.</p>
      <Face watch={watch} />
      <div class="presses">
        {on ? (
          <>
            <button key="mark" type="button" class="mark" {...press((p) => marked(watch, p))}>
              Mark {times.length + 1}
            </button>
            <button key="stop" type="button" class="stop" {...press((p) => stopped(watch, p))}>
              Stop
            </button>
          </>
        ) : (
          <button key="start" type="button" class="start" {...press(started)}>
            {times.length > 0 ? 'Start anew' : 'Start'}
          </button>
        )}
      </div>
      {times.length > 0 && (
        <>
          <ol class="laps">
            {times.map((s) => (
              <li key={s}>{s.toFixed(2)} s</li>
            ))}
          </ol>
          <p class="row">
            <button type="button" class="quiet" onClick={() => keep(withoutLast(watch))}>
              Take off the last
            </button>
            {!on && (
              <button
                type="button"
                class="main"
                onClick={() => set({ ...draft, record: withLaps(draft.record, times) as Json, watch: still })}
              >
                Put these into the form
              </button>
            )}
          </p>
        </>
      )}
    </section>
  );
}

/** The time that runs, drawn ten times a second; what counts are the presses. */
function Face({ watch }: { readonly watch: Watch }) {
  const [, draw] = useState(0);
  const on = running(watch);
  useEffect(() => {
    if (!on) return undefined;
    const timer = setInterval(() => draw((n) => n + 1), 100);
    return () => clearInterval(timer);
  }, [on]);
  const times = laps(watch);
  const s = on ? between(watch.presses[0], nowPress()) : (times[times.length - 1] ?? 0);
  return (
    <p class="face" role="timer" aria-label="time since the start">
      {s.toFixed(1)} s
    </p>
  );
}
