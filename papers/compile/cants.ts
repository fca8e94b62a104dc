/**
 * Cant along the line from the curves' own. A ramp lies in the transition, or outside the arc where there is none.
 * Where ramps of neighbours overlap the track keeps the greater cant of one hand, and cants of opposite hands
 * cancel: touching curves of one cant keep it, and a reverse curve is level at its middle.
 */
import type { CantKnot } from '../../engine/things/line/types.ts';

/** Cant of a curve without transitions runs out over this length on either side, m. */
const CANT_RUN_OFF = 3;

/** A curve with its cant, m, positive with the right rail high. */
export interface Banked {
  readonly from: number;
  readonly to: number;
  /** Length of its transitions, m; 0: none. */
  readonly into: number;
  readonly out: number;
  readonly cant: number;
}

/** Corners of one curve's cant by itself: 0, full, full, 0. */
type Corners = readonly [CantKnot, CantKnot, CantKnot, CantKnot];

/**
 * Knots between which the cant is linear, growing.
 * @param curves in order, none overlapping
 * @param length of the line, m; a loop's cant goes on through its origin
 */
export function layCants(curves: readonly Banked[], length: number, loop: boolean): CantKnot[] {
  if (curves.length === 0) return [];
  const all = (loop ? roundTheOrigin(curves, length) : [...curves]).map(cornersOf);
  const places = new Set<number>([0, length]);
  all.forEach((a, i) => {
    for (const knot of a) places.add(knot.at);
    for (let j = i + 1; j < all.length && all[j][0].at < a[3].at + 2 * CANT_RUN_OFF; j++) {
      for (const s of meetings(a, all[j])) places.add(s);
    }
  });
  const ordered = [...places].filter((s) => s >= 0 && s <= length).sort((a, b) => a - b);
  let first = 0;
  return ordered
    .filter((s, i) => i === 0 || s - ordered[i - 1] > 1e-9)
    .map((at) => {
      while (first < all.length - 1 && all[first][3].at + 2 * CANT_RUN_OFF < at) first++;
      return { at, cant: cantAt(all, first, at) };
    });
}

/** A loop's curves with those that reach over its origin laid a second time, a lap before and a lap on. */
function roundTheOrigin(curves: readonly Banked[], length: number): Banked[] {
  const moved = (by: number) => (c: Banked) => ({ ...c, from: c.from + by, to: c.to + by });
  return [
    ...curves.filter((c) => c.to + CANT_RUN_OFF > length).map(moved(-length)),
    ...curves,
    ...curves.filter((c) => c.from - CANT_RUN_OFF < 0).map(moved(length)),
  ];
}

const cornersOf = ({ from, to, into, out, cant }: Banked): Corners => [
  { at: into > 0 ? from : from - CANT_RUN_OFF, cant: 0 },
  { at: from + into, cant },
  { at: to - out, cant },
  { at: out > 0 ? to : to + CANT_RUN_OFF, cant: 0 },
];

/** The greatest cant to each hand, the one against the other. */
function cantAt(all: readonly Corners[], first: number, s: number): number {
  let [right, left] = [0, 0];
  for (let i = first; i < all.length && all[i][1].at - CANT_RUN_OFF <= s; i++) {
    const own = ownCant(all[i], s);
    right = Math.max(right, own);
    left = Math.min(left, own);
  }
  return right + left;
}

function ownCant(corners: Corners, s: number): number {
  if (s <= corners[0].at || s >= corners[3].at) return 0;
  const i = s < corners[1].at ? 0 : s <= corners[2].at ? 1 : 2;
  const [a, b] = [corners[i], corners[i + 1]];
  return b.at === a.at ? a.cant : a.cant + ((s - a.at) / (b.at - a.at)) * (b.cant - a.cant);
}

/** Where the cants of two curves by themselves are the same. */
function meetings(a: Corners, b: Corners): number[] {
  const found: number[] = [];
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      const from = Math.max(a[i].at, b[j].at);
      const to = Math.min(a[i + 1].at, b[j + 1].at);
      if (to <= from) continue;
      const before = ownCant(a, from) - ownCant(b, from);
      const after = ownCant(a, to) - ownCant(b, to);
      if (before * after < 0) found.push(from + ((to - from) * before) / (before - after));
    }
  }
  return found;
}
