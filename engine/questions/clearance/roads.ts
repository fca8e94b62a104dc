/**
 * Where on two tracks that part a train stands clear of whatever passes on the other: on each track from its points on, and on
 * the stretch beside it where both ends of it join the same track. Both on their real alignments, from one and the same start; a track with
 * points at both ends is laid from each of them, up to its middle, so that no error of its length moves a mark.
 */
import { highest } from '../../base/numerics/highest.ts';
import { COARSE } from '../../things/clearance/room.ts';
import { farthest, type Side } from '../../things/clearance/swept.ts';
import { lengthBeside } from '../../things/line/branch.ts';
import { about, type Frame } from '../../things/line/frames.ts';
import { reverseLine } from '../../things/line/geometry.ts';
import { joined, pieceOf } from '../../things/line/pieces.ts';
import { layPlan, type Plan, type Spot, spotAt } from '../../things/line/plan.ts';
import { toFrog } from '../../things/line/turnout.ts';
import { type Joint, type Line, MAIN, type Track } from '../../things/line/types.ts';
import { type Beside, besideFor, type Least } from './beside.ts';
import type { Body } from './bodies.ts';
import { joinedTo, nearFor, type Other, othersNear } from './others.ts';

/** Before the points that both are laid from, and beyond the end of a track that what passes is followed to, m. */
const BEFORE = 12;
/** Between the places that are looked at, m; between them the mark is found to MARKED. */
const STEP = 0.25;
const MARKED = 2e-4;

/** Where a train must stand beyond, so that it is clear: by what one can find on the ground, m. */
export interface Mark {
  /** Along its own track from the tips of the points. */
  readonly beyondTips: number;
  readonly beyondFrog: number;
  /** Between the middles of the two tracks there. */
  readonly apart: number;
}

export interface RoadLaid {
  readonly track: Track;
  /** The track itself, or the stretch beside it of the track that it leaves and joins again. */
  readonly stands: 'in' | 'beside';
  /** From tips to tips, or to its end, m. */
  readonly length: number;
  /** Where each vehicle stands clear, from its first tips on; null: nowhere. */
  readonly clear: Stretch | null;
  /** At its first points, and at its last where it has them. */
  readonly marks: readonly Mark[];
  /** Least room to what passes where a train so long stands midway between its marks, or at the end of a road that ends; null: it does not fit. */
  readonly leastOf: (train: number) => Least | null;
  /** Where it stands clear on either side and not between: the least there. */
  readonly pinch: Least | null;
}

/** Of a track with too little measured: what; of one in which a frame cannot stand: nothing. */
export interface Untold {
  readonly track: Track;
  readonly lacks: Joint['lacks'];
}

export interface Asked {
  readonly line: Line;
  readonly standing: readonly Body[];
  readonly passing: readonly Body[];
  /** Wanted between the two, m. */
  readonly margin: number;
}

export function roadsOf(asked: Asked, track: Track): RoadLaid[] | Untold {
  const { start, end } = track;
  const lacks = start.lacks ?? end?.lacks;
  if (!start.turnout || (end && !end.turnout)) return { track, lacks };
  const { length } = track.line;
  const from = viewOf(asked, track, start, false);
  const to = end ? viewOf(asked, track, end, true) : undefined;
  const own = roadIn(asked, track, 'in', length, from, to);
  const besideLength = end && lengthBeside(lineOfTrack(asked.line, start.track) as Line, start, end);
  if (besideLength === undefined) return own ? [own] : { track, lacks: undefined };
  const beside = roadIn(asked, track, 'beside', besideLength, swapped(from), to && swapped(to));
  return own && beside ? [own, beside] : { track, lacks: undefined };
}

/** Two tracks from one pair of points, the one stood on and the one passed on; chainages of both from the same start. */
interface View {
  readonly joint: Joint;
  readonly stand: Line;
  readonly pass: Line;
  readonly standPlan: Plan;
  readonly passPlan: Plan;
  /** Tips of the points on both, m. */
  readonly tips: number;
  /** Where what passes lies, seen from what stands. */
  readonly side: Side;
  /** The track that leaves, and where its own start lies. */
  readonly laid: { readonly id: string; readonly frame: Frame };
}

