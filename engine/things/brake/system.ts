/**
 * Which brakes answer the driver: the gear that the engine works, through a pipe or cable that reaches it.
 *
 * A train brake answers if some engine supplies its kind and every vehicle between carries that kind on.
 * Air and vacuum, straight and automatic, are different kinds: across a joint of two kinds there is no
 * continuous brake. A brake worked by arm, and one of the engine alone, answers only within the driver's reach.
 * A parking brake is wound on when the train stands: it is no part of a stop (common practice, no source).
 * Of several engines that supply a kind those count that a driver can work. What the leading driver cannot work, another
 * does, who must be signalled first.
 */
import { type Aboard, driverReach, leadingReach } from '../train/crew.ts';
import type { Train } from '../train/types.ts';
import type { BrakeGear, Vehicle } from '../vehicle/types.ts';
import { type BrakeKind, isByArm, isPushed, isThrough } from './kinds/index.ts';

/** A lever that stays where it is pulled stops a train too; a screw, or what nobody has said is a lever, does not. */
export const onlyParks = ({ kind, parking, stops, hand }: BrakeGear): boolean =>
  isByArm(kind) &&
  parking &&
  !stops &&
  (hand === undefined || hand.screwLead !== undefined || hand.wheelRadius !== undefined);

export type WhyNot =
  | 'only-parks'
  | 'out-of-reach'
  | 'worked-by-another'
  | 'no-supply'
  | 'pipe-broken'
  | 'kinds-differ'
  | 'nothing-to-push-it';

export interface GearState {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  /** The driver's own action sets it. */
  readonly answers: boolean;
  /** Only another driver's action sets it, whom the leading one signals. */
  readonly signalled: boolean;
  readonly why?: WhyNot;
}

const isEngine = (v: Vehicle): boolean => v.role === 'engine' || v.role === 'tender';

/** Kinds that a vehicle works for the whole train. */
export function suppliedKinds(vehicle: Vehicle): readonly BrakeKind[] {
  if (vehicle.supplies) return vehicle.supplies.filter(isThrough);
  if (vehicle.role !== 'engine') return [];
  return vehicle.brakes.map((b) => b.kind).filter(isThrough);
}

const carriesOn = (vehicle: Vehicle, kind: BrakeKind): boolean =>
  vehicle.brakes.some((b) => b.kind === kind) ||
  (vehicle.throughPipe?.includes(kind) ?? false) ||
  (vehicle.supplies?.includes(kind) ?? false);

/** Does a pipe or cable of the kind lead across the coupling behind a vehicle? */
export const pipeCrosses = ({ vehicles, pipeBrokenAfter }: Train, gap: number, kind: BrakeKind): boolean =>
  !pipeBrokenAfter.includes(gap) && carriesOn(vehicles[gap], kind) && carriesOn(vehicles[gap + 1], kind);

/** State of every brake gear of the train, vehicle by vehicle. */
export function gearStates(aboard: Aboard): GearState[] {
  const { train } = aboard;
  const hands: Hands = { all: driverReach(aboard), leading: leadingReach(aboard) };
  return train.vehicles.flatMap((vehicle, index) =>
    vehicle.brakes.map((gear): GearState => {
      const why = whyNot(train, hands, 'all', index, gear);
      const signalled = why === undefined && whyNot(train, hands, 'leading', index, gear) !== undefined;
      return {
        vehicle: index,
        gear,
        answers: why === undefined,
        signalled,
        ...(why === undefined ? {} : { why }),
      };
    }),
  );
}

/** Vehicles whose handles are within reach: of any driver, and of the leading one. */
interface Hands {
  readonly all: ReadonlySet<number>;
  readonly leading: ReadonlySet<number>;
}

function whyNot(
  train: Train,
  hands: Hands,
  whose: keyof Hands,
  index: number,
  gear: BrakeGear,
): WhyNot | undefined {
  if (gear.workedBy !== 'driver') return 'worked-by-another';
  if (onlyParks(gear)) return 'only-parks';
  if (isPushed(gear.kind)) return brakedAhead(train, index) ? undefined : 'nothing-to-push-it';
  if (!isThrough(gear.kind)) return hands[whose].has(index) ? undefined : 'out-of-reach';
  const suppliers = train.vehicles.flatMap((v, i) => (suppliedKinds(v).includes(gear.kind) ? [i] : []));
  if (suppliers.length === 0) {
    return train.vehicles.some((v) => suppliedKinds(v).length > 0) ? 'kinds-differ' : 'no-supply';
  }
  // A valve or controller may be wherever a driver rides; where some driver rides with a supply, a supply without one is nobody's.
  const manned = suppliers.some((i) => hands.all.has(i));
  const worked = manned ? suppliers.filter((i) => hands[whose].has(i)) : suppliers;
  if (worked.length === 0) return 'out-of-reach';
  const outcomes = worked.map((from) => reach(train, from, index, gear.kind));
  return outcomes.includes(undefined) ? undefined : outcomes[0];
}

function reach(train: Train, from: number, to: number, kind: BrakeKind): WhyNot | undefined {
  const [first, last] = from < to ? [from, to] : [to, from];
  for (let i = first; i < last; i++) {
    if (train.pipeBrokenAfter.includes(i)) return 'pipe-broken';
  }
  for (let i = first + 1; i < last; i++) {
    const between = train.vehicles[i];
    if (!carriesOn(between, kind)) {
      return between.brakes.some((b) => isThrough(b.kind)) ? 'kinds-differ' : 'pipe-broken';
    }
  }
  return undefined;
}

/** A surge brake works when something ahead of it brakes and is pushed. */
function brakedAhead(train: Train, index: number): boolean {
  return train.vehicles
    .slice(0, index)
    .some((v) => isEngine(v) && v.brakes.some((b) => b.workedBy === 'driver' && !onlyParks(b)));
}
