/**
 * Which brakes are left on each half when a train parts and hose and cable tear.
 *
 * | kind | left |
 * |---|---|
 * | automatic air, automatic vacuum | comes on by itself on both halves, wherever it was charged |
 * | straight air, simple vacuum | lost on both halves |
 * | any of these whose pipe does not lead across the gap | answers the driver as before |
 * | electric | on the tail as wired; on the head it still answers |
 * | engine, hand | with the half that its driver or guard rides on |
 * | surge | on the head, if something ahead of it is braked; released on the tail by the stretch |
 *
 * A chain that holds leaves one train with what both halves have left; so does a hose that comes off by itself,
 * where surge brakes work on.
 *
 * Riders' brakes count for nothing: nobody may rely on a rider. Common practice, no source.
 */

import type { OutingContext } from '../../outing/open.ts';
import type { Outing } from '../../outing/types.ts';
import { type BrakedGroup, type GearAt, gearGroups } from '../../things/brake/force.ts';
import { isElectric, isPushed, isThrough } from '../../things/brake/kinds/index.ts';
import { whenSupplyIsLost } from '../../things/brake/reserve.ts';
import { type GearState, gearStates, pipeCrosses } from '../../things/brake/system.ts';
import { after, gearTimes } from '../../things/brake/times.ts';
import { driverPlaces, placesOf } from '../../things/train/crew.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';

export interface BrakesLeft {
  readonly groups: readonly BrakedGroup[];
  /** Gears that hold only as long as air or vacuum does not leak off. */
  readonly leaking: readonly GearAt[];
  /** Gears of which nobody has said what they do: counted as lost. */
  readonly unknown: readonly GearAt[];
  /** Gears that worked before and do not now. */
  readonly lost: readonly GearAt[];
}

export type Half = 'head' | 'tail';

/**
 * What becomes of a gear. `alone`: comes on at once by itself. `works`: its person must act, after the time to
 * react. `signalled`: another driver must, once the leading one has signalled. `none`: nobody relied on it.
 */
export type Left = 'alone' | 'works' | 'signalled' | 'lost' | 'unknown' | 'none';

/** Brakes of vehicles first … last of the parted train. */
export const brakesLeft = (context: OutingContext, first: number, last: number, half: Half): BrakesLeft =>
  brakesWhere(context, halfLeft(context, first, last, half));

/** Brakes of the whole train with the hose off behind a vehicle: its couplers shut, or parted and held by its chain. */
export function wholeLeft(context: OutingContext, gap: number, couplersShut: boolean): BrakesLeft {
  const last = context.loaded.vehicles.length - 1;
  const ahead = halfLeft(context, 0, gap, 'head');
  const behind = halfLeft(context, gap + 1, last, 'tail');
  const driven = driverRides(context, 0, last);
  return brakesWhere(context, (state) => {
    if (couplersShut && isPushed(state.gear.kind) && state.answers) return driven ? 'works' : 'lost';
    return state.vehicle <= gap ? ahead(state) : behind(state);
  });
}

/** The brakes of the train by what becomes of each. */
export function brakesWhere(context: OutingContext, left: (state: GearState) => Left): BrakesLeft {
  const { outing, loaded } = context;
  const verdicts = gearStates(outing).map((state) => ({ state, left: left(state) }));
  const pick = (which: Left): GearAt[] =>
    verdicts.flatMap(({ state, left }) =>
      left === which ? [{ vehicle: state.vehicle, gear: state.gear, alone: which === 'alone' }] : [],
    );
  const signalled = pick('signalled').map((at): GearAt => ({ ...at, signalled: true }));
  const works = [...pick('works'), ...signalled].map((at) => ({
    ...at,
    gear: withReaction(at.gear, outing),
  }));
  const alone = pick('alone');
  const { air } = context;
  const { groups, unknown } = gearGroups(
    loaded,
    [...works, ...alone],
    outing.assumed,
    air.pressure,
    air.seaLevel,
  );
  return {
    groups,
    leaking: [...works, ...alone].filter(({ gear }) => !gear.parking),
    unknown: [...pick('unknown'), ...unknown],
    lost: pick('lost'),
  };
}

/** Whether the driver rides on vehicles first … last. */
export const driverRides = ({ outing }: OutingContext, first: number, last: number): boolean =>
  driverPlaces(outing).some((i) => i >= first && i <= last);

/** Does a guard ride where this brake is? */
export const guardAt = ({ outing }: OutingContext, vehicle: number): boolean =>
  placesOf(outing, 'guard').includes(vehicle);

function halfLeft(
  context: OutingContext,
  first: number,
  last: number,
  half: Half,
): (state: GearState) => Left {
  const { train } = context.outing;
  const gap = half === 'head' ? last : first - 1;
  const driven = driverRides(context, first, last);
  return (state) => {
    const { vehicle, gear, answers, signalled, why } = state;
    if (vehicle < first || vehicle > last) return 'none';
    if (gear.workedBy === 'guard' && why === 'worked-by-another')
      return guardsBrake(gear, half, guardAt(context, vehicle));
    if (!answers) return 'none';
    // The leading driver rides on the head; on the tail nobody waits for a signal.
    const worked = !driven ? 'lost' : half === 'head' && signalled ? 'signalled' : 'works';
    if (isThrough(gear.kind) && !pipeCrosses(train, gap, gear.kind)) return worked;
    // On the head the cable is still the driver's; all else is as the hose or cable leaves it.
    if (isElectric(gear.kind)) return electricLeft(gear, half, worked);
    const { parted } = whenSupplyIsLost(gear);
    if (parted === 'applies') return 'alone';
    if (parted === 'lost') return 'lost';
    if (parted === 'released') return half === 'head' ? worked : 'lost';
    return worked;
  };
}

const wired = { applies: 'alone', lost: 'lost', unknown: 'unknown' } as const;

/** @param worked what becomes of it where the cable is whole */
function electricLeft(gear: BrakeGear, half: Half, worked: Left): Left {
  if (half === 'head') return worked;
  return wired[gear.onSupplyLoss ?? 'unknown'];
}

/** A brake that the guard works: by arm where the guard rides; through the train as hose and cable leave it. */
function guardsBrake(gear: BrakeGear, half: Half, there: boolean): Left {
  if (isElectric(gear.kind)) return electricLeft(gear, half, 'lost');
  const { parted } = whenSupplyIsLost(gear);
  if (parted === 'applies') return 'alone';
  if (parted === 'lost') return 'lost';
  return there && parted === 'as-set' ? 'works' : 'none';
}

/** The time that its person takes to act comes before the brake's own. */
const withReaction = (gear: BrakeGear, { train, conditions, assumed }: Outing): BrakeGear => ({
  ...gear,
  deadTime: after(conditions.reaction, gearTimes(gear, train.vehicles, assumed).deadTime),
});