export const lineOfTrack = (line: Line, id: string): Line | undefined =>
  id === MAIN ? line : line.tracks?.find((t) => t.id === id)?.line;

function viewOf({ line, standing, passing }: Asked, track: Track, joint: Joint, last: boolean): View {
  const parent = lineOfTrack(line, joint.track) as Line;
  const through = joint.facing ? parent : reverseLine(parent);
  const at = joint.facing ? joint.at : parent.length - joint.at;
  const begins = through.loop ? at - BEFORE : Math.max(0, at - BEFORE);
  const own = last ? reverseLine(track.line) : track.line;
  const along = through.loop ? Math.min(own.length + BEFORE, through.length / 2) : own.length + BEFORE;
  const pass = pieceOf(through, begins, at + along);
  const stand = joined([pieceOf(through, begins, at), pieceOf(own, 0, own.length)]);
  const reach = Math.max(...[...standing, ...passing].map(({ shape }) => farthest(shape)));
  const lay = (of: Line): Plan => layPlan(of, -reach, of.length + reach);
  const tips = at - begins;
  const standPlan = lay(stand);
  const frame = last ? about(spotOf(standPlan, tips + own.length)) : spotOf(standPlan, tips);
  return {
    joint,
    stand,
    pass,
    standPlan,
    passPlan: lay(pass),
    tips,
    laid: { id: track.id, frame },
    side: joint.hand === 'left' ? 'right' : 'left',
  };
}

/** Those that come near without joining the track stood on, in the frame of a view of it. */
function othersOf(line: Line, stood: string, view: View, length: number, near: number): Other[] {
  const count = Math.ceil(length);
  const along = Array.from({ length: count + 1 }, (_, i) =>
    spotOf(view.standPlan, view.tips + (length * i) / count),
  );
  return othersNear(line, { ...view.laid, along }, joinedTo(line, stood), near);
}

const swapped = (view: View): View => ({
  ...view,
  stand: view.pass,
  pass: view.stand,
  standPlan: view.passPlan,
  passPlan: view.standPlan,
  side: view.side === 'left' ? 'right' : 'left',
});

/** undefined: a frame cannot stand somewhere in it. */
function roadIn(
  { line, standing, passing, margin }: Asked,
  track: Track,
  stands: RoadLaid['stands'],
  length: number,
  start: View,
  end: View | undefined,
): RoadLaid | undefined {
  const near = nearFor(
    Math.max(...[...standing, ...passing].map(({ shape }) => shape.box.front - shape.box.rear)),
  );
  const id = stands === 'in' ? track.id : track.start.track;
  const [first, last] = [start, end].map(
    (view) => view && besideFor(view, standing, passing, othersOf(line, id, view, length, near)),
  );
  if (!first || (end && !last)) return undefined;
  /** With its nearer end so far beyond the first tips. */
  const roomOf = (kind: number, p: number, fine: boolean): Least => {
    const { long } = first.kinds[kind];
    return !last || p <= (length - long) / 2
      ? first.roomAt(kind, p, fine)
      : { ...last.roomAt(kind, length - p - long, fine), at: p };
  };
  const runs = first.kinds.map(({ long }, kind) => {
    const run = clearRun((p, fine) => roomOf(kind, p, fine).room - margin, length - long);
    return run && { ...run, to: run.to + long, kind };
  });
  const pinches = runs.flatMap((r) => (r?.pinch === undefined ? [] : [roomOf(r.kind, r.pinch, true)]));
  const [from, to] = [
    Math.max(...runs.map((r) => r?.from ?? Infinity)),
    Math.min(...runs.map((r) => r?.to ?? -Infinity)),
  ];
  const clear = to > from ? { from, to } : null;
  return {
    track,
    stands,
    length,
    clear,
    marks: clear ? marksOf(clear, length, stands, start, end) : [],
    leastOf: (train) => clear && leastIn(first, roomOf, midway(clear, train, end !== undefined)),
    pinch: pinches.reduce<Least | null>((a, b) => (a && a.room <= b.room ? a : b), null),
  };
}

