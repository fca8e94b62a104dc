/** A plain outing for tests of rules that count: an engine, cars that are braked, nobody on them. All made up. */

import { exact } from '../../engine/base/quantity.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { HostRules, Outing, Rule } from '../../engine/outing/types.ts';
import type { Finding } from '../../engine/questions/finding.ts';
import { askHost } from '../../engine/questions/host/ask.ts';
import { askLoads } from '../../engine/questions/ratings/ask.ts';
import type { Rider } from '../../engine/things/train/types.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import { brakedTrain } from './braked-trains.ts';
import { randomOuting } from './random-outings.ts';

export const chained = { type: 'link', chain: { count: 1, slack: 0.02 } };

/** A rule of the host, with where it stands. */
export const rule = <T>(value: T): Rule<T> => ({ value, source: 'rule book, p. 3' });

export function plain(cars: number, changes: Partial<Outing> = {}): Outing {
  const train = brakedTrain('automatic-vacuum', cars);
  const base = randomOuting(1, 1);
  return {
    ...base,
    train: { ...train, vehicles: train.vehicles.map((v) => ({ ...v, front: chained, rear: chained })) },
    riders: [],
    line: {
      ...base.line,
      curves: [],
      heights: [
        { at: 0, height: 0 },
        { at: base.line.length, height: 0 },
      ],
    },
    direction: 'forward',
    wayBack: 'none',
    otherTrains: 'none',
    host: { name: 'made up' },
    ...changes,
  };
}

export const withHost = (cars: number, host: Partial<HostRules>, changes: Partial<Outing> = {}): Outing =>
  plain(cars, { ...changes, host: { name: 'made up', ...host } });

/** The same train with one of its vehicles otherwise. */
export function altered(outing: Outing, index: number, changes: Partial<Vehicle>): Outing {
  const vehicles = outing.train.vehicles.map((v, i) => (i === index ? { ...v, ...changes } : v));
  return { ...outing, train: { ...outing.train, vehicles } };
}

export const rider = (id: string, seat: string, more: Partial<Rider> = {}): Rider => ({
  id,
  name: `rider ${id}`,
  mass: exact(70),
  ageGroup: 'adult',
  vehicle: 'car1',
  seat,
  duty: 'rider',
  ...more,
});

/** So many riders on the first car. */
export const party = (n: number, more: Partial<Rider> = {}): Rider[] =>
  Array.from({ length: n }, (_, i) => rider(`${i + 1}`, `${i + 1}`, more));

export const hostSays = (outing: Outing): Finding[] => askHost(openOuting(outing));
export const ratingsSay = (outing: Outing): Finding[] => askLoads(openOuting(outing));
