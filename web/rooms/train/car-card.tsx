/** One vehicle, from the side and from above at one scale; its seats are places to tap and to drop riders on. */
import { useRef } from 'preact/hooks';
import { boarded, letOff, platformed, seated } from '../../../desk/make-up.ts';
import type { LoadedVehicle } from '../../../engine/things/train/loaded.ts';
import type { Rider } from '../../../engine/things/train/types.ts';
import type { Seat, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { carPlan, carSide, heightOf, planSpot, widthOf } from '../../../views/car-views.ts';
import { say } from '../../../words/voice.ts';
import { grab, under } from '../../parts/drag.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { outing, paper, voice } from '../../state/session.ts';
import { nextRider } from './next-rider.tsx';
import { RiderPanel } from './rider-panel.tsx';
import { chosen, seatUnder, step, train } from './state.ts';

/** px: what a gloved thumb needs, and the largest scale worth having per metre. */
const THUMB = 44;
const LARGEST = 190;

/** Least distance between two seats, m. */
function pitch({ seats }: Vehicle): number {
  let least = Infinity;
  seats.forEach((a, i) => {
    for (const b of seats.slice(i + 1)) least = Math.min(least, Math.hypot(a.at - b.at, a.across - b.across));
  });
  return least;
}

/** All cars alike by the longest, larger only where seats would be too close for a thumb. */
function scaleOf(vehicle: Vehicle, width: number): number {
  const longest = Math.max(...(train.value?.vehicles ?? []).map((v) => v.vehicle.length), vehicle.length);
  return Math.max(Math.min(LARGEST, width / longest), (THUMB + 1) / pitch(vehicle));
}

export function CarCard({ loaded }: { readonly loaded: LoadedVehicle }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 330);
  const { vehicle, riders, index } = loaded;
  const v = voice.value;
  const scale = scaleOf(vehicle, width.value);
  const here = riders.find((r) => outing.value?.riders.indexOf(r.rider) === chosen.value);
  if (!v) return null;
  const weigh = (si: number): string => say(v, { si, kind: 'mass' });
  return (
    <li class="car">
      <h2>
        <span class="place">{index + 1}</span> {vehicle.name}
      </h2>
      <p>
        {weigh(loaded.mass)} with{' '}
        {riders.length === 1 ? 'one' : riders.length === 0 ? 'nobody' : riders.length} aboard
        {vehicle.ratings.load !== undefined && `, built for ${weigh(vehicle.ratings.load)} of load`}
      </p>
      <div class="views drawn" ref={box}>
        <Drawing scene={carSide(loaded, { scale, top: heightOf(loaded), weigh })} />
        <div class="car-plan">
          <Drawing scene={carPlan(loaded, scale)} />
          {vehicle.seats.map((seat) => (
            <SeatButton
              key={seat.id}
              vehicle={vehicle}
              seat={seat}
              scale={scale}
              rider={riderOn(loaded, seat)}
            />
          ))}
        </div>
      </div>
      {here && <RiderPanel key={here.rider.id} index={chosen.value ?? 0} />}
    </li>
  );
}

const riderOn = ({ riders }: LoadedVehicle, seat: Seat): Rider | undefined =>
  riders.find((r) => r.seat.id === seat.id)?.rider;

interface SeatProps {
  readonly vehicle: Vehicle;
  readonly seat: Seat;
  readonly scale: number;
  readonly rider: Rider | undefined;
}

/** D and G for driver and guard; else the first letters of the name and its last number. */
export function initials({ name, duty }: Pick<Rider, 'name' | 'duty'>): string {
  if (duty === 'driver') return 'D';
  if (duty === 'guard') return 'G';
  const number = /\d+$/.exec(name)?.[0];
  if (number) return `${name[0].toUpperCase()}${number}`;
  return name
    .split(/\s+/)
    .map((w) => w[0])
    .join('')
    .slice(0, 2)
    .toUpperCase();
}

function SeatButton({ vehicle, seat, scale, rider }: SeatProps) {
  const v = voice.value;
  const spot = planSpot(vehicle, seat, scale, widthOf(vehicle));
  const index = rider ? (outing.value?.riders.indexOf(rider) ?? -1) : -1;
  const key = `${vehicle.id}/${seat.id}`;
  const inHand = rider !== undefined && chosen.value === index;
  const tap = (): void => {
    const to = { vehicle: vehicle.id, seat: seat.id };
    if (inHand) chosen.value = null;
    else if (chosen.value !== null && !rider) {
      step(seated(paper.value, chosen.value, to), `Moved to seat ${seat.name} of ${vehicle.name}.`);
      chosen.value = null;
    } else if (rider) chosen.value = index;
    else step(boarded(paper.value, nextRider(), to), `A rider sits on seat ${seat.name} of ${vehicle.name}.`);
  };
  const said = rider ? `${rider.name}, ${v ? say(v, { si: rider.mass.value, kind: 'mass' }) : ''}` : 'empty';
  return (
    <button
      type="button"
      class={[
        'seat-spot',
        rider ? `taken ${rider.ageGroup}` : '',
        seatUnder.value === key ? 'under' : '',
      ].join(' ')}
      data-seat={key}
      aria-pressed={inHand}
      style={{ left: `${spot.x}px`, top: `${spot.y}px` }}
      aria-label={`Seat ${seat.name} of ${vehicle.name}: ${said}`}
      onClick={tap}
      onKeyDown={(e) => {
        if (e.key === 'Delete' && rider) {
          chosen.value = null;
          step(letOff(paper.value, index), `${rider.name} is let off.`);
        } else if (e.key === 'Escape') chosen.value = null;
      }}
      onPointerDown={(e) => rider && carryRider(e, index, rider.name)}
    >
      {rider ? initials(rider) : ''}
    </button>
  );
}

/** A rider dragged: to a seat, or anywhere else to the platform if let go over it. */
export function carryRider(event: PointerEvent, index: number, label: string): void {
  grab(event, {
    label,
    over: (x, y) => {
      seatUnder.value = under(x, y, 'seat') ?? under(x, y, 'platform') ?? null;
    },
    drop: (x, y) => {
      const to = under(x, y, 'seat');
      if (to) {
        const cut = to.indexOf('/');
        const place = { vehicle: to.slice(0, cut), seat: to.slice(cut + 1) };
        step(seated(paper.value, index, place), `${label} sits on seat ${place.seat}.`);
      } else if (under(x, y, 'platform'))
        step(platformed(paper.value, index), `${label} waits on the platform.`);
      chosen.value = null;
    },
    done: () => {
      seatUnder.value = null;
    },
  });
}
