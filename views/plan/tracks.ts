/**
 * Tracks beside the line on its plan: each laid from the tips of its first points, in order of what leaves what; one that comes in
 * again is drawn to its last points, what its survey misses by spread along it.
 */
import { layPlan, spotAt } from '../../engine/things/line/plan.ts';
import { type Joint, type Line, MAIN, type Track } from '../../engine/things/line/types.ts';
import type { Point } from '../strip/scene.ts';
import type { Fitted } from './fit.ts';

/** A place on the drawing, px, with units along the track and to its left. */
export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly along: Point;
}

type At = (s: number) => Placed;

export interface DrawnTrack {
  readonly id: string;
  readonly name: string;
  /** Where a chainage of its own lies. */
  readonly at: At;
  /** px */
  readonly points: readonly Point[];
}

/** Between the points of a drawn track, m, at the least so many. */
const STEP = 0.5;
const LEAST = 24;
const MOST = 400;

/** Without those whose points are not measured: nobody knows how they lie. */
export function drawnTracks({ tracks = [] }: Line, fitted: Fitted): DrawnTrack[] {
  const known = new Map<string, At>([
    [
      MAIN,
      (s) => {
        const { x, y, left } = fitted.at(s);
        return { x, y, along: [-left[1], left[0]] };
      },
    ],
  ]);
  const drawn: DrawnTrack[] = [];
  for (let left = tracks.filter((t) => t.start.turnout); left.length > 0; ) {
    const now = left.filter((t) => known.has(t.start.track));
    if (now.length === 0) return drawn;
    for (const track of now) {
      const at = laidFrom(track, known, fitted.scale);
      known.set(track.id, at);
      const count = Math.min(MOST, Math.max(LEAST, Math.ceil(track.line.length / STEP)));
      const points = Array.from({ length: count + 1 }, (_, i): Point => {
        const { x, y } = at((track.line.length * i) / count);
        return [x, y];
      });
      drawn.push({ id: track.id, name: track.name, at, points });
    }
    left = left.filter((t) => !now.includes(t));
  }
  return drawn;
}

/** Where the tips of points lie, and the way from them to the frog. */
function tipsOf({ track, at, facing }: Joint, known: ReadonlyMap<string, At>): Placed | undefined {
  const here = known.get(track)?.(at);
  if (!here) return undefined;
  const [ax, ay] = here.along;
  return facing ? here : { ...here, along: [-ax, -ay] };
}

function laidFrom({ line, start, end }: Track, known: ReadonlyMap<string, At>, scale: number): At {
  const from = tipsOf(start, known) as Placed;
  const plan = layPlan(line, 0, line.length);
  const spot = { x: 0, y: 0, cos: 1, sin: 0 };
  const [ax, ay] = from.along;
  // To the left of the track is up where it runs to the right: y of the drawing grows downward.
  const [lx, ly] = [ay, -ax];
  const bare = (s: number): Placed => {
    spotAt(plan, s, spot);
    return {
      x: from.x + scale * (spot.x * ax + spot.y * lx),
      y: from.y + scale * (spot.x * ay + spot.y * ly),
      along: [spot.cos * ax + spot.sin * lx, spot.cos * ay + spot.sin * ly],
    };
  };
  const to = end && tipsOf(end, known);
  if (!to) return bare;
  const last = bare(line.length);
  return (s) => {
    const here = bare(s);
    const share = s / line.length;
    return { ...here, x: here.x + share * (to.x - last.x), y: here.y + share * (to.y - last.y) };
  };
}
