/** A track or a log of a phone, or the frames of a video, put into the form as a run, a stop, or times. */
import { useState } from 'preact/hooks';
import { timedBy, withLaps } from '../../../desk/measured/laps.ts';
import type { Felt } from '../../../desk/measured/level.ts';
import type { LogAbout } from '../../../desk/measured/log.ts';
import type { Kind } from '../../../engine/base/quantity.ts';
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Log as PhoneLog } from '../../../papers/import/log.ts';
import { tellProblem } from '../../../papers/index.ts';
import { parseQuantity } from '../../../units/index.ts';
import type { Voice } from '../../../words/voice.ts';
import type { Draft } from '../../parts/drafts.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import type { Json } from '../../state/session.ts';
import { Decelerometer } from './decelerometer.tsx';

interface Props {
  readonly kind: TestKind;
  /** As it stands: while a file is read somebody may write on. */
  readonly now: () => Draft;
  readonly outing: Outing;
  readonly voice: Voice;
  readonly set: (draft: Draft) => void;
}

const logged: ReadonlySet<TestKind> = new Set(['stop-test', 'coast-down', 'curve-resistance']);

export const FromLog = (props: Props) => (
  <>
    {logged.has(props.kind) && <Log {...props} />}
    {timedBy(props.kind) !== undefined && <Video {...props} />}
  </>
);

