/** Seats of practice: where the trade puts people when the sums do not care (common practice, no source). */
import type { Rider } from '../../things/train/types.ts';
import type { Seat, Vehicle } from '../../things/vehicle/types.ts';
import type { SeatingRules } from './types.ts';

/** Someone and the seat that they are given. */
export interface On {
  readonly rider: Rider;
  readonly seat: Seat;
}

/** Halfway between the outer trucks, m from the front end; of a single group the middle of the vehicle. */
export const middleOf = ({ groups, length }: Vehicle): number =>
  groups.length > 1 ? (groups[0].at + groups[groups.length - 1].at) / 2 : length / 2;

/** How far a pair sits from the outer trucks, m: the one ahead from the front truck, the other from the rear. */
export function offTrucks({ groups }: Vehicle, pair: readonly On[]): number {
  const [front, rear] = pair.map((p) => p.seat.at).sort((a, b) => a - b);
  return Math.abs(front - groups[0].at) + Math.abs(rear - groups[groups.length - 1].at);
}

/**
 * How far one car's seating is from practice, 0 at the best: a single rider in the middle, two adults over the
 * trucks, a child in front of its adult (or behind, by rule). Only to choose among seatings that are equal.
 */
export function awayFromPractice(vehicle: Vehicle, on: readonly On[], { heldChild }: SeatingRules): number {
  const alone = on.length === 1 ? Math.abs(on[0].seat.at - middleOf(vehicle)) : 0;
  const pair = on.length === 2 && on.every((p) => p.rider.ageGroup === 'adult');
  const off = pair && vehicle.groups.length > 1 ? offTrucks(vehicle, on) : 0;
  const odd = on.filter(({ rider, seat }) => {
    const adults = on.filter((p) => p.rider.ageGroup === 'adult' && looksAfter(p.rider, rider));
    return adults.length > 0 && !adults.some((p) => seat.at < p.seat.at === (heldChild === 'in-front'));
  });
  return (alone + off) / vehicle.length + odd.length;
}

/** Whoever holds the child; of a child that nobody holds, the adults of its party. */
const looksAfter = (adult: Rider, child: Rider): boolean =>
  child.ageGroup === 'child' &&
  (child.heldBy === undefined
    ? child.group !== undefined && child.group === adult.group
    : child.heldBy === adult.id);
