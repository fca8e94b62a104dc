/** Play, pause and step through one parting; what happens, in words and as a table. */
import { useLayoutEffect } from 'preact/hooks';
import type { PartingGap, PartingPlay } from '../../../desk/parting.ts';
import { playTable, playWords } from '../../../views/tables/parting.ts';
import { say, type Voice } from '../../../words/voice.ts';
import { Table } from '../../parts/word-table.tsx';
import { now, pace, running, start, stop } from './clock.ts';

interface Props {
  readonly play: PartingPlay;
  readonly gap: PartingGap | undefined;
  readonly voice: Voice;
}

export function Player({ play, gap, voice }: Props) {
  useLayoutEffect(() => {
    stop();
    now.value = 0;
    return stop;
  }, [play]);
  const said = (t: number): string => say(voice, { si: t, kind: 'time' });
  const shown = Math.min(now.value, play.duration);
  return (
    <section class="player" aria-label="This parting in time">
      <div class="choices">
        <button type="button" onClick={() => (running.value ? stop() : start(play.duration))}>
          {running.value ? 'Pause' : 'Play'}
        </button>
        <label>
          Time {said(shown)} of {said(play.duration)}
          <input
            type="range"
            min={0}
            max={play.duration}
            step={0.1}
            value={shown}
            aria-valuetext={said(shown)}
            onInput={(e) => {
              stop();
              now.value = Number(e.currentTarget.value);
            }}
          />
        </label>
        <label>
          Pace
          <select
            value={pace.value}
            onChange={(e) => {
              pace.value = Number(e.currentTarget.value);
            }}
          >
            <option value={1}>as it happens</option>
            <option value={4}>4 times as fast</option>
            <option value={16}>16 times as fast</option>
          </select>
        </label>
      </div>
      <ul class="told">
        {playWords(play, gap, voice).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <Table table={playTable(play, voice)} />
    </section>
  );
}
