/** A made-up plane: an engine with a screw on both axles and two cars, one of them with a screw, of which all is known. */
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { BrakeGear } from '../../engine/things/vehicle/types.ts';
import { randomOuting } from './random-outings.ts';

export const G = 9.80665;
export const FALL = 0.03;

export interface OnFall {
  readonly screw?: Quantity;
  readonly adhesion?: Quantity;
  readonly rolling?: Quantity;
  readonly grade?: Quantity;
  readonly mass?: Quantity;
}

export function laid({
  screw = exact(150),
  adhesion = exact(0.2),
  rolling = exact(0.005),
  grade = exact(0),
  mass = exact(100),
}: OnFall): Outing {
  const base = randomOuting(5, 2);
  const gear = (id: string): BrakeGear => ({
    id,
    name: id,
    kind: 'mechanical',
    on: ['a', 'b'],
    workedBy: 'driver',
    parking: true,
    force: screw,
    hand: { leverRatio: 1, efficiency: exact(1), block: 'composition' },
  });
  const vehicles = base.train.vehicles.map((v, i) => ({
    ...v,
    tare: i === 0 ? exact(400) : mass,
    resistance: { rolling, perSpeed: exact(0), perSpeedSquared: 0 },
    brakes: i < 2 ? [gear(`screw ${i}`)] : [],
  }));
  const { gradeSpread, adhesion: rails } = base.assumed;
  return {
    ...base,
    assumed: {
      ...base.assumed,
      adhesion: { ...rails, dry: adhesion, wet: adhesion, greasy: adhesion },
      gradeSpread: { ...gradeSpread, [base.line.heightQuality]: grade },
    },
    line: {
      ...base.line,
      loop: false,
      length: 600,
      curves: [],
      heights: [
        { at: 0, height: 18 },
        { at: 600, height: 18 - 600 * FALL },
      ],
    },
    direction: 'forward',
    train: { ...base.train, vehicles },
    riders: [],
  };
}
