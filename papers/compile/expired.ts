/**
 * Measured values that count no more: older than the host allows, or of a part that was worked on since. In their place
 * stands what is assumed of such a part, and what was measured still lies within its bounds: an answer never gets better by the
 * age of a test. Of whatever day nobody knows the age, it counts as too old where the host has a rule. All are said, in
 * one line.
 */
import { assumed, assumedValues } from '../../data/index.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { BrakeGear, Coupling, Vehicle, WorkedPart } from '../../engine/things/vehicle/types.ts';
import type { Notes } from './notes.ts';

/** A measured value that no longer counts, if so. */
type Judge = (found: Quantity | undefined, part: WorkedPart | undefined) => found is Quantity;

interface Told {
  readonly of: string;
  readonly where: string;
  readonly date: string | undefined;
}

const DAY = 86_400_000;

export const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY;

/**
 * Whether the host's rule lets it count no more. @param on the day of the outing @param most days; undefined: no rule
 */
export function tooOldOn(
  date: string | undefined,
  on: string | undefined,
  most: number | undefined,
): boolean {
  if (most === undefined) return false;
  if (date === undefined || on === undefined) return true;
  const days = daysBetween(date, on);
  // A day to come, or that there is not, is no age.
  return !(days >= 0 && days <= most);
}

/** Tested on the day of the work: after it. */
export const workedSince = (
  worked: readonly { readonly part: WorkedPart; readonly date: string }[] | undefined,
  part: WorkedPart,
  date: string | undefined,
): boolean => (worked ?? []).some((w) => w.part === part && (date === undefined || date < w.date));

export function withoutExpired(outing: Outing, notes: Notes): Outing {
  const told: Told[] = [];
  const { host, line, conditions } = outing;
  const tooOld = ({ how, date }: Quantity): boolean => {
    return how === 'measured' && tooOldOn(date, outing.date, host.measuredLasts?.value);
  };
  const inPlace = (of: string, where: string, found: Quantity, usual: Quantity): Quantity => {
    told.push({ of, where, date: found.date });
    return around(found, usual);
  };
  const vehicles = outing.train.vehicles.map((v) => {
    const expired: Judge = (q, part): q is Quantity =>
      q !== undefined && (tooOld(q) || (part !== undefined && workedOn(v, part, q)));
    return ofVehicle(v, expired, (of, found, usual) => {
      if (usual) return inPlace(of, v.name, found, usual);
      told.push({ of, where: v.name, date: found.date });
      return undefined;
    });
  });
  const reaction = tooOld(conditions.reaction)
    ? inPlace("driver's reaction", outing.name, conditions.reaction, assumed('reaction'))
    : conditions.reaction;
  const { curveConstant } = line;
  const curve =
    curveConstant && tooOld(curveConstant)
      ? inPlace('curve resistance', line.name, curveConstant, assumed('curve-constant'))
      : undefined;
  if (told.length === 0) return outing;
  notes.assumptions.push({
    of: 'measured too long ago, or before work on the part: taken as if assumed',
    where: [
      ...new Set(told.map(({ of, where, date }) => `${of} of ${where} (${date ?? 'no day stated'})`)),
    ].join(', '),
    key: 'measured/expired',
    source: host.measuredLasts?.source ?? 'work entered in the paper of the vehicle',
  });
  return {
    ...outing,
    train: { ...outing.train, vehicles },
    conditions: { ...conditions, reaction },
    assumed: { ...outing.assumed, ...(curve ? { curveConstant: curve } : {}) },
  };
}

/** What is assumed, with what was found within its bounds. */
const around = (found: Quantity, { value, low, high, source }: Quantity): Quantity => ({
  value,
  low: Math.min(low, found.low),
  high: Math.max(high, found.high),
  how: 'assumed',
  ...(source === undefined ? {} : { source }),
});

const workedOn = ({ worked }: Vehicle, part: WorkedPart, { how, date }: Quantity): boolean =>
  how === 'measured' && workedSince(worked, part, date);

/** Says it; gives what stands in its place, where anything is assumed. */
type Say = (of: string, found: Quantity, usual?: Quantity) => Quantity | undefined;

function ofVehicle(v: Vehicle, expired: Judge, say: Say): Vehicle {
  const { rolling, starting } = v.resistance;
  const usualRolling = assumed(`rolling/${v.bearing}`);
  const resistance = {
    ...v.resistance,
    ...(expired(rolling, 'wheels')
      ? { rolling: say('rolling resistance', rolling, usualRolling) as Quantity }
      : {}),
    ...(expired(starting, 'wheels')
      ? {
          starting: say(
            'starting resistance',
            starting,
            times(usualRolling, assumedValues.startingByBearing[v.bearing]),
          ) as Quantity,
        }
      : {}),
  };
  const { centreHeight, ...rest } = v;
  const loose = expired(centreHeight, 'body');
  if (loose) say('height of the centre of gravity', centreHeight);
  // Of a weight nothing is assumed: it stands, and is said.
  if (expired(v.tare, 'body')) say('weight, which stands,', v.tare);
  const { traction } = v;
  return {
    ...(loose ? rest : v),
    resistance,
    brakes: v.brakes.map((b) => ofBrake(b, expired, say)),
    front: ofCoupling(v.front, expired, say),
    rear: ofCoupling(v.rear, expired, say),
    ...(traction?.kind === 'steam' && expired(traction.meanPressureFactor, 'engine')
      ? {
          traction: {
            ...traction,
            meanPressureFactor: say(
              'mean ÷ boiler pressure',
              traction.meanPressureFactor,
              assumed('mean-pressure-factor'),
            ) as Quantity,
          },
        }
      : {}),
  };
}

/** A force varies as one does that was only stated. */
function ofBrake(gear: BrakeGear, expired: Judge, say: Say): BrakeGear {
  const { force, deadTime, buildUp, kind, name } = gear;
  return {
    ...gear,
    ...(expired(force, 'brakes')
      ? { force: say(`force of ${name}`, force, times(force, assumed('brake-force-spread'))) as Quantity }
      : {}),
    ...(expired(deadTime, 'brakes')
      ? { deadTime: say(`dead time of ${name}`, deadTime, assumedValues.deadTime[kind]) as Quantity }
      : {}),
    ...(expired(buildUp, 'brakes')
      ? { buildUp: say(`build-up of ${name}`, buildUp, assumedValues.buildUp[kind]) as Quantity }
      : {}),
  };
}

function ofCoupling(coupling: Coupling, expired: Judge, say: Say): Coupling {
  const { slack, stiffness } = coupling;
  return {
    ...coupling,
    ...(expired(slack, 'couplers')
      ? { slack: say('slack of the coupler', slack, assumedValues.couplerSlack) as Quantity }
      : {}),
    ...(expired(stiffness, 'couplers')
      ? { stiffness: say('stiffness of the coupler', stiffness, assumedValues.couplerStiffness) as Quantity }
      : {}),
  };
}

const times = (q: Quantity, by: Quantity): Quantity => ({
  value: q.value * by.value,
  low: q.value * by.low,
  high: q.value * by.high,
  how: 'assumed',
  ...(by.source === undefined ? {} : { source: by.source }),
});
