/** Outings that make findings of wheels, standards and humps. */
import { exact } from '../../../engine/base/quantity.ts';
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { altered } from '../rules.ts';
import { wheeled } from '../wheeled.ts';
import type { Makers } from './index.ts';
import { overHump } from './shared.ts';

const sheet = (standards: HostRules['standards']): Outing => {
  const outing = wheeled();
  const bare = outing.train.vehicles.map(({ flange: _, ...v }): Vehicle => v);
  return {
    ...outing,
    host: { ...outing.host, ...(standards ? { standards } : {}) },
    train: { ...outing.train, vehicles: bare },
  };
};

/** A host that takes knuckles alone, and a first vehicle of another kind. */
const kinds = (type: string): Outing => {
  const outing = wheeled();
  return altered(
    { ...outing, host: { ...outing.host, couplerKinds: { value: ['knuckle'], source: 'sheet' } } },
    0,
    {
      front: { type },
      rear: { type },
    },
  );
};

export const wheels: Makers = {
  'wheel-worn': () => wheeled({ hollow: 0.003 }),
  'wheel-wears-out': () => ({
    ...wheeled({
      wear: [
        { day: 0, flangeThickness: (5 / 32) * 0.0254 },
        { day: 100, flangeThickness: 0.0035 },
      ],
      flangeThickness: exact(0.0035),
    }),
    day: 400,
  }),
  'part-strikes-track': () => overHump(undefined, { lowParts: [{ name: 'ash pan', at: 1.8, height: 0.02 }] }),
  'low-parts-not-measured': () => overHump(),
  'wheel-lifts-on-hump': () => {
    const group = { id: 'd', name: 'drivers', at: 1.8, axles: 3, wheelBase: 1, driven: true, travel: 0 };
    return overHump(undefined, { groups: [group] });
  },
  'standard-refused': () => sheet({ wheelWidth: { least: 0.1, source: 'sheet' } }),
  'standard-slow': () => sheet({ wheelWidth: { slowBelow: 0.1, slowSpeed: 1, source: 'sheet' } }),
  'coupler-kind-refused': () => kinds('hook'),
  'coupler-kind-unknown': () => kinds('coupler'),
  'standard-not-measured': () => sheet({ flangeAngle: { least: 1, source: 'sheet' } }),
  'wheel-strikes-frog': () => wheeled({ backToBack: [0.1755] }),
  'wheelset-binds-at-guard': () => wheeled({ backToBack: [0.173] }),
  'wheelset-binds-in-gauge': () => wheeled({ backToBack: [0.1773] }),
  'wheel-diameters-differ': () => wheeled({ diameters: [0.11, 0.112] }),
  'frame-binds-in-curve': () => {
    const outing = wheeled({}, [], {
      curves: [{ from: 40, to: 60, startCurvature: 1 / 12, endCurvature: 1 / 12, gaugeWidening: 0 }],
    });
    const [{ groups }] = outing.train.vehicles;
    return altered(outing, 0, {
      groups: [{ ...groups[0], axles: 3, wheelBase: 0.9, middlePlay: 0 }, ...groups.slice(1)],
      ratings: {},
    });
  },
  'wheels-aslant-bind': () => {
    const outing = wheeled({}, [], {
      curves: [{ from: 40, to: 60, startCurvature: 1 / 6, endCurvature: 1 / 6, gaugeWidening: 0 }],
    });
    const [{ groups }] = outing.train.vehicles;
    const truck = { ...groups[0], axles: 2, wheelBase: 1.8, wheelRadius: 0.055 };
    return altered(outing, 0, { groups: [truck, ...groups.slice(1)], flange: { angle: 1.3 }, ratings: {} });
  },
  'wheel-drops-in': () => wheeled({ width: 0.006 }),
  'flange-strikes-floor': () => wheeled({ flangeHeight: 0.008 }),
  'back-to-back-varies': () => wheeled({ backToBack: [0.1735, 0.1745] }),
  'flangeways-not-measured': () =>
    wheeled({}, [], { places: [{ id: 'p', name: 'Points', kind: 'switch', at: 20, stop: false }] }),
};
