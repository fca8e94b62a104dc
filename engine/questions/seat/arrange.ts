/** The seats of one car: every different way to put its people on them, by depth-first search. */
import type { Rider } from '../../things/train/types.ts';
import type { Seat } from '../../things/vehicle/types.ts';
import { axlesBear, type Car, carMargin, type Sitter } from './car.ts';
import type { SeatingRules } from './types.ts';

/** Someone to be put on a seat; people of one class are interchangeable unless one holds another. */
export interface Slot {
  readonly rider: Rider;
  readonly sitter: Sitter;
  readonly class: string;
  /** Index of the slot that holds this one. */
  readonly holder?: number;
}

/** Slot on each seat; −1: empty. */
export type Arrangement = readonly number[];

/** Arrangements beyond this are not all tried. */
const MOST_TRIED = 50_000;

export interface Arranged {
  readonly best?: Arrangement;
  readonly margin: number;
  /** Every arrangement was tried. */
  readonly complete: boolean;
}

/** The arrangement with the greatest worth; `worth` sees its margin. */
export function arrange(
  car: Car,
  slots: readonly Slot[],
  rules: SeatingRules,
  worth: (arrangement: Arrangement, margin: number) => number = (_, margin) => margin,
): Arranged {
  let best: Arrangement | undefined;
  let most = -Infinity;
  let margin = -Infinity;
  const complete = eachArrangement(car, slots, rules, (arrangement) => {
    const sitters = arrangement.map((i) => (i < 0 ? undefined : slots[i].sitter));
    if (!axlesBear(car, sitters)) return;
    const { wheel } = carMargin(car, sitters);
    const value = worth(arrangement, wheel);
    if (value <= most) return;
    most = value;
    margin = wheel;
    best = [...arrangement];
  });
  return { ...(best ? { best } : {}), margin, complete };
}

function eachArrangement(
  car: Car,
  slots: readonly Slot[],
  rules: SeatingRules,
  visit: (arrangement: number[]) => void,
): boolean {
  const { seats } = car;
  const on: number[] = seats.map(() => -1);
  const used = slots.map(() => false);
  let tried = 0;
  const place = (seat: number, left: number): void => {
    if (tried >= MOST_TRIED) return;
    if (seat === seats.length) {
      if (left > 0 || !held(seats, slots, on, rules)) return;
      tried++;
      visit(on);
      return;
    }
    if (seats.length - seat > left) place(seat + 1, left);
    for (let i = 0; i < slots.length; i++) {
      if (used[i] || !first(slots, used, i) || slots[i].sitter.mass > (seats[seat].most ?? Infinity))
        continue;
      used[i] = true;
      on[seat] = i;
      place(seat + 1, left - 1);
      on[seat] = -1;
      used[i] = false;
    }
  };
  place(0, slots.length);
  return tried < MOST_TRIED;
}

/** Of unused slots that are alike only the first is tried: the others would give the same. */
function first(slots: readonly Slot[], used: readonly boolean[], i: number): boolean {
  if (tied(slots, i)) return true;
  for (let k = 0; k < i; k++)
    if (!used[k] && slots[k].class === slots[i].class && !tied(slots, k)) return false;
  return true;
}

const tied = (slots: readonly Slot[], i: number): boolean =>
  slots[i].holder !== undefined || slots.some((s) => s.holder === i);

/** Every held child sits directly in front of the adult who holds it (or behind, by rule), or beside. */
function held(
  seats: readonly Seat[],
  slots: readonly Slot[],
  on: readonly number[],
  { heldChild }: SeatingRules,
): boolean {
  return slots.every((slot, i) => {
    if (slot.holder === undefined) return true;
    const child = seats[on.indexOf(i)];
    const adult = seats[on.indexOf(slot.holder)];
    return mayHold(seats, child, adult, heldChild);
  });
}

const SAME_ROW = 0.05;

/** @param heldChild where the child must sit as seen from the adult */
export function mayHold(
  seats: readonly Seat[],
  child: Seat,
  adult: Seat,
  heldChild: SeatingRules['heldChild'],
): boolean {
  if (Math.abs(child.at - adult.at) < SAME_ROW) return true;
  const ahead = child.at < adult.at;
  if (ahead !== (heldChild === 'in-front')) return false;
  const [near, far] = [Math.min(child.at, adult.at), Math.max(child.at, adult.at)];
  return !seats.some((s) => s.at > near + SAME_ROW && s.at < far - SAME_ROW);
}
