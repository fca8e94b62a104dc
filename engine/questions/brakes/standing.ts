/**
 * How long a standing train is held: brakes leak off until their hold falls below the pull of the grade, and
 * on which grade the parking brake alone is enough.
 */

import { GRAVITY } from '../../base/constants.ts';
import type { SumRef } from '../../base/sum.ts';
import { potentialOf } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { leakedGear } from '../../things/brake/reserve.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { resistanceTerms } from '../../things/train/resistance.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';
import { crewGears, gradeSum, type Puts, parkedHold, type Stand, standsOn } from '../hold/hold.ts';

/** Times are looked for up to a day. */
const LONGEST = 86_400;

export interface Standing {
  /** Greatest pull on the standing train, N, with its head there, m. */
  readonly pull: number;
  readonly at: number;
  readonly sum: SumRef;
  /** Hold of what driver and guard can put on: of the brakes that do not leak, and of all while tight, N. */
  readonly parking: number;
  readonly tight: number;
  /** s until the hold falls below the pull; Infinity: held by what does not leak, or over a day; 0: never held. */
  readonly time: number;
  /** Gears that hold now but whose leak was not measured: they count as holding nothing. */
  readonly unmeasured: readonly { readonly vehicle: number; readonly gear: BrakeGear }[];
  /** Steepest grade on which the parking brakes alone hold this train, rise over run. */
  readonly parkingGrade: number;
}

/** On the rail of the line on which it is held the shortest. */
export function standing(context: OutingContext): Standing {
  const { outing, line, loaded } = context;
  return standsOn(context, potentialOf(line, loaded, 0, 0.5, 0), outing.conditions.railState)
    .map((stand) => standingOn(context, stand))
    .reduce((a, b) => (b.time < a.time || (b.time === a.time && spare(b) < spare(a)) ? b : a));
}

const spare = ({ parking, pull }: Standing): number => parking - pull;

function standingOn({ loaded }: OutingContext, stand: Stand): Standing {
  const { pull, at } = stand;
  const held = crewGears(loaded);
  const after = (time: number): number => stand.hold(() => true, leakedTrain(loaded, held, time));
  const parking = parkedHold(loaded, stand.hold).crew;
  const least = parkedHold(loaded, stand.leastHold).crew;
  const weight = loaded.mass * GRAVITY;
  const free = resistanceTerms(loaded.vehicles, -1).a;
  return {
    pull,
    at,
    sum: gradeSum(loaded, stand),
    parking,
    tight: stand.hold(held),
    time: pull <= parking ? Infinity : lastTime(after, pull),
    unmeasured: loaded.vehicles.flatMap(({ vehicle, index }) =>
      vehicle.brakes.flatMap((gear) =>
        held(gear, index) && leakedGear(gear, 0) === undefined ? [{ vehicle: index, gear }] : [],
      ),
    ),
    parkingGrade: Math.tan(Math.asin(Math.min(1, (least + free) / weight))),
  };
}

/** The train with only what holds, each leaked down. */
function leakedTrain(loaded: LoadedTrain, held: Puts, time: number): LoadedTrain {
  return {
    ...loaded,
    vehicles: loaded.vehicles.map((v) => ({
      ...v,
      vehicle: {
        ...v.vehicle,
        brakes: v.vehicle.brakes.flatMap((gear) => {
          const left = held(gear, v.index) ? leakedGear(gear, time) : undefined;
          return left ? [left] : [];
        }),
      },
    })),
  };
}

/** Last time at which a falling hold still reaches a pull, by bisection to a second. */
function lastTime(hold: (time: number) => number, pull: number): number {
  if (hold(0) < pull) return 0;
  if (hold(LONGEST) >= pull) return Infinity;
  let [low, high] = [0, LONGEST];
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (hold(middle) >= pull) low = middle;
    else high = middle;
  }
  return low;
}
