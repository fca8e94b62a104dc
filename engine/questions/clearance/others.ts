/** Tracks that come near one on which a train stands without joining it: what passes on them, in the frame of that one. */
import { FAR } from '../../things/clearance/room.ts';
import { type Frame, framesFrom, planOf, seenFrom, within } from '../../things/line/frames.ts';
import { layPlan, type Plan, type Spot, spotAt } from '../../things/line/plan.ts';
import { type Line, MAIN, type Track } from '../../things/line/types.ts';

/** One of them between two of its distances. */
export interface Other {
  readonly name: string;
  readonly line: Line;
  readonly from: number;
  readonly to: number;
  readonly frame: Frame;
}

/** Between the places that are looked at, m. */
const STEP = 1;

/** @param near middles farther apart than this are not looked at, m */
export function othersNear(
  line: Line,
  /** A track whose own start lies there, and places along the one stood on. */
  from: { readonly id: string; readonly frame: Frame; readonly along: readonly Frame[] },
  not: ReadonlySet<string>,
  near: number,
): Other[] {
  const frames = framesFrom(line, from.id, from.frame);
  const [xs, ys] = [from.along.map(({ x }) => x), from.along.map(({ y }) => y)];
  const [west, east] = [Math.min(...xs) - near, Math.max(...xs) + near];
  const [south, north] = [Math.min(...ys) - near, Math.max(...ys) + near];
  const isNear = ({ x, y }: Frame): boolean =>
    x > west &&
    x < east &&
    y > south &&
    y < north &&
    from.along.some((p) => Math.hypot(p.x - x, p.y - y) < near);
  const all = [{ id: MAIN, name: line.name, line }, ...(line.tracks ?? [])];
  return all.flatMap(({ id, name, line: own }): Other[] => {
    const frame = frames.of.get(id);
    if (!frame || not.has(id)) return [];
    const begins = own.loop ? frames.about - own.length / 2 : 0;
    const plan = own.loop ? layPlan(own, begins, begins + own.length) : planOf(own);
    const laid = within(frame, seenFrom(spotOn(plan, 0)));
    const count = Math.ceil(own.length / STEP);
    const close = Array.from({ length: count + 1 }, (_, i) => begins + (own.length * i) / count).filter((s) =>
      isNear(within(laid, spotOn(plan, s))),
    );
    if (close.length === 0) return [];
    return [{ name, line: own, from: close[0] - near, to: close[close.length - 1] + near, frame }];
  });
}

/** Tracks that lie on one or that it lies on: a train that stands over their points stands in their way whatever its width. */
export function joinedTo({ tracks = [] }: Line, id: string): Set<string> {
  const joins = new Set([id]);
  const add = ({ id: own, start, end }: Track): void => {
    for (const joint of [start, ...(end ? [end] : [])]) {
      if (joint.track === id) joins.add(own);
      if (own === id) joins.add(joint.track);
    }
  };
  tracks.forEach(add);
  return joins;
}

/** Longest of what two vehicles of these lengths reach toward each other, and what is looked at beyond, m. */
export const nearFor = (longest: number): number => FAR + 1.5 * longest;

function spotOn(plan: Plan, s: number): Frame {
  const spot: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
  spotAt(plan, s, spot);
  return spot;
}
