/** Outings that make findings of loads, balance and hauling. */
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { car } from '../balance.ts';
import { brakedTrain } from '../braked-trains.ts';
import { drawer } from '../random-outings.ts';
import { altered, party, plain } from '../rules.ts';
import type { Makers } from './index.ts';
import { car1, one, swapped } from './shared.ts';

const unmeasured = ({ centreHeight: _, ...vehicle }: Vehicle): Vehicle => vehicle;
const unpowered = ({ traction: _, ...vehicle }: Vehicle): Vehicle => vehicle;

export const loads: Makers = {
  'surge-pushed': () => {
    const train = brakedTrain('surge', 2);
    return plain(2, { train: { ...train, vehicles: [...train.vehicles].reverse() } });
  },
  'traction-unknown': () => swapped(0, unpowered),
  'car-overloaded': () => car1({ ratings: { load: 100 } }),
  'axle-overloaded': () => car1({ ratings: { axleLoad: 20 } }),
  'seat-overloaded': () => car1({ seats: car(drawer(3)).seats.map((s) => ({ ...s, most: 40 })) }),
  'centre-of-gravity-unknown': () => swapped(1, unmeasured),
  'truck-lifts': () => {
    const short = car(drawer(3), { id: 'car1', tare: 40, trucks: [0.9, 1.3] });
    return altered(plain(1, { riders: one }), 1, { ...short });
  },
  // Standing it bears a thousandth less than it may; the brake moves weight forward.
  'truck-overloaded': () => {
    const outing = plain(1, { riders: party(4), plannedSpeed: 2.5 });
    const still = (outing.train.vehicles[1].tare.value + 4 * 70) / 4;
    return altered(outing, 1, { ratings: { axleLoad: still * 1.001 } });
  },
};
