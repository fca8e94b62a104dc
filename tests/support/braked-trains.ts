/** Braked trains whose parts are all known, for tests of how brakes fill. All made up. */
import { between, exact } from '../../engine/base/quantity.ts';
import type { BrakeKind } from '../../engine/things/brake/kinds/index.ts';
import { type LoadedTrain, loadTrain } from '../../engine/things/train/loaded.ts';
import type { Train } from '../../engine/things/train/types.ts';
import type { BrakeGear, BrakeRigging, BrakeSupply, Vehicle } from '../../engine/things/vehicle/types.ts';
import { drawer, randomVehicle } from './random-outings.ts';

export const isVacuumKind = (kind: BrakeKind): boolean => kind.endsWith('vacuum');

export function riggingFor(kind: BrakeKind, changes: Partial<BrakeRigging> = {}): BrakeRigging {
  const vacuum = isVacuumKind(kind);
  return {
    cylinders: 1,
    bore: vacuum ? 0.1 : 0.05,
    stroke: 0.04,
    leverRatio: 3,
    efficiency: between(0.7, 0.8, 0.9, 'assumed'),
    block: 'cast-iron',
    workingPressure: exact(vacuum ? 65_000 : kind === 'automatic-air' ? 340_000 : 300_000),
    springForce: vacuum ? 60 : 80,
    hoseDiameter: vacuum ? 0.012 : 0.006,
    chokeDiameter: vacuum ? 0.006 : 0.003,
    ...(kind === 'automatic-air' ? { reservoirVolume: 2e-4, feedDiameter: 0.001 } : {}),
    ...(kind === 'automatic-vacuum' ? { chamberVolume: 1.6e-3 } : {}),
    ...changes,
  };
}

export function supplyFor(kind: BrakeKind, changes: Partial<BrakeSupply> = {}): BrakeSupply {
  return isVacuumKind(kind)
    ? { rate: 0.004, greatestVacuum: 80_000, valveDiameter: 0.012, ...changes }
    : { reservoirVolume: 0.02, pressure: 500_000, valveDiameter: 0.006, ...changes };
}

const gearFor = (kind: BrakeKind, rigging: BrakeRigging): BrakeGear => ({
  id: 'brake',
  name: 'brake',
  kind,
  on: ['a', 'b'],
  rigging,
  workedBy: 'driver',
  parking: false,
});

/** An engine that supplies the kind and `cars` cars that have it. */
export function brakedTrain(
  kind: BrakeKind,
  cars: number,
  rigging: Partial<BrakeRigging> = {},
  supply: Partial<BrakeSupply> = {},
): Train {
  const draw = drawer(7);
  const engine: Vehicle = {
    ...randomVehicle(draw, 'engine', true),
    length: 2,
    brakes: [],
    supplies: [kind],
    brakeSupply: supplyFor(kind, supply),
  };
  const gear = gearFor(kind, riggingFor(kind, rigging));
  const coaches = Array.from(
    { length: cars },
    (_, i): Vehicle => ({
      ...randomVehicle(draw, `car${i + 1}`, false),
      length: 2.4,
      brakes: [gear],
    }),
  );
  return { name: kind, vehicles: [engine, ...coaches], pipeBrokenAfter: [], chainsFastened: true };
}

export const loadedTrain = (...args: Parameters<typeof brakedTrain>): LoadedTrain =>
  loadTrain(brakedTrain(...args), []);
