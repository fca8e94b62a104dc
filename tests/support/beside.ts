/** A measured train on a line where things stand beside the track. All made up. */
import { exact } from '../../engine/base/quantity.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { askClearance } from '../../engine/questions/clearance/ask.ts';
import type { Finding } from '../../engine/questions/finding.ts';
import type { Line, Structure } from '../../engine/things/line/types.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import { plain } from './rules.ts';

export const post = (changes: Partial<Structure> = {}): Structure => ({
  id: 'post-1',
  name: 'Lamp post',
  from: 60,
  to: 60,
  side: 'left',
  distance: 1,
  bottom: 0,
  ...changes,
});

/** 0.7 m wide, 0.6 m high; 1.6 m between trucks, 0.4 m beyond them; seats 0.3 m above the rail. */
export const CAR = { length: 2.4, width: 0.7, height: 0.6, guides: 1.6, overhang: 0.4, seat: 0.3 };

const body = (v: Vehicle, changes: Partial<Vehicle>): Vehicle => ({
  ...v,
  length: CAR.length,
  groups: v.groups.slice(0, 2).map((g, i) => ({ ...g, at: CAR.overhang + i * CAR.guides, driven: false })),
  envelope: { width: CAR.width, height: CAR.height },
  seats: [
    { id: 'seat', name: 'seat', at: 1.2, across: 0, height: CAR.seat, facing: 'forward', driver: false },
  ],
  ...changes,
});

interface Beside {
  readonly structures?: readonly Structure[];
  readonly line?: Partial<Line>;
  readonly vehicle?: Partial<Vehicle>;
  readonly ridden?: boolean;
}

/** One car alone; nobody measured its wheels. */
export function beside({ structures = [], line = {}, vehicle = {}, ridden = false }: Beside): Outing {
  const base = plain(1);
  const car = body(base.train.vehicles[1], vehicle);
  return {
    ...base,
    line: { ...base.line, loop: false, cants: [], places: [], structures, ...line },
    train: { ...base.train, vehicles: [car] },
    riders: ridden
      ? [
          {
            id: 'rider',
            name: 'rider',
            mass: exact(70),
            ageGroup: 'adult',
            vehicle: car.id,
            seat: 'seat',
            duty: 'rider',
          },
        ]
      : [],
  };
}

export const besideSays = (outing: Outing): readonly Finding[] => askClearance(openOuting(outing)).findings;
