/** Three cars behind an engine, each with a brake of one kind, and what is left of them when something fails. All made up. */
import { exact } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { BrakesLeft } from '../../engine/questions/part/brakes-left.ts';
import type { BrakeKind } from '../../engine/things/brake/kinds/index.ts';
import type { BrakeGear } from '../../engine/things/vehicle/types.ts';
import { brakedTrain } from './braked-trains.ts';
import { plain, rider } from './rules.ts';

/** s, of the brake itself: where it takes longer a person acts before. */
const OWN = 0.5;

export const gearOf = (kind: BrakeKind, more: Partial<BrakeGear> = {}): BrakeGear => ({
  id: 'brake',
  name: 'brake',
  kind,
  on: ['a', 'b'],
  force: exact(200),
  deadTime: exact(OWN),
  buildUp: exact(1),
  workedBy: 'driver',
  parking: false,
  ...(kind === 'surge'
    ? { surge: { leverRatio: 2, efficiency: exact(0.8), springForce: 0, block: 'wood' as const } }
    : {}),
  ...more,
});

interface Braked {
  readonly kind: BrakeKind;
  readonly gear?: Partial<BrakeGear>;
  /** The engine's own brake. */
  readonly engine?: BrakeGear;
  readonly driverOn?: string;
  readonly guardOn?: string;
  readonly pipeBrokenAfter?: readonly number[];
}

/** @param braked nobody else rides; the driver on the engine where not said */
export function braked({
  kind,
  gear = {},
  engine,
  driverOn = 'engine',
  guardOn,
  pipeBrokenAfter = [],
}: Braked): Outing {
  const train = brakedTrain(kind, 3);
  const vehicles = train.vehicles.map((v, i) => ({
    ...v,
    brakes: i === 0 ? (engine ? [engine] : []) : [gearOf(kind, gear)],
  }));
  const riders = [
    rider('d', 'driver', { vehicle: driverOn, duty: 'driver' }),
    ...(guardOn === undefined ? [] : [rider('g', '4', { vehicle: guardOn, duty: 'guard' })]),
  ];
  return { ...plain(3, { train: { ...train, vehicles, pipeBrokenAfter } }), riders };
}

/** Of each vehicle: on by itself, worked by its person, lost, not known, or nobody's. */
export function leftBy({ groups, lost, unknown }: BrakesLeft, vehicles: readonly number[]): string {
  const said = vehicles.map((at) => {
    const mine = groups.filter((g) => g.vehicle === at);
    const words = [
      ...(mine.some((g) => g.deadTime.value === OWN) ? ['alone'] : []),
      ...(mine.some((g) => g.deadTime.value > OWN) ? ['works'] : []),
      ...(lost.some((g) => g.vehicle === at) ? ['lost'] : []),
      ...(unknown.some((g) => g.vehicle === at) ? ['unknown'] : []),
    ];
    return words.join('+') || 'none';
  });
  return said.join(' ');
}
