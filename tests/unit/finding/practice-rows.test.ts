/** What the trade asks stands in rows of data/, with its source on what is found by it: another row, another finding. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { type OutingContext, openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBrakes } from '../../../engine/questions/brakes/ask.ts';
import { askClearance } from '../../../engine/questions/clearance/ask.ts';
import { askCrests } from '../../../engine/questions/crests/ask.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { askHauling } from '../../../engine/questions/haul/ask.ts';
import { askHumps } from '../../../engine/questions/humps/ask.ts';
import { askPractice } from '../../../engine/questions/practice/ask.ts';
import { askWheels } from '../../../engine/questions/wheels/ask.ts';
import type { practiceKeys } from '../../../engine/things/assumed.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { beside, CAR, post } from '../../support/beside.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { crested, knuckle } from '../../support/crested.ts';
import { randomOuting } from '../../support/random-outings.ts';
import { altered, party, plain, rider } from '../../support/rules.ts';
import { wheeled } from '../../support/wheeled.ts';

type Key = (typeof practiceKeys)[number];

const SEAT = {
  id: '1',
  name: '1',
  at: 0.1,
  across: 0,
  height: 0.3,
  facing: 'forward',
  driver: false,
} as const;

const withRow = (outing: Outing, key: Key, value: number): Outing => ({
  ...outing,
  assumed: {
    ...outing.assumed,
    practice: { ...outing.assumed.practice, [key]: { value, source: 'another book' } },
  },
});

const air = (): Outing => ({ ...plain(2), train: brakedTrain('straight-air', 2) });
/** Of which the pull is known down to nothing. */
const pulledAtSpeed = (): Outing => {
  const outing = plain(1);
  const vehicles = outing.train.vehicles.map((v) => {
    if (v.traction?.kind !== 'drawbar') return v;
    const curve = [...v.traction.curve, { speed: 20, force: 0 }] as const;
    return { ...v, traction: { ...v.traction, curve } };
  });
  return { ...outing, train: { ...outing.train, vehicles } };
};
const leaky = (): Outing => {
  const outing = randomOuting(3, 4, 0.02);
  return { ...outing, train: brakedTrain('automatic-vacuum', 4, { leakRate: 20 }) };
};
const brakes = (context: OutingContext): readonly Finding[] => askBrakes(context).findings;
const haul = (context: OutingContext): readonly Finding[] => askHauling(context).findings;
const wheels = (context: OutingContext): readonly Finding[] => askWheels(context).findings;
const steep = (): Outing => {
  const outing = plain(2);
  const heights = [0, 100].map((at) => ({ at, height: 0.02 * at }));
  return { ...outing, line: { ...outing.line, heights }, train: { ...outing.train, chainsFastened: false } };
};
/** Ten of thirty millimetres hold, with somebody on springs that nobody measured. */
const fewHeld = (): Outing => {
  const level = [0, 90].map((at) => ({ at, height: 0 }));
  const shape = { length: 2, overhang: 0.4 };
  const outing = crested(level, [shape, shape], [knuckle(0.11), knuckle(0.13)]);
  return { ...altered(outing, 1, { seats: [SEAT] }), riders: [rider('1', '1')] };
};
/** A rigid group of three axles over a sharp hump. */
const humped = (): Outing => {
  const heights = [0, 40, 41, 42, 80].map((at) => ({ at, height: at < 41 ? 0.1 * at : 8.2 - 0.1 * at }));
  const shape = { length: 2, overhang: 0.4 };
  const group = { id: 'd', name: 'drivers', at: 1, axles: 3, wheelBase: 1, driven: true };
  return altered(crested(heights, [shape, shape]), 1, { groups: [group] });
};
const besidePost = (): Outing => beside({ structures: [post({ distance: CAR.width / 2 + 0.06 })] });
const aged = (age: number): Outing => plain(1, { riders: party(1, { age }) });
const uneven = (): Outing => {
  const outing = plain(1);
  const high = (v: Vehicle, height: number): Partial<Vehicle> => ({
    front: { ...v.front, type: 'knuckle', height },
    rear: { ...v.rear, type: 'knuckle', height },
  });
  const [a, b] = outing.train.vehicles;
  return altered(altered(outing, 0, high(a, 0.1)), 1, high(b, 0.112));
};
/** Two axles 2 m apart in 7 m of radius; of their wheels nothing but the gauge is measured. */
const longBase = (): Outing => {
  const bend = { from: 40, to: 60, startCurvature: 1 / 7, endCurvature: 1 / 7, gaugeWidening: 0 };
  const outing = wheeled({}, [], { curves: [bend] });
  const [v] = outing.train.vehicles;
  const axle = { ...v.groups[0], axles: 1, wheelBase: 0, driven: false };
  const { flange: _, ...bare } = v;
  const vehicles = [
    {
      ...bare,
      ratings: {},
      groups: [
        { ...axle, at: 0.3 },
        { ...axle, id: 'b', at: 2.3 },
      ],
    },
  ];
  return { ...outing, train: { ...outing.train, vehicles }, riders: [] };
};
const overrides = (context: OutingContext): readonly Finding[] =>
  askPractice(context).filter((f) => f.code === 'coupler-heights-differ' && f.facts.overrides);