interface Run {
  readonly from: number;
  readonly to: number;
  /** Where there is least between the first place that is clear and the last. */
  readonly pinch?: number;
}

/** The longest stretch without less than is wanted. */
function clearRun(spare: (p: number, fine: boolean) => number, end: number): Run | null {
  if (!(end >= 0)) return null;
  const count = Math.max(1, Math.ceil(end / STEP));
  const at = (i: number): number => (end * i) / count;
  const spares = Array.from({ length: count + 1 }, (_, i) => spare(at(i), false));
  const isClear = spares.map((s) => s >= COARSE);
  const edge = (foul: number, clear: number): number => {
    let [bad, good] = [foul, clear];
    // What the grid alone calls foul may be clear by less than it tells.
    if (spare(bad, true) >= 0) [bad, good] = [2 * bad - good, bad];
    while (Math.abs(good - bad) > MARKED) {
      const middle = (bad + good) / 2;
      if (spare(middle, true) >= 0) good = middle;
      else bad = middle;
    }
    return good;
  };
  let best: Run | null = null;
  for (let i = 0; i <= count; i++) {
    if (!isClear[i] || (i > 0 && isClear[i - 1])) continue;
    let j = i;
    while (j < count && isClear[j + 1]) j++;
    const from = i === 0 ? 0 : edge(at(i - 1), at(i));
    const to = j === count ? end : edge(at(j + 1), at(j));
    if (best === null || to - from > best.to - best.from) best = { from, to };
  }
  const [first, last] = [isClear.indexOf(true), isClear.lastIndexOf(true)];
  const foul = spares.flatMap((s, i) => (i > first && i < last && !isClear[i] ? [{ s, i }] : []));
  if (best === null || foul.length === 0) return best;
  return { ...best, pinch: at(foul.reduce((a, b) => (b.s < a.s ? b : a)).i) };
}

/** Where a train stands in it, farthest from its marks; it stands out of one that is too short. */
function midway({ from, to }: Stretch, train: number, through: boolean): Stretch {
  const begins = through ? (from + to - train) / 2 : to - train;
  return { from: begins, to: begins < from ? -Infinity : begins + train };
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Every metre and at both ends. */
function leastIn(
  { kinds }: Beside,
  roomOf: (kind: number, p: number, fine: boolean) => Least,
  { from, to }: Stretch,
): Least | null {
  let [least, at]: [Least | null, number] = [null, 0];
  kinds.forEach(({ long }, kind) => {
    const run = to - long - from;
    if (run < 0) return;
    const count = Math.max(1, Math.ceil(run));
    for (let i = 0; i <= count; i++) {
      const here = roomOf(kind, from + (run * i) / count, false);
      if (least === null || here.room < least.room) [least, at] = [here, kind];
    }
  });
  return least && roomOf(at, (least as Least).at, true);
}

function marksOf(
  { from, to }: Stretch,
  length: number,
  stands: RoadLaid['stands'],
  start: View,
  end: View | undefined,
): Mark[] {
  const mark = (view: View, beyondTips: number): Mark => {
    const { joint, standPlan, passPlan, pass, tips } = view;
    const frog = joint.turnout ? (stands === 'in' ? toFrog(joint.turnout) : joint.turnout.lead) : 0;
    return {
      beyondTips,
      beyondFrog: beyondTips - frog,
      apart: apartAt(standPlan, tips + beyondTips, passPlan, pass.length),
    };
  };
  return [mark(start, from), ...(end ? [mark(end, length - to)] : [])];
}

/** From the middle of one track at a chainage to the middle of the other, m. */
function apartAt(plan: Plan, s: number, other: Plan, length: number): number {
  const here = spotOf(plan, s);
  const to = (t: number): number => {
    const there = spotOf(other, t);
    return Math.hypot(there.x - here.x, there.y - here.y);
  };
  let best = 0;
  for (let t = 0; t <= length; t += STEP) if (to(t) < to(best)) best = t;
  return -highest((t) => -to(t), best - STEP, best + STEP, 30).value;
}

function spotOf(plan: Plan, s: number): Spot {
  const spot: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
  spotAt(plan, s, spot);
  return spot;
}
