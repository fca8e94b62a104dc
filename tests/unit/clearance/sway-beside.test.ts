/** Sway on measured springs of what stands in a siding or at a platform, and of what passes it. All made up; figures by hand. */
import { expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { lookAtPlatforms } from '../../../engine/questions/clearance/platforms.ts';
import { lookAtSidings } from '../../../engine/questions/clearance/sidings.ts';
import { lookAtTracks } from '../../../engine/questions/clearance/tracks.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { beside, CAR, post } from '../../support/beside.ts';
import { roadThatEnds, straight } from '../../support/tracks.ts';

const G = 9.80665;
/** 100 kg at 0.25 m; on it 70 kg a hand's breadth off the middle, on springs of 2,000 N·m to the radian. */
const [Z, K] = [25, 2000];
const body = (springs: boolean, across: number, changes: Partial<Vehicle> = {}): Partial<Vehicle> => ({
  tare: exact(100),
  centreHeight: exact(0.25),
  loads: [],
  suspension: { equalised: true, ...(springs ? { rollStiffness: exact(K) } : {}) },
  seats: beside({}).train.vehicles[0].seats.map((s) => ({ ...s, across, height: 0.1 })),
  ...changes,
});
const centre = 0.1 + beside({}).assumed.riderCentre.value;
const roll = (across: number, lean = 0): number =>
  (G * ((Z + 70 * centre) * lean + 70 * across)) / (K - G * (Z + 70 * centre));
const ridden = (line: Partial<Line>, springs: boolean, across = 0.1): Outing => {
  const outing = beside({ line, vehicle: body(springs, across), ridden: true });
  // Riders' heights at their likely, so that the sum by hand is one figure.
  const { riderCentre } = outing.assumed;
  return { ...outing, assumed: { ...outing.assumed, riderCentre: exact(riderCentre.value) } };
};
const base = straight(beside({}).line);

it('what stands on a track of its own, and what passes, each sway toward the other', () => {
  const line = { ...base, tracks: [roadThatEnds(base)] };
  const mark = (springs: boolean, passing: boolean): number =>
    lookAtTracks(openOuting(ridden(line, springs)), openOuting(ridden(line, passing))).roads[0].marks[0]
      .apart;
  const none = mark(false, false);
  // Either way round counts: people off the middle are on that side one of both ways. Both lie all but square there.
  const by = CAR.height * roll(0.1);
  expect(by).toBeGreaterThan(0.02);
  for (const [stands, passes, times] of [
    [true, false, 1],
    [false, true, 1],
    [true, true, 2],
  ] as const) {
    expect(mark(stands, passes) - none).toBeGreaterThan(0.95 * times * by);
    expect(mark(stands, passes) - none).toBeLessThan(1.05 * times * by);
  }
});

it('what passes sways outward as it runs, what stands does not', () => {
  const k = 1 / 20;
  const curves = [{ from: 0, to: 200, startCurvature: -k, endCurvature: -k, gaugeWidening: 0 }];
  const line = { ...base, curves, tracks: [roadThatEnds(base)] };
  const mark = (speed: number): number =>
    lookAtTracks(openOuting({ ...ridden(line, true, 0), plannedSpeed: speed })).roads[0].marks[0].apart;
  // The track leaves to the left, which is outside of this curve.
  expect(mark(4) - mark(0.5)).toBeGreaterThan(0.01);
});

it('in a siding taped across, and where the line beside it is canted toward it', () => {
  const siding = {
    id: 'loop-1',
    name: 'Passing loop',
    side: 'left' as const,
    radius: 15,
    spacings: [30, 40, 60, 70].map((at, i) => ({ at, spacing: i % 3 === 0 ? 0 : 1 })),
  };
  const from = (springs: boolean, line: Partial<Line> = {}, across = 0.1): number =>
    lookAtSidings(openOuting(ridden({ sidings: [siding], ...line }, springs, across)))[0].clear?.from ??
    Number.NaN;
  // One metre of spacing in ten: both sway by as much.
  const top = (outing: Outing): number => {
    const { shoulder } = outing.assumed.person;
    return Math.max(CAR.height, 0.1 + shoulder.high);
  };
  const high = top(ridden({}, true));
  expect(from(true) - from(false)).toBeCloseTo(10 * high * 2 * roll(0.1), 2);
  const cants = [0, 200].map((at) => ({ at, cant: 0.02 }));
  const lean = 0.02 / base.contactWidth;
  expect(from(false, { cants }) - from(false)).toBeCloseTo(10 * high * lean, 2);
  expect(from(true, { cants }, 0) - from(true, {}, 0)).toBeCloseTo(10 * high * (lean + roll(0, lean)), 2);
});

it('at a platform it stands away by its roll, and steps higher or lower', () => {
  const across = (springs: boolean, seat: number) => {
    const step = { height: 0.2, width: CAR.width };
    const outing = ridden({ curves: [] }, springs, seat);
    const vehicles = outing.train.vehicles.map((v) => ({ ...v, step }));
    const structures = [post({ platform: true, from: 60, to: 70, distance: 0.4, top: 0.15 })];
    return lookAtPlatforms(
      openOuting({ ...outing, line: { ...outing.line, structures }, train: { ...outing.train, vehicles } }),
    ).across[0];
  };
  // The platform lies to the left; people to the right of the middle roll it away.
  expect(across(true, -0.1).gap.value - across(false, -0.1).gap.value).toBeCloseTo(0.2 * roll(0.1), 9);
  expect(across(true, 0.1).gap.value).toBeCloseTo(across(false, 0.1).gap.value, 9);
  expect(across(true, -0.1).step - across(false, -0.1).step).toBeCloseTo((CAR.width / 2) * roll(0.1), 9);
});
