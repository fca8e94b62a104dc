/** Every gap of a train along its line: how far its couplers stand out of line, at the worst. */
import type { OutingContext } from '../../outing/open.ts';
import { guidesOf } from '../../things/coupler/bend.ts';
import { endOnTrack, type Rise, risesOn } from '../../things/coupler/crest.ts';
import { isLinked } from '../../things/coupler/linked.ts';
import { heightAt } from '../../things/line/geometry.ts';
import type { Line } from '../../things/line/types.ts';
import { groupLoads, type LoadedVehicle } from '../../things/train/loaded.ts';
import { tareAlong } from '../../things/vehicle/tare.ts';

/** Height of the lower face, m, and how much of it holds the other: nothing or less, they slip by. */
export interface Hold {
  readonly face: number;
  readonly held: number;
}

export interface CrestGap {
  readonly gap: number;
  readonly vehicle: string;
  readonly name: string;
  readonly other: string;
  /** Height of the coupler ahead less that behind as stated; null: one of them is not. */
  readonly stated: number | null;
  /** What the line and the springs add where it is worst, m. */
  readonly line: number;
  readonly springs: number;
  /** All together, m; positive: the one ahead stands higher. */
  readonly apart: number;
  readonly at: number;
  readonly lie: 'crest' | 'sag';
  /** No two points of the survey lie as near there as the vehicles are long: how sharp it bends is not known. */
  readonly sparse: boolean;
  /** What of the two faces holds; null: one is not stated. */
  readonly hold: Hold | null;
}

export function lookAtCrests({ line, loaded }: OutingContext): CrestGap[] {
  const kept = new Map<string, ReturnType<typeof risesOn>>();
  return loaded.vehicles.slice(1).flatMap((behind, gap) => {
    const ahead = loaded.vehicles[gap];
    const [rear, front] = [ahead.vehicle.rear, behind.vehicle.front];
    const [a, b] = [endOnTrack(ahead.vehicle, 'rear'), endOnTrack(behind.vehicle, 'front')];
    if (isLinked(rear, front) || !a || !b) return [];
    const key = JSON.stringify([a, b]);
    const rises = kept.get(key) ?? risesOn(line, a, b);
    kept.set(key, rises);
    const stated =
      rear.height === undefined || front.height === undefined ? null : rear.height - front.height;
    const worst = worstOf(stated ?? 0, rises, sinks(ahead, 'rear'), sinks(behind, 'front'));
    const hold = holdOf(rear.face, front.face, Math.abs(worst.apart));
    const reach = Math.max(...a.near, ...a.far, ...b.near, ...b.far);
    return [
      {
        gap,
        vehicle: ahead.vehicle.id,
        name: ahead.vehicle.name,
        other: behind.vehicle.name,
        stated,
        ...worst,
        lie: lieOf(line, worst.at, reach),
        sparse: isSparse(line, worst.at, reach),
        hold,
      },
    ];
  });
}

/** Faces lie evenly about the middle, by which a coupler's height is told. */
function holdOf(a: number | undefined, b: number | undefined, apart: number): Hold | null {
  if (a === undefined || b === undefined) return null;
  const face = Math.min(a, b);
  return { face, held: Math.min(face, (a + b) / 2 - apart) };
}

type Worst = Pick<CrestGap, 'line' | 'springs' | 'apart' | 'at'>;

/** Of the line's two extremes and the springs' bounds, the one that stands farthest out of line, either way. */
function worstOf(
  stated: number,
  { most, least }: { readonly most: Rise; readonly least: Rise },
  ahead: readonly number[],
  behind: readonly number[],
): Worst {
  const all = [most, least].flatMap(({ rise, at }) =>
    ahead.flatMap((a) =>
      behind.map((b): Worst => ({ line: rise, springs: b - a, apart: stated + rise + b - a, at })),
    ),
  );
  return all.reduce((a, b) => (Math.abs(b.apart) > Math.abs(a.apart) ? b : a));
}

/** How far an end sinks under people and loads: on stiff and on soft springs, m; not at all without known springs. */
function sinks({ vehicle, groupLoads: loads }: LoadedVehicle, end: 'front' | 'rear'): number[] {
  const stiffness = vehicle.suspension?.wheelStiffness;
  if (!stiffness) return [0];
  const tare = groupLoads(vehicle, vehicle.tare.value, tareAlong(vehicle), []);
  const guides = guidesOf(vehicle);
  const under = (at: number): number => {
    // Of a single group both guides are its own outer axles.
    const k = Math.max(
      0,
      vehicle.groups.findIndex((g) => g.at === at),
    );
    return (loads[k] - tare[k]) / (2 * vehicle.groups[k].axles);
  };
  const [near, far] = end === 'front' ? guides : [guides[1], guides[0]];
  const overhang = end === 'front' ? near : vehicle.length - near;
  const lever = overhang / (guides[1] - guides[0]);
  const force = under(near) + (under(near) - under(far)) * lever;
  return [force / stiffness.low, force / stiffness.high];
}

/** Above the straight between the two points a reach away: a crest. */
function lieOf(line: Line, at: number, reach: number): CrestGap['lie'] {
  const beside = (heightAt(line, at - reach) + heightAt(line, at + reach)) / 2;
  return heightAt(line, at) >= beside ? 'crest' : 'sag';
}

function isSparse({ heights, loop, length }: Line, at: number, reach: number): boolean {
  const near = heights.filter((k) => {
    const d = Math.abs(k.at - at);
    return Math.min(d, loop ? length - d : d) <= reach;
  });
  return near.length < 2;
}
