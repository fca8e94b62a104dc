/** The make-up of the train: order, cars more or fewer, and who sits where, in plan to scale. */
import { useSignal } from '@preact/signals';
import { openOuting } from '../../../engine/outing/context.ts';
import type { LoadedVehicle } from '../../../engine/train/loaded.ts';
import { say } from '../../../words/voice.ts';
import { Counts } from '../../parts/counts.tsx';
import { change, edited, type Json, outing, paper, voice } from '../../state/session.ts';

interface Member {
  readonly vehicle: Json;
  readonly id?: string;
  readonly name?: string;
  readonly count?: number;
}

interface RiderEntry {
  readonly name: string;
  readonly vehicle?: string;
  readonly seat?: string;
  readonly duty?: string;
}

const members = (): readonly Member[] => ((paper.value['train'] as Json)['vehicles'] as Member[]) ?? [];
const riders = (): readonly RiderEntry[] => (paper.value['riders'] as RiderEntry[] | undefined) ?? [];

/** The train and riders changed together, as one step. */
function put(vehicles: readonly Member[], people: readonly RiderEntry[] = riders()): void {
  const next = edited(paper.value, ['train', 'vehicles'], vehicles);
  change(edited(next, ['riders'], people) as Json);
}

/** Cars by count written out one by one, so that each can be moved. Their ids stay what they were. */
function single(): Member[] {
  return members().flatMap((m) => {
    const count = Number(m.count ?? 1);
    if (count <= 1) return [m];
    const { count: _count, ...rest } = m;
    return Array.from({ length: count }, (_, i) => ({
      ...rest,
      id: `${m.id}-${i + 1}`,
      name: `${m.name ?? m.vehicle['name']} ${i + 1}`,
    }));
  });
}

function move(index: number, by: number): void {
  const list = single();
  const [taken] = list.splice(index, 1);
  list.splice(index + by, 0, taken);
  put(list);
}

function leave(index: number): void {
  const list = single();
  const [gone] = list.splice(index, 1);
  put(
    list,
    riders().filter((r) => r.vehicle !== gone.id),
  );
}

function another(index: number): void {
  const list = single();
  const pattern = list[index];
  const ids = new Set(list.map((m) => m.id));
  let n = list.length;
  while (ids.has(`car-${n}`)) n++;
  list.splice(index + 1, 0, { ...pattern, id: `car-${n}`, name: `${pattern.vehicle['name']} ${n}` });
  put(list);
}

const people = ['adult', 'man', 'woman', 'youth', 'child'] as const;

export function Room() {
  const who = useSignal('adult');
  const weight = useSignal('');
  const v = voice.value;
  if (!outing.value || !v) return null;
  const { loaded } = openOuting(outing.value);
  const seatRider = (vehicle: string, seat: string): void => {
    const taken = riders().find((r) => r.vehicle === vehicle && r.seat === seat);
    if (taken)
      return put(
        members(),
        riders().filter((r) => r !== taken),
      );
    let n = riders().length;
    while (riders().some((r) => r.name === `Rider ${n}`)) n++;
    const mass = weight.value.trim() === '' ? { typical: who.value } : { weight: weight.value.trim() };
    put(members(), [...riders(), { name: `Rider ${n}`, ...mass, vehicle, seat }]);
  };
  return (
    <>
      <h1>Train and riders</h1>
      <p>
        Tap an empty seat to put a rider there, a taken one to let the rider off. Front of the train first.
      </p>
      <fieldset class="row">
        <legend>Next rider</legend>
        <label>
          typical{' '}
          <select
            value={who.value}
            onChange={(e) => {
              who.value = e.currentTarget.value;
            }}
          >
            {people.map((p) => (
              <option key={p}>{p}</option>
            ))}
          </select>
        </label>
        <label>
          or weighing{' '}
          <input
            value={weight.value}
            placeholder="180 lb"
            size={8}
            onInput={(e) => {
              weight.value = e.currentTarget.value;
            }}
          />
        </label>
      </fieldset>
      <Counts />
      <ol class="train">
        {loaded.vehicles.map((loadedVehicle, i) => (
          <li key={loadedVehicle.vehicle.id}>
            <h2>{loadedVehicle.vehicle.name}</h2>
            <p>
              {say(v, { si: loadedVehicle.mass, kind: 'mass' })} with {loadedVehicle.riders.length} aboard
            </p>
            <Plan loaded={loadedVehicle} onSeat={seatRider} />
            <p class="row">
              <button
                type="button"
                disabled={i === 0}
                onClick={() => move(i, -1)}
                aria-label={`Move ${loadedVehicle.vehicle.name} forward`}
              >
                Forward
              </button>
              <button
                type="button"
                disabled={i === loaded.vehicles.length - 1}
                onClick={() => move(i, 1)}
                aria-label={`Move ${loadedVehicle.vehicle.name} back`}
              >
                Back
              </button>
              <button
                type="button"
                onClick={() => another(i)}
                aria-label={`Another like ${loadedVehicle.vehicle.name}`}
              >
                Another like it
              </button>
              <button
                type="button"
                disabled={loaded.vehicles.length === 1}
                onClick={() => leave(i)}
                aria-label={`Leave ${loadedVehicle.vehicle.name} behind`}
              >
                Leave behind
              </button>
            </p>
          </li>
        ))}
      </ol>
    </>
  );
}

/** The vehicle from above, to scale, front to the left; seats are buttons. */
function Plan({
  loaded,
  onSeat,
}: {
  readonly loaded: LoadedVehicle;
  readonly onSeat: (vehicle: string, seat: string) => void;
}) {
  const { vehicle, riders: on } = loaded;
  const scale = 120;
  const [wide, deep] = [vehicle.length * scale, 70];
  return (
    <div class="plan" style={{ width: `${wide}px`, height: `${deep}px` }}>
      {vehicle.groups.map((g) => (
        <span key={g.id} class="truck" style={{ left: `${g.at * scale - 14}px` }} />
      ))}
      {vehicle.seats.map((seat) => {
        const rider = on.find((r) => r.seat.id === seat.id)?.rider;
        return (
          <button
            type="button"
            key={seat.id}
            class={rider ? 'seat taken' : 'seat'}
            style={{ left: `${seat.at * scale - 22}px`, top: `${deep / 2 - seat.across * scale - 22}px` }}
            onClick={() => onSeat(vehicle.id, seat.id)}
            aria-label={`Seat ${seat.name} of ${vehicle.name}: ${rider ? rider.name : 'empty'}`}
          >
            {rider
              ? rider.duty === 'driver'
                ? 'D'
                : rider.duty === 'guard'
                  ? 'G'
                  : rider.ageGroup === 'child'
                    ? 'c'
                    : '●'
              : ''}
          </button>
        );
      })}
    </div>
  );
}
