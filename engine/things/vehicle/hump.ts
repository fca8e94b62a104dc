/**
 * What a crest or a sag does under a vehicle that stands on it: how far the rail comes up to what hangs low, and how far a middle
 * axle hangs or the outer ones lift. Each on a vertical curve of radius R:
 *
 *   between the guides     r = x·(A − x)/(2·R)        rail up to the frame, on a crest
 *   beyond them            r = o·(A + o)/(2·R)        rail up to the frame, in a sag
 *   middle of three axles  v = b²/(8·R)
 *
 * A between the guides, x from one of them to the part, o beyond the nearer one, b between the outer axles; all m. Range: 0 ≤ x ≤ A,
 * lengths small against R. Source: common engineering geometry (parabola).
 */

/** m; of a part between the guides on a crest, of one beyond them (x below nothing) in a sag. */
export const railRise = (guides: number, along: number, radius: number): number =>
  Math.abs(along * (guides - along)) / (2 * radius);

/** Least radius at which no more than so much is taken, m. */
export const leastForRise = (guides: number, along: number, room: number): number =>
  room > 0 ? Math.abs(along * (guides - along)) / (2 * room) : Infinity;

/** Three equal springs in a line: how far the middle one may come off before it bears nothing, and the outer ones, ÷ their sinking under the load. */
export const MIDDLE_BEARS = 1.5;
export const OUTER_BEAR = 3;

/**
 * How far a wheel of a rigid group hangs in the air, m; nothing where it still stands. Over a crest the group rocks on its middle
 * axle: one outer wheel stands, the other hangs twice as far.
 * @param versine of the rail under the group, below nothing in a sag, m
 * @param travel how far an axle comes off the line of the others and still bears, m
 */
export const wheelHangs = (versine: number, travel: number): number =>
  Math.max(0, Math.abs(versine) - travel) * (versine > 0 ? 2 : 1);
