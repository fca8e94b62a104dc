/**
 * Reading the line at a chainage: height, grade, curvature and cant; and the same line run the other way.
 *
 * Beyond the ends of a point-to-point line the last grade continues, straight and with the last cant.
 */
import {
  type CantKnot,
  type CurveElement,
  type HeightKnot,
  type Joint,
  type Line,
  MAIN,
  type Place,
  type Siding,
  type Structure,
  type Track,
} from './types.ts';

/** Index of the last item whose `at` is ≤ s, or 0. */
export function lastBefore(items: readonly { readonly at: number }[], s: number): number {
  let low = 0;
  let high = items.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (items[middle].at <= s) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Chainage brought onto the line: wrapped on a loop, unchanged otherwise. */
export function onLine(line: Line, s: number): number {
  if (!line.loop) return s;
  const wrapped = s % line.length;
  return wrapped < 0 ? wrapped + line.length : wrapped;
}

/** m above the line's datum. */
export function heightAt(line: Line, s: number): number {
  const knots = line.heights;
  const at = onLine(line, s);
  const i = Math.min(lastBefore(knots, at), knots.length - 2);
  const grade = (knots[i + 1].height - knots[i].height) / (knots[i + 1].at - knots[i].at);
  return knots[i].height + grade * (at - knots[i].at);
}

/** 1/m, positive to the left in the running direction. */
export function curvatureAt(line: Line, s: number): number {
  const at = onLine(line, s);
  const element = line.curves.find((c) => at >= c.from && at < c.to);
  return element ? curvatureWithin(element, at) : 0;
}

export function curvatureWithin(element: CurveElement, at: number): number {
  const share = (at - element.from) / (element.to - element.from);
  return element.startCurvature + share * (element.endCurvature - element.startCurvature);
}

/** Gauge widening at a chainage on the line, m: where two curves meet, or a loop closes, of the one that is widened more. */
export function wideningAt({ curves, loop, length }: Line, at: number): number {
  // The ends of a loop are one place.
  const seam = loop && (at === 0 || at === length);
  const lies = (c: CurveElement): boolean =>
    (at >= c.from && at <= c.to) || (seam && (c.from === 0 || c.to === length));
  return curves.reduce((most, c) => (lies(c) ? Math.max(most, c.gaugeWidening) : most), 0);
}

/** m, right rail above left. */
export function cantAt(line: Line, s: number): number {
  const knots = line.cants;
  if (knots.length === 0) return 0;
  const at = onLine(line, s);
  const i = lastBefore(knots, at);
  if (at <= knots[0].at) return knots[0].cant;
  if (i === knots.length - 1) return knots[i].cant;
  const share = (at - knots[i].at) / (knots[i + 1].at - knots[i].at);
  return knots[i].cant + share * (knots[i + 1].cant - knots[i].cant);
}

/** A stretch of a line as it lies on the same line run the other way. */
export const turnedStretch = <T extends { readonly from: number; readonly to: number }>(
  { length }: Pick<Line, 'length'>,
  stretch: T,
): T => ({ ...stretch, from: length - stretch.to, to: length - stretch.from });

/**
 * The same line run the other way: chainage s becomes length − s, left becomes right, cant changes sign.
 * Twice is the identity (up to the order of equal items).
 */
export function reverseLine(line: Line): Line {
  const turn = (s: number): number => line.length - s;
  const stretch = <T extends { readonly from: number; readonly to: number }>(item: T): T =>
    turnedStretch(line, item);
  return {
    ...line,
    heights: line.heights.map((k): HeightKnot => ({ at: turn(k.at), height: k.height })).reverse(),
    curves: line.curves
      .map(
        (c): CurveElement => ({
          from: turn(c.to),
          to: turn(c.from),
          startCurvature: -c.endCurvature,
          endCurvature: -c.startCurvature,
          gaugeWidening: c.gaugeWidening,
        }),
      )
      .reverse(),
    cants: line.cants.map((k): CantKnot => ({ at: turn(k.at), cant: -k.cant })).reverse(),
    places: line.places.map((p) => reversePlace(p, turn)).reverse(),
    speedLimits: line.speedLimits.map(stretch).reverse(),
    sights: line.sights
      .map((sight) => {
        const direction =
          sight.direction === 'both' ? 'both' : sight.direction === 'forward' ? 'reverse' : 'forward';
        return { ...stretch(sight), direction } as const;
      })
      .reverse(),
    ...(line.flangeways
      ? { flangeways: line.flangeways.map((f) => ({ ...f, at: turn(f.at) })).reverse() }
      : {}),
    ...(line.structures
      ? { structures: line.structures.map((s) => ({ ...stretch(s), side: otherSide[s.side] })).reverse() }
      : {}),
    ...(line.sidings ? { sidings: line.sidings.map((s) => reverseSiding(s, turn)).reverse() } : {}),
    ...(line.tracks ? { tracks: line.tracks.map((t) => reverseTrack(t, turn)) } : {}),
    ...(line.railStretches ? { railStretches: line.railStretches.map(stretch).reverse() } : {}),
    ...(line.unstated ? { unstated: line.unstated.map(stretch).reverse() } : {}),
  };
}

const otherSide: Readonly<Record<Structure['side'], Structure['side']>> = {
  left: 'right',
  right: 'left',
  both: 'both',
};

const reverseSiding = (siding: Siding, turn: (s: number) => number): Siding => ({
  ...siding,
  side: siding.side === 'left' ? 'right' : 'left',
  spacings: siding.spacings.map(({ at, spacing }) => ({ at: turn(at), spacing })).reverse(),
});

/** Points on the line itself lie the other way; on other tracks, and seen from their tips, nothing changes. */
function reverseTrack({ start, end, ...rest }: Track, turn: (s: number) => number): Track {
  const turned = (joint: Joint): Joint =>
    joint.track === MAIN ? { ...joint, at: turn(joint.at), facing: !joint.facing } : joint;
  return { ...rest, start: turned(start), ...(end ? { end: turned(end) } : {}) };
}

function reversePlace(place: Place, turn: (s: number) => number): Place {
  const { to, sight, sightReverse, ...rest } = place;
  return {
    ...rest,
    at: turn(to ?? place.at),
    ...(to === undefined ? {} : { to: turn(place.at) }),
    ...(sightReverse === undefined ? {} : { sight: sightReverse }),
    ...(sight === undefined ? {} : { sightReverse: sight }),
  };
}
