/** Two measurements in the workshop: the tilt test, and the block under one wheel. */
import { useState } from 'preact/hooks';
import { type BalanceView, blockTest, tiltTest } from '../../../desk/balance.ts';
import { blockWords } from '../../../desk/balance-tables.ts';
import { GRAVITY } from '../../../engine/constants.ts';
import type { Quantity } from '../../../engine/quantity.ts';
import { say, type Voice } from '../../../words/voice.ts';
import { change, paper, trial } from '../../state/session.ts';
import { type Json, single } from '../train/make-up.ts';
import { read, Written } from './written.tsx';

interface Props {
  readonly view: BalanceView;
  readonly voice: Voice;
}

/** An angle is read to half a degree either way. */
const HALF_DEGREE = Math.PI / 360;

function Which({
  view,
  value,
  onPick,
}: Pick<Props, 'view'> & { value: number; onPick: (i: number) => void }) {
  return (
    <label>
      vehicle
      <select value={value} onChange={(e) => onPick(Number(e.currentTarget.value))}>
        {view.context.loaded.vehicles.map(({ vehicle, index }) => (
          <option key={vehicle.id} value={index}>
            {vehicle.name}
          </option>
        ))}
      </select>
    </label>
  );
}

export function TiltForm({ view, voice }: Props) {
  const [picked, setIndex] = useState(view.context.loaded.vehicles.length - 1);
  const index = Math.min(picked, view.context.loaded.vehicles.length - 1);
  const [angle, setAngle] = useState('');
  const [base, setBase] = useState('');
  const [loaded, setLoaded] = useState(false);
  const [taken, setTaken] = useState(false);
  const at = angle === '' ? undefined : read(angle, 'angle');
  const wide = base === '' ? view.context.line.contactWidth : read(base, 'length');
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
    <section class="tilt-form">
      <h2>Tilt test</h2>
      <p>
        Tilt the vehicle sideways on its rails, caught by straps, until the first wheel lifts, and read the
        angle. Never with people on it: use sand bags.
      </p>
      <div class="fields">
        <Which
          view={view}
          value={index}
          onPick={(i) => {
            setIndex(i);
            setTaken(false);
          }}
        />
        <Written
          id="tilt-angle"
          label="the first wheel lifts at"
          kind="angle"
          value={angle}
          onInput={setAngle}
        />
        <Written
          id="tilt-base"
          label="between rail contacts; empty: the line's"
          kind="length"
          value={base}
          onInput={setBase}
        />
        <label class="tick">
          <input type="checkbox" checked={loaded} onChange={(e) => setLoaded(e.currentTarget.checked)} />
          loaded as its riders load it
        </label>
      </div>
      <div aria-live="polite">
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
      </div>
    </section>
  );
}

/** The empty vehicle's centre of gravity into its paper, as a measured figure with its bounds. */
function write(index: number, { value, low, high }: Quantity): void {
  trial.value = [];
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
  const [picked, setIndex] = useState(view.context.loaded.vehicles.length - 1);
  const index = Math.min(picked, view.context.loaded.vehicles.length - 1);
  const [block, setBlock] = useState('');
  const [lifts, setLifts] = useState(false);
  const [before, setBefore] = useState('');
  const [after, setAfter] = useState('');
  const height = block === '' ? undefined : read(block, 'length');
  const [from, to] = [before, after].map((text) => (text === '' ? undefined : read(text, 'mass')));
  const test =
    height === undefined || height <= 0
      ? undefined
      : {
          block: height,
          otherWheelLifted: lifts,
          ...(from === undefined || to === undefined ? {} : { before: from * GRAVITY, with: to * GRAVITY }),
        };
  const judged = test && blockTest(view, index, test);
  return (
    <section class="block-form">
      <h2>Block under one wheel</h2>
      <p>
        On level track lay a block of known height under one wheel, and try to turn the others by hand, or to
        pull paper from under them. With a scale, weigh the lightest other wheel before and with the block.
      </p>
      <div class="fields">
        <Which view={view} value={index} onPick={setIndex} />
        <Written
          id="block-height"
          label="height of the block"
          kind="length"
          value={block}
          onInput={setBlock}
        />
        <label class="tick">
          <input type="checkbox" checked={lifts} onChange={(e) => setLifts(e.currentTarget.checked)} />
          another wheel could be turned
        </label>
        <Written
          id="block-before"
          label="lightest other wheel before, if weighed"
          kind="mass"
          value={before}
          onInput={setBefore}
        />
        <Written
          id="block-with"
          label="the same with the block"
          kind="mass"
          value={after}
          onInput={setAfter}
        />
      </div>
      <div aria-live="polite">
        {height !== undefined && height <= 0 && <p role="alert">A height above 0 is expected.</p>}
        {(before === '') !== (after === '') && <p role="alert">Both weights are expected, or neither.</p>}
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
      </div>
    </section>
  );
}
