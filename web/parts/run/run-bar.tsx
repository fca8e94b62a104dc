/** Plays the run along the strip: clock, speed, "brake now"; to be stopped, wound on and back at any place. */
import '../../look/run.css';
import { drivenSpeed } from '../../../desk/driven.ts';
import { speech, told } from '../../state/session.ts';
import { clock, frame, next, pace, play, playing, run, seek } from './run-state.ts';

const minutes = (s: number): string => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`;

export function RunBar() {
  const now = run.value;
  if (!now || !told.value) return null;
  const at = frame.value;
  return (
    <section class="run" aria-label="The run">
      <button type="button" class="main" onClick={play} aria-pressed={playing.value}>
        {playing.value ? 'Pause' : 'Play the run'}
      </button>
      <button type="button" onClick={next}>
        Next thing to do
      </button>
      <label>
        Pace{' '}
        <select
          value={pace.value}
          onChange={(e) => {
            pace.value = Number(e.currentTarget.value);
          }}
        >
          <option value={1}>as it is</option>
          <option value={4}>× 4</option>
          <option value={12}>× 12</option>
        </select>
      </label>
      <input
        type="range"
        min={0}
        max={Math.ceil(now.lasts)}
        step={1}
        value={clock.value ?? 0}
        aria-label="Clock of the run"
        aria-valuetext={minutes(clock.value ?? 0)}
        onInput={(e) => {
          playing.value = false;
          seek(Number(e.currentTarget.value));
        }}
      />
      <p class="run-now">
        <span class="clock">
          {minutes(clock.value ?? 0)} of {minutes(now.lasts)}
        </span>
        {at && <strong>{drivenSpeed(speech.value, at.speed)}</strong>}
        {at?.act && <BrakeNow />}
      </p>
    </section>
  );
}

function BrakeNow() {
  const act = frame.value?.act;
  if (!act) return null;
  return (
    <strong class="brake-now" role="status">
      ▼ Brake now:{' '}
      {act.kind === 'stop'
        ? `stop, ${act.what}`
        : `down to ${drivenSpeed(speech.value, act.toSpeed)}, ${act.what}`}
    </strong>
  );
}
