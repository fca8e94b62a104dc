/** Who rides: masses, ages, seats, and who holds whom, as an outing's file has them. */
import { assumed } from '../../data/index.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Rider, Train } from '../../engine/things/train/types.ts';
import { show } from '../problem.ts';
import type { OutingFile } from '../schema/index.ts';
import { slug } from './line.ts';
import { type Notes, note, trouble } from './notes.ts';

export function ridersOf(file: OutingFile, train: Train, notes: Notes): Rider[] {
  const taken = new Map<string, RiderEntry>();
  const ids = new Set<string>();
  const party = asFirstSpelled();
  checkHolders(file, notes);
  return (file.riders ?? []).map((rider, i): Rider => {
    let id = slug(rider.name);
    for (let n = 2; ids.has(id); n++) id = `${slug(rider.name)}-${n}`;
    ids.add(id);
    checkSeat(rider, i, train, taken, notes);
    const { weight, typical, vehicle, seat, group, heldBy, age, duty, name } = rider;
    const mass = weight ?? typicalMass(typical, name, i, notes);
    return {
      id,
      name,
      mass,
      ageGroup: typical === 'child' || typical === 'youth' ? typical : byAge(age),
      duty: duty ?? 'rider',
      ...(age === undefined ? {} : { age }),
      ...(vehicle === undefined ? {} : { vehicle }),
      ...(seat === undefined ? {} : { seat }),
      ...(group === undefined ? {} : { group: party(group) }),
      ...(heldBy === undefined ? {} : { heldBy: slug(heldBy) }),
    };
  });
}

/** A party is the same however it is cased and spaced. */
function asFirstSpelled(): (name: string) => string {
  const known = new Map<string, string>();
  return (name) => {
    const key = slug(name);
    known.set(key, known.get(key) ?? name);
    return known.get(key) ?? name;
  };
}

/** Held by somebody who is not there is held by nobody. */
function checkHolders({ riders = [] }: OutingFile, notes: Notes): void {
  const there = new Set(riders.map(({ name }) => slug(name)));
  for (const [i, { heldBy }] of riders.entries())
    if (heldBy !== undefined && !there.has(slug(heldBy)))
      trouble(
        notes,
        ['riders', i, 'heldBy'],
        show(heldBy),
        `a rider by name: ${riders
          .filter((_, k) => k !== i)
          .map(({ name }) => show(name))
          .slice(0, MOST_NAMED)
          .join(', ')}${riders.length > MOST_NAMED + 1 ? ', …' : ''}`,
      );
}

/** In one sentence. */
const MOST_NAMED = 20;

const byAge = (age: number | undefined): Rider['ageGroup'] =>
  age === undefined || age >= 18 ? 'adult' : age >= 12 ? 'youth' : 'child';

function typicalMass(typical: RiderEntry['typical'], name: string, i: number, notes: Notes): Quantity {
  if (!typical) {
    trouble(
      notes,
      ['riders', i, 'weight'],
      'neither weight nor typical',
      '"weight": "180 lb", or "typical": man, woman, adult, heavy, youth or child',
    );
    return assumed('mass/adult');
  }
  note(
    notes,
    `mass/${typical}`,
    `weight of a typical ${typical === 'heavy' ? 'heavy adult' : typical}`,
    name,
  );
  return assumed(`mass/${typical}`);
}

const onLap = ({ heldBy }: RiderEntry, { name }: RiderEntry): boolean =>
  heldBy !== undefined && slug(heldBy) === slug(name);

type RiderEntry = NonNullable<OutingFile['riders']>[number];

function checkSeat(
  rider: RiderEntry,
  i: number,
  train: Train,
  taken: Map<string, RiderEntry>,
  notes: Notes,
): void {
  if (rider.vehicle === undefined) {
    if (rider.seat !== undefined)
      trouble(notes, ['riders', i, 'vehicle'], 'a seat without a vehicle', '"vehicle" beside "seat"');
    return;
  }
  const vehicle = train.vehicles.find((v) => v.id === rider.vehicle);
  if (!vehicle) {
    return trouble(
      notes,
      ['riders', i, 'vehicle'],
      `"${rider.vehicle}"`,
      `a vehicle of the train: ${train.vehicles.map((v) => v.id).join(', ')}`,
    );
  }
  if (rider.seat === undefined) return;
  if (!vehicle.seats.some((s) => s.id === rider.seat)) {
    return trouble(
      notes,
      ['riders', i, 'seat'],
      `"${rider.seat}"`,
      `a seat of ${vehicle.id}: ${vehicle.seats.map((s) => s.id).join(', ') || 'it has none'}`,
    );
  }
  const key = `${vehicle.id}/${rider.seat}`;
  const other = taken.get(key);
  if (other && !onLap(rider, other) && !onLap(other, rider))
    trouble(
      notes,
      ['riders', i, 'seat'],
      `seat ${rider.seat} of ${vehicle.id}, taken already`,
      'one rider on each seat, or "heldBy" for a child on a lap',
    );
  taken.set(key, rider);
}
