/** A straight line with a loop on its left and a road that ends. All made up. */
import { curvesInTurnout, fromOtherEnd } from '../../engine/things/line/branch.ts';
import { angleOfFrog, crossingOf, toFrog, turnoutByLead } from '../../engine/things/line/turnout.ts';
import type { CurveElement, Joint, Line, Track } from '../../engine/things/line/types.ts';

export const GAUGE = 0.184;
export const RETURN = 12;

export const straight = (base: Line): Line => ({
  ...base,
  loop: false,
  gauge: GAUGE,
  length: 200,
  heights: [
    { at: 0, height: 0 },
    { at: 200, height: 0 },
  ],
  curves: [],
  cants: [],
  places: [],
});

interface Laid {
  readonly number?: number;
  readonly lead?: number;
  readonly hand?: 'left' | 'right';
  readonly at?: number;
}

export function pointsOf({ number = 6, lead = 2, hand = 'left', at = 40 }: Laid = {}): Joint {
  const turnout = turnoutByLead(GAUGE, angleOfFrog(number), lead);
  if (!turnout) throw new RangeError('no such turnout');
  return { track: 'main', at, hand, facing: true, turnout };
}

const other = { left: 'right', right: 'left' } as const;

/** Straight beyond its frog, to buffers. */
export function roadThatEnds(line: Line, laid: Laid = {}, length = 30): Track {
  const start = pointsOf(laid);
  const own = { ...line, length, curves: curvesInTurnout(line, start) };
  return { id: 'road', name: 'Road', line: own, levelled: false, start };
}

/** Parallel to the line at a spacing, from tips to tips 60 m. */
export function loopRoad(line: Line, spacing: number, laid: Laid = {}): Track {
  const start = pointsOf(laid);
  const { turnout, hand } = start;
  if (!turnout) throw new RangeError('no turnout');
  const { angle } = turnout;
  const k = (hand === 'left' ? -1 : 1) / RETURN;
  const diagonal = (spacing - RETURN * (1 - Math.cos(angle))) / Math.sin(angle);
  const begins = toFrog(turnout) - (turnout.lead - crossingOf(turnout, GAUGE)) + diagonal;
  const back: CurveElement[] = [
    { from: begins, to: begins + RETURN * angle, startCurvature: k, endCurvature: k, gaugeWidening: 0 },
  ];
  const half = [...curvesInTurnout(line, start), ...back];
  const atReturn = crossingOf(turnout, GAUGE) + diagonal * Math.cos(angle) + RETURN * Math.sin(angle);
  const length = 60 + 2 * (begins + RETURN * angle - atReturn);
  const end: Joint = { ...start, at: start.at + 60, hand: other[hand], facing: false };
  // The same from its far end, as in a mirror.
  const mirrored = half.map((c) => ({
    ...c,
    startCurvature: -c.startCurvature,
    endCurvature: -c.endCurvature,
  }));
  const curves = [...half, ...fromOtherEnd(mirrored, length)];
  return { id: 'loop', name: 'Loop', line: { ...line, length, curves }, levelled: false, start, end };
}
