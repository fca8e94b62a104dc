/** What clears a road that this train does not stand clear in, or pass in: each way tried on the two trains before it is told. */
import { applyChange } from '../engine/outing/change.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { lookAtTracks, type Road } from '../engine/questions/clearance/tracks.ts';
import { isCar } from '../engine/things/train/cars.ts';

export interface RoadWay {
  /** Name of the road. */
  readonly road: string;
  readonly lacks: 'length' | 'room';
  /** Names of cars that stay behind; none: nothing of this train that was tried clears it. */
  readonly leave: readonly string[];
  /** Roads in which it does stand clear as it is. */
  readonly others: readonly string[];
}

const fits = ({ clear }: Road, train: number): boolean => clear !== null && clear.to - clear.from >= train;
const passes = ({ pinch }: Road): boolean => pinch === null;

/** @param roads as this train finds them · @param passing the outing of the train that passes, else another like this one, changed alike */
export function waysFor(outing: Outing, roads: readonly Road[], passing?: Outing): RoadWay[] {
  const own = roads.filter((road) => road.stands === 'in');
  const { length } = openOuting(outing).loaded;
  const free = own.filter((road) => fits(road, length) && passes(road)).map((road) => road.track.name);
  return own.flatMap((road): RoadWay[] => {
    const lacks = !fits(road, length) ? 'length' : !passes(road) ? 'room' : undefined;
    if (!lacks) return [];
    const { id, name } = road.track;
    const leave = leftBehind(outing, id, lacks, road, passing);
    return [{ road: name, lacks, leave, others: free }];
  });
}

/** The fewest cars from the rear; of vehicles that come too near, those alone. */
function leftBehind(
  outing: Outing,
  id: string,
  lacks: RoadWay['lacks'],
  { pinch }: Road,
  passing?: Outing,
): string[] {
  const cars = outing.train.vehicles.filter(isCar);
  if (cars.length === outing.train.vehicles.length) return [];
  const wide = cars.filter(({ name }) => name === pinch?.stands || name === pinch?.passes);
  const sets = lacks === 'room' ? [wide] : cars.slice(1).map((_, i) => cars.slice(cars.length - 1 - i));
  for (const set of sets) {
    if (set.length === 0) continue;
    const left = applyChange(outing, { kind: 'fewer-cars', leave: set.map((v) => v.id) });
    const context = openOuting(left);
    const other = passing && openOuting({ ...outing, train: passing.train, riders: passing.riders });
    const road = lookAtTracks(context, other).roads.find((r) => r.track.id === id && r.stands === 'in');
    if (road && fits(road, context.loaded.length) && passes(road)) return set.map((v) => v.name);
  }
  return [];
}
