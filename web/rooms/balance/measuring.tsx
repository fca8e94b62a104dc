/** Two measurements in the workshop: the tilt test, and the block under one wheel. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type BalanceView, blockTest, tiltTest } from '../../../desk/balance.ts';
import { single } from '../../../desk/make-up.ts';
import { GRAVITY } from '../../../engine/base/constants.ts';
import type { Quantity } from '../../../engine/base/quantity.ts';
import { blockWords } from '../../../views/tables/balance.ts';
import { say, type Voice } from '../../../words/voice.ts';
import { Tick } from '../../parts/tick.tsx';
import { change, type Json, paper, trials } from '../../state/session.ts';
import { useWritten, Written } from './written.tsx';

interface Props {
  readonly view: BalanceView;
  readonly voice: Voice;
}

/** An angle is read to half a degree either way. */
const HALF_DEGREE = Math.PI / 360;

/** The vehicle that is measured: the last one, until another is picked. */
function usePicked(view: BalanceView) {
  const last = view.context.loaded.vehicles.length - 1;
  const [picked, pick] = useState(last);
  return [Math.min(picked, last), pick] as const;
}

interface MeasurementProps {
  readonly name: string;
  readonly title: string;
  readonly how: string;
  readonly view: BalanceView;
  readonly index: number;
  readonly onPick: (index: number) => void;
  readonly fields: ComponentChildren;
  /** What follows from what was measured. */
  readonly children: ComponentChildren;
}

function Measurement({ name, title, how, view, index, onPick, fields, children }: MeasurementProps) {
  return (
    <section class={name}>
      <h2>{title}</h2>
      <p>{how}</p>
      <div class="fields">
        <label>
          vehicle
          <select value={index} onChange={(e) => onPick(Number(e.currentTarget.value))}>
            {view.context.loaded.vehicles.map(({ vehicle, index: at }) => (
              <option key={vehicle.id} value={at}>
                {vehicle.name}
              </option>
            ))}
          </select>
        </label>
        {fields}
      </div>
      <div aria-live="polite">{children}</div>
    </section>
  );
}

export function TiltForm({ view, voice }: Props) {
  const [index, pick] = usePicked(view);
  const angle = useWritten('angle');
  const base = useWritten('length');
  const [loaded, setLoaded] = useState(false);
  const [taken, setTaken] = useState(false);
  const at = angle.si;
  const wide = base.text === '' ? view.context.line.contactWidth : base.si;
  const result =
    at === undefined || wide === undefined
      ? undefined
      : tiltTest(
          view,
          index,
          { value: at, low: at - HALF_DEGREE, high: at + HALF_DEGREE, how: 'measured' },
          wide,
          loaded,
        );
  const height = (q: Quantity): string => {
    const length = (si: number, toward: 'up' | 'down'): string => say(voice, { si, kind: 'length' }, toward);
    return `${length(q.value, 'up')} (${length(q.low, 'down')} to ${length(q.high, 'up')})`;
  };
  const good = result !== undefined && result.tareCentre.low > 0;
  return (
    <Measurement
      name="tilt-form"
      title="Tilt test"
      how="Tilt the vehicle sideways on its rails, caught by straps, until the first wheel lifts, and read the angle. Never with people on it: use sand bags."
      view={view}
      index={index}
      onPick={(i) => {
        pick(i);
        setTaken(false);
      }}
      fields={
        <>
          <Written id="tilt-angle" label="the first wheel lifts at" entry={angle} />
          <Written id="tilt-base" label="between rail contacts; empty: the line's" entry={base} />
          <Tick on={loaded} set={setLoaded}>
            loaded as its riders load it
          </Tick>
        </>
      }
    >
      {at !== undefined && !result && <p role="alert">An angle between 0 and 90° is expected.</p>}
      {result && (
        <p>
          Centre of gravity {height(result.centre)} above the rail; of the empty vehicle{' '}
          {height(result.tareCentre)}.
        </p>
      )}
      {result && !good && (
        <p role="alert">
          That is below the rail: check the angle, the base and the weights of who was aboard.
        </p>
      )}
      {good && (
        <button
          type="button"
          onClick={() => {
            write(index, result.tareCentre);
            setTaken(true);
          }}
        >
          Write it into the vehicle
        </button>
      )}
      {taken && <p>Written. Undo takes it out again.</p>}
    </Measurement>
  );
}

/** The empty vehicle's centre of gravity into its paper, as a measured figure with its bounds. */
function write(index: number, { value, low, high }: Quantity): void {
  trials.value = [];
  const metres = (si: number): string => `${si.toFixed(4)} m`;
  const centreHeight = {
    value: metres(value),
    low: metres(low),
    high: metres(high),
    how: 'measured',
    source: 'tilt test',
  };
  const vehicles = single(paper.value).map((member, i) =>
    i === index ? { ...member, vehicle: { ...member.vehicle, centreHeight } } : member,
  );
  change({ ...paper.value, train: { ...(paper.value['train'] as Json), vehicles } });
}

export function BlockForm({ view, voice }: Props) {
  const [index, pick] = usePicked(view);
  const block = useWritten('length');
  const [lifts, setLifts] = useState(false);
  const before = useWritten('mass');
  const after = useWritten('mass');
  const height = block.si;
  const test =
    height === undefined || height <= 0
      ? undefined
      : {
          block: height,
          otherWheelLifted: lifts,
          ...(before.si === undefined || after.si === undefined
            ? {}
            : { before: before.si * GRAVITY, with: after.si * GRAVITY }),
        };
  const judged = test && blockTest(view, index, test);
  return (
    <Measurement
      name="block-form"
      title="Block under one wheel"
      how="On level track lay a block of known height under one wheel, and try to turn the others by hand, or to pull paper from under them. With a scale, weigh the lightest other wheel before and with the block."
      view={view}
      index={index}
      onPick={pick}
      fields={
        <>
          <Written id="block-height" label="height of the block" entry={block} />
          <Tick on={lifts} set={setLifts}>
            another wheel could be turned
          </Tick>
          <Written id="block-before" label="lightest other wheel before, if weighed" entry={before} />
          <Written id="block-with" label="the same with the block" entry={after} />
        </>
      }
    >
      {height !== undefined && height <= 0 && <p role="alert">A height above 0 is expected.</p>}
      {(before.text === '') !== (after.text === '') && (
        <p role="alert">Both weights are expected, or neither.</p>
      )}
      {judged && (
        <>
          <p class={judged.accepted ? 'accepted' : 'rejected'}>
            <strong>{judged.accepted ? 'Accept' : 'Do not accept'}</strong>
          </p>
          <ul>
            {blockWords(judged, test, voice).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </Measurement>
  );
}
