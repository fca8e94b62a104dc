/** The train stood at a place of its line: its bodies from above on the track as it bends there, what it sweeps, and what stands beside. */
import { turnOf } from '../engine/answer/chainage.ts';
import type { Corner } from '../engine/base/numerics/polygon.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { KeptClear } from '../engine/questions/clearance/kept-clear.ts';
import {
  besideTrack,
  type PlacedTrain,
  type StandingPlan,
  standingPlan,
} from '../engine/questions/clearance/placed.ts';
import { curvatureAt, onLine } from '../engine/things/line/geometry.ts';
import type { Line, Structure } from '../engine/things/line/types.ts';
import type { Clear } from './clear.ts';

/** What stands beside the track within the look: its face toward the track. */
export interface StoodBeside {
  readonly structure: Structure;
  readonly face: readonly Corner[];
}

export interface Stood {
  /** The line's own chainage of the head, m. */
  readonly at: number;
  readonly vehicles: PlacedTrain;
  /** Both rails' middle, and the edges of all that the whole train sweeps there on its way; none where nothing was measured. */
  readonly track: readonly Corner[];
  readonly rails: readonly [readonly Corner[], readonly Corner[]];
  readonly swept: { readonly left: readonly Corner[]; readonly right: readonly Corner[] } | null;
  readonly beside: readonly StoodBeside[];
  /** Sharpest under it, m, and its hand as the train runs; null: straight. */
  readonly curve: { readonly radius: number; readonly hand: 'left' | 'right' } | null;
}

export interface Standings {
  /** Least and most of the line's own chainage that its head may stand at, m. */
  readonly from: number;
  readonly to: number;
  readonly stand: (at: number) => Stood;
}

/** Between the places that are drawn, m. */
const EVERY = 0.25;
/** Of the line before and behind the train, m. */
const ABOUT = 2;
/** A bend of more than this radius is straight to the eye, m. */
const STRAIGHT = 2000;
/** Farther from the track than this nothing is shown, m. */
const FAR = 3;

export function standings(outing: Outing, { kept, structures }: Clear): Standings {
  const context = openOuting(outing);
  const { line, loaded } = context;
  const turn = turnOf(outing);
  const laid = standingPlan(context);
  const first = line.loop ? 0 : Math.min(loaded.length, line.length);
  const ends = [turn(first), turn(line.length)];
  const stand = (at: number): Stood => {
    const head = turn(at);
    const places = placesFrom(head - loaded.length - ABOUT, head + ABOUT);
    const sharp = places.reduce((most, s) => {
      const here = curvatureAt(line, onLine(line, s));
      return Math.abs(here) > Math.abs(most) ? here : most;
    }, 0);
    return {
      at,
      vehicles: laid.stand(head),
      track: places.map((s) => besideTrack(laid.plan, s, 0)),
      rails: [edge(laid, places, () => line.gauge / 2), edge(laid, places, () => -line.gauge / 2)],
      swept: kept ? sweptAlong(laid, line, kept, places) : null,
      beside: structures.flatMap((s) => facesOf(laid, line, s, places)),
      curve:
        Math.abs(sharp) < 1 / STRAIGHT
          ? null
          : { radius: 1 / Math.abs(sharp), hand: sharp > 0 ? 'left' : 'right' },
    };
  };
  return { from: Math.min(...ends), to: Math.max(...ends), stand };
}

const placesFrom = (from: number, to: number): number[] =>
  Array.from({ length: Math.ceil((to - from) / EVERY) + 1 }, (_, i) => Math.min(to, from + i * EVERY));

const edge = (
  { plan }: StandingPlan,
  places: readonly number[],
  aside: (s: number) => number,
): readonly Corner[] => places.map((s) => besideTrack(plan, s, aside(s)));

/** Off the ends of a line nothing is swept: there is no track. */
function sweptAlong(laid: StandingPlan, line: Line, kept: KeptClear, all: readonly number[]) {
  const places = line.loop ? all : all.filter((s) => s >= 0 && s <= line.length);
  const of = (reaches: readonly number[]) => (s: number) => reaches[nearest(kept.at, onLine(line, s))];
  const [left, right] = [of(kept.left), of(kept.right)];
  return { left: edge(laid, places, left), right: edge(laid, places, (s) => -right(s)) };
}

/** Of places that grow evenly. */
const nearest = (at: readonly number[], s: number): number =>
  Math.max(0, Math.min(at.length - 1, Math.round((s / at[at.length - 1]) * (at.length - 1))));

function facesOf(
  laid: StandingPlan,
  line: Line,
  structure: Structure,
  places: readonly number[],
): StoodBeside[] {
  const { from, to, side, distance } = structure;
  if (distance === undefined || distance > FAR) return [];
  const long = to < from ? to + line.length - from : to - from;
  const [first, last] = [places[0], places[places.length - 1]];
  // The same structure once more a lap before or after.
  const laps = line.loop ? [-line.length, 0, line.length] : [0];
  return laps.flatMap((lap) => {
    const [begins, ends] = [Math.max(first, from + lap), Math.min(last, from + lap + long)];
    if (begins > ends) return [];
    const along = placesFrom(begins, ends);
    return (side === 'both' ? (['left', 'right'] as const) : [side]).map((one) => ({
      structure,
      face: edge(laid, along, () => (one === 'left' ? distance : -distance)),
    }));
  });
}
