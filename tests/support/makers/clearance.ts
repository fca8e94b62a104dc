/** Outings that make findings of room beside and over the line, and other tracks. */
import type { Polygon } from '../../../engine/base/numerics/polygon.ts';
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import type { Line, Structure, Track } from '../../../engine/things/line/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { beside, CAR, post } from '../beside.ts';
import { rule } from '../rules.ts';
import { loopRoad, pointsOf, roadThatEnds, straight } from '../tracks.ts';
import type { Makers } from './index.ts';
import { car1 } from './shared.ts';

/** Half a box, from the middle below to the middle above. */
const box = (half: number, high: number): Polygon => [
  { x: 0, y: 0.02 },
  { x: half, y: 0.02 },
  { x: half, y: high },
  { x: 0, y: high },
];
const profiled = (changes: Partial<Vehicle>): Outing => {
  const outing = car1(changes);
  const { gauge } = outing.train.vehicles[0];
  const profiles = [{ gauge, points: box(0.25, 0.8), source: 'drawing 3' }];
  return { ...outing, host: { ...outing.host, profiles } };
};
/** Ridden, on a line with a track beside it. */
const railed = (track: (line: Line) => Track, changes: Partial<Line> = {}): Outing => {
  const line = straight(beside({}).line);
  return beside({ line: { ...line, ...changes, tracks: [track(line)] }, ridden: true });
};
/** What riders step on stands 0.2 m above the rail, as wide as the car. */
const atPlatform = (changes: Partial<Structure>, host: Partial<HostRules>): Outing => ({
  ...beside({
    structures: [post({ platform: true, distance: CAR.width / 2 + 0.03, top: 0.18, ...changes })],
    vehicle: { step: { height: 0.2, width: CAR.width } },
  }),
  host: { name: 'made up', ...host },
});
const stub = (radius?: number) => ({
  id: 'stub-1',
  name: 'Stub',
  side: 'left' as const,
  spacings: [
    { at: 30, spacing: 0 },
    { at: 32, spacing: 1 },
  ],
  ...(radius === undefined ? {} : { radius }),
});

export const clearance: Makers = {
  'outside-profile': () => profiled({ section: box(0.3, 0.9) }),
  'outline-not-measured': () => profiled({}),
  'no-profile-of-gauge': () => profiled({ gauge: 0.5 }),
  'strikes-structure': () => beside({ structures: [post({ distance: CAR.width / 2 - 0.01 })] }),
  'rider-strikes-structure': () =>
    beside({ structures: [post({ distance: CAR.width / 2 - 0.01, bottom: 1 })], ridden: true }),
  'little-room-beside': () => beside({ structures: [post({ distance: CAR.width / 2 + 0.03 })] }),
  'within-arms-reach': () => beside({ structures: [post({ distance: CAR.width / 2 + 0.3 })], ridden: true }),
  'platform-gap': () => atPlatform({ distance: CAR.width / 2 + 0.05 }, { platformGap: rule(0.04) }),
  'platform-step': () => atPlatform({ top: 0.05 }, { platformStep: rule(0.1) }),
  'platform-not-measured': () => beside({ structures: [post({ platform: true, top: 0.1 })] }),
  'frame-too-long-for-curve': () =>
    beside({
      structures: [post()],
      line: {
        curves: [{ from: 40, to: 90, startCurvature: 1 / 0.78, endCurvature: 1 / 0.78, gaugeWidening: 0 }],
      },
    }),
  'siding-too-short': () => beside({ line: { sidings: [stub(0.9)] } }),
  'siding-not-measured': () => beside({ line: { sidings: [stub()] } }),
  'track-not-told': () =>
    railed((line) => loopRoad(line, 1.2), {
      unstated: [{ from: 40, to: 100, track: 'Loop', lacks: 'sights' }],
    }),
  'structure-beside-track': () =>
    railed((line) => loopRoad(line, 1.2), {
      unstated: [{ from: 40, to: 100, track: 'Loop', lacks: 'structures', near: 'wall' }],
    }),
  'track-not-measured': () => {
    const { turnout: _, ...start } = pointsOf();
    return railed((line) => ({ ...roadThatEnds(line), start: { ...start, lacks: 'lead' } }));
  },
  'trains-do-not-pass': () =>
    railed((line) => loopRoad(line, 0.9), {
      curves: [
        { from: 60, to: 64, startCurvature: 1 / 40, endCurvature: 1 / 40, gaugeWidening: 0 },
        { from: 64, to: 72, startCurvature: -1 / 40, endCurvature: -1 / 40, gaugeWidening: 0 },
        { from: 72, to: 76, startCurvature: 1 / 40, endCurvature: 1 / 40, gaugeWidening: 0 },
      ],
    }),
  'reach-between-trains': () => railed((line) => loopRoad(line, 1.2)),
  'body-not-measured': () => {
    const outing = beside({ structures: [post()] });
    const vehicles = outing.train.vehicles.map(({ envelope: _, ...v }): Vehicle => v);
    return { ...outing, train: { ...outing.train, vehicles } };
  },
};
