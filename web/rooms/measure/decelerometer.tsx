/** The phone as a decelerometer: set level both ways round, fixed in a car, and left to feel a stop. */
import { useRef, useState } from 'preact/hooks';
import type { Felt } from '../../../desk/measured/level.ts';
import type { LogAbout } from '../../../desk/measured/log.ts';
import type { Log, LogRow } from '../../../papers/import/log.ts';
import { type Feeling, useFelt } from './use-felt.ts';

interface Props {
  /** What it felt, and when the brake was put on. */
  readonly put: (log: Log, about: Pick<LogAbout, 'begin' | 'level' | 'turned'>) => void;
}

const words: Readonly<Record<Feeling, string>> = {
  off: '',
  asked: 'Looking for what the phone feels …',
  on: '',
  none: 'This device feels no pull: measure speed and place instead.',
  refused: 'The browser was not allowed to feel the pull: allow it in its settings.',
};

/** A minute of a stop at the most, at a hundred looks in a second. */
const MOST = 12_000;

export function Decelerometer({ put }: Props) {
  const rows = useRef<LogRow[]>([]);
  const first = useRef<number | undefined>(undefined);
  const [runs, run] = useState(false);
  const [began, begin] = useState<number>();
  const [once, setOnce] = useState<Felt>();
  const [turned, setTurned] = useState<Felt>();
  const { state, listening, start, now } = useFelt((felt, at) => {
    if (!runs || rows.current.length >= MOST) return;
    first.current ??= at;
    const time = (at - first.current) / 1000;
    const last = rows.current[rows.current.length - 1];
    if (!last || time > last.time) rows.current.push({ time, felt });
  });
  const record = (): void => {
    rows.current = [];
    first.current = undefined;
    begin(undefined);
    run(true);
  };
  const ended = (): void => {
    run(false);
    put(
      { of: 'felt', rows: rows.current },
      {
        ...(began === undefined || first.current === undefined
          ? {}
          : { begin: (began - first.current) / 1000 }),
        ...(once ? { level: once } : {}),
        ...(turned ? { turned } : {}),
      },
    );
  };
  return (
    <section class="stopwatch level" aria-label="This phone as a decelerometer">
      <h3>This phone as a decelerometer</h3>
      {!listening && (
        <button type="button" onClick={() => void start()}>
          Let this phone feel the stop
        </button>
      )}
      <p role="status">{words[state]}</p>
      {state === 'on' && (
        <>
          <p>
            On level track set level, turn it half round on the same spot and set level again. Then fix it so
            that it cannot slide, record, press as the brake is put on, and end only when the train has stood
            for two seconds. By somebody who does not drive.
          </p>
          <div class="presses level-presses">
            <button type="button" disabled={!now || runs} onClick={() => setOnce(now)}>
              Set level
            </button>
            <button type="button" disabled={!now || !once || runs} onClick={() => setTurned(now)}>
              {turned ? 'Turned round: set' : 'Set level, turned round'}
            </button>
            {!runs && (
              <button type="button" disabled={!once || !turned} onClick={record}>
                Record
              </button>
            )}
            {runs && (
              <>
                <button
                  type="button"
                  disabled={began !== undefined}
                  onPointerDown={(e) => begin(e.timeStamp)}
                  onClick={(e) => {
                    if (e.detail === 0) begin(e.timeStamp);
                  }}
                >
                  {began === undefined ? 'Brake now' : 'Braking …'}
                </button>
                <button type="button" disabled={began === undefined} onClick={ended}>
                  It stands: end
                </button>
              </>
            )}
          </div>
        </>
      )}
    </section>
  );
}
