/** The train in the yard: one small drawing of each vehicle, to be carried, tapped or moved by keys. */
import { useComputed } from '@preact/signals';
import { Fragment } from 'preact';
import { useRef } from 'preact/hooks';
import { joined, moved, single } from '../../../desk/make-up.ts';
import type { LoadedVehicle } from '../../../engine/things/train/loaded.ts';
import { carSide, heightOf } from '../../../views/car-views.ts';
import { grab } from '../../parts/drag.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { paper } from '../../state/session.ts';
import { gap, type Lifted, leave, lifted, put, step, train } from './state.ts';

/** px per metre: never larger, and never so small that a thumb misses the shortest vehicle. */
const LARGEST = 64;
const THUMB = 46;

export function Yard() {
  const box = useRef<HTMLOListElement>(null);
  const width = useWidth(box, 900);
  const loaded = train.value;
  const scale = useComputed(() => {
    const vehicles = train.value?.vehicles ?? [];
    const length = vehicles.reduce((sum, v) => sum + v.vehicle.length, 0) || 1;
    const shortest = Math.min(...vehicles.map((v) => v.vehicle.length));
    // Room for the places to tap while a vehicle is taken up.
    const gaps = lifted.value ? (vehicles.length + 1) * 52 : 0;
    return Math.max(THUMB / shortest, Math.min(LARGEST, (width.value - 24 - gaps) / length));
  });
  if (!loaded) return null;
  const top = Math.max(...loaded.vehicles.map(heightOf));
  const hand = lifted.value;
  return (
    <section class="yard" aria-label="The train, front first">
      <p id="yard-help">
        Tap a vehicle for its figures, and to take it up: then tap where it goes. Or drag it to another place,
        or down and out to leave it behind.{' '}
        <span class="by-keys">Keys: arrows move it, Enter takes it up, Delete leaves it behind.</span>
      </p>
      <ol class="yard-train" ref={box} data-yard="train">
        {hand && <Gap at={0} hand={hand} />}
        {loaded.vehicles.map((v) => (
          <Fragment key={v.vehicle.id}>
            <li class={mark(v.index, loaded.vehicles.length)}>
              <VehicleButton loaded={v} scale={scale.value} top={top} count={loaded.vehicles.length} />
            </li>
            {hand && <Gap at={v.index + 1} hand={hand} />}
          </Fragment>
        ))}
      </ol>
      {hand && (
        <p class="row in-hand" role="status">
          <strong>{hand.label} is taken up.</strong>
          {hand.from === 'train' && <InHand index={hand.index} label={hand.label} />}
          <button
            type="button"
            onClick={() => {
              lifted.value = null;
            }}
          >
            Let it be
          </button>
        </p>
      )}
    </section>
  );
}

/** What can be done with the vehicle taken up, besides carrying it. */
function InHand({ index, label }: { readonly index: number; readonly label: string }) {
  const count = train.value?.vehicles.length ?? 0;
  const shift = (to: number): void => {
    step(moved(paper.value, index, to), `${label} stands at place ${to + 1} of ${count}.`);
    lifted.value = { from: 'train', index: to, label };
  };
  const another = (): void =>
    step(joined(paper.value, single(paper.value)[index].vehicle, index + 1), `Another like ${label}.`);
  const acts: readonly (readonly [string, string, boolean, () => void])[] = [
    ['Forward', `Move ${label} forward`, index > 0, () => shift(index - 1)],
    ['Back', `Move ${label} back`, index < count - 1, () => shift(index + 1)],
    ['Another like it', `Another like ${label}`, true, another],
    ['Leave behind', `Leave ${label} behind`, count > 1, () => leave(index, label)],
  ];
  return (
    <>
      {acts.map(([words, said, may, act]) => (
        <button key={words} type="button" aria-label={said} disabled={!may} onClick={act}>
          {words}
        </button>
      ))}
    </>
  );
}

