/**
 * Which brakes are left on each half when a train parts and hose and cable tear.
 *
 * | kind | left |
 * |---|---|
 * | automatic air, automatic vacuum | comes on by itself on both halves, wherever it was charged |
 * | straight air, simple vacuum | lost on both halves |
 * | electric | on the tail as wired; on the head it still answers |
 * | engine, hand | with the half that its driver or guard rides on |
 * | surge | on the head, if something ahead of it is braked; released on the tail by the stretch |
 *
 * Riders' brakes count for nothing: nobody may rely on a rider. Common practice, no source.
 */

import type { OutingContext } from '../../outing/open.ts';
import type { Outing } from '../../outing/types.ts';
import { type BrakedGroup, type GearAt, gearGroups } from '../../things/brake/force.ts';
import { whenSupplyIsLost } from '../../things/brake/reserve.ts';
import { type GearState, gearStates } from '../../things/brake/system.ts';
import type { Rider } from '../../things/train/types.ts';
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

/** Brakes of vehicles first … last of the parted train. */
export function brakesLeft(context: OutingContext, first: number, last: number, half: Half): BrakesLeft {
  const { outing, loaded } = context;
  const states = gearStates(outing.train).filter((s) => s.vehicle >= first && s.vehicle <= last);
  const manned = mannedBy(context, first, last);
  const verdicts = states.map((state) => ({ state, left: isLeft(state, half, manned) }));
  const pick = (which: Left): GearAt[] =>
    verdicts.flatMap(({ state, left }) =>
      left === which ? [{ vehicle: state.vehicle, gear: state.gear, alone: which === 'alone' }] : [],
    );
  const works = verdicts.flatMap(({ state: { vehicle, gear }, left }) =>
    left === 'works' ? [{ vehicle, gear: withReaction(gear, outing) }] : [],
  );
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

/** Who rides on this half. Without a driver named among the riders the driver is taken to be on the engine. */
function mannedBy(
  { outing }: OutingContext,
  first: number,
  last: number,
): Record<'driver' | 'guard', boolean> {
  const { vehicles } = outing.train;
  const placeOf = ({ vehicle }: Rider): number => vehicles.findIndex((v) => v.id === vehicle);
  const on = (duty: Rider['duty']): boolean =>
    outing.riders.some((r) => {
      const i = r.duty === duty ? placeOf(r) : -1;
      return i >= first && i <= last;
    });
  const named = outing.riders.some((r) => r.duty === 'driver' && placeOf(r) >= 0);
  const engine = Math.max(
    0,
    vehicles.findIndex((v) => v.role === 'engine'),
  );
  return { driver: named ? on('driver') : engine >= first && engine <= last, guard: on('guard') };
}

/** Whether the driver rides on vehicles first … last. */
export const driverRides = (context: OutingContext, first: number, last: number): boolean =>
  mannedBy(context, first, last).driver;

/** `alone`: comes on at once by itself. `works`: its person must act. */
type Left = 'alone' | 'works' | 'lost' | 'unknown' | 'none';

function isLeft(
  { gear, answers, why }: GearState,
  half: Half,
  manned: Record<'driver' | 'guard', boolean>,
): Left {
  if (!answers && why !== 'worked-by-another') return 'none';
  // On the head the cable is still the driver's; all else is as the hose or cable leaves it.
  if (gear.kind === 'electric')
    return gear.workedBy === 'rider' ? 'none' : electricLeft(gear, half, manned.driver);
  const { parted } = whenSupplyIsLost(gear);
  if (parted === 'applies') return 'alone';
  if (parted === 'lost') return 'lost';
  if (gear.workedBy === 'rider') return 'none';
  if (parted === 'released') return half === 'head' && manned.driver ? 'works' : 'lost';
  if (manned[gear.workedBy]) return 'works';
  return gear.workedBy === 'driver' ? 'lost' : 'none';
}

const wired = { applies: 'alone', lost: 'lost', unknown: 'unknown' } as const;

function electricLeft(gear: BrakeGear, half: Half, driver: boolean): Left {
  if (half === 'head') return driver ? 'works' : 'lost';
  return wired[gear.onSupplyLoss ?? 'unknown'];
}

/** The time that its person takes to act comes before the brake's own. */
function withReaction(gear: BrakeGear, { conditions, assumed }: Outing): BrakeGear {
  const { reaction } = conditions;
  const dead = gear.deadTime ?? assumed.deadTime[gear.kind];
  return {
    ...gear,
    deadTime: {
      ...dead,
      value: dead.value + reaction.value,
      low: dead.low + reaction.low,
      high: dead.high + reaction.high,
    },
  };
}
