/** Who is a child, who looks after one, and who shares a seat (common practice, no source). */
import type { Outing, Rule } from '../../outing/types.ts';
import type { Rider } from '../../things/train/types.ts';
import type { Severity } from '../finding.ts';

/** Who is what, by the ages of the trade. */
export interface Ages {
  readonly isChild: (rider: Rider) => boolean;
  readonly isAdult: (rider: Rider) => boolean;
  /** By age alone: a child of unknown age may be older. */
  readonly isInfant: (rider: Rider) => boolean;
  /** Too small to ride alone. */
  readonly isSmall: (rider: Rider) => boolean;
}

/** Nobody whose age is not given counts as grown below a weight: most of twelve weigh more. */
export function agesOf({ assumed: { practice } }: Pick<Outing, 'assumed'>): Ages {
  const { infant, small, child, adult, light } = practice;
  const isChild = ({ age, ageGroup, mass }: Rider): boolean =>
    age === undefined ? ageGroup === 'child' || mass.value < light.value : age < child.value;
  return {
    isChild,
    isAdult: (rider) =>
      rider.age === undefined ? rider.ageGroup === 'adult' && !isChild(rider) : rider.age >= adult.value,
    isInfant: ({ age }) => age !== undefined && age < infant.value,
    isSmall: ({ age }) => age !== undefined && age < small.value,
  };
}

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
export function childrenAlone(
  on: readonly Rider[],
  { isAdult, isChild, isSmall }: Ages,
  rule?: Rule<boolean>,
): Alone | undefined {
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
export function sharedSeats(on: readonly Rider[], { isChild }: Ages): Shared[] {
  const seats = new Set(on.flatMap((r) => (r.seat === undefined ? [] : [r.seat])));
  return [...seats].flatMap((seat): Shared[] => {
    const riders = on.filter((r) => r.seat === seat);
    if (riders.length < 2) return [];
    const grown = riders.filter((r) => !isChild(r));
    const children = riders.filter(isChild);
    return [grown.length === 1 ? { seat, riders: children, lap: grown[0] } : { seat, riders }];
  });
}
