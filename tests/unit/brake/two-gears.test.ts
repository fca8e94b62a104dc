/** Two brakes that the driver works on the same wheels: one force measured, one from cylinder and block. */
import { describe, expect, it } from 'vitest';
import { between, exact } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { forceAtRest, groupForce } from '../../../engine/things/brake/force.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { plain } from '../../support/rules.ts';

const common = { kind: 'engine-only', on: ['a', 'b'], workedBy: 'driver', parking: false } as const;
/** 300 N by spring balance, and 1,000 N of blocks that rub with 0.3: as much at the rail. */
const gears = (measured: Partial<BrakeGear> = {}, blocks: Partial<BrakeGear> = {}): BrakeGear[] => [
  { ...common, id: 'hand', name: 'hand', force: exact(300), ...measured },
  {
    ...common,
    id: 'steam',
    name: 'steam',
    rigging: {
      cylinders: 1,
      bore: Math.sqrt(4 / Math.PI) / 100,
      leverRatio: 10,
      efficiency: exact(1),
      block: 'cast-iron',
      workingPressure: exact(1_000_000),
      blockFriction: exact(0.3),
    },
    ...blocks,
  },
];

const skid = { floor: 0.5, fallSpeed: 2 };

const with2 = (brakes: readonly BrakeGear[]) => {
  const outing = plain(1);
  const vehicles = outing.train.vehicles.map((v, i): Vehicle => ({ ...v, brakes: i === 0 ? brakes : [] }));
  return prepare(openOuting({ ...outing, train: { ...outing.train, vehicles } }));
};

describe('two brakes on the same wheels', () => {
  it('share their adhesion by what each does at the rail', () => {
    const { brakes } = with2(gears());
    expect(brakes.groups).toHaveLength(4);
    for (const g of brakes.groups) expect(forceAtRest(g)).toBeCloseTo(150, 6);
    const [a, , b] = brakes.groups;
    expect(a.load).toBeCloseTo(b.load, 6);
  });

  it('lock together or not at all, as one brake of both does', () => {
    const { brakes } = with2(gears());
    const [a, , b] = brakes.groups;
    const load = a.load + b.load;
    for (const adhesion of [0.9, 0.99, 1.01, 1.1].map((part) => (part * 300) / load)) {
      const both = groupForce(a, 0, adhesion, skid, 0) + groupForce(b, 0, adhesion, skid, 0);
      const one = groupForce({ ...a, block: exact(300), load }, 0, adhesion, skid, 0);
      expect(both / one).toBeCloseTo(1, 9);
    }
  });

  it('are early and late by what each does at the rail', () => {
    const quick = { deadTime: between(0.1, 0.1, 0.1, 'stated'), buildUp: exact(1) };
    const slow = { deadTime: between(0.5, 1, 2, 'stated'), buildUp: exact(2) };
    const { rampSpread } = with2(gears(quick, slow)).inputs('dry');
    // Middles: 0.1 + 1/2 and 1 + 2/2, at their bounds 0.5 + 1 and 2 + 1; of equal weight.
    expect(rampSpread.low).toBeCloseTo((0.6 + 1.5) / (0.6 + 2), 9);
    expect(rampSpread.high).toBeCloseTo((0.6 + 3) / (0.6 + 2), 9);
  });
});
