/** Where the tracks of a line lie to one another: each in the frame of its own start, found from track to track by their points. */
import { layPlan, type Plan, type Spot, spotAt } from './plan.ts';
import { type Line, MAIN, type Track } from './types.ts';

/** Where one's own start lies in another's frame, and which way it points there. */
export type Frame = Readonly<Spot>;

/** A place of the inner frame as it lies in the outer one. */
export const within = (outer: Frame, inner: Frame): Frame => ({
  x: outer.x + inner.x * outer.cos - inner.y * outer.sin,
  y: outer.y + inner.x * outer.sin + inner.y * outer.cos,
  cos: outer.cos * inner.cos - outer.sin * inner.sin,
  sin: outer.sin * inner.cos + outer.cos * inner.sin,
});

/** The outer frame as it lies in the inner one. */
export const seenFrom = ({ x, y, cos, sin }: Frame): Frame => ({
  x: -(x * cos + y * sin),
  y: x * sin - y * cos,
  cos,
  sin: -sin,
});

/** The same place looking the other way. */
export const about = ({ x, y, cos, sin }: Frame): Frame => ({ x, y, cos: -cos, sin: -sin });

const laid = new WeakMap<Line, Plan>();

/** Of a whole track, each laid once. */
export function planOf(line: Line): Plan {
  const known = laid.get(line) ?? layPlan(line, 0, line.length);
  laid.set(line, known);
  return known;
}

/** A place of a track in its own frame; of a loop laps away too. */
export function spotOf(line: Line, at: number): Frame {
  const on = at >= 0 && at <= line.length;
  const plan = on ? planOf(line) : layPlan(line, Math.min(0, at), Math.max(line.length, at));
  const [start, spot] = [0, at].map((s) => {
    const here: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
    spotAt(plan, s, here);
    return here;
  });
  return within(seenFrom(start), spot);
}

export interface Frames {
  readonly of: ReadonlyMap<string, Frame>;
  /** Of a line that closes: it is laid from here half a lap to either side, so that no misclosure lies between what is near. */
  readonly about: number;
}

/** Of every track that points which were measured lead to, from one of them whose frame is known. */
export function framesFrom(line: Line, id: string, frame: Frame): Frames {
  const frames = new Map([[id, frame]]);
  const tracks = (line.tracks ?? []).filter((t) => t.start.turnout);
  const lineOf = (of: string): Line | undefined =>
    of === MAIN ? line : line.tracks?.find((t) => t.id === of)?.line;
  let middle: number | undefined;
  const tips = ({ start }: Track): Frame | undefined => {
    const parent = lineOf(start.track);
    if (!parent) return undefined;
    if (start.track === MAIN) middle ??= start.at;
    const laps = parent.loop ? Math.round(((middle ?? 0) - start.at) / parent.length) : 0;
    const spot = spotOf(parent, start.at + laps * parent.length);
    return start.facing ? spot : about(spot);
  };
  for (let found = true; found; ) {
    found = false;
    for (const track of tracks) {
      const [own, parent] = [frames.get(track.id), frames.get(track.start.track)];
      if ((own === undefined) === (parent === undefined)) continue;
      const at = tips(track);
      if (!at) continue;
      if (parent) frames.set(track.id, within(parent, at));
      else if (own) frames.set(track.start.track, within(own, seenFrom(at)));
      found = true;
    }
  }
  return { of: frames, about: middle ?? 0 };
}
