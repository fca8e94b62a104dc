/** How far is seen along a line, where somebody has said so, and which places need it. */
import type { Line, Place, Sight } from './types.ts';

/** Kinds of place that may ask for a stop as soon as they come in sight. */
export const mayAsk: ReadonlySet<Place['kind']> = new Set(['signal', 'crossing', 'switch']);

/** Stretches of sight that count in the running direction. */
export const sightsAhead = (line: Line): Sight[] => line.sights.filter((s) => s.direction !== 'reverse');

export const sightIsStated = (line: Line): boolean => sightsAhead(line).length > 0;

/** Places that may ask for a stop and whose sight is assumed, on a line whose other sights are stated. */
export const placesOfAssumedSight = (line: Line): Place[] =>
  sightIsStated(line)
    ? line.places.filter(
        (p) =>
          mayAsk.has(p.kind) &&
          p.sight === undefined &&
          !sightsAhead(line).some((s) => covers(line, s.from, s.to, p.at)),
      )
    : [];

/** Whether a stretch, which may cross a loop's origin, covers a chainage. */
export function covers(line: Line, from: number, to: number, s: number): boolean {
  if (from <= to) return s >= from && s <= to;
  return line.loop && (s >= from || s <= to);
}