function Log({ kind, now, outing, voice, set }: Props) {
  const [from, setFrom] = useState('');
  const [way, setWay] = useState<'forward' | 'reverse'>('forward');
  const [begin, setBegin] = useState('');
  const [end, setEnd] = useState('');
  const [level, setLevel] = useState<Pick<LogAbout, 'level' | 'turned'>>({});
  const [said, say] = useState<readonly string[]>([]);
  const stop = kind === 'stop-test';
  /** @param own what of it the log itself says, as where the phone that recorded it was level */
  const use = async (log: PhoneLog, own: Partial<LogAbout>): Promise<void> => {
    const head = figure(from, 'length');
    if (head === undefined) return say(['Write first where the front stood, as 320 ft.']);
    const [{ coastFrom, gradeChange, stopFrom, withReading }, words] = await Promise.all([
      import('../../../desk/measured/log.ts'),
      import('../../../words/measured/logs.ts'),
    ]);
    const made = (stop ? stopFrom : coastFrom)(log, { from: head, way, ...own });
    if ('fault' in made) return say([words.logFault(made.fault)]);
    if (log.of === 'felt') {
      const restAt = Number.parseFloat(`${made.reading['restAt']}`);
      const change = gradeChange(outing, { way, from: head, restAt });
      if (change !== undefined) return say([words.gradeWords(change)]);
    }
    const draft = now();
    set({ ...draft, record: withReading(draft.record, made) as Json });
    say([words.readingWords(made.reading, voice), words.logErrors(log.of)]);
  };
  const take = async (file: File): Promise<void> => {
    const { importLog } = await import('../../../papers/import/log.ts');
    const read = importLog(new Uint8Array(await file.arrayBuffer()), file.name);
    if ('problems' in read) return say(read.problems.map(tellProblem));
    const [starts, ends] = [figure(begin, 'time'), figure(end, 'time')];
    return use(read.log, {
      ...level,
      ...(starts === undefined ? {} : { begin: starts }),
      ...(ends === undefined ? {} : { end: ends }),
    });
  };
  const still = async (key: 'level' | 'turned', file: File): Promise<void> => {
    const [{ importLog }, { stillOf }] = await Promise.all([
      import('../../../papers/import/log.ts'),
      import('../../../desk/measured/log.ts'),
    ]);
    const read = importLog(new Uint8Array(await file.arrayBuffer()), file.name);
    const felt: Felt | undefined = 'log' in read ? stillOf(read.log) : undefined;
    if (felt) setLevel({ ...level, [key]: felt });
    say([felt ? 'Level is set.' : 'That is no log of a phone that lay still, with x, y and z.']);
  };
  return (
    <details class="fold">
      <summary>From a track or a log of a phone</summary>
      <div class="inside from-log">
        <p>
          A GPX track, or a CSV of time with speed, with distance, or with x, y, z as the phone felt them;
          units in the headings.
        </p>
        <label>
          Where the front stood{' '}
          <input value={from} placeholder="320 ft" onInput={(e) => setFrom(e.currentTarget.value)} />
        </label>
        <label>
          Way{' '}
          <select value={way} onChange={(e) => setWay(e.currentTarget.value as typeof way)}>
            <option value="forward">forward</option>
            <option value="reverse">reverse</option>
          </select>
        </label>
        <label>
          {stop
            ? 'Second of the log: brake put on, or signal given'
            : 'Second of the log: let go (its fastest)'}{' '}
          <input inputMode="decimal" value={begin} onInput={(e) => setBegin(e.currentTarget.value)} />
        </label>
        <label>
          Second after which it does not count{' '}
          <input inputMode="decimal" value={end} onInput={(e) => setEnd(e.currentTarget.value)} />
        </label>
        <FilePick label="Take the log" accept=".gpx,.csv,text/csv" take={async ([file]) => take(file)} />
        {stop && (
          <p class="row">
            <span>Of what a phone felt, first its level, logged both ways round on the same spot:</span>
            <FilePick label="Level" accept=".csv" take={async ([file]) => still('level', file)} />
            <FilePick
              label="Level, turned round"
              accept=".csv"
              take={async ([file]) => still('turned', file)}
            />
          </p>
        )}
        {stop && <Decelerometer put={(log, about) => void use(log, about)} />}
        <div role="status">
          {said.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </div>
    </details>
  );
}

/** A bare figure is in seconds. */
function figure(text: string, kind: Kind): number | undefined {
  if (text.trim() === '') return undefined;
  const read = parseQuantity(kind === 'time' && /^[\d.]+$/.test(text.trim()) ? `${text} s` : text, kind);
  return read.ok ? read.si : undefined;
}

/** Frames as a player shows them, typed. */
function Video({ kind, now, set }: Props) {
  const [rate, setRate] = useState('30');
  const [frames, setFrames] = useState('');
  const numbers = frames.split(/[\s,;]+/).filter((n) => n !== '');
  const [first, ...rest] = numbers.map(Number);
  const rising = [first, ...rest].every((n, i, all) => Number.isInteger(n) && (i === 0 || n > all[i - 1]));
  const good = Number(rate) >= 1 && Number(rate) <= 1000 && rest.length > 0 && rising;
  const take = (): void => {
    const draft = now();
    const timed = withLaps(
      draft.record,
      rest.map((n) => (n - first) / Number(rate)),
    );
    const own = draft.record['instruments'] as Json | undefined;
    const stopwatch = `${(1 / Number(rate)).toFixed(4)} s`;
    set({ ...draft, record: { ...timed, instruments: { ...own, stopwatch } } as Json });
    setFrames('');
  };
  return (
    <details class="fold">
      <summary>From a video, by its frames</summary>
      <div class="inside from-log">
        <p>{timedBy(kind)}: here the number of the frame at each, in the same order.</p>
        <label>
          Frames in a second{' '}
          <input inputMode="decimal" value={rate} onInput={(e) => setRate(e.currentTarget.value)} />
        </label>
        <label>
          Numbers of the frames{' '}
          <input value={frames} placeholder="120 245 378" onInput={(e) => setFrames(e.currentTarget.value)} />
        </label>
        {numbers.length > 1 && !good && (
          <p role="status">Found {frames}; expected whole numbers, each greater than the one before.</p>
        )}
        <button type="button" disabled={!good} onClick={take}>
          Put these times into the form
        </button>
      </div>
    </details>
  );
}
