/** Pieces of lines: cut out between two chainages, laid one after the other. What stands along them goes with them. */
import { cantAt, curvatureWithin, heightAt } from './geometry.ts';
import type { CantKnot, CurveElement, HeightKnot, Line, Place } from './types.ts';

/** Chainages nearer together are one, m. */
const ONE = 1e-9;

/**
 * From … to of a line, as one that runs from 0 to an end. On a loop either may lie laps away, and the piece go over the
 * origin; else both lie on the line.
 */
export function pieceOf(line: Line, from: number, to: number): Line {
  if (!line.loop) return within(line, Math.max(0, from), Math.min(line.length, to));
  const parts: Line[] = [];
  for (let lap = Math.floor(from / line.length); lap * line.length < to - ONE; lap++) {
    const origin = lap * line.length;
    const [a, b] = [Math.max(from - origin, 0), Math.min(to - origin, line.length)];
    if (b > a + ONE) parts.push(within(line, a, b));
  }
  return joined(parts.length > 0 ? parts : [within(line, 0, 0)]);
}

function within(line: Line, from: number, to: number): Line {
  const { tracks: _tracks, sidings, flangeways, structures, railStretches, unstated, ...rest } = line;
  const stretches = <T extends { readonly from: number; readonly to: number }>(list: readonly T[]): T[] =>
    list
      .flatMap((item) => clipped(item, line.length))
      .flatMap((item) => {
        const [a, b] = [Math.max(item.from, from), Math.min(item.to, to)];
        const here = item.to > item.from ? b > a + ONE : a === b;
        return here ? [{ ...item, from: a - from, to: b - from }] : [];
      });
  const points = <T extends { readonly at: number }>(list: readonly T[]): T[] =>
    list.filter(({ at }) => at >= from && at <= to).map((item) => ({ ...item, at: item.at - from }));
  const inside = sidings?.filter(({ spacings }) => spacings.every(({ at }) => at >= from && at <= to));
  return {
    ...rest,
    loop: false,
    length: to - from,
    heights: heightsOf(line, from, to),
    curves: curvesOf(line.curves, from, to),
    cants: cantsOf(line, from, to),
    places: line.places.flatMap((p) => placeWithin(p, from, to)),
    speedLimits: stretches(line.speedLimits),
    sights: stretches(line.sights),
    ...(flangeways ? { flangeways: points(flangeways) } : {}),
    ...(structures ? { structures: stretches(structures) } : {}),
    ...(inside ? { sidings: inside.map((s) => ({ ...s, spacings: points(s.spacings) })) } : {}),
    ...(railStretches ? { railStretches: stretches(railStretches) } : {}),
    ...(unstated ? { unstated: stretches(unstated) } : {}),
  };
}

/** One that goes over a loop's origin is two. */
const clipped = <T extends { readonly from: number; readonly to: number }>(item: T, length: number): T[] =>
  item.from > item.to
    ? [
        { ...item, to: length },
        { ...item, from: 0 },
      ]
    : [item];

function heightsOf(line: Line, from: number, to: number): HeightKnot[] {
  const [first, last] = [heightAt({ ...line, loop: false }, from), heightAt({ ...line, loop: false }, to)];
  return [
    { at: 0, height: first },
    ...line.heights
      .filter(({ at }) => at > from + ONE && at < to - ONE)
      .map(({ at, height }) => ({ at: at - from, height })),
    { at: to - from, height: last },
  ];
}

function curvesOf(curves: readonly CurveElement[], from: number, to: number): CurveElement[] {
  return curves.flatMap((c) => {
    const [a, b] = [Math.max(c.from, from), Math.min(c.to, to)];
    if (b <= a + ONE) return [];
    return [
      {
        ...c,
        from: a - from,
        to: b - from,
        startCurvature: curvatureWithin(c, a),
        endCurvature: curvatureWithin(c, b),
      },
    ];
  });
}

function cantsOf(line: Line, from: number, to: number): CantKnot[] {
  if (line.cants.length === 0) return [];
  const level = { ...line, loop: false };
  return [
    { at: 0, cant: cantAt(level, from) },
    ...line.cants
      .filter(({ at }) => at > from + ONE && at < to - ONE)
      .map(({ at, cant }) => ({ at: at - from, cant })),
    { at: to - from, cant: cantAt(level, to) },
  ];
}

function placeWithin(place: Place, from: number, to: number): Place[] {
  const end = place.to ?? place.at;
  if (end < from || place.at > to) return [];
  const at = Math.max(place.at, from) - from;
  return [{ ...place, at, ...(place.to === undefined ? {} : { to: Math.min(end, to) - from }) }];
}

/** Laid one after the other; each begins as high as the one before ends. */
export function joined(parts: readonly Line[]): Line {
  return parts.slice(1).reduce(after, parts[0]);
}

function after(line: Line, next: Line): Line {
  const off = line.length;
  const rise = line.heights[line.heights.length - 1].height - next.heights[0].height;
  const stretch = <T extends { readonly from: number; readonly to: number }>(item: T): T => ({
    ...item,
    from: item.from + off,
    to: item.to + off,
  });
  const point = <T extends { readonly at: number }>(item: T): T => ({ ...item, at: item.at + off });
  const lists = <K extends 'flangeways' | 'structures' | 'sidings' | 'railStretches' | 'unstated'>(
    key: K,
    moved: (item: NonNullable<Line[K]>[number]) => NonNullable<Line[K]>[number],
  ) => (line[key] || next[key] ? { [key]: [...(line[key] ?? []), ...(next[key] ?? []).map(moved)] } : {});
  return {
    ...line,
    length: off + next.length,
    heights: [
      ...line.heights,
      ...next.heights.slice(1).map(({ at, height }) => ({ at: at + off, height: height + rise })),
    ],
    curves: [...line.curves, ...next.curves.map(stretch)],
    cants: cantsAfter(line, next),
    places: [
      ...line.places,
      ...next.places.map((p) => ({ ...point(p), ...(p.to === undefined ? {} : { to: p.to + off }) })),
    ],
    speedLimits: [...line.speedLimits, ...next.speedLimits.map(stretch)],
    sights: [...line.sights, ...next.sights.map(stretch)],
    ...lists('flangeways', point),
    ...lists('structures', stretch),
    ...lists('sidings', (s) => ({ ...s, spacings: s.spacings.map(point) })),
    ...lists('railStretches', stretch),
    ...lists('unstated', stretch),
  };
}

/** A track without cant beside one that has some lies level; over the joint of the two it runs out within a hand's breadth. */
function cantsAfter(line: Line, next: Line): CantKnot[] {
  if (line.cants.length === 0 && next.cants.length === 0) return [];
  const of = ({ cants, length }: Line): readonly CantKnot[] =>
    cants.length > 0
      ? cants
      : [
          { at: 0, cant: 0 },
          { at: length, cant: 0 },
        ];
  const [before, behind] = [of(line), of(next)];
  const same = Math.abs(before[before.length - 1].cant - behind[0].cant) < ONE;
  return [
    ...before,
    ...behind
      .map((k, i) => ({
        ...k,
        at: k.at + line.length + (i === 0 && !same ? Math.min(JOINT, behind[1].at / 2) : 0),
      }))
      .slice(same ? 1 : 0),
  ];
}

const JOINT = 0.1;
