/**
 * A wheelset on its track by brute force: wheels, rails, guard rail, wing and point as boxes in one section across the
 * track, the wheelset slid from side to side in small steps and looked at wherever it may stand. No formula of checks or
 * faces: only where one box ends and the next begins.
 */
import type { Flangeway, Line } from '../../engine/things/line/types.ts';
import type { Wheelset } from '../../engine/things/wheel/types.ts';

/** Across the track y, upward z from the rail's top, m. */
interface Box {
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
}

/** Of a rail's head, of a guard rail, of a wing; deeper than any flange. */
const THICK = 0.05;
const DEEP = 0.05;
/** Farther than any wheelset here moves to either side, m. */
const REACH = 0.03;

/** How far two boxes are apart sideways, m; below nothing: how far to push them. They meet at no height: far. */
function apart(a: Box, b: Box): number {
  const meets = Math.min(a.z[1], b.z[1]) > Math.max(a.z[0], b.z[0]);
  return meets ? Math.max(b.y[0] - a.y[1], a.y[0] - b.y[1]) : Number.POSITIVE_INFINITY;
}

const covered = (a: Box, b: Box): number => Math.min(a.y[1], b.y[1]) - Math.max(a.y[0], b.y[0]);

const moved = ({ y, z }: Box, by: number): Box => ({ y: [y[0] + by, y[1] + by], z });

/** One wheel's flange and tread to the left of the middle, the other's to the right, by one reading round them. */
function wheels(back: number, flange: number, width: number) {
  const out = (from: number, to: number, z: Box['z']): readonly [Box, Box] => [
    { y: [back / 2 + from, back / 2 + to], z },
    { y: [-back / 2 - to, -back / 2 - from], z },
  ];
  return { flanges: out(0, flange, [-0.004, 0]), treads: out(0, width, [0, 0.01]) };
}

const rails = (gauge: number): readonly [Box, Box] => [
  { y: [gauge / 2, gauge / 2 + THICK], z: [-DEEP, 0] },
  { y: [-gauge / 2 - THICK, -gauge / 2], z: [-DEEP, 0] },
];

/** Every place of a wheelset between -reach and reach, m. */
function* places(reach: number, step: number): Generator<number> {
  for (let i = -Math.ceil(reach / step); i <= Math.ceil(reach / step); i++) yield i * step;
}

/** Where every box of one list has most room from every one of the other: how much, m. */
function mostRoom(own: readonly Box[], other: readonly Box[], reach: number, step: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const y of places(reach, step))
    most = Math.max(most, Math.min(...own.flatMap((a) => other.map((b) => apart(moved(a, y), b)))));
  return most;
}

/** What a pair leaves, m; undefined: nothing to place. */
export interface Placed {
  readonly frog?: number;
  readonly guard?: number;
  readonly gauge: number;
  readonly tread: number;
}

/** Gauge at a place, m. */
const gaugeAt = ({ gauge, curves }: Line, at: number): number =>
  gauge + Math.max(0, ...curves.map((c) => (at >= c.from && at < c.to ? c.gaugeWidening : 0)));

interface Crossing {
  readonly point: Box;
  /** Undefined: nobody measured how far it is from the point. */
  readonly guard?: Box;
  /** Guard rail and wing as far from each other as they are, wherever between the rails. */
  readonly faces?: { readonly guard: Box; readonly wing: Box };
}

const bar = (from: number, to: number): Box => ({ y: [from, to], z: [-DEEP, 0] });

/** Point and wing left, guard rail right: as measured, else laid out by the gaps. */
function crossing({ guardCheck, guardFace, guard, frog }: Flangeway, gauge: number): Crossing {
  const point = bar(gauge / 2, gauge / 2 + THICK);
  const gap = guard === undefined ? undefined : -gauge / 2 + guard;
  const guarding = guardCheck === undefined ? gap : gauge / 2 - guardCheck;
  const laid = gap === undefined || frog === undefined ? undefined : ([gap, gauge / 2 - frog] as const);
  const [from, to] =
    guardFace === undefined ? (laid ?? [undefined, undefined]) : [-guardFace / 2, guardFace / 2];
  return {
    point,
    ...(guarding === undefined ? {} : { guard: bar(guarding, guarding + THICK / 2) }),
    ...(from === undefined || to === undefined
      ? {}
      : { faces: { guard: bar(from, from + THICK / 2), wing: bar(to - THICK / 2, to) } }),
  };
}

/** The worst of all readings round a wheelset, of thick flange and thin, of every gauge and every frog of a line. */
export function placed(wheelset: Wheelset, line: Line, step: number): Placed {
  const { backToBack = [], flangeThickness, width = 0 } = wheelset;
  const { low = 0, high = 0 } = flangeThickness ?? {};
  const gauges = [
    line.gauge,
    ...line.curves.map((c) => gaugeAt(line, (c.from + c.to) / 2)),
    ...(line.flangeways ?? []).flatMap((w) => (w.gauge === undefined ? [] : [w.gauge])),
  ];
  let [gauge, tread, frog, guard] = [Infinity, Infinity, Infinity, Infinity];
  for (const back of backToBack)
    for (const flange of [low, high]) {
      const { flanges, treads } = wheels(back, flange, width);
      for (const g of gauges) {
        const [left, right] = rails(g);
        // Half of it on either side, where it stands in the middle.
        gauge = Math.min(gauge, 2 * mostRoom(flanges, [left, right], REACH, step));
        for (const y of places(REACH, step)) {
          // It leans on a rail: the flange's outer face is at the gauge face, not in it.
          if (apart(moved(flanges[0], y), left) < 0) continue;
          tread = Math.min(tread, covered(moved(treads[1], y), right));
        }
      }
      for (const way of line.flangeways ?? []) {
        // Laid wide with its curve, or not: point and guard rail nearest, faces widest.
        const { point, guard: rail } = crossing(way, way.gauge ?? line.gauge);
        const { faces } = crossing(way, way.gauge ?? gaugeAt(line, way.at));
        for (const y of rail ? places(REACH, step) : []) {
          const [left, right] = flanges.map((f) => moved(f, y));
          // As far to the point as the guard rail lets the other wheel's back go.
          if (rail && right.y[1] <= rail.y[0]) frog = Math.min(frog, point.y[0] - left.y[1]);
        }
        if (!faces) continue;
        const most = Math.max(
          ...[...places(REACH, step)].map((y) =>
            Math.min(
              faces.guard.y[0] - moved(flanges[1], y).y[1],
              moved(flanges[0], y).y[0] - faces.wing.y[1],
            ),
          ),
        );
        guard = Math.min(guard, 2 * most);
      }
    }
  return {
    gauge,
    tread,
    ...(frog < Infinity ? { frog } : {}),
    ...(guard < Infinity ? { guard } : {}),
  };
}
