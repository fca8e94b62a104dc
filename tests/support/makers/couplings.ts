/** Outings that make findings of couplings, chains and what parts. */
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { crested, knuckle } from '../crested.ts';
import { altered, party, plain, rule } from '../rules.ts';
import type { Makers } from './index.ts';
import { braked, host, onLine, overHump, steep, swapped, tight } from './shared.ts';

const strong = { type: 'link', chain: { count: 2, size: 0.00635, slack: 0.01, weakestPart: exact(9000) } };
/** Couplers of one make round a curve of 10 m. */
const bent = (coupling: Vehicle['front']): Outing => {
  const curve = { ...tight, to: 60, startCurvature: 0.1, endCurvature: 0.1 };
  const outing = onLine({ curves: [curve] });
  const vehicles = outing.train.vehicles.map((v) => ({ ...v, front: coupling, rear: coupling }));
  return { ...outing, train: { ...outing.train, vehicles } };
};
/** A bar between the second and third vehicle. */
const barred = (rear: Vehicle['rear'], front: Vehicle['front']): Outing =>
  altered(
    swapped(1, (v) => ({ ...v, rear })),
    2,
    { front },
  );
const coupled = (front: number, rear?: number): Outing =>
  altered(
    swapped(1, (v) => ({ ...v, rear: { ...strong, height: front } })),
    2,
    {
      front: { ...strong, ...(rear === undefined ? {} : { height: rear }) },
    },
  );
/** A train braked through a hose alone, on chains that hold anything, with its rear or its head on a bank. */
const chained = (heights: Outing['line']['heights'], cars = 3): Outing => {
  const outing = braked('straight-air', cars);
  const vehicles = outing.train.vehicles.map((v) => ({ ...v, front: strong, rear: strong }));
  const end = heights[heights.length - 1].at;
  return {
    ...outing,
    plannedSpeed: 2,
    train: { ...outing.train, vehicles },
    line: { ...outing.line, loop: false, length: end, heights: [...heights] },
  };
};

export const couplings: Makers = {
  'held-train-runs-away': () =>
    chained([
      { at: 0, height: 12 },
      { at: 400, height: 0 },
    ]),
  'held-train-rolls-back': () =>
    chained([
      { at: 0, height: 3 },
      { at: 150, height: 0 },
      { at: 300, height: 3 },
    ]),
  'chains-missing': () => {
    const outing = host({ chainsRequired: rule(true) });
    return { ...outing, train: { ...outing.train, chainsFastened: false } };
  },
  'coupler-heights-differ': () => coupled(0.11, 0.12),
  'coupler-kinds-differ': () => {
    const outing = plain(1);
    const [engine, car] = outing.train.vehicles;
    const vehicles = [
      { ...engine, rear: { ...engine.rear, type: 'knuckle' } },
      { ...car, front: { ...car.front, type: 'link and pin' } },
    ];
    return { ...outing, train: { ...outing.train, vehicles } };
  },
  'coupler-height-unknown': () => coupled(0.11),
  'no-chain-on-grade': () => {
    const outing = onLine({ loop: false, length: 200, heights: steep });
    return { ...outing, train: { ...outing.train, chainsFastened: false } };
  },
  'parting-held-by-chains': () => {
    const outing = plain(2);
    const vehicles = outing.train.vehicles.map((v) => ({ ...v, front: strong, rear: strong }));
    return { ...outing, train: { ...outing.train, vehicles } };
  },
  'couplers-slip-by': () => overHump(0.03),
  'coupler-face-unknown': () => overHump(),
  'coupler-sink-unknown': () => {
    const level = [0, 90].map((at) => ({ at, height: 0 }));
    const shape = { length: 2, overhang: 0.4 };
    const outing = crested(level, [shape, shape], [knuckle(0.11), knuckle(0.135)]);
    return { ...outing, riders: party(1).map((r) => ({ ...r, vehicle: outing.train.vehicles[1].id })) };
  },
  'coupler-swing-short': () => bent({ type: 'knuckle', shank: 0.12, swing: exact(0.05) }),
  'coupler-swing-unknown': () => bent({ type: 'knuckle', shank: 0.12 }),
  'coupler-pitch-short': () =>
    barred(
      { type: 'bar', height: 0.15, shank: 0.15, pitch: exact(0.05) },
      { type: 'bar', height: 0.18, shank: 0.15, pitch: exact(0.05) },
    ),
  'coupler-pitch-unknown': () =>
    barred({ type: 'bar', height: 0.15, shank: 0.15 }, { type: 'bar', height: 0.18, shank: 0.15 }),
  'coupler-overloaded': () => swapped(1, (v) => ({ ...v, front: { type: 'link', strength: exact(20) } })),
};
