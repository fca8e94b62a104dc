/** Who is a child, who looks after one, and who shares a seat (common practice, no source). */
import type { Rule } from '../../outing/types.ts';
import type { Rider } from '../../things/train/types.ts';
import type { Severity } from '../finding.ts';

/** Age in years below which a rider is a child, is too small to ride alone, and cannot hold on. */
const CHILD = 12;
const SMALL = 7;
const INFANT = 2;
const ADULT = 18;

/**
 * Nobody whose age is not given counts as grown below this weight, kg: 95 boys of twelve in a hundred weigh more
 * (CDC Growth Charts 2000).
 */
const LIGHT = 30.55;

export const isChild = ({ age, ageGroup, mass }: Rider): boolean =>
  age === undefined ? ageGroup === 'child' || mass.value < LIGHT : age < CHILD;

export const isAdult = (rider: Rider): boolean =>
  rider.age === undefined ? rider.ageGroup === 'adult' && !isChild(rider) : rider.age >= ADULT;

/** By age alone: a child of unknown age may be older. */
export const isInfant = ({ age }: Rider): boolean => age !== undefined && age < INFANT;

const isSmall = ({ age }: Rider): boolean => age !== undefined && age < SMALL;

export const ridersOn = (riders: readonly Rider[], vehicle: string): Rider[] =>
  riders.filter((r) => r.vehicle === vehicle);

export const passengers = (riders: readonly Rider[]): Rider[] => riders.filter((r) => r.duty === 'rider');

/** Children on one vehicle without the company that they need. */
export interface Alone {
  readonly children: readonly Rider[];
  readonly company: 'youth' | 'nobody';
  readonly severity: Severity;
}

/**
 * Children that ride without an adult. One under seven does not ride so; in the company of a youth, and from seven
 * to twelve by itself, it rides only if it is told how. A host's rule asks for the adult in every case, or for none.
 * @param on all people on one vehicle
 */
export function childrenAlone(on: readonly Rider[], rule?: Rule<boolean>): Alone | undefined {
  if (rule?.value === false || on.some(isAdult)) return undefined;
  const youth = on.some((r) => !isChild(r));
  const children = passengers(on).filter((r) => isChild(r) && (rule !== undefined || !youth || isSmall(r)));
  if (children.length === 0) return undefined;
  const forbids = rule !== undefined || (!youth && children.some(isSmall));
  return { children, company: youth ? 'youth' : 'nobody', severity: forbids ? 'forbids' : 'limits' };
}

/** Two or more people on one seat. */
export interface Shared {
  readonly seat: string;
  /** Children on the lap of the one other; else all who share it. */
  readonly riders: readonly Rider[];
  /** Whose lap it is; absent: no lap, for more than one is grown, or none. */
  readonly lap?: Rider;
}

/** @param on all people on one vehicle */
export function sharedSeats(on: readonly Rider[]): Shared[] {
  const seats = new Set(on.flatMap((r) => (r.seat === undefined ? [] : [r.seat])));
  return [...seats].flatMap((seat): Shared[] => {
    const riders = on.filter((r) => r.seat === seat);
    if (riders.length < 2) return [];
    const grown = riders.filter((r) => !isChild(r));
    const children = riders.filter(isChild);
    return [grown.length === 1 ? { seat, riders: children, lap: grown[0] } : { seat, riders }];
  });
}
