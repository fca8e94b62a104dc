/** What of the fit one looks for on the ground: where the ends of a train may stand, and where least is left beside it. */
import type { Outing } from '../engine/outing/types.ts';
import { onLine } from '../engine/things/line/geometry.ts';
import { type Line, MAIN } from '../engine/things/line/types.ts';
import { type Clear, leftOf } from './clear.ts';
import { lineOf, nameOfTrack, type Sidings } from './siding.ts';

export interface PlanMark {
  /** `end`: an end of a train may stand here and no nearer to the points; `near`: of a structure, where least is left. */
  readonly kind: 'end' | 'near';
  /** Of the track, and chainage by its own distances, m. */
  readonly track: string;
  readonly at: number;
  /** Of the track, or of what stands there. */
  readonly name: string;
  /** What is left, m, below nothing where it strikes. */
  readonly left?: number;
}

/** So many places with least left, those that strike beside. */
const NEAREST = 5;

/** Over a route the tracks are pieces of it: what is told of them by their own distances has no place on its plan. */
export const planMarks = (outing: Outing, clear: Clear, sidings: Sidings): PlanMark[] => [
  ...(outing.whole ? [] : roadMarks(sidings)),
  ...spacedMarks(clear),
  ...nearMarks(clear),
];

function roadMarks({ line, standing: [own] }: Sidings): PlanMark[] {
  return own.look.roads.flatMap(({ track, stands, clear, marks }) => {
    if (!clear) return [];
    // From the first points on; and where the track has points at its other end, from those back.
    const ends = marks.length > 1 ? [clear.from, clear.to] : [clear.from];
    if (stands === 'in')
      return ends.map((at): PlanMark => ({ kind: 'end', track: track.id, at, name: track.name }));
    const { start } = track;
    const on = lineOf(line, start.track) ?? line;
    return ends.map(
      (d): PlanMark => ({
        kind: 'end',
        track: start.track,
        at: onTrack(on, start.at + (start.facing ? d : -d)),
        name: nameOfTrack(line, start.track),
      }),
    );
  });
}

const onTrack = (line: Line, at: number): number => (line.loop ? onLine(line, at) : at);

const spacedMarks = ({ sidings, at }: Clear): PlanMark[] =>
  sidings.flatMap(({ siding, clear }) =>
    clear
      ? [clear.from, clear.to].map(
          (s): PlanMark => ({ kind: 'end', track: MAIN, at: at(s), name: siding.name }),
        )
      : [],
  );

function nearMarks({ nearest, at }: Clear): PlanMark[] {
  const told = nearest.filter((p) => Number.isFinite(leftOf(p))).sort((a, b) => leftOf(a) - leftOf(b));
  return told
    .filter((p, i) => i < NEAREST || leftOf(p) < 0)
    .flatMap((p) => {
      const rooms = [p.body, p.people].flatMap((s) => (s ? [s.high] : []));
      const least = rooms.reduce((a, b) => (b.left < a.left ? b : a));
      return [
        { kind: 'near' as const, track: MAIN, at: at(least.at), name: p.structure.name, left: least.left },
      ];
    });
}