describe.each<[Key, Finding['code'], () => Outing, (c: OutingContext) => readonly Finding[], number, number]>(
  [
    // Key, what is found by it, on what, asked how, a value that finds it, one that does not.
    ['fill-spread', 'brake-slow-to-fill', air, brakes, 0, 1e6],
    ['release', 'brake-slow-to-release', air, brakes, 0, 1e6],
    ['over-pressure', 'brake-stronger-than-stated', air, brakes, 0, 1e6],
    ['reservoir', 'reservoir-too-small', air, brakes, 1e6, 0],
    ['applications', 'few-applications', air, brakes, 1e6, 0],
    ['uneven', 'brake-ratio-uneven', leaky, brakes, 0, 1e6],
    ['slow-climb', 'slow-on-grade', pulledAtSpeed, haul, 30, 0],
    ['chains-from', 'no-chain-on-grade', steep, askPractice, 0.01, 0.03],
    ['half-knuckle', 'coupler-heights-differ', uneven, overrides, 0.05, 0.09],
    ['flange-thin', 'wheel-worn', () => wheeled(), wheels, 0.03, 0.02],
    ['tread-hollow', 'wheel-worn', () => wheeled({ hollow: 0.001 }), wheels, 0.005, 0.006],
    ['coupler-sink', 'coupler-sink-unknown', fewHeld, (c) => askCrests(c).findings, 0.3, 0.05],
    ['wheel-near', 'wheel-strikes-frog', () => wheeled(), wheels, 0.004, 0.002],
    ['wheel-runout', 'back-to-back-varies', () => wheeled(), wheels, 0.0001, 0.001],
    ['wheel-tread', 'wheel-drops-in', () => wheeled(), wheels, 0.1, 0.02],
    ['wheel-narrow', 'wheels-not-measured', () => wheeled({ width: undefined as never }), wheels, 0.01, 0.1],
    [
      'wheel-diameter',
      'wheel-diameters-differ',
      () => wheeled({ diameters: [0.11, 0.1105] }),
      wheels,
      0.001,
      0.01,
    ],
    ['clear-beside', 'little-room-beside', besidePost, (c) => askClearance(c).findings, 0.1, 0.02],
    ['clear-below', 'low-parts-not-measured', humped, (c) => askHumps(c).findings, 0.05, 0.9],
    [
      'flange-least',
      'wheel-lifts-on-hump',
      humped,
      (c) => askHumps(c).findings.filter((f) => f.severity === 'unknown'),
      0.01,
      0.9,
    ],
    ['flange-draft', 'wheels-aslant-bind', longBase, wheels, 0.01, 1],
    ['wheel-usual', 'wheels-aslant-bind', longBase, wheels, 2, 0.02],
    ['infant', 'infant-aboard', () => aged(3), askPractice, 4, 3],
    [
      'small',
      'child-alone',
      () => aged(8),
      (c) => askPractice(c).filter((f) => f.severity === 'forbids'),
      9,
      8,
    ],
    ['child', 'child-alone', () => aged(12), askPractice, 13, 12],
    [
      'adult',
      'child-alone',
      () => plain(1, { riders: [...party(1, { age: 6 }), party(2, { age: 19 })[1]] }),
      askPractice,
      20,
      19,
    ],
    ['light', 'child-alone', () => plain(1, { riders: party(1, { mass: exact(40) }) }), askPractice, 41, 39],
  ],
)('%s', (key, code, outing, ask, finds, not) => {
  const found = (value: number): boolean =>
    ask(openOuting(withRow(outing(), key, value))).some((f) => f.code === code);

  it('decides by its row', () => {
    expect(found(finds)).toBe(true);
    expect(found(not)).toBe(false);
  });
});

it('the source of the row stands on what is found by it', () => {
  for (const [key, value, outing, ask] of [
    ['applications', 1e6, air, brakes],
    ['chains-from', 0.01, steep, askPractice],
    ['slow-climb', 30, pulledAtSpeed, haul],
  ] as const)
    expect(
      ask(openOuting(withRow(outing(), key, value))).map((f) => f.source),
      key,
    ).toContain('another book');
});

it('a train is held so long as its row says', () => {
  const stand = (value: number): Finding[] =>
    brakes(openOuting(withRow(leaky(), 'stand', value))).filter((f) => f.code === 'leaks-off-before-time');
  expect(stand(1e6).map((f) => f.severity)).toEqual(['limits']);
  expect(stand(1).map((f) => f.severity)).toEqual(['notes']);
});
