/**
 * People who sit together are one unit; units that weigh the same are of one kind and can stand in for each
 * other. That is what keeps the program small.
 */
import type { Rider } from '../../things/train/types.ts';

export interface Unit {
  readonly riders: readonly Rider[];
  /** Class of each rider: mass and age group, and who holds whom. */
  readonly kind: string;
}

export interface Units {
  readonly units: readonly Unit[];
  /** Names of groups that had to be split over cars. */
  readonly split: readonly string[];
}

/** Mass rounded up to a grain, kg, so that ratings are kept whatever it was; 0 leaves it as it is. */
export const classMass = (rider: Rider, grain: number): number =>
  grain > 0 ? Math.ceil(rider.mass.value / grain) * grain : rider.mass.value;

export const classOf = (rider: Rider, grain: number): string =>
  `${classMass(rider, grain)}/${rider.ageGroup}`;

/** @param seats most free seats on one car */
export function unitsOf(people: readonly Rider[], seats: number, grain: number): Units {
  const split: string[] = [];
  const units = together(people).flatMap((riders) => {
    if (riders.length <= seats) return [unitOf(riders, grain)];
    split.push(riders[0].group ?? riders[0].name);
    return chunks(riders, seats).map((part) => unitOf(part, grain));
  });
  return { units, split };
}

/** Groups and children with their adults, joined where they overlap. */
function together(people: readonly Rider[]): Rider[][] {
  const root = new Map(people.map((p) => [p.id, p.id]));
  const find = (id: string): string => {
    const up = root.get(id) ?? id;
    return up === id ? id : find(up);
  };
  const join = (a: string, b: string): void => {
    root.set(find(a), find(b));
  };
  const first = new Map<string, string>();
  for (const p of people) {
    if (p.heldBy !== undefined && root.has(p.heldBy)) join(p.id, p.heldBy);
    if (p.group === undefined) continue;
    const known = first.get(p.group);
    if (known === undefined) first.set(p.group, p.id);
    else join(p.id, known);
  }
  const byRoot = new Map<string, Rider[]>();
  for (const p of people) byRoot.set(find(p.id), [...(byRoot.get(find(p.id)) ?? []), p]);
  return [...byRoot.values()];
}

/** Parts no larger than a car, holders never parted from whom they hold. */
function chunks(riders: readonly Rider[], seats: number): Rider[][] {
  const bound = riders
    .filter((r) => !riders.some((o) => o.id === r.heldBy))
    .map((holder) => [holder, ...riders.filter((r) => r.heldBy === holder.id)]);
  const parts: Rider[][] = [];
  for (const piece of bound.sort((a, b) => b.length - a.length)) {
    const room = parts.find((p) => p.length + piece.length <= seats);
    if (room) room.push(...piece);
    else parts.push([...piece]);
  }
  return parts;
}

function unitOf(riders: readonly Rider[], grain: number): Unit {
  const key = (r: Rider): string => {
    const holder = riders.find((o) => o.id === r.heldBy);
    return holder ? `${classOf(r, grain)}<${classOf(holder, grain)}` : classOf(r, grain);
  };
  const ordered = [...riders].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
  return { riders: ordered, kind: ordered.map(key).join('+') };
}
