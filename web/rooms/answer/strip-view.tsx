/** The strip on the screen: drag the train along it, set its speed, zoom; the same drawing as on paper. */

import { useComputed, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Told } from '../../../desk/asked.ts';
import { MPH } from '../../../engine/base/constants.ts';
import { chainageAt, drawMoment, drawStrip } from '../../../views/strip/draw.ts';
import type { StripModel } from '../../../views/strip/model.ts';
import { stripModel } from '../../../views/strip/svg.ts';
import { stripWords } from '../../../views/strip/words.ts';
import { chainage, distance, say, type Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { StripInks } from '../../parts/inks.tsx';
import { later } from '../../parts/later.tsx';
import { noWord } from '../../parts/no-word.ts';
import { asked, busy, paper, reading, speech, told } from '../../state/session.ts';
import { pressed } from './pressed.ts';
import {
  headNow,
  length,
  live,
  loadAtHand,
  moveTo,
  reachNow,
  seen,
  speed,
  speedNow,
  view,
  zoom,
} from './strip-state.ts';

/** What is drawn, and whether it waits for the answer to what is written now. */
interface Drawn {
  /** As written, to tell one line from another. */
  readonly line: unknown;
  readonly model: StripModel;
  readonly waits: boolean;
}

/** Lines around the strip, px. */
const FRAME = 3;

export function StripView() {
  const box = useRef<HTMLDivElement>(null);
  const size = useSignal({ width: 1000, height: 420 });
  useEffect(() => {
    const measure = (): void => {
      // Within the frame, so that a letter is as large as it is asked to be.
      const width = (box.current?.clientWidth ?? 1000) - FRAME;
      // Out of sight, while its room is left: nothing is drawn anew.
      if (width <= 0) return;
      size.value = { width, height: width < 600 ? 384 : Math.min(560, Math.max(440, width * 0.34)) };
    };
    measure();
    const observer = new ResizeObserver(measure);
    if (box.current) observer.observe(box.current);
    return () => observer.disconnect();
  }, []);
  // As long as its paper is read, that of the paper before: the drawing waits.
  const before = useRef<Voice | null>(null);
  const voice = useComputed(() => {
    if (asked.value || !reading.value)
      before.current = asked.value && { ...speech.value, outing: asked.value.outing };
    return before.current;
  });
  const answered = told.value !== null;
  useEffect(() => {
    if (answered) void loadAtHand();
  }, [answered]);
  const words = useComputed(() => voice.value && stripWords(voice.value));
  // Counts and remedies, which follow, change nothing of the drawing: only a fault in finding them adds a finding.
  const drawnLast = useRef<Told | null>(null);
  const toDraw = useComputed(() => {
    const [now, last] = [told.value, drawnLast.current];
    const same =
      now?.asked.id === last?.asked.id && now?.answer.findings.length === last?.answer.findings.length;
    drawnLast.current = same ? last : now;
    return drawnLast.current;
  });
  // The line alone until it has its answer: never a new line under old limits. Where the line is the same, as after a turn
  // of the dial, the whole old drawing waits, dimmed: drawn bare for a moment it would cost as much again.
  const last = useRef<Drawn | null>(null);
  const drawn = useComputed((): Drawn | null => {
    const [now, v] = [toDraw.value, voice.value];
    const line = paper.value['line'];
    if (now)
      last.current = {
        line,
        model: stripModel(now.asked.outing, now.answer, { ...speech.value, outing: now.asked.outing }),
        waits: false,
      };
    else if (
      (busy.value || reading.value) &&
      last.current &&
      line !== undefined &&
      last.current.line === line
    )
      last.current = last.current.waits ? last.current : { ...last.current, waits: true };
    else last.current = v && { line, model: stripModel(v.outing, null, v), waits: true };
    return last.current;
  });
  const model = useComputed(() => drawn.value?.model ?? null);
  const frame = useComputed(() => ({
    ...size.value,
    ...view.value,
    textSize: size.value.width < 600 ? 12 : 14,
  }));
  const ground = useComputed(() =>
    model.value && words.value ? drawStrip(model.value, frame.value, words.value) : null,
  );
  const moment = useComputed(() => {
    if (!model.value || !words.value || !live.value || drawn.value?.waits) return null;
    const reach = reachNow.value;
    const at = { head: headNow.value, speed: speedNow.value };
    return { scene: drawMoment(model.value, frame.value, words.value, { ...at, ...reach }), ...at, reach };
  });
  const dragging = useSignal(false);
  const follow = (event: PointerEvent): void => {
    const rect = (event.currentTarget as Element).getBoundingClientRect();
    moveTo(chainageAt(frame.value, ((event.clientX - rect.left) / rect.width) * frame.value.width));
  };
  const keys = (event: KeyboardEvent): void => {
    const step = (event.shiftKey ? 10 : 1) * ((view.value.to - view.value.from) / 200);
    const moves: Record<string, () => void> = {
      ArrowRight: () => moveTo(headNow.value + step),
      ArrowLeft: () => moveTo(headNow.value - step),
      Home: () => moveTo(0),
      End: () => moveTo(length.value),
      '+': () => zoom(0.7),
      '-': () => zoom(1 / 0.7),
    };
    const move = moves[event.key];
    if (!move) return;
    event.preventDefault();
    move();
  };
  const keep = (as: 'svg' | 'png'): void => {
    const now = told.value;
    if (!ground.value || !moment.value || !now) return;
    const shown = { ...frame.value, ground: ground.value, over: moment.value.scene };
    void import('./save-strip.ts').then(({ saveStrip }) => saveStrip(as, shown, now));
  };
  const v = voice.value;
  if (!v)
    return (
      <section class="strip-box" ref={box} style={{ minHeight: `${size.value.height}px` }}>
        <p>{noWord()}</p>
      </section>
    );
  // Drawn a little after the word: until then there is nothing to save.
  const whole = told.value && ground.value && moment.value?.reach;
  const reach = moment.value?.reach;
  const readout =
    moment.value && reach
      ? `${chainage(v, moment.value.head)} at ${say(v, { si: moment.value.speed, kind: 'speed' })}: likely stop ${distance(v, reach.likely, 'up')}, cautious ${distance(v, reach.cautious, 'up')}${reach.gap === undefined ? '' : `, gap ${distance(v, reach.gap, 'up')}`}`
      : '';
  return (
    <section class="strip-box" ref={box}>
      <StripInks />
      <div
        class={drawn.value?.waits ? 'strip waits' : 'strip'}
        role="slider"
        tabIndex={0}
        aria-label="The train along the line: drag it, or use the arrow keys"
        aria-valuemin={0}
        aria-valuemax={Math.round(length.value)}
        aria-valuenow={Math.round(headNow.value)}
        aria-valuetext={readout}
        onKeyDown={keys}
        {...pressed(dragging, follow)}
      >
        {ground.value && <Drawing scene={ground.value} />}
        {moment.value && (
          <svg class="over" viewBox={`0 0 ${frame.value.width} ${frame.value.height}`} aria-hidden="true">
            <Drawing scene={moment.value.scene} />
          </svg>
        )}
      </div>
      {told.value && <RunBar />}
      <div class="strip-tools">
        <output aria-live="off">{readout}</output>
        <label class="speed">
          Speed
          <input
            type="range"
            min={0.5 * MPH}
            max={12 * MPH}
            step={0.25 * MPH}
            value={speedNow.value}
            aria-label="Speed of the train"
            aria-valuetext={say(v, { si: speedNow.value, kind: 'speed' })}
            onInput={(e) => {
              speed.value = Number(e.currentTarget.value);
            }}
          />
          {say(v, { si: speedNow.value, kind: 'speed' })}
        </label>
        <button type="button" onClick={() => zoom(0.6)}>
          Closer
        </button>
        <button type="button" onClick={() => zoom(1 / 0.6)}>
          Wider
        </button>
        <button
          type="button"
          onClick={() => {
            seen.value = null;
          }}
        >
          Whole line
        </button>
        <button type="button" disabled={!whole} onClick={() => keep('svg')}>
          Save drawing
        </button>
        <button type="button" disabled={!whole} onClick={() => keep('png')}>
          Save picture
        </button>
      </div>
    </section>
  );
}

/** The strip is there without it. */
const RunBar = later(async () => (await import('../../parts/run/run-bar.tsx')).RunBar);