/** Where a carried vehicle would stand: before this one, or behind the last. */
const mark = (index: number, count: number): string =>
  gap.value === index ? 'before' : gap.value === count && index === count - 1 ? 'behind' : '';

function Gap({ at, hand }: { readonly at: number; readonly hand: Lifted }) {
  return (
    <li class="gap">
      <button type="button" aria-label={`Put ${hand.label} at place ${at + 1}`} onClick={() => put(hand, at)}>
        ↓
      </button>
    </li>
  );
}

/** The gap nearest to a point, while it is about the train; null: away from it. */
function gapAt(x: number, y: number): number | null {
  const yard = document.querySelector('[data-yard]')?.getBoundingClientRect();
  if (!yard || y < yard.top - 40 || y > yard.bottom + 40) return null;
  const boxes = [...document.querySelectorAll('[data-vehicle]')].map((e) => e.getBoundingClientRect());
  const row = boxes.reduce(
    (best, b) => {
      const far = Math.abs((b.top + b.bottom) / 2 - y);
      return far < best.far ? { far, top: b.top } : best;
    },
    { far: Infinity, top: 0 },
  );
  let at = 0;
  boxes.forEach((b, i) => {
    if (b.top < row.top - 2 || (Math.abs(b.top - row.top) <= 2 && (b.left + b.right) / 2 < x)) at = i + 1;
  });
  return at;
}

/** A vehicle dragged: to the gap where it is let go; away from the train one of it is left behind. */
export function carryVehicle(event: PointerEvent, what: Lifted): void {
  grab(event, {
    label: what.label,
    over: (x, y) => {
      gap.value = gapAt(x, y);
    },
    drop: (x, y) => {
      const at = gapAt(x, y);
      if (at !== null) put(what, at);
      else if (what.from === 'train') leave(what.index, what.label);
    },
    done: () => {
      gap.value = null;
    },
  });
}

interface ButtonProps {
  readonly loaded: LoadedVehicle;
  readonly scale: number;
  readonly top: number;
  readonly count: number;
}

function VehicleButton({ loaded, scale, top, count }: ButtonProps) {
  const { vehicle, index } = loaded;
  const what: Lifted = { from: 'train', index, label: vehicle.name };
  const held = lifted.value?.from === 'train' && lifted.value.index === index;
  const shift = (to: number): void => {
    if (to < 0 || to >= count) return;
    step(moved(paper.value, index, to), `${vehicle.name} stands at place ${to + 1} of ${count}.`);
    // The button moved with its vehicle: keep the keyboard on it.
    setTimeout(() => document.getElementById(`yard-${vehicle.id}`)?.focus(), 60);
  };
  const keys = (e: KeyboardEvent): void => {
    const acts: Record<string, () => void> = {
      ArrowLeft: () => shift(index - 1),
      ArrowUp: () => shift(index - 1),
      ArrowRight: () => shift(index + 1),
      ArrowDown: () => shift(index + 1),
      Home: () => shift(0),
      End: () => shift(count - 1),
      Delete: () => leave(index, vehicle.name),
      Escape: () => {
        lifted.value = null;
      },
    };
    const act = acts[e.key];
    if (!act) return;
    e.preventDefault();
    act();
  };
  return (
    <button
      type="button"
      id={`yard-${vehicle.id}`}
      class="yard-vehicle drawn"
      data-vehicle={vehicle.id}
      aria-pressed={held}
      aria-label={`${vehicle.name}, place ${index + 1} of ${count}`}
      aria-describedby="yard-help"
      style={{ width: `${vehicle.length * scale}px` }}
      onKeyDown={keys}
      onClick={() => {
        lifted.value = held ? null : what;
      }}
      onPointerDown={(e) => carryVehicle(e, what)}
    >
      <Drawing scene={carSide(loaded, { scale, top })} />
      <span class="place" aria-hidden="true">
        {index + 1}
      </span>
    </button>
  );
}
