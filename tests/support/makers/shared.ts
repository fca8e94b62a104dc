/** What outings of more than one room are made of. */
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import type { BrakeKind } from '../../../engine/things/brake/kinds/index.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { brakedTrain } from '../braked-trains.ts';
import { crested } from '../crested.ts';
import { altered, party, plain, rider, withHost } from '../rules.ts';

/** A long engine and short cars over a hump of a tenth. */
export const overHump = (face?: number, changes: Partial<Vehicle> = {}): Outing => {
  const heights = [0, 40, 41, 42, 80].map((at) => ({ at, height: at < 41 ? 0.1 * at : 8.2 - 0.1 * at }));
  const on = { type: 'knuckle', height: 0.11, ...(face === undefined ? {} : { face }) };
  const shapes = [
    { length: 3.6, overhang: 0.9 },
    { length: 1.2, overhang: 0.2 },
  ];
  return altered(crested(heights, shapes, [on, on]), 0, changes);
};
export const car1 = (changes: Partial<Vehicle>): Outing =>
  altered(plain(2, { riders: party(3) }), 1, changes);
export const host = (rules: Partial<HostRules>): Outing => withHost(2, rules, { riders: party(3) });
export const braked = (kind: BrakeKind, cars: number, ...changes: [object?, object?]): Outing =>
  plain(cars, { train: brakedTrain(kind, cars, ...changes) });
export const swapped = (index: number, change: (v: Vehicle) => Vehicle): Outing => {
  const outing = plain(2);
  const vehicles = outing.train.vehicles.map((v, i) => (i === index ? change(v) : v));
  return { ...outing, train: { ...outing.train, vehicles } };
};
export const onLine = (changes: Partial<Outing['line']>): Outing => {
  const outing = plain(2);
  return { ...outing, line: { ...outing.line, ...changes } };
};
export const steep = [
  { at: 0, height: 0 },
  { at: 100, height: 16 },
  { at: 200, height: 16 },
];
export const tight = { from: 20, to: 30, startCurvature: 0.6, endCurvature: 0.6, gaugeWidening: 0 };
export const one = [rider('a', '1')];
