/** Outings that make findings of brakes. */
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { brakedTrain } from '../braked-trains.ts';
import { altered, plain, rule } from '../rules.ts';
import type { Makers } from './index.ts';
import { braked, host, swapped } from './shared.ts';

const geared = (outing: Outing, change: Partial<BrakeGear>): Outing => ({
  ...outing,
  train: {
    ...outing.train,
    vehicles: outing.train.vehicles.map((v) => ({
      ...v,
      brakes: v.brakes.map((gear) => ({ ...gear, ...change })),
    })),
  },
});
const unrigged = ({ rigging: _, ...gear }: BrakeGear): BrakeGear => gear;

export const brakes: Makers = {
  'no-brake-answers': () => {
    const outing = plain(2);
    return {
      ...outing,
      train: { ...outing.train, vehicles: outing.train.vehicles.map((v) => ({ ...v, brakes: [] })) },
    };
  },
  'brake-force-unknown': () => swapped(1, (v) => ({ ...v, brakes: v.brakes.map(unrigged) })),
  'brake-kinds-do-not-work-together': () => {
    const outing = braked('automatic-vacuum', 2);
    return altered(outing, 2, { brakes: brakedTrain('straight-air', 1).vehicles[1].brakes });
  },
  'brake-pipe-broken': () => {
    const outing = braked('automatic-vacuum', 2);
    return { ...outing, train: { ...outing.train, pipeBrokenAfter: [0] } };
  },
  'brake-not-worked-by-driver': () => geared(braked('mechanical', 2), { workedBy: 'guard' }),
  'brake-slow-to-fill': () => braked('straight-air', 10, { hoseDiameter: 0.003, chokeDiameter: 0.003 }),
  'brake-slow-to-release': () => braked('straight-air', 10, { hoseDiameter: 0.001, chokeDiameter: 0.001 }),
  'brake-slower-than-stated': () =>
    geared(braked('straight-air', 6), { deadTime: exact(0.1), buildUp: exact(0.1) }),
  'brake-lost-with-hose': () => braked('straight-air', 2),
  'supply-loss-unknown': () => geared(braked('electric', 2), { force: exact(200) }),
  'too-few-cars-braked': () => altered(host({ brakedShare: rule(1) }), 2, { brakes: [] }),
  'brake-not-tried': () => plain(2),
};
